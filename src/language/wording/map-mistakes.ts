/** Mistakes of a map: keys that it does not know, keys that it lacks, keys that exclude each other, names that will not do. */
import { isMap, type PlainMap } from '../applicable.js'
import { nearest } from '../nearest.js'
import type { Schema } from '../schema/build.js'
import { asClause, choices, inYaml, labelOf, shown } from './label.js'
import { textMistake } from './text-mistake.js'
import { at, type Context, type Worded } from './worded.js'

const isDefined = <T>(value: T | undefined): value is T => value !== undefined

/** Keys that the schemas know, in their order. */
const knownKeys = (schemas: readonly Schema[]): readonly string[] => [
  ...new Set(schemas.flatMap((schema) => Object.keys(schema.properties ?? {}))),
]

/** Keys of which one must be written. */
const alternatives = (schema: Schema): readonly string[] | undefined => {
  const keys = schema.anyOf?.map((one) => one.required?.[0])
  return keys?.every(isDefined) ? keys : undefined
}

const lackingKeys = (schemas: readonly Schema[], data: PlainMap): readonly string[] => [
  ...new Set(schemas.flatMap((schema) => schema.required ?? []).filter((key) => !Object.hasOwn(data, key))),
]

/** Groups of keys of which one must be written and none is. */
const lackingGroups = (schemas: readonly Schema[], data: PlainMap): readonly (readonly string[])[] =>
  schemas
    .map(alternatives)
    .filter(isDefined)
    .filter((group) => !group.some((key) => Object.hasOwn(data, key)))

/** What unknown keys were probably meant to be: first of all what is missing. */
const meantKeys = (
  context: Context,
  keys: readonly string[],
  data: PlainMap,
  unknown: readonly string[],
): ReadonlyMap<string, string> => {
  const schemas = context.schemasAt(keys)
  const wanted = [...lackingKeys(schemas, data), ...lackingGroups(schemas, data).flat()]
  const others = keysOfOtherBranches(context, schemas)
  const known = [...knownKeys(schemas), ...others]
  const found = new Map<string, string>()
  for (const key of unknown) {
    const free = known.filter((one) => !Object.hasOwn(data, one) && ![...found.values()].includes(one))
    const here = others.includes(key) || elsewhere(context, keys, key) !== undefined
    const meant =
      nearest(
        key,
        wanted.filter((one) => free.includes(one)),
      ) ?? (here ? undefined : nearest(key, free))
    if (meant !== undefined) found.set(key, meant)
  }
  return found
}

export const mapMistakes = (
  context: Context,
  keys: readonly string[],
  data: PlainMap,
  unknown: readonly string[],
  badNames: readonly string[],
): readonly Worded[] => {
  const where = labelOf(context.kind, keys)
  const meant = meantKeys(context, keys, data, unknown)

  // What is missing, and what is unknown, once the keys are as they were meant: a slip in `like` is no missing unit.
  const corrected = Object.fromEntries(
    Object.entries(data).map(([key, value]) => [meant.get(key) ?? key, value]),
  )
  const schemas = context.schemasAt(keys, corrected)
  const known = knownKeys(schemas)
  const missing = lackingKeys(schemas, corrected)

  const found = unknown
    .filter((key) => meant.has(key) || !known.includes(key))
    .map((key) => unknownKey(context, keys, key, meant.get(key)))
  if (missing.length > 0) {
    const lines = missing.map((key) => `${key}: ${exampleOf(context, keys, key) ?? '…'}`)
    found.push({
      rule: 'plan-unreadable',
      at: at.owner(keys),
      message: `${where} says no ${choices(missing)}${missing.length === 1 ? `; write ${lines[0]}` : ''}`,
      why:
        missing.length === 1
          ? (asClause(describe(context.schemasAt([...keys, missing[0]!]))) ?? `${missing[0]} is needed`)
          : `write ${lines.join(', ')}`,
    })
  }
  for (const group of lackingGroups(schemas, corrected)) {
    if (group.some((key) => missing.includes(key))) continue
    const key = group[0]!
    found.push({
      rule: 'plan-unreadable',
      at: at.owner(keys),
      message: `${where} needs one of ${choices(group)}`,
      why: `for example ${key}: ${exampleOf(context, keys, key) ?? '…'}`,
    })
  }
  return [...found, ...badNames.map((name) => badName(context, keys, name))]
}

const describe = (schemas: readonly Schema[]): string | undefined =>
  schemas.find((schema) => schema.description !== undefined)?.description

const exampleOf = (context: Context, keys: readonly string[], key: string): string | undefined => {
  const schemas = context.schemasAt([...keys, key])
  const example = schemas.find((schema) => schema.examples !== undefined)?.examples?.[0]
  if (example !== undefined) return inYaml(example)
  const word = schemas.find((schema) => schema.enum !== undefined)?.enum?.[0]
  if (word !== undefined) return inYaml(word)
  const version = schemas.find((schema) => schema.const !== undefined)?.const
  return version === undefined ? undefined : inYaml(version)
}

/** Where else near by a key belongs: inside a key of this map, or one level up. */
const elsewhere = (context: Context, keys: readonly string[], key: string): string | undefined => {
  const schemas = context.schemasAt(keys)
  const inner = knownKeys(schemas).find((one) =>
    knownKeys(context.schemasAt([...keys, one], {})).includes(key),
  )
  if (inner !== undefined) return inner
  if (keys.length === 0) return undefined
  const above = keys.slice(0, -1)
  return knownKeys(context.schemasAt(above)).includes(key) ? labelOf(context.kind, above) : undefined
}

/** The keys of branches that do not hold: `lumens` beside a guide number. */
const keysOfOtherBranches = (context: Context, schemas: readonly Schema[]): readonly string[] => {
  const known = new Set(knownKeys(schemas))
  return [
    ...new Set(schemas.flatMap(context.everyBranch).flatMap((one) => Object.keys(one.properties ?? {}))),
  ].filter((key) => !known.has(key))
}

const unknownKey = (
  context: Context,
  keys: readonly string[],
  key: string,
  meant: string | undefined,
): Worded => {
  const schemas = context.schemasAt(keys)
  const known = knownKeys(schemas)
  const where = labelOf(context.kind, keys)
  const base = { rule: 'unknown-name', at: at.key([...keys, key]) } as const
  if (meant !== undefined)
    return {
      ...base,
      message: `${where} has no key ${shown(key)}; did you mean ${meant}?`,
      why: asClause(describe(context.schemasAt([...keys, meant]))) ?? `its keys are ${choices(known, 40)}`,
      advice: [`write ${meant}`],
    }
  if (keysOfOtherBranches(context, schemas).includes(key)) {
    const beside = Object.keys((context.dataAt(keys) ?? {}) as object).filter((one) => known.includes(one))
    return {
      ...base,
      message: `${key} of ${where} does not go with ${choices(beside)}`,
      why: 'write the one or the other',
    }
  }
  const place = elsewhere(context, keys, key)
  return {
    ...base,
    message: `${where} has no key ${shown(key)}${place === undefined ? '' : `; it belongs in ${place}`}`,
    why: known.length === 0 ? 'it has no keys' : `its keys are ${choices(known, 40)}`,
    ...(place === undefined ? {} : { advice: [`write it in ${place}`] }),
  }
}

/** A key that another key excludes. */
export const excludedKey = (context: Context, keys: readonly string[]): Worded => {
  const key = keys.at(-1)!
  const above = keys.slice(0, -1)
  const data = context.dataAt(above)
  const other = context
    .schemasAt(above)
    .filter((schema) => schema.then?.properties?.[key] === false && isMap(data))
    .flatMap((schema) => schema.if?.required ?? [])
    .find((other) => Object.hasOwn(data as PlainMap, other))
  return {
    rule: 'plan-unreadable',
    at: at.key(keys),
    message: `${key} and ${other} cannot stand together in ${labelOf(context.kind, above)}`,
    why: `they are two ways to say one thing: keep ${key} or ${other}`,
  }
}

const badName = (context: Context, keys: readonly string[], name: string): Worded => {
  const rules = context
    .schemasAt(keys)
    .flatMap((schema) =>
      schema.propertyNames === undefined ? [] : context.schemasOf(schema.propertyNames, name),
    )
  return { ...textMistake('key', name, rules), at: at.key([...keys, name]) }
}
