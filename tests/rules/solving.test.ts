import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inside, movedAndHeld, solveFor } from '../../src/rules/solving.js'
import { reached } from '../../src/rules/tiers.js'
import { computeSet } from '../../src/set/compute-set.js'
import { makeLight, makePlan, tape } from '../helpers/make-plan.js'

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
