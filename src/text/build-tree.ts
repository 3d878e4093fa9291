/** The parser's nodes as a tree of ours: aliases and merge keys followed within a budget, every node with its place. */
import { type Alias, isAlias, isMap, isScalar, type Node, type YAMLMap, type YAMLSeq } from 'yaml'
import { buildScalar, missingValue } from './build-scalar.js'
import type { TextEntry, TextFault, TextList, TextMap, TextNode, TextScalar } from './tree.js'
import { complain, coreTag, reach, tagRefused, Unusable, type Use, unusable, type Walk } from './walk.js'

const followAlias = (walk: Walk, alias: Alias, use: Use, depth: number): TextNode => {
  const [start, end] = alias.range!
  const name = alias.source.slice(0, 40)
  const target = walk.anchors.get(alias.source)
  if (target === undefined)
    throw unusable(walk, start, end, `*${name} refers to nothing: no &${name} is written before it`)
  if (walk.open.has(target))
    throw unusable(walk, start, end, `*${name} stands inside what it refers to, which would never end`)
  return build(walk, target, undefined, use ?? { file: walk.file, start, end }, depth)
}

const buildList = (walk: Walk, node: YAMLSeq, use: Use, depth: number): TextList => {
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
const writtenEnd = (node: TextNode, use: Use): number =>
  use === undefined && node.usedAt !== undefined ? node.usedAt.end : node.end

const lastEnd = (items: readonly TextNode[], start: number, use: Use): number => {
  const last = items.at(-1)
  return last === undefined ? start : Math.max(start, writtenEnd(last, use))
}

/** Just after the colon that follows a key; the key's end where there is none. */
const afterColon = (text: string, keyEnd: number): number => {
  let at = keyEnd
  while (text[at] === ' ' || text[at] === '\t') at += 1
  return text[at] === ':' ? at + 1 : keyEnd
}

const buildKey = (walk: Walk, node: Node | null, at: number, use: Use): TextScalar | undefined => {
  if (node === null) return complain(walk, use, at, at, 'a name is missing before the colon')
  if (isAlias(node)) {
    const target = followAlias(walk, node, use, 0)
    if (target.kind === 'scalar') return target
  } else if (isScalar(node)) {
    register(walk, node, use)
    const key = buildScalar(walk, node, at, use, 0)
    // Keys are names, and only values count.
    walk.values -= 1
    return named(key) === ''
      ? complain(walk, use, key.start, key.end, 'a name is missing before the colon')
      : key
  }
  const [start, end] = node.range!
  return complain(walk, use, start, end, 'a name is a word, not a list or a map')
}

/** Anchors count in the order of the file, not again where an alias repeats what holds them. */
const register = (walk: Walk, node: Node, use: Use): void => {
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
      complain(walk, key.usedAt, key.start, key.end, '<< takes a map, or a list of maps')
      return
    }
    for (const [name, entry] of map.entries)
      if (!entries.has(name)) {
        entries.set(name, entry)
        merged.add(name)
      }
  }
}

/** `power:1/4` between braces, which YAML takes for a name without a value; but not `http://…`. */
const joined = /:[^\s/]/u

const spaceMissing = (walk: Walk, key: TextScalar, use: Use): void => {
  const at = key.source.indexOf(':')
  const says = `a space is missing after the colon: write ${key.source.slice(0, at).slice(0, 40)}: ${key.source.slice(at + 1).slice(0, 40)}`
  complain(walk, use, key.start, key.end, says)
}

const usedTwice = (walk: Walk, name: string, first: TextScalar, second: TextScalar): TextFault => ({
  rule: 'duplicate-name',
  file: walk.file,
  start: second.start,
  end: second.end,
  says: `the name ${name.slice(0, 60)} is used twice in one map: rename one or take it out`,
  also: { start: first.start, end: first.end, says: 'first used here' },
})

const buildMap = (walk: Walk, node: YAMLMap, use: Use, depth: number): TextMap => {
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
    else if (name === '__proto__')
      complain(walk, use, key.start, key.end, 'the name __proto__ cannot be used: take another')
    else if (valueNode === null && !key.quoted && joined.test(name)) spaceMissing(walk, key, use)
    else {
      const first = entries.get(name)
      if (first === undefined || merged.delete(name)) entries.set(name, { key, value })
      else if (use === undefined) walk.faults.push(usedTwice(walk, name, first.key, key))
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

/** `at` is where an empty node is taken to stand. */
const build = (walk: Walk, node: Node, at: number | undefined, use: Use, depth: number): TextNode => {
  if (isAlias(node)) return followAlias(walk, node, use, depth)
  register(walk, node, use)
  if (isScalar(node)) return buildScalar(walk, node, at, use, depth)
  const collection = node as YAMLMap | YAMLSeq
  const [start, end] = collection.range!
  reach(walk, start, Math.min(end, start + 1), use, depth + 1)
  const ownTag = `${coreTag}${isMap(collection) ? 'map' : 'seq'}`
  const { tag } = collection
  if (tag !== undefined && tag !== ownTag && tag !== '!')
    complain(walk, use, start, Math.min(end, start + 1), tagRefused(tag))
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
