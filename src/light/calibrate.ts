/**
 * What a light gives by what is known of it before any reading: a calibration of the kit, what it is said to meter, its
 * rating. Readings are weighed against it in `estimate`.
 */
import type { KitMeasurement, Light, Plan } from '../language/plan.js'
import type { CandelaSeconds, LuxSeconds, Metres, PowerShare, Seconds } from '../units/quantity.js'
import { add, partsOf, type UncertainStrength } from './causes.js'
import { zoomOf } from './emission.js'
import { luxFor, luxSecondsFor, luxSecondsOfReflected } from './exposure.js'
import { uncertainties } from './how-sure.js'
import { lossesBeyondFront, priorStrength, type Strength } from './strength.js'

/** How a light's source answers meters: what geometry adds to its strength. */
export interface MeteredAt {
  /** Where `meters` says, else at the point of its role: dome toward the light, flat and outward at the backdrop. */
  metered(): number
  /** At the subject, dome toward the light: what `reads` of a sun or a window means. */
  subject(): number
  /** On its axis at a distance, dome toward it: where a kit's calibration was taken. */
  onAxis(distance: Metres): number
}

/** Undefined where nothing tells: no power and no `meters`, no `reads`. */
export const calibratedStrength = (light: Light, plan: Plan, at: MeteredAt): Strength | undefined =>
  fromMeasured(light, plan, at) ??
  (light.power === undefined ? fromMeters(light, plan, at) : undefined) ??
  priorStrength(light, plan) ??
  fromMeters(light, plan, at) ??
  fromReads(light, plan, at)

/** cd·s (sun and ambient: lx·s) of a light of which not even a rating is known. */
const anything = 100

/**
 * A light of which nothing is known but that a reading counts it: at the middle of its unit's range where that is rated,
 * ten stops unsure, so that readings alone say what it gives.
 */
export const unknownStrength = (light: Light | undefined, plan: Plan): Strength => {
  const rated =
    light?.unit.kind === 'flash' || light?.unit.kind === 'continuous'
      ? priorStrength({ ...light, power: middle(light.unit.power) }, plan)
      : undefined
  return strength(rated?.candelaSeconds ?? anything, uncertainties.nothingKnown, 'reading')
}

const middle = ({ from, to }: { readonly from: number; readonly to: number }): PowerShare =>
  Math.sqrt(from * to) as PowerShare

// ---------------------------------------------------------------- ambient

/** A sun or a window: what it gives at the point where the ambient was read. */
export interface AmbientPart extends UncertainStrength {
  readonly light: string
  readonly luxSeconds: number
}

/** What the plan's ambient reading was, over the camera's shutter. */
export const ambientExposure = ({ ambient, camera }: Plan): LuxSeconds | undefined =>
  ambient && statedExposure(ambient, camera.shutter)

/**
 * Ambient light as the plan states it: all that is there with the flashes off, less what sun and windows give of it. The
 * less is left, the less sure it is, and the more so the more sun and windows are.
 *
 * @param response of a dome at the subject, facing the camera
 * @param open the statement is weighed among the readings, and only says where to start from
 */
export const ambientStrength = (
  plan: Plan,
  response: number,
  parts: readonly AmbientPart[],
  open: boolean,
): Strength | undefined => {
  const whole = ambientExposure(plan)
  if (whole === undefined || response <= 0) return open ? unknownStrength(undefined, plan) : undefined
  const left = whole - parts.reduce((sum, { luxSeconds }) => sum + luxSeconds, 0)
  if (open) return strength((left > 0 ? left : whole / 4) / response, uncertainties.nothingKnown, 'stated')
  if (left <= 0) return undefined
  const row = new Map<string, number>()
  for (const part of parts)
    for (const { entry, u } of partsOf(part.light, part)) add(row, entry, (-u * part.luxSeconds) / left)
  const u = Math.hypot((uncertainties.reading * whole) / left, ...row.values())
  if (u > uncertainties.unsure) return undefined
  const shared = [...row].map(([entry, by]) => ({ entry, u: by }))
  return { ...strength(left / response, u, 'stated'), ...(shared.length === 0 ? {} : { shared }) }
}

// ---------------------------------------------------------------- kit, meters, reads

const stopsBetween = (today: PowerShare, then: PowerShare): number => Math.log2(today / then)

const fromMeasured = (light: Light, plan: Plan, at: MeteredAt): Strength | undefined => {
  if (light.power === undefined) return undefined
  const found = plan.measured.filter((one) => fits(one, light)).at(-1)
  if (found === undefined) return undefined
  const response = at.onAxis(found.distance)
  if (response <= 0) return undefined
  const scaled = stopsBetween(light.power, found.power)
  const then = luxSecondsFor(found.reads, found.iso) / response
  const lost = lossesBeyondFront(light, plan)
  const u = uncertainties.measured + uncertainties.perStopScaled * Math.abs(scaled)
  // Lights of one measurement have all in common but their own 0.15, as those of one rating.
  const shared = [
    {
      entry: `measured ${found.unit} ${found.modifier ?? ''}`,
      u: Math.sqrt(u ** 2 - uncertainties.ownPart ** 2),
    },
    { entry: `high speed ${light.unit.name}`, u: lost.u },
  ].filter((part) => part.u > 0)
  return {
    ...strength(then * 2 ** (scaled - lost.stops), Math.hypot(u, lost.u), 'measured'),
    ...(shared.length === 0 ? {} : { shared }),
  }
}

/** Inside a modifier the zoom changes which part is filled, not the total. */
const fits = (one: KitMeasurement, light: Light): boolean => {
  if (one.unit !== light.unit.name || one.modifier !== light.modifier?.name) return false
  if (light.modifier !== undefined || light.unit.kind !== 'flash' || one.zoom === undefined) return true
  return Math.abs(Math.log(one.zoom / zoomOf(light.unit, light.zoom))) < 0.01
}

/** At the camera's ISO, its filter off. */
const fromMeters = (light: Light, { camera }: Plan, at: MeteredAt): Strength | undefined => {
  if (light.meters === undefined) return undefined
  const response = at.metered()
  return response <= 0
    ? undefined
    : strength(luxSecondsFor(light.meters.reads, camera.iso) / response, uncertainties.meters, 'meters')
}

const fromReads = (light: Light, { camera }: Plan, at: MeteredAt): Strength | undefined => {
  if (light.reads === undefined) return undefined
  const response = at.subject()
  return response <= 0
    ? undefined
    : strength(statedExposure(light.reads, camera.shutter) / response, uncertainties.reading, 'stated')
}

/** Reflectance of the grey card that a reflected reading of the light at the subject is taken to be of. */
const greyCard = 0.18

/** What continuous light gives over the camera's shutter, from what a meter showed at its own time. */
const statedExposure = (read: NonNullable<Light['reads']>, shutter: Seconds): LuxSeconds =>
  (read.kind === 'reflected'
    ? luxSecondsOfReflected(read.reads, read.iso, greyCard) * (shutter / read.shutter)
    : luxFor(read.reads, read.shutter, read.iso) * shutter) as LuxSeconds

const strength = (candelaSeconds: number, u: number, from: Strength['from']): Strength => ({
  candelaSeconds: candelaSeconds as CandelaSeconds,
  u,
  from,
})
