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

/** What an author wrote, cut where it is long. */
export const cut = (text: string): string =>
  text.length <= longest ? text : `${text.slice(0, longest - 1)}…`

/** `the plan`, `camera`, `at of the light key`, `reading 2`. */
export const labelOf = (kind: Kind, keys: readonly string[]): string => {
  if (keys.length === 0) return files[kind]
  const [last, above] = [keys.at(-1)!, keys.at(-2)]
  const noun = above !== undefined && Object.hasOwn(members, above) ? members[above] : undefined
  if (noun !== undefined)
    return /^[0-9]+$/.test(last) &&
      (above === 'readings' ||
        above === 'rows' ||
        above === 'measured' ||
        above === 'durations' ||
        above === 'accept')
      ? `${noun} ${Number(last) + 1}`
      : `the ${noun} ${cut(last)}`
  return keys.length === 1 ? cut(last) : `${cut(last)} of ${labelOf(kind, keys.slice(0, -1))}`
}

/** The key that a value stands at; of an item of a list, the list's. */
export const keyOf = (kind: Kind, keys: readonly string[]): string => {
  const named = keys.findLast((key) => !/^[0-9]+$/.test(key))
  return named === undefined ? files[kind] : cut(named)
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
