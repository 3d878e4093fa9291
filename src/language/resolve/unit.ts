/** Light units: of the kit, built in, or written out at a light. */
import { pointer } from '../../text/place.js'
import {
  as,
  degrees,
  type Kelvin,
  type Lux,
  metres,
  powerShare,
  stops,
  type WattSeconds,
  type Watts,
} from '../../units/quantity.js'
import { type UnitRow, unitRow } from '../catalogue/units.js'
import * as defaults from '../defaults.js'
import type { Continuous, Flash, Unit } from '../generated/types.js'
import type { ContinuousUnit, FlashStrength, FlashUnit, LightUnit, PowerRange } from '../plan.js'
import {
  amountAt,
  beamAt,
  type Desk,
  energyAt,
  focalLengthAt,
  focalRangeAt,
  guideNumberAt,
  kelvinAt,
  lumensAt,
  luxAt,
  maybe,
  meteredAt,
  onceOfKit,
  refuse,
  sizeAt,
  timeAt,
  voltsAt,
  wattsAt,
  weightAt,
} from './desk.js'
import { photometricFileAt } from './photometric-file.js'
import { rangeOf } from './power.js'
import { durationsOf, guideNumbersOf, powersOf } from './unit-tables.js'

// ---------------------------------------------------------------- flash

const guideNumberOf = (desk: Desk, at: string, file: Flash): FlashStrength => {
  const written = file['guide-number']!
  const rated = file['rated-with']
  const zoomRated =
    rated === undefined || rated === 'standard reflector' || rated === 'bare'
      ? undefined
      : focalLengthAt(desk, `${at}/rated-with`, rated)
  const here = `${at}/guide-number`
  const table =
    typeof written === 'string'
      ? [guideNumberAt(desk, here, written)].map((one) => ({ ...one, zoom: one.zoom ?? zoomRated }))
      : guideNumbersOf(desk, here, written)
  const zoomed = table.some((one) => one.zoom !== undefined)
  if (!zoomed && rated === undefined && file.zoom !== undefined)
    refuse(
      desk,
      here,
      'the guide number does not say at which zoom it holds, which matters by over a stop',
      'write 36 m at 35 mm',
    )
  return {
    kind: 'guide-number',
    table,
    ratedAs: file['rated-as'] ?? 'print',
    ratedWith: rated === 'bare' ? 'bare' : zoomed ? 'zoom' : 'standard reflector',
  }
}

const strengthOf = (desk: Desk, at: string, file: Flash): FlashStrength => {
  const reflector = maybe(beamAt, desk, `${at}/reflector`, file.reflector)
  if (file['guide-number'] !== undefined) return guideNumberOf(desk, at, file)
  if (file.meters !== undefined)
    return {
      kind: 'meters',
      ...meteredAt(desk, `${at}/meters`, file.meters),
      reflector: reflector ?? defaults.standardReflector,
    }
  return {
    kind: 'energy',
    energy: maybe(energyAt, desk, `${at}/energy`, file.energy) ?? as<WattSeconds>(1),
    reflector,
  }
}

const facts = (desk: Desk, at: string, name: string, file: Flash | Continuous) => ({
  name: file.name ?? name,
  colour: maybe(kelvinAt, desk, `${at}/colour`, file.colour),
  ...(file.duv === undefined ? {} : { duv: file.duv }),
  draw: maybe(wattsAt, desk, `${at}/draw`, file.draw),
  weight: maybe(weightAt, desk, `${at}/weight`, file.weight),
  count: file.count,
  guessed: false,
})

const flashOf = (desk: Desk, at: string, name: string, file: Flash): FlashUnit => {
  const energy = maybe(energyAt, desk, `${at}/energy`, file.energy)
  const zoom = maybe(focalRangeAt, desk, `${at}/zoom`, file.zoom)
  const power = rangeOf(
    desk,
    `${at}/power`,
    file.power,
    zoom === undefined ? defaults.power.head : defaults.power.zoomHead,
    { name, energy },
  )
  const unit: FlashUnit = {
    kind: 'flash',
    ...facts(desk, at, name, file),
    strength: strengthOf(desk, at, file),
    power,
    zoom,
    energy,
    regulated: file.regulated,
    durations: [],
    recycle: maybe(timeAt, desk, `${at}/recycle`, file.recycle),
    flashesPerCharge: file['flashes-per-charge'],
    spareCharges: file['spare-charges'],
    highSpeedLoss: maybe(amountAt, desk, `${at}/high-speed-loss`, file['high-speed-loss']),
    modelling: maybe(wattsAt, desk, `${at}/modelling`, file.modelling),
    triggerVoltage: maybe(voltsAt, desk, `${at}/trigger-voltage`, file['trigger-voltage']),
    preFlash: file['pre-flash'] ?? false,
  }
  const durations = durationsOf(desk, `${at}/durations`, file.durations ?? [], unit)
  const powers = powersOf(desk, `${at}/colours`, file.colours ?? [], unit)
  const colours = file.colours?.map((one, i) => ({
    power: powers[i]!,
    colour: kelvinAt(desk, `${at}/colours/${i}/colour`, one.colour),
  }))
  return { ...unit, durations, ...(colours === undefined ? {} : { colours }) }
}

// ---------------------------------------------------------------- continuous

const lampStrength = (desk: Desk, at: string, file: Continuous): ContinuousUnit['strength'] => {
  const beam = maybe(beamAt, desk, `${at}/beam`, file.beam)
  const named = file['photometric-file']
  if (named !== undefined && beam !== undefined)
    refuse(
      desk,
      `${at}/beam`,
      'beam says nothing beside a photometric file',
      'the file tells how the light spreads',
      'value-unused',
    )
  const photometric =
    named === undefined ? undefined : photometricFileAt(desk, `${at}/photometric-file`, named)
  if (photometric !== undefined) return { kind: 'photometric file', ...photometric }
  if (file.lumens !== undefined)
    return {
      kind: 'lumens',
      lumens: lumensAt(desk, `${at}/lumens`, file.lumens),
      beam: beam ?? degrees(120),
    }
  return { kind: 'lux', ...luxAt(desk, `${at}/lux`, file.lux ?? '1 lx at 1 m'), beam }
}

const lampOf = (desk: Desk, at: string, name: string, file: Continuous): ContinuousUnit => {
  const stated = facts(desk, at, name, file)
  const strength = lampStrength(desk, at, file)
  return {
    kind: 'continuous',
    ...stated,
    draw: stated.draw ?? (strength.kind === 'photometric file' ? strength.table.watts : undefined),
    strength,
    power: rangeOf(desk, `${at}/power`, file.power, defaults.power.lamp, { name, energy: undefined }),
    size: maybe(sizeAt, desk, `${at}/size`, file.size),
    flicker: file.flicker,
  }
}

/** What only a continuous light has tells it from a flash, as in the schema. */
const burnsSteadily = (file: Unit): file is Continuous =>
  file.kind === 'continuous' || 'lux' in file || 'lumens' in file || 'photometric-file' in file

const unitOf = (desk: Desk, at: string, name: string, file: Unit): LightUnit =>
  burnsSteadily(file) ? lampOf(desk, at, name, file) : flashOf(desk, at, name, file as Flash)

// ---------------------------------------------------------------- built in

const guess = (name: string, colour?: number) => ({
  name,
  colour: colour === undefined ? undefined : as<Kelvin>(colour),
  colourGuessed: true as const,
  draw: undefined,
  weight: undefined,
  count: undefined,
  guessed: true,
})

const rangeOfRow = (power: {
  readonly from: number
  readonly to: number
  readonly step: number
}): PowerRange => ({
  from: powerShare(power.from),
  to: powerShare(power.to),
  step: stops(power.step),
  dial: undefined,
})

export const builtInUnit = (name: string, row: UnitRow): LightUnit => {
  switch (row.kind) {
    case 'sun':
    case 'window':
      return { ...guess(name), kind: row.kind }
    case 'continuous':
      return {
        ...guess(name, row.colour),
        kind: 'continuous',
        strength: {
          kind: 'lux',
          lux: as<Lux>(row.lux),
          distance: metres(row.distance),
          beam: degrees(row.beam),
        },
        power: rangeOfRow(row.power),
        size: { width: metres(row.size.width), height: metres(row.size.height) },
        flicker: undefined,
      }
    default:
      return {
        ...guess(name, row.colour),
        kind: 'flash',
        strength:
          row.guideNumber === undefined
            ? {
                kind: 'energy',
                energy: as<WattSeconds>(row.energy),
                reflector: row.reflector === undefined ? undefined : degrees(row.reflector),
              }
            : {
                kind: 'guide-number',
                table: [{ metres: row.guideNumber.metres, zoom: metres(row.guideNumber.zoom) }],
                ratedAs: 'print',
                ratedWith: 'zoom',
              },
        power: rangeOfRow(row.power),
        zoom: row.zoom && { from: metres(row.zoom.from), to: metres(row.zoom.to) },
        energy: as<WattSeconds>(row.energy),
        regulated: undefined,
        durations: [],
        recycle: undefined,
        flashesPerCharge: undefined,
        spareCharges: undefined,
        highSpeedLoss: undefined,
        modelling: row.modelling === undefined ? undefined : as<Watts>(row.modelling),
        triggerVoltage: undefined,
        preFlash: false,
      }
  }
}

/** A stand-in for a name that is refused elsewhere. */
const unknown = builtInUnit('flashgun', unitRow('flashgun')!)

/** A unit by name: the kit's before the built-in one of that name. */
export const unitNamed = (desk: Desk, name: string): LightUnit => {
  const units = desk.kit.units ?? {}
  if (Object.hasOwn(units, name)) {
    const at = pointer('kit', 'units', name)
    return onceOfKit(desk, at, () => unitOf(desk, at, name, units[name]!))
  }
  const row = unitRow(name)
  return row === undefined ? unknown : builtInUnit(name, row)
}

/** @param light called after it where it is written out and has no name */
export const unitAt = (desk: Desk, at: string, file: Unit | string, light: string): LightUnit =>
  typeof file === 'string' ? unitNamed(desk, file) : unitOf(desk, at, light, file)
