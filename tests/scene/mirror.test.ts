/**
 * Mirrors against another way of finding out: rays from the eye, met with the surface by its own equation, thrown back by
 * the law of reflection, and followed until one hits the light; lines of least length (Fermat); the mirror equation of
 * textbooks for small angles; limits.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { project } from '../../src/scene/camera-view.js'
import {
  mirroredCamera,
  mirroredDirection,
  mirroredPlace,
  mirrorNormal,
  mirrorPlace,
  mirrorPlaceOnCylinder,
  roundMirror,
} from '../../src/scene/mirror.js'
import type { SceneCamera } from '../../src/scene/scene.js'
import {
  add,
  cross,
  distance,
  dot,
  length,
  scale,
  subtract,
  unit,
  type Vec3,
} from '../../src/scene/vector.js'

const x: Vec3 = [1, 0, 0]
const y: Vec3 = [0, 1, 0]
const z: Vec3 = [0, 0, 1]

/** Where a ray meets x²/a² + y²/b² + z²/c² = 1 about a middle; c undefined is a cylinder. Written out anew. */
const meets = (
  middle: Vec3,
  [a, b, c]: readonly [number, number, number | undefined],
  from: Vec3,
  to: Vec3,
) => {
  const weights: Vec3 = [1 / a ** 2, 1 / b ** 2, c === undefined ? 0 : 1 / c ** 2]
  const by = (p: Vec3, q: Vec3) =>
    weights[0] * p[0] * q[0] + weights[1] * p[1] * q[1] + weights[2] * p[2] * q[2]
  const start = subtract(from, middle)
  const [A, B, C] = [by(to, to), by(start, to), by(start, start) - 1]
  const root = B * B - A * C
  if (root < 0) return undefined
  const at = add(from, scale(to, (-B - Math.sqrt(root)) / A))
  const d = subtract(at, middle)
  return { at, normal: unit([d[0] * weights[0], d[1] * weights[1], d[2] * weights[2]]) }
}

/** The place at which a ray from the eye is thrown nearest past the light, by ever finer grids of rays. */
const byRays = (
  middle: Vec3,
  halves: readonly [number, number, number | undefined],
  eye: Vec3,
  light: Vec3,
  size: number,
): { readonly at: Vec3; readonly miss: number } => {
  const ahead = unit(subtract(middle, eye))
  const right = unit(cross(ahead, z))
  const up = cross(right, ahead)
  const reach = size / distance(middle, eye)
  let best = { at: middle, miss: Number.POSITIVE_INFINITY, u: 0, v: 0 }
  let span = reach
  for (let zoom = 0; zoom < 26; zoom++) {
    const { u: u0, v: v0 } = best
    const steps = zoom === 0 ? 80 : 10
    for (let i = -steps; i <= steps; i++)
      for (let j = -steps; j <= steps; j++) {
        const [u, v] = [u0 + (span * i) / steps, v0 + (span * j) / steps]
        const ray = unit(add(ahead, add(scale(right, u), scale(up, v))))
        const hit = meets(middle, halves, eye, ray)
        if (hit === undefined) continue
        const thrown = subtract(ray, scale(hit.normal, 2 * dot(ray, hit.normal)))
        const toLight = subtract(light, hit.at)
        const miss = dot(thrown, toLight) > 0 ? length(cross(thrown, toLight)) : length(toLight)
        if (miss < best.miss) best = { at: hit.at, miss, u, v }
      }
    span = zoom === 0 ? (6 * reach) / 80 : span / 2
  }
  return best
}

describe('a round thing shows a light where rays say it does', () => {
  const lights: readonly Vec3[] = [
    [-1, -0.6, 1.6],
    [0.4, 0.3, 1.1],
    [1.5, 0.9, 0.4],
    [-0.25, -0.1, 1],
    [0.05, -2, 2.4],
  ]
  const eye: Vec3 = [0.2, -1.4, 1.05]
  const middle: Vec3 = [0, 0, 0.95]

  it.each(lights.map((light) => [light] as const))('a ball, the light at %s', (light) => {
    const found = mirrorPlace(
      roundMirror(
        middle,
        [x, y, z].map((along) => ({ along, half: 0.12 })),
      ),
      eye,
      light,
    )!
    const { at, miss } = byRays(middle, [0.12, 0.12, 0.12], eye, light, 0.13)
    expect(miss).toBeLessThan(1e-5)
    expect(distance(found.at, at)).toBeLessThan(1e-5)
  })

  it.each(lights.map((light) => [light] as const))('an egg, the light at %s', (light) => {
    const found = mirrorPlace(
      roundMirror(middle, [
        { along: x, half: 0.2 },
        { along: y, half: 0.06 },
        { along: z, half: 0.1 },
      ]),
      eye,
      light,
    )!
    const { at, miss } = byRays(middle, [0.2, 0.06, 0.1], eye, light, 0.22)
    expect(miss).toBeLessThan(1e-5)
    expect(distance(found.at, at)).toBeLessThan(1e-5)
  })

  it.each(lights.map((light) => [light] as const))('a cylinder, the light at %s', (light) => {
    const found = mirrorPlaceOnCylinder(
      {
        middle,
        section: [
          { along: x, half: 0.04 },
          { along: y, half: 0.06 },
        ],
      },
      eye,
      light,
    )!
    const { at, miss } = byRays(middle, [0.04, 0.06, undefined], eye, light, 1)
    expect(miss).toBeLessThan(1e-5)
    expect(distance(found.at, at)).toBeLessThan(1e-5)
  })
})

describe('Alhazen’s problem', () => {
  const ball = (radius: number) =>
    roundMirror(
      [0, 0, 0],
      [x, y, z].map((along) => ({ along, half: radius })),
    )

  it('the way by the mirror is the shortest that touches the ball (Fermat)', () => {
    const place = fc.tuple(
      fc.double({ min: 0.35, max: 4, noNaN: true }),
      fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
      fc.double({ min: -1.2, max: 1.2, noNaN: true }),
    )
    const at = ([r, turn, up]: readonly [number, number, number]): Vec3 => [
      r * Math.cos(turn) * Math.cos(up),
      r * Math.sin(turn) * Math.cos(up),
      r * Math.sin(up),
    ]
    fc.assert(
      fc.property(place, place, (a, b) => {
        const [eye, light, radius] = [at(a), at(b), 0.3]
        const found = mirrorPlace(ball(radius), eye, light)
        // What is nearest to the middle of the line from one to the other.
        const line = subtract(light, eye)
        const t = Math.min(1, Math.max(0, -dot(eye, line) / Math.max(dot(line, line), 1e-12)))
        const nearest = length(add(eye, scale(line, t)))
        if (found === undefined) {
          // The ball stands between, or the line all but grazes it.
          expect(nearest).toBeLessThan(radius * 1.001)
          return
        }
        expect(nearest).toBeGreaterThan(radius * 0.999)
        expect(length(found.at)).toBeCloseTo(radius, 9)
        const way = (p: Vec3) => distance(eye, p) + distance(p, light)
        const own = way(found.at)
        for (let i = 0; i < 60; i++) {
          const turned = unit(
            add(found.normal, [
              0.3 * Math.sin(7 * i),
              0.3 * Math.sin(11 * i + 1),
              0.3 * Math.sin(13 * i + 2),
            ]),
          )
          expect(way(scale(turned, radius))).toBeGreaterThan(own - 1e-9)
        }
      }),
      { numRuns: 300, seed: 7 },
    )
  })

  it('a far eye and a far light: the normal halves the angle between them', () => {
    const [eye, light]: readonly [Vec3, Vec3] = [
      [0, -1e6, 0],
      [1e6 * Math.sin(1.2), -1e6 * Math.cos(1.2), 0],
    ]
    const { normal } = mirrorPlace(ball(0.1), eye, light)!
    expect(Math.atan2(normal[0], -normal[1])).toBeCloseTo(0.6, 6)
  })

  it('eye and light as far off as each other: right between them, however near', () => {
    for (const r of [0.31, 0.5, 2]) {
      const { normal } = mirrorPlace(ball(0.3), [r, 0, 0], [r * Math.cos(0.5), r * Math.sin(0.5), 0])!
      expect(Math.atan2(normal[1], normal[0])).toBeCloseTo(0.25, 9)
    }
  })

  it('near the axis: the image of a convex mirror, 1/s′ = 1/s + 2/r behind it, seen from the eye', () => {
    // Textbook mirror equation (any introduction to optics); distances from the mirror's vertex.
    const [r, s, d, h] = [0.2, 1.5, 2.5, 0.005]
    const behind = 1 / (1 / s + 2 / r)
    const image = (h * behind) / s
    // The line from the eye, on the axis at d, to the image meets the vertex plane here.
    const wanted = (image * d) / (d + behind)
    const { at } = mirrorPlace(ball(r), [0, -(r + d), 0], [h, -(r + s), 0])!
    expect(at[0] / wanted).toBeCloseTo(1, 4)
  })

  it('all but along the surface', () => {
    // By rays, to a third of a millimetre: the line of sight meets the ball at little over one degree.
    const [middle, eye, light]: readonly [Vec3, Vec3, Vec3] = [
      [0.1, 0.1, 0.1],
      [0.2008, -0.9608, 1.0027],
      [1.6096, 2.2969, -1.651],
    ]
    const { at, normal } = mirrorPlace(
      roundMirror(
        middle,
        [x, y, z].map((along) => ({ along, half: 0.5 })),
      ),
      eye,
      light,
    )!
    expect(distance(at, [0.5747, -0.0022, 0.2191])).toBeLessThan(3e-4)
    const cosines = [eye, light].map((end) => dot(normal, unit(subtract(end, at))))
    expect(cosines[0]).toBeCloseTo(cosines[1]!, 8)
    expect(cosines[0]).toBeLessThan(0.022)
  })

  it('of eggs of every shape: one place where the line from eye to light passes by, none where it runs through', () => {
    const half = fc.double({ min: 0.02, max: 0.5, noNaN: true })
    const out = fc.double({ min: -2.5, max: 2.5, noNaN: true })
    fc.assert(
      fc.property(
        fc.tuple(half, half, half),
        fc.tuple(out, out, out),
        fc.tuple(out, out, out),
        (halves, eye, light) => {
          // In the space in which the egg is the unit ball lines stay lines.
          const [a, b] = [eye, light].map((p) => p.map((c, i) => c / halves[i]!) as unknown as Vec3)
          fc.pre(length(a!) > 1.01 && length(b!) > 1.01 && distance(eye, light) > 1e-3)
          const line = subtract(b!, a!)
          const t = Math.min(1, Math.max(0, -dot(a!, line) / dot(line, line)))
          const nearest = length(add(a!, scale(line, t)))
          fc.pre(Math.abs(nearest - 1) > 1e-3)
          const found = mirrorPlace(
            roundMirror(
              [0, 0, 0],
              [x, y, z].map((along, i) => ({ along, half: halves[i]! })),
            ),
            eye,
            light,
          )
          expect(found !== undefined).toBe(nearest > 1)
          if (found === undefined) return
          const [toEye, toLight] = [eye, light].map((end) => unit(subtract(end, found.at)))
          expect(dot(found.normal, toEye!)).toBeCloseTo(dot(found.normal, toLight!), 7)
          expect(Math.abs(dot(found.normal, cross(toEye!, toLight!)))).toBeLessThan(1e-7)
        },
      ),
      { numRuns: 800, seed: 11 },
    )
  })

  it('behind the ball nothing shows', () => {
    expect(mirrorPlace(ball(0.3), [0, -2, 0], [0.05, 2, 0])).toBeUndefined()
    expect(
      mirrorPlaceOnCylinder(
        {
          middle: [0, 0, 0],
          section: [
            { along: x, half: 0.1 },
            { along: y, half: 0.1 },
          ],
        },
        [0, -2, 1],
        [0, 2, 1],
      ),
    ).toBeUndefined()
  })
})

describe('a plane', () => {
  const table = { at: [0, 0, 0.8], normal: z } as const
  const eye: Vec3 = [0.3, -1.5, 1.2]
  const camera: SceneCamera = {
    eye,
    forward: unit([-0.1, 1, -0.3]),
    right: unit(cross(unit([-0.1, 1, -0.3]), z)),
    up: cross(unit(cross(unit([-0.1, 1, -0.3]), z)), unit([-0.1, 1, -0.3])),
    tanHalfWidth: 0.3,
    tanHalfHeight: 0.2,
    focus: 1.5 as SceneCamera['focus'],
  }

  it('its image lies as far behind as the thing before', () => {
    expect(mirroredPlace(table, [1, 2, 1.3])).toEqual([1, 2, expect.closeTo(0.3, 12)])
    expect(mirroredDirection(z, [1, 2, -3])).toEqual([1, 2, 3])
    const slanted = { at: [1, 1, 1] as Vec3, normal: unit([1, 2, 3]) }
    const place: Vec3 = [0.4, -0.7, 2.2]
    const image = mirroredPlace(slanted, place)
    expect(dot(subtract(scale(add(place, image), 0.5), slanted.at), slanted.normal)).toBeCloseTo(0, 12)
    expect(length(cross(subtract(place, image), slanted.normal))).toBeCloseTo(0, 12)
  })

  it('the camera behind the mirror sees a light where the ray by way of the table does', () => {
    const light: Vec3 = [-0.4, 0.6, 1.9]
    const seen = project(mirroredCamera(table, camera), light)
    // By equal angles: the way on the table is parted as the heights over it.
    const [a, b] = [eye[2] - 0.8, light[2] - 0.8]
    const on: Vec3 = [
      eye[0] + ((light[0] - eye[0]) * a) / (a + b),
      eye[1] + ((light[1] - eye[1]) * a) / (a + b),
      0.8,
    ]
    const direct = project(camera, on)
    expect(seen.x).toBeCloseTo(direct.x, 12)
    expect(seen.y).toBeCloseTo(direct.y, 12)
    expect(length(cross(mirrorNormal(on, eye, subtract(light, on)), z))).toBeCloseTo(0, 12)
  })
})
