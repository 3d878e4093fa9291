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
}

export const longestPrefix = <T>(table: Readonly<Record<string, T>>, id: string): T | undefined => {
  let best: string | undefined
  for (const prefix of Object.keys(table))
    if (id.startsWith(prefix) && (best === undefined || prefix.length > best.length)) best = prefix
  return best === undefined ? undefined : table[best]
}
