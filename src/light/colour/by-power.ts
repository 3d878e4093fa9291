/**
 * How the colour of a flash goes with its power. A head that is charged less burns warmer, 400 K from full to 1/32 (reports of
 * practitioners); one that is cut short ends before its red tail and is bluer, by how much is from memory and as
 * uncertain as the shift itself.
 */
import type { FlashUnit } from '../../language/plan.js'
import { miredOf, shiftBetween } from './mired.js'

export interface ByPower {
  /** Against full power, mired. */
  readonly shift: number
  /** What two units of one kind at this power are wrong by together, mired, with its sign. */
  readonly u: number
}

/** Kelvin for each stop under full power, of a flash of daylight. */
const perStop = { voltage: -80, igbt: 40 } as const
const daylight = 5500
/** Stops that flashes are turned down by: five to seven of a head, up to nine of what is cut short (common practice). Further down nothing is known. */
const deepest = { voltage: 7, igbt: 9 } as const
/** Share of the shift by which it is uncertain. */
const unsure = { voltage: 0.5, igbt: 1 } as const
/** Mired for each stop, where nobody says how the power is set. */
const unsurePerStop = 1.3
/** Stops under full at which flashes are mostly used: taken where the plan states no power. */
const usually = 2.5

/** @param power share of full power, where stated */
export const colourByPower = (
  { regulated, colours }: FlashUnit,
  kelvin: number,
  power: number | undefined,
): ByPower => {
  const down = power === undefined ? usually : Math.max(0, -Math.log2(power))
  if (colours !== undefined) {
    const stated = between(colours, kelvin, 2 ** -down)
    return { shift: stated, u: power === undefined ? stated : 0 }
  }
  if (regulated === undefined) return { shift: 0, u: unsurePerStop * Math.min(down, deepest.igbt) }
  const known = Math.min(down, deepest[regulated])
  const shift = shiftBetween(daylight, daylight + perStop[regulated] * known)
  return power === undefined ? { shift: 0, u: shift } : { shift, u: unsure[regulated] * shift }
}

/** Along the stated ones in stops of power and mireds; beyond the ends as at the ends. What the unit says is at full. */
const between = (colours: NonNullable<FlashUnit['colours']>, kelvin: number, power: number): number => {
  const stated = colours.map((one) => ({ at: Math.log2(one.power), mired: miredOf(one.colour) }))
  const all = stated.some(({ at }) => at >= -1e-9) ? stated : [...stated, { at: 0, mired: miredOf(kelvin) }]
  const along = all.sort((a, b) => a.at - b.at)
  const at = Math.log2(power)
  const over = along.findIndex((one) => one.at >= at)
  const mired = ((): number => {
    if (over <= 0) return along[over === 0 ? 0 : along.length - 1]!.mired
    const [a, b] = [along[over - 1]!, along[over]!]
    return a.mired + ((at - a.at) / (b.at - a.at)) * (b.mired - a.mired)
  })()
  return mired - miredOf(kelvin)
}
