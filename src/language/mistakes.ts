/** Collects the mistakes of a plan's files, each once, with its place. */
import { type LineIndex, lineIndex, placeAt } from '../text/lines.js'
import type { Place } from '../text/place.js'
import type { TextNode } from '../text/tree.js'
import type { Mistake } from './mistake.js'
import { nearest } from './nearest.js'
import { pointerOf } from './pointer-of.js'

export interface Span {
  readonly file: string
  readonly start: number
  readonly end: number
}

export interface MistakeAt {
  readonly rule: Mistake['rule']
  readonly at: Span
  /** Of the value in its own file; looked up where it is not said. */
  readonly pointer?: string
  readonly message: string
  readonly why?: string
  readonly also?: readonly (Span & { readonly says: string })[]
  readonly advice?: readonly string[]
}

export interface UnknownName {
  readonly at: Span
  /** What was looked for: `light`, `point to meter at`. */
  readonly what: string
  readonly name: string
  readonly names: readonly string[]
  /** Instead of the list of what there is. */
  readonly why?: string
}

/** Names in a sentence; a long list is cut, for nobody reads it. */
export const listed = (names: readonly string[], most = 8): string =>
  names.length <= most
    ? names.join(', ')
    : `${names.slice(0, most).join(', ')} and ${names.length - most} more`

export class MistakeList {
  readonly #found = new Map<string, Mistake>()
  readonly #indexes = new Map<string, LineIndex>()
  readonly #roots = new Map<string, TextNode>()

  constructor(private readonly texts: ReadonlyMap<string, string>) {}

  get all(): readonly Mistake[] {
    return [...this.#found.values()]
  }

  get count(): number {
    return this.#found.size
  }

  /** True where something keeps a plan from being computed. */
  get grave(): boolean {
    return this.all.some((mistake) => mistake.rule !== 'value-unused')
  }

  tellsOf({ file, start, end }: Span): boolean {
    return this.all.some(({ place }) => place.file === file && place.start === start && place.end === end)
  }

  /** Lets places in a file have their pointers. */
  know(file: string, root: TextNode): void {
    this.#roots.set(file, root)
  }

  place(span: Span, known?: string): Place {
    let index = this.#indexes.get(span.file)
    if (index === undefined) {
      index = lineIndex(this.texts.get(span.file) ?? '')
      this.#indexes.set(span.file, index)
    }
    const root = known === undefined ? this.#roots.get(span.file) : undefined
    const found = root && pointerOf(root, span.file, span.start, span.end)
    const pointer = known ?? found ?? ''
    return placeAt(index, span.file, pointer, span.start, span.end)
  }

  add(mistake: MistakeAt): void {
    this.addPlaced({
      rule: mistake.rule,
      place: this.place(mistake.at, mistake.pointer),
      message: mistake.message,
      why: mistake.why ?? '',
      also: (mistake.also ?? []).map((one) => ({ ...this.place(one), says: one.says })),
      advice: mistake.advice ?? [],
    })
  }

  /** @param used where the plan's own file asks for the file that they are in */
  addAll(found: readonly MistakeAt[], used?: Span): void {
    for (const mistake of found)
      this.add(
        used === undefined
          ? mistake
          : { ...mistake, also: [...(mistake.also ?? []), { ...used, says: 'used here' }] },
      )
  }

  /** The same thing said twice of one place is one mistake. */
  addPlaced(mistake: Mistake): void {
    const { file, start, end } = mistake.place
    const key = `${file}\n${start}\n${end}\n${mistake.message}`
    if (!this.#found.has(key)) this.#found.set(key, mistake)
  }

  unknownName({ at, what, name, names, why }: UnknownName): void {
    const meant = nearest(name, names)
    this.add({
      rule: 'unknown-name',
      at,
      message: `there is no ${what} called ${name}${meant === undefined ? '' : `; did you mean ${meant}?`}`,
      why: why ?? (names.length === 0 ? 'there is none' : `there are ${listed(names)}`),
      advice: meant === undefined ? [] : [`write ${meant}`],
    })
  }
}
