/** The public schemas: one file a kind, each with the definitions that it needs. */
import type { Schema } from '../language/schema/build.js'
import { type Kind, kinds } from '../language/schema/kinds.js'
import { definitions } from '../language/schema/language.js'
import { checkOutput, meterOutput } from '../language/schema/outputs.js'

const titles: Readonly<Record<Kind, string>> = {
  plan: 'thirdstop plan',
  base: 'thirdstop base',
  kit: 'thirdstop kit',
  room: 'thirdstop room',
  settings: 'thirdstop settings',
}

/** A schema without what only the generators read. */
const published = (value: unknown): unknown => {
  if (Array.isArray(value)) return value.map(published)
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(
    Object.entries(value)
      .filter(([key]) => key !== 'x-whole')
      .map(([key, inner]) => [key, published(inner)]),
  )
}

/** Names of the definitions that a schema needs, in the order in which it meets them. */
const needed = (schema: unknown, found = new Set<string>()): Set<string> => {
  for (const [, name] of JSON.stringify(schema).matchAll(/"#\/definitions\/([^"]+)"/g)) {
    if (found.has(name!)) continue
    found.add(name!)
    needed(published(definitions[name!]), found)
  }
  return found
}

export const publicSchema = (kind: Kind): Schema => {
  const body = published(definitions[kinds[kind]]) as Schema
  return {
    $schema: 'http://json-schema.org/draft-07/schema#',
    title: titles[kind],
    ...body,
    definitions: Object.fromEntries(
      [...needed(body)].sort().map((name) => [name, published(definitions[name]) as Schema]),
    ),
  }
}

const output = (title: string, schema: Schema): Schema => ({
  $schema: 'http://json-schema.org/draft-07/schema#',
  title,
  ...schema,
})

/** By the name of the file: the kinds that authors write, and the outputs that programs read. */
export const publicSchemas = (): Readonly<Record<string, Schema>> => ({
  ...Object.fromEntries((Object.keys(kinds) as Kind[]).map((kind) => [kind, publicSchema(kind)])),
  check: output('thirdstop check', checkOutput),
  meter: output('thirdstop meter', meterOutput),
})
