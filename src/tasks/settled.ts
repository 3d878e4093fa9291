/** A checked plan as plain data, which can be handed to another thread: nothing in it is left to be worked out. */
import type { CheckedPlan, Finding } from '../checker/finding.js'
import type { Checked } from './check.js'

/** Whose advice a report reads: to solve it costs more than to find. */
export type AdviceRead = 'none' | 'findings' | 'accepted too'

export const settled = (checked: Checked, advice: AdviceRead): Checked => {
  if ('problem' in checked) return checked
  if ('defect' in checked) {
    const { file, error } = checked.defect
    return { defect: { file, error: portable(error) } }
  }
  return { plan: settledPlan(checked.plan, advice) }
}

const settledPlan = (plan: CheckedPlan, advice: AdviceRead): CheckedPlan => {
  const findings = plan.findings.map((finding) => settledFinding(finding, advice !== 'none'))
  const accepted = plan.accepted.map((one) => ({
    ...one,
    finding: settledFinding(one.finding, advice === 'accepted too'),
  }))
  // Last, since advice that fails adds to them.
  const defects = (plan.defects ?? []).map(({ rule, error }) => ({ rule, error: portable(error) }))
  return { ...plan, findings, accepted, defects }
}

const settledFinding = (finding: Finding, reads: boolean): Finding => {
  const settled: Record<string, unknown> = {}
  for (const key of Object.keys(finding)) {
    if (key !== 'advice') settled[key] = finding[key as keyof Finding]
  }
  const advice = reads ? finding.advice : []
  return { ...(settled as unknown as Finding), advice: advice.map(words) }
}

/** What a rule needs for trying its advice stays behind. */
const words = ({ title, gives, costs }: Finding['advice'][number]): Finding['advice'][number] => ({
  title,
  ...(gives === undefined ? {} : { gives }),
  ...(costs === undefined ? {} : { costs }),
})

/** Of an error, what a report tells; other classes and what hangs on them would not arrive. */
const portable = (error: unknown): unknown => {
  if (!(error instanceof Error)) return String(error)
  const plain = new Error(error.message)
  plain.stack = error.stack ?? String(error)
  return plain
}
