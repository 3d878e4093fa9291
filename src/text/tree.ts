/**
 * YAML as a tree in which every node knows where it is written. Built once, by walking the parser's nodes with a budget
 * (aliases are followed, never expanded beyond it); nothing after this folder knows the yaml package.
 */
export type TextNode = TextMap | TextList | TextScalar

interface Written {
  /** The file that the node is written in. */
  readonly file: string
  /** Offsets of the value in that file's text, UTF-16 units, end exclusive. */
  readonly start: number
  readonly end: number
  /** Where an alias or a merge key uses it, when it is reached through one; the outermost use. */
  readonly usedAt?: { readonly file: string; readonly start: number; readonly end: number }
}

export interface TextScalar extends Written {
  readonly kind: 'scalar'
  readonly value: string | number | boolean | null
  /** As written, quotes and all. */
  readonly source: string
  /** Also true of block scalars (`|`, `>`): never anything but a string. */
  readonly quoted: boolean
}

export interface TextMap extends Written {
  readonly kind: 'map'
  readonly flow: boolean
  /** In order of the file; keys may be anything but `__proto__`, which is refused. */
  readonly entries: ReadonlyMap<string, TextEntry>
}

export interface TextEntry {
  readonly key: TextScalar
  readonly value: TextNode
}

export interface TextList extends Written {
  readonly kind: 'list'
  readonly flow: boolean
  readonly items: readonly TextNode[]
}

/** Something wrong with the text itself. `rule` is the plan family's rule that it is reported under. */
export interface TextFault {
  readonly rule: 'plan-unreadable' | 'duplicate-name'
  readonly file: string
  readonly start: number
  readonly end: number
  /** Trade words, what is wrong and what to write. */
  readonly says: string
  /** A related place: the first of two keys of one name. */
  readonly also?: { readonly start: number; readonly end: number; readonly says: string }
}

export interface TextReading {
  /** Undefined where nothing usable came out. */
  readonly root: TextNode | undefined
  readonly faults: readonly TextFault[]
}
