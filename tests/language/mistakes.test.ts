import { describe, expect, it } from 'vitest'
import { least, leastWith, onlyMistake, planOf, pointsAt, read, told } from './reading.js'

const at = 'at: { angle: 20 deg left, distance: 2 m }'

describe('unknown names', () => {
  it.each([
    ['unit', leastWith({ key: `  key: { unit: flashgunn, ${at} }` }), '/lights/key/unit', 'flashgun'],
    [
      'modifier',
      leastWith({ key: `  key: { unit: flashgun, modifier: softbx 60 x 90 cm, ${at} }` }),
      '/lights/key/modifier',
      'softbox 60 x 90 cm',
    ],
    [
      'point to aim at',
      leastWith({ key: `  key: { unit: flashgun, aim: subjet, ${at} }` }),
      '/lights/key/aim',
      'subject',
    ],
    [
      'point to aim at, feathered',
      leastWith({ key: `  key: { unit: flashgun, aim: { at: hiar }, ${at} }` }),
      '/lights/key/aim/at',
      'hair',
    ],
    [
      'point under the ceiling',
      leastWith({ key: `  key: { unit: flashgun, aim: ceiling above subjct, ${at} }` }),
      '/lights/key/aim',
      'subject',
    ],
    [
      'point to meter at',
      leastWith({
        key: `  key: { unit: flashgun, meters: { reads: f/8, at: hand }, ${at} }`,
        points: 'points: { hands: { front: 20 cm } }',
      }),
      '/lights/key/meters/at',
      'hands',
    ],
    [
      'circuit',
      leastWith({
        key: `  key: { unit: flashgun, circuit: bb, ${at} }`,
        room: 'room: { width: 4 m, length: 6 m, height: 3 m, circuits: { aaa: { voltage: 230 V, breaker: 16 A } } }',
      }),
      '/lights/key/circuit',
      undefined,
    ],
    [
      'light of a reading',
      leastWith({ readings: 'readings: [{ at: subject, of: [key, papr], reads: f/8 }]' }),
      '/readings/0/of/1',
      'paper',
    ],
    [
      'single light of a reading',
      leastWith({ readings: 'readings: [{ at: subject, of: papr, reads: f/8 }]' }),
      '/readings/0/of',
      'paper',
    ],
    [
      'point of a reading',
      leastWith({ readings: 'readings: [{ at: backdrop-lft, of: all, reads: f/8 }]' }),
      '/readings/0/at',
      'backdrop-left',
    ],
    [
      'point that a reading faces',
      leastWith({ readings: 'readings: [{ at: subject, of: all, reads: f/8, faces: camra }]' }),
      '/readings/0/faces',
      'camera',
    ],
    [
      'light of a setting',
      leastWith({
        readings: 'readings: [{ at: subject, of: all, reads: f/8, taken: { kee: { power: 1/4 } } }]',
      }),
      '/readings/0/taken/kee',
      'key',
    ],
    [
      'surface',
      leastWith({ backdrop: 'backdrop: { surface: white papr, behind: 2 m }' }),
      '/backdrop/surface',
      'white paper',
    ],
    [
      'wall',
      leastWith({ room: 'room: { width: 4 m, length: 6 m, height: 3 m, walls: { left: blak paint } }' }),
      '/room/walls/left',
      'black paint',
    ],
    [
      'panel surface',
      leastWith({
        panels:
          'panels: { p: { kind: reflector, size: 1 x 1 m, at: { left: 1 m }, faces: subject, surface: silvr } }',
      }),
      '/panels/p/surface',
      'silver',
    ],
    [
      'side to face',
      leastWith({ panels: 'panels: { p: { kind: flag, size: 1 x 1 m, at: { left: 1 m }, faces: rihgt } }' }),
      '/panels/p/faces',
      'right',
    ],
    [
      'camera',
      leastWith({
        camera:
          'camera: { body: mian, lens: 85 mm, at: { distance: 2 m }, aperture: f/8, shutter: 1/125, iso: 100 }',
        kit: 'kit: { cameras: { main: { sensor: aps-c } } }',
      }),
      '/camera/body',
      'main',
    ],
    [
      'point to focus on',
      leastWith({
        camera:
          'camera: { focus: haair, lens: 85 mm, at: { distance: 2 m }, aperture: f/8, shutter: 1/125, iso: 100 }',
      }),
      '/camera/focus',
      'hair',
    ],
    [
      'stand',
      leastWith({
        key: `  key: { unit: flashgun, stand: { kind: tal }, ${at} }`,
        kit: 'kit: { stands: { tall: { highest: 3 m } } }',
      }),
      '/lights/key/stand/kind',
      'tall',
    ],
    [
      'unit of a measurement',
      leastWith({
        kit: 'kit: { measured: [{ unit: flashgn, power: full, distance: 2 m, reads: f/8, iso: 100 }] }',
      }),
      '/kit/measured/0/unit',
      'flashgun',
    ],
  ])('%s: told at the name, with what was meant', (_, text, pointer, meant) => {
    const mistake = onlyMistake(text)
    expect(mistake.rule).toBe('unknown-name')
    expect(mistake.place.pointer).toBe(pointer)
    expect(mistake.advice).toEqual(meant === undefined ? [] : [`write ${meant}`])
    expect(pointsAt(mistake, text)).not.toBe('')
  })

  it('of surfaces are too many to say: told where they are listed, and what a name of one’s own needs', () => {
    const said = (surface: string) =>
      onlyMistake(leastWith({ backdrop: `backdrop: { surface: ${surface}, behind: 2 m }` }))
    expect(said('velour').why).toMatch(/ and \d+ more; thirdstop explain surfaces lists what is built in$/)
    const own = said('{ name: velour, finish: satin }')
    expect(own).toMatchObject({ rule: 'unknown-name', place: { pointer: '/backdrop/surface/name' } })
    expect(own.why).toMatch(/needs its reflectance or its colour/)
    expect(said('{ finish: satin }').message).toMatch(/needs one of reflectance, colour or name/)
    const sides = leastWith({
      backdrop:
        'backdrop: { surface: grey paper, behind: 2 m }\nroom: { width: 6 m, length: 9 m, height: 3 m, walls: { reflectance: 0.5, finish: glossy } }',
    })
    expect(planOf(sides).room!.walls.left).toMatchObject({ reflectance: 0.5, finish: 'glossy' })
  })

  it('of objects’ own furniture are as unknown as others', () => {
    for (const name of ['constructor', 'toString', 'hasOwnProperty', 'valueOf']) {
      expect(onlyMistake(leastWith({ key: `  key: { unit: ${name}, ${at} }` })).rule).toBe('unknown-name')
      expect(
        onlyMistake(leastWith({ key: `  key: { unit: flashgun, modifier: ${name}, ${at} }` })).rule,
      ).toBe('unknown-name')
      expect(onlyMistake(leastWith({ backdrop: `backdrop: { surface: ${name}, behind: 2 m }` })).rule).toBe(
        'unknown-name',
      )
      expect(
        onlyMistake(leastWith({ readings: `readings: [{ at: ${name}, of: all, reads: f/8 }]` })).rule,
      ).toBe('unknown-name')
    }
  })

  it('may be lights’ own', () => {
    const plan = planOf(
      leastWith({
        key: `  constructor: { unit: flashgun, role: key, ${at} }`,
        readings:
          'readings: [{ at: subject, of: [constructor], reads: f/8, taken: { constructor: { power: 1/4 } } }]',
      }),
    )
    expect(plan.lights.get('constructor')!.role).toBe('key')
    expect(plan.readings[0]!.taken!.get('constructor')!.power).toBe(0.25)
  })

  it('of a kit’s gear are known once the kit is there', () => {
    const text = leastWith({ key: `  key: { unit: gun, modifier: box, ${at} }`, kit: 'kit: k.kit.yaml' })
    const kit =
      'kit: 1\ntitle: K\nunits: { gun: { energy: 70 Ws } }\nmodifiers: { box: { kind: softbox, size: 1 x 1 m } }\n'
    expect(planOf(text, { 'set/k.kit.yaml': kit }).lights.get('key')!.modifier!.name).toBe('box')
  })
})

describe('a focus', () => {
  it('on a row that is not there is told', () => {
    const camera = (focus: string) => ({
      camera: `camera: { lens: 85 mm, at: { distance: 2 m }, aperture: f/8, shutter: 1/125, iso: 100, focus: ${focus} }`,
      subject: 'subject: { kind: group, rows: [{ people: 1, faces-at: 1.6 m }] }',
    })
    expect(planOf(leastWith(camera('row 1'))).camera.focus).toEqual({ on: 'row', row: 1 })
    expect(onlyMistake(leastWith(camera('row 2'))).place.pointer).toBe('/camera/focus')
    expect(planOf(leastWith(camera('2.4 m'))).camera.focus).toEqual({ on: 'distance', distance: 2.4 })
    expect(planOf(leastWith(camera('hair'))).camera.focus).toEqual({ on: 'point', point: 'hair' })
  })
})

describe('a plan without a backdrop', () => {
  it.each([
    [
      'aims at one',
      leastWith({
        backdrop: undefined,
        paper: undefined,
        wanted: undefined,
        key: `  key: { unit: flashgun, aim: backdrop, ${at} }`,
      }),
      '/lights/key/aim',
    ],
    [
      'has a light for one',
      leastWith({
        backdrop: undefined,
        wanted: undefined,
        paper: `  paper: { role: backdrop, unit: flashgun, ${at} }`,
      }),
      '/lights/paper/role',
    ],
    [
      'measures from one',
      leastWith({
        backdrop: undefined,
        wanted: undefined,
        paper: '  rim: { unit: flashgun, at: { left: 1 m, before-backdrop: 1 m } }',
      }),
      '/lights/rim/at/before-backdrop',
    ],
    [
      'has a reading of one',
      leastWith({
        backdrop: undefined,
        wanted: undefined,
        paper: undefined,
        readings: 'readings: [{ at: backdrop-left, of: all, reads: f/8 }]',
      }),
      '/readings/0/at',
    ],
  ])('and %s', (_, text, pointer) => {
    const mistake = onlyMistake(text)
    expect(mistake.place.pointer).toBe(pointer)
    expect(`${mistake.message} ${mistake.why}`).toMatch(/no backdrop|has none/)
  })
})

describe('values out of sense', () => {
  const camera = (text: string) =>
    leastWith({ camera: `camera: { lens: 85 mm, aperture: f/8, shutter: 1/125, iso: 100, ${text} }` })
  it.each([
    ['camera in the subject', camera('at: { distance: 0 m }'), '/camera/at/distance'],
    ['a filter that gives light', camera('at: { distance: 2 m }, filter: -1 stop'), '/camera/filter'],
    ['lengths over a kilometre', camera('at: { distance: 1001 m }'), '/camera/at/distance'],
    ['height over no table', camera('at: { distance: 2 m, height: 20 cm over table }'), '/camera/at/height'],
    [
      'a backdrop of no width',
      leastWith({ backdrop: 'backdrop: { surface: white paper, behind: 2 m, width: 0 m }' }),
      '/backdrop/width',
    ],
    [
      'a subject in the backdrop',
      leastWith({ backdrop: 'backdrop: { surface: white paper, behind: 0 m }' }),
      '/backdrop/behind',
    ],
    ['nobody’s height', leastWith({ subject: 'subject: { kind: person, height: 0 m }' }), '/subject/height'],
    [
      'people in one another',
      leastWith({ subject: 'subject: { kind: group, rows: [{ people: 2, spacing: 0 m, faces-at: 1 m }] }' }),
      '/subject/rows/0/spacing',
    ],
    [
      'a room of no height',
      leastWith({ room: 'room: { width: 4 m, length: 6 m, height: 0 m }' }),
      '/room/height',
    ],
    [
      'a wall off the room',
      leastWith({ room: 'room: { width: 4 m, length: 6 m, height: 3 m, left-wall: 5 m }' }),
      '/room/left-wall',
    ],
    [
      'an angle without a distance',
      leastWith({ key: '  key: { unit: flashgun, at: { angle: 20 deg left } }' }),
      '/lights/key/at',
    ],
    ['a sun by offsets', leastWith({ paper: '  sun: { unit: sun, at: { left: 2 m } }' }), '/lights/sun/at'],
    [
      'a window without a size',
      leastWith({ paper: '  window: { unit: window, at: { left: 2 m } }' }),
      '/lights/window',
    ],
    [
      'a flash with a meter’s reading',
      leastWith({ key: `  key: { unit: flashgun, reads: f/8, shutter: 1/60, iso: 100, ${at} }` }),
      '/lights/key/reads',
    ],
    [
      'a sun that is to meter',
      leastWith({ paper: '  sun: { unit: sun, meters: f/8, at: { angle: 20 deg left, up: 40 deg } }' }),
      '/lights/sun/meters',
    ],
    [
      'more than straight up',
      leastWith({ paper: '  sun: { unit: sun, at: { angle: 20 deg left, up: 100 deg } }' }),
      '/lights/sun/at/up',
    ],
    [
      'a setting at no distance',
      leastWith({
        readings: 'readings: [{ at: subject, of: all, reads: f/8, taken: { key: { distance: 0 m } } }]',
      }),
      '/readings/0/taken/key/distance',
    ],
    [
      'a closed v-flat',
      leastWith({
        panels:
          'panels: { p: { kind: v-flat, size: 1 x 2 m, at: { left: 1 m }, faces: right, opening: 0 deg } }',
      }),
      '/panels/p/opening',
    ],
    [
      'a scrim that makes light',
      leastWith({
        panels:
          'panels: { p: { kind: scrim, size: 1 x 2 m, at: { left: 1 m }, faces: right, transmits: 60 %, surface: white paper } }',
      }),
      '/panels/p/transmits',
    ],
    [
      'shooting at no pace',
      leastWith({ wanted: 'wanted: { shooting: { every: 0 s } }' }),
      '/wanted/shooting/every',
    ],
  ])('%s: told at the value', (_, text, pointer) => {
    expect(onlyMistake(text)).toMatchObject({ rule: 'plan-unreadable', place: { pointer } })
  })
})

describe('mistakes', () => {
  it('are all told at once', () => {
    const text = leastWith({
      camera: 'camera: { lens: 85, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/160, iso: 100 }',
      key: `  key: { unit: flashgunn, aim: nowhere, powr: 1/4, ${at} }`,
      paper: '  paper: { like: kye }',
      readings: 'readings: [{ at: subjct, of: [rim], reads: 5.6 }]',
    })
    const mistakes = told(read(text))
    expect(mistakes).toHaveLength(8)
    expect(read(text).plan).toBeUndefined()
  })

  it('are one where there is one: a kit that is not there leaves its names alone', () => {
    const text = leastWith({
      key: `  key: { unit: strange, modifier: odd, stand: { kind: tall }, ${at} }`,
      backdrop: 'backdrop: { surface: half roll, behind: 2 m }',
      kit: 'kit: gone.kit.yaml',
    })
    expect(onlyMistake(text).place.pointer).toBe('/kit')
  })

  it('are one where there is one: a base that is not there leaves the rest alone', () => {
    expect(
      onlyMistake('plan: 1\ntitle: Mine\nbase: gone.base.yaml\nlights: { rim: { power: 1/4 } }\n').place
        .pointer,
    ).toBe('/base')
  })

  it('come from every file', () => {
    const mistakes = told(
      read(`${least}kit: k.kit.yaml\nroom: r.room.yaml\ncamara: {}\n`, {
        'set/k.kit.yaml': 'kit: 1\ntitle: K\nunits: { a: { energy: 70 } }\n',
        'set/r.room.yaml': 'room: 1\nwidth: 4\nlength: 6 m\nheight: 3 m\n',
      }),
    )
    expect(mistakes.map((one) => one.split(' ')[0])).toEqual(
      expect.arrayContaining(['set/own.plan.yaml:12:1', 'set/k.kit.yaml:3:23', 'set/r.room.yaml:2:8']),
    )
    expect(mistakes).toHaveLength(3)
  })

  it('of two keys of one name leave the others to be told', () => {
    const reading = read(`${least}tags: [a]\ntags: [b]\ntagz: [c]\n`)
    expect(reading.mistakes.map((one) => one.rule).sort()).toEqual(['duplicate-name', 'unknown-name'])
  })

  it('of YAML are one, at the place', () => {
    expect(onlyMistake('plan: 1\ntitle: "open\n').rule).toBe('plan-unreadable')
    expect(onlyMistake('').rule).toBe('plan-unreadable')
    expect(onlyMistake('just words\n').rule).toBe('plan-unreadable')
    expect(onlyMistake('- a\n- list\n').rule).toBe('plan-unreadable')
    expect(onlyMistake('plan: 1\n---\nplan: 1\n').rule).toBe('plan-unreadable')
  })

  it('of forbidden names are told', () => {
    expect(read(`${least}__proto__: {}\n`).plan).toBeUndefined()
    expect(read(leastWith({ key: `  all: { unit: flashgun, ${at} }` })).plan).toBeUndefined()
    expect(read(leastWith({ key: `  subject: { unit: flashgun, ${at} }` })).plan).toBeUndefined()
    expect(read(leastWith({ points: 'points: { backdrop: { left: 1 m } }' })).plan).toBeUndefined()
  })
})

describe('hostile plans', () => {
  const many = (count: number, line: (i: number) => string) =>
    Array.from({ length: count }, (_, i) => line(i)).join('\n')

  it('with ten thousand lights like each other are refused in a line', () => {
    const lights = many(10_000, (i) => `  l${i}: { like: l${i + 1} }`)
    expect(onlyMistake(leastWith({ paper: lights })).message).toContain('64')
  })

  it('with thousands of wrong names do not tell them without end', () => {
    const panels = many(5000, (i) => `  p${i}: { kind: flag, faces: q${i} }`)
    expect(read(`${least}panels:\n${panels}\n`).mistakes.length).toBeLessThanOrEqual(500)
  })

  it('with names without end are told in short words', () => {
    const mistake = onlyMistake(
      leastWith({ backdrop: `backdrop: { surface: ${'w'.repeat(500_000)}, behind: 2 m }` }),
    )
    expect(mistake.message.length).toBeLessThan(300)
  })
})

describe('texts', () => {
  it('are those of all files that were read', () => {
    const files = { 'set/k.kit.yaml': 'kit: 1\ntitle: K\n', 'set/other.kit.yaml': 'kit: 1\ntitle: O\n' }
    expect([...read(`${least}kit: k.kit.yaml\n`, files).texts.keys()]).toEqual([
      'set/own.plan.yaml',
      'set/k.kit.yaml',
    ])
  })
})
