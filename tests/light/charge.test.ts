/** Recharge and charge. Held against an energy account kept step by step, and against what the trade knows. */
import { describe, expect, it } from 'vitest'
import { readPlan } from '../../src/language/read-plan.js'
import {
  averageDraw,
  flashesInARow,
  flashesPerCharge,
  isFlashgun,
  recycleAt,
  runsOnCells,
} from '../../src/light/charge.js'
import type { PowerShare, Seconds, WattSeconds } from '../../src/units/quantity.js'
import { noFiles } from '../rules/check-text.js'

const unitOf = (unit: string) => {
  const { plan } = readPlan(
    'test.plan.yaml',
    `plan: 1
title: One flash
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
  key: { unit: ${unit}, power: full, at: { angle: 30 deg left, distance: 1.2 m, height: 2 m } }
wanted: { framing: waist }
`,
    noFiles,
  )
  const key = plan!.lights.get('key')!.unit
  if (key.kind !== 'flash') throw new Error('no flash')
  return key
}
const share = (value: number) => value as PowerShare
const seconds = (value: number) => value as Seconds

/** An account of the energy in the flash, in steps of a thousandth of a second: what it holds before each flash. */
const account = (full: number, power: number, every: number, leastLeft: number): number => {
  const step = 0.001
  let held = 1
  for (let flashes = 0; flashes < 1000; flashes++) {
    if (held < leastLeft - 1e-6) return flashes
    held -= power
    for (let t = 0; t < every - step / 2; t += step) held = Math.min(1, held + step / full)
  }
  return Number.POSITIVE_INFINITY
}

describe('recycling', () => {
  const gun = unitOf('{ guide-number: 36 m at 35 mm, recycle: 2.5 s }')

  it('goes with the energy: half the power, half the time', () => {
    expect(recycleAt(gun, share(1)).value).toBe(2.5)
    expect(recycleAt(gun, share(0.5)).value).toBeCloseTo(1.25, 12)
  })

  it('is what its mean draw puts back', () => {
    const head = unitOf('{ energy: 600 Ws, draw: 500 W }')
    const takes = recycleAt(head, share(1)).value
    expect(averageDraw(600 as WattSeconds, 0.8, takes)).toBeCloseTo(500, 9)
  })

  it('draws from a battery what it does not draw from the mains: as one that states no draw', () => {
    const battery = recycleAt(unitOf('{ energy: 400 Ws, draw: 0 W }'), share(1 / 4))
    expect(battery).toEqual(recycleAt(unitOf('{ energy: 400 Ws }'), share(1 / 4)))
    expect(Number.isFinite(battery.value)).toBe(true)
  })

  it.each([
    ['full', 1, 2],
    ['half', 1 / 2, 1],
    ['half, slowly', 1 / 2, 1.2],
    ['a quarter', 1 / 4, 0.5],
    ['a sixteenth in a burst', 1 / 16, 0.1],
    ['a thirty-second in a burst', 1 / 32, 0.05],
    ['a thirty-second, keeping up', 1 / 32, 0.1],
  ])('a row of flashes lasts as the account says: %s', (_, power, every) => {
    const told = flashesInARow(gun, share(power), seconds(every))
    expect(told).toBe(account(2.5, power, every, Math.max(0.6, power)))
  })

  it('a head set by voltage has to be charged anew each time', () => {
    const head = unitOf('{ energy: 400 Ws, recycle: 1.6 s, regulated: voltage }')
    expect(flashesInARow(head, share(1 / 4), seconds(0.3))).toBe(1)
    expect(flashesInARow(head, share(1 / 4), seconds(0.4))).toBe(Number.POSITIVE_INFINITY)
  })
})

// Common practice, no source.
describe('what the trade knows', () => {
  const flashgun = unitOf('flashgun')

  it('a flashgun at full power takes two to four seconds on fresh cells, half of that at half power', () => {
    const full = recycleAt(flashgun, share(1)).value
    expect(full).toBeGreaterThanOrEqual(2)
    expect(full).toBeLessThanOrEqual(4)
  })

  it('at a thirty-second it is ready at once', () => {
    expect(recycleAt(flashgun, share(1 / 32)).value).toBeLessThanOrEqual(0.1)
  })

  it('a mains head takes one to two seconds or so at full, the larger the longer', () => {
    const [small, middle, large] = ['head 200 Ws', 'head 400 Ws', 'head 600 Ws'].map(
      (name) => recycleAt(unitOf(name), share(1)).value,
    )
    expect(small).toBeGreaterThan(0.5)
    expect(middle).toBeGreaterThan(small!)
    expect(large).toBeGreaterThan(middle!)
    expect(large).toBeLessThan(2.5)
  })

  it('a set of four fresh AA cells gives 150 to 250 flashes at full power, twice that at half', () => {
    const { value, guessed } = flashesPerCharge(flashgun, share(1))!
    expect(guessed).toBe(true)
    expect(value).toBeGreaterThanOrEqual(150)
    expect(value).toBeLessThanOrEqual(250)
    expect(flashesPerCharge(flashgun, share(0.5))!.value).toBeCloseTo(2 * value, 9)
  })

  it('flashguns run on cells, mains heads never run short, a head with flashes a charge does', () => {
    expect(isFlashgun(flashgun)).toBe(true)
    expect(runsOnCells(unitOf('head 400 Ws'))).toBe(false)
    expect(flashesPerCharge(unitOf('head 400 Ws'), share(1))).toBeUndefined()
    const battery = unitOf('{ energy: 600 Ws, flashes-per-charge: 450 }')
    expect(isFlashgun(battery)).toBe(false)
    expect(flashesPerCharge(battery, share(1 / 4))!.value).toBe(1800)
  })
})
