/** A mistake in words, with where it is in the data; and what wording one can ask. */
import type { Mistake } from '../mistake.js'
import type { Schema } from '../schema/build.js'
import type { Kind } from '../schema/kinds.js'

export interface Worded {
  readonly rule: Mistake['rule']
  readonly at: At
  readonly message: string
  readonly why: string
  readonly advice?: readonly string[]
}

/** `key`: the key at these keys is wrong. `value`: its value. `owner`: something is missing inside it. */
export interface At {
  readonly part: 'key' | 'value' | 'owner'
  readonly keys: readonly string[]
}

export const at = {
  key: (keys: readonly string[]): At => ({ part: 'key', keys }),
  value: (keys: readonly string[]): At => ({ part: 'value', keys }),
  owner: (keys: readonly string[]): At => ({ part: 'owner', keys }),
}

export interface Context {
  readonly kind: Kind
  dataAt(keys: readonly string[]): unknown
  /** The scalar at these keys as the author wrote it, without quotes. */
  writtenAt(keys: readonly string[]): string
  /** The schemas that apply at these keys; `instead` stands for the value there. */
  schemasAt(keys: readonly string[], ...instead: readonly unknown[]): readonly Schema[]
  /** A schema with what it draws in for a value. */
  schemasOf(schema: Schema, value: unknown): readonly Schema[]
  /** A schema with all that it could draw in for some value. */
  readonly everyBranch: (schema: Schema) => readonly Schema[]
}
