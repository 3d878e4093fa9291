/**
 * Turns a knob until a quantity of the set reaches a target. The quantity need not be monotone: the range is scanned,
 * and of all crossings the one nearest to today's setting is taken. Deterministic.
 */
import type { ComputedSet } from './computed-set.js'
import { type KnobRange, knobRange, settingsRound } from './knob-range.js'
import { knobToday } from './knob-value.js'
import type { Knob } from './knobs.js'

/** A figure of the set; undefined where it has none (nothing lit, nothing in frame). */
export type Quantity = (set: ComputedSet) => number | undefined

/** Several knobs turn together to one value: both backdrop lights, each by as many stops. */
export type Knobs = Knob | readonly Knob[]

interface Bounds {
  readonly from: number
  readonly to: number
}

const list = (knobs: Knobs): readonly Knob[] => ('knob' in knobs ? [knobs] : knobs)

const turned = (set: ComputedSet, knobs: Knobs, to: number): ComputedSet =>
  set.with(...list(knobs).map((knob) => ({ knob, to })))

/** What is computed is good to far less than this: a target at the very end of a range is reached there. */
const met = 1e-9

/**
 * Shares of the way from today to the farther end of the range at which the scan looks, on both sides: fine near today, where the answer is
 * wanted, coarse far off. A narrower excursion of the quantity than these steps may be missed.
 */
const scan = Array.from({ length: 6 }, (_, i) => (i / 5) ** 1.8)

/**
 * The knob's value at which the quantity is the target, to a ten-millionth of the range; undefined where it never is
 * within the range (the gear's and the room's own unless given), or where the set has no such knob.
 */
export const solve = (
  set: ComputedSet,
  knobs: Knobs,
  quantity: Quantity,
  target: number,
  range: Bounds | undefined = commonRange(set, knobs),
): number | undefined => {
  const today = knobToday(set.plan, list(knobs)[0]!)
  return range === undefined || today === undefined
    ? undefined
    : solveValue((value) => quantity(turned(set, knobs, value)), target, today, range)
}

/** The same for a value that turns what it will: a light moved and turned up as well. */
export const solveValue = (
  quantity: (value: number) => number | undefined,
  target: number,
  today: number,
  range: Bounds,
): number | undefined => {
  if (!(range.to >= range.from)) return undefined
  const off = (value: number): number | undefined => {
    const got = quantity(value)
    if (got === undefined || !Number.isFinite(got)) return undefined
    return Math.abs(got - target) < met ? 0 : got - target
  }
  const start = Math.min(range.to, Math.max(range.from, today))
  // Outward from today on both sides at once: the first crossing met is the nearest.
  const longer = Math.max(range.to - start, start - range.from)
  const up = scan.map((share) => Math.min(range.to, start + longer * share))
  const down = scan.map((share) => Math.max(range.from, start - longer * share))
  const offUp = [off(start)]
  const offDown = [offUp[0]]
  if (offUp[0] === 0) return start
  for (let i = 1; i < scan.length; i++) {
    const found = [crossing(up, offUp, i, off), crossing(down, offDown, i, off)].filter(
      (at) => at !== undefined,
    )
    if (found.length > 0)
      return found.reduce((best, at) => (Math.abs(at - today) < Math.abs(best - today) ? at : best))
  }
  return undefined
}

/** Where the quantity crosses between place i − 1 and place i of one side, if it does. */
const crossing = (
  places: readonly number[],
  offs: (number | undefined)[],
  i: number,
  off: (value: number) => number | undefined,
): number | undefined => {
  const [a, b] = [places[i - 1]!, places[i]!]
  if (a === b) return undefined
  offs[i] = off(b)
  const [fa, fb] = [offs[i - 1], offs[i]]
  if (fa === undefined || fb === undefined || fa * fb > 0) return undefined
  return root(off, a, fa, b, fb)
}

/**
 * A root between two places of unlike sign: the secant that forgets an end kept twice (Illinois; Dowell and Jarratt,
 * BIT 11, 1971), halved where that leaves the bracket. Ends at a ten-millionth of the bracket.
 */
const root = (
  off: (value: number) => number | undefined,
  from: number,
  offFrom: number,
  to: number,
  offTo: number,
): number => {
  let [a, fa, b, fb] = [from, offFrom, to, offTo]
  const enough = 1e-7 * Math.abs(to - from)
  for (let i = 0; i < 60 && Math.abs(b - a) > enough && fb !== 0; i++) {
    const secant = b - (fb * (b - a)) / (fb - fa)
    const at = Number.isFinite(secant) && (secant - a) * (secant - b) < 0 ? secant : (a + b) / 2
    const f = off(at)
    if (f === undefined) return at
    if (f * fb <= 0) [a, fa] = [b, fb]
    else fa /= 2
    ;[b, fb] = [at, f]
  }
  return b
}

/** Where all the knobs can be turned to; undefined if one of them cannot be turned at all. */
const commonRange = (set: ComputedSet, knobs: Knobs): KnobRange | undefined => {
  const ranges = list(knobs).map((knob) => knobRange(set.plan, knob))
  return ranges.reduce(
    (common, range) =>
      common &&
      range && {
        from: Math.max(common.from, range.from),
        to: Math.min(common.to, range.to),
        marks: common.marks && range.marks && common.marks.filter((mark) => isMark(range.marks!, mark)),
      },
  )
}

const isMark = (marks: readonly number[], value: number): boolean =>
  marks.some((mark) => Math.abs(mark - value) < 1e-6)

export type Goal = { readonly atLeast: number } | { readonly atMost: number }

/** Figures meet a limit rounded to a millionth. */
const atSetting = 1e-6

export interface Solved {
  /** What the knob can be set to. */
  readonly value: number
  /** The quantity there. */
  readonly reached: number
  readonly set: ComputedSet
}

/**
 * The setting nearest to today's that meets the goal, on the side of the crossing that does, rounded to what the gear
 * can be set to; undefined where no setting does. Today's own, where that meets it already.
 */
export const solveAtGear = (
  set: ComputedSet,
  knobs: Knobs,
  quantity: Quantity,
  goal: Goal,
  range: KnobRange | undefined = commonRange(set, knobs),
): Solved | undefined => {
  const today = knobToday(set.plan, list(knobs)[0]!)
  if (range === undefined || today === undefined) return undefined
  const target = 'atLeast' in goal ? goal.atLeast : goal.atMost
  const at = (value: number | undefined): Solved | undefined => {
    if (value === undefined) return undefined
    const after = turned(set, knobs, value)
    const reached = quantity(after)
    if (reached === undefined) return undefined
    const enough = 'atLeast' in goal ? reached >= target - atSetting : reached <= target + atSetting
    return enough ? { value, reached, set: after } : undefined
  }
  const now = at(today)
  if (now !== undefined) return now
  const value = solve(set, knobs, quantity, target, range)
  if (value === undefined) return undefined
  const { less, more } = settingsRound(set.plan, range, value)
  return [less, more]
    .filter((setting) => setting !== undefined)
    .sort((a, b) => Math.abs(a - today) - Math.abs(b - today))
    .reduce<Solved | undefined>((found, setting) => found ?? at(setting), undefined)
}
