/** Backdrop, panels and room around the subject. Worked by hand. */
import { describe, expect, it } from 'vitest'
import { buildScene } from '../../src/scene/build-scene.js'
import { add, distance, dot, scale, subtract, type Vec3 } from '../../src/scene/vector.js'
import {
  degreesOf,
  makePanel,
  makePlan,
  offsets,
  type PlanOverrides,
  surface,
  tape,
} from '../helpers/make-plan.js'

const sceneOf = (overrides: PlanOverrides) => buildScene(makePlan({ lights: [], ...overrides }))
const expectAt = (at: Vec3, want: Vec3) => {
  want.forEach((value, i) => {
    expect(at[i]).toBeCloseTo(value, 9)
  })
}
const table = { height: 0.8, surface: surface('board', 0.9), width: 1, depth: 1.4 }

describe('the backdrop', () => {
  it('is centred on the centre line, behind the subject, foot on the floor', () => {
    expect(sceneOf({ backdrop: { behind: 2.4 } }).backdrop).toEqual({
      y: 2.4,
      left: -1.36,
      right: 1.36,
      bottom: 0,
      top: 2.8,
      sweepFront: undefined,
    })
  })

  it('sweeps forward to in front of the subject', () => {
    expect(sceneOf({ backdrop: { sweep: { front: 1.5 } } }).backdrop!.sweepFront).toBe(-1.5)
  })

  it('sweeps onto a table, and hangs from there up', () => {
    const subject = { kind: 'object', height: 0.3, width: 0.1, depth: 0.1, standsOn: table } as const
    const swept = sceneOf({ subject, backdrop: { height: 1, sweep: { front: 0.3 } } }).backdrop!
    expect([swept.bottom, swept.top]).toEqual([0.8, 1.8])
    const behind = sceneOf({ subject, backdrop: { height: 1 } }).backdrop!
    expect([behind.bottom, behind.top]).toEqual([0, 1])
  })

  it('ends at the ceiling', () => {
    expect(sceneOf({ room: { height: 2.4 } }).backdrop!.top).toBe(2.4)
  })

  it('without one has no points on it', () => {
    const { backdrop, points } = sceneOf({ backdrop: 'none' })
    expect(backdrop).toBeUndefined()
    expect([...points.keys()].filter((name) => name.startsWith('backdrop'))).toEqual([])
  })
})

describe('the room', () => {
  it('is a box about the set', () => {
    const room = { width: 4.2, length: 7, height: 2.6, leftWall: 1.9, behindBackdrop: 0.4 }
    const made = sceneOf({ room, backdrop: { behind: 2 } }).room!
    expect(made.left).toBe(-1.9)
    expect(made.right).toBeCloseTo(2.3, 12)
    expect(made.back).toBeCloseTo(2.4, 12)
    expect(made.front).toBeCloseTo(-4.6, 12)
    expect(made.height).toBe(2.6)
  })
})

describe('a panel', () => {
  const face = (overrides: object, more: PlanOverrides = {}) =>
    sceneOf({ ...more, panels: [makePanel('p', overrides)] }).panels.get('p')!.faces[0]!

  it('faces the sides by their names, standing as its size says', () => {
    const facing = (side: string) => face({ faces: { kind: 'side', side } }).normal
    expect(facing('left')).toEqual([-1, 0, 0])
    expect(facing('right')).toEqual([1, 0, 0])
    expect(facing('camera')).toEqual([0, -1, 0])
    expect(facing('backdrop')).toEqual([0, 1, 0])
    const made = face({})
    expectAt(made.centre, [-0.8, 0.3, 1.2])
    expect([made.width, made.height]).toEqual([0.6, 2])
    expectAt(made.up, [0, 0, 1])
  })

  it('faces an angle as lights stand at one: 45° left is between the camera and camera-left', () => {
    const made = face({ faces: { kind: 'angle', angleLeft: degreesOf(45) } })
    expectAt(made.normal, [-Math.SQRT1_2, -Math.SQRT1_2, 0])
  })

  it('faces a point, tilted', () => {
    const made = face(
      { at: offsets({ right: 1, height: 0.5 }), faces: { kind: 'point', point: 'subject' } },
      { subject: { facesAt: 1.5 } },
    )
    expectAt(made.normal, [-Math.SQRT1_2, 0, Math.SQRT1_2])
  })

  it('without a height is level with the face, but never through the floor', () => {
    const at = offsets({ right: 1 })
    const low = { subject: { facesAt: 1 } }
    expect(face({ at, size: { width: 1, height: 1 } }, low).centre[2]).toBe(1)
    expect(face({ at, size: { width: 1, height: 2.4 } }, low).centre[2]).toBe(1.2)
  })

  it('by tape stands as a light does', () => {
    expectAt(face({ at: tape(90, 2, { height: 1.5 }) }, { subject: { facesAt: 1.5 } }).centre, [-2, 0, 1.5])
  })
})

describe('a v-flat', () => {
  const flat = (opening: number | undefined) =>
    sceneOf({
      panels: [
        makePanel('v', {
          kind: 'v-flat',
          size: { width: 1.2, height: 2.4 },
          opening: opening === undefined ? undefined : degreesOf(opening),
          at: offsets({ right: -1.5, behind: 0.6 }),
          faces: { kind: 'side', side: 'right' },
        }),
      ],
    }).panels.get('v')!.faces

  it('has two leaves from its fold, 90° apart unless said, standing on the floor', () => {
    const half = 0.6 * Math.SQRT1_2
    const leaves = flat(undefined)
    expectAt(leaves[0]!.centre, [-1.5 + half, 0.6 + half, 1.2])
    expectAt(leaves[1]!.centre, [-1.5 + half, 0.6 - half, 1.2])
  })

  it.each([40, 90, 150])('opened %d°: leaves so far apart, their insides to each other', (opening) => {
    const fold: Vec3 = [-1.5, 0.6, 1.2]
    const [a, b] = flat(opening) as [ReturnType<typeof flat>[0], ReturnType<typeof flat>[0]]
    const [toA, toB] = [subtract(a!.centre, fold), subtract(b!.centre, fold)]
    expect(Math.acos(dot(toA, toB) / 0.36)).toBeCloseTo(degreesOf(opening), 9)
    expect(dot(a!.normal, toB)).toBeGreaterThan(0)
    expect(dot(b!.normal, toA)).toBeGreaterThan(0)
    // Each leaf is square to its normal and begins at the fold.
    for (const leaf of [a!, b!]) {
      expect(dot(leaf.normal, subtract(leaf.centre, fold))).toBeCloseTo(0, 9)
      const ends = [0.6, -0.6].map((way) => add(leaf.centre, scale(leaf.across, way)))
      expect(Math.min(...ends.map((end) => distance(end, fold)))).toBeCloseTo(0, 9)
    }
  })

  it('opened flat is one board that faces the way it opens', () => {
    for (const leaf of flat(180)) expectAt(leaf.normal, [1, 0, 0])
  })
})
