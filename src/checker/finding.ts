import type { Advice, ExposureScale, Family, Level, Measured } from '../rules/rule.js'
import type { Place } from '../text/place.js'

export type Certainty = 'sure' | 'probable' | 'possible'

/** A finding as every report words it; the keys that are in 6-json keep their names. */
export interface Finding {
  /** Stable while rule, pointer and names stay, wherever lines move. */
  readonly id: string
  readonly rule: string
  readonly family: Family
  readonly level: Level
  readonly ruleLevel: Level
  readonly certainty: Certainty
  readonly message: string
  readonly why: string
  readonly place: Place
  readonly also: readonly (Place & { readonly says: string })[]
  readonly measured: Readonly<Record<string, Measured>>
  readonly mends: readonly []
  /** Solved when first read, which costs more than the finding; a copy of the finding (`{ ...finding }`) reads it. */
  readonly advice: readonly Advice[]
  readonly basis: string
  readonly cause?: string
  readonly scale?: ExposureScale
}

export interface NotChecked {
  readonly rule: string
  readonly because: string
  readonly enable?: { readonly pointer: string; readonly text: string }
}

/** A rule that failed: a fault of the program, not of the plan. */
export interface RuleDefect {
  readonly rule: string
  readonly error: unknown
}

export interface CheckedPlan {
  readonly file: string
  readonly title: string
  readonly findings: readonly Finding[]
  readonly accepted: readonly { readonly rule: string; readonly because: string; readonly finding: Finding }[]
  readonly notChecked: readonly NotChecked[]
  /** Lines that say how the light was computed: dark and open room, sync taken as 1/160. */
  readonly remarks: readonly string[]
  /** What makes the figures wrong in one direction: `key is aimed at the ceiling: … its figures are too low`. */
  readonly caveats?: readonly string[]
  /** What the plan states and no rule judges yet: `room`, `wanted.shooting`. */
  readonly notJudged?: readonly string[]
  /** Texts of the files that places point into, for showing the line. */
  readonly texts: ReadonlyMap<string, string>
  /** Rules that failed on this plan; what the others found stands. Grows where advice that is read fails. */
  readonly defects?: readonly RuleDefect[]
}
