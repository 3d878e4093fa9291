import type { Place } from '../text/place.js'

/** A mistake in the plan's own text: found while reading, reported by the checker as a finding of the plan family. */
export interface Mistake {
  readonly rule: 'plan-unreadable' | 'unknown-name' | 'duplicate-name' | 'no-triangle' | 'value-unused'
  readonly place: Place
  /** One sentence: what is wrong, in trade words. */
  readonly message: string
  /** What to write instead. */
  readonly why: string
  readonly also: readonly (Place & { readonly says: string })[]
  /** `did you mean` and the like, as advice. */
  readonly advice: readonly string[]
}
