/** What the language asks of a file and a JSON Schema cannot say. */
import { isMap, type PlainMap, valueAt } from './applicable.js'
import type { Kind } from './schema/kinds.js'
import { at, type Worded } from './wording/worded.js'

/** A plan holds at most so many people: keeps hostile files harmless. */
const mostPeople = 40

export const beyondSchema = (kind: Kind, data: unknown): readonly Worded[] => {
  if (kind !== 'plan' && kind !== 'base') return []
  const rows = valueAt(data, ['subject', 'rows'])
  if (!Array.isArray(rows)) return []
  const found: Worded[] = rows.flatMap((row: unknown, i) =>
    i === 0 || !isMap(row) || Object.hasOwn(row, 'behind')
      ? []
      : [
          {
            rule: 'plan-unreadable',
            at: at.owner(['subject', 'rows', String(i)]),
            message: `row ${i + 1} says no behind; write behind: 50 cm`,
            why: 'how far it is behind the row in front',
          },
        ],
  )
  const people = rows
    .map((row: unknown) => (isMap(row) ? (row as PlainMap).people : 0))
    .reduce<number>(
      (sum, count) => sum + (typeof count === 'number' && Number.isFinite(count) ? count : 0),
      0,
    )
  // A single row of more is told by its own limit.
  if (people > mostPeople && rows.length > 1)
    found.push({
      rule: 'plan-unreadable',
      at: at.value(['subject', 'rows']),
      message: `the rows hold ${people} people; ${mostPeople} is the most`,
      why: 'leave people out, or plan the picture in parts',
    })
  return found
}
