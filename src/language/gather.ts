/**
 * Brings a plan together from its files: its own, the chain of its bases, its kits and its room, each read through the
 * port, checked by itself, and merged into one tree. What is wrong in any of them is a mistake at its place there.
 */
import { readText } from '../text/read.js'
import type { TextFault, TextMap, TextNode, TextReading, TextScalar } from '../text/tree.js'
import { mergeKits, mergePlans } from './merge.js'
import type { MistakeAt, MistakeList } from './mistakes.js'
import type { FilePort } from './port.js'
import { validate } from './validate.js'

export interface Gathered {
  /** Merged; the kit under `kit`, the room under `room`, whatever files they came from. */
  readonly root: TextMap
  /** Pointer in the merged plan at which a file's content begins. */
  readonly prefixes: ReadonlyMap<string, string>
  /** False where a kit could not be had: then names of gear are not known. */
  readonly kitWhole: boolean
  readonly roomWhole: boolean
}

/** Base, kit and room files of one plan. */
const mostFiles = 32

type FileKind = 'base' | 'kit' | 'room'

interface SharedFile {
  readonly text: string
  readonly reading: TextReading
  /** Without the key that says what the file is; one object for all plans. */
  readonly content: TextMap | undefined
  readonly mistakes: readonly MistakeAt[]
}

/** Many plans of one run stand on the same base, kit and room: each is read and checked once for each port. */
const shared = new WeakMap<FilePort, Map<string, SharedFile>>()

const sharedFile = (port: FilePort, kind: FileKind, file: string, text: string): SharedFile => {
  let known = shared.get(port)
  if (known === undefined) {
    known = new Map()
    shared.set(port, known)
  }
  const name = `${kind} ${file}`
  const before = known.get(name)
  if (before?.text === text) return before
  const reading = readText(file, text)
  const mistakes = reading.root === undefined ? [] : validate(kind, reading.root)
  const content = reading.root?.kind === 'map' ? withValue(reading.root, kind, undefined) : undefined
  const made = { text, reading, content, mistakes }
  known.set(name, made)
  return made
}

const textOf = (node: TextNode | undefined): TextScalar | undefined =>
  node?.kind === 'scalar' && typeof node.value === 'string' ? node : undefined

const at = (root: TextMap, key: string): TextNode | undefined => root.entries.get(key)?.value

const withValue = (root: TextMap, key: string, value: TextNode | undefined): TextMap => {
  const entries = new Map(root.entries)
  const entry = entries.get(key)
  if (value === undefined) entries.delete(key)
  else if (entry !== undefined) entries.set(key, { key: entry.key, value })
  return { ...root, entries }
}

const faultsAsMistakes = (faults: readonly TextFault[]): readonly MistakeAt[] =>
  faults.map((fault) => ({
    rule: fault.rule,
    at: fault,
    message: fault.says,
    ...(fault.also === undefined ? {} : { also: [{ ...fault.also, file: fault.file }] }),
  }))

/** Gathers the files of one plan. */
class Gathering {
  readonly prefixes = new Map<string, string>()
  #files = 0

  constructor(
    private readonly port: FilePort,
    private readonly texts: Map<string, string>,
    private readonly asks: Map<string, TextNode>,
    private readonly mistakes: MistakeList,
  ) {}

  /**
   * A file that is named in another.
   *
   * @param asked where the plan's own file began to ask for it
   * @param trail files whose reading is not done
   */
  fetch(kind: FileKind, named: TextScalar, asked: TextNode, trail: readonly string[]): TextMap | undefined {
    const refuse = (message: string, why: string): undefined => {
      this.mistakes.add({ rule: 'plan-unreadable', at: named, message, why })
      return undefined
    }
    this.#files += 1
    if (this.#files > mostFiles)
      return refuse(
        `a plan draws on at most ${mostFiles} base, kit and room files`,
        'put some of them together',
      )
    const answer = this.port.read(named.value as string, named.file)
    if (!answer.ok) return refuse(answer.says, `the ${kind} is named here`)
    if (trail.includes(answer.file)) {
      const circle = [...trail.slice(trail.indexOf(answer.file)), answer.file]
      return refuse(
        `the files name each other in a circle: ${circle.join(' → ')}`,
        'let the base stand on its own',
      )
    }
    this.texts.set(answer.file, answer.text)
    if (!this.asks.has(answer.file)) this.asks.set(answer.file, asked)
    const { reading, content, mistakes } = sharedFile(this.port, kind, answer.file, answer.text)
    if (reading.root !== undefined) this.mistakes.know(answer.file, reading.root)
    this.mistakes.addAll([...faultsAsMistakes(reading.faults), ...mistakes])
    return kind === 'base' && reading.root?.kind === 'map' ? reading.root : content
  }

  /** A plan or base with everything that it stands on merged in; undefined where a base could not be had. */
  withBases(root: TextMap, asked: TextNode | undefined, trail: readonly string[]): TextMap | undefined {
    const named = textOf(at(root, 'base'))
    if (named === undefined) return root
    const base = this.fetch('base', named, asked ?? named, trail)
    if (base === undefined) return undefined
    const whole = this.withBases(base, asked ?? named, [...trail, base.file])
    if (whole === undefined) return undefined
    return mergePlans(whole, root, (entry, names) =>
      this.mistakes.unknownName({
        at: entry.key,
        what: 'entry in the base',
        name: String(entry.key.value),
        names,
        why: 'nothing (null) takes an entry of the base away, and the base has none of that name',
      }),
    )
  }

  /** Files named at one key of the plan, and whether all of them could be had. */
  named(kind: 'kit' | 'room', words: readonly TextScalar[], file: string) {
    const found = words.flatMap((one) => {
      const asked = one.file === file ? one : (this.asks.get(one.file) ?? one)
      return this.fetch(kind, one, asked, [file]) ?? []
    })
    for (const map of found) this.prefixes.set(map.file, `/${kind}`)
    return { found, all: found.length === words.length }
  }
}

/**
 * Undefined where nothing can be made of the files together; the mistakes say why.
 *
 * @param texts gets the text of every file that is read
 * @param asks gets, for each other file, where the plan's own file asks for it
 */
export const gather = (
  file: string,
  text: string,
  port: FilePort,
  texts: Map<string, string>,
  asks: Map<string, TextNode>,
  mistakes: MistakeList,
): Gathered | undefined => {
  const { root: own, faults } = readText(file, text)
  if (own !== undefined) mistakes.know(file, own)
  mistakes.addAll(faultsAsMistakes(faults))
  if (own === undefined) return undefined
  mistakes.addAll(validate('plan', own))
  if (own.kind !== 'map') return undefined

  const gathering = new Gathering(port, texts, asks, mistakes)
  const merged = gathering.withBases(own, undefined, [file])
  if (merged === undefined) return undefined
  let root = merged
  if (merged !== own) {
    root = withValue(merged, 'base', undefined)
    // What is wrong with a file by itself is told already.
    for (const mistake of validate('plan', root)) if (!mistakes.tellsOf(mistake.at)) mistakes.add(mistake)
  }

  const kit = at(root, 'kit')
  const kitWords = (kit?.kind === 'list' ? kit.items : [kit]).flatMap((one) => textOf(one) ?? [])
  const kits = gathering.named('kit', kitWords, file)
  if (kit !== undefined && kit.kind !== 'map') root = withValue(root, 'kit', mergeKits(kits.found))

  const room = textOf(at(root, 'room'))
  const rooms = gathering.named('room', room === undefined ? [] : [room], file)
  if (room !== undefined) root = withValue(root, 'room', rooms.found[0])
  return {
    root,
    prefixes: gathering.prefixes,
    kitWhole: kits.all,
    roomWhole: rooms.all,
  }
}
