/**
 * Where lights stand. Triangles worked by hand (3-4-5, and the half equilateral one), and for any placement the way
 * back: from the place found to tape, height and bearing, by the distance formula and the arc tangent.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Light, Plan } from '../../src/language/plan.js'
import { buildScene } from '../../src/scene/build-scene.js'
import type { Vec3 } from '../../src/scene/vector.js'
import {
  degreesOf,
  makeLight,
  makePlan,
  offsets,
  type PlanOverrides,
  sun,
  surface,
  tape,
} from '../helpers/make-plan.js'

const face = 1.5
const planWith = (light: Partial<Light>, more: PlanOverrides = {}): Plan =>
  makePlan({ subject: { facesAt: face }, ...more, lights: [makeLight('key', light as object)] })
const placed = (light: Partial<Light>, more: PlanOverrides = {}) =>
  buildScene(planWith(light, more)).lights.get('key')!
const expectAt = (at: Vec3, want: Vec3) => {
  want.forEach((value, i) => {
    expect(at[i]).toBeCloseTo(value, 9)
  })
}

describe('by tape', () => {
  it('90° left, 1.5 m, 90 cm over the face: 1.2 m out (3-4-5, by hand)', () => {
    const light = placed({ at: tape(90, 1.5, { height: face + 0.9 }) })
    expectAt(light.front!.centre, [-1.2, 0, 2.4])
    expect(light.distance).toBeCloseTo(1.5, 12)
    // Down again on the same triangle.
    expectAt(light.axis, [0.8, 0, -0.6])
  })

  it('30° left, 2 m, level: 1 m left and √3 m toward the camera (by hand)', () => {
    expectAt(placed({ at: tape(30, 2, { height: face }) }).front!.centre, [-1, -Math.sqrt(3), face])
  })

  it('150° right stands behind the subject at the right (by hand)', () => {
    expectAt(placed({ at: tape(-150, 2, { height: face }) }).front!.centre, [1, Math.sqrt(3), face])
  })

  it('up 30°, 2 m: 1 m over the face, √3 m out (by hand)', () => {
    expectAt(placed({ at: tape(0, 2, { upDegrees: 30 }) }).front!.centre, [0, -Math.sqrt(3), face + 1])
  })

  it('without height or elevation is level with the face', () => {
    expectAt(placed({ at: tape(0, 2) }).front!.centre, [0, -2, face])
  })

  it('goes back to the same tape, height and bearing', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -179, max: 179, noNaN: true }),
        fc.double({ min: 0.3, max: 9, noNaN: true }),
        fc.double({ min: 0, max: 4, noNaN: true }),
        (angle, distance, height) => {
          fc.pre(distance > Math.abs(height - face) + 0.01)
          const [x, y, z] = placed({ at: tape(angle, distance, { height }) }).front!.centre
          expect(Math.hypot(x, y, z - face)).toBeCloseTo(distance, 9)
          expect(z).toBeCloseTo(height, 12)
          // At the subject, seen from above, from the camera's end (−y) round to the left (−x).
          expect((Math.atan2(-x, -y) * 180) / Math.PI).toBeCloseTo(angle, 6)
        },
      ),
      { numRuns: 300, seed: 1 },
    )
  })

  it('shorter than the height difference is a fault with its numbers', () => {
    const scene = buildScene(planWith({ at: tape(35, 0.5, { height: 2.5 }) }))
    expect(scene.faults).toEqual([
      {
        kind: 'tape-too-short',
        pointer: '/lights/key/at/distance',
        figures: { tape: 0.5, needs: 1, light: 'key' },
      },
    ])
    expectAt(scene.lights.get('key')!.front!.centre, [0, 0, 2.5])
  })

  it('exactly the height difference stands straight overhead, without a fault', () => {
    const scene = buildScene(planWith({ at: tape(35, 1, { height: 2.5 }) }))
    expect(scene.faults).toEqual([])
    expectAt(scene.lights.get('key')!.front!.centre, [0, 0, 2.5])
    expectAt(scene.lights.get('key')!.axis, [0, 0, -1])
  })

  it('of a point or a panel is checked alike', () => {
    const scene = buildScene(
      makePlan({ points: new Map([['a/b', tape(0, 0.1, { height: 0 })]]) as never, lights: [] }),
    )
    expect(scene.faults.map((fault) => [fault.kind, fault.pointer])).toEqual([
      ['tape-too-short', '/points/a~1b/distance'],
    ])
  })
})

describe('by offsets', () => {
  it('counts right and behind from the subject point', () => {
    expectAt(
      placed({ at: offsets({ right: -1.5, behind: 0.6, height: 1.1 }) }).front!.centre,
      [-1.5, 0.6, 1.1],
    )
  })

  it('before the backdrop counts from the backdrop toward the camera', () => {
    const light = placed(
      { at: offsets({ right: 1, beforeBackdrop: 0.5, height: 1 }) },
      { backdrop: { behind: 2 } },
    )
    expectAt(light.front!.centre, [1, 1.5, 1])
  })

  it('without a height is level with the face', () => {
    expectAt(placed({ at: offsets({ right: 2 }) }).front!.centre, [2, 0, face])
  })

  it('over the table counts from its top', () => {
    const table = { height: 0.8, surface: surface('board', 0.9), width: 1, depth: 1.4 }
    const light = placed(
      { at: offsets({ right: 0.5, overTable: 0.2 }) },
      { subject: { kind: 'object', height: 0.3, facesAt: 0.15, width: 0.08, depth: 0.08, standsOn: table } },
    )
    expectAt(light.front!.centre, [0.5, 0, 1])
  })
})

describe('on the camera', () => {
  const camera = { at: { distance: 2, height: 1.5, right: 0.4 } } as const

  it('sits over the lens and points where the camera points', () => {
    const plan = planWith({ at: { by: 'camera' } }, { camera, stated: [] })
    const light = buildScene(plan).lights.get('key')!
    expectAt(light.front!.centre, [0.4, -2, 1.62])
    expectAt(light.axis, [0, 1, 0])
  })

  it('turned up to the ceiling, points there', () => {
    const plan = planWith(
      { at: { by: 'camera' }, aim: { at: 'ceiling', above: 'subject', feather: undefined } },
      { camera: { at: { distance: 2, height: 1.5, right: 0 } }, room: { height: 2.62 } },
    )
    const light = buildScene(plan).lights.get('key')!
    expectAt(light.aim, [0, 0, 2.62])
    // 2 m along, 1 m up.
    expectAt(light.axis, [0, 2 / Math.sqrt(5), 1 / Math.sqrt(5)])
  })
})

describe('the sun', () => {
  it('comes from its bearing and elevation, from no distance (by hand: 90° left, 30° up)', () => {
    const light = placed({
      unit: sun,
      at: { ...tape(90, 1, { upDegrees: 30 }), distance: undefined } as never,
    })
    expect(light.front).toBeUndefined()
    expect(light.distance).toBeUndefined()
    expectAt(light.axis, [Math.cos(degreesOf(30)), 0, -0.5])
  })
})

describe('a light inside the subject', () => {
  const kinds = (light: Partial<Light>) => buildScene(planWith(light)).faults.map((fault) => fault.kind)

  it('is a fault: in the head, in the chest, on the face', () => {
    expect(kinds({ at: offsets({ behind: 0.1, height: face }) })).toEqual(['inside-subject'])
    expect(kinds({ at: offsets({ behind: 0.1, height: 1 }) })).toEqual(['inside-subject'])
    expect(kinds({ at: tape(0, 0) })).toEqual(['inside-subject'])
  })

  it('is none a hand before the nose or beside the shoulder', () => {
    expect(kinds({ at: tape(0, 0.1) })).toEqual([])
    expect(kinds({ at: offsets({ right: 0.3, behind: 0.1, height: 1 }) })).toEqual([])
  })

  it('goes for the camera too', () => {
    const plan = makePlan({ camera: { at: { distance: 0, height: 1, right: 0 } }, lights: [] })
    expect(buildScene(plan).faults).toEqual([
      { kind: 'inside-subject', pointer: '/camera/at/distance', figures: { light: 'camera' } },
    ])
  })
})
