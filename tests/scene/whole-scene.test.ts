/** Laws that hold for every plan: finite numbers, mirror, scale, and a camera that moves no light. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Plan } from '../../src/language/plan.js'
import { buildScene } from '../../src/scene/build-scene.js'
import type { Face, Scene } from '../../src/scene/scene.js'
import { dot, length, type Vec3 } from '../../src/scene/vector.js'
import { anyPlan } from '../helpers/any-plan.js'
import { makeLight, makePanel, makePlan, offsets, softbox, tape, windowUnit } from '../helpers/make-plan.js'
import { mirrorName, mirrorPlan, scalePlan } from '../helpers/mirror-plan.js'

/** Every number inside a value, with the way to it. */
const numbers = (value: unknown, way = ''): [string, number][] =>
  typeof value === 'number'
    ? [[way, value]]
    : value instanceof Map
      ? [...value].flatMap(([key, one]) => numbers(one, `${way}/${key}`))
      : typeof value === 'object' && value !== null
        ? Object.entries(value).flatMap(([key, one]) => numbers(one, `${way}/${key}`))
        : []

const mirrored = (v: Vec3): Vec3 => [-v[0], v[1], v[2]]
const near = (a: Vec3, b: Vec3, by = 1e-9) =>
  Math.max(...a.map((x, i) => Math.abs(x - b[i]!))) <= by * Math.max(1, ...a.map(Math.abs))

/** A set that has something of everything, nothing of it symmetrical. */
const crowded = (): Plan =>
  makePlan({
    room: { leftWall: 1.7 },
    camera: {
      at: { distance: 3.1, height: 1.4, right: 0.35 },
      aim: { at: 'point', point: 'subject', feather: undefined } as never,
    },
    subject: {
      kind: 'group',
      turnedRight: 0.3,
      rows: [
        { people: 3, spacing: 0.5, facesAt: 0.75, behind: 0 },
        { people: 2, spacing: 0.7, facesAt: 1.2, behind: 0.45 },
      ],
    },
    lights: [
      makeLight('key', { modifier: softbox(0.6, 0.9), at: tape(35, 1.4, { height: 2 }) }),
      makeLight('rim', {
        role: 'rim',
        at: tape(-150, 2, { upDegrees: 20 }),
        aim: { at: 'point', point: 'subject-back', feather: { by: 0.2, towards: 'left' } },
      }),
      makeLight('paper', { role: 'backdrop', at: offsets({ right: 1.5, beforeBackdrop: 1.2, height: 1.4 }) }),
      makeLight('edge', {
        role: 'effect',
        at: tape(90, 1),
        aim: { at: 'point', point: 'backdrop-left', feather: undefined },
      }),
      makeLight('wall', {
        role: 'effect',
        at: tape(60, 1),
        aim: { at: 'wall', wall: 'left-wall', feather: undefined },
      }),
      makeLight('pane', {
        unit: windowUnit,
        at: offsets({ right: -1.8, behind: 0.2, height: 1.4 }),
        faces: { kind: 'side', side: 'right' },
        size: { width: 1.2, height: 1.5 },
      }),
    ],
    panels: [
      makePanel('flag'),
      makePanel('v', {
        kind: 'v-flat',
        opening: 1.4,
        at: offsets({ right: -1.5, behind: 0.6 }),
        faces: { kind: 'point', point: 'subject-left' },
      }),
    ],
    points: new Map([['hands', offsets({ right: 0.2, behind: -0.2, height: 0.9 })]]) as never,
  })

describe('any plan', () => {
  it('gives finite numbers only, and never throws', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const wrong = numbers(buildScene(plan)).filter(([, value]) => !Number.isFinite(value))
        expect(wrong).toEqual([])
      }),
      { numRuns: 1500, seed: 1 },
    )
  })

  it('gives unit directions and right-handed fronts', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const scene = buildScene(plan)
        const fronts = [
          ...[...scene.lights.values()].flatMap((light) => (light.front === undefined ? [] : [light.front])),
          ...[...scene.panels.values()].flatMap((panel) => panel.faces),
        ]
        for (const { across, up, normal } of fronts) {
          for (const v of [across, up, normal]) expect(length(v)).toBeCloseTo(1, 9)
          for (const [a, b] of [
            [across, up],
            [up, normal],
            [normal, across],
          ] as const)
            expect(dot(a, b)).toBeCloseTo(0, 9)
          // across × up · normal, written out: +1 for a right-handed triple.
          const [[a, b, c], [d, e, f], [g, h, i]] = [across, up, normal]
          expect(a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)).toBeCloseTo(1, 9)
        }
        const { forward, right, up } = scene.camera
        for (const v of [forward, right, up]) expect(length(v)).toBeCloseTo(1, 9)
        for (const light of scene.lights.values()) expect(length(light.axis)).toBeCloseTo(1, 9)
        for (const point of scene.points.values())
          if (point.normal !== undefined) expect(length(point.normal)).toBeCloseTo(1, 9)
      }),
      { numRuns: 300, seed: 2 },
    )
  })

  it('gives the same for the same plan', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        expect(buildScene(plan)).toEqual(buildScene(plan))
      }),
      { numRuns: 30, seed: 3 },
    )
  })
})

const expectMirrored = (one: Scene, other: Scene): void => {
  expect([...other.points.keys()].sort()).toEqual([...one.points.keys()].map(mirrorName).sort())
  for (const [name, point] of one.points) {
    const twin = other.points.get(mirrorName(name))!
    expect(near(twin.at, mirrored(point.at)), `point ${name}: ${point.at} and ${twin.at}`).toBe(true)
    expect(twin.on).toBe(point.on)
    if (point.normal !== undefined)
      expect(near(twin.normal!, mirrored(point.normal)), `normal at ${name}`).toBe(true)
  }
  expect(near(other.camera.eye, mirrored(one.camera.eye))).toBe(true)
  expect(near(other.camera.forward, mirrored(one.camera.forward))).toBe(true)
  expect(other.camera.tanHalfWidth).toBeCloseTo(one.camera.tanHalfWidth, 12)
  const sameFace = (a: Face, b: Face, name: string) => {
    expect(near(b.centre, mirrored(a.centre)), `${name} centre`).toBe(true)
    expect(near(b.normal, mirrored(a.normal)), `${name} normal`).toBe(true)
    // Up is mirrored; across runs the other way round, as a right-handed triple must.
    expect(near(b.up, mirrored(a.up)), `${name} up`).toBe(true)
    expect([b.width, b.height]).toEqual([a.width, a.height])
  }
  for (const [name, light] of one.lights) {
    const twin = other.lights.get(name)!
    expect(near(twin.axis, mirrored(light.axis)), `${name}: ${light.axis} and ${twin.axis}`).toBe(true)
    expect(near(twin.aim, mirrored(light.aim)), `${name} aim`).toBe(true)
    if (light.front !== undefined) sameFace(light.front, twin.front!, name)
  }
  for (const [name, panel] of one.panels) {
    const twins = other.panels.get(name)!.faces
    // The two leaves of a v-flat change places.
    const order = panel.faces.length === 2 ? [1, 0] : [0]
    panel.faces.forEach((leaf, i) => {
      sameFace(leaf, twins[order[i]!]!, name)
    })
  }
  expect(other.subject.bounds.min[0]).toBeCloseTo(-one.subject.bounds.max[0], 9)
  expect(other.subject.bounds.max[0]).toBeCloseTo(-one.subject.bounds.min[0], 9)
  if (one.room !== undefined) {
    expect(other.room!.left).toBeCloseTo(-one.room.right, 9)
    expect(other.room!.right).toBeCloseTo(-one.room.left, 9)
  }
}

describe('left and right swapped', () => {
  it('gives the mirrored scene, names of sides swapped', () => {
    const plan = crowded()
    expectMirrored(buildScene(plan), buildScene(mirrorPlan(plan)))
  })

  it('twice is the plan again', () => {
    expectMirrored(buildScene(mirrorPlan(crowded())), buildScene(mirrorPlan(mirrorPlan(crowded()))))
  })

  it('for any plan', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        // Looking straight up or down, or with nothing to look at, the frame has no side that could be mirrored.
        const scene = buildScene(plan)
        fc.pre(Math.abs(scene.camera.forward[2]) < 0.99)
        fc.pre(numbers(scene).every(([, value]) => Math.abs(value) < 1e5 + 1))
        const other = buildScene(mirrorPlan(plan))
        for (const [name, light] of scene.lights)
          expect(
            near(other.lights.get(name)!.axis, mirrored(light.axis), 1e-6),
            `${name} ${light.axis} ${other.lights.get(name)!.axis}`,
          ).toBe(true)
        expect(other.faults).toEqual(scene.faults)
      }),
      { numRuns: 300, seed: 4 },
    )
  })
})

describe('a camera moved aside or turned', () => {
  const lit = (scene: Scene) => [scene.lights, scene.panels, scene.subject, scene.backdrop, scene.room]
  const moved = (plan: Plan): Plan =>
    makeMoved(plan, { at: { ...plan.camera.at, right: 1.3 as typeof plan.camera.at.right } })
  const makeMoved = (plan: Plan, camera: Partial<Plan['camera']>): Plan => ({
    ...plan,
    camera: { ...plan.camera, ...camera },
  })

  it('moves no light, no panel and no fixed point', () => {
    const plan = crowded()
    const before = buildScene(plan)
    for (const other of [
      moved(plan),
      makeMoved(plan, { aim: { at: 'level' } }),
      makeMoved(moved(plan), { aim: { at: 'point', point: 'hands', feather: undefined } }),
    ]) {
      const after = buildScene(other)
      expect(lit(after)).toEqual(lit(before))
      for (const name of ['subject', 'subject-back', 'hair', 'floor', 'hands', 'row-1-left', 'row-2-right'])
        expect(after.points.get(name)).toEqual(before.points.get(name))
      expect(after.points.get('backdrop')).not.toEqual(before.points.get('backdrop'))
    }
  })

  it('carries only the flash that sits on it', () => {
    const lights = [
      makeLight('key', { at: { by: 'camera' } }),
      makeLight('rim', { role: 'rim', at: tape(150, 2) }),
    ]
    const plan = makePlan({ lights, stated: [] })
    const before = buildScene(plan)
    const after = buildScene(moved(plan))
    expect(after.lights.get('rim')).toEqual(before.lights.get('rim'))
    expect(
      after.lights.get('key')!.front!.centre[0] - before.lights.get('key')!.front!.centre[0],
    ).toBeCloseTo(1.3, 12)
  })
})

describe('all lengths multiplied', () => {
  it('multiplies every place and turns nothing', () => {
    // Gear in modifiers only, and the lens scaled with the set, so that nothing keeps a size of its own.
    const plan = crowded()
    const boxed: Plan = {
      ...plan,
      lights: new Map(
        [...plan.lights].map(([name, light]) => [name, { ...light, modifier: softbox(0.6, 0.9) }]),
      ),
    }
    const k = 1.7
    const grown = scalePlan(boxed, k)
    const scaled: Plan = {
      ...grown,
      camera: {
        ...grown.camera,
        lens: (boxed.camera.lens * k) as Plan['camera']['lens'],
        sensor: {
          width: (boxed.camera.sensor.width * k) as Plan['camera']['lens'],
          height: (boxed.camera.sensor.height * k) as Plan['camera']['lens'],
        },
      },
    }
    const before = buildScene(boxed)
    const after = buildScene(scaled)
    const times = (v: Vec3): Vec3 => [v[0] * k, v[1] * k, v[2] * k]
    for (const [name, point] of before.points) {
      expect(near(after.points.get(name)!.at, times(point.at)), name).toBe(true)
      if (point.normal !== undefined)
        expect(near(after.points.get(name)!.normal!, point.normal), name).toBe(true)
    }
    for (const [name, light] of before.lights) {
      const twin = after.lights.get(name)!
      expect(near(twin.axis, light.axis), name).toBe(true)
      expect(near(twin.front!.centre, times(light.front!.centre)), name).toBe(true)
      expect(twin.front!.width).toBeCloseTo(light.front!.width * k, 12)
    }
    expect(near(after.subject.bounds.max, times(before.subject.bounds.max))).toBe(true)
    expect(after.camera.tanHalfWidth).toBeCloseTo(before.camera.tanHalfWidth, 12)
  })
})
