/** Who stands where, how tall, and the points on them. Rows and heights worked by hand; edges and extents by brute force. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { buildScene } from '../../src/scene/build-scene.js'
import { isInside, reach } from '../../src/scene/capsule.js'
import type { Capsule, SceneCamera } from '../../src/scene/scene.js'
import { add, cross, dot, length, scale, subtract, unit, type Vec3 } from '../../src/scene/vector.js'
import { degreesOf, makePlan, type PlanOverrides, surface } from '../helpers/make-plan.js'
import { surfacePoints } from './capsule-points.js'

const sceneOf = (overrides: PlanOverrides) => buildScene(makePlan({ lights: [], ...overrides }))
const expectAt = (at: Vec3, want: Vec3, digits = 9) => {
  want.forEach((value, i) => {
    expect(at[i]).toBeCloseTo(value, digits)
  })
}
const table = { height: 0.8, surface: surface('board', 0.9), width: 1, depth: 1.4 }

describe('a person standing', () => {
  const scene = sceneOf({ wanted: { framing: undefined } })
  const [person] = scene.subject.figures

  it('has the face over the origin at 0.94 of the height, looking at the camera’s end', () => {
    expectAt(person!.face, [0, 0, 0.94 * 1.72])
    expectAt(person!.looks, [0, -1, 0])
    expectAt(scene.points.get('subject')!.at, [0, 0, 0.94 * 1.72])
    expectAt(scene.subject.tapeFrom, [0, 0, 0.94 * 1.72])
  })

  it('reaches from the floor to the height, shoulder to shoulder', () => {
    expect(person!.top).toBeCloseTo(1.72, 9)
    expect(scene.subject.bounds.min[2]).toBeCloseTo(0, 9)
    expect(scene.subject.bounds.max[2]).toBeCloseTo(1.72, 9)
    expect(scene.subject.bounds.min[0]).toBeCloseTo(-0.225, 9)
    expect(scene.subject.bounds.max[0]).toBeCloseTo(0.225, 9)
  })

  it('has the face on the surface of the head, head and body in one piece', () => {
    const { head, body, face, looks } = person!
    expect(isInside(head!, add(face, scale(looks, -0.005)))).toBe(true)
    expect(isInside(head!, add(face, scale(looks, 0.001)))).toBe(false)
    const chin: Vec3 = [head!.from[0], head!.from[1], 1.72 * 0.875]
    expect(isInside(head!, chin) && isInside(body, chin)).toBe(true)
  })

  it('turned 90° right, looks to camera-right, the back of the head toward camera-left', () => {
    const turned = sceneOf({ subject: { turnedRight: degreesOf(90) }, wanted: { framing: undefined } })
    expectAt(turned.subject.figures[0]!.looks, [1, 0, 0])
    expect(turned.subject.figures[0]!.head!.from[0]).toBeLessThan(-0.09)
    expectAt(turned.points.get('subject')!.normal!, [1, 0, 0])
    // Seen from the side it is as wide as it is deep.
    expect(turned.subject.bounds.max[0] - turned.subject.bounds.min[0]).toBeLessThan(0.3)
    expect(turned.subject.bounds.max[1] - turned.subject.bounds.min[1]).toBeCloseTo(0.45, 9)
  })
})

describe('poses', () => {
  it('seated: the face at 1.2 m', () => {
    const scene = sceneOf({ subject: { pose: 'seated' } })
    expectAt(scene.points.get('subject')!.at, [0, 0, 1.2])
    expect(scene.subject.figures[0]!.top).toBeCloseTo(1.2 + 0.06 * 1.72, 9)
  })

  it('lying: on the back, feet toward the camera, face up', () => {
    const scene = sceneOf({ subject: { pose: 'lying', facesAt: 0.3 }, wanted: { framing: undefined } })
    const { min, max } = scene.subject.bounds
    expectAt(scene.points.get('subject')!.at, [0, 0, 0.3])
    expectAt(scene.points.get('subject')!.normal!, [0, 0, 1])
    expect(max[1] - min[1]).toBeCloseTo(1.72, 9)
    expect(max[1]).toBeCloseTo(0.06 * 1.72, 9)
    expect(min[2]).toBeGreaterThanOrEqual(0)
    expect(scene.points.get('hair')!.normal).toEqual([0, 1, 0])
  })

  it('lying turned 90° right: head at camera-left', () => {
    const { bounds } = sceneOf({
      subject: { pose: 'lying', facesAt: 0.3, turnedRight: degreesOf(90) },
      wanted: { framing: undefined },
    }).subject
    expect(bounds.min[0]).toBeCloseTo(-0.06 * 1.72, 9)
    expect(bounds.max[0]).toBeCloseTo(0.94 * 1.72, 9)
  })

  it('on a platform: everything is so much higher', () => {
    const scene = sceneOf({ subject: { standsOn: table } })
    expectAt(scene.points.get('subject')!.at, [0, 0, 0.8 + 0.94 * 1.72])
    expect(scene.subject.table).toEqual({ z: 0.8, min: [-0.5, -0.7, 0.8], max: [0.5, 0.7, 0.8] })
    expect(scene.points.get('floor')!.on).toBe('table')
    expect(scene.points.get('floor')!.at[2]).toBe(0.8)
  })
})

describe('framing', () => {
  const boundsFor = (framing: 'face' | 'head and shoulders' | 'waist' | 'three-quarter' | 'full length') =>
    sceneOf({ wanted: { framing } }).subject.bounds

  it('holds more from face to full length', () => {
    const bottoms = (['face', 'head and shoulders', 'waist', 'three-quarter', 'full length'] as const).map(
      (framing) => boundsFor(framing).min[2] / 1.72,
    )
    // Chin, upper chest, navel, half-way down the thigh, soles (common practice, no source).
    const want = [0.87, 0.75, 0.59, 0.37, 0]
    bottoms.forEach((bottom, i) => {
      expect(bottom).toBeCloseTo(want[i]!, 6)
    })
  })

  it('of the face is the width of a head, else of the shoulders', () => {
    expect(boundsFor('face').max[0]).toBeCloseTo(0.045 * 1.72, 9)
    expect(boundsFor('head and shoulders').max[0]).toBeCloseTo(0.225, 9)
  })
})

describe('a group', () => {
  const scene = sceneOf({
    subject: {
      kind: 'group',
      rows: [
        { people: 3, spacing: 0.5, facesAt: 0.75, behind: 0 },
        { people: 2, spacing: 0.7, facesAt: 1.2, behind: 0.45 },
        { people: 1, spacing: 1, facesAt: 1.6, behind: 0.5 },
      ],
    },
    wanted: { framing: undefined },
  })
  const face = (name: string) => scene.subject.figures.find((figure) => figure.name === name)!.face

  it('stands in rows, centred, each behind the one in front (by hand)', () => {
    expect(scene.subject.figures.map((figure) => figure.name)).toEqual([
      'row-1-1',
      'row-1-2',
      'row-1-3',
      'row-2-1',
      'row-2-2',
      'row-3-1',
    ])
    expectAt(face('row-1-1'), [-0.5, 0, 0.75])
    expectAt(face('row-1-2'), [0, 0, 0.75])
    expectAt(face('row-2-1'), [-0.35, 0.45, 1.2])
    expectAt(face('row-2-2'), [0.35, 0.45, 1.2])
    expectAt(face('row-3-1'), [0, 0.95, 1.6])
  })

  it('has points at the ends of its rows', () => {
    expectAt(scene.points.get('row-1-left')!.at, [-0.5, 0, 0.75])
    expectAt(scene.points.get('row-1-right')!.at, [0.5, 0, 0.75])
    expectAt(scene.points.get('row-2-right')!.at, [0.35, 0.45, 1.2])
    expectAt(scene.points.get('row-3-left')!.at, scene.points.get('row-3-right')!.at)
    expect(scene.points.has('row-4-left')).toBe(false)
  })

  it('is metered over its front row at the mean height of its faces; its back and hair are the last row’s', () => {
    // (3 · 0.75 + 2 · 1.2 + 1.6) / 6
    expectAt(scene.points.get('subject')!.at, [0, 0, 6.25 / 6])
    expectAt(scene.subject.tapeFrom, [0, 0, 6.25 / 6])
    expect(scene.points.get('subject-back')!.at[1]).toBeGreaterThan(0.95)
    expect(scene.points.get('hair')!.at[2]).toBeCloseTo(1.6 + 0.06 * 1.72, 9)
  })

  it('has its edges at the outermost heads', () => {
    expect(scene.points.get('subject-left')!.at[0]).toBeLessThan(-0.5)
    expect(scene.points.get('subject-right')!.at[0]).toBeGreaterThan(0.5)
    expect(scene.points.get('subject-left')!.at[2]).toBeCloseTo(0.75, 9)
  })
})

describe('an object', () => {
  const bottle = { kind: 'object', height: 0.3, width: 0.08, depth: 0.06, standsOn: table } as const

  it('stands on its table; the tape starts at its middle, the subject point is its front', () => {
    const scene = sceneOf({ subject: bottle })
    expectAt(scene.subject.tapeFrom, [0, 0, 0.95])
    expectAt(scene.points.get('subject')!.at, [0, -0.03, 0.95])
    expectAt(scene.points.get('subject')!.normal!, [0, -1, 0])
    expectAt(scene.points.get('subject-back')!.at, [0, 0.03, 0.95])
    expectAt(scene.points.get('hair')!.at, [0, 0, 1.1])
    expect(scene.points.get('subject')!.on).toBe('object')
    expectAt(scene.subject.bounds.min, [-0.04, -0.03, 0.8])
    expectAt(scene.subject.bounds.max, [0.04, 0.03, 1.1])
  })

  it('turned 90°, shows its side', () => {
    const scene = sceneOf({ subject: { ...bottle, turnedRight: degreesOf(90) } })
    expectAt(scene.points.get('subject')!.at, [0, -0.04, 0.95])
  })

  it('flatter than it is deep keeps its depth', () => {
    const scene = sceneOf({ subject: { ...bottle, height: 0.02, width: 0.3, depth: 0.2 } })
    expectAt(scene.subject.bounds.max, [0.15, 0.1, 0.82])
  })
})

describe('the edges that the camera sees', () => {
  /** The bearing of a place from the camera's axis, and the most extreme one over a figure's head section at a height. */
  const bearing = (camera: SceneCamera, at: Vec3) => {
    const d = subtract(at, camera.eye)
    return Math.atan2(dot(d, camera.right), dot(d, camera.forward))
  }
  const section = (head: Capsule, z: number): Vec3[] => {
    const along = cross([0, 0, 1], head.acrossDirection)
    return Array.from({ length: 20000 }, (_, i) => {
      const turn = (i / 20000) * 2 * Math.PI
      return add(
        [head.from[0], head.from[1], z],
        add(
          scale(head.acrossDirection, head.across * Math.cos(turn)),
          scale(along, head.along * Math.sin(turn)),
        ),
      )
    })
  }

  it('touch the head where no other place of it is further out (brute force over its section)', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.8, max: 5, noNaN: true }),
        fc.double({ min: -1.5, max: 1.5, noNaN: true }),
        fc.double({ min: -3, max: 3, noNaN: true }),
        (distance, right, turnedRight) => {
          const scene = sceneOf({
            camera: { at: { distance, height: 1.6, right } },
            subject: { turnedRight, facesAt: 1.6 },
          })
          const bearings = section(scene.subject.figures[0]!.head!, 1.6).map((at) =>
            bearing(scene.camera, at),
          )
          const left = scene.points.get('subject-left')!
          const other = scene.points.get('subject-right')!
          expect(bearing(scene.camera, left.at)).toBeCloseTo(Math.min(...bearings), 6)
          expect(bearing(scene.camera, other.at)).toBeCloseTo(Math.max(...bearings), 6)
          for (const edge of [left, other]) {
            expect(edge.at[2]).toBeCloseTo(1.6, 9)
            // The line of sight grazes the surface.
            expect(dot(edge.normal!, unit(subtract(edge.at, scene.camera.eye)))).toBeCloseTo(0, 9)
          }
        },
      ),
      { numRuns: 60, seed: 1 },
    )
  })

  it('of a head straight under a level camera are its sides', () => {
    const scene = sceneOf({
      camera: {
        at: { distance: 0, height: 4, right: 0 },
      },
    })
    expect(scene.points.get('subject-left')!.at[0]).toBeCloseTo(-0.045 * 1.72, 6)
    expect(scene.points.get('subject-right')!.at[0]).toBeCloseTo(0.045 * 1.72, 6)
  })
})

describe('a capsule', () => {
  const anyCapsule = fc
    .record({
      turn: fc.double({ min: -3, max: 3, noNaN: true }),
      high: fc.double({ min: 0.05, max: 1.5, noNaN: true }),
      across: fc.double({ min: 0.05, max: 0.5, noNaN: true }),
      along: fc.double({ min: 0.05, max: 0.5, noNaN: true }),
      cap: fc.double({ min: 0.02, max: 0.4, noNaN: true }),
    })
    .map(
      ({ turn, high, ...axes }) =>
        ({
          from: [0.3, -0.2, 0.5],
          to: [0.3, -0.2, 0.5 + high],
          acrossDirection: [Math.cos(turn), Math.sin(turn), 0],
          ...axes,
        }) as unknown as Capsule,
    )

  it('reaches as far as the furthest of its surface (brute force)', () => {
    fc.assert(
      fc.property(
        anyCapsule,
        fc.double({ min: -3, max: 3, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        (capsule, turn, rise) => {
          const flat = Math.sqrt(1 - rise * rise)
          const direction: Vec3 = [flat * Math.cos(turn), flat * Math.sin(turn), rise]
          const furthest = Math.max(...surfacePoints(capsule, 120).map((at) => dot(at, direction)))
          const gap = reach(capsule, direction) - furthest
          expect(gap).toBeGreaterThan(-1e-9)
          expect(gap).toBeLessThan(0.002)
        },
      ),
      { numRuns: 60, seed: 1 },
    )
  })

  it('holds what is a hair inside its surface, and not what is a hair outside', () => {
    fc.assert(
      fc.property(anyCapsule, (capsule) => {
        const middle = scale(add(capsule.from, capsule.to), 0.5)
        for (const at of surfacePoints(capsule, 12)) {
          const out = subtract(at, middle)
          expect(length(out)).toBeGreaterThan(0)
          expect(isInside(capsule, add(middle, scale(out, 0.999)))).toBe(true)
          expect(isInside(capsule, add(middle, scale(out, 1.001)))).toBe(false)
        }
      }),
      { numRuns: 60, seed: 2 },
    )
  })
})

describe('own points', () => {
  it('lie on what they touch', () => {
    const at = (placement: object) =>
      sceneOf({
        subject: { kind: 'object', height: 0.3, width: 0.1, depth: 0.1, standsOn: table },
        points: new Map([
          [
            'spot',
            {
              by: 'offsets',
              right: 0.2,
              behind: 0,
              beforeBackdrop: undefined,
              height: undefined,
              ...placement,
            },
          ],
        ]) as never,
      }).points.get('spot')!
    expect(at({ height: { over: 'floor', metres: 0 } })).toMatchObject({ on: 'floor', normal: [0, 0, 1] })
    expect(at({ height: { over: 'table', metres: 0 } })).toMatchObject({ on: 'table', normal: [0, 0, 1] })
    expect(at({ beforeBackdrop: 0 })).toMatchObject({ on: 'backdrop', normal: [0, -1, 0] })
    expect(at({})).toMatchObject({ on: 'air', normal: undefined, at: [0.2, 0, 0.8 + 0.15] })
  })
})
