/** Finds the rule or the list that someone asks about, or the one that they may have meant. */
import { nearest } from '../language/nearest.js'
import { rules } from '../rules/index.js'
import type { Rule } from '../rules/rule.js'
import { type Catalogue, catalogue, catalogueNames, isCatalogue } from './catalogue.js'

export type Explained =
  | { readonly ok: true; readonly rule: Rule }
  | { readonly ok: true; readonly catalogue: Catalogue }
  | { readonly ok: false; readonly nearest: string | undefined }

export const explain = (name: string): Explained => {
  const rule = rules.find(({ id }) => id === name)
  if (rule !== undefined) return { ok: true, rule }
  if (isCatalogue(name)) return { ok: true, catalogue: catalogue(name) }
  return {
    ok: false,
    nearest: nearest(name, [...rules.map(({ id }) => id), ...catalogueNames]),
  }
}
