/**
 * How sure a figure is, and what that makes of a limit. Standard uncertainties (one standard deviation) in stops.
 * What is a fact of the trade here is common practice, no source.
 */
import type { Figure } from './figure.js'

export const uncertainties = {
  /** A meter's reading of one light. */
  reading: 0.15,
  reflectedReading: 0.2,
  testFrame: 0.3,
  /** For each stop that power is scaled from the setting that was read. */
  perStopScaled: 0.05,
  /** Comparing a raised dome's reading with a flat one's. */
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
  /** Between two points lit by one light. */
  geometry: 0.1,
  /** The camera's rendering of a tone; once a plan. */
  rendering: 0.15,
} as const

/** A strength's uncertainty: `u` in all; the parts that it shares with other lights of the same unit or modifier. */
export interface UncertainStrength {
  readonly u: number
  readonly shared?: readonly { readonly entry: string; readonly u: number }[]
}

/**
 * Standard uncertainty of a figure, stops: √(∇ᵀΣ∇ + own variance + rendering²). Two lights of one kit entry vary
 * together by the parts that they share, so that what a figure owes to both alike adds, and cancels in a difference.
 */
export const uncertainty = (figure: Figure, strengths: ReadonlyMap<string, UncertainStrength>): number => {
  let variance = figure.variance + (figure.rendering * uncertainties.rendering) ** 2
  const together = new Map<string, number>()
  for (const [light, share] of figure.gradient) {
    const strength = strengths.get(light)
    if (strength === undefined) continue
    let own = strength.u ** 2
    for (const { entry, u } of strength.shared ?? []) {
      own -= u ** 2
      together.set(entry, (together.get(entry) ?? 0) + share * u)
    }
    variance += share ** 2 * Math.max(0, own)
  }
  for (const sum of together.values()) variance += sum ** 2
  return Math.sqrt(variance)
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
