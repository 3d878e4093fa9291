/**
 * How sure a figure is, and what that makes of a limit. Standard uncertainties (one standard deviation) in stops.
 * What is a fact of the trade here is common practice, no source.
 */
import {
  addShared,
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
 * Uncertainty of a figure once this reading is taken, whatever it shows, without an estimate: Σ − ΣccᵀΣ/(cᵀΣc + r²). Of
 * a reading that settles its light, r² is such that the light is left as sure as the reading.
 */
export const uncertaintyWith = (
  figure: Figure,
  { figure: shown, shared, u, settles }: Candidate,
  strengthOf: UncertainOf,
  known: Covariance = independent,
): number => {
  const causes = causesOf(figure, strengthOf, uncertainties.rendering)
  const read = causesOf(shown, strengthOf, uncertainties.rendering)
  const before = known.product(causes, causes)
  const gain = (of: number): number => known.product(causes, read) ** 2 / of
  const left = (): number => {
    if (!settles) {
      addShared(read, shared, 1)
      return before - gain(known.product(read, read) + u ** 2)
    }
    const [light, reading] = [known.product(read, read), Math.hypot(u, ...shared.map((part) => part.u)) ** 2]
    return light <= reading ? before : before - gain(light ** 2 / (light - reading))
  }
  return Math.sqrt(Math.max(0, left()) + figure.variance)
}

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
