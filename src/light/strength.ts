/**
 * What a light gives by what is printed on its gear: guide number, metered output or energy, then power, modifier,
 * gel and high-speed sync. On-axis far-field intensity over the exposure, cd·s (continuous light: cd times the time
 * that the shutter is open).
 */
import { modifierRow } from '../language/catalogue/modifiers.js'
import type { ContinuousUnit, FlashUnit, Light, Plan } from '../language/plan.js'
import type { Face } from '../scene/scene.js'
import {
  type CandelaSeconds,
  iso,
  type LumenSeconds,
  type Metres,
  type WattSeconds,
} from '../units/quantity.js'
import { beamExponent, beamSolidAngle, standardReflector } from './beam.js'
import type { UncertainStrength } from './causes.js'
import { energyOf } from './charge.js'
import { type Emission, emissionOf, zoomOf } from './emission.js'
import { luxSecondsFor } from './exposure.js'
import { ratedZoom } from './flash-head.js'
import { guideNumberAt, intensityOfGuideNumber } from './guide-number.js'
import { uncertainties } from './how-sure.js'
import { makeSource } from './make-source.js'
import { photometryOf } from './photometric.js'
import { onAxisResponse } from './response.js'
import { earlyLoss, type Loss, leafLoss } from './shutter-loss.js'

export type StrengthFrom =
  | 'reading'
  | 'measured'
  | 'meters'
  | 'guide number'
  | 'metered output'
  | 'energy'
  | 'stated'

export interface Strength extends UncertainStrength {
  /** For the sun and the ambient light: lx·s on a plane square to it, and on a level one in the open. */
  readonly candelaSeconds: CandelaSeconds
  readonly from: StrengthFrom
}

/** Luminous energy per watt-second: studio flash systems deliver 15 to 45 lm·s (a flash maker's technical page). */
export const lumenSecondsPerWattSecond = 30
/** No source gives out more than this per watt-second of its unit, whatever its guide number and losses say. */
export const mostLumenSecondsPerWattSecond = 45

/** Printed guide numbers run optimistic by about this, stops. Common practice, no source. */
export const printedOptimism = 2 / 3

/** Entering high-speed sync costs this, stops, where the kit does not say. Common practice, no source. */
const highSpeedEntry = 2

/**
 * The strength by rating; undefined where no power is set (flash) or where nothing is rated (sun, window). What gear of one kind shares is said in `shared`.
 */
export const priorStrength = (light: Light, plan: Plan): Strength | undefined => {
  const { unit } = light
  switch (unit.kind) {
    case 'flash':
      return light.power === undefined ? undefined : flashStrength(light, unit, light.power, plan)
    case 'continuous':
      return continuousStrength(light, unit, light.power ?? 1, plan)
    default:
      return undefined
  }
}

// ---------------------------------------------------------------- flash

interface Rated {
  /** cd·s at full power through the modifier, gel and high-speed sync not yet counted. */
  readonly full: number
  readonly u: number
  readonly from: StrengthFrom
}

const flashStrength = (light: Light, unit: FlashUnit, power: number, plan: Plan): Strength => {
  const emission = emissionOf(light)
  const { full, u, from } = rated(light, unit, emission)
  const most = mostIntensity(unit, emission)
  const lost = lossesBeyondFront(light, plan)
  return strengthOf(light, Math.min(full, most) * power * 2 ** -lost.stops, u, lost.u, from)
}

const rated = (light: Light, unit: FlashUnit, emission: Emission): Rated => {
  const { strength } = unit
  switch (strength.kind) {
    case 'guide-number':
      return byGuideNumber(light, unit, strength)
    case 'meters':
      return {
        full: luxSecondsFor(strength.reads, iso(100)) * strength.distance ** 2 * lossOf(light),
        u: uncertainties.meteredOutput,
        from: 'metered output',
      }
    case 'energy': {
      const unknown = light.modifier === undefined && strength.reflector === undefined
      return {
        full: throughFront(light, fluxOfEnergy(strength.energy), emission),
        u: uncertainties.energy + (unknown ? uncertainties.unknownReflector : 0),
        from: 'energy',
      }
    }
  }
}

/** Against the unit as rated: a flashgun at 35 mm, a head in its standard reflector; zoom inside a modifier gains nothing. */
const byGuideNumber = (
  light: Light,
  unit: FlashUnit,
  { table, ratedAs, ratedWith }: Extract<FlashUnit['strength'], { kind: 'guide-number' }>,
): Rated => {
  const modified = light.modifier !== undefined
  const zoom = modified || ratedWith !== 'zoom' ? ratedZoom : zoomOf(unit, light.zoom)
  const found =
    ratedWith === 'zoom' ? guideNumberAt(table, zoom) : { metres: table[0]!.metres, converted: false }
  const print = ratedAs === 'print' ? 2 ** -printedOptimism : 1
  const bareInReflector =
    modified && ratedWith === 'bare'
      ? (4 * Math.PI * reflectorPasses) / beamSolidAngle(beamExponent(standardReflector))
      : 1
  return {
    full: intensityOfGuideNumber(found.metres) * print * bareInReflector * lossOf(light),
    u:
      uncertainties.guideNumber +
      (found.converted ? uncertainties.zoomConverted : 0) +
      (bareInReflector === 1 ? 0 : uncertainties.unknownReflector),
    from: 'guide number',
  }
}

const lossOf = (light: Light): number => 2 ** -(light.modifier?.loss ?? 0)

export const fluxOfEnergy = (
  energy: WattSeconds,
  perWattSecond: number = lumenSecondsPerWattSecond,
): LumenSeconds => (energy * perWattSecond) as LumenSeconds

/** A head without a modifier stands in its standard reflector. */
const reflectorPasses = modifierRow('standard reflector').transmits

/** Flux by what leaves the front: I₀ = Q·T over the front's solid angle (Q·T/π where it is Lambertian); the stated loss has no part in it. */
const throughFront = ({ modifier, unit }: Light, flux: number, { solidAngle }: Emission): number =>
  (flux * (modifier?.transmits ?? (unit.kind === 'flash' ? reflectorPasses : 1))) / solidAngle

/** What the unit's energy allows on the axis of this front. */
const mostIntensity = (unit: FlashUnit, { solidAngle }: Emission): number => {
  const energy = energyOf(unit)
  return energy === undefined
    ? Number.POSITIVE_INFINITY
    : (energy * mostLumenSecondsPerWattSecond) / solidAngle
}

/** Gel, high-speed sync and a leaf shutter that closes before the flash is over, stops. */
export const lossesBeyondFront = (light: Light, plan: Plan): Loss => {
  const gel = light.gel?.loss ?? 0
  const shut = highSpeedLoss(light, plan) ?? earlyLoss(light, plan) ?? leafLoss(light, plan)
  return { stops: gel + shut.stops, u: shut.u }
}

/**
 * High-speed sync, stops: entry, then what the slit of the shutter lets through, log₂(sync/t) by the marked times.
 * Undefined where the flash fires at once.
 */
export const highSpeedLoss = ({ mode, unit }: Light, { camera }: Plan): Loss | undefined => {
  if (mode !== 'high-speed' || unit.kind !== 'flash' || camera.shutterMarked >= camera.sync * 0.999)
    return undefined
  const stated = unit.highSpeedLoss
  return {
    stops: (stated ?? highSpeedEntry) + Math.log2(camera.sync / camera.shutterMarked),
    u: stated === undefined ? uncertainties.highSpeedEntry : uncertainties.highSpeedStated,
  }
}

/** True where a flash pulses through the whole run of the slit. At the sync speed and slower that mode fires it at once too. */
export const isHighSpeed = (light: Light, plan: Plan): boolean => highSpeedLoss(light, plan) !== undefined

// ---------------------------------------------------------------- continuous

const continuousStrength = (light: Light, unit: ContinuousUnit, power: number, plan: Plan): Strength => {
  const { camera } = plan
  const { strength } = unit
  const given = power * camera.shutter * 2 ** -(light.gel?.loss ?? 0)
  switch (strength.kind) {
    case 'lux': {
      const candela = (strength.lux / ownResponse(light, unit, strength.distance, plan)) * lossOf(light)
      return strengthOf(light, candela * given, uncertainties.meteredOutput, 0, 'stated')
    }
    case 'lumens': {
      const candela = throughFront(light, strength.lumens, emissionOf(light))
      return strengthOf(light, candela * given, uncertainties.energy, 0, 'stated')
    }
    case 'photometric file': {
      const { reference, flux } = photometryOf(strength.table)
      return light.modifier === undefined
        ? strengthOf(light, reference * given, uncertainties.meteredOutput, 0, 'stated')
        : strengthOf(
            light,
            throughFront(light, flux, emissionOf(light)) * given,
            uncertainties.energy,
            0,
            'stated',
          )
    }
  }
}

/**
 * How the unit's own front, with nothing before it, answers a flat receptor on its axis where its lux are stated, 1/m²:
 * near a panel the inverse square would take its own statement for more than it is.
 */
const ownResponse = (light: Light, unit: ContinuousUnit, distance: Metres, plan: Plan): number => {
  if (unit.size === undefined) return 1 / distance ** 2
  const front: Face = { outline: 'rectangle', centre: [0, 0, 0], ...facingOut, ...unit.size }
  const source = makeSource(
    { ...light, modifier: undefined, grid: undefined },
    { name: light.name, role: light.role, front, axis: facingOut.normal, aim: facingOut.normal, distance },
    plan,
  )
  const response = source === undefined ? 0 : onAxisResponse(source, distance, 'flat')
  return response > 0 ? response : 1 / distance ** 2
}

const facingOut = { normal: [0, -1, 0], across: [1, 0, 0], up: [0, 0, 1] } as const

/**
 * Luminous efficacy of a modelling lamp, lm/W: 17 for incandescent ones, as household bulbs; lamps under 60 W are taken
 * as LEDs of 90. The split and the latter from memory.
 */
const incandescent = 17
const led = 90
const brightestLed = 60

export const modellingLumens = (watts: number): number => watts * (watts < brightestLed ? led : incandescent)

/**
 * The modelling lamp as a continuous light of the same source: undefined where it is off or the unit states no watts.
 * It burns at full power, whatever the flash is set to.
 */
export const modellingStrength = (light: Light, { camera }: Plan): Strength | undefined => {
  const { unit } = light
  if (!light.modelling || unit.kind !== 'flash' || unit.modelling === undefined) return undefined
  const candela = throughFront(light, modellingLumens(unit.modelling), emissionOf(light))
  const through = camera.shutter * 2 ** -(light.gel?.loss ?? 0)
  const lamp = `lamp of ${unit.name}`
  return strengthOf(light, candela * through, uncertainties.modellingLamp, 0, 'stated', lamp)
}

// ---------------------------------------------------------------- how sure

/** `u` of the rating and the modifier's in square; all of it but 0.15 is shared with lights of the same gear. */
const strengthOf = (
  light: Light,
  intensity: number,
  ratedU: number,
  highSpeedU: number,
  from: StrengthFrom,
  unit = `unit ${light.unit.name}`,
): Strength => {
  const modifierU = light.modifier?.lossU ?? 0
  const unitShared = Math.sqrt(Math.max(0, ratedU ** 2 - uncertainties.ownPart ** 2))
  return {
    candelaSeconds: intensity as CandelaSeconds,
    u: Math.hypot(ratedU, modifierU, highSpeedU),
    from,
    shared: [
      { entry: unit, u: unitShared },
      ...(light.modifier === undefined || modifierU === 0
        ? []
        : [{ entry: `modifier ${light.modifier.name}`, u: modifierU }]),
      ...(highSpeedU === 0 ? [] : [{ entry: `high speed ${light.unit.name}`, u: highSpeedU }]),
    ],
  }
}
