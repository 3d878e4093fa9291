/** Candela toward a direction, against values by hand. */
import { describe, expect, it } from 'vitest'
import { candelaToward } from '../../../src/light/photometric.js'
import { degreesOf } from '../../helpers/make-plan.js'
import { steps } from '../../helpers/photometric-text.js'
import { tableOf, typeC } from './tables.js'

describe('intensity in a direction', () => {
  it('is what stands in the table at its angles, and between them in proportion to both', () => {
    const table = tableOf({
      vertical: [0, 40, 90],
      horizontal: [0, 90, 180, 270, 360],
      candela: (v, h) => (v === 0 ? 800 : v === 90 ? 0 : [400, 600, 200, 100, 400][h / 90]!),
    })
    const at = (v: number, h: number): number => candelaToward(table, ...typeC(v, h))
    expect(at(40, 0)).toBeCloseTo(400, 9)
    expect(at(40, 90)).toBeCloseTo(600, 9)
    expect(at(40, 270)).toBeCloseTo(100, 9)
    // Half way from 800 to 400; half way between 400 and 600; three quarters of the way from 100 to 400.
    expect(at(20, 0)).toBeCloseTo(600, 9)
    expect(at(40, 45)).toBeCloseTo(500, 9)
    expect(at(40, 337.5)).toBeCloseTo(325, 9)
    // By hand: planes 45 and 135 give 500 and 400 at 40°, half of that at 65°.
    expect(at(65, 45)).toBeCloseTo(250, 9)
    expect(at(65, 112.5)).toBeCloseTo((600 * 0.75 + 200 * 0.25) / 2, 9)
    expect(at(120, 10)).toBe(0)
    // Of whatever length.
    expect(candelaToward(table, 0, 0, 17)).toBeCloseTo(800, 9)
  })

  it('a turn that closes past 0 is read across it', () => {
    const table = tableOf({
      vertical: [0, 90],
      horizontal: [90, 120, 270],
      candela: (v, h) => (v === 0 ? 500 : h),
    })
    // Mirrored on the plane through 90 and 270: 60 is as 120, −90 as 270; 0 lies two fifths from 60 to −90.
    expect(candelaToward(table, ...typeC(90, 0))).toBeCloseTo(120 + 0.4 * 150, 9)
    expect(candelaToward(table, ...typeC(90, 180))).toBeCloseTo(120 + 0.4 * 150, 9)
    expect(candelaToward(table, ...typeC(90, 330))).toBeCloseTo(120 + 0.6 * 150, 9)
  })

  it('types B and A: up and down, and from the axis to the sides', () => {
    for (const type of [2, 3] as const) {
      const table = tableOf({
        type,
        vertical: [-90, 0, 90],
        horizontal: [-90, 0, 90],
        candela: (v, h) => 1000 + 5 * v + h,
      })
      expect(candelaToward(table, 0, 0, 1)).toBeCloseTo(1000, 9)
      // The light's own right is the left of who faces it.
      expect(candelaToward(table, 0, 1, 1)).toBeCloseTo(1225, 9)
      expect(candelaToward(table, -1, 0, 1)).toBeCloseTo(1045, 9)
      expect(candelaToward(table, 1, 0, 1)).toBeCloseTo(955, 9)
      expect(candelaToward(table, 0, -1, 0)).toBeCloseTo(550, 9)
      expect(candelaToward(table, 0, 0, -1)).toBe(0)
    }
    // Partial: nothing is given outside.
    const narrow = tableOf({ type: 3, vertical: [-10, 10], horizontal: [-20, 20], candela: () => 70 })
    expect(candelaToward(narrow, 0.3, 0, 1)).toBeCloseTo(70, 9)
    expect([candelaToward(narrow, 0.4, 0, 1), candelaToward(narrow, 0, 0.2, 1)]).toEqual([0, 0])
  })

  it('types B and A are turned as a goniometer turns: A about the upright axis last, B about the level one', () => {
    type Direction = readonly [right: number, up: number, out: number]
    const upBy = ([right, up, out]: Direction, angle: number): Direction => [
      right,
      up * Math.cos(angle) + out * Math.sin(angle),
      out * Math.cos(angle) - up * Math.sin(angle),
    ]
    const leftBy = ([right, up, out]: Direction, angle: number): Direction => [
      right * Math.cos(angle) - out * Math.sin(angle),
      up,
      out * Math.cos(angle) + right * Math.sin(angle),
    ]
    const ahead: Direction = [0, 0, 1]
    const given = { vertical: steps(-90, 90, 10), horizontal: steps(-90, 90, 10) }
    const candela = (v: number, h: number): number => 5000 + 40 * v + 7 * h
    const a = tableOf({ ...given, type: 3, candela })
    const b = tableOf({ ...given, type: 2, candela })
    for (const v of [-75, -30, 0, 12, 60])
      for (const h of [-80, -45, 0, 33, 70]) {
        const [up, left] = [degreesOf(v), degreesOf(h)]
        expect(candelaToward(a, ...leftBy(upBy(ahead, up), left))).toBeCloseTo(candela(v, h), 6)
        expect(candelaToward(b, ...upBy(leftBy(ahead, left), up))).toBeCloseTo(candela(v, h), 6)
      }
  })
})
