/** The program held against the tracer on one set: the same places, the same strengths, exposures in stops. */
import type { Plan } from '../../src/language/plan.js'
import type { Receptor } from '../../src/light/receptor.js'
import { computeSet } from '../../src/set/compute-set.js'
import type { ComputedSet } from '../../src/set/computed-set.js'
import { bodiesOf, lampsOf } from './from-scene.js'
import { gridOf, type NamedPlace, placesOf } from './places.js'
import { type Effort, type Traced, Tracer } from './trace.js'

/** The most that the program may be off: at points and in penumbra, stops; what is fainter than this under the key is not judged. */
export const bounds = { point: 0.1, penumbra: 0.15, underKey: 6, error: 0.02 } as const

export interface Compared {
  readonly place: NamedPlace
  /** Of the tracer, against the key: stops. */
  readonly overKey: number
  /** Program over tracer, stops. */
  readonly off: number
  /** The tracer's standard error, stops. */
  readonly error: number
  /** Bright enough and sure enough to be judged. */
  readonly judged: boolean
  /** How far it may be off, stops. */
  readonly bound: number
  /** The tracer finds next to nothing there, the program finds more. */
  readonly glows: boolean
  /** Beyond its bound, or glows. */
  readonly wrong: boolean
  readonly byLight: readonly LightCompared[]
}

/** lx·s, straight and by way of surfaces. */
export interface LightCompared {
  readonly light: string
  readonly tracer: { readonly direct: number; readonly indirect: number }
  readonly program: { readonly direct: number; readonly indirect: number }
}

export interface ComparedSet {
  readonly plan: Plan
  readonly places: readonly Compared[]
}

export interface Judge {
  readonly tracer: Tracer
  /** What the lights give, in the tracer's order: cd·s. */
  readonly weights: readonly number[]
  readonly places: readonly NamedPlace[]
}

export const judgeOf = (plan: Plan, set: ComputedSet, seed: number): Judge => {
  const lamps = lampsOf(plan, set.scene)
  const tracer = new Tracer(bodiesOf(set.scene), lamps, seed)
  const weights = lamps.map(({ name }) => set.strength(name)!.candelaSeconds)
  return { tracer, weights, places: placesOf(plan, set.scene, tracer, weights) }
}

const lightBy = (
  set: ComputedSet,
  { tracer, weights }: Judge,
  place: NamedPlace,
  traced: Traced,
): readonly LightCompared[] =>
  tracer.lamps.map(({ name }, i) => {
    const all = set.exposure(receptorAt(place), [name])?.luxSeconds ?? 0
    const direct = set.exposure(receptorAt(place), [name], ['direct'])?.luxSeconds ?? 0
    return {
      light: name,
      tracer: { direct: traced.direct[i]! * weights[i]!, indirect: traced.indirect[i]! * weights[i]! },
      program: { direct, indirect: all - direct },
    }
  })

/** As the program's rules ask: flat places on backdrop, floor and table lie on the surface there. */
const receptorAt = ({ at, normal, kind, against, onSurface }: NamedPlace): Receptor => ({
  at,
  normal,
  kind,
  ...(against === undefined ? {} : { against }),
  ...(onSurface === true ? { onSurface } : {}),
})

/**
 * @param few at most so many places, evenly from the list; the key is always among them
 * @param grid the key, and each so many of the grid on backdrop and floor, instead of the places that matter
 */
export const compareSet = (
  plan: Plan,
  effort: Effort,
  few = Number.POSITIVE_INFINITY,
  grid?: number,
): ComparedSet => {
  const set = computeSet(plan)
  const judge = judgeOf(plan, set, effort.seed)
  const { tracer, weights } = judge
  const places =
    grid === undefined ? judge.places : [judge.places[0]!, ...gridOf(plan, set.scene, tracer, weights, grid)]
  const every = Math.max(1, places.length / few)
  const asked = places.filter((_, i) => Math.floor(i / every) !== Math.floor((i - 1) / every))
  const traced = asked.map((place) => tracer.at(place, weights, effort))
  const key = traced[0]!.total
  const compared = asked.map((place, i): Compared => {
    const { total, error } = traced[i]!
    const got = set.exposure(receptorAt(place), 'all')?.luxSeconds ?? 0
    const off = Math.log2(got / total)
    const overKey = Math.log2(total / key)
    const judged = overKey >= -bounds.underKey && error <= bounds.error
    const bound = place.penumbra ? bounds.penumbra : bounds.point
    // Where the tracer finds next to nothing the program must find no more.
    const glows = overKey < -bounds.underKey && Math.log2(got / key) > bound - bounds.underKey
    const byLight = lightBy(set, judge, place, traced[i]!)
    return {
      place,
      overKey,
      off,
      error,
      judged,
      bound,
      glows,
      wrong: glows || (judged && !(Math.abs(off) <= bound)),
      byLight,
    }
  })
  return { plan, places: compared }
}
