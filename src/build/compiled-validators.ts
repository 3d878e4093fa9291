/** Validators compiled ahead from the definitions, so that running them needs no schema library and no start-up. */
import { Ajv, type AnySchemaObject } from 'ajv'
import standalone from 'ajv/dist/standalone/index.js'
import { type Kind, kinds } from '../language/schema/kinds.js'
import { definitions } from '../language/schema/language.js'
import { shrunk } from './shrink-validators.js'

/** What editors and our words read, and no validator. */
const annotations = new Set([
  'description',
  'examples',
  'default',
  'title',
  'x-whole',
  'x-quantity',
  'x-name',
])
/** Keywords that hold schemas by names of the author's, not keywords. */
const byName = new Set(['properties', 'definitions'])

const bare = (value: unknown, named = false): unknown => {
  if (Array.isArray(value)) return value.map((one) => bare(one))
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(
    Object.entries(value)
      .filter(([key]) => named || !annotations.has(key))
      .map(([key, inner]) => [key, bare(inner, !named && byName.has(key))]),
  )
}

const header = `// @ts-nocheck
/**
 * Compiled from the definitions in ../schema by \`npm run generate\`, with ajv (MIT licence).
 * A validator returns whether a value meets its definition; \`errors\` then holds where it does not.
 */`

export const compiledValidators = (): string => {
  const ajv = new Ajv({
    allErrors: true,
    strict: true,
    strictTypes: false,
    strictRequired: false,
    allowUnionTypes: true,
    // A quantity is one function, not its code again at each use.
    inlineRefs: false,
    messages: false,
    // Lengths of texts in UTF-16 units: limits of size, not of letters.
    unicode: false,
    logger: false,
    ownProperties: true,
    code: { source: true, esm: true, lines: true, optimize: 2 },
  })
  const names = Object.keys(kinds) as Kind[]
  ajv.addSchema({ $id: 'language', definitions: bare(definitions, true) as AnySchemaObject })
  for (const kind of names) ajv.addSchema({ $id: kind, $ref: `language#/definitions/${kinds[kind]}` })
  const code = standalone.default(ajv, Object.fromEntries(names.map((kind) => [kind, kind])))
  return `${header}\n${shrunk(code)}`
}
