/**
 * The public schemas themselves. Source: JSON Schema draft-07, by its reference implementation ajv 8 (its meta-schema, and
 * every example and default held against the key that it explains).
 */
import { Ajv, type AnySchemaObject } from 'ajv'
import { describe, expect, it } from 'vitest'
import { publicSchemas } from '../../src/build/public-schemas.js'
import * as defaults from '../../src/language/defaults.js'
import type { Schema } from '../../src/language/schema/build.js'
import { definitions } from '../../src/language/schema/language.js'
import { quantities } from '../../src/units/quantities.js'
import { documents } from './written/documents.js'

const ajv = new Ajv({
  allErrors: true,
  strict: true,
  strictTypes: false,
  strictRequired: false,
  allowUnionTypes: true,
  keywords: ['x-quantity', 'x-name', 'x-whole'],
})
ajv.addSchema({ $id: 'language', definitions } as AnySchemaObject)

/** Every schema in the language, with where it stands. */
const schemas: (readonly [where: string, schema: Schema])[] = []
const walk = (where: string, schema: unknown): void => {
  if (typeof schema !== 'object' || schema === null) return
  if (Array.isArray(schema)) {
    for (const [i, one] of schema.entries()) walk(`${where}/${i}`, one)
    return
  }
  schemas.push([where, schema as Schema])
  for (const [key, inner] of Object.entries(schema)) {
    if (['examples', 'default', 'enum', 'required', 'const', 'type'].includes(key)) continue
    if (key === 'properties' || key === 'definitions')
      for (const [name, one] of Object.entries(inner as object)) walk(`${where}/${key}/${name}`, one)
    else walk(`${where}/${key}`, inner)
  }
}
for (const [name, schema] of Object.entries(definitions)) walk(`#/definitions/${name}`, schema)

/** Keys that an author may write: those of maps that take no others. */
const keys = schemas
  .filter(([, schema]) => schema.additionalProperties === false)
  .flatMap(([where, schema]) =>
    Object.entries(schema.properties ?? {}).map(([key, one]) => [where, key, one as Schema] as const),
  )

/** A key's schema with what it refers to. */
const meaning = (schema: Schema): readonly Schema[] => [
  schema,
  ...[schema.$ref, ...(schema.allOf ?? []).map((one) => one.$ref)]
    .filter((target) => target !== undefined)
    .flatMap((target) => meaning(definitions[target.slice('#/definitions/'.length)]!)),
]

describe('the public schemas', () => {
  for (const [name, schema] of Object.entries(publicSchemas())) {
    it(`${name} is JSON Schema draft-07`, () => {
      expect(ajv.validateSchema(schema as AnySchemaObject), JSON.stringify(ajv.errors)).toBe(true)
      expect(schema.$schema).toBe('http://json-schema.org/draft-07/schema#')
    })
    it(`${name} refers only to what it holds`, () => {
      for (const [, target] of JSON.stringify(schema).matchAll(/"\$ref":"#\/definitions\/([^"]+)"/g))
        expect(schema.definitions).toHaveProperty([target!])
    })
  }
})

describe('every key', () => {
  it('is described', () => {
    const bare = keys.filter(([, , schema]) => !meaning(schema).some((one) => one.description !== undefined))
    expect(bare.map(([where, key]) => `${where}: ${key}`)).toEqual([])
    expect(keys.length).toBeGreaterThan(200)
  })

  it('shows what to write: examples, choices or true and false', () => {
    const shows = (schema: Schema): boolean =>
      schema.examples !== undefined || schema.enum !== undefined || schema.type === 'boolean'
    const holdsMore = (schema: Schema): boolean =>
      schema.properties !== undefined ||
      schema.additionalProperties !== undefined ||
      schema.items !== undefined
    const bare = keys.filter(([, , schema]) => !meaning(schema).some((one) => shows(one) || holdsMore(one)))
    expect(bare.map(([where, key]) => `${where}: ${key}`).filter((one) => !one.endsWith(': notes'))).toEqual(
      [],
    )
  })

  it('is in one of the whole files of these tests', () => {
    const used = new Set<string>()
    const collect = (data: unknown): void => {
      if (typeof data !== 'object' || data === null) return
      for (const [key, one] of Object.entries(data)) {
        if (!Array.isArray(data)) used.add(key)
        collect(one)
      }
    }
    for (const [, , data] of documents) collect(data)
    expect(keys.map(([, key]) => key).filter((key) => !used.has(key))).toEqual([])
  })
})

describe('every map', () => {
  it('refuses keys that it does not know, or holds names of the author’s', () => {
    const open = schemas.filter(
      ([where, schema]) =>
        schema.properties !== undefined &&
        schema.type === 'object' &&
        schema.additionalProperties !== false &&
        !where.startsWith('#/definitions/whole') &&
        !where.includes('/x-whole'),
    )
    expect(open.map(([where]) => where)).toEqual([])
  })
})

describe('every example and default', () => {
  it('is what may be written there', () => {
    let count = 0
    const wrong = schemas.flatMap(([where, schema]) => {
      const shown = [...(schema.examples ?? []), ...(schema.default === undefined ? [] : [schema.default])]
      if (shown.length === 0) return []
      const validator = ajv.compile({ $ref: `language${where}` })
      count += shown.length
      return shown.filter((one) => !validator(one)).map((one) => `${where}: ${JSON.stringify(one)}`)
    })
    expect(wrong).toEqual([])
    expect(count).toBeGreaterThan(300)
  })
})

describe('defaults that the schemas tell', () => {
  const told = (definition: string, key: string): unknown =>
    (definitions[definition]!.properties![key] as Schema).default
  const read = (quantity: keyof typeof quantities, value: unknown): unknown => {
    const reading = quantities[quantity].read(String(value))
    return reading.ok ? reading.value : reading.says
  }

  it('are those that plans get', () => {
    const { camera, person, backdrop, table, room } = defaults
    expect(told('camera', 'sensor')).toBe('full frame')
    expect(read('shutter', told('camera', 'sync'))).toMatchObject({ marked: camera.sync })
    expect(read('stops', told('camera', 'headroom'))).toBe(camera.headroom)
    expect(read('stops', told('camera', 'filter'))).toBe(camera.filter)
    expect(told('camera', 'shutter-kind')).toBe(camera.shutterKind)
    expect(told('camera', 'exposure')).toBe(camera.exposure)
    expect(read('length', told('subject', 'height'))).toBeCloseTo(person.height, 12)
    expect(read('length', told('subject', 'width'))).toBeCloseTo(person.width, 12)
    expect(read('length', told('subject', 'depth'))).toBeCloseTo(person.depth, 12)
    expect(told('subject', 'reflectance')).toBe(person.reflectance)
    expect(told('platform', 'surface')).toBe(table.surface)
    expect(read('length', told('backdrop', 'width'))).toBeCloseTo(backdrop.width, 12)
    expect(read('length', told('backdrop', 'height'))).toBeCloseTo(backdrop.height, 12)
    expect(told('room', 'walls')).toBe(room.walls)
    expect(told('room', 'ceiling')).toBe(room.ceiling)
    expect(told('room', 'floor')).toBe(room.floor)
    expect(read('length', told('room', 'behind-backdrop'))).toBeCloseTo(room.behindBackdrop, 12)
  })
})

describe('the outputs of programs', () => {
  const place = { file: 'a.plan.yaml', pointer: '/camera', line: 3, column: 1, endLine: 3, endColumn: 7 }
  const finding = {
    ...{
      id: '1f',
      rule: 'depth-short',
      family: 'exposure',
      level: 'note',
      ruleLevel: 'warning',
      certainty: 'possible',
    },
    ...{ message: 'the ears are soft', why: '', place, also: [{ ...place, says: 'wanted here' }] },
    measured: {
      depth: { value: 11.5, unit: 'cm', limit: 12, side: 'at-least' },
      over: { value: null, unit: 'stop' },
    },
    ...{ mends: [], advice: ['stop down'], cause: 'depth', later: 'keys may be added' },
  }
  const check = {
    ...{ kind: 'check', format: 1, thirdstop: '0.1.0' },
    plans: [
      {
        ...{ file: 'a.plan.yaml', title: 'A', findings: [finding] },
        accepted: [{ rule: 'depth-short', because: 'as wanted', finding }],
        notChecked: [{ rule: 'circuit-overload', because: 'the plan states no room.circuits' }],
        ...{ remarks: ['direct light only'], caveats: [], notJudged: ['room'] },
      },
    ],
    problems: [{ file: 'b.plan.yaml', says: 'no such file' }],
    counts: { plans: 1, error: 0, warning: 0, note: 1, accepted: 1 },
  }
  const validates = (name: string, data: unknown): boolean => ajv.validate(publicSchemas()[name]!, data)

  it('check', () => {
    expect(validates('check', check)).toBe(true)
    expect(validates('check', { ...check, format: 2 })).toBe(false)
    expect(validates('check', { ...check, counts: { ...check.counts, error: 0.5 } })).toBe(false)
    expect(
      validates('check', {
        ...check,
        plans: [{ ...check.plans[0]!, findings: [{ ...finding, level: 'grave' }] }],
      }),
    ).toBe(false)
    const { id: _, ...without } = finding
    expect(validates('check', { ...check, plans: [{ ...check.plans[0]!, findings: [without] }] })).toBe(false)
  })

  it('meter', () => {
    const point = {
      ...{ point: 'subject', of: ['key'], kind: 'incident', dome: 'raised', faces: 'key', fNumber: 5.65685 },
      ...{ reads: 'f/5.6', overCamera: 0, overKey: null, overKeyU: null, u: 0.15, luxSeconds: 80 },
      paths: { direct: 1, room: 0, panels: 0, backdrop: 0 },
    }
    const tone = {
      ...{ point: 'backdrop', surface: 'white paper', reflectance: 0.9, srgb: 243 },
      ...{ lightness: 96, stopsFromMid: 2.32, stopsFromWhite: -0.15 },
    }
    const meter = {
      ...{ kind: 'meter', format: 1, thirdstop: '0.1.0', file: 'a.plan.yaml' },
      camera: { fNumber: 5.65685, seconds: 0.0078125, iso: 100 },
      keyReading: { fNumber: 5.3, reads: 'f/5.0 + 0.2', u: 0.15 },
      ...{ points: [point, { ...point, of: 'all' }], tones: [tone], caveats: [], order: [], readings: [] },
    }
    expect(validates('meter', meter)).toBe(true)
    expect(validates('meter', { ...meter, keyReading: null })).toBe(true)
    const shadowSide = { ...point, of: 'all', shaded: ['key'], ratio: 3.1 }
    expect(validates('meter', { ...meter, shadowSide })).toBe(true)
    expect(validates('meter', { ...meter, shadowSide: null })).toBe(true)
    expect(validates('meter', { ...meter, shadowSide: point })).toBe(false)
    expect(validates('meter', { ...meter, points: [{ ...point, of: 3 }] })).toBe(false)
    expect(validates('meter', { ...meter, camera: {} })).toBe(false)
  })
})
