/** What was understood of a plan, for people. */
import type { ExplainedSection } from '../tasks/explain-plan.js'
import type { Look } from './look.js'
import { padRight, width } from './width.js'

export const explainedPlan = (file: string, sections: readonly ExplainedSection[], look: Look): string => {
  const { paint, show } = look
  const lines = [paint.strong(show(`${file}: as understood`))]
  for (const { title, rows } of sections) {
    const shown = rows.map(({ name, value, from }) => [show(name), show(value), show(from)] as const)
    const widest = (column: 0 | 1): number =>
      Math.min(48, Math.max(0, ...shown.map((row) => width(row[column]))))
    lines.push('', paint.strong(show(title)))
    for (const [name, value, from] of shown) {
      lines.push(`  ${padRight(name, widest(0))}  ${padRight(value, widest(1))}  ${paint.faint(from)}`)
    }
  }
  return `${lines.join('\n')}\n`
}
