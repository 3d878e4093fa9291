/**
 * Bounced light with nothing in the way. Closed forms: configuration factors of standard handbooks (from memory, held
 * here by adding up small pieces), the integrating sphere's series, energy; and light traced by chance.
 */
import { describe, expect, it } from 'vitest'
import { Pair } from '../../../src/light/bounce/exchange.js'
import { firstLight } from '../../../src/light/bounce/first-light.js'
import { gatherFrom } from '../../../src/light/bounce/gather.js'
import { layOut } from '../../../src/light/bounce/layout.js'
import { type Mesh, meshOf } from '../../../src/light/bounce/mesh.js'
import { radiosity } from '../../../src/light/bounce/radiosity.js'
import { carrierOf, transferOf } from '../../../src/light/bounce/transfer.js'
import type { Receptor } from '../../../src/light/receptor.js'
import type { Source } from '../../../src/light/source.js'
import { outlookFrom } from '../../../src/light/visibility/outlook.js'
import type { Vec3 } from '../../../src/scene/vector.js'
import { frontAt } from '../fronts.js'
import { alike, box, matte, rectangle, sequence } from './rooms.js'
import { between } from './sets.js'

const gather = (mesh: Mesh, receptor: Receptor) => gatherFrom(mesh, outlookFrom(receptor, []))
const times = (a: Float64Array, b: Float64Array): number => a.reduce((sum, one, i) => sum + one * b[i]!, 0)
const total = (a: Float64Array): number => a.reduce((sum, one) => sum + one, 0)
const solved = (mesh: Mesh, source: Source) => {
  const first = firstLight(mesh, source, [])
  return { first, out: radiosity(mesh, transferOf(mesh, []), first) }
}
const flux = (mesh: Mesh, by: Float64Array): number =>
  by.reduce((sum, one, side) => sum + one * mesh.patches[side >> 1]!.area, 0)

describe('form factors', () => {
  it('of two equal squares: facing at their own width 0.1998, with a common edge 0.2000', () => {
    const squares = [
      rectangle('a', [0, 0, 0], [0, 0, 1], [1, 0, 0], 1, 1),
      rectangle('b', [0, 0, 1], [0, 0, -1], [1, 0, 0], 1, 1),
      rectangle('c', [0.5, 0, 0.5], [-1, 0, 0], [0, 1, 0], 1, 1),
    ]
    const facing = layOut(squares.map((surface) => ({ surface, face: surface.face, area: 1 })))
    const pair = new Pair(facing)
    expect(pair.take(0, 1, 1, 1)).toBe(true)
    expect(pair.exchange()).toBeCloseTo(0.19982, 3)
    expect(pair.take(0, 1, 2, 1)).toBe(true)
    expect(pair.exchange()).toBeCloseTo(0.20004, 3)
  })

  it('of the same squares, by adding up small pieces of both: cos cos / (pi r^2)', () => {
    const steps = 24
    const middles = Array.from({ length: steps }, (_, i) => (i + 0.5) / steps)
    let [facing, edge] = [0, 0]
    for (const x of middles)
      for (const y of middles)
        for (const u of middles)
          for (const v of middles) {
            facing += 1 / (Math.PI * ((x - u) ** 2 + (y - v) ** 2 + 1) ** 2)
            // From (x, y) on the floor, x from the common edge, to (u, v) on the wall, v above it.
            edge += (x * v) / (Math.PI * (x * x + (y - u) ** 2 + v * v) ** 2)
          }
    expect(facing / steps ** 4).toBeCloseTo(0.19982, 3)
    // Midpoints err where both touch the edge: halving the steps halves that, so two finenesses tell the limit.
    const half = steps / 2
    const coarse = Array.from({ length: half }, (_, i) => (i + 0.5) / half)
    let rough = 0
    for (const x of coarse)
      for (const y of coarse)
        for (const u of coarse)
          for (const v of coarse) rough += (x * v) / (Math.PI * (x * x + (y - u) ** 2 + v * v) ** 2)
    const [fine, less] = [edge / steps ** 4, rough / half ** 4]
    expect(2 * fine - less).toBeCloseTo(0.20004, 3)
  })

  it('are reciprocal and lose nothing in a closed box', () => {
    const mesh = meshOf(box(4, 5, 2.7, alike(0.5)), [[1, 2, 1.6]])
    expect(mesh.closed).toBe(true)
    const transfer = transferOf(mesh, [])
    const factors = between(mesh, transfer)
    const all = new Float64Array(2 * mesh.patches.length)
    carrierOf(mesh, transfer).carry(new Float64Array(all.length).fill(1), all)
    const { area, count } = mesh.layout
    for (let i = 0; i < count; i++) {
      expect(all[2 * i]).toBeCloseTo(1, 2)
      // Taken one by one, no side counts less than nothing.
      expect(total(Float64Array.from(factors[2 * i]!))).toBeLessThan(1.02)
      for (let j = 0; j < i; j++)
        expect(factors[2 * i]![2 * j]! * area[i]!).toBeCloseTo(factors[2 * j]![2 * i]! * area[j]!, 9)
    }
  })
})

describe('a closed room', () => {
  it('is a furnace: flat reads its exitance, a dome twice that, anywhere and turned anyhow', () => {
    const mesh = meshOf(box(4, 5, 2.7, alike(0.5)), [[1, 2, 1.6]])
    const random = sequence(3)
    for (let k = 0; k < 60; k++) {
      const at: Vec3 = [0.05 + 3.9 * random(), 0.05 + 4.9 * random(), 0.05 + 2.6 * random()]
      const z = 2 * random() - 1
      const turn = 2 * Math.PI * random()
      const r = Math.sqrt(1 - z * z)
      const normal: Vec3 = [r * Math.cos(turn), r * Math.sin(turn), z]
      expect(total(gather(mesh, { at, normal, kind: 'flat' }))).toBeCloseTo(1, 6)
      expect(total(gather(mesh, { at, normal, kind: 'dome' }))).toBeCloseTo(2, 6)
    }
  })

  // Reference values room.mult: ρ/(1 − ρ), exact for the sum of flux where all reflect alike.
  for (const rho of [0.05, 0.3, 0.5, 0.8, 0.9, 0.98])
    it(`of reflectance ${rho} gives ρ/(1 − ρ) of the first flux again`, () => {
      const lamp = frontAt('disc', 0.3, 0.3, { centre: [1, 2, 1.6], normal: [0.3, 1, -0.2] })
      const mesh = meshOf(box(4, 5, 2.7, alike(rho)), [[1, 2, 1.6]])
      const { first, out } = solved(mesh, lamp)
      expect(flux(mesh, first)).toBeGreaterThan(0.98 * Math.PI)
      expect(flux(mesh, first)).toBeLessThan(1.02 * Math.PI)
      const again = flux(mesh, out) / flux(mesh, first) / (rho / (1 - rho))
      // What each reflection loses by rounding counts the more, the more of them there are.
      expect(Math.abs(again - 1)).toBeLessThan(2e-4 / (1 - rho))
    })
})

describe('light traced by chance', () => {
  // Independent: photons are followed from the lamp, and what each gives off at a hit is weighed at the receptor.
  const rho = [0.8, 0.3, 0.6, 0.7, 0.4, 0.85]
  const size = [3, 4, 2.4] as const
  const traced = (
    lamp: Vec3,
    places: readonly { at: Vec3; normal: Vec3; dome: boolean }[],
    photons: number,
  ) => {
    const random = sequence(11)
    const sums = places.map(() => 0)
    const scatter = (n: Vec3): Vec3 => {
      // A point on the unit sphere about the tip of the normal: cosine-weighted.
      const z = 2 * random() - 1
      const turn = 2 * Math.PI * random()
      const r = Math.sqrt(1 - z * z)
      const d: Vec3 = [n[0] + r * Math.cos(turn), n[1] + r * Math.sin(turn), n[2] + z]
      const l = Math.hypot(...d)
      return [d[0] / l, d[1] / l, d[2] / l]
    }
    for (let k = 0; k < photons; k++) {
      let at = lamp
      let d = scatter([0, 1, 0])
      let power = Math.PI / photons
      for (let hop = 0; hop < 30; hop++) {
        let far = Infinity
        let wall = 0
        for (const axis of [0, 1, 2] as const) {
          const t = ((d[axis] > 0 ? size[axis] : 0) - at[axis]) / d[axis]
          if (d[axis] !== 0 && t < far) {
            far = t
            wall = 2 * axis + (d[axis] > 0 ? 1 : 0)
          }
        }
        const n: [number, number, number] = [0, 0, 0]
        n[wall >> 1] = (wall & 1) === 1 ? -1 : 1
        const hit: [number, number, number] = [at[0] + far * d[0], at[1] + far * d[1], at[2] + far * d[2]]
        hit[wall >> 1] = (wall & 1) === 1 ? size[(wall >> 1) as 0 | 1 | 2] : 0
        power *= rho[wall]!
        places.forEach((place, i) => {
          const w = [hit[0] - place.at[0], hit[1] - place.at[1], hit[2] - place.at[2]] as const
          const s = w[0] ** 2 + w[1] ** 2 + w[2] ** 2
          const l = Math.sqrt(s)
          const out = -(w[0] * n[0] + w[1] * n[1] + w[2] * n[2]) / l
          const seen = (w[0] * place.normal[0] + w[1] * place.normal[1] + w[2] * place.normal[2]) / l
          sums[i]! += ((place.dome ? (1 + seen) / 2 : Math.max(0, seen)) * out * power) / (Math.PI * s)
        })
        at = hit
        d = scatter(n)
      }
    }
    return sums
  }

  for (const [what, lamp] of [
    ['in the room', [1, 1, 1.6]],
    ['0.3 m from a wall', [1.5, 3.7, 1.2]],
  ] as const)
    it(`a lamp ${what}: within 0.05 stop`, () => {
      const places = [
        { at: [1.5, 2, 1.5], normal: [0, -1, 0], dome: false },
        { at: [1.5, 2, 1.5], normal: [0, -1, 0], dome: true },
        { at: [2, 1.5, 1], normal: [0.6, 0, 0.8], dome: false },
        { at: [0.8, 2.6, 1.1], normal: [-1, 0, 0], dome: true },
      ] as const
      const source = frontAt('disc', 0.02, 0.02, { centre: lamp, normal: [0, 1, 0] })
      const mesh = meshOf(box(...size, rho), [lamp, [1.5, 2, 1.5]])
      const { out } = solved(mesh, source)
      const found = traced(lamp, places, 150_000)
      places.forEach(({ at, normal, dome }, i) => {
        const mine = times(gather(mesh, { at, normal, kind: dome ? 'dome' : 'flat' }), out)
        expect(Math.abs(Math.log2(mine / found[i]!))).toBeLessThan(0.05)
      })
    })
})

it('lets light through a scrim to its other side', () => {
  const scrim = rectangle('scrim', [0, 0, 0], [0, 0, 1], [1, 0, 0], 1, 1, 0.3, {
    path: 'panels',
    back: matte(0.2),
    transmits: 0.5,
  })
  const mesh = meshOf([scrim], [])
  const first = new Float64Array(2 * mesh.patches.length)
  for (let side = 0; side < first.length; side += 2) first[side] = 1
  const out = radiosity(mesh, transferOf(mesh, []), first)
  expect(out[0]).toBeCloseTo(0.3, 9)
  expect(out[1]).toBeCloseTo(0.5, 9)
})

it('gives a number for what is degenerate', () => {
  const surfaces = [
    ...box(3, 4, 2.4, alike(0.7)),
    rectangle('nothing', [1, 1, 1], [0, 0, 1], [1, 0, 0], 0, 1),
    rectangle('panel', [1.5, 2, 1.2], [0, 1, 0], [-1, 0, 0], 1, 2.4, 0.5, {
      path: 'panels',
      back: matte(0.5),
    }),
  ]
  const mesh = meshOf(surfaces, [
    [1.5, 2, 1.2],
    [0, 0, 0],
  ])
  const lamp = frontAt('disc', 0.3, 0.3, { centre: [1.5, 2, 1.2], normal: [0, 1, 0] })
  const { out } = solved(mesh, lamp)
  expect(out.every((one) => Number.isFinite(one) && one >= 0)).toBe(true)
  for (const at of [
    [0, 0, 0],
    [1.5, 2, 1.2],
    [3, 4, 2.4],
    [1, 2, 0],
  ] as const)
    for (const kind of ['flat', 'dome'] as const)
      expect(Number.isFinite(total(gather(mesh, { at, normal: [0, 0, 1], kind })))).toBe(true)
})
