/**
 * The words in which the language's schemas are written: plain functions that return JSON Schema, draft-07. Unions are
 * tagged with `if`/`then`, so that one wrong value is one mistake and never one for each alternative.
 *
 * Source: JSON Schema draft-07 (draft-handrews-json-schema-01 and -validation-01).
 */

export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json }

/** The part of draft-07 that the language uses, and three annotations of our own (draft-07 lets unknown keywords stand). */
export interface Schema {
  readonly $schema?: string
  readonly $id?: string
  readonly $ref?: string
  readonly title?: string
  readonly description?: string
  readonly examples?: readonly Json[]
  readonly default?: Json
  readonly type?: TypeName | readonly TypeName[]
  readonly const?: Json
  readonly enum?: readonly Json[]
  readonly pattern?: string
  readonly minLength?: number
  readonly maxLength?: number
  readonly minimum?: number
  readonly exclusiveMinimum?: number
  readonly maximum?: number
  readonly properties?: { readonly [key: string]: Schema | boolean }
  readonly additionalProperties?: Schema | boolean
  readonly propertyNames?: Schema
  readonly required?: readonly string[]
  readonly minProperties?: number
  readonly maxProperties?: number
  readonly items?: Schema
  readonly minItems?: number
  readonly maxItems?: number
  readonly if?: Schema
  readonly then?: Schema
  readonly else?: Schema
  readonly not?: Schema
  readonly allOf?: readonly Schema[]
  readonly anyOf?: readonly Schema[]
  readonly definitions?: { readonly [name: string]: Schema }
  /** Names the quantity that the text is read as: its reader words the refusal. */
  readonly 'x-quantity'?: string
  /** What a name stands for ("a light's name"), for refusing a bad one. */
  readonly 'x-name'?: string
  /** What a plan must say here once its base is merged in; a base may leave it out. Not written into the public schemas. */
  readonly 'x-whole'?: Schema
}

export type TypeName = 'string' | 'number' | 'integer' | 'boolean' | 'object' | 'array' | 'null'

/** Examples and the default of a key, shown by editors. */
export type Notes = Pick<Schema, 'examples' | 'default'>

/** `if`, `then` and perhaps `else`. */
export const when = (condition: Schema, met: Schema, otherwise?: Schema): Schema => ({
  if: condition,
  // biome-ignore lint/suspicious/noThenProperty: a keyword of JSON Schema
  then: met,
  ...(otherwise === undefined ? {} : { else: otherwise }),
})

/** Conditions: the key is written; it says this. */
export const written = (key: string): Schema => ({ required: [key] })
export const says = (key: string, value: Json): Schema => ({
  properties: { [key]: { const: value } },
  required: [key],
})
/** Quantities never begin with a letter but for apertures, powers and guide numbers; words always do. */
export const beginsWithLetter: Schema = { pattern: '^\\p{L}' }

/** A value defined elsewhere. Wrapped, because draft-07 has a reader ignore whatever stands beside `$ref`. */
export const use = (name: string, description: string, notes: Notes = {}): Schema => ({
  description,
  ...notes,
  allOf: [{ $ref: `#/definitions/${name}` }],
})

/** A reference and nothing else, for the inside of lists, maps and unions. */
export const ref = (name: string): Schema => ({ $ref: `#/definitions/${name}` })

/** Free text of one line or more. */
export const text = (description: string, notes: Notes = {}): Schema => ({
  type: 'string',
  pattern: '\\S',
  maxLength: 4000,
  description,
  ...notes,
})

export const choice = (values: readonly string[], description: string, notes: Notes = {}): Schema => ({
  type: 'string',
  enum: values,
  description,
  ...notes,
})

export const yes = (description: string, notes: Notes = {}): Schema => ({
  type: 'boolean',
  description,
  examples: [true],
  default: false,
  ...notes,
})

export const number = (
  description: string,
  range: Pick<Schema, 'minimum' | 'exclusiveMinimum' | 'maximum'>,
  notes: Notes = {},
): Schema => ({ type: 'number', description, ...range, ...notes })

/** Beside a colour temperature, as colour meters show it. */
export const duv = (description: string): Schema =>
  number(description, { minimum: -0.05, maximum: 0.05 }, { examples: [0.012, -0.003] })

export const whole = (description: string, minimum: number, maximum: number, notes: Notes = {}): Schema => ({
  type: 'integer',
  minimum,
  maximum,
  description,
  ...notes,
})

/** A map with known keys and no others. */
export const map = (
  description: string,
  properties: { readonly [key: string]: Schema },
  more: Pick<Schema, 'required' | 'allOf' | 'anyOf' | 'minProperties' | 'examples' | 'x-whole'> = {},
): Schema => ({ type: 'object', description, properties, additionalProperties: false, ...more })

/** A map from names that the author chooses. */
export const named = (
  description: string,
  value: Schema,
  names: Schema,
  most: number,
  notes: Notes = {},
): Schema => ({
  type: 'object',
  description,
  maxProperties: most,
  propertyNames: names,
  additionalProperties: value,
  ...notes,
})

export const list = (
  description: string,
  items: Schema,
  range: Pick<Schema, 'minItems' | 'maxItems'>,
  notes: Notes = {},
): Schema => ({ type: 'array', description, items, ...range, ...notes })

/** One value in several shapes, told apart by what it is in YAML: text, number, list or map. */
export const either = (
  description: string,
  shapes: {
    readonly string?: Schema
    readonly number?: Schema
    readonly array?: Schema
    readonly object?: Schema
  },
  notes: Notes = {},
): Schema => {
  const types = (['object', 'array', 'number', 'string'] as const).filter(
    (type) => shapes[type] !== undefined,
  )
  const branch = ([type, ...rest]: readonly (keyof typeof shapes)[]): Schema =>
    rest.length === 0 ? shapes[type!]! : when({ type: type! }, shapes[type!]!, branch(rest))
  return { description, ...notes, type: types, ...branch(types) }
}

/** One of several words, or a quantity, which never begins with a letter. */
export const wordOr = (
  words: readonly string[],
  quantity: string,
  description: string,
  notes: Notes = {},
): Schema => ({
  description,
  ...notes,
  type: 'string',
  ...when(beginsWithLetter, { enum: words }, ref(quantity)),
})

/** Where `key` is written, the `others` are not: two ways to say one thing. */
export const alone = (key: string, others: readonly string[]): Schema =>
  when(written(key), { properties: Object.fromEntries(others.map((other) => [other, false])) })

/** At least one of these keys. */
export const oneOfKeys = (...keys: readonly string[]): Schema => ({
  anyOf: keys.map((key) => ({ required: [key] })),
})
