/** What reading a quantity gives: its value, or one sentence in trade words that says what to write instead. */
export type Parsed<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly says: string }

export const parsed = <T>(value: T): Parsed<T> => ({ ok: true, value })
export const refused = (says: string): Parsed<never> => ({ ok: false, says })
