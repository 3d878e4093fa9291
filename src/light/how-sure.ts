/**
 * How sure a figure is, and what that makes of a limit. Standard uncertainties (one standard deviation) in stops.
 * What is a fact of the trade here is common practice, no source.
 */
import {
  addShared,
  type Causes,
  type Covariance,
  causesOf,
  independent,
  type SharedPart,
  type UncertainOf,
} from './causes.js'
import type { Figure } from './figure.js'

export const uncertainties = {
  /** A meter's incident reading. */
  reading: 0.15,
  reflectedReading: 0.2,
  testFrame: 0.3,
  /** For each stop that power is scaled from the setting that was read. */
  perStopScaled: 0.05,
  /** Comparing a raised dome's reading of a light with a flat one's. */
  flatOverDome: 0.2,
  /** What a plan says that a light meters. */
  meters: 0.15,
  measured: 0.15,
  meteredOutput: 0.2,
  guideNumber: 0.35,
  zoomConverted: 0.2,
  energy: 0.4,
  unknownReflector: 0.4,
  highSpeedEntry: 0.7,
  /** Where the kit states its own. */
  highSpeedStated: 0.2,
  modellingLamp: 0.4,
  /** Of a light's strength, what two lights of one kit entry do not share. */
  ownPart: 0.15,
  /** A light of which nothing is known but that a reading of several counts it. */
  nothingKnown: 10,
  /** A light that a reading settles, before that reading is weighed: as good as infinite. */
  open: 100,
  /** A light whose strength is less sure than this counts as not known. */
  unsure: 2,
  /** Between two points lit by one light. */
  geometry: 0.1,
  /** Of what is thrown back by surfaces that the plan names, and by those that are only assumed. */
  bounce: 0.2,
  bounceGuessed: 0.4,
  /** The camera's rendering of a tone; once a plan. */
  rendering: 0.15,
} as const

/**
 * Standard uncertainty of a figure, stops: √(∇ᵀΣ∇ + own variance), Σ over the lights' strengths and the camera's
 * rendering. What a figure owes to one cause through several lights adds, and cancels in a difference.
 */
export const uncertainty = (
  figure: Figure,
  strengthOf: UncertainOf,
  known: Covariance = independent,
): number => {
  const causes = causesOf(figure, strengthOf, uncertainties.rendering)
  return Math.sqrt(Math.max(0, known.product(causes, causes)) + figure.variance)
}

/** A reading that is not taken yet. */
export interface Candidate {
  /** What it would show, as a figure. */
  readonly figure: Figure
  /** What it has in common with other readings. */
  readonly shared: readonly SharedPart[]
  /** What is its own, stops. */
  readonly u: number
  /** It would go before all that is known of its light. */
  readonly settles: boolean
}

/**
 * Uncertainty of a figure once this reading is taken, whatever it shows, without an estimate: Σ − ΣccᵀΣ/(cᵀΣc + u²).
 * Never more than without it.
 */
export const uncertaintyWith = (
  figure: Figure,
  candidate: Candidate,
  strengthOf: UncertainOf,
  known: Covariance = independent,
): number => {
  const causes = causesOf(figure, strengthOf, uncertainties.rendering)
  const read = causesOf(candidate.figure, strengthOf, uncertainties.rendering)
  const before = candidate.settles ? forgetting(read, known) : known
  const seen = new Map(read)
  addShared(seen, candidate.shared, 1)
  const after = learning(seen, candidate.u ** 2, before).product(causes, causes)
  return Math.sqrt(Math.max(0, Math.min(after, known.product(causes, causes))) + figure.variance)
}

/** After a reading of this row, with this variance of its own. */
const learning = (read: Causes, variance: number, known: Covariance): Covariance => {
  const all = known.product(read, read) + variance
  if (all === 0) return known
  return { product: (a, b) => known.product(a, b) - (known.product(a, read) * known.product(read, b)) / all }
}

/** So much of what a light was known by is kept, that its variance stays finite. */
const kept = 1e-6

/** Before anything but readings was known of a light: as after a reading that takes away what its prior told. */
const forgetting = (light: Causes, known: Covariance): Covariance =>
  learning(light, -independent.product(light, light) * (1 + kept), known)

export type Verdict = 'sure' | 'probable' | 'possible' | 'open' | 'clear'

/** Figures meet a limit rounded to a millionth of a stop, so that no last digit decides. */
const rounded = (value: number): number => Math.round(value * 1e6) / 1e6

/**
 * | d, stops beyond the limit | verdict |
 * |---|---|
 * | d > 2u | sure |
 * | u < d ≤ 2u | probable |
 * | 0 < d ≤ u | possible |
 * | −u < d ≤ 0 | open |
 * | d ≤ −u | clear |
 */
export const verdict = (d: number, u: number): Verdict => {
  const beyond = rounded(d)
  const sure = rounded(u)
  if (beyond > rounded(2 * u)) return 'sure'
  if (beyond > sure) return 'probable'
  if (beyond > 0) return 'possible'
  return beyond > -sure ? 'open' : 'clear'
}
