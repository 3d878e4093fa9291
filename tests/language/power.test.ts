/** Expected values: "Quantities" of the language, version 1; a stop is a factor of two, a third 2^(1/3). */
import { describe, expect, it } from 'vitest'
import { leastWith, onlyMistake, planOf, pointsAt } from './reading.js'

const withPower = (power: string, unit = 'flashgun') =>
  leastWith({ key: `  key: { unit: ${unit}, power: ${power}, at: camera }` })

const powerOf = (power: string, unit?: string): number =>
  planOf(withPower(power, unit)).lights.get('key')!.power!

describe('power', () => {
  it('is a share of full', () => {
    expect(powerOf('1/4')).toBe(0.25)
    expect(powerOf('full')).toBe(1)
    expect(powerOf('1/1')).toBe(1)
    expect(powerOf('50 %')).toBe(0.5)
  })

  it('in tenths means thirds on a unit that steps in thirds', () => {
    // The built-in flashgun steps in thirds: 1/4 + 0.3 is a third of a stop over a quarter.
    expect(powerOf('1/4 + 0.3')).toBeCloseTo(0.25 * 2 ** (1 / 3), 12)
    expect(powerOf('1/4 + 0.7')).toBeCloseTo(0.25 * 2 ** (2 / 3), 12)
    expect(powerOf('1/4 - 1/3')).toBeCloseTo(0.25 / 2 ** (1 / 3), 12)
  })

  it('in tenths means tenths on a unit that steps in tenths', () => {
    expect(powerOf('1/4 + 0.3', 'head 400 Ws')).toBeCloseTo(0.25 * 2 ** 0.3, 12)
    expect(powerOf('1/4 + 0.7', 'head 400 Ws')).toBeCloseTo(0.25 * 2 ** 0.7, 12)
  })

  it('off the unit’s steps stays as it is written', () => {
    expect(powerOf('1/4 + 0.5')).toBeCloseTo(0.25 * 2 ** 0.5, 12)
    expect(powerOf('30 %')).toBe(0.3)
  })

  it('in watt-seconds is a share of the unit’s energy', () => {
    expect(powerOf('100 Ws', 'head 400 Ws')).toBe(0.25)
    expect(powerOf('100 Ws', '{ energy: 200 Ws }')).toBe(0.5)
  })

  it('on a dial is full at its top, a whole number a stop', () => {
    const unit = '{ energy: 500 Ws, power: { dial: 10, step: 0.1 stop } }'
    expect(powerOf('dial 10', unit)).toBe(1)
    expect(powerOf('dial 7.3', unit)).toBeCloseTo(2 ** -2.7, 12)
    expect(powerOf('dial 7.3', '{ energy: 500 Ws, power: { dial: 10, step: 1/3 stop } }')).toBeCloseTo(
      2 ** (-2 - 2 / 3),
      12,
    )
  })

  it('on a unit that does not say its energy or its dial is refused at the power', () => {
    for (const power of ['100 Ws', 'dial 7']) {
      const text = withPower(power, '{ guide-number: 36 m at 35 mm }')
      const mistake = onlyMistake(text)
      expect(pointsAt(mistake, text)).toBe(power)
      expect(mistake.why).toContain('1/4')
    }
  })

  it('of a sun or window is refused', () => {
    const text = leastWith({
      key: '  sun: { unit: sun, power: 1/4, at: { angle: 90 deg left, up: 30 deg } }',
    })
    expect(onlyMistake(text).place.pointer).toBe('/lights/sun/power')
  })

  it('of the kit is read in all its forms', () => {
    const range = (power: string) => {
      const { unit } = planOf(withPower('full', `{ energy: 400 Ws, power: ${power} }`)).lights.get('key')!
      return unit.kind === 'flash' ? unit.power : undefined
    }
    expect(range('{ from: 1/64, to: full, step: 1/3 stop }')).toEqual({
      from: 1 / 64,
      to: 1,
      step: 1 / 3,
      dial: undefined,
    })
    expect(range('{ from: 6.25 Ws, step: 0.1 stop }')).toMatchObject({ from: 1 / 64 })
    expect(range('{ from: dial 2, dial: 10, step: 0.1 stop }')).toMatchObject({
      from: 2 ** -8,
      dial: { top: 10 },
    })
  })

  it('ranges that run backwards or do not step are refused', () => {
    const refused = (power: string) => onlyMistake(withPower('full', `{ energy: 400 Ws, power: ${power} }`))
    expect(refused('{ from: full, to: 1/16 }').place.pointer).toBe('/lights/key/unit/power')
    expect(refused('{ step: 0 stops }').place.pointer).toBe('/lights/key/unit/power/step')
  })
})
