/** Expected values: the table of defaults of the language, version 1, and the notes beside its keys. */
import { describe, expect, it } from 'vitest'
import type { Plan } from '../../src/language/plan.js'
import { leastWith, planOf } from './reading.js'

const withLine = (key: string, line: string, files = {}): Plan => planOf(leastWith({ [key]: line }), files)
const light = (line: string) => `  key: { unit: flashgun, at: { angle: 0 deg, distance: 2 m }, ${line} }`

describe('camera', () => {
  it('is upright for one person, level for groups and objects', () => {
    expect(withLine('subject', 'subject: { kind: object }').camera.frame).toBe('horizontal')
    const rows = 'rows: [{ people: 2, spacing: 60 cm, faces-at: 1.6 m }]'
    expect(withLine('subject', `subject: { kind: group, ${rows} }`).camera.frame).toBe('horizontal')
  })

  it('is at the height of the face, over the table if there is one', () => {
    expect(withLine('subject', 'subject: { kind: person, pose: seated }').camera.at.height).toBe(1.2)
    const object = 'subject: { kind: object, height: 40 cm, stands-on: { height: 80 cm } }'
    expect(withLine('subject', object).camera.at.height).toBeCloseTo(1, 12)
  })

  it('is held by a person unless the shutter is slower than 1/60', () => {
    const camera = (shutter: string) =>
      withLine(
        'camera',
        `camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/8, shutter: ${shutter}, iso: 100 }`,
      ).camera.heldBy
    expect(camera('1/125')).toBe('person')
    expect(camera('1/60')).toBe('person')
    expect(camera('1/50')).toBe('stand')
    expect(camera('0.5 s')).toBe('stand')
  })

  it('takes what its body in the kit says, but for what the plan says', () => {
    const plan = planOf(
      leastWith({
        camera:
          'camera: { body: main, sync: 1/180, lens: 85 mm, at: { distance: 2.5 m }, aperture: f/8, shutter: 1/125, iso: 100 }',
        kit: 'kit: { cameras: { main: { sensor: aps-c, sync: 1/250, curtain: 3 ms, headroom: 1/2 stop, shutter-kind: leaf } } }',
      }),
    )
    expect(plan.camera).toMatchObject({
      sensor: { width: 0.0235 },
      sync: 1 / 180,
      curtain: 0.003,
      headroom: 0.5,
      shutterKind: 'leaf',
    })
  })
})

describe('subject', () => {
  const subject = (more: string) => withLine('subject', `subject: { ${more} }`).subject

  it('has its face at 0.94 of its height standing, at 1.2 m seated, where it says otherwise', () => {
    expect(subject('kind: person, height: 1.5 m').facesAt).toBeCloseTo(1.41, 12)
    expect(subject('kind: person, pose: seated').facesAt).toBe(1.2)
    expect(subject('kind: person, pose: seated, faces-at: 1.1 m').facesAt).toBe(1.1)
  })

  it('has a seated child’s face no higher than it stands', () => {
    expect(subject('kind: person, pose: seated, height: 1 m').facesAt).toBeCloseTo(0.94, 12)
  })

  it('has an object’s middle for a face', () => {
    expect(subject('kind: object, height: 30 cm').facesAt).toBeCloseTo(0.15, 12)
  })

  it('has a group’s mean face', () => {
    const rows = `rows: [{ people: 3, spacing: 50 cm, faces-at: 80 cm }, { people: 1, behind: 40 cm, faces-at: 1.6 m }]`
    const group = subject(`kind: group, ${rows}`)
    expect(group.facesAt).toBeCloseTo((3 * 0.8 + 1.6) / 4, 12)
    expect(group.rows).toEqual([
      { people: 3, spacing: 0.5, facesAt: 0.8, behind: 0 },
      { people: 1, spacing: 0, facesAt: 1.6, behind: 0.4 },
    ])
  })

  it('turns right positive', () => {
    expect(subject('kind: person, turned: 30 deg right').turnedRight).toBeCloseTo(Math.PI / 6, 12)
    expect(subject('kind: person, turned: 30 deg left').turnedRight).toBeCloseTo(-Math.PI / 6, 12)
  })
})

describe('backdrop and room', () => {
  it('counts from the last row of a group', () => {
    const plan = planOf(
      leastWith({
        subject:
          'subject: { kind: group, rows: [{ people: 1, faces-at: 1 m }, { people: 1, behind: 45 cm, faces-at: 1.3 m }, { people: 1, behind: 50 cm, faces-at: 1.6 m }] }',
        backdrop: 'backdrop: { surface: white paper, behind-last-row: 50 cm }',
      }),
    )
    expect(plan.backdrop!.behind).toBeCloseTo(0.45 + 0.5 + 0.5, 12)
  })

  it('takes size and finish of a backdrop of the kit, but for what the plan says', () => {
    const plan = planOf(
      leastWith({
        backdrop: 'backdrop: { surface: half roll, behind: 2 m, height: 2.4 m }',
        kit: 'kit: { backdrops: { half roll: { surface: grey paper, width: 1.35 m, height: 2.2 m, finish: satin } } }',
      }),
    )
    expect(plan.backdrop).toMatchObject({
      surface: { name: 'half roll', reflectance: 0.18 },
      width: 1.35,
      height: 2.4,
      finish: 'satin',
    })
  })

  it('takes from a built-in surface, or a backdrop of the kit, what is not said besides its name', () => {
    const room = withLine(
      'room',
      'room: { width: 4 m, length: 6 m, height: 2.6 m, floor: { name: wooden floor, finish: glossy }, walls: { name: yellow wall, finish: satin }, ceiling: { name: wooden floor, reflectance: 0.5 } }',
    ).room!
    const plain = withLine(
      'room',
      'room: { width: 4 m, length: 6 m, height: 2.6 m, floor: wooden floor, walls: yellow wall }',
    ).room!
    expect(room.floor).toEqual({ ...plain.floor, finish: 'glossy' })
    for (const side of ['left', 'right', 'front', 'back'] as const)
      expect(room.walls[side]).toEqual({ ...plain.walls[side], finish: 'satin' })
    expect(room.ceiling).toMatchObject({ reflectance: 0.5, u: 0.1, colour: plain.floor.colour })
    const roll = planOf(
      leastWith({
        backdrop: 'backdrop: { surface: { name: half roll, finish: glossy }, behind: 2 m }',
        kit: 'kit: { backdrops: { half roll: { surface: grey paper, finish: satin } } }',
      }),
    ).backdrop!
    expect(roll.surface).toMatchObject({ name: 'half roll', reflectance: 0.18, finish: 'glossy' })
  })

  it('finishes a surface as it is known, as the surface says, or as is said where it lies', () => {
    const table = (more: string) =>
      withLine('subject', `subject: { kind: object, stands-on: { height: 80 cm, ${more} } }`).subject.standsOn
        ?.surface.finish
    expect(table('surface: white board')).toBeUndefined()
    expect(table('surface: black acrylic')).toBe('glossy')
    expect(table('surface: black acrylic, finish: matte')).toBe('matte')
    expect(table('surface: { reflectance: 0.2, finish: satin }')).toBe('satin')
    const backdrop = (more: string) => withLine('backdrop', `backdrop: { behind: 2 m, ${more} }`).backdrop!
    for (const [more, finish] of [
      ['surface: white paper', 'matte'],
      ['surface: white vinyl', 'satin'],
      ['surface: glass', 'glossy'],
      ['surface: { colour: blue, finish: glossy }', 'glossy'],
      ['surface: white vinyl, finish: glossy', 'glossy'],
    ] as const)
      expect([more, backdrop(more).finish, backdrop(more).surface.finish ?? 'matte']).toEqual([
        more,
        finish,
        finish,
      ])
    const room = withLine(
      'room',
      'room: { width: 4 m, length: 6 m, height: 2.6 m, floor: { name: lacquer, reflectance: 0.3, finish: glossy }, walls: { left: glass } }',
    ).room!
    expect(room.floor.finish).toBe('glossy')
    expect(room.walls.left.finish).toBe('glossy')
    expect(room.walls.right.finish).toBeUndefined()
  })

  it('brings the finish of a kit’s backdrop along wherever it lies', () => {
    const plan = planOf(
      leastWith({
        subject: 'subject: { kind: object, stands-on: { height: 80 cm, surface: half roll } }',
        kit: 'kit: { backdrops: { half roll: { surface: grey paper, finish: satin } } }',
      }),
    )
    expect(plan.subject.standsOn!.surface).toMatchObject({ name: 'half roll', finish: 'satin' })
  })

  it('takes an object taller than wide for a cylinder, any other for a ball; people are neither', () => {
    const shape = (more: string) => withLine('subject', `subject: { kind: ${more} }`).subject.shape
    expect(shape('object, height: 30 cm, width: 8 cm')).toBe('cylinder')
    expect(shape('object, height: 30 cm')).toBe('ball')
    expect(shape('object, height: 30 cm, width: 8 cm, shape: plane')).toBe('plane')
    expect(shape('person')).toBeUndefined()
  })

  it('has no room unless one is stated; white ceiling, walls 0.5, floor 0.3, uncertain, set in the middle', () => {
    const { room } = withLine('room', 'room: { width: 4.2 m, length: 7 m, height: 2.6 m }')
    expect(room).toMatchObject({
      width: 4.2,
      leftWall: 2.1,
      ceiling: { name: 'white ceiling', reflectance: 0.8, u: 0.4 },
      floor: { reflectance: 0.3, u: 0.4 },
      walls: { left: { reflectance: 0.5, u: 0.4 }, back: { reflectance: 0.5, u: 0.4 } },
    })
  })

  it('takes walls by name, by number, by measured facts, by side', () => {
    const walls = (text: string) =>
      withLine('room', `room: { width: 4 m, length: 7 m, height: 2.6 m, walls: ${text} }`).room!.walls
    expect(walls('black paint').front).toMatchObject({ name: 'black paint', reflectance: 0.05 })
    expect(walls('0.62').left.reflectance).toBe(0.62)
    expect(walls('{ reflectance: 0.3, colour: "#808080" }').right).toMatchObject({
      reflectance: 0.3,
      colour: [128 / 255, 128 / 255, 128 / 255],
    })
    const each = walls('{ left: white paint, right: 0.1 }')
    expect([each.left.reflectance, each.right.reflectance, each.front.reflectance]).toEqual([0.8, 0.1, 0.5])
  })

  it('lets a sky stand for a backdrop', () => {
    const { backdrop } = withLine(
      'backdrop',
      'backdrop: { sky: { reads: f/8, shutter: 1/1000, iso: 100 }, behind: 40 m }',
    )
    expect(backdrop!.sky).toMatchObject({ reads: 8, kind: 'reflected', iso: 100 })
    expect(backdrop!.behind).toBe(40)
  })
})

describe('roles', () => {
  const roles = (lines: string): Record<string, string> => {
    const plan = planOf(leastWith({ key: lines, paper: undefined }))
    return Object.fromEntries([...plan.lights].map(([name, one]) => [name, one.role]))
  }
  const at = 'unit: flashgun, at: { angle: 20 deg left, distance: 2 m }'

  it('come from the first word of the name', () => {
    const names = ['rim-left', 'hair', 'kicker 2', 'backdrop_1', 'fill', 'effect', 'key']
    expect(roles(names.map((name) => `  ${name}: { ${at} }`).join('\n'))).toEqual({
      'rim-left': 'rim',
      hair: 'hair',
      'kicker 2': 'kicker',
      backdrop_1: 'backdrop',
      fill: 'fill',
      effect: 'effect',
      key: 'key',
    })
  })

  it('are key for the first light, if no other is', () => {
    expect(roles(`  left: { ${at} }\n  right: { ${at} }`)).toEqual({ left: 'key', right: 'fill' })
    expect(roles(`  left: { ${at} }\n  key: { ${at} }`)).toEqual({ left: 'fill', key: 'key' })
  })

  it('are what a nameless light is aimed at', () => {
    expect(
      roles(
        `  main: { ${at} }\n  a: { ${at}, aim: backdrop-left }\n  b: { ${at}, aim: floor }\n  c: { ${at}, aim: hair }`,
      ),
    ).toEqual({ main: 'key', a: 'backdrop', b: 'effect', c: 'fill' })
  })

  it('that are stated go before the name', () => {
    expect(roles(`  rim: { ${at}, role: key }`)).toEqual({ rim: 'key' })
  })

  it('say where a light points', () => {
    const aim = (role: string) => withLine('key', light(`role: ${role}`)).lights.get('key')!.aim
    expect(aim('rim')).toMatchObject({ at: 'point', point: 'subject-back' })
    expect(aim('hair')).toMatchObject({ point: 'hair' })
    expect(aim('kicker')).toMatchObject({ point: 'subject' })
    expect(aim('backdrop')).toMatchObject({ point: 'backdrop' })
  })
})

describe('wanted', () => {
  const wanted = (text: string) => withLine('wanted', `wanted: { ${text} }`).wanted

  it('is nothing where nothing is', () => {
    const plan = planOf(leastWith({ wanted: undefined }))
    expect(plan.wanted).toMatchObject({
      backdrop: undefined,
      framing: undefined,
      shadow: 'any',
      sharp: { what: 'face' },
    })
  })

  it('takes grey as sRGB 50 to 180, black as a tone, a tone as itself', () => {
    expect(wanted('backdrop: grey').backdrop).toEqual({ tone: 'range', name: 'grey', from: 50, to: 180 })
    expect(wanted('backdrop: black').backdrop).toEqual({ tone: 'black' })
    expect(wanted('backdrop: { tone: 200 }').backdrop).toMatchObject({ tone: 'range', from: 200, to: 200 })
    expect(wanted('backdrop: { colour: blue }').backdrop).toEqual({ tone: 'colour', colour: 'blue' })
    expect(wanted('backdrop: grey').shadow).toBe('any')
  })

  it('reads ratios, ranges and depths', () => {
    expect(wanted('ratio: { lit-to-shadow: "3:1" }').ratio).toEqual({ kind: 'lit-to-shadow', ratio: 3 })
    expect(wanted('backdrop-over-key: 1/2..1 stop').backdropOverKey).toEqual({ from: 0.5, to: 1 })
    expect(wanted('sharp: 30 cm').sharp).toEqual({ what: 'depth', depth: 0.3 })
    expect(wanted('ambient: { under-key: 2 stops }').ambient).toEqual({ underKey: 2 })
  })

  it('takes ambient along where a light burns steadily', () => {
    const plan = planOf(leastWith({ key: '  key: { unit: led panel, at: { angle: 0 deg, distance: 2 m } }' }))
    expect(plan.wanted.ambient).toBe('any')
    const off = leastWith({
      lamp: undefined,
      key: `${light('power: full')}\n  lamp: { unit: led panel, off: true, at: { angle: 0 deg, distance: 2 m } }`,
    })
    expect(planOf(off).wanted.ambient).toBe('none')
  })

  it('wants nothing sharp of a group or an object that is not said', () => {
    expect(withLine('subject', 'subject: { kind: object, height: 30 cm }').wanted.sharp).toBeUndefined()
  })
})

describe('readings', () => {
  const reading = (text: string) => withLine('readings', `readings: [{ ${text} }]`).readings[0]!

  it('of one light face it, of several the camera, dome raised', () => {
    expect(reading('at: subject, of: [key], reads: f/5.6')).toMatchObject({
      of: ['key'],
      read: { reads: 2 ** 2.5 },
      dome: 'raised',
      faces: 'light',
      kind: 'incident',
      iso: 100,
      taken: undefined,
    })
    expect(reading('at: subject, of: all, reads: f/5.6').faces).toBe('camera')
    expect(reading('at: subject, of: [key, paper], reads: f/5.6').faces).toBe('camera')
    expect(reading('at: subject, of: key, reads: f/5.6').of).toEqual(['key'])
  })

  it('on a surface lie flat and face out of it', () => {
    expect(reading('at: backdrop-left, of: [paper], reads: f/5.6')).toMatchObject({
      dome: 'flat',
      faces: 'out',
    })
    expect(reading('at: floor, of: all, records: 243')).toMatchObject({
      dome: 'flat',
      faces: 'out',
      read: { records: 243 },
    })
  })

  it('say what the lights were set to', () => {
    const { taken } = reading(
      'at: subject, of: all, reads: f/5.6, taken: { key: { power: 1/4 + 0.3, distance: 1.4 m } }',
    )
    expect(taken!.get('key')).toEqual({ power: expect.closeTo(2 ** (-2 + 1 / 3), 12), distance: 1.4 })
  })

  it('face what they say', () => {
    expect(reading('at: subject, of: all, reads: f/5.6, faces: backdrop').faces).toBe('backdrop')
    expect(reading('at: subject, of: all, reads: f/5.6, faces: hair').faces).toEqual({ point: 'hair' })
  })
})

describe('lengths', () => {
  it('are written back as the author writes them', () => {
    const at = (distance: string) =>
      withLine(
        'camera',
        `camera: { lens: 85 mm, at: { distance: ${distance} }, aperture: f/8, shutter: 1/125, iso: 100 }`,
      ).lengths
    expect(at('250 cm')).toBe('metric')
    expect(at('8 ft 3 in')).toBe('feet')
    expect(at(`8'`)).toBe('feet')
    expect(at('100 in')).toBe('feet')
  })
})
