/** Writes new values as YAML that version 1.1 and 1.2 readers take alike. */
import { coreValue, misreadByYaml11 } from './core-scalar.js'
import { plain } from './plain.js'
import { readText } from './read.js'

/** What would be taken for something else at the start of a plain scalar. */
const indicatorFirst = /^(?:[-?:](?=\s|$)|[,[\]{}#&*!|>'"%@`]|---|\.\.\.)/u
const insideOne = /: |:$| #|[\n\r\t\0-\x1F\x7F-\x9F\u2028\u2029\uFEFF\uFFFE\uFFFF\p{Surrogate}]/u

/** True where a text can stand without quotes and be read as the same scalar by both versions. */
const standsPlain = (text: string, flow: boolean): boolean =>
  text !== '' &&
  text === text.trim() &&
  !indicatorFirst.test(text) &&
  !insideOne.test(text) &&
  !(flow && (/[,[\]{}]/u.test(text) || /^[-?:]/u.test(text) || text.endsWith(':'))) &&
  !(typeof coreValue(text) === 'string' && misreadByYaml11(text))

/** Between double quotes; JSON's escapes are YAML's, and what JSON leaves as it is would not be printable. */
const escaped = (text: string): string =>
  JSON.stringify(text).replaceAll(
    /[\x7F-\x9F\u2028\u2029\uFEFF\uFFFE\uFFFF]/gu,
    (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`,
  )

/** A string as a scalar, quoted only where it needs to be. */
export const quoted = (text: string, flow: boolean): string => {
  if (typeof coreValue(text) === 'string' && standsPlain(text, flow)) return text
  return /[\n\r\t\0-\x1F\x7F-\x9F\u2028\u2029\uFEFF\uFFFE\uFFFF\p{Surrogate}]/u.test(text)
    ? escaped(text)
    : `'${text.replaceAll("'", "''")}'`
}

/** A new value: how it is written, and what it then reads as. */
export interface NewValue {
  readonly source: string
  readonly value: unknown
}

/**
 * What stands for a value given as text. `{…}`, `[…]` and complete quoted scalars are taken as the YAML that they are;
 * anything else is one scalar, which is quoted where it must be (`2:1`, `White: two flashes`).
 */
export const newValue = (text: string, flow: boolean): NewValue => {
  const trimmed = text.trim()
  if (/^[{["']/u.test(trimmed)) {
    const { root, faults } = readText('', trimmed)
    if (
      root !== undefined &&
      faults.length === 0 &&
      root.end === trimmed.length &&
      (root.kind !== 'scalar' || root.quoted)
    )
      return { source: trimmed, value: plain(root) }
  }
  const value = text === '' ? text : coreValue(text)
  return typeof value === 'string' ? { source: quoted(text, flow), value } : { source: text, value }
}
