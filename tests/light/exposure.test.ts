/** Meters' arithmetic: the standard's bounds, inverses, and what the trade knows of stops. */
import { describe, expect, it } from 'vitest'
import {
  agreementReflectance,
  fNumberFor,
  fNumberForLuminance,
  incidentConstant,
  luminanceSecondsFor,
  luminanceSecondsOf,
  luxFor,
  luxSecondsFor,
  luxSecondsOfReflected,
  reflectedConstant,
  stopsOverSetting,
} from '../../src/light/exposure.js'
import { lumenSecondsPerWattSecond, mostLumenSecondsPerWattSecond } from '../../src/light/strength.js'
import { fNumber, iso, luxSeconds, seconds } from '../../src/units/quantity.js'
import { checkValues } from '../published/check-values.js'

const published = (id: string): Readonly<Record<string, number>> =>
  checkValues.find((value) => value.id === id)!.expected as Readonly<Record<string, number>>

describe('constants', () => {
  it('are those in common use, within what ISO 2720:1974 allows', () => {
    const k = published('met.K.range')
    const c = published('met.C.flat')
    expect(reflectedConstant).toBe(k.common)
    expect(incidentConstant).toBe(c.common)
    for (const [constant, range] of [
      [reflectedConstant, k],
      [incidentConstant, c],
    ] as const) {
      expect(constant).toBeGreaterThanOrEqual(range.min!)
      expect(constant).toBeLessThanOrEqual(range.max!)
    }
  })

  it('luminous energy per watt-second lies within what studio flash delivers, and its cap at the top of it', () => {
    const { min, max } = published('gn.eff.range')
    expect(mostLumenSecondsPerWattSecond).toBe(max)
    expect(lumenSecondsPerWattSecond).toBeGreaterThan(min!)
    expect(lumenSecondsPerWattSecond).toBeLessThan(max!)
  })
})

describe('meters', () => {
  it('invert what they are asked', () => {
    for (const n of [1, 2.8, 5.6, 8, 22]) {
      expect(fNumberFor(luxSecondsFor(fNumber(n), iso(400)), iso(400))).toBeCloseTo(n, 12)
      expect(fNumberForLuminance(luminanceSecondsFor(fNumber(n), iso(64)), iso(64))).toBeCloseTo(n, 12)
    }
  })

  it('sunlight reads f/16 at 1/100 s and ISO 100: about 64,000 lx', () => {
    // The trade's rule for a sunny day; the full sun is put at 60,000 to 100,000 lx. Common practice, no source.
    const lux = luxFor(fNumber(16), seconds(0.01), iso(100))
    expect(lux).toBeGreaterThan(60000)
    expect(lux).toBeLessThan(100000)
  })

  it('of both kinds agree on a card of 15.7 %; white paper of 0.85 reads 2.4 stops more reflected', () => {
    // Light meter, calibrated reflectance (check values met.R); the 2.4 stops are the plan language's own figure.
    const exposure = luxSeconds(80)
    const reflected = (reflectance: number): number =>
      fNumberForLuminance(luminanceSecondsOf(exposure, reflectance), iso(100))
    expect(reflected(0.157)).toBeCloseTo(fNumberFor(exposure, iso(100)), 2)
    expect(2 * Math.log2(reflected(0.85) / fNumberFor(exposure, iso(100)))).toBeCloseTo(2.4, 1)
    expect(luxSecondsOfReflected(fNumber(reflected(0.85)), iso(100), 0.85)).toBeCloseTo(80, 9)
    expect(agreementReflectance()).toBeCloseTo(0.157, 3)
  })

  it('one stop over a key of f/5.6 is f/8, and f/7.1 a third under that', () => {
    // Common practice, no source. Marks are nominal: f/5.6 is 2^(5/2), f/7.1 2^(17/6).
    const key = luxSecondsFor(fNumber(2 ** (5 / 2)), iso(100))
    expect(fNumberFor(luxSeconds(2 * key), iso(100))).toBeCloseTo(8, 12)
    const third = luxSecondsFor(fNumber(2 ** (17 / 6)), iso(100))
    expect(Math.log2(third / (2 * key))).toBeCloseTo(-1 / 3, 12)
  })

  it('stops over the setting: an aperture that is metered is level, filters and speed count', () => {
    const exposure = luxSecondsFor(fNumber(8), iso(100))
    expect(stopsOverSetting(exposure, { aperture: fNumber(8), iso: iso(100) })).toBeCloseTo(0, 12)
    expect(stopsOverSetting(exposure, { aperture: fNumber(8), iso: iso(200) })).toBeCloseTo(1, 12)
    expect(stopsOverSetting(exposure, { aperture: fNumber(8), iso: iso(100), losses: 3 })).toBeCloseTo(-3, 12)
    expect(stopsOverSetting(exposure, { aperture: fNumber(4), iso: iso(100) })).toBeCloseTo(2, 12)
  })
})
