/** Power in all its forms, and the settings that a unit has. */
import { type ReadPower, snapToStep } from '../../units/power.js'
import { type PowerShare, powerShare, type Stops, type WattSeconds } from '../../units/quantity.js'
import type { PowerRange as PowerRangeFile } from '../generated/types.js'
import type { LightUnit, PowerRange } from '../plan.js'
import { type Desk, maybe, powerAt, refuse, stopsAt } from './desk.js'

interface Dials {
  readonly energy: WattSeconds | undefined
  readonly dial: PowerRange['dial']
  readonly name: string
}

/** Any form of power as a share of full, before it is brought to the unit's step. */
const shareOf = (desk: Desk, at: string, power: ReadPower, unit: Dials): PowerShare => {
  switch (power.kind) {
    case 'share':
      return power.share
    case 'energy':
      if (unit.energy !== undefined) return powerShare(power.energy / unit.energy)
      refuse(
        desk,
        at,
        `the watt-seconds of ${unit.name} at full power are not stated`,
        'state its energy in the kit, or write the power as a share: 1/4',
      )
      return powerShare(1)
    default:
      if (unit.dial !== undefined) return powerShare(2 ** (power.dial - unit.dial.top))
      refuse(
        desk,
        at,
        `what the dial of ${unit.name} shows at full power is not stated`,
        'state power: { dial: 10 } for it in the kit, or write the power as a share: 1/4',
      )
      return powerShare(1)
  }
}

/** A power at a pointer as a share of full; `1/4 + 0.3` on a unit that steps in thirds is a third over a quarter. */
export const powerOf = (desk: Desk, at: string, text: string, unit: LightUnit): PowerShare => {
  if (unit.kind === 'sun' || unit.kind === 'window') {
    refuse(desk, at, `${unit.name} has no power to set`, 'say what a meter reads of it: reads, shutter, iso')
    return powerShare(1)
  }
  const energy = unit.kind === 'flash' ? unit.energy : undefined
  const share = shareOf(desk, at, powerAt(desk, at, text), { name: unit.name, energy, dial: unit.power.dial })
  return snapToStep(share, unit.power.step)
}

export const rangeOf = (
  desk: Desk,
  at: string,
  file: PowerRangeFile | undefined,
  usual: { readonly from: PowerShare; readonly to: PowerShare; readonly step: Stops },
  unit: Omit<Dials, 'dial'>,
): PowerRange => {
  const dial = file?.dial === undefined ? undefined : { top: file.dial }
  const step = maybe(stopsAt, desk, `${at}/step`, file?.step) ?? usual.step
  if (step <= 0) refuse(desk, `${at}/step`, 'a step of power is over zero', 'write 1/3 stop or 0.1 stop')
  const end = (key: 'from' | 'to'): PowerShare => {
    const text = file?.[key]
    if (text === undefined) return usual[key]
    const share = shareOf(desk, `${at}/${key}`, powerAt(desk, `${at}/${key}`, text), { ...unit, dial })
    return snapToStep(share, step)
  }
  const from = end('from')
  const to = end('to')
  if (from > to) refuse(desk, at, 'the lowest power is over the highest', 'write from: 1/128, to: full')
  return { from, to, step, dial }
}
