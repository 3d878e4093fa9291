/** What is truly wrong with a set: the rules' own figures where every light's strength is known exactly. */
import { rules } from '../../src/rules/index.js'
import type { Evidence, Level, Rule } from '../../src/rules/rule.js'
import type { ComputedSet } from '../../src/set/computed-set.js'

/** Rules whose figures are stops on the lights' strengths. */
export const judged = [
  'ambient-in-exposure',
  'aperture-off-key',
  'backdrop-above-limit',
  'backdrop-below-white',
  'backdrop-not-black',
  'backdrop-off-tone',
  'backdrop-uneven',
  'group-uneven',
  'power-differs',
  'ratio-off',
  'subject-over-white',
  'unit-too-weak',
] as const

/** What lights bring each by itself: told apart by the light's line. */
const byLight: readonly string[] = ['power-differs', 'unit-too-weak']

/** The same for evidence and finding of one plan, however many readings it has. */
export const faultName = (rule: string, line: number): string =>
  byLight.includes(rule) ? `${rule} at line ${line}` : rule

export interface Fault {
  readonly name: string
  readonly rule: string
  readonly level: Level
}

interface Beyond {
  readonly name: string
  readonly rule: Rule
  readonly level: Level
  /** Stops past the limit of this level; negative on the right side. */
  readonly stops: number
}

/** A real fault lies over this far past its limit, a sound figure at least that far on the right side; stops. */
export const faultFrom = 1 / 2
export const soundFrom = 1 / 4

/** Limits that leave a rule with several levels only this one. */
const limitsFor = (rule: Rule, level: Level): Record<string, number> => {
  const limits = Object.fromEntries(Object.entries(rule.limits).map(([name, { value }]) => [name, value]))
  const own = limits[level]
  if (own === undefined) return limits
  for (const name of ['note', 'warning', 'error']) if (name in limits) limits[name] = own
  return limits
}

const levelsOf = (rule: Rule): readonly Level[] => {
  const tiers = (['error', 'warning'] as const).filter((level) => level in rule.limits)
  return tiers.length > 0 ? tiers : [rule.level]
}

const evidence = (rule: Rule, set: ComputedSet, level: Level): readonly Evidence[] => {
  const context = { set, plan: set.plan, limits: limitsFor(rule, level), u: () => 0 }
  return rule.needs(context) === undefined ? rule.detect(context) : []
}

const beyondOf = (set: ComputedSet): readonly Beyond[] =>
  rules
    .filter(({ id }) => judged.some((name) => name === id))
    .flatMap((rule) =>
      levelsOf(rule).flatMap((level) =>
        evidence(rule, set, level).flatMap(({ pointer, beyond }) =>
          beyond === 'certain'
            ? []
            : [
                {
                  name: faultName(rule.id, set.plan.places.of(pointer).line),
                  rule,
                  level,
                  stops: beyond.stops,
                },
              ],
        ),
      ),
    )

/** Each at the highest level whose limit it passes by over half a stop. */
export const faultsOf = (set: ComputedSet): readonly Fault[] => {
  const found = new Map<string, Fault>()
  for (const { name, rule, level, stops } of beyondOf(set))
    if (stops > faultFrom && !found.has(name)) found.set(name, { name, rule: rule.id, level })
  return [...found.values()]
}

export const isSound = (set: ComputedSet): boolean => beyondOf(set).every(({ stops }) => stops <= -soundFrom)
