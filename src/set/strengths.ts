/** What the lights give by all that the plan says, readings included, and how sure that is; and what they give after a change. */
import type { Light, Plan } from '../language/plan.js'
import { ambientExposure, unknownStrength } from '../light/calibrate.js'
import { addParts, type Covariance, independent, renderingCause, type UncertainOf } from '../light/causes.js'
import { type Estimate, estimate, type Prior, type SumReading } from '../light/estimate.js'
import { uncertainties } from '../light/how-sure.js'
import { opensAtOnce } from '../light/shutter-loss.js'
import { priorStrength } from '../light/strength.js'
import { lazy } from '../scene/lazy.js'
import type { CandelaSeconds, FNumber, Stops } from '../units/quantity.js'
import type { HeldReading, LightStrength, UnusedReading } from './computed-set.js'
import type { Change } from './knobs.js'
import {
  ambientAsk,
  daylights,
  known,
  priorStrengths,
  remembered,
  type StrengthOf,
} from './prior-strengths.js'
import { readReadings, type UsedReading } from './read-reading.js'
import { ambientName, type Transport } from './transport.js'

export type { StrengthOf } from './prior-strengths.js'

export interface Knowledge {
  readonly strength: StrengthOf
  /** What the uncertainty of figures is made of. */
  readonly parts: UncertainOf
  /** Over those parts, as the readings leave it. */
  readonly covariance: Covariance
  /** Stops by which the readings turn what a light gives. */
  shift(light: string): number
  /** A reading of just this light goes before all else that is known of it. */
  settled(light: string): boolean
  /** Stops that the camera is found to render brighter than expected, by test frames. */
  rendering(): number
  readings(): readonly HeldReading[]
  readonly unused: readonly UnusedReading[]
}

export const estimatedKnowledge = (transport: Transport): Knowledge =>
  transport.plan.readings.length === 0 ? unread(transport) : read(transport)

const unread = (transport: Transport): Knowledge => {
  const strength = priorStrengths(transport)
  return {
    strength,
    parts: strength,
    covariance: independent,
    shift: () => 0,
    settled: () => false,
    rendering: () => 0,
    readings: () => [],
    unused: [],
  }
}

// ---------------------------------------------------------------- by readings

const read = (transport: Transport): Knowledge => {
  const { plan } = transport
  const { used, unused } = readReadings(transport)
  const stated = ambientStatement(transport)
  const sums = [...used.map(({ sum }) => sum), ...(stated === undefined ? [] : [stated])]
  if (sums.length === 0) return { ...unread(transport), unused }
  const named = new Set(sums.flatMap(({ lights }) => [...lights.keys()]))
  const settled = new Set(sums.flatMap(({ settles }) => settles ?? []))

  const before = priorStrengths(transport, stated !== undefined)
  const prior = remembered(
    (name) => before(name) ?? (named.has(name) ? unknownStrength(plan.lights.get(name), plan) : undefined),
  )
  const found = lazy(() => estimate((name) => inStops(prior(name)), sums))
  return {
    strength: remembered((name) => {
      const was = prior(name)
      const parts = found().of(name)
      if (was === undefined || parts === undefined) return undefined
      const row = new Map<string, number>()
      addParts(row, name, parts, 1)
      const u = Math.sqrt(Math.max(0, found().product(row, row)))
      if (u > uncertainties.unsure) return undefined
      const candelaSeconds = (2 ** found().stops(name)!) as CandelaSeconds
      return { candelaSeconds, u, from: settled.has(name) ? 'reading' : was.from }
    }),
    parts: (name) => found().of(name),
    covariance: { product: (a, b) => found().product(a, b) },
    shift: (name) => (found().stops(name) ?? 0) - (inStops(prior(name))?.stops ?? 0),
    settled: (name) => settled.has(name),
    rendering: lazy(() => found().turn(new Map([[renderingCause, uncertainties.rendering]]))),
    readings: lazy(() => held(used, found())),
    unused,
  }
}

const inStops = (strength: LightStrength | undefined): Prior | undefined =>
  strength && { ...strength, stops: Math.log2(strength.candelaSeconds) }

/** What the plan says that the ambient reads, where sun and windows are part of it: a statement of their sum. */
const ambientStatement = (transport: Transport): SumReading | undefined => {
  const { plan } = transport
  const whole = ambientExposure(plan)
  const lights = daylights(plan)
  const probe = transport.asked(ambientAsk)?.probe
  if (whole === undefined || probe === undefined || lights.length === 0) return undefined
  const parts = [ambientName, ...lights.map(({ name }) => name)].flatMap((name) => {
    const response = probe.response(name)
    return response > 0 ? [[name, { stops: Math.log2(response) }] as const] : []
  })
  return parts.length === 0
    ? undefined
    : {
        stops: Math.log2(whole),
        lights: new Map(parts),
        u: uncertainties.reading,
        yields: ambientName,
      }
}

const held = (used: readonly UsedReading[], found: Estimate): readonly HeldReading[] => {
  const against = found.held()
  return used.map(({ index, lights, shows }, i) => {
    const { difference, u } = against[i]!
    const predicted = (shows * 2 ** (-difference / 2)) as FNumber
    return { index, lights, read: shows, predicted, difference: difference as Stops, u }
  })
}

// ---------------------------------------------------------------- what-if

/**
 * After a change: strengths as estimated before it, turned by what the change turns. A light that is known by what it
 * is to meter goes on metering that, as its plan says after the change.
 */
export const carriedKnowledge = (
  before: { readonly plan: Plan; readonly knowledge: Knowledge },
  transport: Transport,
  plan: Plan,
  changes: readonly Change[],
): Knowledge => {
  const { knowledge } = before
  return {
    ...knowledge,
    strength: remembered((name) => {
      const was = knowledge.strength(name)
      if (was === undefined) return undefined
      const light = plan.lights.get(name)
      if (was.from === 'meters' && light !== undefined)
        return turned(known(transport, plan, light), knowledge.shift(name), was.u)
      const by =
        changes.reduce((sum, change) => sum + turnedBy(change, name), 0) +
        rerated(before.plan, plan, name, changes)
      return turned(was, by, was.u)
    }),
  }
}

const turned = (strength: LightStrength | undefined, by: number, u: number): LightStrength | undefined =>
  strength === undefined || by === 0
    ? strength
    : { ...strength, candelaSeconds: (strength.candelaSeconds * 2 ** by) as CandelaSeconds, u }

const turnedBy = ({ knob, to }: Change, name: string): number =>
  knob.knob === 'strength' && knob.light === name ? to : 0

/** Stops by which zoom and shutter change what a light gives of its power; its power too, where it outlasts a leaf shutter. */
const rerated = (before: Plan, after: Plan, name: string, changes: readonly Change[]): number => {
  const cuts = opensAtOnce(before.camera)
  const touched = changes.some(
    ({ knob }) =>
      knob.knob === 'shutter' ||
      ((knob.knob === 'zoom' || (cuts && knob.knob === 'strength')) && knob.light === name),
  )
  if (!touched) return 0
  const [was, is] = [before.lights.get(name), after.lights.get(name)]
  const from = was && ofPower(was, before)
  const to = is && ofPower(is, after)
  if (from !== undefined && to !== undefined) return Math.log2(to / from)
  return was?.unit.kind === 'flash' ? 0 : Math.log2(after.camera.shutter / before.camera.shutter)
}

/** What it gives for each share of full power that it is set to: at full power where it states none. */
const ofPower = (light: Light, plan: Plan): number | undefined => {
  const { unit } = light
  if (unit.kind !== 'flash' && unit.kind !== 'continuous') return undefined
  const power = light.power ?? unit.power.to
  const strength = priorStrength({ ...light, power }, plan)
  return strength && strength.candelaSeconds / power
}
