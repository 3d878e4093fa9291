/** Rules on flash and shutter in time, against strips of the frame that are exposed step by step, and by hand. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Finding } from '../../src/checker/finding.js'
import { tailsCut } from '../../src/rules/shutter/edge-of-flash.js'
import { earlyFalls } from '../../src/rules/shutter/fired-early.js'
import { computeSet } from '../../src/set/compute-set.js'
import { checkText, findingsOf, planOf } from './check-text.js'

const text = (camera: string, key: string, more = '', subject = '{ kind: person }') => `plan: 1
title: Flash and time
${more}camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, iso: 100, ${camera} }
subject: ${subject}
lights:
  key: { ${key}, at: { angle: 30 deg left, distance: 1.4 m, height: 2 m } }
wanted: { shadow: any, ambient: any }
`
const setOf = (...of: Parameters<typeof text>) => computeSet(planOf(text(...of)))
const measured = ({ measured: all }: Finding, name: string): number => all[name]!.value

/** Strip y is open from y·T for t. What each gets of a flash that starts at `fires`, as a share of all its light. */
const strips = (time: number, travel: number, fires: number, t05: number) => {
  const step = 2e-6
  const flash: number[] = []
  for (let at = 0; at < 14 * t05; at += step) flash.push(2 ** (-(at + step / 2) / t05))
  const all = flash.reduce((sum, one) => sum + one, 0)
  return Array.from({ length: 101 }, (_, i) => {
    const opens = (i / 100) * travel
    let got = 0
    flash.forEach((one, k) => {
      const now = fires + (k + 0.5) * step
      if (now >= opens && now <= opens + time) got += one
    })
    return got / all
  })
}

describe('the tail of a flash', () => {
  it('that the first strip misses is what strips exposed one by one get', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('1/200', '1/160', '1/125', '1/100'),
        fc.double({ min: 0.0004, max: 0.0015, noNaN: true }),
        (shutter, t05) => {
          const head = `unit: { energy: 400 Ws, regulated: voltage, durations: [{ power: full, t0.5: ${(t05 * 1000).toFixed(6)} ms }] }, power: full`
          const [tail] = tailsCut(
            setOf(`shutter: ${shutter}, sync: 1/200, curtain: 4 ms`, `${head}, trigger: { by: cable }`),
          )
          const got = strips(1 / Number(shutter.slice(2)), 0.004, 0.004, t05)
          expect(2 ** -tail!.lost).toBeCloseTo(Math.min(...got), 2)
          expect(got.indexOf(Math.min(...got))).toBe(0)
        },
      ),
      { numRuns: 8, seed: 1 },
    )
  })

  it('is told only where curtain and flash are stated', () => {
    const stated = 'unit: { energy: 800 Ws, durations: [{ power: full, t0.1: 1/250 }] }, power: full'
    const at = 'shutter: 1/200, sync: 1/200'
    expect(findingsOf('trigger-margin', text(`${at}, curtain: 4 ms`, stated))).toHaveLength(1)
    expect(findingsOf('trigger-margin', text(at, stated))).toHaveLength(0)
    expect(
      findingsOf('trigger-margin', text(`${at}, curtain: 4 ms`, 'unit: head 600 Ws, power: full')),
    ).toHaveLength(0)
  })
})

describe('a flash fired early', () => {
  const early = (shutter: string, t05: number, more = '') =>
    text(
      `shutter: ${shutter}, sync: 1/200, curtain: 4 ms`,
      `unit: { energy: 400 Ws, regulated: voltage, durations: [{ power: full, t0.5: ${(t05 * 1000).toFixed(6)} ms }] }, power: full, trigger: { by: radio, early: true }${more}`,
    )
  const fallOf = (shares: readonly number[]): number => Math.log2(Math.max(...shares) / Math.min(...shares))

  it('falls off over the frame as strips exposed one by one do', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(1000, 640, 250, 200, 160, 100),
        fc.double({ min: 0.0008, max: 0.006, noNaN: true }),
        (mark, t05) => {
          const [fall] = earlyFalls(computeSet(planOf(early(`1/${mark}`, t05))), 0.25)
          // Faster than sync as the slit starts; else a quarter of the 4 ms before the curtain arrives.
          const got = strips(1 / mark, 0.004, mark > 200 ? 0 : 0.003, t05)
          expect(fall!.stops).toBeCloseTo(fallOf(got), 1)
        },
      ),
      { numRuns: 12, seed: 2 },
    )
  })

  it('is told of by the stops between the edges', () => {
    const found = (shutter: string, perSecond: number) =>
      findingsOf('trigger-margin', early(shutter, 1 / perSecond / Math.log2(10)))[0]
    // By hand, an exponential: 4 ms of t0.1 1/240 are 4 × 0.24 × 3.32 = 3.2 half-lives; a millisecond of 1/900 is 3.0.
    expect(measured(found('1/1000', 240)!, 'fall')).toBeCloseTo(4 * 0.24 * 3.32192809, 4)
    expect(found('1/1000', 240)).toMatchObject({ level: 'warning', certainty: 'sure' })
    expect(measured(found('1/160', 900)!, 'fall')).toBeCloseTo(0.9 * 3.32192809, 1)
    expect(found('1/160', 900)!.message).toMatch(/one edge comes out 3 stops darker/)
    expect(found('1/1000', 60)).toBeUndefined()
    expect(found('1/160', 180)).toBeUndefined()
    expect(found('1/200', 5000)!.message).toMatch(/a strip along one edge stays dark/)
  })

  it('is mended by more power where that makes the flash last', () => {
    const advice = (power: string) =>
      findingsOf(
        'trigger-margin',
        text(
          'shutter: 1/200, sync: 1/200, curtain: 4 ms',
          `unit: { energy: 400 Ws, regulated: igbt, durations: [{ power: full, t0.1: 1/150 }, { power: 1/32, t0.1: 1/2500 }] }, power: ${power}, trigger: { by: radio, early: true }`,
        ),
      ).flatMap((one) => one.advice.map(({ title }) => title))
    expect(advice('1/32').join()).toMatch(/key at 1.* or more: its flash then lasts/)
    expect(advice('full')).toEqual([])
  })

  it('lights the frame through the slit as its strips get on average', () => {
    // By hand, of an exponential over the frame: 2.55 stops at t0.1 1/240, 3.33 at 1/60.
    for (const [t01, stops] of [
      [1 / 240, 2.55],
      [1 / 60, 3.33],
      [1 / 600, undefined],
    ] as const) {
      const t05 = t01 / Math.log2(10)
      const given = (more: string) =>
        setOf('shutter: 1/1000, sync: 1/200, curtain: 4 ms', more).key!.figure.stops
      const key = (trigger: string) =>
        `unit: { energy: 400 Ws, regulated: voltage, durations: [{ power: full, t0.5: ${(t05 * 1000).toFixed(6)} ms }] }, power: full, trigger: { by: cable${trigger} }`
      const got = strips(0.001, 0.004, 0, t05)
      // Trapezia over the frame.
      const ends = (got[0]! + got.at(-1)!) / 2
      const mean = (got.reduce((sum, one) => sum + one, 0) - ends) / (got.length - 1)
      const lost = given(key('')) - given(key(', early: true'))
      expect(lost).toBeCloseTo(-Math.log2(mean), 2)
      if (stops !== undefined) expect(lost).toBeCloseTo(stops, 2)
    }
  })
})

describe('the dark band', () => {
  it('grows by what the trigger may add', () => {
    const band = (by: string) => {
      const [found] = findingsOf(
        'shutter-beyond-sync',
        text('shutter: 1/400, sync: 1/200, curtain: 4 ms', `unit: flashgun, meters: f/5.6${by}`),
      )
      return { dark: measured(found!, 'dark-share'), message: found!.message }
    }
    // By hand: 2.5 ms open of 4 ms; half a millisecond late 2.0 ms.
    expect(band('').dark).toBeCloseTo(1 - 2.5 / 4, 9)
    expect(band(', trigger: { by: cable }').dark).toBeCloseTo(1 - 2.5 / 4, 9)
    expect(band(', trigger: { by: radio }').dark).toBeCloseTo(0.5, 9)
    expect(band(', trigger: { by: radio }').message).toMatch(/^up to 50 %/)
    expect(band('').message).toMatch(/^38 %/)
  })
})

describe('the strip beside the dark band', () => {
  it('that a long flash leaves short is what strips exposed one by one miss', () => {
    for (const [t01, short] of [
      [1 / 300, 0.4],
      [1 / 150, 0.6],
    ] as const) {
      const t05 = t01 / Math.log2(10)
      const [found] = findingsOf(
        'shutter-beyond-sync',
        text(
          'shutter: 1/250, sync: 1/200, curtain: 5 ms',
          `unit: { energy: 400 Ws, regulated: voltage, durations: [{ power: full, t0.1: 1/${Math.round(1 / t01)} }] }, power: full, trigger: { by: cable }`,
        ),
      )
      const got = strips(1 / 250, 0.005, 0.005, t05)
      const under = (share: number) => got.filter((one) => one < share).length / got.length
      expect(measured(found!, 'dark-share')).toBeCloseTo(under(1e-9), 1)
      expect(measured(found!, 'short-share')).toBeCloseTo(under(0.5), 1)
      expect(found!.message).toMatch(
        new RegExp(`^20 % of the frame stays dark and ${short * 100} % in all over 1 stop short`),
      )
    }
  })

  it('is guessed at its longest where the kit does not say, and nothing where the flash is short', () => {
    const message = (key: string) =>
      findingsOf('shutter-beyond-sync', text('shutter: 1/250, sync: 1/200, curtain: 5 ms', key))[0]!.message
    expect(message('unit: head 600 Ws, power: full, trigger: { by: cable }')).toMatch(
      /^20 % of the frame stays dark and up to \d+ % in all/,
    )
    expect(
      message(
        'unit: { energy: 400 Ws, durations: [{ power: full, t0.1: 1/8000 }] }, power: full, trigger: { by: cable }',
      ),
    ).toMatch(/^20 % of the frame stays dark, in a band/)
  })
})

describe('a leaf shutter', () => {
  it('is told of from a third of a stop on', () => {
    // 1 - 2^(-t/t0.5) = 2^(-1/3) at t = 2.277 t0.5.
    const lost = (t05: number) =>
      findingsOf(
        'leaf-cuts-flash',
        text(
          'shutter: 1/500, shutter-kind: leaf',
          `unit: { energy: 600 Ws, regulated: voltage, durations: [{ power: full, t0.5: ${t05} ms }] }, power: full`,
        ),
      )[0]
    expect(measured(lost(0.91)!, 'lost')).toBeCloseTo(-Math.log2(1 - 2 ** (-2 / 0.91)), 9)
    expect(lost(0.7)).toBeUndefined()
    // The check value dur.clip.1000.1000.
    expect(measured(lost(2)!, 'lost')).toBeCloseTo(1, 9)
    expect(lost(2)!.certainty).toBe('sure')
  })
})

describe('a leaf shutter and a late trigger', () => {
  const found = (by: string, shutter = '1/1600') =>
    findingsOf(
      'leaf-cuts-flash',
      text(
        `shutter: ${shutter}, shutter-kind: leaf`,
        `unit: { energy: 400 Ws, regulated: voltage, durations: [{ power: full, t0.5: 1/3000 }] }, power: full, trigger: { by: ${by} }`,
      ).replace('f/5.6', 'f/16'),
    )[0]

  it('tells the range: from the flash by cable to one that is as late as it may', () => {
    // By hand, with 0.625 ms open: 1 - 2^(-0.625 × 3) kept by cable; with half a millisecond less, 1 - 2^(-0.125 × 3).
    const stops = (left: number) => (-Math.log2(1 - 2 ** (-left * 3))).toFixed(1)
    expect([stops(0.625), stops(0.125)]).toEqual(['0.5', '2.1'])
    expect(found('cable')!.message).toMatch(/0\.5 stop weaker/)
    expect(found('radio')!.message).toMatch(/0\.5 to 2\.1 stops weaker/)
    expect(found('radio')!.certainty).toBe('probable')
    // 1.5 and 3 ms are longer than the shutter is open.
    for (const by of ['basic radio', 'optical groups'])
      expect(found(by)!.message).toMatch(/at least 0\.5 stop weaker than it burns, or not at all/)
    expect(found('optical groups')!.certainty).toBe('sure')
  })

  it('is mended by a cable where it is all the trigger’s, or by a slower time', () => {
    const late = found('optical groups', '1/400')!
    expect(late.advice.map(({ title }) => title).join()).toMatch(
      /camera\.shutter → 1\/\d+.*key fired by cable/,
    )
    expect(found('radio', '1/400')).toBeUndefined()
    expect(found('cable', '1/400')).toBeUndefined()
  })
})

describe('an electronic shutter', () => {
  const found = (shutter: string, readout: string, by = '') =>
    findingsOf(
      'electronic-shutter',
      text(
        `shutter: ${shutter}, shutter-kind: electronic, readout: ${readout}`,
        `unit: { energy: 600 Ws, regulated: voltage, durations: [{ power: full, t0.1: 1 ms }] }, power: full${by}`,
      ),
    )[0]

  it('leaves dark what is not open at the flash, and short what closes before half of it', () => {
    // By hand: 10 ms of 40 ms; half of a flash of t0.1 1 ms is out after 1/3.32 ms.
    expect(measured(found('1/100', '40 ms')!, 'dark-share')).toBeCloseTo(1 - 10 / 40, 9)
    expect(measured(found('1/100', '40 ms')!, 'short-share')).toBeCloseTo(1 - (10 - 1 / 3.32192809) / 40, 6)
    expect(found('1/100', '40 ms')!.level).toBe('error')
    expect(measured(found('1/100', '40 ms', ', trigger: { by: optical groups }')!, 'dark-share')).toBeCloseTo(
      1 - 7 / 40,
      9,
    )
  })

  it('is told as an edge where no line is dark', () => {
    expect(found('1/100', '9 ms')).toBeUndefined()
    // By hand: half a millisecond of a flash of t0.5 0.301 ms is 0.68 of it, 0.55 stop short.
    expect(found('1/100', '9.5 ms')).toMatchObject({ level: 'note' })
    expect(found('1/100', '9.5 ms')!.message).toMatch(
      /one edge of the frame comes out up to 0\.5 stop darker/,
    )
    expect(found('1/100', '9.9 ms')!.message).toMatch(/^2 % of the frame comes out over 1 stop short/)
  })
})

describe('motion blur', () => {
  const head = (power: string) =>
    `unit: { energy: 600 Ws, regulated: igbt, durations: [{ power: full, t0.1: 1/500 }, { power: 1/4, t0.1: 1/2000 }, { power: 1/16, t0.1: 1/5000 }] }, power: ${power}`
  const blur = (key: string, shutter = '1/200', more = '') =>
    findingsOf(
      'motion-blur',
      text(`shutter: ${shutter}, sync: 1/250`, key, more, '{ kind: person, moves: 5 m/s }'),
    )

  it('is 10 mm at 1/500 and 2.5 mm at 1/2000 for limbs at 5 m/s', () => {
    // As practitioners reckon it.
    expect(measured(blur(head('full'))[0]!, 'blur')).toBeCloseTo(1, 9)
    expect(measured(blur(head('1/4'))[0]!, 'blur')).toBeCloseTo(0.25, 9)
  })

  it('counts what gives enough of the light: a lamp beside the flash smears where it may show', () => {
    const bright = 'ambient: { reads: f/16, shutter: 1/200, iso: 100 }\n'
    const lit = blur(head('1/16'), '1/200', bright)
    expect(lit).toHaveLength(1)
    expect(lit[0]!.message).toMatch(/the light of the place burns on/)
    expect(measured(lit[0]!, 'blur')).toBeCloseTo(2.5, 9)
    // Where none is wanted, that it shows at all is told instead.
    const unwanted = text(
      'shutter: 1/200, sync: 1/250',
      head('1/16'),
      bright,
      '{ kind: person, moves: 5 m/s }',
    ).replace('ambient: any', 'ambient: none')
    const told = checkText(unwanted).findings.map(({ rule }) => rule)
    expect(told).toContain('ambient-in-exposure')
    expect(told.filter((rule) => rule === 'motion-blur').length).toBeLessThan(2)
    expect(
      findingsOf('motion-blur', unwanted)
        .map(({ message }) => message)
        .join(),
    ).not.toMatch(/burns on/)
  })

  it('asks of another unit what the movement asks, however unsure or long today’s flash is', () => {
    // By hand: half a millimetre and less on the subject. 43.27 mm / 1500 on the sensor, magnified f / (s - f).
    const circle = 43.267 / 1500 / 1000
    const longest = circle / (5 * (0.085 / (2.5 - 0.085)))
    const shorter = (key: string): number => {
      const [found] = blur(key)
      const asks = found!.advice.map(({ title }) => /t0\.1 of 1\/(\d+) or shorter$/.exec(title)?.[1])
      return Number(asks.find((one) => one !== undefined))
    }
    for (const key of [
      head('full'),
      head('1/2'),
      'unit: { energy: 600 Ws, regulated: voltage }, power: full',
      'unit: { energy: 600 Ws, regulated: voltage }, power: 1/4',
    ]) {
      expect(1 / shorter(key)).toBeLessThan(longest * 1.02)
      expect(1 / shorter(key)).toBeGreaterThan(longest * 0.9)
    }
  })

  it('asks how fast, where frozen is all that is wanted', () => {
    const { notChecked } = checkText(
      text('shutter: 1/200', head('full')).replace('shadow: any', 'shadow: any, motion: frozen'),
    )
    expect(notChecked.find(({ rule }) => rule === 'motion-blur')?.enable?.text).toBe('moves: 2 m/s')
  })
})

describe('what a slower shutter costs', () => {
  const tubes = (lights: string): string => `plan: 1
title: Under tubes
room: { width: 5 m, length: 7 m, height: 3 m, mains: 50 Hz }
camera: { lens: 85 mm, at: { distance: 2.4 m }, aperture: f/2.8, shutter: 1/250, iso: 400 }
subject: { kind: person }
lights:
${lights}wanted: { shadow: any, ambient: any }
`
  const lamp =
    '  bank: { role: key, unit: { lux: 900 lx at 1 m, flicker: mains }, modifier: softbox 60 x 60 cm, power: full, at: { angle: 40 deg left, distance: 1.2 m, height: 1.9 m } }\n'
  const costs = (lights: string): string => findingsOf('flicker-bands', tubes(lights))[0]!.advice[0]!.costs!

  it('lamps alone: all of the picture gets lighter; beside a flash they count more', () => {
    expect(costs(lamp)).toMatch(/^all of the picture 1\.3 stops lighter/)
    const flash =
      '  fill: { unit: flashgun, modifier: white umbrella 1 m, meters: f/1, at: { angle: 30 deg right, distance: 2 m, height: 1.6 m } }\n'
    expect(
      findingsOf('flicker-bands', tubes(lamp + flash).replace('1/250', '1/160'))[0]!.advice[0]!.costs,
    ).toMatch(/^bank counts 0\.7 stop more/)
  })
})

describe('flicker', () => {
  it('swings by what frames taken at any moment differ', () => {
    // The lamp is half its swing under and over its mean; beside it a steady one of the same kind and place.
    const lamp = (flicker: string) => `unit: { lux: 2000 lx at 1 m${flicker} }, power: full`
    const plan = text(
      'shutter: 1/250',
      lamp(', flicker: mains'),
      'room: { width: 6 m, length: 8 m, height: 3 m, mains: 60 Hz }\n',
    ).replace(
      '\nwanted',
      '\n  fill: { unit: { lux: 2000 lx at 1 m }, power: full, at: { angle: 30 deg right, distance: 1.4 m, height: 2 m } }\nwanted',
    )
    const [found] = findingsOf('flicker-bands', plan)
    const frames = Array.from({ length: 500 }, (_, i) => {
      let sum = 0
      for (let k = 0; k < 1000; k++) {
        const at = i / 500 / 120 + ((k + 0.5) / 1000) * 0.004
        sum += 1 + (1 + 0.5 * Math.cos(2 * Math.PI * 120 * at))
      }
      return sum
    })
    const swing = Math.log2(Math.max(...frames) / Math.min(...frames))
    expect(measured(found!, 'share')).toBeCloseTo(0.5, 2)
    expect(measured(found!, 'swing')).toBeCloseTo(swing, 2)
  })

  it('goes by the mains that the room states, or its voltage', () => {
    const at = (room: string) =>
      findingsOf(
        'flicker-bands',
        text('shutter: 1/125', 'unit: { lux: 2000 lx at 1 m, flicker: mains }, power: full', room),
      ).map(({ level, certainty }) => `${level} ${certainty}`)
    const room = (more: string) => `room: { width: 6 m, length: 8 m, height: 3 m${more} }\n`
    expect(at(room(', mains: 50 Hz'))).toEqual(['warning probable'])
    expect(at(room(', circuits: { a: { voltage: 230 V, breaker: 16 A } }'))).toEqual(['warning probable'])
    expect(at(room(', mains: 60 Hz'))).toEqual([])
    expect(at(room(', circuits: { a: { voltage: 120 V, breaker: 15 A } }'))).toEqual([])
    // On one of two mains it would show: told, one level down.
    expect(at(room(''))).toEqual(['note possible'])
    expect(at(room(', circuits: { a: { voltage: 100 V, breaker: 15 A } }'))).toEqual(['note possible'])
  })
})

describe('high-speed mode', () => {
  const plan = (more: string) =>
    text('shutter: 1/2000, sync: 1/250', `unit: { guide-number: 22 m at 35 mm }, mode: high-speed, ${more}`)

  it('is told once, and neutral density at the sync speed comes first', () => {
    for (const more of ['meters: f/5.6', 'power: full']) {
      const { findings } = checkText(plan(more))
      const [found] = findings.filter(({ rule }) => rule === 'high-speed-short')
      expect(found!.level).toBe('warning')
      expect(findings.some(({ rule }) => rule === 'unit-too-weak')).toBe(false)
      expect(measured(found!, 'lost')).toBeCloseTo(5, 9)
      expect(found!.advice[0]!.title).toMatch(/^camera\.shutter → 1\/250, camera\.filter → 3 stops/)
    }
  })

  it('is left to the unit itself where the mode takes nothing', () => {
    const slow = plan('meters: f/22').replace('1/2000', '1/200')
    expect(findingsOf('unit-too-weak', slow)).toHaveLength(1)
    expect(findingsOf('high-speed-short', slow)).toHaveLength(0)
  })

  it('fires at once at the sync speed and slower: movement is frozen by the flash', () => {
    const jump = (shutter: string, mode: string) =>
      findingsOf(
        'motion-blur',
        text(
          `shutter: ${shutter}, sync: 1/250`,
          `unit: { energy: 400 Ws, regulated: igbt, durations: [{ power: full, t0.1: 1/500 }] }, mode: ${mode}, meters: f/5.6`,
          '',
          '{ kind: person, moves: 4 m/s }',
        ),
      ).map(({ measured: { duration } }) => duration!.value)
    expect(jump('1/60', 'high-speed')).toEqual(jump('1/60', 'manual'))
    // Beyond it the slit draws movement over its own time.
    expect(jump('1/320', 'high-speed')).toEqual([1 / 320])
  })
})
