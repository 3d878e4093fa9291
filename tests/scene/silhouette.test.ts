/**
 * The outline of a figure as the camera sees it: against the closed form for a ball, and against rays that look for the
 * figure by themselves (least scaled distance to the segment along a ray, found by golden section: it is convex).
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { buildScene } from '../../src/scene/build-scene.js'
import { rayThrough } from '../../src/scene/camera-view.js'
import type { Capsule, SceneCamera, SceneFigure } from '../../src/scene/scene.js'
import { silhouette } from '../../src/scene/silhouette.js'
import { add, cross, dot, length, scale, subtract, unit, type Vec3 } from '../../src/scene/vector.js'
import { makePlan, type PlanOverrides } from '../helpers/make-plan.js'

const sceneOf = (overrides: PlanOverrides) => buildScene(makePlan({ lights: [], ...overrides }))

const area = (polygon: readonly (readonly [number, number])[]) =>
  polygon.reduce((sum, p, i) => {
    const q = polygon[(i + 1) % polygon.length]!
    return sum + (p[0] * q[1] - p[1] * q[0]) / 2
  }, 0)

/** Crossings of a level ray to the right: inside with an odd number. */
const holds = (polygon: readonly (readonly [number, number])[], x: number, y: number) =>
  polygon.reduce((inside, p, i) => {
    const q = polygon[(i + 1) % polygon.length]!
    return p[1] > y !== q[1] > y && x < p[0] + ((y - p[1]) / (q[1] - p[1])) * (q[0] - p[0]) ? !inside : inside
  }, false)

/** Least distance of a ray to the capsule's segment in the space where the capsule is round: under 1 is a hit. */
const nearest = (capsule: Capsule, eye: Vec3, ray: Vec3): number => {
  const axis = unit(subtract(capsule.to, capsule.from), [0, 0, 1])
  const along = cross(axis, capsule.acrossDirection)
  const far = length(subtract(capsule.to, capsule.from)) / capsule.cap
  const off = (t: number) => {
    const d = subtract(add(eye, scale(ray, t)), capsule.from)
    const z = dot(d, axis) / capsule.cap
    const beyond = z < 0 ? z : z > far ? z - far : 0
    return Math.hypot(dot(d, capsule.acrossDirection) / capsule.across, dot(d, along) / capsule.along, beyond)
  }
  let [a, b] = [0, 30]
  const golden = (Math.sqrt(5) - 1) / 2
  for (let i = 0; i < 70; i++) {
    const [p, q] = [b - golden * (b - a), a + golden * (b - a)]
    if (off(p) < off(q)) b = q
    else a = p
  }
  return off((a + b) / 2)
}

const seen = (figure: SceneFigure, camera: SceneCamera, x: number, y: number): number => {
  const ray = rayThrough(camera, x, y)
  const body = nearest(figure.body, camera.eye, ray)
  return figure.head === undefined ? body : Math.min(body, nearest(figure.head, camera.eye, ray))
}

describe('a ball', () => {
  it('is seen under the angle asin(r/d) (closed form)', () => {
    const scene = sceneOf({ camera: { at: { distance: 2, height: 1, right: 0 } } })
    const ball: SceneFigure = {
      ...scene.subject.figures[0]!,
      head: undefined,
      body: {
        from: [0, 0, 1],
        to: [0, 0, 1],
        across: 0.3,
        along: 0.3,
        cap: 0.3,
        acrossDirection: [1, 0, 0],
      } as unknown as Capsule,
    }
    const outline = silhouette(ball, scene.camera)
    const tangent = Math.tan(Math.asin(0.3 / 2))
    for (const [x, y] of outline)
      expect(Math.hypot(x * scene.camera.tanHalfWidth, y * scene.camera.tanHalfHeight)).toBeCloseTo(
        tangent,
        9,
      )
    const circle = (Math.PI * tangent ** 2) / (scene.camera.tanHalfWidth * scene.camera.tanHalfHeight)
    expect(area(outline) / circle).toBeGreaterThan(0.997)
    expect(area(outline) / circle).toBeLessThanOrEqual(1)
  })
})

describe('a figure', () => {
  const anySet = fc
    .record({
      kind: fc.constantFrom('person', 'object'),
      pose: fc.constantFrom('standing', 'seated', 'lying'),
      turnedRight: fc.double({ min: -3, max: 3, noNaN: true }),
      distance: fc.double({ min: 1.5, max: 5, noNaN: true }),
      height: fc.double({ min: 0.3, max: 3.5, noNaN: true }),
      right: fc.double({ min: -2, max: 2, noNaN: true }),
    })
    .map(({ kind, pose, turnedRight, ...at }) =>
      sceneOf({
        camera: { lens: 0.02, at, aim: { at: 'point', point: 'subject', feather: undefined } },
        subject: {
          kind,
          pose,
          turnedRight,
          ...(kind === 'object' ? { height: 0.4, width: 0.3, depth: 0.12 } : {}),
        },
      }),
    )

  it('is inside its outline where a ray meets it, and nowhere else (rays by themselves)', () => {
    let hits = 0
    let misses = 0
    fc.assert(
      fc.property(anySet, (scene) => {
        const figure = scene.subject.figures[0]!
        const outline = silhouette(figure, scene.camera)
        fc.pre(outline.length > 0)
        const [xs, ys] = [outline.map((p) => p[0]), outline.map((p) => p[1])]
        const [left, wide] = [Math.min(...xs), Math.max(...xs) - Math.min(...xs)]
        const [low, high] = [Math.min(...ys), Math.max(...ys) - Math.min(...ys)]
        for (let i = 0; i < 20; i++)
          for (let j = 0; j < 20; j++) {
            const x = left + wide * (1.2 * ((i + 0.5) / 20) - 0.1)
            const y = low + high * (1.2 * ((j + 0.5) / 20) - 0.1)
            const off = seen(figure, scene.camera, x, y)
            // The polygon lies a hair inside the true outline.
            if (off > 0.99 && off < 1.01) continue
            if (off < 1) hits++
            else misses++
            expect(holds(outline, x, y), `${x} ${y} at scaled distance ${off}`).toBe(off < 1)
          }
      }),
      { numRuns: 60, seed: 1 },
    )
    expect(hits).toBeGreaterThan(5000)
    expect(misses).toBeGreaterThan(5000)
  })

  it('has an outline that keeps inside it, also in the notch of the neck, by a hair', () => {
    fc.assert(
      fc.property(anySet, (scene) => {
        const figure = scene.subject.figures[0]!
        const outline = silhouette(figure, scene.camera)
        outline.forEach((p, i) => {
          const q = outline[(i + 1) % outline.length]!
          const off = seen(figure, scene.camera, (p[0] + q[0]) / 2, (p[1] + q[1]) / 2)
          expect(off).toBeLessThan(1 + 1e-6)
          expect(off).toBeGreaterThan(0.995)
        })
      }),
      { numRuns: 40, seed: 3 },
    )
  })

  it('has an outline that runs round once, counter-clockwise', () => {
    fc.assert(
      fc.property(anySet, (scene) => {
        const outline = silhouette(scene.subject.figures[0]!, scene.camera)
        fc.pre(outline.length > 0)
        expect(area(outline)).toBeGreaterThan(0)
      }),
      { numRuns: 60, seed: 2 },
    )
  })

  it('has none when it is not wholly in front of the camera', () => {
    const beside = sceneOf({ camera: { at: { distance: 0.02, height: 1.6, right: 0.6 } } })
    expect(silhouette(beside.subject.figures[0]!, beside.camera)).toEqual([])
    const inside = sceneOf({ camera: { at: { distance: 0, height: 1, right: 0 } } })
    expect(silhouette(inside.subject.figures[0]!, inside.camera)).toEqual([])
  })
})
