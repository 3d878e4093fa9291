import { type CheckOptions, checkReading } from '../../src/checker/check-plan.js'
import type { CheckedPlan, Finding } from '../../src/checker/finding.js'
import type { Plan } from '../../src/language/plan.js'
import type { FilePort } from '../../src/language/port.js'
import { readPlan } from '../../src/language/read-plan.js'
import { ruleNamed } from '../../src/rules/index.js'
import type { RuleContext } from '../../src/rules/rule.js'
import { computeSet } from '../../src/set/compute-set.js'

export const noFiles: FilePort = { read: (path) => ({ ok: false, says: `${path} is not there` }) }

/** Checks a plan's text. The day is the one that the examples of accepted findings are written for. */
export const checkText = (text: string, options: CheckOptions = {}): CheckedPlan =>
  checkReading(readPlan('test.plan.yaml', text, noFiles), { on: '2029-12-31', ...options })

export const findingsOf = (rule: string, text: string, options: CheckOptions = {}): readonly Finding[] =>
  checkText(text, options).findings.filter((finding) => finding.rule === rule)

export const planOf = (text: string): Plan => {
  const { plan, mistakes } = readPlan('test.plan.yaml', text, noFiles)
  if (plan === undefined) throw new Error(mistakes.map((mistake) => mistake.message).join('\n'))
  return plan
}

/** A rule's context over a plan, with the rule's own limits. */
export const contextOf = (rule: string, plan: Plan): RuleContext => {
  const set = computeSet(plan)
  return {
    set,
    plan,
    limits: Object.fromEntries(
      Object.entries(ruleNamed(rule)!.limits).map(([name, { value }]) => [name, value]),
    ),
    u: (figure) => set.u(figure),
  }
}
