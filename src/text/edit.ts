/**
 * Changes to a file as splices that leave every other byte alone: comments, blank lines, line ends and a byte-order mark
 * stay. Each changed text is read again and compared: an edit that would change anything but what it is for is refused.
 */
import { lineBounds, newlineOf, ownLines, prefixOf } from './layout.js'
import { pointerKeys } from './place.js'
import { plain } from './plain.js'
import { newValue, quoted } from './quote.js'
import { readText } from './read.js'
import type { TextEntry, TextList, TextMap, TextNode } from './tree.js'

export interface Splice {
  readonly start: number
  readonly end: number
  readonly insert: string
}

export type Edit =
  | { readonly ok: true; readonly text: string; readonly splice: Splice }
  /** One sentence: why it cannot be done, and where to change it by hand. */
  | { readonly ok: false; readonly says: string }

const refused = (says: string): Edit => ({ ok: false, says })

const opened = (text: string): TextNode | string => {
  const { root, faults } = readText('', text)
  const [fault] = faults
  return fault === undefined && root !== undefined
    ? root
    : `the file has a mistake of its own, which comes first: ${fault?.says ?? 'it is empty'}`
}

/** A value in the tree with what holds it. */
interface Found {
  readonly node: TextNode
  readonly parent: TextMap | TextList | undefined
  readonly entry: TextEntry | undefined
  readonly key: string
}

const find = (root: TextNode, keys: readonly string[]): Found | undefined => {
  let found: Found = { node: root, parent: undefined, entry: undefined, key: '' }
  for (const key of keys) {
    const parent = found.node
    if (parent.kind === 'scalar') return undefined
    const entry = parent.kind === 'map' ? parent.entries.get(key) : undefined
    const node =
      parent.kind === 'map' ? entry?.value : /^[0-9]+$/.test(key) ? parent.items[Number(key)] : undefined
    if (node === undefined) return undefined
    found = { node, parent, entry, key }
  }
  return found
}

/** Deep equality of plain values; keys in any order. */
const alike = (a: unknown, b: unknown): boolean => {
  if (a === b) return true
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false
  if (Array.isArray(a) !== Array.isArray(b)) return false
  const keys = Object.keys(a)
  return (
    keys.length === Object.keys(b).length &&
    keys.every(
      (key) =>
        Object.hasOwn(b, key) &&
        alike((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]),
    )
  )
}

/** The plain values with one changed: `change` gets the holder and the key. */
const changed = (
  root: TextNode,
  keys: readonly string[],
  change: (holder: Record<string, unknown> | unknown[], key: string) => void,
): unknown => {
  const values = plain(root)
  let holder = values as Record<string, unknown>
  for (const key of keys.slice(0, -1)) holder = holder[key] as Record<string, unknown>
  change(holder, keys.at(-1)!)
  return values
}

const define = (holder: Record<string, unknown> | unknown[], key: string, value: unknown): void => {
  if (Array.isArray(holder)) holder[Number(key)] = value
  else Object.defineProperty(holder, key, { value, enumerable: true, configurable: true, writable: true })
}

/** Makes a splice and proves that it changed what it should and nothing else. */
const proved = (text: string, splice: Splice, expected: unknown, what: string): Edit => {
  const after = text.slice(0, splice.start) + splice.insert + text.slice(splice.end)
  const { root, faults } = readText('', after)
  return root !== undefined && faults.length === 0 && alike(plain(root), expected)
    ? { ok: true, text: after, splice }
    : refused(
        `${what} cannot be changed without changing more, perhaps because an alias repeats it: change it by hand`,
      )
}

const behindAlias = (what: string): Edit =>
  refused(`${what} is written elsewhere and stands here through an alias: change it where it is written`)

/** End of what stands in the file for a node: of the alias, where there is one. */
const writtenEnd = (node: TextNode): number => node.usedAt?.end ?? node.end
const writtenStart = (node: TextNode): number => node.usedAt?.start ?? node.start

/**
 * Sets a value that is there to a new one.
 *
 * @param pointer JSON pointer of the value
 * @param source the new value as `newValue` takes it
 */
export const setValue = (text: string, pointer: string, source: string): Edit => {
  const root = opened(text)
  if (typeof root === 'string') return refused(root)
  const keys = pointerKeys(pointer)
  const found = find(root, keys)
  if (found?.parent === undefined) return refused(`there is no value at ${pointer || 'the root'} to set`)
  const { node, parent, entry, key } = found
  if (parent.usedAt !== undefined) return behindAlias(pointer)
  // A key of the map's own overrides one that << brings in.
  if (entry?.key.usedAt !== undefined) return inserted(text, root, keys.slice(0, -1), parent, key, source)
  const value = newValue(source, parent.flow)
  const expected = changed(root, keys, (holder, last) => define(holder, last, value.value))
  const splice = settingSplice(text, node, entry, value.source)
  return splice === undefined
    ? refused(`${pointer} has a comment, anchor or tag before its value: change it by hand`)
    : proved(text, splice, expected, pointer)
}

const settingSplice = (
  text: string,
  node: TextNode,
  entry: TextEntry | undefined,
  source: string,
): Splice | undefined => {
  const start = writtenStart(node)
  const end = writtenEnd(node)
  const inPlace =
    node.usedAt !== undefined ||
    (node.kind === 'scalar' ? start < end && !/^[|>]/u.test(node.source) : node.flow)
  if (inPlace) return { start, end, insert: source }
  // Nothing, or a block on lines of its own: the value goes after the colon or the dash.
  let at = start
  while (at > 0 && /\s/u.test(text[at - 1]!)) at -= 1
  if (text[at - 1] === ':' || text[at - 1] === '-')
    return { start: at, end: Math.max(end, at), insert: ` ${source}` }
  return entry !== undefined && at === entry.key.end && start === end
    ? { start: at, end: at, insert: `: ${source}` }
    : undefined
}

/**
 * Inserts an entry at the end of a map or list that is there.
 *
 * @param pointer JSON pointer of the map or list; an empty value becomes a map
 * @param key name of the entry; not used for a list
 * @param source the value as `newValue` takes it
 */
export const insertEntry = (text: string, pointer: string, key: string, source: string): Edit => {
  const root = opened(text)
  if (typeof root === 'string') return refused(root)
  const keys = pointerKeys(pointer)
  const found = find(root, keys)
  if (found === undefined) return refused(`there is nothing at ${pointer} to add to`)
  const { node } = found
  if (node.kind === 'scalar')
    return node.value === null && node.usedAt === undefined
      ? setValue(text, pointer, `{ ${quoted(key, true)}: ${newValue(source, true).source} }`)
      : refused(`${pointer} holds a single value, so nothing can be added to it`)
  return inserted(text, root, keys, node, key, source)
}

const inserted = (
  text: string,
  root: TextNode,
  keys: readonly string[],
  node: TextMap | TextList,
  key: string,
  source: string,
): Edit => {
  const what = `/${[...keys, key].join('/')}`
  if (node.usedAt !== undefined) return behindAlias(what)
  const own = node.kind === 'map' ? node.entries.get(key) : undefined
  if (own !== undefined && own.key.usedAt === undefined) return refused(`${what} is already there`)
  if (key === '__proto__') return refused('the name __proto__ cannot be used')
  const value = newValue(source, node.flow)
  const last = node.kind === 'map' ? key : String(node.items.length)
  const expected = changed(root, [...keys, last], (holder, name) => define(holder, name, value.value))
  const line =
    node.kind === 'map'
      ? `${quoted(key, node.flow)}: ${value.source}`
      : node.flow
        ? value.source
        : `- ${value.source}`
  const splice = node.flow ? flowInsertion(text, node, line) : blockInsertion(text, node, line)
  return splice === undefined
    ? refused(`nothing can be added at ${what} without rewriting lines: add it by hand`)
    : proved(text, splice, expected, what)
}

/** Before the closing bracket, after the last entry's value or its comma. */
const flowInsertion = (text: string, node: TextMap | TextList, line: string): Splice => {
  const parts = partsOf(text, node)
  const last = parts.at(-1)
  if (last === undefined) {
    const pad = node.kind === 'map' ? ' ' : ''
    return { start: node.start + 1, end: node.end - 1, insert: `${pad}${line}${pad}` }
  }
  const comma = /^\s*,/u.exec(text.slice(last.end, node.end))
  return comma === null
    ? { start: last.end, end: last.end, insert: `, ${line}` }
    : { start: last.end + comma[0].length, end: last.end + comma[0].length, insert: ` ${line}` }
}

/** On a line of its own after the last entry, indented like the first. */
const blockInsertion = (text: string, node: TextMap | TextList, line: string): Splice | undefined => {
  const prefix = prefixOf(text, node.start)
  if (!/^[ -]*$/u.test(prefix)) return undefined
  const { next } = lineBounds(text, node.end)
  const indented = ' '.repeat(prefix.length) + line
  const newline = newlineOf(text)
  return text[next - 1] === '\n'
    ? { start: next, end: next, insert: indented + newline }
    : { start: text.length, end: text.length, insert: newline + indented }
}

/** Where an entry stands, from its key or dash to its value's end. */
interface Part {
  readonly start: number
  readonly end: number
}

/** The entries that are written in the collection itself, in order. */
const partsOf = (text: string, node: TextMap | TextList): readonly Part[] =>
  node.kind === 'map'
    ? [...node.entries.values()]
        .filter((entry) => entry.key.usedAt === undefined)
        .map((entry) => ({ start: entry.key.start, end: Math.max(writtenEnd(entry.value), entry.key.end) }))
    : node.items.map((item, place) => {
        const before = node.items[place - 1]
        const start = node.flow
          ? writtenStart(item)
          : before === undefined
            ? node.start
            : dashAfter(text, writtenEnd(before))
        return { start, end: writtenEnd(item) }
      })

/** The dash of the list item that follows, past comments. */
const dashAfter = (text: string, from: number): number => {
  let at = from
  while (at < text.length && text[at] !== '-') at = text[at] === '#' ? lineBounds(text, at).next : at + 1
  return at
}

/**
 * Removes an entry with the comments on lines of their own right above it; those above the file's first entry stay. The last entry of a
 * map or list leaves it empty.
 *
 * @param pointer JSON pointer of the entry
 */
export const removeEntry = (text: string, pointer: string): Edit => {
  const root = opened(text)
  if (typeof root === 'string') return refused(root)
  const keys = pointerKeys(pointer)
  const found = find(root, keys)
  if (found?.parent === undefined) return refused(`there is nothing at ${pointer || 'the root'} to remove`)
  const { parent, entry, key } = found
  if (parent.usedAt !== undefined) return behindAlias(pointer)
  if (entry?.key.usedAt !== undefined)
    return refused(`${pointer} comes in through <<: take it out where it is written`)
  const parts = partsOf(text, parent)
  const own = entry === undefined ? Number(key) : parts.findIndex((part) => part.start === entry.key.start)
  const expected = changed(root, keys, (holder, last) => {
    if (Array.isArray(holder)) holder.splice(Number(last), 1)
    else delete holder[last]
  })
  const only = parent.kind === 'map' ? parent.entries.size === 1 : parts.length === 1
  if (only && !parent.flow) {
    if (keys.length === 1) return refused(`${pointer} is all that the file holds`)
    return setValue(text, pointer.slice(0, pointer.lastIndexOf('/')), parent.kind === 'map' ? '{}' : '[]')
  }
  const splice = only
    ? { start: parent.start + 1, end: parent.end - 1, insert: '' }
    : removalSplice(text, parent, parts, own, own > 0 || keys.length > 1)
  return proved(text, splice, expected, pointer)
}

const removalSplice = (
  text: string,
  parent: TextMap | TextList,
  parts: readonly Part[],
  own: number,
  commentsAbove: boolean,
): Splice => {
  const part = parts[own]!
  const lines = ownLines(text, part.start, part.end, {
    comma: parent.flow,
    above: commentsAbove && !parent.flow,
  })
  if (lines !== undefined) return { ...lines, insert: '' }
  const next = parts[own + 1]
  if (next !== undefined) return { start: part.start, end: next.start, insert: '' }
  const before = parts[own - 1]
  return { start: before?.end ?? part.start, end: part.end, insert: '' }
}
