/** Solving for what a mend says. */
import type { ComputedSet } from '../set/computed-set.js'
import type { Change } from '../set/knobs.js'
import { solveValue } from '../set/solve.js'

/** Mends aim one standard deviation inside the limit, and at least a tenth of a stop. */
export const inside = (u: number): number => Math.max(u, 0.1)

/** Stops and metres as they are set and read: what is solved is rounded to gear anyway. */
const close = 1e-2

/**
 * The value nearest to `from`, on the way to `to`, at which `quantity` comes to the target; undefined where it never does.
 *
 * @param tolerance of the quantity
 */
export const solveFor = (
  from: number,
  to: number,
  quantity: (value: number) => number | undefined,
  target: number,
  tolerance = close,
): number | undefined =>
  solveValue(
    (value) => {
      const got = quantity(value)
      return got !== undefined && Math.abs(got - target) <= tolerance ? target : got
    },
    target,
    from,
    { from: Math.min(from, to), to: Math.max(from, to) },
  )

interface Solving {
  readonly tolerance?: number
  readonly guide?: (set: ComputedSet) => number | undefined
}

/** Sets worked out in full until what quick light says is believed no more. */
const corrections = 4

/**
 * The same for a quantity of the set that `turned` makes of a set, `from` being where it stands today. It is solved by
 * quick light, and what that is off by is found on the set itself: so few sets are worked out in full.
 *
 * @param tolerance of the quantity
 * @param guide what is solved for by quick light, where that is not the quantity itself; it need only run alike
 */
export const solveSet = (
  set: ComputedSet,
  from: number,
  to: number,
  turned: (set: ComputedSet, value: number) => ComputedSet | undefined,
  quantity: (set: ComputedSet) => number | undefined,
  target: number,
  { tolerance = close, guide = quantity }: Solving = {},
): number | undefined => {
  const whole = at(set, from, turned, quantity)
  const quick = at(set.quick, from, turned, guide)
  const inFull = (): number | undefined => solveFor(from, to, whole, target, tolerance)
  let value = from
  for (let round = 0; round < corrections; round++) {
    const [is, guess] = [whole(value), quick(value)]
    if (is === undefined) return round === 0 ? inFull() : undefined
    if (Math.abs(is - target) <= tolerance) return value
    if (guess === undefined) return inFull()
    const next = solveFor(from, to, quick, target - is + guess, tolerance / 2)
    if (next === undefined) {
      const [now, end] = [whole(from), whole(to)]
      return now !== undefined && end !== undefined && (now - target) * (end - target) > 0
        ? undefined
        : inFull()
    }
    value = next
  }
  return inFull()
}

const at =
  (
    set: ComputedSet,
    today: number,
    turned: (set: ComputedSet, value: number) => ComputedSet | undefined,
    quantity: (set: ComputedSet) => number | undefined,
  ) =>
  (value: number): number | undefined => {
    const other = value === today ? set : turned(set, value)
    return other && quantity(other)
  }

/** The same change in stops for several lights. */
export const byStops = (lights: readonly string[], stops: number): readonly Change[] =>
  lights.map((light) => ({ knob: { knob: 'strength', light }, to: stops }))

/**
 * A light at another distance, turned so that it still meters the same at the subject; and by how many stops it gives
 * more than today. Undefined where it does not reach the subject.
 */
export const movedAndHeld = (
  set: ComputedSet,
  light: string,
  distance: number,
): { readonly set: ComputedSet; readonly stops: number } | undefined =>
  held(set, set.with({ knob: { knob: 'light-distance', light }, to: distance }), light)

/** After a change, each of the lights turned so that it meters at the subject what it did before. */
export const allHeld = (before: ComputedSet, changed: ComputedSet, lights: readonly string[]): ComputedSet =>
  lights.reduce((set, light) => held(before, set, light)?.set ?? set, changed)

/** The lights turned up that do not by themselves go on metering what they are to meter. */
export const moreFrom = (set: ComputedSet, lights: readonly string[], stops: number): readonly Change[] =>
  byStops(
    lights.filter((light) => set.strength(light)?.from !== 'meters'),
    stops,
  )

/** After a change, the light turned so that it meters at the subject what it did before. */
const held = (before: ComputedSet, changed: ComputedSet, light: string) => {
  const [was, is] = [own(before, light), own(changed, light)]
  if (was === undefined || is === undefined) return undefined
  // A light known by what it is to meter holds that by itself.
  const set =
    Math.abs(was - is) < 1e-9 ? changed : changed.with({ knob: { knob: 'strength', light }, to: was - is })
  const [gave, gives] = [before.strength(light), set.strength(light)]
  return gave === undefined || gives === undefined
    ? undefined
    : { set, stops: Math.log2(gives.candelaSeconds / gave.candelaSeconds) }
}

const own = (set: ComputedSet, light: string): number | undefined =>
  set.reading({ at: 'subject', of: [light], faces: 'camera' })?.figure.stops
