/** What was understood of a plan, for people. */
import type { ExplainedSection } from '../tasks/explain-plan.js'
import type { Look } from './look.js'
import { padRight, width, wrap } from './width.js'

export const explainedPlan = (file: string, sections: readonly ExplainedSection[], look: Look): string => {
  const { paint, show } = look
  const lines = [paint.strong(show(`${file}: as understood`))]
  for (const { title, rows } of sections) {
    const shown = rows.map(({ name, value, from }) => [show(name), show(value), show(from)] as const)
    const widest = (column: 0 | 1 | 2): number => Math.max(0, ...shown.map((row) => width(row[column])))
    const names = Math.min(24, widest(0))
    const room = Math.max(20, look.columns - names - widest(2) - 6)
    const values = Math.min(room, widest(1))
    lines.push('', ...wrap(show(title), look.columns).map(paint.strong))
    for (const [name, value, from] of shown) {
      const [first, ...rest] = wrap(value, room)
      lines.push(`  ${padRight(name, names)}  ${padRight(first!, values)}  ${paint.faint(from)}`)
      lines.push(...rest.map((more) => `  ${padRight('', names)}  ${more}`))
    }
  }
  return `${lines.join('\n')}\n`
}
