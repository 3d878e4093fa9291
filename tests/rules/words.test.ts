import { describe, expect, it } from 'vitest'
import { makeWords } from '../../src/rules/make-words.js'
import { makePlan } from '../helpers/make-plan.js'
import { planOf } from './check-text.js'

const metric = makeWords(makePlan())
const feet = makeWords(makePlan({ lengths: 'feet' }))

describe('words', () => {
  it('measure as the author does', () => {
    expect([metric.length(2.4), metric.length(0.6), metric.length(1.234)]).toEqual([
      '2.4 m',
      '60 cm',
      '1.23 m',
    ])
    expect([feet.length(2.4), feet.length(0.3048)]).toEqual(['7 ft 10 in', '1 ft'])
    expect([metric.small(0.123), metric.small(0.014), feet.small(0.127)]).toEqual(['12 cm', '1.4 cm', '5 in'])
  })

  it('follow primes where the plan writes them', () => {
    const plan = planOf(`plan: 1
title: In feet
camera: { lens: 85 mm, at: { distance: 8'2" }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights: { key: { unit: flashgun, at: camera } }
`)
    expect(makeWords(plan).length(1.8288)).toBe(`6'`)
  })

  it('write stops signed, unsigned and against something', () => {
    expect([metric.stops(0.4), metric.stops(-1.1), metric.stops(0), metric.stops(0.25)]).toEqual([
      '+0.4 stop',
      '-1.1 stops',
      '0 stops',
      '+1/4 stop',
    ])
    expect([metric.howMany(-1.1), metric.howMany(1), metric.howMany(2 / 3)]).toEqual([
      '1.1 stops',
      '1 stop',
      '2/3 stop',
    ])
    expect([
      metric.against(1.1, 'the key'),
      metric.against(0.01, 'the key'),
      metric.against(-0.4, 'the key'),
    ]).toEqual(['1.1 stops over the key', 'level with the key', '0.4 stop under the key'])
  })

  it('write marks as meters and dials show them', () => {
    expect([
      metric.f(2 ** 2.5),
      metric.f(2 ** 2.6),
      metric.shutter(1 / 125),
      metric.power(2 ** -1.7),
    ]).toEqual(['f/5.6', 'f/5.6 + 0.2', '1/125', '1/4 + 0.3'])
  })

  it('name tones and lists', () => {
    expect([metric.tone(198), metric.tone(18)]).toEqual(['light grey (sRGB 198)', 'black (sRGB 18)'])
    expect([
      metric.list([]),
      metric.list(['key']),
      metric.list(['key', 'fill']),
      metric.list(['key', 'fill', 'rim']),
    ]).toEqual(['', 'key', 'key and fill', 'key, fill and rim'])
    expect(metric.degrees(Math.PI / 4)).toBe('45 deg')
  })
})
