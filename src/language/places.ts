/**
 * Answers where the values of a plan are written: in the plan's own file, or in a base, kit or room file, behind an
 * alias, at the light that another is like, in the kit's entry for the gear that is named. Pointers are those of the
 * merged plan, with the kit under `/kit` and the room under `/room` whichever files they came from.
 */
import { type LineIndex, lineIndex, placeAt } from '../text/lines.js'
import { type Place, pointer, pointerKeys } from '../text/place.js'
import type { TextEntry, TextMap, TextNode } from '../text/tree.js'
import type { Places } from './plan.js'

export interface Written {
  /** The plan's own file. */
  readonly file: string
  readonly root: TextMap
  readonly texts: ReadonlyMap<string, string>
  /** Pointer in the merged plan at which the content of a file begins: `/kit`, `/room`, or nothing. */
  readonly prefixes: ReadonlyMap<string, string>
  /** Where the plan's own file asks for another file, itself or by what it asks for. */
  readonly asks: ReadonlyMap<string, TextNode>
  /** Pointer of a value that came over by `like` to the pointer where it is written. */
  readonly origins: ReadonlyMap<string, string>
  /**
   * What is not written at a pointer goes on at another: the facts of a light's unit in the kit's entry for it. `used` is
   * what names it.
   */
  readonly redirects: ReadonlyMap<string, { readonly to: string; readonly used: TextNode }>
}

interface Found {
  readonly node: TextNode
  readonly key: TextEntry['key'] | undefined
  /** In the file that the node is written in, before the file's own prefix is taken off. */
  readonly pointer: string
  readonly exact: boolean
  /** What uses it, where it is reached in a roundabout way; the outermost. */
  readonly used: Span | undefined
}

interface Span {
  readonly file: string
  readonly start: number
  readonly end: number
}

const child = (node: TextNode, key: string): { value: TextNode; key?: TextEntry['key'] } | undefined => {
  if (node.kind === 'map') return node.entries.get(key)
  if (node.kind !== 'list' || !/^(0|[1-9][0-9]{0,8})$/.test(key)) return undefined
  const value = node.items[Number(key)]
  return value && { value }
}

/** Far longer than any chain of names can be. */
const longestWay = 8

/** Walks to a pointer as far as anything is written on the way. */
export const findNode = (written: Written, to: string, way = 0): Found => {
  let node: TextNode = written.root
  let key: TextEntry['key'] | undefined
  let used: Span | undefined
  let here = ''
  let there = ''
  const keys = pointerKeys(to)
  for (const [i, name] of keys.entries()) {
    const next = child(node, name)
    if (next === undefined) {
      const redirect = written.redirects.get(here)
      if (redirect !== undefined && way < longestWay) {
        const rest = keys.slice(i)
        const further = findNode(written, redirect.to + pointer(...rest), way + 1)
        if (further.exact) return { ...further, used: used ?? redirect.used }
      }
      return { node, key, pointer: there, exact: false, used }
    }
    here += pointer(name)
    there = written.origins.get(here) ?? there + pointer(name)
    node = next.value
    key = next.key
    used ??= node.usedAt
  }
  return { node, key, pointer: there, exact: true, used }
}

export const makePlaces = (written: Written): Places => {
  const indexes = new Map<string, LineIndex>()
  const index = (file: string): LineIndex => {
    let made = indexes.get(file)
    if (made === undefined) {
      made = lineIndex(written.texts.get(file) ?? '')
      indexes.set(file, made)
    }
    return made
  }

  const place = (span: Span, at: string): Place => {
    const prefix = written.prefixes.get(span.file) ?? ''
    const inFile = at.startsWith(prefix) ? at.slice(prefix.length) : at
    return placeAt(index(span.file), span.file, inFile, span.start, span.end)
  }

  /** A value of one line is shown itself; of a larger one its key, or its first. */
  const shown = (node: TextNode, key: TextEntry['key'] | undefined): Span => {
    if (node.kind === 'scalar') return node
    const text = written.texts.get(node.file) ?? ''
    const end = text.indexOf('\n', node.start)
    if (end < 0 || end >= node.end - 1) return node
    if (key !== undefined) return key
    const [first] = node.kind === 'map' ? [...node.entries.values()].map((entry) => entry.key) : node.items
    return first === undefined || first.file !== node.file
      ? { ...node, end: Math.max(node.start, end) }
      : shown(first, undefined)
  }

  /** Where the plan's own file uses what is written elsewhere. */
  const usedAt = (found: Found): Span | undefined => {
    let { used } = found
    if (used === undefined && found.node.file !== written.file) used = written.asks.get(found.node.file)
    if (used !== undefined && used.file !== written.file) used = written.asks.get(used.file)
    return used
  }

  return {
    of: (to) => {
      const found = findNode(written, to)
      return place(shown(found.node, found.key), found.pointer)
    },
    stated: (to) => findNode(written, to).exact,
    usedAt: (to) => {
      const found = findNode(written, to)
      const used = found.exact ? usedAt(found) : undefined
      return used && place(used, to)
    },
    written: (to) => {
      const { node, exact } = findNode(written, to)
      return exact && node.kind === 'scalar' ? node.source : undefined
    },
  }
}
