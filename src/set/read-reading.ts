/** What each reading of the plan says of the light: which lights gave it, as they stood and were set then, and how sure it is. */
import type { Light, MeterReading, Plan } from '../language/plan.js'
import type { SharedPart } from '../light/causes.js'
import { renderingCause } from '../light/causes.js'
import type { ReadLight, SumReading } from '../light/estimate.js'
import { fNumberFor, luxSecondsFor, luxSecondsOfReflected } from '../light/exposure.js'
import { uncertainties } from '../light/how-sure.js'
import { leafLoss } from '../light/shutter-loss.js'
import { modellingStrength } from '../light/strength.js'
import { linearOfCode, stopsToRecord } from '../picture/tone.js'
import type { Scene } from '../scene/scene.js'
import { subtract } from '../scene/vector.js'
import type { FNumber, LuxSeconds } from '../units/quantity.js'
import { applyChanges } from './apply-change.js'
import { cameraSetting } from './camera-setting.js'
import type { MeterAsk, UnusedReading } from './computed-set.js'
import { daylights } from './prior-strengths.js'
import { reflectanceAt } from './surface-at.js'
import { ambientName, modellingName, type Transport } from './transport.js'

export interface UsedReading {
  /** In the plan's list. */
  readonly index: number
  /** All that it is of, also what gives nothing there. */
  readonly lights: readonly string[]
  /** What the meter showed; for a test frame what an incident meter would have shown, flat on the surface. */
  readonly shows: FNumber
  readonly sum: SumReading
}

/** Codes nearer to the ends than these say only "at least" or "at most". */
const codes = { least: 3, most: 252 }

/** More readings than anyone takes; the rest would only cost time. */
const mostReadings = 32

/** Where no light gives more from unit strength, nothing arrives: a thousandth of what a candela gives at a kilometre. */
const leastResponse = 1e-9

export const readReadings = (
  transport: Transport,
): { readonly used: readonly UsedReading[]; readonly unused: readonly UnusedReading[] } => {
  const used: UsedReading[] = []
  const unused: UnusedReading[] = []
  transport.plan.readings.forEach((reading, index) => {
    const read = used.length === mostReadings ? 'too many readings' : readOne(transport, reading)
    if (typeof read === 'string') unused.push({ index, because: read })
    else used.push({ index, ...read })
  })
  return { used, unused }
}

const readOne = (
  transport: Transport,
  reading: MeterReading,
): Omit<UsedReading, 'index'> | UnusedReading['because'] => {
  const { plan, scene } = transport
  const lights = lightsOf(plan, reading)
  if (lights.some((name) => plan.lights.get(name)?.on === false)) return 'light is off'
  if (lights.some((name) => transport.source(name) === undefined)) return 'light not computed'
  const read = exposureOf(plan, scene, reading)
  if (typeof read === 'string') return read
  const then = asTheyStood(transport, reading, lights)
  const place = then.asked({ ...read.place, of: lights })
  if (place === undefined) return 'unknown point'
  const parts = new Map<string, ReadLight>()
  let most = 0
  for (const name of lights) {
    const response = place.probe.response(name)
    if (response > 0) parts.set(name, partOf(plan, reading, name, response, read))
    most = Math.max(most, response)
  }
  const [first] = parts.keys()
  if (first === undefined || most <= leastResponse) return 'no light arrives'
  const settles = reading.of === 'ambient' ? ambientName : parts.size === 1 ? first : undefined
  return {
    lights,
    shows: 'reads' in reading.read ? reading.read.reads : fNumberFor(read.luxSeconds, reading.iso),
    sum: {
      stops: Math.log2(read.luxSeconds),
      lights: parts,
      u: read.own,
      shared: read.shared,
      ...(settles === undefined ? {} : { settles }),
    },
  }
}

/** A light that the plan does not have is named all the same. The ambient, as a meter reads it, holds what sun and windows give. */
const lightsOf = (plan: Plan, { of }: MeterReading): readonly string[] => {
  if (of === 'ambient') return [ambientName, ...daylights(plan).map(({ name }) => name)]
  if (of !== 'all') return [...new Set(of)]
  const on = [...plan.lights.values()].filter((light) => light.on)
  return [
    ...on.map(({ name }) => name),
    ...on.filter((light) => hasLamp(light, plan)).map(({ name }) => modellingName(name)),
    ...(plan.ambient !== undefined || plan.readings.some((other) => other.of === 'ambient')
      ? [ambientName]
      : []),
  ]
}

const hasLamp = (light: Light, plan: Plan): boolean => modellingStrength(light, plan) !== undefined

// ---------------------------------------------------------------- what was read

interface ReadExposure {
  readonly place: Omit<MeterAsk, 'of'>
  readonly luxSeconds: LuxSeconds
  /** In all, for one light at the settings it was read at; one standard deviation, stops. */
  readonly u: number
  /** What of it is the reading's own, what it has in common with other figures, and with this light's other readings. */
  readonly own: number
  readonly shared: readonly SharedPart[]
  readonly byLight: number
}

const exposureOf = (
  plan: Plan,
  scene: Scene,
  reading: MeterReading,
): ReadExposure | UnusedReading['because'] => {
  const point = scene.points.get(reading.at)
  if (point === undefined) return 'unknown point'
  const { at, read } = reading
  if ('reads' in read && reading.kind === 'incident') {
    const facing = facingOf(scene, reading)
    if (facing === undefined) return 'unknown point'
    return {
      place: { at, dome: reading.dome, faces: facing },
      luxSeconds: luxSecondsFor(read.reads, reading.iso),
      ...incidentU(reading.dome),
    }
  }
  // What a surface gives back, it has received as a flat receptor lying on it.
  const place = { at, dome: 'flat', faces: 'out' } as const
  const reflectance = reflectanceAt(plan, point.on)
  if (reflectance === undefined) return 'unknown surface'
  if ('reads' in read) {
    const u = uncertainties.reflectedReading
    const luxSeconds = luxSecondsOfReflected(read.reads, reading.iso, reflectance)
    return { place, luxSeconds, u, own: u, shared: [], byLight: 0 }
  }
  if (read.records < codes.least) return 'records black'
  if (read.records > codes.most) return 'records white'
  const setting = cameraSetting(plan, scene)
  const over = stopsToRecord(reflectance, linearOfCode(read.records)) + (setting.losses ?? 0)
  const { testFrame: u, rendering } = uncertainties
  return {
    place,
    luxSeconds: (luxSecondsFor(setting.aperture, setting.iso) * 2 ** over) as LuxSeconds,
    u,
    own: Math.sqrt(u ** 2 - rendering ** 2),
    // A camera that renders brighter does so in the test frame as in the picture.
    shared: [{ entry: renderingCause, u: rendering }],
    byLight: 0,
  }
}

/**
 * A dome and a flat receptor answer one light differently, as it is large or small, ahead or aside: two readings of it by
 * the same kind share what is theirs of that, by different kinds they have it with opposite signs.
 */
export const incidentU = (
  dome: 'raised' | 'flat',
): Pick<ReadExposure, 'u' | 'own' | 'shared' | 'byLight'> => {
  const { reading: u, flatOverDome } = uncertainties
  const half = flatOverDome / 2
  return { u, own: Math.sqrt(u ** 2 - half ** 2), shared: [], byLight: dome === 'raised' ? half : -half }
}

export const kindCause = (light: string): string => `dome ${light}`

/** Undefined for a point that the scene lacks. */
export const facingOf = (scene: Scene, { faces, at, of }: MeterReading): MeterAsk['faces'] | undefined => {
  if (faces === 'camera' || faces === 'out') return faces
  if (faces === 'backdrop') return { direction: [0, 1, 0] }
  if (faces === 'light') {
    const lone = typeof of !== 'string' && of.length === 1 ? of[0]! : undefined
    return lone !== undefined && scene.lights.has(lone) ? { light: lone } : 'camera'
  }
  const from = scene.points.get(at)
  const to = scene.points.get(faces.point)
  return from && to && { direction: subtract(to.at, from.at) }
}

// ---------------------------------------------------------------- as it was then

/** Metres of tape that count as the same place. */
const samePlace = 1e-3

/** The set with the lights where they stood when they were read. */
const asTheyStood = (transport: Transport, { taken }: MeterReading, lights: readonly string[]): Transport => {
  const changes = lights.flatMap((name) => {
    const then = taken?.get(name)?.distance
    const today = transport.scene.lights.get(name)?.distance
    return then === undefined || today === undefined || Math.abs(then - today) <= samePlace
      ? []
      : [{ knob: { knob: 'light-distance', light: name }, to: then } as const]
  })
  return changes.length === 0
    ? transport
    : transport.moved(applyChanges(transport.plan, changes, () => transport.scene))
}

/**
 * Scaled from its power then to today's; 0.05 stop less sure for each stop, alike for all readings at that power. The meter
 * is taken to have been set to the plan's shutter time and to have fired the light by its trigger: what a leaf shutter cuts off a
 * long or late flash, it did not see either.
 */
const partOf = (
  plan: Plan,
  { taken }: MeterReading,
  name: string,
  response: number,
  { u, byLight }: ReadExposure,
): ReadLight => {
  const light = plan.lights.get(name)
  const today = light?.power
  const then = taken?.get(name)?.power
  const scaled =
    light === undefined || today === undefined || then === undefined
      ? 0
      : Math.log2(then / today) +
        leafLoss(light, plan).stops -
        leafLoss({ ...light, power: then }, plan).stops
  const whole = u + uncertainties.perStopScaled * Math.abs(scaled)
  return {
    stops: Math.log2(response) + scaled,
    shared: [
      ...(byLight === 0 ? [] : [{ entry: kindCause(name), u: byLight }]),
      ...(scaled === 0 ? [] : [{ entry: `scaled ${name} ${then}`, u: Math.sqrt(whole ** 2 - u ** 2) }]),
    ],
  }
}
