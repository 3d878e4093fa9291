/**
 * Light by photometric tables: held against hand values, closed forms, the beams that are built in, and walls of a closed
 * box that are added up by small pieces.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readPhotometric } from '../../src/language/photometric/read-photometric.js'
import type { PhotometricTable } from '../../src/language/photometric/table.js'
import type { Light } from '../../src/language/plan.js'
import { makeSource } from '../../src/light/make-source.js'
import { candelaToward, photometryOf } from '../../src/light/photometric.js'
import type { Receptor } from '../../src/light/receptor.js'
import { onAxisResponse, response } from '../../src/light/response.js'
import type { AreaSource, Pattern } from '../../src/light/source.js'
import { priorStrength } from '../../src/light/strength.js'
import { buildScene } from '../../src/scene/build-scene.js'
import { add, cross, dot, scale, subtract, unit, type Vec3 } from '../../src/scene/vector.js'
import { metres } from '../../src/units/quantity.js'
import { degreesOf, flashgun, makeLight, makePlan, offsets, softbox, tape } from '../helpers/make-plan.js'
import { type PhotometricText, photometricText, steps } from '../helpers/photometric-text.js'
import { addedUp, cosinePower, frontAt, sequence, someReceptor } from './fronts.js'

const tableOf = (given: PhotometricText): PhotometricTable => {
  const reading = readPhotometric(photometricText(given))
  if (!reading.ok) throw new Error(reading.says)
  return reading.table
}

const byTable = (table: PhotometricTable, lying = false): Pattern => ({
  cosine: undefined,
  head: undefined,
  grid: undefined,
  table: { table, gain: 1 / photometryOf(table).reference, lying },
})

const lampOf = (table: PhotometricTable): Light['unit'] =>
  ({
    ...flashgun,
    kind: 'continuous',
    name: 'lamp',
    size: undefined,
    strength: { kind: 'photometric file', file: 'lamp.ies', table },
  }) as never as Light['unit']

const sourceOf = (light: Light): AreaSource => {
  const plan = makePlan({ lights: [light] })
  const source = makeSource(light, buildScene(plan).lights.get(light.name)!, plan)
  if (source?.kind !== 'area') throw new Error('no front')
  return source
}

const cosine =
  (power: number, most = 1000) =>
  (v: number): number =>
    v > 90 ? 0 : most * Math.max(0, Math.cos(degreesOf(v))) ** power

/** A direction by the angles of type C, in along, aside and out. */
const typeC = (v: number, h: number): readonly [number, number, number] => [
  Math.sin(degreesOf(v)) * Math.cos(degreesOf(h)),
  Math.sin(degreesOf(v)) * Math.sin(degreesOf(h)),
  Math.cos(degreesOf(v)),
]

describe('intensity in a direction', () => {
  it('is what stands in the table at its angles, and between them in proportion to both', () => {
    const table = tableOf({
      vertical: [0, 40, 90],
      horizontal: [0, 90, 180, 270, 360],
      candela: (v, h) => (v === 0 ? 800 : v === 90 ? 0 : [400, 600, 200, 100, 400][h / 90]!),
    })
    const at = (v: number, h: number): number => candelaToward(table, ...typeC(v, h))
    expect(at(40, 0)).toBeCloseTo(400, 9)
    expect(at(40, 90)).toBeCloseTo(600, 9)
    expect(at(40, 270)).toBeCloseTo(100, 9)
    // Half way from 800 to 400; half way between 400 and 600; three quarters of the way from 100 to 400.
    expect(at(20, 0)).toBeCloseTo(600, 9)
    expect(at(40, 45)).toBeCloseTo(500, 9)
    expect(at(40, 337.5)).toBeCloseTo(325, 9)
    // By hand: planes 45 and 135 give 500 and 400 at 40°, half of that at 65°.
    expect(at(65, 45)).toBeCloseTo(250, 9)
    expect(at(65, 112.5)).toBeCloseTo((600 * 0.75 + 200 * 0.25) / 2, 9)
    expect(at(120, 10)).toBe(0)
    // Of whatever length.
    expect(candelaToward(table, 0, 0, 17)).toBeCloseTo(800, 9)
  })

  it('a turn that closes past 0 is read across it', () => {
    const table = tableOf({
      vertical: [0, 90],
      horizontal: [90, 120, 270],
      candela: (v, h) => (v === 0 ? 500 : h),
    })
    // Mirrored on the plane through 90 and 270: 60 is as 120, −90 as 270; 0 lies two fifths from 60 to −90.
    expect(candelaToward(table, ...typeC(90, 0))).toBeCloseTo(120 + 0.4 * 150, 9)
    expect(candelaToward(table, ...typeC(90, 180))).toBeCloseTo(120 + 0.4 * 150, 9)
    expect(candelaToward(table, ...typeC(90, 330))).toBeCloseTo(120 + 0.6 * 150, 9)
  })

  it('types B and A: up and down, and from the axis to the sides', () => {
    const table = tableOf({
      type: 2,
      vertical: [-90, 0, 90],
      horizontal: [-90, 0, 90],
      candela: (v, h) => 1000 + 5 * v + h,
    })
    expect(candelaToward(table, 0, 0, 1)).toBeCloseTo(1000, 9)
    // Up is aside of the front's width; the light's own right is the left of who faces it.
    expect(candelaToward(table, 0, 1, 1)).toBeCloseTo(1225, 9)
    expect(candelaToward(table, -1, 0, 1)).toBeCloseTo(1045, 9)
    expect(candelaToward(table, 1, 0, 1)).toBeCloseTo(955, 9)
    expect(candelaToward(table, 0, -1, 0)).toBeCloseTo(550, 9)
    expect(candelaToward(table, 0, 0, -1)).toBe(0)
    // Partial: nothing is given outside.
    const narrow = tableOf({ type: 3, vertical: [-10, 10], horizontal: [-20, 20], candela: () => 70 })
    expect(candelaToward(narrow, 0.3, 0, 1)).toBeCloseTo(70, 9)
    expect([candelaToward(narrow, 0.4, 0, 1), candelaToward(narrow, 0, 0.2, 1)]).toEqual([0, 0])
  })
})

/** ∫ I dΩ over equal steps of direction cosine and azimuth. */
const overSphere = (table: PhotometricTable, fine = 1200): number => {
  let sum = 0
  for (let i = 0; i < fine; i++)
    for (let j = 0; j < fine; j++) {
      const out = (2 * i + 1) / fine - 1
      const off = Math.sqrt(1 - out * out)
      const round = ((j + 0.5) * 2 * Math.PI) / fine
      sum += candelaToward(table, off * Math.cos(round), off * Math.sin(round), out)
    }
  return (sum * 4 * Math.PI) / fine ** 2
}

/** Uneven to all sides, forward and back. */
const uneven: PhotometricText = {
  vertical: steps(0, 180, 15),
  horizontal: steps(0, 360, 30),
  candela: (v, h) =>
    Math.round(
      1000 *
        (1.2 + Math.cos(degreesOf(v))) *
        (1 + 0.6 * Math.sin(degreesOf(v)) * Math.cos(degreesOf(h - 50))),
    ),
  opening: [0.4, 0.6, 0],
}

describe('flux', () => {
  it('is that of closed forms', () => {
    const flux = (given: PhotometricText): number => photometryOf(tableOf(given)).flux
    // All round alike: 4π I; a half-space: 2π I; Lambertian: π I; cosⁿ: 2π I/(n + 1).
    expect(flux({ vertical: steps(0, 180, 30), horizontal: [0], candela: () => 100 })).toBeCloseTo(
      400 * Math.PI,
      9,
    )
    expect(flux({ vertical: [0, 90], horizontal: steps(0, 90, 30), candela: () => 100 })).toBeCloseTo(
      200 * Math.PI,
      9,
    )
    const degree = { vertical: steps(0, 90, 1), horizontal: [0] }
    expect(flux({ ...degree, candela: cosine(1) }) / (1000 * Math.PI)).toBeCloseTo(1, 4)
    expect(flux({ ...degree, candela: cosine(9) }) / (200 * Math.PI)).toBeCloseTo(1, 3)
    // The same sphere, cut by planes about an axis that lies.
    const lying = { type: 2, vertical: steps(-90, 90, 30), horizontal: steps(-180, 180, 60) } as const
    expect(flux({ ...lying, candela: () => 100 })).toBeCloseTo(400 * Math.PI, 9)
    // A square 20° to both sides: the solid angle between two meridians and two parallels.
    const square = { type: 3, vertical: [-20, 20], horizontal: [-20, 20] } as const
    expect(flux({ ...square, candela: () => 100 })).toBeCloseTo(
      100 * degreesOf(40) * 2 * Math.sin(degreesOf(20)),
      9,
    )
  })

  it('is what small steps over the sphere add up to', () => {
    const open = { ...uneven, horizontal: [90, 120, 200, 270] }
    const lying = {
      ...uneven,
      type: 2,
      vertical: steps(-90, 90, 15),
      horizontal: steps(-120, 150, 30),
    } as const
    for (const given of [uneven, open, lying]) {
      const table = tableOf(given)
      expect(photometryOf(table).flux / overSphere(table)).toBeCloseTo(1, 3)
    }
  })

  it('arrives on the walls of a closed box, whole, from a front of any size', () => {
    const size: Vec3 = [3, 4, 2.5]
    const middle: Vec3 = [1.3, 1.9, 1.2]
    /** Lumens on all six walls from a light of unit reference. */
    const onWalls = (source: AreaSource, fine: number): number => {
      let sum = 0
      for (let axis = 0; axis < 3; axis++)
        for (const side of [0, 1]) {
          const [s, t] = [(axis + 1) % 3, (axis + 2) % 3] as const
          const normal: [number, number, number] = [0, 0, 0]
          normal[axis] = side === 0 ? 1 : -1
          for (let i = 0; i < fine; i++)
            for (let j = 0; j < fine; j++) {
              const at: [number, number, number] = [0, 0, 0]
              at[axis] = side * size[axis]!
              at[s] = ((i + 0.5) * size[s]!) / fine
              at[t] = ((j + 0.5) * size[t]!) / fine
              sum += (response(source, { at, normal, kind: 'flat' }) * size[s]! * size[t]!) / fine ** 2
            }
        }
      return sum
    }
    const halfTurn: PhotometricText = { ...uneven, horizontal: steps(0, 180, 30), opening: [-0.5, -0.5, 0] }
    const narrow: PhotometricText = {
      vertical: steps(0, 90, 2.5),
      horizontal: [0],
      candela: cosine(30),
      opening: [0.05, 0.05, 0],
    }
    const flood: PhotometricText = {
      ...uneven,
      type: 2,
      vertical: steps(-90, 90, 15),
      horizontal: steps(0, 90, 15),
    }
    for (const given of [uneven, halfTurn, narrow, flood]) {
      const table = tableOf(given)
      const { reference, flux, both } = photometryOf(table)
      const { outline, width, height } = table.opening!
      const front = frontAt(outline, width, height, {
        pattern: byTable(table),
        both,
        centre: middle,
        normal: unit([0.3, 1, -0.2]),
      })
      expect((onWalls(front, 40) * reference) / flux).toBeCloseTo(1, 2)
    }
  })
})

describe('as a pattern', () => {
  it('a table of a cosⁿ beam is the built-in beam, from half the front’s size up', () => {
    const random = sequence(11)
    for (const power of [1, 2, 4.8, 30]) {
      const table = tableOf({ vertical: steps(0, 90, 1), horizontal: [0], candela: cosine(power) })
      for (const [outline, width, height] of [
        ['rectangle', 0.6, 0.9],
        ['disc', 0.5, 0.5],
      ] as const) {
        const ours = frontAt(outline, width, height, { pattern: byTable(table) })
        const builtIn = frontAt(outline, width, height, { pattern: cosinePower(power) })
        for (let i = 0; i < 60; i++) {
          const receptor = someReceptor(random, ours, 0.5, 4, i % 2 === 0 ? 'flat' : 'dome')
          const expected = response(builtIn, receptor)
          const ahead = response(builtIn, { at: [0, 0, receptor.at[2]], normal: [0, 0, -1], kind: 'flat' })
          expect(Math.abs(response(ours, receptor) - expected) / ahead).toBeLessThan(0.001)
        }
      }
    }
  })

  it('an uneven one is what its pieces add up to', () => {
    const random = sequence(5)
    for (const given of [
      uneven,
      { ...uneven, horizontal: steps(0, 90, 15), opening: [-0.7, -0.7, 0] as const },
      { ...uneven, candela: (v: number, h: number) => (v < 31 && h % 180 < 91 ? 900 : v < 46 ? 400 : 0) },
    ]) {
      const table = tableOf(given)
      const { reference } = photometryOf(table)
      const { outline, width, height } = table.opening!
      const source = frontAt(outline, width, height, { pattern: byTable(table) })
      for (let i = 0; i < 25; i++) {
        const receptor = someReceptor(random, source, 0.5, 4, i % 2 === 0 ? 'flat' : 'dome')
        const pieces = piecesOf(
          source,
          receptor,
          (along, aside, out) => candelaToward(table, along, aside, out) / reference,
        )
        const ahead = response(source, {
          at: [0, 0, receptor.at[2]],
          normal: [0, 0, -1],
          kind: 'flat',
        })
        expect(Math.abs(response(source, receptor) - pieces) / ahead).toBeLessThan(0.003)
      }
    }
  })

  it('through a grid it is cut as the built-in beam is', () => {
    const grid = { kind: 'egg-crate', tanCutOff: Math.tan(degreesOf(40)) } as const
    const table = tableOf({ vertical: steps(0, 90, 1), horizontal: [0], candela: cosine(3) })
    const ours = frontAt('rectangle', 0.5, 0.5, { pattern: { ...byTable(table), grid } })
    const builtIn = frontAt('rectangle', 0.5, 0.5, { pattern: cosinePower(3, grid) })
    const random = sequence(3)
    for (let i = 0; i < 30; i++) {
      const receptor = someReceptor(random, ours, 1, 4, 'dome', 0.5)
      expect(response(ours, receptor) / addedUp(builtIn, receptor)).toBeCloseTo(1, 2)
    }
  })
})

/** The response that the definition gives, in 200 × 200 pieces of a rectangle or of the square around a disc. */
const piecesOf = (
  { face }: AreaSource,
  receptor: Receptor,
  intensity: (along: number, aside: number, out: number) => number,
): number => {
  const fine = 200
  let [sum, count] = [0, 0]
  for (let i = 0; i < fine; i++)
    for (let j = 0; j < fine; j++) {
      const [u, v] = [(2 * i + 1) / fine - 1, (2 * j + 1) / fine - 1]
      if (face.outline === 'disc' && u * u + v * v > 1) continue
      count++
      const at = add(
        face.centre,
        add(scale(face.across, (u * face.width) / 2), scale(face.up, (v * face.height) / 2)),
      )
      const way = subtract(receptor.at, at)
      const squared = dot(way, way)
      const seen = -dot(way, receptor.normal) / Math.sqrt(squared)
      const weight = receptor.kind === 'flat' ? Math.max(0, seen) : (1 + seen) / 2
      sum += (intensity(dot(way, face.across), dot(way, face.up), dot(way, face.normal)) * weight) / squared
    }
  return sum / count
}

describe('as it stands in a set', () => {
  const oneSided: PhotometricText = {
    vertical: [0, 30, 60, 90],
    horizontal: [0, 90, 180, 270, 360],
    // Ten times as much toward 0 as toward 180, twice as much toward 90 as toward 270.
    candela: (v, h) => (v === 90 ? 0 : v === 0 ? 1000 : [2000, 800, 200, 400, 2000][h / 90]!),
    opening: [0.02, 0.04, 0],
  }
  /** Behind the subject, looking straight at the camera. */
  const place = { at: offsets({ behind: 1, height: 1.5 }), aim: { at: 'point', point: 'camera' } }
  const light = (overrides: object = {}, table = tableOf(oneSided)): Light =>
    makeLight('key', {
      unit: lampOf(table),
      modifier: undefined,
      zoom: undefined,
      ...place,
      ...overrides,
    } as never)
  /** What is given 30° off the axis to a side of the front, against what is given straight ahead, by candela. */
  const toward = (source: AreaSource, across: number, up: number): number => {
    const { face } = source
    const off = add(scale(face.across, across), scale(face.up, up))
    const way = unit(add(scale(face.normal, Math.cos(degreesOf(30))), scale(off, Math.sin(degreesOf(30)))))
    return (
      100 * response(source, { at: add(face.centre, scale(way, 10)), normal: scale(way, -1), kind: 'flat' })
    )
  }

  it('horizontal angle 0 lies to the right of who faces it, 90 above', () => {
    const source = sourceOf(light())
    // Seen from the camera, right is x and above is z.
    expect(source.face.across[0]).toBeCloseTo(1, 2)
    expect(source.face.up[2]).toBeCloseTo(1, 2)
    expect(toward(source, 1, 0)).toBeCloseTo(2, 2)
    expect(toward(source, 0, 1)).toBeCloseTo(0.8, 2)
    expect(toward(source, -1, 0)).toBeCloseTo(0.2, 2)
    expect(toward(source, 0, -1)).toBeCloseTo(0.4, 2)
    expect([source.face.width, source.face.height]).toEqual([0.04, 0.02])
  })

  it('lying it is turned by a quarter, with its front', () => {
    const source = sourceOf(light({ lying: true }))
    expect([source.face.width, source.face.height]).toEqual([0.02, 0.04])
    expect(toward(source, 0, 1)).toBeCloseTo(2, 2)
    expect(toward(source, -1, 0)).toBeCloseTo(0.8, 2)
    expect(toward(source, 0, -1)).toBeCloseTo(0.2, 2)
    expect(toward(source, 1, 0)).toBeCloseTo(0.4, 2)
  })

  it('types B and A: horizontal angles grow toward the light’s own right', () => {
    const given: PhotometricText = {
      type: 2,
      vertical: steps(-90, 90, 30),
      horizontal: steps(-90, 90, 30),
      candela: (v, h) => 1000 + 10 * h + v,
      opening: [0.02, 0.02, 0],
    }
    for (const type of [2, 3] as const) {
      const source = sourceOf(light({}, tableOf({ ...given, type })))
      expect(toward(source, -1, 0)).toBeCloseTo(1.3, 2)
      expect(toward(source, 1, 0)).toBeCloseTo(0.7, 2)
      expect(toward(source, 0, 1)).toBeCloseTo(1.03, 2)
    }
  })

  it('a mirrored table on the other side gives mirrored light', () => {
    const mirrored = tableOf({ ...oneSided, candela: (v, h) => oneSided.candela(v, (540 - h) % 360) })
    for (const [x, y, z] of [
      [0.3, -0.5, 1.6],
      [-1, -2, 0.4],
      [0.8, 0.2, 1.2],
    ] as const) {
      const at = (side: number, table: PhotometricTable): number =>
        response(
          sourceOf(
            light(
              {
                at: offsets({ right: side * 0.8, behind: 1, height: 1.9 }),
                aim: { at: 'point', point: 'subject' },
              },
              table,
            ),
          ),
          { at: [side * x, y, z], normal: [0, 1, 0], kind: 'dome' },
        )
      expect(at(-1, mirrored)).toBeCloseTo(at(1, tableOf(oneSided)), 9)
    }
  })

  it('gives light behind it where its table does, and only there', () => {
    const up = tableOf({
      vertical: steps(0, 180, 30),
      horizontal: [0],
      candela: (v) => (v > 90 ? 300 : v === 90 ? 0 : 600),
      opening: [0.02, 0.02, 0],
    })
    const source = sourceOf(light({}, up))
    expect(source.both).toBe(true)
    const { face } = source
    const at = add(face.centre, scale(face.normal, -2))
    expect(response(source, { at, normal: face.normal, kind: 'flat' })).toBeCloseTo(0.5 / 4, 4)
    expect(sourceOf(light()).both).toBe(false)
    // In proportion down to nothing at 120 still leaves some behind.
    const over = tableOf({ vertical: [0, 90, 120], horizontal: [0], candela: (v) => (v === 120 ? 0 : 50) })
    expect(photometryOf(over).both).toBe(true)
    expect(photometryOf(tableOf(uneven)).both).toBe(true)
  })

  it('without an opening the front is that of a bare lamp; a stated size goes first', () => {
    const point = tableOf({ ...oneSided, opening: [0, 0, 0] })
    expect(sourceOf(light({}, point)).face).toMatchObject({ outline: 'disc', width: 0.18 })
    const round = tableOf({ ...oneSided, opening: [-0.3, -0.3, 0] })
    expect(sourceOf(light({}, round)).face).toMatchObject({ outline: 'disc', width: 0.3, height: 0.3 })
    const stated = { ...lampOf(round), size: { width: 0.6, height: 0.2 } } as never as Light['unit']
    expect(sourceOf(light({ unit: stated })).face).toMatchObject({ outline: 'rectangle', width: 0.6 })
  })

  it('a lamp that burns tilted gives what the file says of that', () => {
    // Straight down, level, and half way: the lamp stands upright in the light that points down.
    const tilt = (lamp: 1 | 2 | 3) => `INCLUDE\n${lamp}\n3\n0 45 90\n1 0.9 0.7`
    const given = (lamp: 1 | 2 | 3, at: object, lying = false): number => {
      const table = tableOf({ ...oneSided, candela: (v) => (v === 90 ? 0 : 1000), tilt: tilt(lamp) })
      return 4 * onAxisResponse(sourceOf(light({ ...at, lying }, table)), metres(2), 'flat')
    }
    const level = { at: tape(0, 1, { upDegrees: 0 }), aim: { at: 'point', point: 'subject' } }
    const down = { at: offsets({ height: 3 }), aim: { at: 'point', point: 'floor' } }
    const half = { at: tape(0, 1.5, { upDegrees: 45 }), aim: { at: 'point', point: 'subject' } }
    expect(given(1, level)).toBeCloseTo(0.7, 2)
    expect(given(1, half)).toBeCloseTo(0.9, 2)
    expect(given(1, down)).toBeCloseTo(1, 2)
    // Along the front's width it stays level however the light is tilted; along its height it tilts with it.
    expect(given(2, half)).toBeCloseTo(1, 2)
    expect(given(3, half)).toBeCloseTo(0.9, 2)
    expect(given(2, half, true)).toBeCloseTo(0.9, 2)
    expect(given(3, half, true)).toBeCloseTo(1, 2)
  })
})

describe('strength', () => {
  const panel = tableOf({
    vertical: steps(0, 90, 1),
    horizontal: [0],
    candela: cosine(1, 3000),
    opening: [0.3, 0.3, 0],
  })
  const plan = makePlan({ camera: { shutter: 1 / 60 } })
  const lit = (overrides: object = {}) =>
    priorStrength(
      makeLight('key', {
        unit: lampOf(panel),
        modifier: undefined,
        zoom: undefined,
        power: 1,
        ...overrides,
      } as never),
      plan,
    )!

  it('is the candela on the axis over the time that the shutter is open, by power and gel', () => {
    expect(lit()).toMatchObject({ candelaSeconds: expect.closeTo(50, 9), u: 0.2, from: 'stated' })
    expect(lit({ power: 0.25 }).candelaSeconds).toBeCloseTo(12.5, 9)
    const gel = { shift: undefined, colour: undefined, loss: 1 }
    expect(lit({ gel }).candelaSeconds).toBeCloseTo(25, 9)
  })

  it('through a modifier it is what the whole flux gives from that front', () => {
    // Lambertian: π I of flux; half of it leaves the box, which is Lambertian again.
    const box = softbox(0.6, 0.9, { transmits: 0.5 })
    expect(lit({ modifier: box }).candelaSeconds).toBeCloseTo(25, 2)
    expect(lit({ modifier: box }).u).toBeGreaterThan(0.4)
    const source = sourceOf(
      makeLight('key', { unit: lampOf(panel), modifier: box, zoom: undefined } as never),
    )
    expect(source.pattern).toEqual({ cosine: 1, head: undefined, grid: undefined })
  })

  it('where the axis is dark the most counts', () => {
    const washer = tableOf({
      vertical: [0, 20, 50, 90],
      horizontal: [0],
      candela: (v) => [0, 100, 900, 0][[0, 20, 50, 90].indexOf(v)]!,
    })
    expect(photometryOf(washer).reference).toBe(900)
    expect(
      priorStrength(makeLight('key', { unit: lampOf(washer), modifier: undefined, power: 1 } as never), plan),
    ).toMatchObject({ candelaSeconds: expect.closeTo(15, 9) })
  })
})

describe('any table', () => {
  const text = fc
    .record({
      type: fc.constantFrom(1, 2, 3) as fc.Arbitrary<1 | 2 | 3>,
      inner: fc.uniqueArray(fc.integer({ min: 1, max: 89 }), { maxLength: 12 }),
      round: fc.constantFrom([0], [0, 90], [0, 1, 90], [0, 100, 180], [0, 120, 240], [90, 91, 270]),
      whole: fc.boolean(),
      width: fc.constantFrom(-2, -0.01, 0, 0.002, 0.3, 3),
      length: fc.constantFrom(-2, 0, 0.002, 1, 3),
      seed: fc.nat(),
      dark: fc.double({ min: 0, max: 1, noNaN: true }),
    })
    .map(({ type, inner, round, whole, width, length, seed, dark }): PhotometricText => {
      const random = sequence(seed)
      const rising = [...inner].sort((a, b) => a - b)
      return {
        type,
        vertical: type === 1 && whole ? [0, ...rising, 90, 91, 180] : [0, ...rising, 90],
        horizontal: type === 1 ? round : whole ? [-180, -1, 0, 180] : [0, 45, 90],
        candela: () => (random() < dark ? 0 : 1e6 * random() ** 8),
        opening: [width, length, 0],
      }
    })

  it('gives a light that is none below nothing and none without end, anywhere, in time', () => {
    fc.assert(
      fc.property(text, fc.nat(), (given, seed) => {
        const reading = readPhotometric(photometricText(given))
        if (!reading.ok) {
          expect(reading.says).toMatch(/no light in any direction/)
          return
        }
        const { table } = reading
        const { reference, flux, both, steepness } = photometryOf(table)
        for (const one of [reference, flux]) expect(one).toBeGreaterThan(0)
        expect(Number.isFinite(reference + flux + steepness)).toBe(true)
        const { outline, width, height } = table.opening ?? { outline: 'disc', width: 0.18, height: 0.18 }
        const random = sequence(seed)
        const front = frontAt(outline, width, height, {
          pattern: byTable(table, random() > 0.5),
          both,
          normal: unit([random() - 0.5, random() - 0.5, random()]),
        })
        for (let i = 0; i < 6; i++) {
          const far = 10 ** (3 * random() - 2)
          const off: Vec3 = [random() - 0.5, random() - 0.5, i === 0 ? 0 : random() - 0.5]
          const got = response(front, {
            at: add(front.face.centre, scale(off, far)),
            normal: unit(cross(off, [0.3, 0.2, random()]), [0, 0, 1]),
            kind: i % 2 === 0 ? 'flat' : 'dome',
          })
          expect(got).toBeGreaterThanOrEqual(0)
          expect(Number.isFinite(got)).toBe(true)
        }
      }),
      { numRuns: 150, seed: 9 },
    )
  })
})
