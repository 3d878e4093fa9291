/** Collects the mistakes of a plan's files, each once, with its place. */
import { type LineIndex, lineIndex, placeAt } from '../text/lines.js'
import type { Place } from '../text/place.js'
import type { TextNode } from '../text/tree.js'
import type { Mistake } from './mistake.js'
import { nearest } from './nearest.js'
import { pointersIn } from './pointer-of.js'

export interface Span {
  readonly file: string
  readonly start: number
  readonly end: number
}

export interface MistakeAt {
  readonly rule: Mistake['rule']
  /** What is reached through an alias says where it is used. */
  readonly at: Span & { readonly usedAt?: Span }
  /** Of the value in its own file; looked up where it is not said. */
  readonly pointer?: string
  readonly message: string
  readonly why?: string
  /** Without it, where the value is used if it is written elsewhere. */
  readonly also?: readonly (Span & { readonly says: string })[]
  readonly advice?: readonly string[]
}

export interface UnknownName {
  readonly at: MistakeAt['at']
  /** What was looked for: `light`, `point to meter at`. */
  readonly what: string
  readonly name: string
  readonly names: readonly string[]
  /** Instead of the list of what there is. */
  readonly why?: string
}

/** Nobody reads more; keeps a hostile file from standing for a flood. */
const mostMistakes = 500
const mostCandidates = 500
const longestName = 60

const mostListed = 8

/** Names in a sentence; a long list is cut, for nobody reads it. */
export const listed = (names: readonly string[], most = mostListed): string =>
  names.length <= most
    ? names.join(', ')
    : `${names.slice(0, most).join(', ')} and ${names.length - most} more`

/** What is built in is listed by a command. */
const catalogues: ReadonlyMap<string, string> = new Map([
  ['surface', 'surfaces'],
  ['unit', 'units'],
  ['modifier', 'modifiers'],
])

const whereListed = (what: string, names: readonly string[]): string => {
  const catalogue = catalogues.get(what)
  return catalogue === undefined || names.length <= mostListed
    ? ''
    : `; thirdstop explain ${catalogue} lists what is built in`
}

const clipped = (name: string): string =>
  name.length <= longestName ? name : `${name.slice(0, longestName)}…`

const placeName = ({ file, start, end }: Span): string => `${file}\n${start}\n${end}`

export class MistakeList {
  readonly #found = new Map<string, Mistake>()
  #tellings = 0
  readonly #told = new Set<string>()
  readonly #indexes = new Map<string, LineIndex>()
  readonly #roots = new Map<string, TextNode>()
  readonly #pointers = new Map<string, (span: Span) => string | undefined>()

  /**
   * @param texts of the files that places point into; may grow
   * @param asks where the plan's own file asks for the others; may grow
   */
  constructor(
    private readonly texts: ReadonlyMap<string, string>,
    private readonly asks: ReadonlyMap<string, Span> = new Map(),
  ) {}

  get all(): readonly Mistake[] {
    return [...this.#found.values()]
  }

  get count(): number {
    return this.#found.size
  }

  /** How often anything was told, the same once more counted. */
  get tellings(): number {
    return this.#tellings
  }

  /** True where something keeps a plan from being computed. */
  get grave(): boolean {
    return this.all.some((mistake) => mistake.rule !== 'value-unused')
  }

  tellsOf(span: Span): boolean {
    return this.#told.has(placeName(span))
  }

  /** Lets places in a file have their pointers. */
  know(file: string, root: TextNode): void {
    this.#roots.set(file, root)
  }

  #pointer(span: Span): string {
    const root = this.#roots.get(span.file)
    if (root === undefined) return ''
    const pointers = this.#pointers.get(span.file) ?? pointersIn(root, span.file)
    this.#pointers.set(span.file, pointers)
    return pointers(span) ?? ''
  }

  #place(span: Span, pointer = this.#pointer(span)): Place {
    const index = this.#indexes.get(span.file) ?? lineIndex(this.texts.get(span.file) ?? '')
    this.#indexes.set(span.file, index)
    return placeAt(index, span.file, pointer, span.start, span.end)
  }

  #usedAt(at: MistakeAt['at']): MistakeAt['also'] {
    const used = at.usedAt ?? this.asks.get(at.file)
    return used === undefined
      ? []
      : [{ file: used.file, start: used.start, end: used.end, says: 'used here' }]
  }

  add(mistake: MistakeAt): void {
    if (this.count >= mostMistakes) {
      this.#tellings += 1
      return
    }
    this.addPlaced({
      rule: mistake.rule,
      place: this.#place(mistake.at, mistake.pointer),
      message: mistake.message,
      why: mistake.why ?? '',
      also: (mistake.also ?? this.#usedAt(mistake.at) ?? []).map((one) => ({
        ...this.#place(one),
        says: one.says,
      })),
      advice: mistake.advice ?? [],
    })
  }

  addAll(found: readonly MistakeAt[]): void {
    for (const mistake of found) this.add(mistake)
  }

  /** The same thing said twice of one place is one mistake. */
  addPlaced(mistake: Mistake): void {
    const place = placeName(mistake.place)
    const key = `${place}\n${mistake.message}`
    this.#told.add(place)
    this.#tellings += 1
    if (!this.#found.has(key) && this.count < mostMistakes) this.#found.set(key, mistake)
  }

  /** A name that cannot be one at all is told of as such, and not looked for. */
  unknownName({ at, what, name, names, why }: UnknownName): void {
    if (this.count >= mostMistakes || this.tellsOf(at)) return
    const meant = nearest(name, names.slice(0, mostCandidates))
    this.add({
      rule: 'unknown-name',
      at,
      message: `there is no ${what} called ${clipped(name)}${meant === undefined ? '' : `; did you mean ${meant}?`}`,
      why:
        why ??
        (names.length === 0
          ? 'there is none'
          : `there are ${listed(names.slice(0, mostCandidates).map(clipped))}${whereListed(what, names)}`),
      advice: meant === undefined ? [] : [`write ${meant}`],
    })
  }
}
