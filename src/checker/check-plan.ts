/** Judges what was read: mistakes of the text and findings of the rules become findings, in order and with ids. */
import type { Mistake } from '../language/mistake.js'
import type { Plan } from '../language/plan.js'
import type { PlanReading } from '../language/read-plan.js'
import { rules as allRules } from '../rules/index.js'
import { makeWords } from '../rules/make-words.js'
import type { Level, Rule } from '../rules/rule.js'
import { computeSet } from '../set/compute-set.js'
import { type AcceptingRules, accepting } from './accepting.js'
import type { Draft } from './draft.js'
import type { CheckedPlan, Finding, NotChecked, RuleDefect } from './finding.js'
import { findingId } from './finding-id.js'
import { fromMistake } from './from-mistake.js'
import { inOrder } from './order.js'
import { otherRules } from './other-rules.js'
import { caveatsOn, notJudgedIn, remarksOn } from './remarks.js'
import { type RanRule, runRule } from './run-rule.js'
import { makeTrial } from './trial.js'

export interface CheckOptions {
  /** The house's limits: by rule and limit name, in the limit's own unit. */
  readonly limits?: Readonly<Record<string, Readonly<Record<string, number>>>>
  /** The house's levels: what a rule reports at, or `off`. */
  readonly levels?: Readonly<Record<string, Level | 'off'>>
  /** The day (ISO date) that `until` of accepted findings is held against; without it that is not checked. */
  readonly on?: string
  /** In place of all rules. */
  readonly rules?: readonly Rule[]
}

export const checkReading = (reading: PlanReading, options: CheckOptions = {}): CheckedPlan => {
  const rules = (options.rules ?? allRules).filter((rule) => own(options.levels, rule.id) !== 'off')
  const { plan, texts } = reading
  const mistakes = reading.mistakes.flatMap((mistake) => told(mistake, plan !== undefined, options))
  if (plan === undefined) {
    // The plan's own text is always the first that is read.
    const file = [...texts.keys()][0] ?? reading.mistakes[0]?.place.file ?? ''
    return {
      file,
      title: '',
      findings: named(mistakes, file),
      accepted: [],
      notChecked: [],
      remarks: [],
      texts,
      defects: [],
    }
  }
  return checkReadPlan(plan, mistakes, rules, options, texts)
}

const checkReadPlan = (
  plan: Plan,
  mistakes: readonly Draft[],
  rules: readonly Rule[],
  options: CheckOptions,
  texts: ReadonlyMap<string, string>,
): CheckedPlan => {
  const words = makeWords(plan)
  const set = computeSet(plan)
  const drafts = [...mistakes]
  const notChecked: NotChecked[] = []
  const defects: RuleDefect[] = []
  const silent = new Set((options.rules ?? allRules).map(({ id }) => id))
  const housed = aboutFindingsLast(rules).map((rule) => ({
    rule,
    house: { limits: own(options.limits, rule.id), level: levelFor(rule, options) },
  }))
  const ranRules = new Map<string, RanRule>()
  const trial = makeTrial(housed, set, words, (rule) => ranRules.get(rule)?.evidence)
  const run = { set, words, trial, failed: (defect: RuleDefect) => void defects.push(defect) }
  for (const one of housed) {
    const { rule } = one
    try {
      const ran = runRule(one, run, rule.about === 'findings' ? otherRules(ranRules) : undefined)
      if (ran.ran) {
        silent.delete(rule.id)
        ranRules.set(rule.id, ran)
        drafts.push(...ran.drafts.filter((draft) => !alreadyTold(draft, mistakes)))
      } else if (ran.because !== undefined) notChecked.push({ rule: rule.id, ...ran.because })
    } catch (error) {
      // One rule that fails is a defect of the program, told as such; what the others find still stands.
      defects.push({ rule: rule.id, error })
    }
  }
  const sorted = accepting(
    plan,
    named(drafts, plan.file),
    options.on,
    silent,
    allRules.map(({ id }) => id),
    acceptingRules(rules, options),
  )
  return {
    file: plan.file,
    title: plan.title,
    findings: merged(sorted.findings, named(sorted.about, plan.file), plan.file),
    accepted: sorted.accepted,
    notChecked: [...notChecked, ...sorted.notChecked],
    remarks: remarksOn(set, words),
    caveats: caveatsOn(plan),
    notJudged: notJudgedIn(plan),
    texts,
    defects,
  }
}

const aboutFindingsLast = (rules: readonly Rule[]): readonly Rule[] => [
  ...rules.filter(({ about }) => about === undefined),
  ...rules.filter(({ about }) => about !== undefined),
]

/** Names come from files: look up own keys only. */
const own = <T>(record: Readonly<Record<string, T>> | undefined, name: string): T | undefined =>
  record !== undefined && Object.hasOwn(record, name) ? record[name] : undefined

const levelFor = (rule: Rule, { levels }: CheckOptions): Level | undefined => {
  const level = own(levels, rule.id)
  return level === 'off' ? undefined : level
}

/** What keeps a plan from being checked cannot be turned off or down: the plan would look fine. */
const told = (mistake: Mistake, hint: boolean, options: CheckOptions): readonly Draft[] => {
  const rule = (options.rules ?? allRules).find(({ id }) => id === mistake.rule)
  if (rule === undefined || (hint && own(options.levels, rule.id) === 'off')) return []
  return [fromMistake(mistake, rule, (hint ? levelFor(rule, options) : undefined) ?? rule.level)]
}

/** The reader and a rule may see the same slip; it is told once. */
const alreadyTold = (draft: Draft, mistakes: readonly Draft[]): boolean =>
  mistakes.some((one) => one.finding.rule === draft.finding.rule && one.pointer === draft.pointer)

const acceptingRules = (rules: readonly Rule[], options: CheckOptions): AcceptingRules => ({
  unused: rules.find(({ id }) => id === 'accept-unused'),
  expired: rules.find(({ id }) => id === 'accept-expired'),
  level: (rule) => levelFor(rule, options) ?? rule.level,
})

/** In order, each with its id. */
const named = (drafts: readonly Draft[], file: string): readonly Finding[] => {
  const counts = new Map<string, number>()
  return inOrder(drafts, file).map(({ pointer, finding, advice }) => {
    const key = `${finding.rule}\n${pointer}`
    const before = counts.get(key) ?? 0
    counts.set(key, before + 1)
    return {
      id: findingId(finding.rule, pointer, before),
      ...finding,
      get advice() {
        return advice()
      },
    }
  })
}

const merged = (a: readonly Finding[], b: readonly Finding[], file: string): readonly Finding[] =>
  inOrder(
    [...a, ...b].map((finding) => ({ finding })),
    file,
  ).map(({ finding }) => finding)
