/**
 * The colour that a light has by what the plan says of its unit, power and gel, and how sure that is. Where nothing is
 * said: what such a light usually has (5500 K for flash and sun, 6500 for an overcast sky: check values of colour, `col.src`;
 * 3200 for halogen modelling lamps, as gel tables take it, and 5600 for LED lamps, from memory).
 */
import { readColour } from '../../language/catalogue/colours.js'
import type { Gel, Light, LightUnit, Plan } from '../../language/plan.js'
import { lazyOf } from '../../scene/lazy.js'
import type { Kelvin, Mired } from '../../units/quantity.js'
import type { Causes } from '../causes.js'
import { colourByPower } from './by-power.js'
import { scaledXyz, type Xyz } from './chromaticity.js'
import { linearRgb } from './linear.js'
import { kelvinOf, miredOf, withinReach } from './mired.js'
import { isColour, type Rgb, rgbOfXyz, sharesOfColour, xyzOfRgb } from './rgb.js'
import { usualDuv, type White, xyzOfWhite } from './white.js'

export interface LightColour extends White {
  /** Y = 1. */
  readonly xyz: Xyz
  readonly mired: Mired
  /** What makes it uncertain, mired by cause: two units of one kind share most of it. */
  readonly causes: Causes
  /** Somebody stated it, or how it goes with power: no default alone. */
  readonly told: boolean
  /** Through a saturated gel: meant to be of another colour. */
  readonly deep: boolean
}

/** Standard uncertainties, mired. Common practice, no source, but for flash: makers' tolerances of 300 K as practitioners report them. */
const u = {
  stated: 4,
  flash: 10,
  sun: 30,
  window: 25,
  halogen: 10,
  led: 40,
  /** Of all that, what two units of one kind do not share. */
  own: 2,
  /** Cloth and plastic warm or cool; up to 600 K is reported, mostly far less. */
  modifier: 3,
  gel: 3,
} as const

/** Kelvin. */
const usual = { flash: 5500, sun: 5500, window: 6500, halogen: 3200, led: 5600 } as const

/** Undefined where nothing tells it and nothing is usual: lamps of all kinds. Once for each light: what-ifs keep most of them. */
export const lightColour: (light: Light) => LightColour | undefined = lazyOf((light) => colourOf(light))

const colourOf = (light: Light): LightColour | undefined => {
  const { unit } = light
  const base = unit.colour ?? atHighest(unit) ?? (unit.kind === 'continuous' ? undefined : usual[unit.kind])
  if (base === undefined) return undefined
  const isStated = base === atHighest(unit) || (unit.colour !== undefined && unit.colourGuessed !== true)
  const kindU = isStated ? u.stated : unit.kind === 'continuous' ? u.flash : u[unit.kind]
  const byPower = unit.kind === 'flash' ? colourByPower(unit, base, light.power) : { shift: 0, u: 0 }
  const told =
    isStated ||
    unit.duv !== undefined ||
    (unit.kind === 'flash' && (unit.regulated !== undefined || unit.colours !== undefined))
  return through(light, light.gel, {
    kelvin: base,
    shift: byPower.shift,
    duv: unit.duv,
    told,
    causes: new Map([
      // What is stated of two lights one by one is wrong one by one.
      [`unit ${unit.name}${isStated ? ` ${base}` : ''}`, Math.sqrt(kindU ** 2 - u.own ** 2)],
      [`own ${light.name}`, u.own],
      ...(byPower.u === 0 ? [] : [[`power ${unit.name}`, byPower.u] as const]),
      ...(light.modifier === undefined ? [] : [[`modifier ${light.modifier.name}`, u.modifier] as const]),
    ]),
  })
}

/** Of what is stated by power, at the highest of them. */
const atHighest = (unit: LightUnit): number | undefined =>
  unit.kind !== 'flash'
    ? undefined
    : unit.colours?.reduce((most, one) => (one.power > most.power ? one : most)).colour

/** Under 60 W taken as LED, as its lumens are. */
const brightestLed = 60

/** Of the modelling lamp in a light. */
export const lampColour: (light: Light) => LightColour | undefined = lazyOf((light) => {
  const { unit } = light
  if (unit.kind !== 'flash' || unit.modelling === undefined) return undefined
  const kind = unit.modelling < brightestLed ? 'led' : 'halogen'
  return through(light, light.gel, {
    kelvin: usual[kind],
    shift: 0,
    duv: undefined,
    told: false,
    causes: new Map([
      [`lamp of ${unit.name}`, Math.sqrt(u[kind] ** 2 - u.own ** 2)],
      [`own lamp of ${light.name}`, u.own],
    ]),
  })
})

/** Known where it is stated. */
export const ambientColour = ({ ambient }: Plan): LightColour | undefined =>
  ambient?.colour === undefined
    ? undefined
    : through(undefined, undefined, {
        kelvin: ambient.colour,
        shift: 0,
        duv: ambient.duv,
        told: true,
        causes: new Map([['ambient', u.stated]]),
      })

interface Plain {
  readonly kelvin: number
  /** Mired. */
  readonly shift: number
  /** Where stated. */
  readonly duv: number | undefined
  readonly told: boolean
  readonly causes: Causes
}

/** What a saturated gel lets through of each channel. Undefined where it is none: what takes little light cannot be deep, nor is grey. */
const passesOf = ({ colour, loss }: Gel): Rgb | undefined => {
  const stated = colour === undefined ? undefined : readColour(colour)
  const passes = stated && sharesOfColour(linearRgb(stated), 2 ** -loss)
  return passes !== undefined && isColour(passes, 2 ** -loss) ? passes : undefined
}

/**
 * Gels that convert bring daylight onto the black-body locus, for which they are made, and back: what a light is greener than usual
 * at its temperature it stays, and what the gel adds comes to it.
 */
const through = (light: Light | undefined, gel: Gel | undefined, plain: Plain): LightColour => {
  const own = withinReach(miredOf(plain.kelvin) + plain.shift)
  const mired = withinReach(own + (gel?.shift ?? 0))
  const kelvin = kelvinOf(mired)
  const greener = plain.duv === undefined ? 0 : plain.duv - usualDuv(plain.kelvin)
  const duv = usualDuv(kelvin) + greener + (gel?.duv ?? 0)
  const white = { kelvin: kelvin as Kelvin, duv }
  const xyz = xyzOfWhite(white)
  const passes = gel && passesOf(gel)
  const causes =
    gel?.shift === undefined && gel?.duv === undefined
      ? plain.causes
      : new Map([...plain.causes, [`gel of ${light!.name}`, u.gel]])
  return {
    ...white,
    xyz: passes === undefined ? xyz : filtered(xyz, passes),
    mired,
    causes,
    told: plain.told || gel !== undefined,
    deep: passes !== undefined,
  }
}

/** Of a channel that light out of reach of sRGB has none of; a gel lets that little of it through. */
const least = 1e-3

/** Through what lets these shares of the channels through; of Y = 1 again, as the loss is counted elsewhere. */
const filtered = (xyz: Xyz, passes: Rgb): Xyz => {
  const [r, g, b] = rgbOfXyz(xyz).map((one) => Math.max(least, one)) as unknown as Rgb
  const passed = xyzOfRgb([r * passes[0], g * passes[1], b * passes[2]])
  return scaledXyz(passed, 1 / passed[1])
}
