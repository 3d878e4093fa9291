/** One finding a line, in the form that the GNU Coding Standards give for error messages: editors read it. */
import type { CheckedPlan, Finding } from '../checker/finding.js'
import { type Look, look } from './look.js'
import { wrapPainted } from './wrap-painted.js'

/** `file:line:column: level: message [rule]` */
export const gnuLine = (finding: Finding, look: Look): string =>
  partsOf(finding, look)
    .map(({ text, paint }) => paint(text))
    .join('')

/** The same for people: broken at the width of the page. */
export const brokenGnuLine = (finding: Finding, look: Look): string[] =>
  wrapPainted(partsOf(finding, look), look.columns, 4)

const partsOf = ({ place, level, message, rule }: Finding, { paint, show }: Look) => [
  { text: `${show(`${place.file}:${place.line}:${place.column}`)}: `, paint: plain },
  { text: level, paint: paint[level] },
  { text: ': ', paint: plain },
  { text: show(message), paint: paint.strong },
  { text: ' ', paint: plain },
  { text: `[${rule}]`, paint: paint.faint },
]

const plain = (text: string): string => text

export const lines = (plans: readonly CheckedPlan[]): string =>
  plans.flatMap((plan) => plan.findings.map((finding) => `${gnuLine(finding, look())}\n`)).join('')
