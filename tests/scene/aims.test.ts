/** Where lights point and how their fronts stand. Directions worked by hand. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Aim, Feather, Light } from '../../src/language/plan.js'
import { buildScene } from '../../src/scene/build-scene.js'
import { dot, type Vec3 } from '../../src/scene/vector.js'
import {
  degreesOf,
  flashgun,
  head,
  makeLight,
  makeModifier,
  makePanel,
  makePlan,
  offsets,
  type PlanOverrides,
  softbox,
  tape,
  windowUnit,
} from '../helpers/make-plan.js'

const face = 1.5
const placed = (light: Partial<Light>, more: PlanOverrides = {}) =>
  buildScene(
    makePlan({ subject: { facesAt: face }, ...more, lights: [makeLight('key', light as object)] }),
  ).lights.get('key')!
const expectAt = (at: Vec3, want: Vec3) => {
  want.forEach((value, i) => {
    expect(at[i]).toBeCloseTo(value, 9)
  })
}

describe('aim by role', () => {
  const at = offsets({ right: 1, behind: 1, height: 1.5 })

  it('key and fill: the face', () => expectAt(placed({ role: 'key', at }).aim, [0, 0, face]))

  it('backdrop: its middle at the height of the face, whatever the camera sees', () => {
    const aside = { camera: { at: { distance: 2, height: 0.5, right: 0.7 } }, backdrop: { behind: 2 } }
    expectAt(placed({ role: 'backdrop', at }, aside).aim, [0, 2, face])
    expectAt(placed({ role: 'backdrop', at }, { backdrop: { behind: 2, height: 1.2 } }).aim, [0, 2, 1.2])
  })

  it('backdrop without a backdrop: the wall behind', () => {
    const room = { room: { behindBackdrop: 0.4 }, backdrop: 'none' } as const
    expectAt(placed({ role: 'backdrop', at }, room).aim, [0, 0.4, face])
  })

  it('rim: the back of the head; hair: its top', () => {
    const rim = placed({ role: 'rim', at }).aim
    expect(rim[0]).toBeCloseTo(0, 9)
    // A head is about 20 cm deep (from memory), the face is its front.
    expect(rim[1]).toBeGreaterThan(0.17)
    expect(rim[1]).toBeLessThan(0.22)
    expect(placed({ role: 'hair', at }).aim[2]).toBeCloseTo(face + 0.06 * 1.72, 9)
  })
})

describe('aim as stated', () => {
  const at = offsets({ right: 1, behind: -1, height: 2 })
  const to = (aim: object): Aim => ({ feather: undefined, ...aim }) as Aim
  const room = {
    room: { width: 4, leftWall: 2.2, length: 7, height: 2.6, behindBackdrop: 0.5 },
    backdrop: { behind: 2 },
  }

  it('level: parallel to the floor, toward the subject', () =>
    expectAt(placed({ at, aim: to({ at: 'level' }) }).axis, [-Math.SQRT1_2, Math.SQRT1_2, 0]))

  it('a point of the plan', () =>
    expectAt(
      placed(
        { at, aim: to({ at: 'point', point: 'hands' }) },
        { points: new Map([['hands', offsets({ right: 1, height: 1 })]]) as never },
      ).axis,
      [0, Math.SQRT1_2, -Math.SQRT1_2],
    ))

  it('a wall: square onto it', () => {
    const wall = (name: string) => placed({ at, aim: to({ at: 'wall', wall: name }) }, room)
    expectAt(wall('left-wall').aim, [-2.2, -1, 2])
    expectAt(wall('right-wall').aim, [1.8, -1, 2])
    expectAt(wall('back-wall').aim, [1, 2.5, 2])
    expectAt(wall('front-wall').aim, [1, -4.5, 2])
    expectAt(wall('ceiling').aim, [1, -1, 2.6])
    expectAt(wall('floor').aim, [1, -1, 0])
    expectAt(wall('ceiling').axis, [0, 0, 1])
  })

  it('the ceiling above a point', () =>
    expectAt(placed({ at, aim: to({ at: 'ceiling', above: 'subject' }) }, room).aim, [0, 0, 2.6]))

  it('a panel: its middle', () =>
    expectAt(
      placed(
        { at, aim: to({ at: 'panel', panel: 'silk' }) },
        {
          panels: [makePanel('silk', { at: offsets({ right: -0.5, height: 1.2 }) })],
        },
      ).aim,
      [-0.5, 0, 1.2],
    ))

  it('a point that the camera must find is taken as seen from the centre line', () => {
    const seen = (right: number) =>
      placed(
        { at, aim: to({ at: 'point', point: 'backdrop-left' }) },
        { camera: { at: { distance: 2.5, height: face, right } } },
      ).aim
    expect(seen(0.6)).toEqual(seen(0))
  })
})

describe('feathering', () => {
  const sides = {
    left: [-1, 0, 0],
    right: [1, 0, 0],
    up: [0, 0, 1],
    down: [0, 0, -1],
    camera: [0, -1, 0],
    backdrop: [0, 1, 0],
  } as const
  const axis = (feather: Feather | undefined, angle: number) =>
    placed({ at: tape(angle, 1.4, { height: 2 }), aim: { at: 'point', point: 'subject', feather } }).axis

  it('15° towards the camera from a light straight at the left: the axis swings 15° (by hand)', () => {
    const light = placed({
      at: tape(90, 1, { height: face }),
      aim: { at: 'point', point: 'subject', feather: { by: degreesOf(15) as never, towards: 'camera' } },
    })
    expectAt(light.axis, [Math.cos(degreesOf(15)), -Math.sin(degreesOf(15)), 0])
    expectAt(light.aim, [0, 0, face])
  })

  it('turns by its angle, to its side, and no other way', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...(Object.keys(sides) as (keyof typeof sides)[])),
        fc.double({ min: 1, max: 40, noNaN: true }),
        fc.double({ min: -175, max: 175, noNaN: true }),
        (towards, by, angle) => {
          const plain = axis(undefined, angle)
          const off = axis({ by: degreesOf(by) as never, towards }, angle)
          const side = sides[towards]
          const between = Math.acos(Math.min(1, Math.max(-1, dot(plain, side))))
          fc.pre(between > degreesOf(by) && between < Math.PI - 0.01)
          expect(Math.acos(dot(plain, off))).toBeCloseTo(degreesOf(by), 6)
          // In one plane with the side: the angle left to it is what is left.
          expect(Math.acos(dot(off, side))).toBeCloseTo(between - degreesOf(by), 6)
        },
      ),
      { numRuns: 300, seed: 1 },
    )
  })

  it('of a light that points along that side changes nothing', () => {
    const plain = placed({ at: tape(90, 1, { height: face }) }).axis
    const off = placed({
      at: tape(90, 1, { height: face }),
      aim: { at: 'point', point: 'subject', feather: { by: 0.3 as never, towards: 'right' } },
    }).axis
    expect(off).toEqual(plain)
  })
})

describe('the front', () => {
  const front = (light: Partial<Light>) => placed(light).front!

  it('looks along the axis, its across to the right of someone it lights', () => {
    // From the camera's end onto the backdrop: someone in front of it faces the camera, their right is camera-left.
    const { normal, across, up } = front({ at: tape(0, 2, { height: face }), modifier: softbox(0.6, 0.9) })
    expectAt(normal, [0, 1, 0])
    expectAt(across, [-1, 0, 0])
    expectAt(up, [0, 0, 1])
  })

  it('stands as its size says, and lies when told', () => {
    const at = tape(30, 1.5, { height: 2 })
    const standing = front({ at, modifier: softbox(0.3, 1.2) })
    const lying = front({ at, modifier: softbox(0.3, 1.2), lying: true })
    expect([standing.width, standing.height]).toEqual([0.3, 1.2])
    expect([lying.width, lying.height]).toEqual([1.2, 0.3])
    expect(standing.across[2]).toBeCloseTo(0, 12)
    expect(standing.up[2]).toBeGreaterThan(0.9)
  })

  it('straight overhead has its up toward the backdrop', () => {
    const { normal, up } = front({ at: tape(0, 1, { height: face + 1 }), modifier: softbox(0.6, 0.9) })
    expectAt(normal, [0, 0, -1])
    expectAt(up, [0, 1, 0])
  })

  it('takes its outline from the modifier, else from the unit', () => {
    expect(front({ modifier: makeModifier() }).outline).toBe('disc')
    expect(front({ unit: flashgun }).outline).toBe('rectangle')
    expect(front({ unit: head(400) }).outline).toBe('disc')
  })
})

describe('a window', () => {
  const pane = { unit: windowUnit, size: { width: 1.2, height: 1.5 } as never }

  it('faces as stated', () => {
    const { front } = placed({
      ...pane,
      at: offsets({ right: -1.8, behind: 0.2, height: 1.4 }),
      faces: { kind: 'side', side: 'right' },
    })
    expectAt(front!.normal, [1, 0, 0])
    expect([front!.width, front!.height]).toEqual([1.2, 1.5])
  })

  it('unsaid, faces square into the set', () => {
    expectAt(placed({ ...pane, at: offsets({ right: 1.8, behind: 0.2 }) }).axis, [-1, 0, 0])
    expectAt(placed({ ...pane, at: offsets({ right: 0.3, behind: -3 }) }).axis, [0, 1, 0])
  })
})
