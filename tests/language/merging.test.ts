/** Expected values: "Merging from a base", "Kit and room files" and "Reading a plan" of the language, version 1. */
import { describe, expect, it } from 'vitest'
import type { Plan } from '../../src/language/plan.js'
import { bare, type Files, least, leastWith, onlyMistake, planOf, pointsAt, read, told } from './reading.js'

const base = `plan: 1
title: The base
notes: not inherited
tags: [not, inherited]
camera: { lens: 85 mm, at: { distance: 2.5 m, height: 1.4 m }, aperture: f/5.6, shutter: 1/160, iso: 100 }
subject: { kind: person, hair: dark }
backdrop: { surface: white paper, behind: 2 m }
lights:
  key:
    unit: flashgun
    modifier: shoot-through umbrella 1 m
    power: 1/4
    at: { angle: 35 deg left, distance: 1.2 m, height: 2 m }
    trigger: { by: radio, channel: 3 }
  rim: { unit: flashgun, power: 1/8, at: { angle: 150 deg right, distance: 1.6 m, height: 2.2 m } }
panels:
  flag: { kind: flag, size: 60 x 200 cm, at: { left: 80 cm, height: 1.2 m }, faces: right }
points: { hands: { front: 20 cm, height: 1 m } }
wanted: { backdrop: white, ratio: { lit-to-shadow: '3:1' } }
readings: [{ at: subject, of: [key], reads: f/5.6 }]
accept: [{ rule: frame-past-backdrop, because: not inherited }]
`
const files: Files = { 'set/white.base.yaml': base }
const over = (text: string): Plan => planOf(`plan: 1\ntitle: Mine\nbase: white.base.yaml\n${text}`, files)

describe('a base', () => {
  it('gives what the plan does not say', () => {
    const plan = over('')
    expect(plan.title).toBe('Mine')
    expect([...plan.lights.keys()]).toEqual(['key', 'rim'])
    expect(plan.subject.hair).toBe('dark')
  })

  it('does not give title, notes, readings, accepted findings and tags', () => {
    expect(over('')).toMatchObject({ notes: undefined, readings: [], accept: [], tags: [] })
  })

  it('merges key by key, scalars replacing', () => {
    const plan = over(
      'camera: { aperture: f/8 }\nlights: { key: { zoom: 50 mm }, fill: { like: key, power: 1/16 } }\n',
    )
    expect(plan.camera).toMatchObject({ aperture: 8, lens: 0.085, at: { distance: 2.5, height: 1.4 } })
    expect(plan.lights.get('key')).toMatchObject({ zoom: 0.05, power: 1 / 4 })
    expect([...plan.lights.keys()]).toEqual(['key', 'rim', 'fill'])
  })

  it('has places, triggers and ratios replaced whole', () => {
    const plan = over(
      'camera: { at: { distance: 3 m } }\n' +
        'lights: { key: { at: { angle: 20 deg left, distance: 1.5 m }, trigger: { by: cable } } }\n' +
        "wanted: { ratio: { key-to-fill: '2:1' } }\n",
    )
    expect(plan.camera.at.height).toBeCloseTo(0.94 * 1.72, 12)
    expect(plan.lights.get('key')!.at).toMatchObject({ distance: 1.5, height: undefined })
    expect(plan.lights.get('key')!.trigger).toEqual({
      by: 'cable',
      channel: undefined,
      group: undefined,
      early: false,
    })
    expect(plan.wanted.ratio).toEqual({ kind: 'key-to-fill', ratio: 2 })
  })

  it('has a point replaced whole', () => {
    expect(over('points: { hands: { right: 10 cm } }\n').points.get('hands')).toMatchObject({
      right: 0.1,
      behind: 0,
      height: undefined,
    })
  })

  it('has its power replaced by meters', () => {
    expect(over('lights: { key: { meters: f/8 } }\n').lights.get('key')).toMatchObject({
      power: undefined,
      meters: { reads: 8 },
    })
    const metered = { 'set/white.base.yaml': base.replace('power: 1/4', 'meters: f/8') }
    const plan = planOf(
      'plan: 1\ntitle: Mine\nbase: white.base.yaml\nlights: { key: { power: 1/2 } }\n',
      metered,
    )
    expect(plan.lights.get('key')).toMatchObject({ power: 1 / 2, meters: undefined })
  })

  it('has its surface replaced by a sky, and a light’s unit by a map', () => {
    const plan = over(
      'backdrop: { sky: { reads: f/8, shutter: 1/250, iso: 100 } }\nlights: { key: { unit: { energy: 300 Ws } } }\n',
    )
    expect(plan.backdrop!.sky).toBeDefined()
    expect(plan.lights.get('key')!.unit).toMatchObject({ energy: 300, name: 'key' })
  })

  it('has lights and panels taken away by nothing', () => {
    const plan = over('lights: { rim: null }\npanels: { flag: null }\n')
    expect([...plan.lights.keys()]).toEqual(['key'])
    expect(plan.panels.size).toBe(0)
  })

  it('is told where there is nothing of that name to take away', () => {
    const text = 'plan: 1\ntitle: Mine\nbase: white.base.yaml\nlights: { rin: null }\n'
    const mistake = onlyMistake(text, files)
    expect(mistake).toMatchObject({ rule: 'unknown-name', place: { pointer: '/lights/rin' } })
    expect(mistake.message).toContain('rim')
    expect(pointsAt(mistake, text)).toBe('rin')
  })

  it('may name a light like a key that replaces whole', () => {
    const odd = { 'set/white.base.yaml': base.replace(/rim:/g, 'stand:') }
    const plan = planOf(
      'plan: 1\ntitle: Mine\nbase: white.base.yaml\nlights: { stand: { power: 1/2 } }\n',
      odd,
    )
    expect(plan.lights.get('stand')).toMatchObject({ power: 1 / 2, unit: { name: 'flashgun' } })
  })

  it('written inline is the same plan', () => {
    const whole = `plan: 1\ntitle: Mine\n${base
      .split('\n')
      .filter((line) => !/^(plan|title|notes|tags|readings|accept):/.test(line))
      .join('\n')}`
    expect(bare(over(''))).toEqual(bare(planOf(whole)))
  })

  it('may have a base of its own', () => {
    const chain = {
      'set/a.base.yaml': base,
      'set/deep/b.base.yaml': 'plan: 1\nbase: ../a.base.yaml\ncamera: { iso: 200 }\n',
    }
    const plan = planOf('plan: 1\ntitle: Mine\nbase: deep/b.base.yaml\ncamera: { aperture: f/11 }\n', chain)
    expect(plan.camera).toMatchObject({ iso: 200, lens: 0.085 })
    expect(plan.places.of('/camera/lens').file).toBe('set/a.base.yaml')
    expect(plan.places.of('/camera/iso').file).toBe('set/deep/b.base.yaml')
    // The plan itself says the way to both at one place.
    expect(plan.places.usedAt('/camera/lens')).toMatchObject({ file: 'set/own.plan.yaml', line: 3 })
  })
})

const kit = `kit: 1
title: Corner studio
units:
  flashgun: { guide-number: 28 m at 35 mm, zoom: 24..105 mm }
modifiers:
  box: { kind: softbox, size: 70 x 100 cm, loss: 2.2 stops }
measured:
  - { unit: flashgun, modifier: box, power: 1/4, distance: 1 m, reads: f/4, iso: 100 }
`
const room = 'room: 1\ntitle: Back room\nwidth: 4 m\nlength: 6 m\nheight: 2.5 m\nwalls: black paint\n'

describe('kit and room', () => {
  const withBox = least.replace('shoot-through umbrella 1 m', 'box')

  it('in files are the same as inline', () => {
    const inFiles = planOf(`${withBox}kit: k.kit.yaml\nroom: r.room.yaml\n`, {
      'set/k.kit.yaml': kit,
      'set/r.room.yaml': room,
    })
    const indent = (text: string, version: string) =>
      text
        .split('\n')
        .filter((line) => line !== '' && !line.startsWith(version))
        .map((line) => `  ${line}`)
        .join('\n')
    const roomLines = indent(room, 'room:').replace('  title: Back room\n', '')
    const inline = planOf(`${withBox}kit:\n${indent(kit, 'kit:')}\nroom:\n${roomLines}\n`)
    expect(bare(inFiles)).toEqual(bare(inline))
    expect(inFiles.lights.get('key')).toMatchObject({
      unit: { strength: { table: [{ metres: 28 }] } },
      modifier: { name: 'box', loss: 2.2, lossU: 0.2, size: { width: 0.7, height: 1 } },
    })
    expect(inFiles.places.of('/room/width')).toMatchObject({
      file: 'set/r.room.yaml',
      pointer: '/width',
      line: 3,
    })
    expect(inFiles.places.usedAt('/room/width')).toMatchObject({ file: 'set/own.plan.yaml', line: 11 })
  })

  it('in a list: the later wins, whole, and measurements are put together', () => {
    const plan = planOf(`${withBox}kit: [k.kit.yaml, l.kit.yaml]\n`, {
      'set/k.kit.yaml': kit,
      'set/l.kit.yaml': `kit: 1
title: Borrowed
units: { flashgun: { energy: 60 Ws } }
measured: [{ unit: flashgun, power: full, distance: 2 m, reads: f/8, iso: 100 }]
`,
    })
    expect(plan.lights.get('key')!.unit).toMatchObject({
      strength: { kind: 'energy', energy: 60 },
      zoom: undefined,
    })
    expect(plan.lights.get('key')!.modifier!.name).toBe('box')
    expect(plan.measured.map((one) => one.modifier)).toEqual(['box', undefined])
  })

  it('named in a base are found from there', () => {
    const plan = planOf('plan: 1\ntitle: Mine\nbase: deep/white.base.yaml\n', {
      'set/deep/white.base.yaml': `${base}kit: ../k.kit.yaml\nroom: r.room.yaml\n`,
      'set/k.kit.yaml': kit,
      'set/deep/r.room.yaml': room,
    })
    expect(plan.room!.width).toBe(4)
    expect(plan.places.usedAt('/room/width')).toMatchObject({ file: 'set/own.plan.yaml', line: 3 })
  })
})

describe('files that cannot be had', () => {
  it('are told at the path, once', () => {
    const text = `${least.replace('shoot-through umbrella 1 m', 'box')}kit: gone.kit.yaml\n`
    const mistake = onlyMistake(text)
    expect(mistake).toMatchObject({ rule: 'plan-unreadable', place: { pointer: '/kit' } })
    expect(mistake.message).toContain('no such file')
    expect(pointsAt(mistake, text)).toBe('gone.kit.yaml')
  })

  it.each(['base', 'kit', 'room'])('outside the root are refused: %s', (kind) => {
    const text = `${least}${kind}: ../elsewhere.yaml\n`
    const mistake = onlyMistake(text)
    expect(mistake.message).toContain('outside')
    expect(pointsAt(mistake, text)).toBe('../elsewhere.yaml')
  })

  it('are told where they are broken, and where they are used', () => {
    const text = `${least}kit: k.kit.yaml\n`
    const broken = { 'set/k.kit.yaml': 'kit: 1\ntitle: K\nunits: { flashgun: { guide-number: 36 } }\n' }
    const mistake = onlyMistake(text, broken)
    expect(mistake.place).toMatchObject({
      file: 'set/k.kit.yaml',
      line: 3,
      pointer: '/units/flashgun/guide-number',
    })
    expect(mistake.also).toMatchObject([{ file: 'set/own.plan.yaml', line: 10, says: 'used here' }])
  })

  it('with broken YAML are told there', () => {
    const mistake = onlyMistake(`${least}room: r.room.yaml\n`, {
      'set/r.room.yaml': 'room: 1\nwidth: "4 m\n',
    })
    expect(mistake.place.file).toBe('set/r.room.yaml')
  })
})

describe('circles', () => {
  it('of bases are told', () => {
    const text = 'plan: 1\ntitle: Mine\nbase: a.base.yaml\n'
    const mistake = onlyMistake(text, {
      'set/a.base.yaml': 'plan: 1\nbase: b.base.yaml\n',
      'set/b.base.yaml': 'plan: 1\nbase: a.base.yaml\n',
    })
    expect(mistake.message).toContain('set/a.base.yaml → set/b.base.yaml → set/a.base.yaml')
    expect(mistake.place).toMatchObject({ file: 'set/b.base.yaml', pointer: '/base' })
  })

  it('of a plan with itself are told', () => {
    expect(onlyMistake(`${least}base: own.plan.yaml\n`).message).toContain('circle')
  })
})

describe('limits', () => {
  it('hold a plan to 32 other files', () => {
    const chain = (length: number): Files =>
      Object.fromEntries(
        Array.from({ length }, (_, i) => [
          `set/${i}.base.yaml`,
          i === length - 1 ? base : `plan: 1\nbase: ${i + 1}.base.yaml\n`,
        ]),
      )
    const text = 'plan: 1\ntitle: Mine\nbase: 0.base.yaml\n'
    expect(planOf(text, chain(32)).title).toBe('Mine')
    expect(onlyMistake(text, chain(33)).message).toContain('32')
  })
})

describe('mistakes of a plan with a base', () => {
  it('are told once, though the plan is looked at by itself and merged', () => {
    const text =
      'plan: 1\ntitle: Mine\nbase: white.base.yaml\ncamera: { aperture: 5.6 }\nlights: { key: { pwer: 1/2 } }\n'
    expect(told(read(text, files))).toHaveLength(2)
  })

  it('say what is missing of the whole', () => {
    const mistakes = told(
      read('plan: 1\ntitle: Mine\nbase: b.base.yaml\n', {
        'set/b.base.yaml': leastWith({ subject: undefined }),
      }),
    )
    expect(mistakes).toHaveLength(1)
    expect(mistakes[0]).toContain('subject')
  })
})
