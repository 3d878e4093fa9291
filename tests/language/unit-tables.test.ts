import { describe, expect, it } from 'vitest'
import { leastWith, onlyMistake, planOf, pointsAt } from './reading.js'

const withUnit = (unit: string): string =>
  leastWith({ key: `  key: { unit: ${unit}, power: 1/4, at: { angle: 10 deg left, distance: 2 m } }` })

describe('tables that cannot be', () => {
  it.each([
    [
      'longer over half of the peak than over a tenth',
      '{ energy: 400 Ws, durations: [{ power: full, t0.1: 1/8000, t0.5: 1/200 }] }',
      '1/8000',
    ],
    [
      'a duration two stops over full',
      '{ energy: 400 Ws, durations: [{ power: full + 2, t0.5: 1/800 }] }',
      'full + 2',
    ],
    [
      'a duration at twice the energy',
      '{ energy: 400 Ws, durations: [{ power: 800 Ws, t0.5: 1/800 }] }',
      '800 Ws',
    ],
    [
      'a colour over the most that can be set',
      '{ energy: 400 Ws, power: { to: 1/2 }, colours: [{ power: full, colour: 5500 K }] }',
      'full',
    ],
    [
      'two durations of one power',
      '{ energy: 400 Ws, durations: [{ power: 1/4, t0.1: 1/8000 }, { power: 25 %, t0.1: 1/500 }] }',
      '25 %',
    ],
    [
      'the same power in watt-seconds',
      '{ energy: 400 Ws, durations: [{ power: 1/4, t0.5: 1/8000 }, { power: 100 Ws, t0.5: 1/500 }] }',
      '100 Ws',
    ],
    [
      'two colours of one power',
      '{ energy: 400 Ws, colours: [{ power: 50 %, colour: 5500 K }, { power: 1/2, colour: 5200 K }] }',
      '1/2',
    ],
    [
      'two guide numbers of one zoom',
      '{ guide-number: { 24 mm: 28 m, 24.0 mm: 30 m, 105 mm: 60 m } }',
      '30 m',
    ],
    ['a gain by high-speed sync', '{ energy: 400 Ws, high-speed-loss: -2 stops }', '-2 stops'],
  ])('%s', (_, unit, shown) => {
    const text = withUnit(unit)
    const mistake = onlyMistake(text)
    expect(mistake.rule).toBe('plan-unreadable')
    expect(pointsAt(mistake, text)).toBe(shown)
  })

  it('a file and lumens are one mistake, and no beam is asked for', () => {
    const text = leastWith({
      key: '  key: { unit: { lumens: 4000 lm, photometric-file: lamp.ies }, at: { angle: 10 deg left, distance: 2 m } }',
    })
    expect(onlyMistake(text).message).toContain('photometric-file and lumens cannot stand together')
  })
})

describe('tables that can be', () => {
  it.each([
    '{ energy: 400 Ws, durations: [{ power: full, t0.1: 1/300, t0.5: 1/900 }, { power: 1/4, t0.1: 1/500 }] }',
    '{ energy: 400 Ws, power: { from: 1/16, to: full }, durations: [{ power: 1/64, t0.5: 1/9000 }] }',
    '{ energy: 400 Ws, colours: [{ power: full, colour: 5500 K }, { power: 1/32, colour: 5200 K }] }',
    '{ guide-number: { 24 mm: 28 m, 24.5 mm: 30 m } }',
    '{ energy: 400 Ws, high-speed-loss: 0 stops }',
    '{ lumens: 4000 lm, beam: 60 deg }',
  ])('%s', (unit) => {
    expect(planOf(withUnit(unit)).lights.get('key')!.unit.name).toBe('key')
  })
})
