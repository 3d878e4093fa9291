/**
 * What a rule is: its data (name, family, level, limits, why, formula, sources, examples) and pure functions: from
 * the computed set to evidence (numbers), from evidence to words, from evidence to mends. A rule never sees YAML,
 * files or spans; it points by JSON pointer into the plan.
 */

import type { Plan } from '../language/plan.js'
import type { Figure } from '../light/figure.js'
import type { ComputedSet } from '../set/computed-set.js'
import type { Words } from './words.js'

export type Level = 'error' | 'warning' | 'note'

export type Family =
  | 'backdrop'
  | 'wrap'
  | 'shadow'
  | 'frame'
  | 'exposure'
  | 'shutter'
  | 'power'
  | 'settings'
  | 'mirror'
  | 'rim'
  | 'soft'
  | 'colour'
  | 'trigger'
  | 'readings'
  | 'room'
  | 'rigging'
  | 'plan'

export interface Limit {
  readonly value: number
  readonly unit: 'stop' | 'sRGB' | 'cm' | 'm' | 'deg' | 'share' | 'count' | 'mired'
  readonly says: string
}

/** Provenance of a formula or figure. `common practice, no source` and `from memory` are said as such. */
export interface RuleSource {
  readonly says: string
  readonly kind: 'standard' | 'published' | 'derived' | 'common practice' | 'memory'
}

/** A whole small plan that gives the finding, or does not. */
export interface RuleExample {
  readonly title: string
  readonly plan: string
}

export interface Measured {
  readonly value: number
  readonly unit: Limit['unit'] | 'f-number' | 's' | 'Ws'
  readonly u?: number
  readonly limit?: number
  readonly side?: 'at-least' | 'at-most'
}

export interface Evidence {
  /** What the finding points at. */
  readonly pointer: string
  readonly also?: readonly { readonly pointer: string; readonly says: string }[]
  /**
   * How far beyond the limit, in stops, with its uncertainty: the checker turns it into a verdict. A limit that is no
   * number of stops (mireds, degrees) is passed in its own unit, `u` likewise. `certain`: a fact of the plan that no
   * uncertainty touches (a frame past the edge, a shutter beyond sync).
   */
  readonly beyond: { readonly stops: number; readonly u: number } | 'certain'
  /** Where the rule's table has several levels, the one that the figure reaches. */
  readonly level?: Level
  readonly measured: Readonly<Record<string, Measured>>
  /** Findings with one cause are shown under it: a short phrase, the same text for the same cause. */
  readonly cause?: string
  /** For figures in stops: draws the exposure scale. */
  readonly scale?: ExposureScale
}

export interface ExposureScale {
  readonly value: number
  readonly u: number
  /** The limit: `needs +0.4 over the camera`. */
  readonly needs: number
  readonly against: string
}

export interface Advice {
  /** `lights.paper-left.power → 1/8 + 0.3`, or a sentence. */
  readonly title: string
  readonly gives?: string
  readonly costs?: string
}

/** Advice as a rule gives it, with what lets it be tried. */
export interface Mend extends Advice {
  /**
   * The set with this done: the rule is run on it, and advice that leaves its finding as it was is not given. What else
   * comes of it is named among the costs.
   */
  readonly after?: ComputedSet
  /** It does not settle the finding, and `gives` says how far it comes. */
  readonly partial?: true
}

export interface Said {
  /** What will be seen, then the number, then the cause. One sentence, no full stop. */
  readonly message: string
  readonly why: string
}

/** What the plan does not state, and which line would let the rule run. */
export interface NotNeeded {
  readonly because: string
  readonly enable?: { readonly pointer: string; readonly text: string }
}

export interface RuleContext {
  readonly set: ComputedSet
  readonly plan: Plan
  /** The rule's limits by name, as set by the house. */
  readonly limits: Readonly<Record<string, number>>
  u(figure: Figure): number
  /** What the other rules made of the set; only for a rule that is about their findings. */
  readonly others?: OtherRules
}

/** A figure that a rule holds against its limit: how far it lies beyond it, in stops, and how sure that is. */
export interface HeldFigure {
  readonly rule: string
  readonly pointer: string
  readonly beyond: { readonly stops: number; readonly u: number }
}

export interface OtherRules {
  readonly figures: readonly HeldFigure[]
  /** The same, in the same order, were all figures as sure as `u` says. */
  were(u: RuleContext['u']): readonly HeldFigure[]
}

export interface Rule<E extends Evidence = Evidence> {
  readonly id: string
  readonly family: Family
  /** The highest level that it gives. */
  readonly level: Level
  /** What it judges, where that is not the set itself: it is run after all others. */
  readonly about?: 'findings'
  /** One line: what it finds, in trade words. */
  readonly finds: string
  readonly limits: Readonly<Record<string, Limit>>
  readonly why: string
  readonly formula: string
  readonly sources: readonly RuleSource[]
  /** Shown at the end of a finding: `incident metering, ISO 2720; sRGB, IEC 61966-2-1`. */
  readonly basis: string
  readonly fires: readonly RuleExample[]
  readonly passes: readonly RuleExample[]
  /** Undefined: it runs. Otherwise why it does not; `silent`: it does not apply, and nothing need be said. */
  readonly needs: (context: RuleContext) => NotNeeded | 'silent' | undefined
  readonly detect: (context: RuleContext) => readonly E[]
  readonly tell: (evidence: E, words: Words, context: RuleContext) => Said
  /** The best first. Of a generator no more is worked out than is shown: see `inTurn`. */
  readonly mend: (evidence: E, words: Words, context: RuleContext) => Iterable<Mend>
  /** In few words, as what another rule's advice costs: `the backdrop is 0.3 stop short of white`. */
  readonly inShort?: (evidence: E, words: Words, context: RuleContext) => string
}

/** Keeps a rule's evidence typed inside its file, and lets the index hold rules of every kind. */
export const rule = <E extends Evidence>(definition: Rule<E>): Rule => definition as unknown as Rule

/** Ways to mend, best first, each worked out only when it is its turn to be shown. */
export function* inTurn(...ways: readonly (() => Iterable<Mend>)[]): Iterable<Mend> {
  for (const way of ways) yield* way()
}
