/** Marks and the exact values that they stand for. */
import { describe, expect, it } from 'vitest'
import {
  exactFNumber,
  exactShutter,
  markedFNumber,
  markedFNumbers,
  markedSpeeds,
  markedTimes,
  nearestFNumber,
  nearestShutter,
  nearestSpeed,
} from '../../src/units/marks.js'
import { fNumber, iso, seconds } from '../../src/units/quantity.js'

const steps = { full: 1, half: 2, third: 3 } as const
const series = ['full', 'half', 'third'] as const

describe.each(series)('%s-stop marks', (name) => {
  // A mark is its exact value rounded to the two figures that fit on a ring; the third-stop 1.2 is off by 0.14 stop,
  // the most of all (values.json, exp.ferr.1.2).
  it('f-numbers lie within 0.15 stop of their exact values, one step apart, f/0.5 to f/128', () => {
    const marks = markedFNumbers(name)
    expect(marks.length).toBe(16 * steps[name] + 1)
    marks.forEach((mark, place) => {
      const av = place / steps[name] - 2
      expect(Math.abs(2 * Math.log2(mark) - av), `f/${mark}`).toBeLessThan(0.15)
    })
  })

  it('times lie within 0.16 stop of theirs, one step apart, 1/16000 to 60 s', () => {
    const { denominators, seconds: longer } = markedTimes(name)
    expect(denominators.length).toBe(14 * steps[name] + 1)
    denominators.forEach((mark, place) => {
      expect(Math.abs(Math.log2(mark) - place / steps[name]), `1/${mark}`).toBeLessThan(
        name === 'half' ? 0.18 : 0.16,
      )
    })
    expect(longer.length).toBe(6 * steps[name] + 1)
    longer.forEach((mark, place) => {
      expect(Math.abs(Math.log2(mark) - place / steps[name]), `${mark} s`).toBeLessThan(0.16)
    })
  })
})

describe('snapping', () => {
  it('takes marks at their exact values, thirds before halves, anything else literally', () => {
    expect(exactFNumber(5.6)).toBeCloseTo(Math.SQRT2 ** 5, 12)
    expect(exactFNumber(1.2)).toBeCloseTo(2 ** (1 / 3), 12)
    expect(exactFNumber(13)).toBeCloseTo(2 ** (11 / 3), 12)
    expect(exactFNumber(6.7)).toBeCloseTo(2 ** (5.5 / 2), 12)
    expect(exactFNumber(0.95)).toBe(0.95)
    expect(exactShutter(seconds(1 / 125))).toBe(2 ** -7)
    expect(exactShutter(seconds(1 / 20))).toBeCloseTo(2 ** (-13 / 3), 12)
    expect(exactShutter(seconds(1 / 45))).toBeCloseTo(2 ** -5.5, 12)
    expect(exactShutter(seconds(0.3))).toBeCloseTo(2 ** (-5 / 3), 12)
    expect(exactShutter(seconds(1 / 3))).toBeCloseTo(2 ** (-5 / 3), 12)
    expect(exactShutter(seconds(0.7))).toBeCloseTo(2 ** -0.5, 12)
    expect(exactShutter(seconds(30))).toBe(32)
    expect(exactShutter(seconds(60))).toBe(64)
    expect(exactShutter(seconds(7))).toBe(7)
    expect(exactShutter(seconds(1 / 137))).toBe(1 / 137)
  })

  it('leaves exact full-stop values that are their own marks alone', () => {
    for (const n of [1, 2, 4, 8, 16, 32, 64, 128]) expect(exactFNumber(n)).toBe(n)
    for (const t of [1 / 8, 1 / 4, 1 / 2, 1, 2, 4, 8]) expect(exactShutter(seconds(t))).toBe(t)
  })
})

describe('nearest marks', () => {
  it('come back from exact values', () => {
    for (const name of series) {
      markedFNumbers(name).forEach((mark, place) => {
        const exact = fNumber(2 ** ((place / steps[name] - 2) / 2))
        const nearest = nearestFNumber(exact, name)
        expect(nearest.marked).toBe(mark)
        expect(nearest.exact).toBeCloseTo(exact, 12)
        expect(nearest.over).toBeCloseTo(0, 12)
      })
      const { denominators, seconds: longer } = markedTimes(name)
      denominators.forEach((mark, place) => {
        expect(nearestShutter(seconds(2 ** (-place / steps[name])), name)).toBe(1 / mark)
      })
      longer.forEach((mark, place) => {
        expect(nearestShutter(seconds(2 ** (place / steps[name])), name)).toBe(mark)
      })
    }
    markedSpeeds.forEach((mark, place) => {
      expect(nearestSpeed(iso(25 * 2 ** (place / 3)))).toBe(mark)
    })
  })

  it('stop at the ends of the series', () => {
    expect(nearestFNumber(fNumber(0.01)).marked).toBe(0.5)
    expect(nearestFNumber(fNumber(4000)).marked).toBe(128)
    expect(nearestShutter(seconds(1e-6))).toBe(1 / 16000)
    expect(nearestShutter(seconds(1e6))).toBe(60)
    expect(nearestSpeed(iso(1))).toBe(25)
    expect(nearestSpeed(iso(1e7))).toBe(25600)
  })

  it('are a mark only within a twentieth of a stop', () => {
    expect(markedFNumber(fNumber(2 ** (5.04 / 2)))).toBe(5.6)
    expect(markedFNumber(fNumber(2 ** (5.1 / 2)))).toBeUndefined()
  })
})
