/** Checks plans: each is read, computed and judged by itself, and nothing that is wrong with one keeps another back. */
import { type CheckOptions, checkReading } from '../checker/check-plan.js'
import type { CheckedPlan } from '../checker/finding.js'
import type { FilePort } from '../language/port.js'
import { readPlan } from '../language/read-plan.js'
import type { Level } from '../rules/rule.js'
import type { Problem } from './problem.js'

/** How a task gets at the plans of a call. */
export interface PlanSource extends FilePort {
  /** A plan's text, by its name in the call. */
  open(
    file: string,
  ): { readonly ok: true; readonly text: string } | { readonly ok: false; readonly says: string }
}

export interface CheckRun {
  readonly plans: readonly CheckedPlan[]
  readonly problems: readonly Problem[]
  /** Plans on which the program itself failed. For single rules too, see `defectsOf`. */
  readonly defects: readonly Defect[]
  readonly counts: Counts
}

export interface Defect {
  readonly file: string
  readonly error: unknown
}

export interface Counts extends Readonly<Record<Level, number>> {
  readonly plans: number
  readonly accepted: number
}

/** What became of one plan of a call. */
export type Checked =
  | { readonly plan: CheckedPlan }
  | { readonly problem: Problem }
  | { readonly defect: Defect }

/** The options are asked for only when the plan could be opened. */
export const checkFile = (
  file: string,
  source: PlanSource,
  options: (file: string) => CheckOptions,
): Checked => {
  const opened = source.open(file)
  if (!opened.ok) return { problem: { file, says: opened.says } }
  try {
    return { plan: checkReading(readPlan(file, opened.text, source), options(file)) }
  } catch (error) {
    return { defect: { file, error } }
  }
}

export const runFrom = (checked: readonly Checked[]): CheckRun =>
  runOf(
    checked.flatMap((one) => ('plan' in one ? [one.plan] : [])),
    checked.flatMap((one) => ('problem' in one ? [one.problem] : [])),
    checked.flatMap((one) => ('defect' in one ? [one.defect] : [])),
  )

export const check = (
  files: readonly string[],
  source: PlanSource,
  options: (file: string) => CheckOptions,
): CheckRun => runFrom(files.map((file) => checkFile(file, source, options)))

/** A run of plans that are checked already. */
export const runOf = (
  plans: readonly CheckedPlan[],
  problems: readonly Problem[] = [],
  defects: readonly Defect[] = [],
): CheckRun => ({ plans, problems, defects, counts: counted(plans) })

/** Where the program failed, on a plan or in one rule of it. Ask after reporting: advice is solved when it is read. */
export const defectsOf = ({ plans, defects }: CheckRun): readonly Defect[] => [
  ...defects,
  ...plans.flatMap((plan) =>
    (plan.defects ?? []).map(({ rule, error }) => ({ file: `${plan.file} (${rule})`, error })),
  ),
]

/** Accepted findings are counted apart. */
const counted = (plans: readonly CheckedPlan[]): Counts => {
  const counts = { plans: plans.length, error: 0, warning: 0, note: 0, accepted: 0 }
  for (const plan of plans) {
    for (const { level } of plan.findings) counts[level] += 1
    counts.accepted += plan.accepted.length
  }
  return counts
}

const heights: Readonly<Record<Level, number>> = { note: 1, warning: 2, error: 3 }

/** True where a plan has a finding of a level or a higher one. */
export const reaches = (plan: CheckedPlan, level: Level): boolean =>
  plan.findings.some((finding) => heights[finding.level] >= heights[level])
