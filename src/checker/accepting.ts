/** Findings that the plan's author lives with: what is set aside, and what there is to say about the list itself. */
import { nearest } from '../language/nearest.js'
import type { Accepted, Plan } from '../language/plan.js'
import type { Level, Rule } from '../rules/rule.js'
import { pointer } from '../text/place.js'
import type { Draft } from './draft.js'
import type { Finding, NotChecked } from './finding.js'

export interface Sorted {
  readonly findings: readonly Finding[]
  readonly accepted: readonly { readonly rule: string; readonly because: string; readonly finding: Finding }[]
  /** Findings about the list, and what of it was not checked. */
  readonly about: readonly Draft[]
  readonly notChecked: readonly NotChecked[]
}

export interface AcceptingRules {
  readonly unused: Rule | undefined
  readonly expired: Rule | undefined
  level(rule: Rule): Level
}

/**
 * @param on the day, as an ISO date; undefined: an `until` is not judged
 * @param silent rules that did not run here: whether they would have found something is not known
 * @param known names of all rules
 */
export const accepting = (
  plan: Plan,
  findings: readonly Finding[],
  on: string | undefined,
  silent: ReadonlySet<string>,
  known: readonly string[],
  rules: AcceptingRules,
): Sorted => {
  const past = (entry: Accepted): boolean => on !== undefined && entry.until !== undefined && entry.until < on
  const standing = plan.accept.filter((entry) => !past(entry))
  const entryFor = (finding: Finding) => standing.find((entry) => entry.rule === finding.rule)
  const about = plan.accept.flatMap((entry, i): readonly Draft[] => {
    if (past(entry)) return rules.expired === undefined ? [] : [expired(plan, entry, i, rules.expired, rules)]
    const used = findings.some((finding) => finding.rule === entry.rule)
    return used || silent.has(entry.rule) || rules.unused === undefined
      ? []
      : [unused(plan, entry, i, known, rules.unused, rules)]
  })
  const dated = plan.accept.findIndex((entry) => entry.until !== undefined)
  return {
    findings: findings.filter((finding) => entryFor(finding) === undefined),
    accepted: findings.flatMap((finding) => {
      const entry = entryFor(finding)
      return entry === undefined ? [] : [{ rule: entry.rule, because: entry.because, finding }]
    }),
    about,
    notChecked:
      on !== undefined || dated < 0 || rules.expired === undefined
        ? []
        : [
            {
              rule: rules.expired.id,
              because: 'the day is not said, and no clock is read',
              enable: { pointer: pointer('accept', dated, 'until'), text: '--on DATE with the call' },
            },
          ],
  }
}

const expired = (plan: Plan, entry: Accepted, i: number, rule: Rule, rules: AcceptingRules): Draft =>
  draft(plan, pointer('accept', i, 'until'), rule, rules.level(rule), {
    message: `${entry.rule} was accepted until ${entry.until} and counts again`,
    why: `it was accepted because ${entry.because}`,
    title: 'mend it, or accept it anew with a later day',
  })

const unused = (
  plan: Plan,
  entry: Accepted,
  i: number,
  known: readonly string[],
  rule: Rule,
  rules: AcceptingRules,
): Draft => {
  const missing = !known.includes(entry.rule)
  const meant = missing ? nearest(entry.rule, known) : undefined
  return draft(plan, pointer('accept', i, 'rule'), rule, rules.level(rule), {
    message: missing
      ? `there is no rule ${entry.rule} to accept a finding of`
      : `nothing to accept any more: ${entry.rule} finds nothing here`,
    why: `it was accepted because ${entry.because}`,
    title: meant === undefined ? 'take the entry out' : `did you mean ${meant}?`,
  })
}

const draft = (
  plan: Plan,
  at: string,
  rule: Rule,
  level: Level,
  { message, why, title }: { readonly message: string; readonly why: string; readonly title: string },
): Draft => ({
  pointer: at,
  finding: {
    rule: rule.id,
    family: rule.family,
    level,
    ruleLevel: level,
    certainty: 'sure',
    message,
    why,
    place: plan.places.of(at),
    also: [],
    measured: {},
    mends: [],
    basis: rule.basis,
  },
  advice: () => [{ title }],
})
