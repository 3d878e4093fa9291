/** One finding a line, in the form that the GNU Coding Standards give for error messages: editors read it. */
import type { CheckedPlan, Finding } from '../checker/finding.js'
import { type Look, look } from './look.js'

/** `file:line:column: level: message [rule]` */
export const gnuLine = (finding: Finding, { paint, show }: Look): string => {
  const { file, line, column } = finding.place
  const level = paint[finding.level](finding.level)
  return `${show(`${file}:${line}:${column}`)}: ${level}: ${paint.strong(show(finding.message))} ${paint.faint(`[${finding.rule}]`)}`
}

export const lines = (plans: readonly CheckedPlan[]): string =>
  plans.flatMap((plan) => plan.findings.map((finding) => `${gnuLine(finding, look())}\n`)).join('')
