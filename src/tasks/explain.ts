/** Finds the rule that someone asks about, or the one that they may have meant. */
import { nearest } from '../language/nearest.js'
import { rules } from '../rules/index.js'
import type { Rule } from '../rules/rule.js'

export type Explained =
  | { readonly ok: true; readonly rule: Rule }
  | { readonly ok: false; readonly nearest: string | undefined }

export const explain = (name: string): Explained => {
  const rule = rules.find(({ id }) => id === name)
  if (rule !== undefined) return { ok: true, rule }
  return {
    ok: false,
    nearest: nearest(
      name,
      rules.map(({ id }) => id),
    ),
  }
}
