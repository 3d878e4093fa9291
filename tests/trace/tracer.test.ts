/**
 * The tracer judged: against closed forms of form factors and of closed rooms, against itself where physics says that
 * two ways must agree, and its bodies against points tried one by one. Tolerances are four standard errors or so.
 */
import { describe, expect, it } from 'vitest'
import type { Capsule, Face } from '../../src/scene/scene.js'
import { add, cross, dot, scale, subtract, unit, type Vec3 } from '../../src/scene/vector.js'
import { Bodies, type Body, black, type Matte } from './bodies.js'
import { Chance } from './chance.js'
import { beam, cosine, type Lamp, lambertian, type Pattern, zoomHead } from './lamps.js'
import { type Place, Tracer } from './trace.js'

const face = (
  outline: Face['outline'],
  centre: Vec3,
  normal: Vec3,
  width: number,
  height: number,
  turn = 0,
): Face => {
  const side: Vec3 = Math.abs(normal[2]) > 0.9 ? [0, 1, 0] : [0, 0, 1]
  const level = unit(cross(side, normal))
  const upright = cross(normal, level)
  const across = add(scale(level, Math.cos(turn)), scale(upright, Math.sin(turn)))
  const up = cross(normal, across)
  return { outline, centre, normal, across, up, width, height } as unknown as Face
}

const matte = (reflectance: number, transmits = 0): Matte => ({
  front: reflectance,
  back: reflectance,
  transmits,
})
const board = (name: string, of: Face, material: Matte = black): Body => ({
  name,
  shape: { shape: 'rectangle', face: of },
  matte: material,
})

/** Six walls that look inward, about the middle of a floor at height 0. */
const walls = (x: number, y: number, z: number): readonly Face[] => [
  face('rectangle', [0, 0, 0], [0, 0, 1], x, y),
  face('rectangle', [0, 0, z], [0, 0, -1], x, y),
  face('rectangle', [-x / 2, 0, z / 2], [1, 0, 0], y, z),
  face('rectangle', [x / 2, 0, z / 2], [-1, 0, 0], y, z),
  face('rectangle', [0, -y / 2, z / 2], [0, 1, 0], x, z),
  face('rectangle', [0, y / 2, z / 2], [0, -1, 0], x, z),
]
const room = (x: number, y: number, z: number, reflectance: number): readonly Body[] =>
  walls(x, y, z).map((one, i) => board(`wall ${i}`, one, matte(reflectance)))

const lamp = (of: Face, pattern: Pattern = lambertian, name = 'lamp'): Lamp => ({ name, face: of, pattern })
const area = ({ outline, width, height }: Face): number =>
  width * height * (outline === 'rectangle' ? 1 : Math.PI / 4)

const effort = { paths: 512, fewest: 16, most: 64, error: 0.003 }
const traced = (bodies: readonly Body[], lamps: readonly Lamp[], place: Place, seed = 1) =>
  new Tracer(new Bodies(bodies), lamps, seed).at(
    place,
    lamps.map(() => 1),
    effort,
  )
/** Share of all that leaves a place as cosines which meets a front: its exposure from it, of radiance 1, over π. */
const formFactor = (of: Face, place: Place): number =>
  (traced([], [lamp(of)], place).direct[0]! * area(of)) / Math.PI

const up: Vec3 = [0, 0, 1]
const down: Vec3 = [0, 0, -1]
const ground = (x = 0, y = 0): Place => ({ at: [x, y, 0], normal: up, kind: 'flat' })

describe('fronts without anything in the way', () => {
  // Lienhard's and Howell's catalogues; the same closed forms and numbers stand in tests/published.
  it.each([
    ['on its axis', ground(), 0.6, 1, 0.0825688073 / 1, 'disc'],
    ['one radius off its axis', ground(1), 2, 1, 0.276393202, 'disc'],
    ['within its radius', ground(0.4), 1.2, 1.5, 0.124279887, 'disc'],
    ['beyond its radius', ground(1.2), 1.2, 1.5, 0.0601467432, 'disc'],
  ] as const)('a disc %s', (_, place, diameter, high, wanted, outline) => {
    expect(formFactor(face(outline, [0, 0, high], down, diameter, diameter), place) / wanted).toBeCloseTo(
      1,
      2,
    )
  })

  it.each([
    ['facing its middle', ground(), 1, 1, 1, 0.23945647],
    ['under its corner', ground(0.5, 0.5), 1, 1, 1, 0.138531606],
    ['beside it', { at: [0.5, 0.5, 0], normal: [-1, 0, 0], kind: 'flat' } as Place, 1, 1, 1, 0.0557341],
  ] as const)('a rectangle %s', (_, place, width, height, high, wanted) => {
    expect(formFactor(face('rectangle', [0, 0, high], down, width, height), place) / wanted).toBeCloseTo(1, 2)
  })

  it('from far off any pattern is the intensity over the square of the distance', () => {
    for (const [pattern, towards] of [
      [lambertian, 0.5],
      [cosine(3), 0.125],
      [beam(Math.PI / 3), 0.5 ** (Math.log(0.5) / Math.log(Math.cos(Math.PI / 6)))],
    ] as const) {
      const of = face('octagon', [0, 0, 0], [0, 0.5, Math.sqrt(0.75)], 0.5, 0.5)
      const at: Vec3 = [0, 50, 0]
      const got = traced([], [lamp(of, pattern)], { at, normal: [0, -1, 0], kind: 'flat' }).direct[0]!
      expect((got * 2500) / towards).toBeCloseTo(1, 2)
    }
  })

  it('a flash head is half a stop down at the edges of its frame and one at the corner', () => {
    const head = zoomHead(35)
    const toward = (x: number, y: number) => {
      const size = Math.hypot(x, y, 35)
      return Math.log2(head(x / size, y / size, 35 / size))
    }
    expect([toward(0, 0), toward(18, 0), toward(0, -12), toward(18, 12)].map((x) => x.toFixed(9))).toEqual([
      '0.000000000',
      '-0.500000000',
      '-0.500000000',
      '-1.000000000',
    ])
  })

  it('a dome takes half from the side, all from ahead, nothing from behind', () => {
    const of = face('disc', [0, 0, 20], down, 0.2, 0.2)
    for (const [normal, share] of [
      [up, 1],
      [[1, 0, 0], 0.5],
      [down, 0],
    ] as const)
      expect(traced([], [lamp(of)], { at: [0, 0, 0], normal, kind: 'dome' }).direct[0]! * 400).toBeCloseTo(
        share,
        3,
      )
  })
})

describe('light that comes back', () => {
  it('from a square lit evenly from far away: reflectance times form factor', () => {
    // The lamp 61 m from it gives the whole square 1/61² within 0.1 %; facing its middle F is 0.23945647.
    const square = board('square', face('rectangle', [0, 0, 1], down, 1, 1), matte(0.7))
    const far = lamp(face('disc', [0, 0, -60], up, 0.1, 0.1))
    const got = traced([square], [far], { at: [0, 0, 0], normal: up, kind: 'flat' })
    expect((got.indirect[0]! * 61 ** 2) / (0.7 * 0.23945647)).toBeCloseTo(1, 2)
    expect(got.direct[0]).toBe(0)
  })

  it('through a scrim, and none of it straight', () => {
    const scrim = board('scrim', face('rectangle', [0, 0, 1], down, 1, 1), matte(0.3, 0.45))
    const far = lamp(face('disc', [0, 0, 60], down, 0.1, 0.1))
    const got = traced([scrim], [far], ground())
    expect((got.indirect[0]! * 59 ** 2) / (0.45 * 0.23945647)).toBeCloseTo(1, 2)
    expect(got.direct[0]).toBe(0)
  })

  it('between two scrims and back: the series of all crossings', () => {
    // Two sheets, wide against their gap, the first lit evenly from outside: as a stack of plates of τ and ρ.
    const [tau, rho] = [0.5, 0.4]
    const sheet = (z: number) =>
      board(`sheet ${z}`, face('rectangle', [0, 0, z], down, 200, 200), matte(rho, tau))
    const sun: Lamp = { name: 'sun', from: up }
    const got = traced([sheet(1), sheet(1.5)], [sun], ground())
    expect(got.indirect[0]! / (tau ** 2 / (1 - rho ** 2))).toBeCloseTo(1, 1)
  })

  it.each([0.3, 0.8])('the furnace: glowing walls of reflectance %d', (rho) => {
    const shell = walls(3, 4, 2.4)
    const lamps = shell.map((one, i) => lamp(one, lambertian, `glow ${i}`))
    const tracer = new Tracer(new Bodies(room(3, 4, 2.4, rho)), lamps, 3)
    const glow = shell.map(area)
    for (const [kind, whole] of [
      ['flat', Math.PI],
      ['dome', 2 * Math.PI],
    ] as const) {
      const normal = unit([0.3, -0.8, 0.4])
      const got = tracer.at({ at: [0.4, -0.7, 1.1], normal, kind }, glow, effort)
      expect((got.total * (1 - rho)) / whole).toBeCloseTo(1, 1.7)
    }
  })

  it.each([0.5, 0.8])('the integrating room: all that falls on walls of reflectance %d', (rho) => {
    // In a closed room of one reflectance what falls on the walls in all is the lamp's flux over 1 − ρ, wherever it is.
    const of = face('rectangle', [0.3, -0.4, 1.4], unit([0.2, 1, -0.3]), 0.4, 0.3)
    const tracer = new Tracer(new Bodies(room(3, 4, 2.4, rho)), [lamp(of)], 5)
    let [all, variance] = [0, 0]
    for (const wall of walls(3, 4, 2.4)) {
      const got = tracer.meanOver({ ...wall, outline: 'rectangle' }, 4000)
      all += got.mean[0]! * area(wall)
      variance += (got.error[0]! * area(wall)) ** 2
    }
    const wanted = Math.PI / (1 - rho)
    expect(Math.sqrt(variance) / wanted).toBeLessThan(0.015)
    expect(Math.abs(all - wanted)).toBeLessThan(4 * Math.sqrt(variance))
  })
})

describe('what must agree', () => {
  const [low, high] = [
    face('rectangle', [0, 0, 0], up, 1, 1.5),
    face('rectangle', [0, 0, 0.5], down, 1, 1.5),
  ] as const

  it('equal parallel rectangles', () => {
    // View factor library, finite parallel plates (cites Siegel and Howell p. 843): 1 × 1.5 at 0.5 gives 0.4756.
    const got = new Tracer(new Bodies([]), [lamp(low)], 2).meanOver({ ...high, outline: 'rectangle' }, 40_000)
    expect((got.mean[0]! * area(high)) / Math.PI).toBeCloseTo(0.4756, 2)
  })

  it('coaxial discs', () => {
    // View factor library, disk to disk (cites Siegel and Howell): radii 0.1 and 0.2 at 0.5 give 0.1339.
    const [small, large] = [
      face('disc', [0, 0, 0], up, 0.2, 0.2),
      face('disc', [0, 0, 0.5], down, 0.4, 0.4),
    ] as const
    const got = new Tracer(new Bodies([]), [lamp(small)], 2).meanOver({ ...large, outline: 'disc' }, 20_000)
    expect((got.mean[0]! * area(large)) / Math.PI).toBeCloseTo(0.1339, 3)
  })

  it('reciprocity, with bodies in the way and walls that give back', () => {
    const [a, b] = [
      face('rectangle', [-1, -1, 1], unit([1, 0.6, 0]), 0.5, 0.8),
      face('rectangle', [0.9, 1.2, 1.5], unit([-0.8, -1, -0.2]), 1.1, 0.4),
    ]
    const person: Capsule = {
      from: [0, 0, 0.3],
      to: [0, 0, 1.5],
      across: 0.25,
      along: 0.15,
      cap: 0.2,
      acrossDirection: [1, 0, 0],
    } as unknown as Capsule
    const bodies = [
      ...room(3, 4, 2.4, 0.6),
      { name: 'person', shape: { shape: 'capsule', capsule: person }, matte: black },
      board('flag', face('rectangle', [0.3, 0.5, 1.2], unit([1, 1, 0]), 0.5, 0.9), matte(0.1)),
    ] as const
    const to = (from: Face, onto: Face, seed: number) => {
      const got = new Tracer(new Bodies(bodies), [lamp(from)], seed).meanOver(
        { ...onto, outline: 'rectangle' },
        30_000,
      )
      // Per unit of radiance, which is the intensity over the area.
      return [got.mean[0]! * area(from) * area(onto), got.error[0]! * area(from) * area(onto)] as const
    }
    const [one, oneError] = to(a!, b!, 7)
    const [two, twoError] = to(b!, a!, 8)
    expect(Math.hypot(oneError, twoError) / one).toBeLessThan(0.02)
    expect(Math.abs(one - two)).toBeLessThan(4 * Math.hypot(oneError, twoError))
  })

  it('lamps together are the sum of each alone', () => {
    const lamps = [
      lamp(face('disc', [-1, -1, 2], unit([1, 1, -0.5]), 0.8, 0.8), lambertian, 'left'),
      lamp(face('rectangle', [1, 0.5, 2], unit([-1, 0.4, -0.5]), 0.3, 0.9), cosine(2), 'right'),
    ]
    const bodies = room(3, 4, 2.4, 0.7)
    const place: Place = { at: [0, 0, 1.2], normal: unit([0, -1, 0.2]), kind: 'dome' }
    const both = traced(bodies, lamps, place, 11)
    const each = lamps.map((one, i) => traced(bodies, [one], place, 20 + i))
    expect(Math.log2(both.total / (each[0]!.total + each[1]!.total))).toBeCloseTo(0, 1.5)
  })
})

describe('shadows', () => {
  it('an edge between a square lamp and the floor: the penumbra of similar triangles', () => {
    // Lamp 0.2 m wide at 5 m, edge of a wide board at 2 m over x = 0: from -0.0667 to 0.0667 m, and straight between.
    const of = face('rectangle', [0, 0, 5], down, 0.2, 0.2)
    const edge = board('edge', face('rectangle', [-2, 0, 2], down, 4, 4))
    const half = 0.1 / (5 / 2 - 1)
    for (const share of [-1.3, -0.9, -0.5, 0, 0.4, 0.8, 1.3]) {
      const got = traced([edge], [lamp(of)], ground(share * half))
      const seen = Math.min(1, Math.max(0, (1 + share) / 2))
      expect(Math.abs(got.direct[0]! / got.open[0]! - seen)).toBeLessThan(0.01)
    }
  })

  it('a round body before a disc: what it covers of it', () => {
    // A ball of 0.1 m at 1 m hides a cone of asin(0.1); a disc of radius 0.5 at 4 m, on the same axis, fills more.
    const ball = {
      from: [0, 0, 1],
      to: [0, 0, 1],
      across: 0.1,
      along: 0.1,
      cap: 0.1,
      acrossDirection: [1, 0, 0],
    }
    const bodies: readonly Body[] = [
      { name: 'ball', shape: { shape: 'capsule', capsule: ball as unknown as Capsule }, matte: black },
    ]
    const got = traced(bodies, [lamp(face('disc', [0, 0, 4], down, 1, 1))], ground())
    const [hidden, whole] = [0.1 ** 2, 0.5 ** 2 / (0.5 ** 2 + 4 ** 2)]
    expect(got.direct[0]! / got.open[0]!).toBeCloseTo(1 - hidden / whole, 2)
  })
})

describe('how sure it is', () => {
  it('is what many seeds scatter by', () => {
    const of = lamp(face('disc', [-1, -1, 2], unit([1, 1, -0.5]), 0.8, 0.8))
    const bodies = new Bodies(room(3, 4, 2.4, 0.7))
    const place: Place = { at: [0, 0, 1.2], normal: [1, 0, 0], kind: 'flat' }
    const runs = Array.from({ length: 60 }, (_, seed) =>
      new Tracer(bodies, [of], 100 + seed).at(place, [1], { paths: 32, fewest: 16, most: 16, error: 0 }),
    )
    const logs = runs.map(({ total }) => Math.log2(total))
    const mean = logs.reduce((sum, x) => sum + x, 0) / logs.length
    const scatter = Math.sqrt(logs.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (logs.length - 1))
    const told = runs.reduce((sum, { error }) => sum + error, 0) / runs.length
    expect(told / scatter).toBeGreaterThan(0.7)
    expect(told / scatter).toBeLessThan(1.4)
  })
})

describe('bodies', () => {
  const capsule = {
    from: [0.1, -0.2, 0.3],
    to: [0.3, 0.1, 1.1],
    across: 0.3,
    along: 0.16,
    cap: 0.22,
    acrossDirection: unit(cross([0.2, 0.3, 0.8], [0, 1, 0])),
  } as unknown as Capsule
  const box: readonly Vec3[] = [0, 1, 2, 3, 4, 5, 6, 7].map((i) => [
    i & 1 ? 0.4 : -0.3,
    i & 2 ? 0.5 : -0.2,
    i & 4 ? 1 : 0.2,
  ])

  /** Within 1 of the segment once lengths are divided by the semi-axes: as the scene defines a capsule. */
  const inCapsule = (p: Vec3): boolean => {
    const span = subtract(capsule.to, capsule.from)
    const axis = unit(span)
    const along = cross(axis, capsule.acrossDirection)
    let nearest = Number.POSITIVE_INFINITY
    for (let i = 0; i <= 120; i++) {
      const d = subtract(p, add(capsule.from, scale(span, i / 120)))
      nearest = Math.min(
        nearest,
        Math.hypot(
          dot(d, capsule.acrossDirection) / capsule.across,
          dot(d, along) / capsule.along,
          dot(d, axis) / capsule.cap,
        ),
      )
    }
    return nearest <= 1
  }
  const inBox = ([x, y, z]: Vec3): boolean => x > -0.3 && x < 0.4 && y > -0.2 && y < 0.5 && z > 0.2 && z < 1

  it.each([
    ['a capsule', { shape: 'capsule', capsule } as const, inCapsule],
    ['a hull', { shape: 'hull', corners: [...box, [0.1, 0.1, 0.5] as Vec3] } as const, inBox],
  ])('%s is met where points of the ray first lie in it', (_, shape, inside) => {
    const bodies = new Bodies([{ name: 'one', shape, matte: black }])
    const chance = new Chance(4)
    let hits = 0
    for (let ray = 0; ray < 120; ray++) {
      const aim: Vec3 = [chance.next() - 0.4, chance.next() - 0.5, 1.6 * chance.next() - 0.1]
      const from: Vec3 = [4 * chance.next() - 2, chance.next() < 0.5 ? -2 : 2, 3 * chance.next() - 1]
      const way = unit(subtract(aim, from))
      const step = 0.008
      let first = Number.POSITIVE_INFINITY
      for (let t = 1; t < 5 && first > 5; t += step) if (inside(add(from, scale(way, t)))) first = t
      const met = bodies.nearest(...from, ...way, -1)
      if (met >= 0 && first < 5) {
        hits++
        expect(first - bodies.distance).toBeGreaterThan(-0.002)
        // A ray that grazes a hull's edge or a capsule's side may pass through less than a step of it.
        expect(first - bodies.distance).toBeLessThan(step + 0.002)
      } else if (met >= 0 || first < 5) {
        const [x, y, z] = add(from, scale(way, met >= 0 ? bodies.distance + 0.008 : first))
        expect(inside([x, y, z]) && met < 0).toBe(false)
      }
    }
    expect(hits).toBeGreaterThan(40)
  })
})
