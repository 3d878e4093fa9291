/** What the frame holds. Check values from tests/published/values.json, section 4 (`geo.aov`, sourced) and 8 (`lens.field`, derived). */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Plan } from '../../src/language/plan.js'
import { backdropInFrame } from '../../src/scene/backdrop.js'
import { buildScene } from '../../src/scene/build-scene.js'
import { frameOnPlane, inFrame, project } from '../../src/scene/camera-view.js'
import type { SceneCamera } from '../../src/scene/scene.js'
import type { Vec3 } from '../../src/scene/vector.js'
import { makePlan, offsets } from '../helpers/make-plan.js'
import { checkValues } from '../published/check-values.js'

const cameraOf = (camera: Partial<Plan['camera']> | object): SceneCamera =>
  buildScene(makePlan({ camera: camera as object, lights: [] })).camera

const published = (prefix: string) => checkValues.filter((value) => value.id.startsWith(prefix))
const number = (of: Readonly<Record<string, unknown>>, key: string) => of[key] as number

describe('angle of view', () => {
  it.each(published('geo.aov'))('$id, focused far off: $source', ({ inputs, expected, tolerance }) => {
    const camera = cameraOf({
      lens: number(inputs, 'focal_mm') / 1000,
      frame: 'horizontal',
      focus: { on: 'distance', distance: 1e5 },
    })
    const across = (2 * Math.atan(camera.tanHalfWidth) * 180) / Math.PI
    const up = (2 * Math.atan(camera.tanHalfHeight) * 180) / Math.PI
    expect(Math.abs(across - number(expected, 'horizontal_deg'))).toBeLessThan(tolerance.abs!)
    expect(Math.abs(up - number(expected, 'vertical_deg'))).toBeLessThan(tolerance.abs!)
  })

  it.each(published('lens.field'))('$id, thin lens: $source', ({ inputs, expected, tolerance }) => {
    const distance = number(inputs, 'distance_m')
    const camera = cameraOf({
      lens: number(inputs, 'focal_mm') / 1000,
      frame: 'horizontal',
      at: { distance, height: 1.6, right: 0 },
    })
    const frame = frameOnPlane(camera, 0)!
    const wide = number(expected, 'field_w_m')
    const high = number(expected, 'field_h_m')
    expect(Math.abs(frame.right - frame.left - wide)).toBeLessThan(10 * tolerance.rel! * wide)
    expect(Math.abs(frame.top - frame.bottom - high)).toBeLessThan(10 * tolerance.rel! * high)
  })

  it('held upright, the long side is up', () => {
    const level = cameraOf({ frame: 'horizontal' })
    const upright = cameraOf({ frame: 'vertical' })
    expect(upright.tanHalfHeight).toBe(level.tanHalfWidth)
    expect(upright.tanHalfWidth).toBe(level.tanHalfHeight)
  })

  it('at life size (two focal lengths off) the field is the sensor itself (by hand)', () => {
    const camera = cameraOf({
      lens: 0.1,
      frame: 'horizontal',
      at: { distance: 0.2, height: 1.6168, right: 0 },
      focus: { on: 'distance', distance: 0.2 },
    })
    const frame = frameOnPlane(camera, 0)!
    expect(frame.right - frame.left).toBeCloseTo(0.036, 9)
  })
})

describe('projecting', () => {
  it('a level camera: similar triangles (by hand)', () => {
    // 100 mm upright on 36 × 24, focused far off: half the width is 0.12 of the distance, half the height 0.18.
    const camera = cameraOf({
      lens: 0.1,
      focus: { on: 'distance', distance: 1e6 },
      at: { distance: 2, height: 1, right: 0.5 },
    })
    const at = project(camera, [0.5 + 0.24, 2, 1 - 0.36])
    expect(at.x).toBeCloseTo(0.5, 5)
    expect(at.y).toBeCloseTo(-0.5, 5)
    expect(at.depth).toBeCloseTo(4, 12)
  })

  it('aimed at a point, sees it in the middle', () => {
    const plan = makePlan({
      camera: {
        at: { distance: 2, height: 2.2, right: -0.6 },
        aim: { at: 'point', point: 'subject', feather: undefined },
      },
    })
    const { camera, points } = buildScene(plan)
    const at = project(camera, points.get('subject')!.at)
    expect(at.x).toBeCloseTo(0, 12)
    expect(at.y).toBeCloseTo(0, 12)
    expect(camera.focus).toBeCloseTo(Math.hypot(2, 2.2 - 0.94 * 1.72, 0.6), 12)
    expect(camera.right[2]).toBeCloseTo(0, 12)
  })

  it('is finite, and out of the frame, beside and behind the camera', () => {
    const camera = cameraOf({})
    for (const point of [camera.eye, [0, -9, 1], [3, -2.5, 1.6168]] as Vec3[]) {
      const { x, y, depth } = project(camera, point)
      expect([x, y, depth].every(Number.isFinite)).toBe(true)
      expect(inFrame(camera, point)).toBe(false)
    }
  })
})

/** True inside a convex polygon, whichever way round. */
const within = (polygon: readonly (readonly [number, number])[], [x, z]: readonly [number, number]) => {
  const signs = polygon.map((p, i) => {
    const q = polygon[(i + 1) % polygon.length]!
    return Math.sign((q[0] - p[0]) * (z - p[1]) - (q[1] - p[1]) * (x - p[0]))
  })
  return signs.every((sign) => sign >= 0) || signs.every((sign) => sign <= 0)
}

describe('the frame on a plane', () => {
  const anyCamera = fc
    .record({
      right: fc.double({ min: -2, max: 2, noNaN: true }),
      height: fc.double({ min: 0.2, max: 4, noNaN: true }),
      distance: fc.double({ min: 1, max: 5, noNaN: true }),
      x: fc.double({ min: -3, max: 3, noNaN: true }),
      z: fc.double({ min: 0, max: 6, noNaN: true }),
      lens: fc.double({ min: 0.02, max: 0.1, noNaN: true }),
    })
    .map(
      ({ right, height, distance, x, z, lens }) =>
        buildScene(
          makePlan({
            camera: {
              lens,
              at: { distance, height, right },
              aim: { at: 'point', point: 'there', feather: undefined },
            },
            points: new Map([['there', offsets({ right: x, height: z })]]),
            lights: [],
          }),
        ).camera,
    )

  it('holds a place of the plane if and only if the place projects into the frame', () => {
    fc.assert(
      fc.property(
        anyCamera,
        fc.double({ min: 0.5, max: 4, noNaN: true }),
        fc.double({ min: -6, max: 6, noNaN: true }),
        fc.double({ min: -4, max: 8, noNaN: true }),
        (camera, y, x, z) => {
          const frame = frameOnPlane(camera, y)
          const at = project(camera, [x, y, z])
          const margin = 1 - Math.max(Math.abs(at.x), Math.abs(at.y))
          fc.pre(Math.abs(margin) > 1e-6)
          expect(frame !== undefined && within(frame.polygon, [x, z])).toBe(at.depth > 0 && margin > 0)
        },
      ),
      { numRuns: 1000, seed: 1 },
    )
  })

  it('is undefined behind a level camera and finite where the camera looks up past the edge', () => {
    const level = cameraOf({})
    expect(frameOnPlane(level, -3)).toBeUndefined()
    expect(frameOnPlane(level, -2.5)).toBeUndefined()
    const steep: SceneCamera = {
      ...level,
      forward: [0, 0.2, Math.sqrt(0.96)],
      right: [1, 0, 0],
      up: [0, -Math.sqrt(0.96), 0.2],
      tanHalfHeight: 0.5,
      tanHalfWidth: 0.3,
    }
    const frame = frameOnPlane(steep, 2)!
    expect(frame.polygon.every((p) => p.every(Number.isFinite))).toBe(true)
    expect(frame.top).toBeGreaterThan(100)
  })
})

describe('the backdrop in frame', () => {
  const seen = (camera: object, backdrop: object) => {
    const scene = buildScene(
      makePlan({
        camera: { lens: 0.1, focus: { on: 'distance', distance: 1e7 }, ...camera },
        backdrop: { behind: 2, ...backdrop },
        lights: [],
      }),
    )
    return { scene, box: backdropInFrame(scene.camera, scene.backdrop!) }
  }
  const at = (scene: ReturnType<typeof buildScene>, name: string) => scene.points.get(name)!.at

  it('its points are 3 % inside what the frame holds (by hand: 100 mm, 4.5 m off: ±0.54 m, ±0.81 m)', () => {
    const { scene } = seen({ at: { distance: 2.5, height: 1.5, right: 0 } }, {})
    expect(at(scene, 'backdrop')[0]).toBeCloseTo(0, 6)
    expect(at(scene, 'backdrop')[2]).toBeCloseTo(1.5, 6)
    expect(at(scene, 'backdrop-left')[0]).toBeCloseTo(-0.94 * 0.54, 6)
    expect(at(scene, 'backdrop-right')[0]).toBeCloseTo(0.94 * 0.54, 6)
    expect(at(scene, 'backdrop-top')[2]).toBeCloseTo(1.5 + 0.94 * 0.81, 6)
    expect(at(scene, 'backdrop-bottom')[2]).toBeCloseTo(1.5 - 0.94 * 0.81, 6)
  })

  it('is clipped to a narrow backdrop, and to the floor', () => {
    const { scene, box } = seen({ at: { distance: 2.5, height: 0.5, right: 0 } }, { width: 0.8 })
    expect(box!.left).toBeCloseTo(-0.4, 9)
    expect(box!.bottom).toBeCloseTo(0, 9)
    expect(at(scene, 'backdrop-left')[0]).toBeCloseTo(-0.94 * 0.4, 6)
    expect(at(scene, 'backdrop')[2]).toBeCloseTo((0.5 + 0.81) / 2, 6)
  })

  it('follows a camera that stands aside', () => {
    const { scene } = seen({ at: { distance: 2.5, height: 1.5, right: 0.5 } }, {})
    expect(at(scene, 'backdrop')[0]).toBeCloseTo(0.5, 6)
  })

  it('keeps its points inside the quadrilateral that a tilted camera sees', () => {
    const { scene, box } = seen(
      {
        lens: 0.035,
        at: { distance: 1.5, height: 0.4, right: 0.6 },
        aim: { at: 'point', point: 'hair', feather: undefined },
      },
      {},
    )
    for (const name of ['backdrop', 'backdrop-left', 'backdrop-right', 'backdrop-top', 'backdrop-bottom']) {
      const [x, , z] = at(scene, name)
      expect(within(box!.polygon, [x, z]), name).toBe(true)
      expect(inFrame(scene.camera, at(scene, name)), name).toBe(true)
    }
  })

  it('out of frame: nothing of it, and its points are on the whole of it', () => {
    const { scene, box } = seen({ at: { distance: 2.5, height: 1.5, right: 9 } }, {})
    expect(box).toBeUndefined()
    expect(at(scene, 'backdrop-left')[0]).toBeCloseTo(-1.36 * 0.94, 9)
    expect(at(scene, 'backdrop')[0]).toBe(0)
  })

  it('a sky has no edge that a lens could reach', () => {
    const sky = { reads: 8, shutter: 0.001, iso: 100, kind: 'reflected', colour: undefined }
    const { scene, box } = seen({ lens: 0.014, at: { distance: 2, height: 1.5, right: 0 } }, { sky })
    const frame = frameOnPlane(scene.camera, scene.backdrop!.y)!
    expect(box!.left).toBeCloseTo(frame.left, 6)
    expect(box!.top).toBeCloseTo(frame.top, 6)
    expect(box!.bottom).toBe(0)
  })
})
