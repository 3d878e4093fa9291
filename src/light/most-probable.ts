/**
 * The most probable causes behind readings of sums of light: Gauss–Newton on independent unit normals. A reading is
 * log₂ of a sum of lights, each a power of two that is linear in the causes, and what the reading itself adds. Systems are
 * as large as there are readings, which are fewer than causes: HHᵀ + R.
 */
import { factored, forward, solved } from './positive.js'

/** Stops for each cause, by its index. */
export type Row = readonly (readonly [cause: number, by: number])[]

/** One reading. */
export interface Sum {
  /** log₂ of what was read. */
  readonly read: number
  /** Variance of its own, stops²; over 0. */
  readonly variance: number
  /** Each light: log₂ of what it gives there by what is known beforehand, and what turns it. At least one. */
  readonly lights: readonly { readonly stops: number; readonly row: Row }[]
  /** What turns the reading as a whole. */
  readonly row: Row
}

export interface Settled {
  /** The most probable causes, in standard deviations. */
  readonly causes: Float64Array
  /** K, one row for each reading: I − KᵀK is the covariance of the causes. */
  readonly known: readonly Float64Array[]
  /** Steps that it took. */
  readonly steps: number
}

/** Steps where readings are much at odds: each gains almost nothing, and the last are worth no waiting. */
const mostSteps = (readings: number, causes: number): number =>
  Math.round(Math.min(200, Math.max(8, 4e6 / (readings ** 2 * causes))))
/** A step that promises less than this share of the sum of squares is the last: the sum has no more digits. */
const lastGain = 1e-15
/** A step is not cut to less than this part. */
const leastPart = 1e-6

/**
 * Least squares of causes and readings together. Each reading's own variance stands on the diagonal, so every system has
 * a solution, whatever is missing, redundant or at odds; a step that gains nothing is halved until it does, so the sum
 * of squares never rises.
 */
export const settle = (sums: readonly Sum[], size: number): Settled => {
  let at = place(sums, new Float64Array(size))
  const most = mostSteps(sums.length, size)
  let steps = 0
  while (steps < most) {
    const step = stepFrom(sums, at)
    const gain = -slopeAlong(sums, at, step)
    if (gain === 0) break
    const last = gain <= lastGain * (1 + at.cost)
    const next = last ? place(sums, moved(at, step, 1)) : lower(sums, at, step, gain)
    steps++
    if (next === undefined) break
    at = next
    if (last) break
  }
  return { causes: at.causes, known: knownBy(sums, at.answers), steps }
}

/** As far along the step as lowers the cost; undefined where nothing does. */
const lower = (sums: readonly Sum[], from: Place, step: Float64Array, gain: number): Place | undefined => {
  for (let part = 1; part > leastPart; part /= 2) {
    const tried = place(sums, moved(from, step, part))
    if (tried.cost <= from.cost - 1e-4 * part * gain) return tried
  }
  return undefined
}

const moved = ({ causes }: Place, step: Float64Array, part: number): Float64Array<ArrayBuffer> =>
  Float64Array.from(causes, (one, i) => one + part * step[i]!)

// ---------------------------------------------------------------- readings

interface Place {
  readonly causes: Float64Array
  readonly answers: readonly Answer[]
  /** Half the sum of squares. */
  readonly cost: number
}

interface Answer {
  /** Stops that were read over what should be. */
  readonly off: number
  /** ∂/∂cause of what should be read. */
  readonly slope: Float64Array
}

const place = (sums: readonly Sum[], causes: Float64Array): Place => {
  const answers = sums.map((sum) => answer(sum, causes))
  let cost = dot(causes, causes)
  for (let i = 0; i < sums.length; i++) cost += answers[i]!.off ** 2 / sums[i]!.variance
  return { causes, answers, cost: cost / 2 }
}

/** What a reading should say if the causes were these. */
const answer = (sum: Sum, causes: Float64Array): Answer => {
  const at = sum.lights.map(({ stops, row }) => stops + along(row, causes))
  const most = Math.max(...at)
  const given = at.map((stops) => 2 ** (stops - most))
  const whole = given.reduce((all, one) => all + one, 0)
  const slope = new Float64Array(causes.length)
  for (let i = 0; i < given.length; i++)
    for (const [cause, by] of sum.lights[i]!.row) slope[cause]! += (given[i]! / whole) * by
  for (const [cause, by] of sum.row) slope[cause]! += by
  return { off: sum.read - (most + Math.log2(whole) + along(sum.row, causes)), slope }
}

const along = (row: Row, causes: Float64Array): number => {
  let sum = 0
  for (const [cause, by] of row) sum += by * causes[cause]!
  return sum
}

// ---------------------------------------------------------------- steps

/** Hᵀ(HHᵀ + R)⁻¹(off + H·causes) − causes: to where the readings, taken as linear, are answered best. */
const stepFrom = (sums: readonly Sum[], { causes, answers }: Place): Float64Array => {
  const size = sums.length
  const off = Float64Array.from(answers, (one) => one.off + dot(one.slope, causes))
  const weights = solved(factored(spread(sums, answers), size), size, off)
  const step = causes.map((one) => -one)
  for (let i = 0; i < size; i++) {
    const { slope } = answers[i]!
    for (let k = 0; k < slope.length; k++) step[k]! += weights[i]! * slope[k]!
  }
  return step
}

/** How the cost begins to change along a step. */
const slopeAlong = (sums: readonly Sum[], { causes, answers }: Place, step: Float64Array): number => {
  let slope = dot(causes, step)
  for (let i = 0; i < sums.length; i++)
    slope -= (answers[i]!.off / sums[i]!.variance) * dot(answers[i]!.slope, step)
  return slope
}

/** HHᵀ + R: how readings vary together before they are taken. Lower triangle. */
const spread = (sums: readonly Sum[], answers: readonly Answer[]): Float64Array => {
  const size = sums.length
  const all = new Float64Array(size * size)
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) all[i * size + j] = dot(answers[i]!.slope, answers[j]!.slope)
    all[i * size + i]! += sums[i]!.variance
  }
  return all
}

/** L⁻¹H of HHᵀ + R = LLᵀ. */
const knownBy = (sums: readonly Sum[], answers: readonly Answer[]): readonly Float64Array[] => {
  const size = sums.length
  const l = factored(spread(sums, answers), size)
  const width = answers[0]?.slope.length ?? 0
  const rows = sums.map(() => new Float64Array(width))
  for (let k = 0; k < width; k++) {
    const column = forward(
      l,
      size,
      Float64Array.from(answers, ({ slope }) => slope[k]!),
    )
    for (let i = 0; i < size; i++) rows[i]![k] = column[i]!
  }
  return rows
}

const dot = (a: Float64Array, b: Float64Array): number => {
  let sum = 0
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!
  return sum
}
