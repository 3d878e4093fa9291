/**
 * One mistake in a file is one mistake in the answer, at its exact place, with what to write. What counts as a mistake is
 * held against ajv (JSON Schema draft-07) in schema-fresh.test.ts; here it is where and how it is said.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { MistakeAt } from '../../src/language/mistakes.js'
import type { Kind } from '../../src/language/schema/kinds.js'
import { validate } from '../../src/language/validate.js'
import { pointerKeys } from '../../src/text/place.js'
import { readText } from '../../src/text/read.js'
import { documents, readDocument } from './written/documents.js'

const least = readDocument('least.plan.yaml')

const mistakesIn = (text: string, kind: Kind = 'plan'): readonly MistakeAt[] => {
  const { root, faults } = readText(`a.${kind}.yaml`, text)
  expect(faults).toEqual([])
  return validate(kind, root!)
}

const change = (from: string, to: string): string => {
  expect(least).toContain(from)
  return least.replace(from, to)
}

/** [what stands in the least plan, what is written instead, the text that is pointed at, what is said, and why] */
type Case = readonly [
  from: string,
  to: string,
  marked: string,
  message: string | RegExp,
  why?: string | RegExp,
]

const cases: Readonly<Record<string, readonly Case[]>> = {
  'quantities, in their readers’ words': [
    [
      'aperture: f/5.6',
      'aperture: 5.6',
      '5.6',
      'aperture 5.6 cannot be read: an aperture is written f/5.6',
      /f\/8/,
    ],
    [
      'aperture: f/5.6',
      'aperture: "f5,6"',
      '"f5,6"',
      'aperture f5,6 cannot be read: write f/5.6 with a point',
    ],
    ['shutter: 1/160', 'shutter: 160', '160', 'shutter 160 cannot be read: write 1/160'],
    ['lens: 85 mm', 'lens: 85', '85', 'lens 85 cannot be read: write 85 mm'],
    [
      'behind: 2 m',
      'behind: 2',
      '2',
      /^behind 2 cannot be read: a length needs its unit: write 2 m or 2 ft$/,
    ],
    ['behind: 2 m', 'behind: -2 m', '-2 m', /a length is not negative/],
    ['angle: 35 deg left', 'angle: 35 deg', '35 deg', /say on which side: write 35 deg left or 35 deg right/],
    ['power: 1/4, at: { angle', 'power: 25, at: { angle', '25', /power needs to say of what/],
    [
      'power: 1/4, at: { angle',
      'meters: 5.6, at: { angle',
      '5.6',
      /^meters 5.6 cannot be read: an aperture is written f\/5.6$/,
    ],
    ['unit: flashgun, mod', 'unit: { guide-number: 36 }, mod', '36', /write 36 m at 35 mm/],
    [
      'unit: flashgun, mod',
      'unit: { guide-number: { 35: 36 m } }, mod',
      '35',
      /^key 35 cannot be read: write 35 mm$/,
    ],
    ['{ kind: person }', '{ kind: person, faces-at: 1.2 }', '1.2', /a length needs its unit/],
    ['white, framing', '{ tone: 300 }, framing', '300', 'tone 300 is out of range: it runs from 0 to 255'],
    ['framing: head and shoulders', 'sharp: 3', '3', /a length needs its unit/],
  ],
  'unknown keys, with the nearest': [
    [
      'aperture:',
      'aperature:',
      'aperature',
      'camera has no key aperature; did you mean aperture?',
      /as the camera shows it/,
    ],
    ['aperture:', 'Aperture:', 'Aperture', 'camera has no key Aperture; did you mean aperture?'],
    ['plan: 1', 'pln: 1', 'pln', 'the plan has no key pln; did you mean plan?'],
    ['subject:', 'subjekt:', 'subjekt', 'the plan has no key subjekt; did you mean subject?'],
    ['angle: 35', 'angel: 35', 'angel', 'at of the light key has no key angel; did you mean angle?'],
    [
      'unit: flashgun, mod',
      'unit: { gide-number: 36 m at 35 mm }, mod',
      'gide-number',
      /did you mean guide-number\?$/,
    ],
    ['unit: flashgun, mod', 'unit: { lumns: 900 lm, beam: 60 deg }, mod', 'lumns', /did you mean lumens\?$/],
    [
      'lens: 85 mm,',
      'lens: 85 mm, filmspeed: 3,',
      'filmspeed',
      'camera has no key filmspeed',
      /^its keys are body, sensor, /,
    ],
    ['lens: 85 mm,', 'lens: 85 mm, constructor: 3,', 'constructor', 'camera has no key constructor'],
  ],
  'keys that belong elsewhere': [
    [
      'power: 1/4, at: { angle',
      'height: 2 m, at: { angle',
      'height',
      'the light key has no key height; it belongs in at',
    ],
    [
      'height: 2 m }',
      'height: 2 m, power: 1/4 }',
      'power',
      'at of the light key has no key power; it belongs in the light key',
    ],
    ['lens: 85 mm,', 'lens: 85 mm, aside: 3 m right,', 'aside', 'camera has no key aside; it belongs in at'],
    [
      'unit: flashgun, mod',
      'unit: { energy: 9 Ws, flicker: none }, mod',
      'flicker',
      'flicker of unit of the light key does not go with energy',
    ],
  ],
  'keys that exclude each other': [
    [
      'angle: 35 deg left,',
      'angle: 35 deg left, left: 2 m,',
      'left',
      'left and angle cannot stand together in at of the light key',
      /keep left or angle/,
    ],
    [
      'behind: 2 m',
      'behind: 2 m, behind-last-row: 3 m',
      'behind-last-row',
      /^behind-last-row and behind cannot stand together/,
    ],
  ],
  'missing keys, with an example line': [
    [
      'lens: 85 mm, ',
      '',
      'camera',
      'camera says no lens; write lens: 85 mm',
      'focal length as marked on the lens',
    ],
    ['title: Portrait of the beekeeper\n', '', 'plan', /^the plan says no title; write title: /],
    [
      'aperture: f/5.6, shutter: 1/160, ',
      '',
      'camera',
      'camera says no aperture or shutter',
      'write aperture: f/5.6, shutter: 1/125',
    ],
    ['{ kind: person }', '{ kind: group }', 'subject', /^subject says no rows; write rows: \[\{ people: 3, /],
    [
      'behind: 2 m',
      'width: 2 m',
      'backdrop',
      'backdrop needs one of behind or behind-last-row',
      'for example behind: 2.4 m',
    ],
    [
      'at: { left: 1.5 m, before-backdrop: 1.5 m, height: 1.5 m }',
      'at: { height: 1 m }',
      'at',
      /^at of the light paper needs one of angle, left, /,
    ],
    [
      ', at: { left: 1.5 m, before-backdrop: 1.5 m, height: 1.5 m }',
      '',
      'paper',
      /^the light paper says no at; write at: \{ angle: /,
    ],
    ['power: 1/4, at: { angle', 'reads: f/4, at: { angle', 'key', 'the light key says no shutter or iso'],
    [
      'wanted:',
      'readings:\n  - { at: subject, of: all }\nwanted:',
      'at',
      'reading 1 needs one of reads or records',
    ],
    [
      'wanted:',
      'panels: { silk: { kind: scrim, size: 1 x 1 m, at: { left: 1 m }, faces: left } }\nwanted:',
      'silk',
      /^the panel silk says no transmits; write transmits: 45 %$/,
    ],
    [
      'wanted:',
      'room: { width: 3 m, length: 4 m }\nwanted:',
      'room',
      'room says no height; write height: 2.6 m',
    ],
    [
      '{ kind: person }',
      '{ kind: group, rows: [{ people: 2, faces-at: 1 m }] }',
      'people',
      'row 1 says no spacing; write spacing: 50 cm',
    ],
    [
      '{ kind: person }',
      '{ kind: group, rows: [{ people: 1, faces-at: 1 m }, { people: 1, faces-at: 1 m }] }',
      'people',
      'row 2 says no behind; write behind: 50 cm',
    ],
  ],
  'words that are not among the choices': [
    [
      'kind: person',
      'kind: persn',
      'persn',
      'kind persn is not known; did you mean person?',
      'write person, group or object',
    ],
    [
      'framing: head and shoulders',
      'framing: head-and-shoulders',
      'head-and-shoulders',
      /did you mean head and shoulders\?$/,
    ],
    [
      'backdrop: white, framing',
      'backdrop: wite, framing',
      'wite',
      /did you mean white\?$/,
      'write white, grey, black, any, { tone: 200 } or { colour: blue }',
    ],
    [
      'framing: head and shoulders',
      'sharp: eyes',
      'eyes',
      'sharp eyes is not known',
      'write face, subject, rows or 30 cm',
    ],
    [
      'lens: 85 mm,',
      'lens: 85 mm, sensor: fullframe,',
      'fullframe',
      /did you mean full frame\?$/,
      /44 x 33 mm$/,
    ],
    [
      'at: { left: 1.5 m, before-backdrop: 1.5 m, height: 1.5 m }',
      'at: kamera',
      'kamera',
      'at kamera is not known; did you mean camera?',
    ],
    [
      'role: backdrop',
      'role: backlight',
      'backlight',
      'role backlight is not known',
      /^write key, fill, rim, /,
    ],
  ],
  'values of the wrong kind': [
    [
      '{ kind: person }',
      'person',
      'person',
      /^subject is person, where it holds keys of its own: kind, height, /,
    ],
    ['{ kind: person }', '[person]', 'subject', /^subject is a list, where it holds keys of its own: /],
    [
      'lens: 85 mm',
      'lens: { mm: 85 }',
      'lens',
      'lens of camera is a map of keys, where one value belongs, such as 85 mm',
    ],
    ['kind: person', 'kind:', 'kind', 'kind of subject is empty; write kind: person'],
    ['{ kind: person }', '', 'subject', /^subject is empty/],
    ['iso: 100', 'iso: ISO 100', 'ISO 100', 'iso is a plain number, not ISO 100'],
    ['iso: 100', 'iso: 0', '0', 'iso 0 is out of range: it runs from 1 to 10000000'],
    ['plan: 1', 'plan: 2', '2', 'plan is 1, the version of the language, not 2'],
    ['title: Portrait of the beekeeper', 'title: 1984', '1984', 'title is a text: write title: "1984"'],
    ['title: Portrait of the beekeeper', 'title: ""', '""', 'title is empty'],
    ['{ kind: person }', '{ kind: person, glasses: round }', 'round', 'glasses is true or false, not round'],
    ['wanted:', 'tags: white\nwanted:', 'white', 'tags is a list: write tags: [white, portrait]'],
    [
      'wanted:',
      'accept: [{ rule: depth-short, because: dream, until: 2027-13-01 }]\nwanted:',
      '2027-13-01',
      /^until 2027-13-01 cannot be read$/,
      /year-month-day; for example "2027-06-30"/,
    ],
    [
      '{ kind: person }',
      '{ kind: group, rows: [{ people: 2.5, spacing: 1 m, faces-at: 1 m }] }',
      '2.5',
      'people is a whole number, not 2.5',
    ],
    [
      '{ kind: person }',
      '{ kind: group, rows: [{ people: 1000000000, spacing: 1 m, faces-at: 1 m }] }',
      '1000000000',
      /out of range: it runs from 1 to 40$/,
    ],
  ],
  names: [
    [
      '  key:',
      '  all:',
      'all',
      'all already has a meaning and cannot be the name of a light',
      'give the light another name',
    ],
    ['  key:', '  camera:', 'camera', 'camera already has a meaning and cannot be the name of a light'],
    [
      '  key:',
      '  key/1:',
      'key/1',
      'key/1 cannot be the name of a light',
      /letters, digits, spaces, hyphens/,
    ],
    [
      'wanted:',
      'points: { hair: { left: 2 m } }\nwanted:',
      'hair',
      'hair already has a meaning and cannot be the name of a point',
    ],
    [
      'wanted:',
      'points: { row-2-left: { left: 2 m } }\nwanted:',
      'row-2-left',
      /^row-2-left already has a meaning/,
    ],
    [
      'wanted:',
      'readings: [{ at: subject, of: [all], reads: f/4 }]\nwanted:',
      'all',
      /cannot be the name of a light/,
      'write of: all, without the list',
    ],
  ],
}

describe('a mistake in the least plan', () => {
  it('is none as it stands', () => {
    expect(mistakesIn(least)).toEqual([])
  })

  for (const [group, list] of Object.entries(cases))
    describe(group, () => {
      for (const [from, to, marked, message, why] of list)
        it(`${from.trim()} → ${to.trim().replaceAll('\n', ' ')}`, () => {
          const text = change(from, to)
          const mistakes = mistakesIn(text)
          expect(mistakes.map((one) => one.message)).toHaveLength(1)
          const [mistake] = mistakes
          if (typeof message === 'string') expect(mistake!.message).toBe(message)
          else expect(mistake!.message).toMatch(message)
          expect(text.slice(mistake!.at.start, mistake!.at.end)).toBe(marked)
          if (typeof why === 'string') expect(mistake!.why).toBe(why)
          else if (why !== undefined) expect(mistake!.why).toMatch(why)
          const unknown = /has no key|is not known|does not go with/.test(mistake!.message)
          expect(mistake!.rule).toBe(unknown ? 'unknown-name' : 'plan-unreadable')
        })
    })

  it('parts are called by what they are, whatever their names are', () => {
    const said = (from: string, to: string): string => mistakesIn(change(from, to))[0]!.message
    expect(said('  key:   { unit: flashgun', '  rows:   { unti: flashgun')).toBe(
      'the light rows has no key unti; did you mean unit?',
    )
    expect(said('unit: flashgun, mod', 'unit: { guide-number: 36 m, enrgy: 3 Ws }, mod')).toBe(
      'unit of the light key has no key enrgy; did you mean energy?',
    )
    expect(said('power: 1/4, at: { angle', 'meters: { reads: {} }, at: { angle')).toBe(
      'reads of meters of the light key is a map of keys, where one value belongs, such as f/5.6',
    )
    expect(said('title: Portrait of the beekeeper', 'title: "\\n"')).toBe('title is empty')
    expect(said('kind: person', 'kind: " per\\nson"')).toMatch(/^kind " per\\nson" is not known/)
  })

  it('a light may be called after its role', () => {
    for (const name of ['hair', 'backdrop', 'rim 2', 'Glühlampe', 'key_left'])
      expect(mistakesIn(change('  key:', `  ${name}:`))).toEqual([])
  })
})

describe('several mistakes', () => {
  it('are told in the order of the text', () => {
    const text = change('lens: 85 mm', 'lens: 85')
      .replace('kind: person', 'kind: persn')
      .replace('2 m }\nlights', '2 }\nlights')
    expect(mistakesIn(text).map((one) => one.message)).toEqual([
      'lens 85 cannot be read: write 85 mm',
      'kind persn is not known; did you mean person?',
      expect.stringMatching(/^behind 2 cannot be read/),
    ])
  })

  it('that are too many to read are cut, in a time that does not matter', () => {
    const readings = Array.from({ length: 12_000 }, (_, i) => `  - { at: 3, x${i}: 2 }\n`).join('')
    const before = performance.now()
    const mistakes = mistakesIn(`${least}readings:\n${readings}`)
    expect(mistakes).toHaveLength(101)
    expect(mistakes.some((one) => /more mistakes/.test(one.message))).toBe(true)
    expect(performance.now() - before).toBeLessThan(3000)
  })
})

describe('limits', () => {
  const many = (count: number, of: (i: number) => string): string =>
    Array.from({ length: count }, (_, i) => of(i)).join('\n')
  const light = (i: number): string => `  light ${i}: { unit: flashgun, at: { left: 1 m } }`
  const panel = (i: number): string =>
    `  flag ${i}: { kind: flag, size: 1 x 1 m, at: { left: 1 m }, faces: left }`

  it('64 lights', () => {
    expect(
      mistakesIn(`${least.replace(/lights:[\s\S]*?\nwanted/, `lights:\n${many(64, light)}\nwanted`)}`),
    ).toEqual([])
    const [mistake, ...others] = mistakesIn(
      least.replace(/lights:[\s\S]*?\nwanted/, `lights:\n${many(65, light)}\nwanted`),
    )
    expect(mistake!.message).toBe('lights has 65 entries; 64 is the most')
    expect(others).toEqual([])
  })

  it('64 panels', () => {
    expect(mistakesIn(`${least}panels:\n${many(64, panel)}\n`)).toEqual([])
    expect(mistakesIn(`${least}panels:\n${many(65, panel)}\n`).map((one) => one.message)).toEqual([
      'panels has 65 entries; 64 is the most',
    ])
  })

  it('40 people, over all rows', () => {
    const rows = (...people: number[]): string =>
      change(
        '{ kind: person }',
        `{ kind: group, rows: [${people.map((count) => `{ people: ${count}, spacing: 50 cm, behind: 50 cm, faces-at: 1 m }`).join(', ')}] }`,
      )
    expect(mistakesIn(rows(20, 20))).toEqual([])
    expect(mistakesIn(rows(20, 21)).map((one) => one.message)).toEqual([
      'the rows hold 41 people; 40 is the most',
    ])
    expect(mistakesIn(rows(41)).map((one) => one.message)).toEqual([
      'people 41 is out of range: it runs from 1 to 40',
    ])
  })
})

describe('bases and plans that stand on them', () => {
  it('a base may leave everything out, and take lights and panels away', () => {
    expect(mistakesIn('lights: { fill: null }\npanels: { silk: null }\n', 'base')).toEqual([])
    expect(mistakesIn('{}', 'base')).toEqual([])
  })

  it('so may a plan that names one; but it says that it is a plan', () => {
    expect(mistakesIn('plan: 1\nbase: a.base.yaml\nlights: { fill: null }\n')).toEqual([])
    expect(mistakesIn('base: a.base.yaml\n').map((one) => one.message)).toEqual([
      'the plan says no plan; write plan: 1',
    ])
  })

  it('a plan that names none must be whole', () => {
    expect(mistakesIn('plan: 1\n').map((one) => one.message)).toEqual([
      'the plan says no title, camera, subject or lights',
    ])
    const text = change('  paper:', '  fill: null\n  paper:')
    expect(mistakesIn(text).map((one) => one.message)).toEqual(['the light fill is empty'])
  })

  it('what a base says is checked like what a plan says', () => {
    expect(mistakesIn('camera: { lens: 85 }\n', 'base').map((one) => one.message)).toEqual([
      'lens 85 cannot be read: write 85 mm',
    ])
  })
})

describe('the other kinds of file', () => {
  it('a kit', () => {
    const kit = readDocument('everything.kit.yaml')
    const said = (from: string, to: string): readonly string[] => {
      expect(kit).toContain(from)
      return mistakesIn(kit.replace(from, to), 'kit').map((one) => one.message)
    }
    expect(said('weight: 420 g', 'wieght: 420 g')).toEqual([
      'the unit flashgun has no key wieght; did you mean weight?',
    ])
    expect(said('lux: 1200 lx at 1 m', 'lux: 1200')).toEqual([
      'lux 1200 cannot be read: write 1200 lx at 1 m',
    ])
    expect(said('35 mm: 36 m,', '35 mm: 36,')).toEqual([
      expect.stringMatching(/^35 mm 36 cannot be read: a length needs its unit/),
    ])
    expect(said('unit: flashgun, modifier', 'modifier')).toEqual([
      'measurement 1 says no unit; write unit: flashgun',
    ])
    expect(said('kit: 1', 'room: 1')).toEqual([
      'the kit has no key room',
      'the kit says no kit; write kit: 1',
    ])
  })

  it('a room', () => {
    expect(mistakesIn('room: 1\nwidth: 4 m\nlength: 5 m\n', 'room').map((one) => one.message)).toEqual([
      'the room says no height; write height: 2.6 m',
    ])
  })

  it('settings', () => {
    const said = (text: string): readonly string[] => mistakesIn(text, 'settings').map((one) => one.message)
    expect(said('thirdstop: 1\nlevels: { depth-short: fatal }')).toEqual(['depth-short fatal is not known'])
    expect(said('thirdstop: 1\nfail-on: warn')).toEqual(['fail-on warn is not known; did you mean warning?'])
    expect(said('thirdstop: 1\nlevels: { Depth Short: note }')).toEqual([
      'Depth Short cannot be the name of a rule',
    ])
  })
})

describe('aliases', () => {
  it('a mistake behind an alias is told where it is written, and where it is used', () => {
    const text = least
      .replace('aperture: f/5.6', 'aperture: &stop 5.6')
      .replace('power: 1/4, at: { left', 'meters: *stop, at: { left')
    const mistakes = mistakesIn(text)
    expect(mistakes.map((one) => text.slice(one.at.start, one.at.end))).toEqual(['5.6', '5.6'])
    const also = mistakes.flatMap((one) => one.also ?? [])
    expect(also.map((one) => text.slice(one.start, one.end))).toEqual(['*stop'])
  })
})

// ---------------------------------------------------------------- every key of every kind

type Keys = readonly (string | number)[]

const placesIn = (data: unknown, keys: Keys = []): Keys[] => [
  keys,
  ...(Array.isArray(data)
    ? data.flatMap((one, i) => placesIn(one, [...keys, i]))
    : typeof data === 'object' && data !== null
      ? Object.entries(data).flatMap(([key, one]) => placesIn(one, [...keys, key]))
      : []),
]
const at = (data: unknown, keys: Keys): unknown =>
  keys.reduce<unknown>((one, key) => (one as Record<string, unknown>)[key], data)
const owner = (data: unknown, keys: Keys): Record<string, unknown> =>
  at(data, keys.slice(0, -1)) as Record<string, unknown>

/** Maps whose keys are names; and a table whose keys are quantities. */
const names =
  /^(lights|panels|points|circuits|units|modifiers|stands|cameras|backdrops|meters|taken|levels|limits|backdrop-uneven|backdrop-not-black|guide-number)$/

const isName = (keys: Keys): boolean =>
  typeof keys.at(-1) === 'number' || names.test(String(keys.at(-2) ?? ''))

/** JSON is YAML: the tree of a document with its places. */
const asked = (kind: Kind, data: unknown): readonly MistakeAt[] => {
  const text = JSON.stringify(data, null, 1)
  const { root } = readText(`a.${kind}.yaml`, text)
  const mistakes = root === undefined ? [] : validate(kind, root)
  for (const one of mistakes) {
    expect(one.at.start).toBeGreaterThanOrEqual(0)
    expect(one.at.end).toBeLessThanOrEqual(text.length)
    expect(one.at.start).toBeLessThan(one.at.end)
    expect([one.message, one.why]).not.toEqual([one.message, ''])
  }
  return mistakes
}

const wellWorded = (mistakes: readonly MistakeAt[]): void => {
  for (const { message, why } of mistakes) {
    expect(message).not.toMatch(/undefined|NaN|\[object/)
    expect(why).not.toMatch(/undefined|NaN|\[object/)
  }
}

describe('one change is one mistake', () => {
  for (const [file, kind, data] of documents) {
    const places = placesIn(data).filter((keys) => keys.length > 0)

    it(`${file}: a key with a slip in it`, () => {
      for (const keys of places.filter((one) => !isName(one))) {
        const changed = structuredClone(data)
        const map = owner(changed, keys)
        const key = String(keys.at(-1))
        const slip = `${key[0]}${key}`
        const value = map[key]
        delete map[key]
        map[slip] = value
        const mistakes = asked(kind, changed)
        wellWorded(mistakes)
        expect([keys, mistakes.map((one) => one.message)]).toEqual([
          keys,
          [expect.stringMatching(new RegExp(` has no key ${slip}; did you mean ${key}\\?$`))],
        ])
        expect(pointerKeys(mistakes[0]!.pointer!)).toEqual([...keys.slice(0, -1), slip].map(String))
      }
    })

    it(`${file}: a value of the wrong kind`, () => {
      for (const keys of places.filter((one) => typeof at(data, one) !== 'object')) {
        const changed = structuredClone(data)
        owner(changed, keys)[keys.at(-1)!] = [[1]]
        const mistakes = asked(kind, changed)
        wellWorded(mistakes)
        expect([keys, mistakes.map((one) => one.rule)]).toEqual([keys, ['plan-unreadable']])
        expect(pointerKeys(mistakes[0]!.pointer!).slice(0, keys.length)).toEqual(keys.map(String))
      }
    })

    it(`${file}: a key left out is at most one`, () => {
      let missing = 0
      for (const keys of places.filter((one) => !isName(one))) {
        const changed = structuredClone(data)
        delete owner(changed, keys)[keys.at(-1)!]
        const mistakes = asked(kind, changed)
        wellWorded(mistakes)
        missing += mistakes.length
        expect([keys, mistakes.map((one) => one.message)]).toEqual([
          keys,
          mistakes.length === 0 ? [] : [expect.stringMatching(/ says no | needs one of /)],
        ])
      }
      if (kind !== 'base') expect(missing).toBeGreaterThan(0)
    })
  }
})

describe('whatever is written', () => {
  it('is answered, with places inside the text', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...documents),
        fc.array(fc.tuple(fc.nat(500), fc.jsonValue({ maxDepth: 2 })), { minLength: 1, maxLength: 5 }),
        ([, kind, data], changes) => {
          const changed = structuredClone(data)
          for (const [where, value] of changes) {
            const places = placesIn(changed).filter((keys) => keys.length > 0)
            const keys = places[where % places.length]!
            owner(changed, keys)[keys.at(-1)!] = value
          }
          asked(kind, changed)
        },
      ),
      { numRuns: 500 },
    )
  })

  it('of one word alone', () => {
    for (const text of ['7', 'plan', '[]', '[1, 2]', 'true', '~'])
      for (const kind of ['plan', 'base', 'kit', 'room', 'settings'] as const)
        expect(mistakesIn(text, kind).length).toBe(1)
  })
})
