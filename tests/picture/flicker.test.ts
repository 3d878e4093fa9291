/** Mains flicker, against rectified mains summed up over windows that open at any moment. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { exposureSwing, swingInStops, swingsPerSecond } from '../../src/picture/flicker.js'
import type { Seconds } from '../../src/units/quantity.js'

/** Light that follows the power of the mains, sin², from none to twice its mean; a share of it beside a steady rest. */
const windows = (mains: number, share: number, time: number): readonly number[] => {
  const openings = 240
  const steps = 2000
  const light = (at: number): number => 1 - share + share * 2 * Math.sin(2 * Math.PI * mains * at) ** 2
  return Array.from({ length: openings }, (_, i) => {
    const opens = i / openings / (2 * mains)
    let sum = 0
    for (let k = 0; k < steps; k++) sum += light(opens + ((k + 0.5) / steps) * time)
    return sum / steps
  })
}

describe('an exposure in flickering light', () => {
  it('swings as the windows of a shutter that opens at any moment do', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(50 as const, 60 as const),
        fc.double({ min: 0.05, max: 0.9, noNaN: true }),
        fc.double({ min: 1 / 4000, max: 1 / 8, noNaN: true }),
        (mains, share, time) => {
          const got = windows(mains, share, time)
          const stops = Math.log2(Math.max(...got) / Math.min(...got))
          expect(swingInStops(exposureSwing(share, mains, time as Seconds))).toBeCloseTo(stops, 2)
        },
      ),
      { numRuns: 25, seed: 1 },
    )
  })

  it('does not swing over whole half periods: 1/50 and 1/100 at 50 Hz, 1/60 and 1/120 at 60 Hz', () => {
    // The times that practitioners give.
    for (const [mains, times] of [
      [50, [1 / 50, 1 / 100]],
      [60, [1 / 60, 1 / 120]],
    ] as const)
      for (const time of times) expect(exposureSwing(1, mains, time as Seconds)).toBeCloseTo(0, 12)
  })

  it('by the mark, not by what the mark stands for: 1/100 is exact at 50 Hz, its snapped time is not', () => {
    expect(exposureSwing(1, 50, 0.01 as Seconds)).toBeCloseTo(0, 12)
    // 2^(-20/3) s, for which the mark stands in exposure.
    expect(exposureSwing(1, 50, (2 ** (-20 / 3)) as Seconds)).toBeGreaterThan(0.01)
    expect(swingsPerSecond(60)).toBe(120)
  })
})
