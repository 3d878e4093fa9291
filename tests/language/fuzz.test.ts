/** Plans that were tampered with: reading never throws, and every place lies in its text. */
import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { PlanReading } from '../../src/language/read-plan.js'
import type { Place } from '../../src/text/place.js'
import { least, read } from './reading.js'

const written = new URL('written/', import.meta.url)
const text = (name: string): string => readFileSync(new URL(name, written), 'utf8')
const kit = text('everything.kit.yaml')
const room = text('everything.room.yaml')

const files = { 'set/k.kit.yaml': kit, 'set/r.room.yaml': room, 'set/b.base.yaml': least }
const seeds = [
  least,
  text('everything.plan.yaml').replace(/^kit: .*$/m, 'kit: k.kit.yaml'),
  `${least}kit: k.kit.yaml\nroom: r.room.yaml\n`,
  'plan: 1\ntitle: On a base\nbase: b.base.yaml\nlights: { key: { power: 1/2 }, paper: null }\n',
]

/** What is put in somewhere: words and values of the language, and what hostile or hurried hands write. */
const scraps = fc.constantFrom(
  'null',
  '~',
  '0',
  '-1',
  '1e400',
  '.inf',
  '.nan',
  'NaN',
  'true',
  '[]',
  '{}',
  '[[[[',
  '{a: {b: {c: ',
  ': ',
  '- ',
  '\n',
  '\t',
  '&a ',
  '*a',
  '<<: *a',
  '*gone',
  '!!js/function x',
  '!tag ',
  '|\n',
  '>\n ',
  '"',
  "'",
  '#',
  '\r\n',
  '\u0000',
  '\u202e',
  '😀',
  '\ufeff',
  '__proto__: 1\n',
  'constructor: {}\n',
  '--- \n',
  '%YAML 1.1\n',
  'like: key',
  'mirrored: true',
  'people: 1000000000',
  '0 m',
  '1000 m',
  '999999999 m',
  '1/0',
  '1/1',
  'f/0',
  'f/1e9',
  '400 Ws',
  'dial 3',
  '90 deg left',
  '0 deg',
  '100 %',
  'row 9',
  'subject',
  'backdrop',
  'ceiling above x',
  'sun',
  'window',
  'flashgun',
  'softbox',
  'softbox 0 x 0 m',
  'snoot',
  'at: camera',
)

interface Mutation {
  readonly what: string
  readonly where: number
  readonly other: number
  readonly scrap: string
}

const mutation: fc.Arbitrary<Mutation> = fc.record({
  what: fc.constantFrom('insert', 'replace', 'delete', 'line', 'swap', 'value', 'cut'),
  where: fc.double({ min: 0, max: 1, noNaN: true }),
  other: fc.double({ min: 0, max: 1, noNaN: true }),
  scrap: scraps,
})

const mutate = (source: string, { what, where, other, scrap }: Mutation): string => {
  const at = Math.floor(where * source.length)
  const lines = source.split('\n')
  const line = Math.floor(where * lines.length) % lines.length
  switch (what) {
    case 'insert':
      return source.slice(0, at) + scrap + source.slice(at)
    case 'replace':
      return source.slice(0, at) + scrap + source.slice(at + 1 + Math.floor(other * 12))
    case 'delete':
      return source.slice(0, at) + source.slice(at + 1 + Math.floor(other * 12))
    case 'line':
      return [...lines.slice(0, line), ...lines.slice(line + 1)].join('\n')
    case 'swap': {
      const to = Math.floor(other * lines.length) % lines.length
      const swapped = [...lines]
      swapped[line] = lines[to]!
      swapped[to] = lines[line]!
      return swapped.join('\n')
    }
    case 'value':
      return source
        .replace(/: [^,:{}[\]\n]+/g, (value, start: number) => (start >= at ? `: ${scrap}` : value))
        .slice(0, source.length * 2)
    default:
      return source.slice(0, at)
  }
}

const lies = (place: Place, reading: PlanReading): void => {
  const held = reading.texts.get(place.file)
  expect(held, `${place.file} is known`).toBeDefined()
  expect(place.start).toBeGreaterThanOrEqual(0)
  expect(place.end).toBeGreaterThanOrEqual(place.start)
  expect(place.end).toBeLessThanOrEqual(held!.length)
  const lines = held!.split('\n')
  for (const [line, column] of [
    [place.line, place.column],
    [place.endLine, place.endColumn],
  ] as const) {
    expect(line).toBeGreaterThanOrEqual(1)
    expect(line).toBeLessThanOrEqual(lines.length)
    expect(column).toBeGreaterThanOrEqual(1)
    expect(column).toBeLessThanOrEqual(lines[line - 1]!.length + 1)
  }
}

const holds = (reading: PlanReading): void => {
  for (const { place, also, message } of reading.mistakes) {
    expect(message).not.toBe('')
    lies(place, reading)
    for (const one of also) lies(one, reading)
  }
  const grave = reading.mistakes.some((one) => one.rule !== 'value-unused')
  expect(reading.plan === undefined).toBe(grave)
  const { plan } = reading
  if (plan === undefined) return
  for (const light of plan.lights.keys())
    for (const key of ['', '/at/distance', '/unit/energy', '/power', '/modifier/loss'])
      lies(plan.places.of(`/lights/${light}${key}`), reading)
  expect(everyNumber(plan)).toEqual([])
}

/** Numbers that are none, anywhere in a plan. */
const everyNumber = (value: unknown, where = ''): readonly string[] => {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${where}: ${value}`]
  if (value instanceof Map) return [...value].flatMap(([key, one]) => everyNumber(one, `${where}/${key}`))
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, one]) => everyNumber(one, `${where}/${key}`))
}

describe('reading', () => {
  it('of what nobody tampered with finds nothing', () => {
    for (const seed of seeds) {
      const reading = read(seed, files)
      expect(reading.mistakes).toEqual([])
      holds(reading)
    }
  })

  it('of plans that were tampered with never throws, and its places lie in the text', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...seeds),
        fc.array(mutation, { minLength: 1, maxLength: 4 }),
        (seed, mutations) => {
          holds(read(mutations.reduce(mutate, seed), files))
        },
      ),
      { numRuns: 400 },
    )
  })

  it('of kits and rooms that were tampered with neither', () => {
    fc.assert(
      fc.property(mutation, mutation, (first, second) => {
        holds(
          read(seeds[2]!, {
            ...files,
            'set/k.kit.yaml': mutate(kit, first),
            'set/r.room.yaml': mutate(room, second),
          }),
        )
      }),
      { numRuns: 120 },
    )
  })

  it('of bases that were tampered with neither', () => {
    fc.assert(
      fc.property(fc.array(mutation, { minLength: 1, maxLength: 3 }), (mutations) => {
        holds(read(seeds[3]!, { ...files, 'set/b.base.yaml': mutations.reduce(mutate, least) }))
      }),
      { numRuns: 120 },
    )
  })

  it('of every piece of a plan neither, cut anywhere', () => {
    for (let end = 0; end <= least.length; end += 7) holds(read(least.slice(0, end)))
  })

  it('of files that are no plan at all neither', () => {
    for (const name of readdirSync(written)) holds(read(text(name), files))
  })
})
