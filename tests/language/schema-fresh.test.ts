/**
 * Generated files are what the definitions give, and the compiled validators say what ajv says of the public schemas.
 * Reference implementation: ajv 8, JSON Schema draft-07.
 */
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { Ajv, type ErrorObject } from 'ajv'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { generatedFiles } from '../../src/build/generated-files.js'
import { publicSchema } from '../../src/build/public-schemas.js'
import * as compiled from '../../src/language/generated/validators.js'
import { type Kind, kinds } from '../../src/language/schema/kinds.js'
import { documents } from './written/documents.js'

const root = resolve(import.meta.dirname, '../..')
const allKinds = Object.keys(kinds) as Kind[]

describe('generated files', async () => {
  for (const [path, text] of await generatedFiles())
    it(`${path} is fresh`, () => {
      expect(readFileSync(resolve(root, path), 'utf8') === text, `${path}: run npm run generate`).toBe(true)
    })
})

interface Fault {
  readonly path: string
  readonly keyword: string
  readonly key?: unknown
}

interface Validator {
  (data: unknown): boolean
  errors: readonly Fault[] | null
}

const ajv = new Ajv({
  allErrors: true,
  strict: true,
  strictTypes: false,
  strictRequired: false,
  allowUnionTypes: true,
  ownProperties: true,
  keywords: ['x-quantity', 'x-name'],
})
const reference = new Map(allKinds.map((kind) => [kind, ajv.compile(publicSchema(kind))]))

const keyOf = ({ params, keyword }: ErrorObject): unknown =>
  keyword === 'required'
    ? params.missingProperty
    : keyword === 'additionalProperties'
      ? params.additionalProperty
      : keyword === 'propertyNames'
        ? params.propertyName
        : undefined

/** Where, by which keyword, for which key; each once. */
const summary = (faults: readonly Fault[]): string[] =>
  [...new Set(faults.map(({ path, keyword, key }) => `${path} ${keyword} ${String(key)}`))].sort()

const ours = (kind: Kind, data: unknown): { ok: boolean; says: string[] } => {
  const validator = (compiled as unknown as Record<Kind, Validator>)[kind]
  const ok = validator(data)
  return { ok, says: ok ? [] : summary(validator.errors ?? []) }
}

const theirs = (kind: Kind, data: unknown): { ok: boolean; says: string[] } => {
  const validator = reference.get(kind)!
  const ok = validator(data)
  const faults = (validator.errors ?? []).map((error) => ({
    path: error.instancePath,
    keyword: error.keyword,
    key: keyOf(error),
  }))
  return { ok, says: ok ? [] : summary(faults) }
}

/** Every place in a document. */
const placesIn = (
  data: unknown,
  keys: readonly (string | number)[] = [],
): (readonly (string | number)[])[] => [
  keys,
  ...(Array.isArray(data)
    ? data.flatMap((one, i) => placesIn(one, [...keys, i]))
    : typeof data === 'object' && data !== null
      ? Object.entries(data).flatMap(([key, one]) => placesIn(one, [...keys, key]))
      : []),
]

type Change = readonly [what: 'set' | 'remove' | 'add', where: number, value: unknown, key: string]

const changed = (document: unknown, changes: readonly Change[]): unknown => {
  let root: unknown = structuredClone(document)
  for (const [what, where, value, key] of changes) {
    const places = placesIn(root)
    const keys = places[where % places.length]!
    if (keys.length === 0 && what !== 'add') {
      root = value
      continue
    }
    const owner = keys
      .slice(0, what === 'add' ? undefined : -1)
      .reduce<unknown>((one, inner) => (one as Record<string, unknown>)[inner], root)
    if (typeof owner !== 'object' || owner === null) continue
    const name = what === 'add' ? key : keys.at(-1)!
    if (what === 'remove' && !Array.isArray(owner)) delete (owner as Record<string, unknown>)[name]
    else if (Array.isArray(owner)) owner.push(structuredClone(value))
    else
      Object.defineProperty(owner, name, {
        value: structuredClone(value),
        enumerable: true,
        configurable: true,
        writable: true,
      })
  }
  return root
}

const values = fc.oneof(
  fc.constantFrom<unknown>(
    ...[
      '',
      '5.6',
      'f/5.6',
      '2 m',
      '1/125',
      '45 deg left',
      'white',
      'all',
      'camera',
      '1/2..1 stop',
      '60 x 90 cm',
    ],
    ...[null, true, 0, 1, 2, -1, 0.5, 300, 1e9, Number.NaN, Number.POSITIVE_INFINITY],
    ...[[], {}, ['key'], { reads: 'f/8' }, { reflectance: 0.2 }, { left: '1 m' }, { angle: '3 deg left' }],
  ),
  fc.string({ maxLength: 12 }),
  fc.jsonValue({ maxDepth: 2 }),
)
const keyNames = fc.oneof(
  fc.constantFrom(
    ...[
      'left',
      'angle',
      'kind',
      'like',
      'sky',
      'base',
      'off',
      'lux',
      'reads',
      'constructor',
      '__proto__',
      'toString',
    ],
  ),
  fc.string({ maxLength: 6 }),
)
const changes = fc.array(
  fc.tuple(fc.constantFrom('set' as const, 'remove' as const, 'add' as const), fc.nat(400), values, keyNames),
  { minLength: 1, maxLength: 4 },
)

describe('the compiled validators agree with ajv', () => {
  for (const [name, kind, data] of documents)
    it(`on ${name}`, () => {
      expect(theirs(kind, data)).toEqual({ ok: true, says: [] })
      expect(ours(kind, data)).toEqual({ ok: true, says: [] })
    })

  for (const [name, kind, data] of documents)
    it(`on ${name} with changes`, () => {
      let invalid = 0
      fc.assert(
        fc.property(changes, (list) => {
          const document = changed(data, list)
          const expected = theirs(kind, document)
          if (!expected.ok) invalid += 1
          expect(ours(kind, document)).toEqual(expected)
        }),
        { numRuns: 400 },
      )
      // Both kinds of document were met.
      expect(invalid).toBeGreaterThan(100)
      expect(invalid).toBeLessThan(400)
    })

  it('on every kind of file taken for every other', () => {
    for (const kind of allKinds)
      for (const [, , data] of documents) expect(ours(kind, data)).toEqual(theirs(kind, data))
  })
})
