/** What stands in a set and what gives light back, held against areas, marching along rays, and counts of crossings. */
import { describe, expect, it } from 'vitest'
import { buildScene } from '../../src/scene/build-scene.js'
import { isInside } from '../../src/scene/capsule.js'
import { firstHit } from '../../src/scene/first-hit.js'
import { rayMeets, rayMeetsFace } from '../../src/scene/ray.js'
import type { Scene, SceneSurface } from '../../src/scene/scene.js'
import { add, distance, dot, scale, subtract, unit, type Vec3 } from '../../src/scene/vector.js'
import { random } from '../bench/plan-texts.js'
import { makeLight, makePanel, makePlan, offsets, softbox, tape } from '../helpers/make-plan.js'

const areaOf = ({ face }: SceneSurface): number => face.width * face.height
const named = (scene: Scene, name: string) => scene.surfaces.filter((one) => one.name === name)
const sum = (values: readonly number[]): number => values.reduce((all, one) => all + one, 0)

const directions = (count: number): readonly Vec3[] => {
  const chance = random(11)
  return Array.from({ length: count }, () =>
    unit([chance.next() * 2 - 1, chance.next() * 2 - 1, chance.next() * 2 - 1]),
  )
}

describe('the surfaces of a room', () => {
  it('are 94 m² for 5 × 4 × 3 m (check value room.area)', () => {
    const scene = buildScene(
      makePlan({ backdrop: 'none', room: { length: 5, width: 4, height: 3, leftWall: 2 } }),
    )
    expect(sum(scene.surfaces.map(areaOf))).toBeCloseTo(94, 9)
  })

  it('look in: every ray from within meets one, and its normal comes toward the ray', () => {
    const scene = buildScene(makePlan({ backdrop: 'none', lights: [], room: {} }))
    for (const ray of directions(300)) {
      const met = scene.surfaces.flatMap((one) => rayMeetsFace(one.face, [0.3, -1.1, 1.2], ray) ?? [])
      expect(met).toHaveLength(1)
      const hit = firstHit(scene, [0.3, -1.1, 1.2], ray, new Set(['person', 'operator']))
      expect(hit?.on).toBe('room')
      expect(dot(hit!.normal, ray)).toBeLessThan(0)
    }
  })

  it('never lie over each other: a sweep takes its part of the floor, a paper on the wall its part of the wall', () => {
    const scene = buildScene(
      makePlan({ backdrop: { behind: 1.5, sweep: { front: 1 } }, room: { behindBackdrop: 0 } }),
    )
    const { room, backdrop } = scene
    const across = room!.right - room!.left
    expect(sum([...named(scene, 'floor'), ...named(scene, 'sweep')].map(areaOf))).toBeCloseTo(
      across * (room!.back - room!.front),
      9,
    )
    expect(sum(named(scene, 'sweep').map(areaOf))).toBeCloseTo(2.72 * 2.5, 9)
    expect(sum([...named(scene, 'back-wall'), ...named(scene, 'backdrop')].map(areaOf))).toBeCloseTo(
      across * room!.height,
      9,
    )
    expect(named(scene, 'backdrop')[0]!.back).toBeUndefined()
    expect(backdrop!.top).toBeLessThanOrEqual(room!.height)
  })

  it('have across × up for their normal', () => {
    const scene = buildScene(makePlan({ backdrop: { sweep: { front: 1 } }, room: {} }))
    for (const { face } of scene.surfaces) {
      const { across: a, up: b, normal } = face
      const n = [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
      for (const i of [0, 1, 2]) expect(n[i]).toBeCloseTo(normal[i]!, 12)
    }
  })
})

describe('a ray', () => {
  it('enters a head or a body where marching along it first comes inside', () => {
    const scene = buildScene(makePlan({ subject: { turnedRight: 0.5 } }))
    const capsules = scene.solids.flatMap(({ body }) => (body.shape === 'capsule' ? [body] : []))
    expect(capsules).toHaveLength(4)
    const from: Vec3 = [0.7, -1.3, 1.5]
    let entered = 0
    for (const ray of directions(400).map((one): Vec3 => unit(add(scale(one, 0.35), [-0.47, 0.87, -0.1]))))
      for (const body of capsules) {
        const hit = rayMeets(body, from, ray)
        const step = 1e-3
        let marched: number | undefined
        for (let t = 0; t < 3 && marched === undefined; t += step)
          if (isInside(body.capsule, add(from, scale(ray, t)))) marched = t
        if (marched !== undefined) {
          entered++
          expect(hit).toBeDefined()
          expect(Math.abs(hit!.t - marched)).toBeLessThanOrEqual(step)
          expect(dot(hit!.normal, ray)).toBeLessThan(0)
        }
      }
    expect(entered).toBeGreaterThan(50)
  })

  it('does not meet what it starts in', () => {
    const scene = buildScene(makePlan())
    const head = scene.solids.find(({ of }) => of === 'figure')!
    const { body } = head
    if (body.shape !== 'capsule') throw new Error('a head is a capsule')
    for (const ray of directions(50)) expect(rayMeets(body, body.capsule.from, ray)).toBeUndefined()
  })

  it('meets a softbox from the side, in front and behind, as deep as it is', () => {
    const light = makeLight('key', { modifier: softbox(0.6, 0.9, { depth: 0.4 }), at: tape(0, 1.5) })
    const scene = buildScene(makePlan({ lights: [light] }))
    const { body } = scene.solids.find(({ of }) => of === 'light')!
    const front = scene.lights.get('key')!.front!
    const ahead = rayMeets(body, add(front.centre, scale(front.normal, 1)), scale(front.normal, -1))
    const behind = rayMeets(body, add(front.centre, scale(front.normal, -1)), front.normal)
    expect(ahead!.t).toBeCloseTo(1, 9)
    expect(behind!.t).toBeCloseTo(0.6, 9)
    const side = rayMeets(body, add(front.centre, add(scale(front.normal, -0.01), [5, 0, 0])), [-1, 0, 0])
    expect(side!.t).toBeCloseTo(5 - 0.3, 1)
  })
})

describe('what the camera sees first', () => {
  it('is the person, and past the shoulder the paper', () => {
    const scene = buildScene(makePlan())
    const { eye, forward } = scene.camera
    const ahead = firstHit(scene, eye, forward, new Set(['operator']))
    expect(ahead).toMatchObject({ on: 'figure', name: 'person', surface: undefined })
    expect(distance(ahead!.at, [0, 0, eye[2]])).toBeLessThan(0.01)
    const past = firstHit(scene, eye, subtract([0.6, 2, 1.9], eye), new Set(['operator']))
    expect(past).toMatchObject({ on: 'backdrop', name: 'backdrop', pointer: '/backdrop' })
    expect(past!.surface!.reflectance).toBe(0.9)
    expect(past!.at[1]).toBeCloseTo(2, 9)
  })

  it('is a panel by the side that is turned to it', () => {
    const board = makePanel('board', {
      kind: 'v-flat',
      size: { width: 1, height: 2 } as never,
      at: offsets({ right: 0, behind: -1 }),
      faces: { kind: 'side', side: 'camera' },
    })
    const panel = {
      ...board,
      surface: { ...board.surface, reflectance: 0.03 },
      outside: { ...board.outside, reflectance: 0.8 },
    }
    const scene = buildScene(makePlan({ panels: [panel] }))
    const front = firstHit(scene, [0.2, -2, 1], [0, 1, 0], new Set(['operator', 'person']))
    const back = firstHit(scene, [0.2, 0.5, 1], [0, -1, 0], new Set(['operator', 'person']))
    expect(front?.surface?.reflectance).toBe(0.03)
    expect(back?.surface?.reflectance).toBe(0.8)
  })
})

describe('the person behind the camera', () => {
  it('stands behind the lens with the eye at its height, feet on the floor', () => {
    const { operator } = buildScene(makePlan())
    expect(operator!.face[2]).toBeCloseTo(1.72 * 0.94, 6)
    expect(operator!.body.from[1]).toBeLessThan(-2.5)
    expect(operator!.top).toBeGreaterThan(1.7)
  })

  it('is not there where the camera stands by itself', () => {
    expect(buildScene(makePlan({ camera: { heldBy: 'stand' } })).operator).toBeUndefined()
  })

  it('kneels behind a low camera', () => {
    const low = buildScene(makePlan({ camera: { at: { distance: 2, height: 0.6, right: 0 } } })).operator!
    expect(low.top).toBeCloseTo(0.71, 6)
    expect(low.body.from[2]).toBeGreaterThan(0)
  })
})
