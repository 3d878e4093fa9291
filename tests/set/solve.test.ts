/** Solved values against closed forms, and against the plan computed afresh with the value written in. */
import '../helpers/empty-space.js'
import { describe, expect, it } from 'vitest'
import { difference } from '../../src/light/figure.js'
import { computeSet } from '../../src/set/compute-set.js'
import type { ComputedSet } from '../../src/set/computed-set.js'
import { knobRange } from '../../src/set/knob-range.js'
import type { Knob } from '../../src/set/knobs.js'
import { solve, solveAtGear } from '../../src/set/solve.js'
import { makeLight, makePlan, offsets, type PlanOverrides, softbox, tape } from '../helpers/make-plan.js'

const plan = (more: PlanOverrides = {}) =>
  makePlan({
    lights: [
      makeLight('key', { at: tape(0, 2), power: 1 / 16 }),
      makeLight('a', {
        role: 'backdrop',
        at: offsets({ right: -1.5, beforeBackdrop: 1.5, height: 1.5 }),
        power: 1 / 16,
      }),
      makeLight('b', {
        role: 'backdrop',
        at: offsets({ right: 1.5, beforeBackdrop: 1.5, height: 1.5 }),
        power: 1 / 16,
      }),
    ],
    ...more,
  })
const key: Knob = { knob: 'light-distance', light: 'key' }
const power = (light: string): Knob => ({ knob: 'strength', light })
const keyStops = (set: ComputedSet) => set.reading({ at: 'subject', of: ['key'] })?.figure.stops
const overKey = (set: ComputedSet) =>
  set.key && difference(set.reading({ at: 'backdrop', of: 'all' })!.figure, set.key.figure).stops

describe('solve', () => {
  const set = computeSet(plan())

  it('distance by the inverse square of a small light', () => {
    // A bare flash is 6 cm wide: a thousandth off the law at these distances.
    const today = keyStops(set)!
    expect(solve(set, key, keyStops, today + 1)).toBeCloseTo(2 / Math.SQRT2, 2)
    expect(solve(set, key, keyStops, today - 2)).toBeCloseTo(4, 2)
  })

  it('power is linear in stops', () => {
    expect(solve(set, power('key'), keyStops, keyStops(set)! + 1.7)).toBeCloseTo(1.7, 6)
    expect(solve(set, power('key'), keyStops, keyStops(set)!)).toBe(0)
  })

  it('several knobs turn together', () => {
    const backs = (of: ComputedSet) => of.reading({ at: 'backdrop', of: ['a', 'b'] })?.figure.stops
    expect(solve(set, [power('a'), power('b')], backs, backs(set)! + 2)).toBeCloseTo(2, 6)
    // Alone, one has to make up for both: 2^x + 1 = 2 · 4.
    expect(solve(set, power('a'), backs, backs(set)! + 2)).toBeCloseTo(Math.log2(7), 2)
  })

  it('a solved distance written into the plan reaches the target', () => {
    const target = overKey(set)! - 0.15
    const behind = solve(set, { knob: 'behind' }, overKey, target)!
    expect(behind).not.toBeCloseTo(2, 1)
    expect(overKey(computeSet(plan({ backdrop: { behind } })))).toBeCloseTo(target, 5)
  })

  it('takes the crossing nearest to today where there are several', () => {
    // A made-up quantity, up and down over the lens: 50 mm today.
    const wave = (of: ComputedSet) => Math.sin((of.plan.camera.lens - 0.05) * 200)
    const lens = computeSet(plan({ camera: { lens: 0.05 } }))
    const range = { from: 0.02, to: 0.2 }
    expect(solve(lens, { knob: 'lens' }, wave, 0.5, range)).toBeCloseTo(0.05 + Math.asin(0.5) / 200, 6)
    expect(solve(lens, { knob: 'lens' }, wave, -0.5, range)).toBeCloseTo(0.05 - Math.asin(0.5) / 200, 6)
  })

  it('has no answer out of reach, for a quantity that is not there, or for a knob that is not', () => {
    expect(solve(set, power('key'), keyStops, keyStops(set)! + 9)).toBeUndefined()
    expect(solve(set, power('key'), () => undefined, 0)).toBeUndefined()
    expect(solve(set, power('nobody'), keyStops, 0)).toBeUndefined()
    expect(solve(set, { knob: 'light-distance', light: 'nobody' }, keyStops, 0)).toBeUndefined()
  })

  it('passes over places where the quantity is not known', () => {
    const partly = (of: ComputedSet) => {
      const tape_ = of.scene.lights.get('key')!.distance!
      return tape_ > 2.5 ? undefined : keyStops(of)
    }
    expect(solve(set, key, partly, keyStops(set)! - 2)).toBeUndefined()
    expect(solve(set, key, partly, keyStops(set)! + 1)).toBeCloseTo(Math.SQRT2, 2)
  })

  it('answers the same every time', () => {
    const once = solve(set, { knob: 'behind' }, overKey, overKey(set)! - 0.1)
    expect(solve(computeSet(plan()), { knob: 'behind' }, overKey, overKey(set)! - 0.1)).toBe(once)
  })
})

describe('solve at the gear', () => {
  const set = computeSet(plan())
  const today = keyStops(set)!

  it('rounds power to the step that meets the goal', () => {
    const more = solveAtGear(set, power('key'), keyStops, { atLeast: today + 0.5 })!
    expect(more.value).toBeCloseTo(2 / 3, 9)
    expect(more.reached).toBeCloseTo(today + 2 / 3, 9)
    const less = solveAtGear(set, power('key'), keyStops, { atMost: today - 0.5 })!
    expect(less.value).toBeCloseTo(-2 / 3, 9)
    expect(solveAtGear(set, power('key'), keyStops, { atLeast: today + 1 })!.value).toBeCloseTo(1, 9)
  })

  it('rounds distances to five centimetres, or to two inches in feet', () => {
    const nearer = solveAtGear(set, key, keyStops, { atLeast: today + 1 })!
    // 1.414 m by the inverse square.
    expect(nearer.value).toBeCloseTo(1.4, 9)
    const feet = computeSet(plan({ lengths: 'feet' }))
    const inFeet = solveAtGear(feet, key, keyStops, { atLeast: today + 1 })!
    // 55.7 in: 54 in is the next two inches nearer.
    expect(inFeet.value / 0.0254).toBeCloseTo(54, 6)
  })

  it('rounds apertures to third-stop marks', () => {
    const overCamera = (of: ComputedSet) => of.reading({ at: 'subject', of: ['key'] })?.overCamera.stops
    const at = overCamera(set)!
    const stopped = solveAtGear(set, { knob: 'aperture' }, overCamera, { atMost: at - 0.9 })!
    expect(2 * Math.log2(stopped.value / 2 ** 2.5)).toBeCloseTo(1, 9)
  })

  it('leaves alone what meets the goal already', () => {
    expect(solveAtGear(set, power('key'), keyStops, { atLeast: today })!.value).toBe(0)
    expect(solveAtGear(set, power('key'), keyStops, { atMost: today + 1 })!.value).toBe(0)
  })

  it('has none beyond the gear: full power is four stops up from 1/16', () => {
    expect(solveAtGear(set, power('key'), keyStops, { atLeast: today + 4 })!.value).toBeCloseTo(4, 9)
    expect(solveAtGear(set, power('key'), keyStops, { atLeast: today + 4.1 })).toBeUndefined()
  })

  it('several lights go only as far as all of them can', () => {
    const mixed = computeSet(
      plan({
        lights: [...plan().lights.values()].map((light) =>
          light.name === 'b' ? { ...light, power: 0.5 as never } : light,
        ),
      }),
    )
    const backs = (of: ComputedSet) => of.reading({ at: 'backdrop', of: ['a', 'b'] })?.figure.stops
    const most = solveAtGear(mixed, [power('a'), power('b')], backs, { atLeast: backs(mixed)! + 1 })!
    expect(most.value).toBeCloseTo(1, 9)
    expect(
      solveAtGear(mixed, [power('a'), power('b')], backs, { atLeast: backs(mixed)! + 1.3 }),
    ).toBeUndefined()
  })
})

describe('range', () => {
  it('of power: the steps of the unit, full to 1/128', () => {
    const range = knobRange(plan(), power('key'))!
    expect(range.from).toBeCloseTo(-3, 9)
    expect(range.to).toBeCloseTo(4, 9)
    expect(range.marks!.length).toBe(22)
  })

  it('of a distance ends at the walls, the camera’s and the backdrop’s too', () => {
    const room = { width: 4, length: 6, height: 2.6, leftWall: 2, behindBackdrop: 0.5 }
    // Backdrop 2 m behind, 0.5 m of room behind it: the front wall is 3.5 m before the subject.
    const roomed = plan({
      room,
      lights: [makeLight('side', { at: tape(90, 1), modifier: softbox(0.6, 0.9) })],
    })
    expect(knobRange(roomed, { knob: 'light-distance', light: 'side' })!.to).toBeCloseTo(2 - 0.3, 6)
    expect(knobRange(roomed, { knob: 'camera-distance' })!.to).toBeCloseTo(3.5 - 0.3, 6)
    expect(knobRange(roomed, { knob: 'behind' })!.to).toBeCloseTo(2 + (3.5 - 2.5 - 0.3), 6)
    expect(knobRange(roomed, { knob: 'backdrop-width' })!.to).toBe(3.55)
  })

  it('is none for what cannot be turned', () => {
    const fixed = plan({
      lights: [makeLight('key', { power: undefined, at: { by: 'camera' } as never })],
      backdrop: 'none',
    })
    for (const knob of ['strength', 'light-distance', 'before-backdrop'] as const)
      expect(knobRange(fixed, { knob, light: 'key' })).toBeUndefined()
    for (const knob of ['behind', 'backdrop-width'] as const)
      expect(knobRange(fixed, { knob })).toBeUndefined()
  })
})
