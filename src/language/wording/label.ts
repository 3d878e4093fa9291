/** What a part of a file is called in a sentence. */
import type { Json } from '../schema/build.js'
import type { Kind } from '../schema/kinds.js'

const files: Readonly<Record<Kind, string>> = {
  plan: 'the plan',
  base: 'the base',
  kit: 'the kit',
  room: 'the room',
  settings: 'the settings',
}

/** Maps and lists whose members have a noun of their own. */
const members: Readonly<Record<string, string>> = {
  lights: 'light',
  panels: 'panel',
  points: 'point',
  circuits: 'circuit',
  units: 'unit',
  modifiers: 'modifier',
  stands: 'stand',
  cameras: 'camera',
  backdrops: 'backdrop',
  meters: 'meter',
  readings: 'reading',
  rows: 'row',
  measured: 'measurement',
  durations: 'duration',
  accept: 'accepted finding',
}

const longest = 60

/** What an author wrote: cut where it is long, in quotes where it is empty, or has blanks or line ends that would not be seen. */
export const shown = (text: string): string => {
  const short = text.length <= longest ? text : `${text.slice(0, longest - 1)}…`
  return text === '' || text.trim() !== text || /[\u0000-\u001f]/.test(text) ? JSON.stringify(short) : short
}

const isIndex = (key: string): boolean => /^[0-9]+$/.test(key)

/** What a member of the map or list at these keys is: a light, a reading. */
const nounAt = (keys: readonly string[]): string | undefined => {
  const name = keys.at(-1)
  if (name === undefined || !Object.hasOwn(members, name)) return undefined
  // A light may be named `rows`; and a light's `meters` is no map of meters.
  const isName = nounAt(keys.slice(0, -1)) !== undefined
  return isName || keys.at(-3) === 'lights' ? undefined : members[name]
}

/** `the plan`, `camera`, `at of the light key`, `reading 2`. */
export const labelOf = (kind: Kind, keys: readonly string[]): string => {
  const last = keys.at(-1)
  if (last === undefined) return files[kind]
  const above = keys.slice(0, -1)
  const noun = nounAt(above)
  if (noun !== undefined) return isIndex(last) ? `${noun} ${Number(last) + 1}` : `the ${noun} ${shown(last)}`
  return above.length === 0 ? shown(last) : `${shown(last)} of ${labelOf(kind, above)}`
}

/** The key that a value stands at; of an item of a list, the list's. */
export const keyOf = (kind: Kind, keys: readonly string[]): string => {
  const named = keys.findLast((key) => !isIndex(key))
  return named === undefined ? files[kind] : shown(named)
}

/** `a`, `a or b`, `a, b or c`; a long list is cut. */
export const choices = (words: readonly string[], most = 12): string => {
  const shown = words.slice(0, most)
  if (words.length > most) return `${shown.join(', ')} or one of ${words.length - most} more`
  return shown.length < 2 ? (shown[0] ?? '') : `${shown.slice(0, -1).join(', ')} or ${shown.at(-1)}`
}

const needsQuotes =
  /^$|^[\s#&*!|>%@`'"[\]{},?:-]|: |:$| #|^(?:true|false|null|~|[-+.0-9][-+.0-9eE_]*|[0-9]+:[0-9:]+)$/

/** An example as it would be written in YAML, on one line. */
export const inYaml = (value: Json): string => {
  if (typeof value === 'string') return needsQuotes.test(value) ? JSON.stringify(value) : value
  if (typeof value !== 'object' || value === null) return String(value)
  if (Array.isArray(value)) return `[${value.map(inYaml).join(', ')}]`
  return `{ ${Object.entries(value)
    .map(([key, inner]) => `${inYaml(key)}: ${inYaml(inner as Json)}`)
    .join(', ')} }`
}

/** A description as the end of a sentence: its first sentence, without the full stop, beginning small where it may. */
export const asClause = (description: string | undefined): string | undefined => {
  if (description === undefined) return undefined
  const first = /^.*?(?=\.(?:\s|$)|$)/s.exec(description)![0]
  return /^[A-Z](?![A-Z])/.test(first) ? first[0]!.toLowerCase() + first.slice(1) : first
}
