/**
 * Which parts of the definitions apply to a value: for wording a mistake that the compiled validators found. Knows the
 * forms of JSON Schema that `schema/build.ts` writes, and no others.
 */
import type { Schema } from './schema/build.js'

export type Definitions = Readonly<Record<string, Schema>>

export type PlainMap = { readonly [key: string]: unknown }

export const isMap = (data: unknown): data is PlainMap =>
  typeof data === 'object' && data !== null && !Array.isArray(data)

const typeOf = (data: unknown): string =>
  data === null ? 'null' : Array.isArray(data) ? 'array' : typeof data

/** Whether a value is of one of the types of a schema; a schema without a type takes all. */
export const ofType = (schema: Schema, data: unknown): boolean =>
  schema.type === undefined ||
  [schema.type].flat().some((type) => type === typeOf(data) || (type === 'integer' && Number.isInteger(data)))

/** Whether a value meets a condition; keywords for other types of value are met, as JSON Schema has it. */
export const holds = (condition: Schema, data: unknown): boolean => {
  if (!ofType(condition, data)) return false
  if ('const' in condition && condition.const !== data) return false
  if (condition.anyOf !== undefined && !condition.anyOf.some((one) => holds(one, data))) return false
  if (typeof data === 'string')
    return condition.pattern === undefined || new RegExp(condition.pattern, 'u').test(data)
  if (typeof data === 'number') return condition.minimum === undefined || data >= condition.minimum
  if (!isMap(data)) return true
  return (
    (condition.required ?? []).every((key) => Object.hasOwn(data, key)) &&
    Object.entries(condition.properties ?? {}).every(
      ([key, inner]) => typeof inner === 'boolean' || !Object.hasOwn(data, key) || holds(inner, data[key]),
    )
  )
}

/** A schema with everything that it draws in: references, parts, and of its branches those that `chosen` takes. */
const drawnIn = (
  definitions: Definitions,
  schema: Schema,
  chosen: (one: Schema) => readonly (Schema | undefined)[],
): readonly Schema[] => {
  const found: Schema[] = []
  const visit = (one: Schema | undefined): void => {
    if (one === undefined) return
    found.push(one)
    if (one.$ref !== undefined) visit(definitions[one.$ref.slice('#/definitions/'.length)])
    one.allOf?.forEach(visit)
    if (one.if !== undefined) chosen(one).forEach(visit)
  }
  visit(schema)
  return found
}

/** With the branches that hold for a value. */
export const expanded = (definitions: Definitions, schema: Schema, data: unknown): readonly Schema[] =>
  drawnIn(definitions, schema, (one) => [holds(one.if!, data) ? one.then : one.else])

export const everyBranch = (definitions: Definitions, schema: Schema): readonly Schema[] =>
  drawnIn(definitions, schema, (one) => [one.then, one.else])

/** Schemas of a key or item of a value to which `schemas` apply. */
export const inside = (schemas: readonly Schema[], key: string): readonly Schema[] =>
  schemas.flatMap((schema) => {
    const named =
      schema.properties && Object.hasOwn(schema.properties, key) ? schema.properties[key] : undefined
    if (named !== undefined) return typeof named === 'boolean' ? [] : [named]
    if (schema.properties === undefined && typeof schema.additionalProperties === 'object')
      return [schema.additionalProperties]
    return schema.items === undefined ? [] : [schema.items]
  })

/** The value at a pointer's keys. */
export const valueAt = (data: unknown, keys: readonly string[]): unknown =>
  keys.reduce<unknown>((value, key) => (value as PlainMap | undefined)?.[key], data)

/**
 * All schemas that apply at a pointer's keys.
 *
 * @param instead stands for the value there, to ask what would apply to another
 */
export const applicable = (
  definitions: Definitions,
  root: Schema,
  data: unknown,
  keys: readonly string[],
  ...instead: readonly unknown[]
): readonly Schema[] => {
  let value = keys.length === 0 && instead.length > 0 ? instead[0] : data
  let schemas = expanded(definitions, root, value)
  for (const [i, key] of keys.entries()) {
    value = i === keys.length - 1 && instead.length > 0 ? instead[0] : (value as PlainMap | undefined)?.[key]
    schemas = inside(schemas, key).flatMap((schema) => expanded(definitions, schema, value))
  }
  return schemas
}
