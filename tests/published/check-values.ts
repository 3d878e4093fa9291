/** The check values: what they look like, and how a section's evaluators answer them. */
import values from './values.json' with { type: 'json' }

export interface CheckValue {
  readonly id: string
  readonly section: string
  readonly quantity: string
  readonly inputs: Readonly<Record<string, unknown>>
  readonly expected: Readonly<Record<string, unknown>>
  readonly tolerance: { readonly abs?: number; readonly rel?: number }
  /** `sourced`: read in a public source. `derived`: computed twice from one. `memory`: never to be cited as published. */
  readonly provenance: 'sourced' | 'derived' | 'memory'
  readonly source: string
  readonly note?: string
}

export const checkValues = values as readonly CheckValue[]

/** The program's own answer to a check value's inputs, under the same names as the expected values. */
// biome-ignore lint/suspicious/noExplicitAny: inputs differ by id; each evaluator knows its own.
export type Evaluate = (inputs: any, value: CheckValue) => Readonly<Record<string, unknown>>

/**
 * Evaluators by id prefix; the longest prefix that fits an id answers it. An id that none answers must stand in
 * `waiting`, with the reason or the part of the program that will answer it.
 */
export interface Section {
  readonly section: string
  readonly evaluators: Readonly<Record<string, Evaluate>>
  readonly waiting: Readonly<Record<string, string>>
  /** Values that the program works out by summing up, not by their closed form: how near it must come all the same. */
  readonly rougher?: Readonly<Record<string, { readonly rel: number; readonly why: string }>>
}

const longestPrefix = (table: Readonly<Record<string, unknown>>, id: string): string | undefined =>
  Object.keys(table)
    .filter((prefix) => id.startsWith(prefix))
    .sort((a, b) => b.length - a.length)[0]

/** Whether an id is answered or waits: the longer prefix decides; none, or the same one twice, is a fault. */
export const standing = (section: Section, id: string): Evaluate | 'waits' | 'lost' => {
  const answers = longestPrefix(section.evaluators, id)
  const waits = longestPrefix(section.waiting, id)
  if (answers === waits) return 'lost'
  return answers !== undefined && answers.length > (waits?.length ?? -1)
    ? section.evaluators[answers]!
    : 'waits'
}

/** The value, held no closer than the program claims to come. */
export const asClaimed = (section: Section, value: CheckValue): CheckValue => {
  const prefix = longestPrefix(section.rougher ?? {}, value.id)
  const rel = prefix === undefined ? 0 : section.rougher![prefix]!.rel
  return rel > (value.tolerance.rel ?? 0) ? { ...value, tolerance: { ...value.tolerance, rel } } : value
}
