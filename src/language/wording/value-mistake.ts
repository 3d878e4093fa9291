/** What is wrong with a value that is not as its key wants it: one mistake, whatever the validators found. */
import { isMap, ofType } from '../applicable.js'
import type { Schema } from '../schema/build.js'
import { choices, inYaml, keyOf, labelOf, shown } from './label.js'
import { purpose, textMistake, wordsOf } from './text-mistake.js'
import { at, type Context, type Worded } from './worded.js'

export const valueMistake = (context: Context, keys: readonly string[]): Worded => {
  const data = context.dataAt(keys)
  const schemas = context.schemasAt(keys)
  const key = keyOf(context.kind, keys)
  const said = (message: string, why = purpose(schemas)): Worded => ({
    rule: 'plan-unreadable',
    at: at.value(keys),
    message,
    why,
  })

  if (data === null) {
    const would = context.schemasAt(keys, {})
    const example = exampleOf(would)
    const label = labelOf(context.kind, keys)
    return said(
      `${label} is empty${example === undefined ? '' : `; write ${key}: ${example}`}`,
      purpose(would),
    )
  }
  if (typeof data === 'string' && ofType(wanted(schemas), data)) {
    // `of: [all]`: a word that stands for all names is not one of them.
    const alone = /^[0-9]+$/.test(keys.at(-1) ?? '') && wordsForAll.has(data)
    return {
      ...textMistake(key, data, schemas),
      ...(alone ? { why: `write ${key}: ${data}, without the list` } : {}),
      at: at.value(keys),
    }
  }
  if (typeof data === 'number' && ofType(wanted(schemas), data))
    return said(numberMistake(key, data, schemas))
  if (!ofType(wanted(schemas), data)) return wrongType(context, keys, data, schemas)
  return said(sizeMistake(labelOf(context.kind, keys), data, schemas))
}

const wordsForAll: ReadonlySet<string> = new Set(['all', 'ambient'])

/** The types that the key takes: those of the outermost schema that names any. */
const wanted = (schemas: readonly Schema[]): Schema =>
  schemas.find((schema) => schema.type !== undefined) ?? {}

const exampleOf = (schemas: readonly Schema[]): string | undefined => {
  const example = schemas.find((schema) => schema.examples !== undefined)?.examples?.[0]
  return example === undefined ? wordsOf(schemas)[0] : inYaml(example)
}

const wrongType = (
  context: Context,
  keys: readonly string[],
  data: unknown,
  schemas: readonly Schema[],
): Worded => {
  const key = keyOf(context.kind, keys)
  const label = labelOf(context.kind, keys)
  const types = [wanted(schemas).type ?? []].flat()
  const said = (message: string, why = purpose(schemas)): Worded => ({
    rule: 'plan-unreadable',
    at: at.value(keys),
    message,
    why,
  })
  const scalar = typeof data !== 'object'

  if (types.includes('object') && types.length === 1) {
    const inner = context.schemasAt(keys, {})
    const known = inner.flatMap((schema) => Object.keys(schema.properties ?? {}))
    const holdsWhat = known.length === 0 ? 'a map of names' : `keys of its own: ${choices(known, 8)}`
    return said(
      `${label} is ${scalar ? shown(context.writtenAt(keys)) : 'a list'}, where it holds ${holdsWhat}`,
    )
  }
  if (types.includes('array') && types.length === 1)
    return said(
      `${label} is a list${exampleOf(schemas) === undefined ? '' : `: write ${key}: ${exampleOf(schemas)}`}`,
    )
  if (!scalar) {
    const example = exampleOf(schemas)
    const got = isMap(data) ? 'a map of keys' : 'a list'
    return said(
      `${label} is ${got}, where one value belongs${example === undefined ? '' : `, such as ${example}`}`,
    )
  }

  const text = context.writtenAt(keys)
  if (types.includes('string')) {
    const asText = context.schemasAt(keys, text)
    // A bare number where a quantity belongs: its reader says which unit is missing.
    if (asText.some((schema) => schema['x-quantity'] !== undefined) || wordsOf(asText).length > 0)
      return { ...textMistake(key, text, asText), at: at.value(keys) }
    return said(`${key} is a text: write ${key}: ${JSON.stringify(text)}`)
  }
  if (types.includes('boolean')) return said(`${key} is true or false, not ${shown(text)}`)
  if (types.includes('integer')) return said(`${key} is a whole number, not ${shown(text)}`)
  if (types.includes('number')) return said(`${key} is a plain number, not ${shown(text)}`)
  return said(`${key} cannot be ${shown(text)}`)
}

const numberMistake = (key: string, data: number, schemas: readonly Schema[]): string => {
  const version = schemas.find((schema) => schema.const !== undefined)?.const
  if (version !== undefined) return `${key} is ${String(version)}, the version of the language, not ${data}`
  const all = Object.assign({}, ...schemas.filter((schema) => ofType(schema, data))) as Schema
  if (all.type === 'integer' && !Number.isInteger(data)) return `${key} is a whole number, not ${data}`
  const { minimum, exclusiveMinimum, maximum } = all
  const low = minimum === undefined ? exclusiveMinimum : minimum
  const range =
    low === undefined
      ? `goes up to ${maximum}`
      : maximum === undefined
        ? `is at least ${low}`
        : `runs from ${exclusiveMinimum === undefined ? '' : 'over '}${low} to ${maximum}`
  return `${key} ${data} is out of range: it ${range}`
}

/** Too many members, or too few. */
const sizeMistake = (label: string, data: unknown, schemas: readonly Schema[]): string => {
  const limit = (keyword: 'maxItems' | 'maxProperties' | 'minItems' | 'minProperties'): number | undefined =>
    schemas.find((schema) => schema[keyword] !== undefined)?.[keyword]
  const count = Array.isArray(data) ? data.length : Object.keys(data as object).length
  const most = Array.isArray(data) ? limit('maxItems') : limit('maxProperties')
  if (most !== undefined && count > most) return `${label} has ${count} entries; ${most} is the most`
  return count === 0 ? `${label} is empty` : `${label} cannot be read`
}
