/** The parser's nodes as a tree of ours: aliases and merge keys followed within a budget, every node with its place. */
import {
  type Alias,
  isAlias,
  isMap,
  isScalar,
  type Node,
  type Scalar,
  type YAMLMap,
  type YAMLSeq,
} from 'yaml'
import { coreValue } from './core-scalar.js'
import type { TextEntry, TextFault, TextList, TextMap, TextNode, TextScalar } from './tree.js'

/** Values in one file after aliases. */
export const mostValues = 50_000
/** Maps and lists inside one another. */
export const deepest = 32

type Use = NonNullable<TextScalar['usedAt']>

/** Thrown where nothing usable comes out; caught by `buildTree` alone. */
class Unusable extends Error {
  constructor(readonly fault: TextFault) {
    super(fault.says)
  }
}

interface Walk {
  readonly file: string
  readonly text: string
  readonly faults: TextFault[]
  readonly anchors: Map<string, Node>
  /** Collections being walked: an alias to one of them would never end. */
  readonly open: Set<Node>
  values: number
}

const coreTag = 'tag:yaml.org,2002:'
const collectionTags: Readonly<Record<'map' | 'list', string>> = {
  map: `${coreTag}map`,
  list: `${coreTag}seq`,
}

const fault = (walk: Walk, start: number, end: number, says: string): TextFault => ({
  rule: 'plan-unreadable',
  file: walk.file,
  start,
  end,
  says,
})

const reach = (walk: Walk, start: number, end: number, use: Use | undefined, depth: number): void => {
  const place = use ?? { start, end }
  walk.values += 1
  if (walk.values > mostValues)
    throw new Unusable(
      fault(walk, place.start, place.end, `there are over ${mostValues} values here, counting aliases`),
    )
  if (depth > deepest)
    throw new Unusable(
      fault(walk, place.start, place.end, `maps and lists are nested more than ${deepest} deep here`),
    )
}

const tagRefused = (tag: string): string =>
  `the tag ${tag.startsWith(coreTag) ? `!!${tag.slice(coreTag.length, coreTag.length + 30)}` : tag.slice(0, 30)} has no meaning here: write the value without it`

/** What a tag makes of a scalar; a tag that does not fit is a fault and the value is taken without it. */
const tagged = (
  walk: Walk,
  node: Scalar,
  start: number,
  end: number,
  use: Use | undefined,
): TextScalar['value'] => {
  const text = String(node.value)
  const value = node.type === 'PLAIN' ? coreValue(text) : text
  const tag = node.tag
  if (tag === undefined) return value
  if (tag === '!' || tag === `${coreTag}str`) return text
  const forced = coreValue(text)
  const fits =
    (tag === `${coreTag}null` && forced === null) ||
    (tag === `${coreTag}bool` && typeof forced === 'boolean') ||
    (tag === `${coreTag}int` && Number.isInteger(forced)) ||
    (tag === `${coreTag}float` && typeof forced === 'number')
  if (fits) return forced
  if (use === undefined) walk.faults.push(fault(walk, start, end, tagRefused(tag)))
  return value
}

const buildScalar = (
  walk: Walk,
  node: Scalar,
  at: number | undefined,
  use: Use | undefined,
  depth: number,
): TextScalar => {
  const range = node.range!
  const empty = range[0] === range[1]
  const start = empty ? (at ?? range[0]) : range[0]
  let end = empty ? start : range[1]
  // A block scalar reaches into the line after it.
  while (end > start && (walk.text[end - 1] === '\n' || walk.text[end - 1] === '\r')) end -= 1
  reach(walk, start, end, use, depth)
  const value = tagged(walk, node, start, end, use)
  if (typeof value === 'number' && !Number.isFinite(value))
    throw new Unusable(
      fault(
        walk,
        start,
        end,
        `${walk.text.slice(start, Math.min(end, start + 30))} is no figure that can be used: write a number`,
      ),
    )
  return {
    kind: 'scalar',
    file: walk.file,
    start,
    end,
    ...(use && { usedAt: use }),
    value,
    source: walk.text.slice(start, end),
    quoted: node.type !== 'PLAIN' && !empty,
  }
}

const followAlias = (walk: Walk, alias: Alias, use: Use | undefined, depth: number): TextNode => {
  const [start, end] = alias.range!
  const name = alias.source.slice(0, 40)
  const target = walk.anchors.get(alias.source)
  if (target === undefined)
    throw new Unusable(
      fault(walk, start, end, `*${name} refers to nothing: no &${name} is written before it`),
    )
  if (walk.open.has(target))
    throw new Unusable(
      fault(walk, start, end, `*${name} stands inside what it refers to, which would never end`),
    )
  return build(walk, target, undefined, use ?? { file: walk.file, start, end }, depth)
}

const buildList = (walk: Walk, node: YAMLSeq, use: Use | undefined, depth: number): TextList => {
  const [start, flowEnd] = node.range!
  const items = node.items.map((item) => build(walk, item as Node, undefined, use, depth + 1))
  const end = node.flow ? flowEnd : lastEnd(items, start, use)
  return {
    kind: 'list',
    file: walk.file,
    start,
    end,
    ...(use && { usedAt: use }),
    flow: node.flow === true,
    items,
  }
}

/** End of what is written of the last item: of the alias, where one stands for it. */
const writtenEnd = (node: TextNode, use: Use | undefined): number =>
  use === undefined && node.usedAt !== undefined ? node.usedAt.end : node.end

const lastEnd = (items: readonly TextNode[], start: number, use: Use | undefined): number => {
  const last = items.at(-1)
  return last === undefined ? start : Math.max(start, writtenEnd(last, use))
}

/** Just after the colon that follows a key; the key's end where there is none. */
const afterColon = (text: string, keyEnd: number): number => {
  let at = keyEnd
  while (text[at] === ' ' || text[at] === '\t') at += 1
  return text[at] === ':' ? at + 1 : keyEnd
}

const buildKey = (
  walk: Walk,
  node: Node | null,
  at: number,
  use: Use | undefined,
): TextScalar | undefined => {
  const complain = (start: number, end: number, says: string): undefined => {
    if (use === undefined) walk.faults.push(fault(walk, start, end, says))
    return undefined
  }
  if (node === null) return complain(at, at, 'a name is missing before the colon')
  if (isAlias(node)) {
    const target = followAlias(walk, node, use, 0)
    if (target.kind === 'scalar') return target
  } else if (isScalar(node)) {
    register(walk, node, use)
    const key = buildScalar(walk, node, at, use, 0)
    // Keys are names, and only values count.
    walk.values -= 1
    return named(key) === '' ? complain(key.start, key.end, 'a name is missing before the colon') : key
  }
  const [start, end] = node.range!
  return complain(start, end, 'a name is a word, not a list or a map')
}

/** Anchors count in the order of the file, not again where an alias repeats what holds them. */
const register = (walk: Walk, node: Node, use: Use | undefined): void => {
  const anchor = (node as { anchor?: string }).anchor
  if (anchor !== undefined && use === undefined) walk.anchors.set(anchor, node)
}

/** The name that a key gives: as written where it is not quoted, so that `1` and `yes` stay what they look like. */
const named = (key: TextScalar): string => (typeof key.value === 'string' ? key.value : key.source)

/** Merges what `<<` names into a map's entries: keys of its own win, then earlier maps. */
const merge = (
  walk: Walk,
  key: TextScalar,
  value: TextNode,
  entries: Map<string, TextEntry>,
  merged: Set<string>,
): void => {
  const maps = value.kind === 'list' ? value.items : [value]
  for (const map of maps) {
    if (map.kind !== 'map') {
      if (key.usedAt === undefined)
        walk.faults.push(fault(walk, key.start, key.end, '<< takes a map, or a list of maps'))
      return
    }
    for (const [name, entry] of map.entries)
      if (!entries.has(name)) {
        entries.set(name, entry)
        merged.add(name)
      }
  }
}

const buildMap = (walk: Walk, node: YAMLMap, use: Use | undefined, depth: number): TextMap => {
  const [start, flowEnd] = node.range!
  const entries = new Map<string, TextEntry>()
  const merged = new Set<string>()
  let end = start
  let at = start
  for (const pair of node.items) {
    const keyNode = pair.key as Node | null
    const key = buildKey(walk, keyNode, at, use)
    const keyEnd = keyNode?.range?.[1] ?? at
    const valueAt = afterColon(walk.text, keyEnd)
    const valueNode = pair.value as Node | null
    const value =
      valueNode === null
        ? missingValue(walk, keyEnd, use, depth + 1)
        : build(walk, valueNode, valueAt, use, depth + 1)
    at = Math.max(valueAt, writtenEnd(value, use))
    end = Math.max(end, at)
    if (key === undefined) continue
    const name = named(key)
    if (name === '<<' && !key.quoted) merge(walk, key, value, entries, merged)
    else if (name === '__proto__') {
      if (use === undefined)
        walk.faults.push(fault(walk, key.start, key.end, 'the name __proto__ cannot be used: take another'))
    } else if (valueNode === null && /:[^\s/]/u.test(name) && !key.quoted && use === undefined) {
      const [before, after] = [name.slice(0, name.indexOf(':')), name.slice(name.indexOf(':') + 1)]
      walk.faults.push(
        fault(
          walk,
          key.start,
          key.end,
          `a space is missing after the colon: write ${before.slice(0, 40)}: ${after.slice(0, 40)}`,
        ),
      )
    } else {
      const first = entries.get(name)
      if (first === undefined || merged.delete(name)) entries.set(name, { key, value })
      else if (use === undefined)
        walk.faults.push({
          ...fault(
            walk,
            key.start,
            key.end,
            `the name ${name.slice(0, 60)} is used twice in one map: rename one or take it out`,
          ),
          rule: 'duplicate-name',
          also: { start: first.key.start, end: first.key.end, says: 'first used here' },
        })
    }
  }
  return {
    kind: 'map',
    file: walk.file,
    start,
    end: node.flow ? flowEnd : end,
    ...(use && { usedAt: use }),
    flow: node.flow === true,
    entries,
  }
}

/** The nothing that a key without a colon has for its value. */
const missingValue = (walk: Walk, at: number, use: Use | undefined, depth: number): TextScalar => {
  reach(walk, at, at, use, depth)
  return {
    kind: 'scalar',
    file: walk.file,
    start: at,
    end: at,
    ...(use && { usedAt: use }),
    value: null,
    source: '',
    quoted: false,
  }
}

/** `at` is where an empty node is taken to stand. */
const build = (
  walk: Walk,
  node: Node,
  at: number | undefined,
  use: Use | undefined,
  depth: number,
): TextNode => {
  if (isAlias(node)) return followAlias(walk, node, use, depth)
  register(walk, node, use)
  if (isScalar(node)) return buildScalar(walk, node, at, use, depth)
  const collection = node as YAMLMap | YAMLSeq
  const [start, end] = collection.range!
  reach(walk, start, Math.min(end, start + 1), use, depth + 1)
  const kind = isMap(collection) ? 'map' : 'list'
  if (
    collection.tag !== undefined &&
    collection.tag !== collectionTags[kind] &&
    collection.tag !== '!' &&
    use === undefined
  )
    walk.faults.push(fault(walk, start, Math.min(end, start + 1), tagRefused(collection.tag)))
  walk.open.add(collection)
  const built = isMap(collection)
    ? buildMap(walk, collection, use, depth)
    : buildList(walk, collection as YAMLSeq, use, depth)
  walk.open.delete(collection)
  return built
}

/** The tree of a document's contents, or the fault for which there is none. */
export const buildTree = (
  file: string,
  text: string,
  contents: Node,
): { readonly root: TextNode | undefined; readonly faults: readonly TextFault[] } => {
  const walk: Walk = { file, text, faults: [], anchors: new Map(), open: new Set(), values: 0 }
  try {
    return { root: build(walk, contents, undefined, undefined, 0), faults: walk.faults }
  } catch (error) {
    if (error instanceof Unusable) return { root: undefined, faults: [error.fault] }
    throw error
  }
}
