/**
 * What a light gives, by the best that is known of it: a reading of it alone, a calibration of the kit, what it is said
 * to meter, its rating. Readings of several lights at once say nothing here: they fix sums, not strengths.
 */
import type { KitMeasurement, Light, Plan } from '../language/plan.js'
import type { CandelaSeconds, LuxSeconds, Metres, PowerShare, Seconds } from '../units/quantity.js'
import { zoomOf } from './emission.js'
import { luxFor, luxSecondsFor, luxSecondsOfReflected } from './exposure.js'
import { uncertainties } from './how-sure.js'
import { lossesBeyondFront, priorStrength, type Strength } from './strength.js'

/** A reading of one light. */
export interface LoneReading {
  /** Exposure that was read, over the camera's shutter where the light is continuous. */
  readonly luxSeconds: LuxSeconds
  /** The light's response at the meter, with the light where it stood then: 1/m². */
  readonly response: number
  /** The power that it was set to then; undefined: today's. */
  readonly power: PowerShare | undefined
  readonly u: number
}

/** How a light's source answers meters: what geometry adds to its strength. */
export interface MeteredAt {
  readonly readings: readonly LoneReading[]
  /** Where `meters` says, else at the point of its role: dome toward the light, flat and outward at the backdrop. */
  metered(): number
  /** At the subject, dome toward the light: what `reads` of a sun or a window means. */
  subject(): number
  /** On its axis at a distance, dome toward it: where a kit's calibration was taken. */
  onAxis(distance: Metres): number
}

/** Undefined where nothing tells: no power and no `meters`, no `reads`, and no reading. */
export const calibratedStrength = (light: Light, plan: Plan, at: MeteredAt): Strength | undefined =>
  fromReadings(light, at.readings) ??
  fromMeasured(light, plan, at) ??
  (light.power === undefined ? fromMeters(light, plan, at) : undefined) ??
  priorStrength(light, plan) ??
  fromMeters(light, plan, at) ??
  fromReads(light, plan, at)

/** Ambient light as the plan states it; `response`: of a dome at the subject, facing the camera. */
export const ambientStrength = (
  { ambient, camera }: Plan,
  readings: readonly LoneReading[],
  response: number,
): Strength | undefined => {
  const read = meanOf(readings.map((reading) => ({ stops: strengthStops(reading), u: reading.u })))
  if (read !== undefined) return strength(2 ** read.stops, read.u, 'reading')
  if (ambient === undefined || response <= 0) return undefined
  return strength(statedExposure(ambient, camera.shutter) / response, uncertainties.reading, 'stated')
}

// ---------------------------------------------------------------- readings

/** Each reading scaled from its power to today's by the ratio of the two; 0.05 more for each stop. */
const fromReadings = (light: Light, readings: readonly LoneReading[]): Strength | undefined => {
  const mean = meanOf(
    readings
      .filter((reading) => reading.luxSeconds > 0 && reading.response > 0)
      .map((reading) => {
        const scaled = stopsBetween(light.power, reading.power)
        return {
          stops: strengthStops(reading) + scaled,
          u: reading.u + uncertainties.perStopScaled * Math.abs(scaled),
        }
      }),
  )
  return mean && strength(2 ** mean.stops, mean.u, 'reading')
}

const stopsBetween = (today: PowerShare | undefined, then: PowerShare | undefined): number =>
  today === undefined || then === undefined ? 0 : Math.log2(today / then)

const strengthStops = ({ luxSeconds, response }: LoneReading): number => Math.log2(luxSeconds / response)

/** Weighted by certainty. The same meter reads them all, so they together are no surer than the best. */
const meanOf = (
  known: readonly { readonly stops: number; readonly u: number }[],
): { readonly stops: number; readonly u: number } | undefined => {
  if (known.length === 0) return undefined
  const weights = known.map(({ u }) => u ** -2)
  const whole = weights.reduce((sum, weight) => sum + weight, 0)
  return {
    stops: known.reduce((sum, { stops }, i) => sum + stops * weights[i]!, 0) / whole,
    u: Math.min(...known.map(({ u }) => u)),
  }
}

// ---------------------------------------------------------------- kit, meters, reads

const fromMeasured = (light: Light, plan: Plan, at: MeteredAt): Strength | undefined => {
  if (light.power === undefined) return undefined
  const found = plan.measured.filter((one) => fits(one, light)).at(-1)
  if (found === undefined) return undefined
  const response = at.onAxis(found.distance)
  if (response <= 0) return undefined
  const scaled = stopsBetween(light.power, found.power)
  const then = luxSecondsFor(found.reads, found.iso) / response
  const lost = lossesBeyondFront(light, plan)
  return strength(
    then * 2 ** (scaled - lost.stops),
    Math.hypot(uncertainties.measured + uncertainties.perStopScaled * Math.abs(scaled), lost.u),
    'measured',
  )
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
