import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inside, movedAndHeld, solveFor, solveSet } from '../../src/rules/solving.js'
import { reached } from '../../src/rules/tiers.js'
import { mostWrapped } from '../../src/rules/wrap/most-wrapped.js'
import { computeSet } from '../../src/set/compute-set.js'
import type { ComputedSet } from '../../src/set/computed-set.js'
import { makeLight, makePlan, makeRoom, offsets, softbox, surface, tape } from '../helpers/make-plan.js'

describe('solveFor', () => {
  it('finds what algebra finds', () => {
    // Inverse square: two stops less at twice the distance.
    expect(solveFor(1, 10, (d) => -2 * Math.log2(d), -2, 1e-9)).toBeCloseTo(2, 6)
    expect(solveFor(10, 0.1, (d) => d * d, 4, 1e-9)).toBeCloseTo(2, 6)
  })
  it('finds any root of a rising function that its range holds', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 9.9, noNaN: true }),
        fc.integer({ min: 1, max: 5 }),
        (root, power) => {
          const value = solveFor(0, 10, (x) => x ** power, root ** power, 1e-9)
          expect(value).toBeCloseTo(root, 4)
        },
      ),
    )
  })
  it('gives up where the range does not hold the target, or nothing is known', () => {
    expect(solveFor(0, 1, (x) => x, 2)).toBeUndefined()
    expect(solveFor(0, 1, () => undefined, 0.5)).toBeUndefined()
    expect(solveFor(0, 1, (x) => (x > 0.4 ? Number.NaN : x), 0.5)).toBeUndefined()
  })
})

describe('solveSet', () => {
  const white = surface('white paint', 0.85)
  const room = makeRoom({ ceiling: white })
  const standing = (behind: number) =>
    makePlan({
      room,
      backdrop: { behind: behind as never, surface: surface('white paper', 0.9) },
      lights: [
        makeLight('key', { modifier: softbox(0.6, 0.9), at: tape(35, 1.5, { height: 2 }) }),
        makeLight('paper', {
          role: 'backdrop',
          at: offsets({ right: -1.4, beforeBackdrop: 1.3, height: 1.6 }),
        }),
      ],
    })
  const further = (one: ComputedSet, to: number) => one.with({ knob: { knob: 'behind' }, to })
  const wrap = (one: ComputedSet) => mostWrapped(one)?.reKey.stops

  it('finds what halving finds by the whole light, in a room that quick light leaves out', () => {
    const set = computeSet(standing(1.4))
    const target = wrap(set)! - 0.6
    const found = solveSet(set, 1.4, 4, further, wrap, target, { tolerance: 0.01 })!
    expect(Math.abs(wrap(further(set, found))! - target)).toBeLessThanOrEqual(0.01)
    let [near, far] = [1.4, 4]
    for (let i = 0; i < 14; i++) {
      const middle = (near + far) / 2
      if (wrap(further(set, middle))! > target) near = middle
      else far = middle
    }
    expect(found).toBeCloseTo((near + far) / 2, 1)
  })
  it('works out few sets in full', () => {
    const set = computeSet(standing(1.4))
    let full = 0
    const counted = (one: ComputedSet) => {
      if (one.quick === one) return wrap(one)
      full++
      return wrap(one)
    }
    solveSet(set, 1.4, 4, further, counted, wrap(set)! - 0.6, { tolerance: 0.02 })
    expect(full).toBeLessThanOrEqual(4)
  })
  it('gives up where the whole light does not reach the target either', () => {
    const set = computeSet(standing(1.4))
    expect(solveSet(set, 1.4, 2, further, wrap, wrap(set)! - 5)).toBeUndefined()
  })
  it('solves by the whole light where a light comes by way of the ceiling alone, which quick light does not know', () => {
    const set = computeSet(
      makePlan({
        room,
        lights: [
          makeLight('key', {
            power: 1 / 4,
            aim: { at: 'ceiling', feather: undefined } as never,
            at: tape(20, 1.5, { height: 1.4 }),
          }),
        ],
      }),
    )
    const level = (one: ComputedSet) =>
      one.reading({ at: 'subject', of: ['key'], dome: 'flat', faces: { direction: [0, -1, 0] } })?.figure
        .stops
    const turned = (one: ComputedSet, to: number) =>
      one.with({ knob: { knob: 'strength', light: 'key' }, to })
    // Power is linear in light: a stop is a stop, however it comes.
    expect(solveSet(set, 0, 3, turned, level, level(set)! + 1, { tolerance: 1e-3 })).toBeCloseTo(1, 2)
  })
})

describe('inside', () => {
  it('is one u, and at least a tenth', () => {
    expect([inside(0.05), inside(0.3)]).toEqual([0.1, 0.3])
  })
})

describe('movedAndHeld', () => {
  it('keeps what the light meters at the subject, and tells the stops: inverse square for a bare flashgun', () => {
    const set = computeSet(makePlan({ lights: [makeLight('key', { at: tape(0, 1.5) })] }))
    const moved = movedAndHeld(set, 'key', 3)!
    const before = set.reading({ at: 'subject', of: ['key'], faces: 'camera' })!.luxSeconds
    const after = moved.set.reading({ at: 'subject', of: ['key'], faces: 'camera' })!.luxSeconds
    expect(after / before).toBeCloseTo(1, 6)
    expect(moved.stops).toBeCloseTo(2, 1)
  })
})

describe('tiers', () => {
  const tiers = [
    { level: 'note', limit: 1 },
    { level: 'warning', limit: 2 },
  ] as const
  const at = (value: number, u: number) => reached((limit) => value - limit, u, tiers)

  it.each([
    // value, u, level, limit: why
    [3, 0.1, 'warning', 2],
    [2.15, 0.1, 'warning', 2],
    [2.05, 0.1, 'note', 1],
    [1.5, 0.1, 'note', 1],
    [0.5, 0.1, 'note', 1],
  ] as const)('%f ± %f: %s', (value, u, level, limit) => {
    expect(at(value, u)).toMatchObject({ level, limit })
  })

  it('prefers a sure lower level to a doubtful higher one, which would come out no higher', () => {
    expect(at(2.2, 0.3)).toMatchObject({ level: 'note', limit: 1 })
    expect(at(2.4, 0.3)).toMatchObject({ level: 'warning', limit: 2 })
  })
})
