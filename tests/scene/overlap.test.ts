/** How deep solids stand in each other: closed forms of balls and boxes, and a dense look at all directions. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { capsule } from '../../src/scene/capsule.js'
import { face } from '../../src/scene/facing.js'
import { overlap } from '../../src/scene/overlap.js'
import { ballRound, reachOf } from '../../src/scene/reach.js'
import type { SolidBody } from '../../src/scene/scene.js'
import { cornersOf } from '../../src/scene/solids.js'
import { add, distance, scale, unit, type Vec3 } from '../../src/scene/vector.js'

const ball = (at: Vec3, radius: number): SolidBody => ({
  shape: 'capsule',
  capsule: capsule(at, at, radius, radius, radius, [1, 0, 0]),
})

const plate = (centre: Vec3, normal: Vec3, width: number, height: number): SolidBody => {
  const one = face('rectangle', centre, unit(normal), width, height)
  return { shape: 'plate', face: one, corners: cornersOf(one) }
}

/** From its front at y, `depth` toward +y. */
const box = (centre: Vec3, width: number, height: number, depth: number): SolidBody => {
  const front = face('rectangle', [centre[0], centre[1] - depth / 2, centre[2]], [0, -1, 0], width, height)
  const back = { ...front, centre: add(front.centre, [0, depth, 0]) }
  return { shape: 'hull', corners: [...cornersOf(front), ...cornersOf(back)] }
}

describe('two balls', () => {
  it('overlap by the sum of their radii less the way between their centres', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 3, maxLength: 3 }),
        fc.double({ min: 0.05, max: 0.6, noNaN: true }),
        fc.double({ min: 0.05, max: 0.6, noNaN: true }),
        (at, r, s) => {
          const truth = Math.max(0, r + s - Math.hypot(...at))
          expect(overlap(ball([0, 0, 0], r), ball(at as unknown as Vec3, s))).toBeCloseTo(truth, 5)
        },
      ),
    )
  })
})

describe('two boxes side by side', () => {
  it('overlap by the least of the three sides that they share', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -0.8, max: 0.8, noNaN: true }), { minLength: 3, maxLength: 3 }),
        (at) => {
          const [a, b] = [
            [0.6, 0.9, 0.4],
            [0.3, 0.3, 0.5],
          ] as const
          // Width along x, depth along y, height along z.
          const halves = [(a[0] + b[0]) / 2, (a[2] + b[2]) / 2, (a[1] + b[1]) / 2]
          const truth = Math.max(0, Math.min(...halves.map((half, i) => half - Math.abs(at[i]!))))
          const found = overlap(box([0, 0, 0], ...a), box(at as unknown as Vec3, ...b))
          expect(found).toBeCloseTo(truth, 5)
        },
      ),
    )
  })
})

describe('a plate', () => {
  it('that cuts a ball a third in is freed by that third', () => {
    // The ball is pushed back over the plate's face: its radius less the way from its centre to the plate.
    expect(overlap(plate([0, 0, 0], [0, -1, 0], 2, 2), ball([0, 0.1, 0], 0.3))).toBeCloseTo(0.2, 5)
    expect(overlap(plate([0, 0, 0], [0, -1, 0], 2, 2), ball([0, 0.31, 0], 0.3))).toBe(0)
  })
  it('that crosses another is freed by the shortest way out', () => {
    // Upright along x and along y, crossing 5 cm from the end of the one.
    const a = plate([0, 0, 1], [0, -1, 0], 1, 2)
    const b = plate([0.2, 0.45, 1], [1, 0, 0], 1, 2)
    expect(overlap(a, b)).toBeCloseTo(0.05, 5)
    expect(overlap(a, plate([0.2, 0.51, 1], [1, 0, 0], 1, 2))).toBe(0)
  })
})

describe('any two', () => {
  const place = fc
    .array(fc.double({ min: -0.5, max: 0.5, noNaN: true }), { minLength: 3, maxLength: 3 })
    .map((at) => at as unknown as Vec3)
  const solid = fc.oneof(
    fc.tuple(place, place).map(([at, n]) => plate(at, add(n, [0, 0, 1.2]), 0.6, 0.9)),
    place.map((at) => box(at, 0.6, 0.9, 0.3)),
    fc.tuple(place, place).map(([at, n]): SolidBody => {
      const up = scale(unit(add(n, [0, 0, 1.2])), 0.4)
      return {
        shape: 'capsule',
        capsule: capsule(at, add(at, up), 0.22, 0.14, 0.1, unit([up[2], 0, -up[0]])),
      }
    }),
  )
  /** 20,000 directions. */
  const all: readonly Vec3[] = Array.from({ length: 20000 }, (_, i) => {
    const z = 1 - (2 * i + 1) / 20000
    const turn = i * 2.399963229728653
    const flat = Math.sqrt(1 - z * z)
    return [flat * Math.cos(turn), flat * Math.sin(turn), z]
  })
  const dense = (a: SolidBody, b: SolidBody): number =>
    Math.max(0, Math.min(...all.map((n) => reachOf(a, n) + reachOf(b, scale(n, -1)))))

  it('overlap by the least that twenty thousand directions show, either way round', () => {
    fc.assert(
      fc.property(solid, solid, (a, b) => {
        const found = overlap(a, b)
        const looked = dense(a, b)
        // A net of 20,000 leaves 1.4° between directions: a centimetre on a metre at worst.
        expect(found).toBeLessThanOrEqual(looked + 1e-4)
        expect(found).toBeGreaterThanOrEqual(looked - 0.02)
        expect(overlap(b, a)).toBeCloseTo(found, 3)
      }),
      { numRuns: 150, seed: 1 },
    )
  })

  it('lie in their balls', () => {
    fc.assert(
      fc.property(solid, (body) => {
        const { centre, radius } = ballRound(body)
        if (body.shape !== 'capsule')
          for (const corner of body.corners)
            expect(distance(corner, centre)).toBeLessThanOrEqual(radius + 1e-9)
        for (const n of all.filter((_, i) => i % 500 === 0))
          expect(reachOf(body, n)).toBeLessThanOrEqual(
            centre[0] * n[0] + centre[1] * n[1] + centre[2] * n[2] + radius + 1e-9,
          )
      }),
      { numRuns: 50, seed: 1 },
    )
  })
})
