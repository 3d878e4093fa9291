/**
 * Checks a file's tree against the language: shapes, keys, names, spellings of quantities. One mistake in the file is one
 * mistake here, at its exact place. What a quantity may be (a length of at most 1 km) is said by its reader when it is read.
 */
import { pointer, pointerKeys } from '../text/place.js'
import { plain } from '../text/plain.js'
import type { TextMap, TextNode, TextScalar } from '../text/tree.js'
import { applicable, everyBranch, expanded, isMap, valueAt } from './applicable.js'
import { beyondSchema } from './beyond-schema.js'
import { decimalCommas } from './decimal-comma.js'
import { definitions } from './generated/definitions.js'
import * as compiled from './generated/validators.js'
import type { MistakeAt, Span } from './mistakes.js'
import { type Kind, kinds } from './schema/kinds.js'
import { excludedKey, mapMistakes } from './wording/map-mistakes.js'
import { valueMistake } from './wording/value-mistake.js'
import type { At, Context, Worded } from './wording/worded.js'

/** What a compiled validator says of one place: where, by which keyword, for which key. */
interface Fault {
  readonly path: string
  readonly keyword: string
  readonly key?: string
}

interface Validator {
  (data: unknown): boolean
  errors: readonly Fault[] | null
}

const validators = compiled as unknown as Readonly<Record<Kind, Validator>>

/**
 * The mistakes of a file, in the order of its text. A plan that names a base need not be whole by itself; merged, and
 * without its `base`, it must.
 */
export const validate = (kind: Kind, root: TextNode): readonly MistakeAt[] => {
  const data = plain(root)
  const validator = validators[kind]
  const worded = validator(data) ? [] : inWords(kind, root, data, validator.errors ?? [])
  // A slip in a key may be all that is missing: what is already told of a place is not told again.
  const beyond = beyondSchema(kind, data).filter(
    ({ at }) => !worded.some((one) => at.keys.every((key, i) => one.at.keys[i] === key)),
  )
  const slips = worded.length === 0 ? [] : decimalCommas(root)
  const told = new Set(slips.flatMap((slip) => slip.pointers))
  return [...worded, ...beyond]
    .filter(({ at }) => !told.has(pointer(...at.keys)))
    .map((one) => placed(root, one))
    .concat(slips.map((slip) => slip.mistake))
    .sort((a, b) => (a.at.file === b.at.file ? a.at.start - b.at.start : 0))
}

const inWords = (kind: Kind, root: TextNode, data: unknown, faults: readonly Fault[]): readonly Worded[] => {
  const all = definitions()
  const schema = all[kinds[kind]]!
  const context: Context = {
    kind,
    dataAt: (keys) => valueAt(data, keys),
    writtenAt: (keys) => {
      const { node } = find(root, keys)
      return node.kind === 'scalar' && !node.quoted ? node.source : String(valueAt(data, keys))
    },
    schemasAt: (keys, ...instead) => applicable(all, schema, data, keys, ...instead),
    schemasOf: (one, value) => expanded(all, one, value),
    everyBranch: (one) => everyBranch(all, one),
  }
  const paths = [...byPath(faults)]
  const worded = paths.slice(0, most).flatMap(([path, at]): readonly Worded[] => {
    const keys = pointerKeys(path)
    if (at.some((fault) => fault.keyword === 'false schema')) return [excludedKey(context, keys)]
    const value = context.dataAt(keys)
    const ofMap = isMap(value) && at.some((fault) => aboutKeys.has(fault.keyword))
    if (!ofMap || at.some((fault) => fault.keyword === 'type')) return [valueMistake(context, keys)]
    const named = (keyword: string): readonly string[] => [
      ...new Set(at.flatMap((fault) => (fault.keyword === keyword ? [fault.key!] : []))),
    ]
    return mapMistakes(
      context,
      keys,
      value,
      named('additionalProperties').slice(0, most),
      named('propertyNames'),
    )
  })
  return worded.length < most ? worded : [...worded.slice(0, most), more]
}

/** Nobody reads more, and a file of nothing but mistakes would take long to word. */
const most = 100

const more: Worded = {
  rule: 'plan-unreadable',
  at: { part: 'owner', keys: [] },
  message: `there are more mistakes than the first ${most}, which are listed`,
  why: 'mend these first',
}

/** Keywords whose faults are about a map's keys. */
const aboutKeys: ReadonlySet<string> = new Set(['additionalProperties', 'required', 'anyOf', 'propertyNames'])

/** Faults by place; those that only say that an inner one is there are left out. */
const byPath = (faults: readonly Fault[]): ReadonlyMap<string, readonly Fault[]> => {
  const found = new Map<string, Fault[]>()
  for (const fault of faults) {
    if (fault.keyword === 'if') continue
    const there = found.get(fault.path)
    if (there === undefined) found.set(fault.path, [fault])
    else there.push(fault)
  }
  return found
}

interface FoundNode {
  readonly node: TextNode
  readonly key: TextScalar | undefined
}

const find = (root: TextNode, keys: readonly string[]): FoundNode => {
  let found: FoundNode = { node: root, key: undefined }
  for (const key of keys) {
    const { node } = found
    if (node.kind === 'map') {
      const entry = node.entries.get(key)
      if (entry === undefined) return found
      found = { node: entry.value, key: entry.key }
    } else if (node.kind === 'list') {
      const item = node.items[Number(key)]
      if (item === undefined) return found
      found = { node: item, key: undefined }
    }
  }
  return found
}

const firstKey = (map: TextMap): TextScalar | undefined => map.entries.values().next().value?.key

const placed = (root: TextNode, { at, ...said }: Worded): MistakeAt => {
  const { node, key } = find(root, at.keys)
  const { usedAt } = node
  return {
    ...said,
    at: spanOf(at, node, key),
    pointer: pointer(...at.keys),
    ...(usedAt === undefined ? {} : { also: [{ ...usedAt, says: 'used here' }] }),
  }
}

/** A scalar shows itself; a map or list its key, or its first key, for the whole of it would be many lines. */
const spanOf = (at: At, node: TextNode, key: TextScalar | undefined): Span => {
  if (at.part === 'key') return key ?? node
  // Nothing is written there to be shown.
  if (node.kind === 'scalar' && (node.end > node.start || key === undefined)) return node
  return key ?? (node.kind === 'map' ? firstKey(node) : undefined) ?? node
}
