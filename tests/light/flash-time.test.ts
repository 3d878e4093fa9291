/** Durations and kept shares of a flash, against pulses that are summed step by step. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { FlashUnit, Light } from '../../src/language/plan.js'
import {
  cutAt,
  flashTime,
  keptShare,
  leafLoss,
  overHalf,
  overTenth,
  type Pulse,
} from '../../src/light/flash-time.js'
import { priorStrength } from '../../src/light/strength.js'
import { computeSet } from '../../src/set/compute-set.js'
import type { PowerShare, Seconds } from '../../src/units/quantity.js'
import { makeLight, makePlan } from '../helpers/make-plan.js'
import { planOf } from '../language/reading.js'

/** What a light meter on an oscilloscope would show: intensity at equal steps, the peak being 1. */
const trace = ({ half, cut }: Pulse) => {
  const end = Math.min(cut, 20 * half)
  const steps = 100_000
  const step = end / steps
  return {
    step,
    at: Array.from({ length: steps }, (_, i) => Math.exp((-Math.LN2 * (i + 0.5) * step) / half)),
  }
}
const longOver = (pulse: Pulse, level: number): number => {
  const { step, at } = trace(pulse)
  return step * at.filter((intensity) => intensity >= level).length
}
const shareBy = (pulse: Pulse, time: number): number => {
  const { step, at } = trace(pulse)
  let [kept, all] = [0, 0]
  at.forEach((intensity, i) => {
    all += intensity
    kept += intensity * Math.min(1, Math.max(0, time / step - i))
  })
  return kept / all
}

const anyShare = fc.double({ min: 1 / 512, max: 1, noNaN: true }).map((share) => share as PowerShare)
const anyHalf = fc.double({ min: 1e-4, max: 4e-3, noNaN: true }).map((half) => half as Seconds)
const anyTime = fc.double({ min: 1e-5, max: 1e-1, noNaN: true }).map((time) => time as Seconds)

describe('a pulse', () => {
  it('lasts over half and over a tenth of its peak as long as its trace does', () => {
    fc.assert(
      fc.property(anyHalf, anyShare, (half, share) => {
        const pulse = cutAt(half, share)
        expect(longOver(pulse, 0.5) / overHalf(pulse)).toBeCloseTo(1, 3)
        expect(longOver(pulse, 0.1) / overTenth(pulse)).toBeCloseTo(1, 3)
      }),
      { numRuns: 20, seed: 1 },
    )
  })

  it('that is cut at a share has let out that share of the uncut one', () => {
    fc.assert(
      fc.property(anyHalf, anyShare, (half, share) => {
        const uncut = { half, cut: Number.POSITIVE_INFINITY as Seconds }
        expect(shareBy(uncut, cutAt(half, share).cut)).toBeCloseTo(share, 3)
      }),
      { numRuns: 20, seed: 2 },
    )
  })

  it('keeps under a shutter what its trace sums up to', () => {
    fc.assert(
      fc.property(anyHalf, anyShare, anyTime, (half, share, time) => {
        const pulse = cutAt(half, share)
        expect(keptShare(pulse, time)).toBeCloseTo(shareBy(pulse, time), 3)
      }),
      { numRuns: 20, seed: 3 },
    )
  })

  it('keeps a share from 0 to 1, never less under a slower shutter', () => {
    fc.assert(
      fc.property(anyHalf, anyShare, anyTime, anyTime, (half, share, a, b) => {
        const pulse = cutAt(half, share)
        const [fast, slow] = [Math.min(a, b), Math.max(a, b)].map((time) => keptShare(pulse, time as Seconds))
        expect(fast!).toBeGreaterThanOrEqual(0)
        expect(slow!).toBeLessThanOrEqual(1)
        expect(fast!).toBeLessThanOrEqual(slow!)
      }),
      { seed: 4 },
    )
  })
})

const unit = (more: Partial<FlashUnit> & object): FlashUnit =>
  ({ ...makeLight('key').unit, durations: [], regulated: undefined, ...more }) as FlashUnit
const row = (power: number, t01?: number, t05?: number) =>
  ({ power, t01, t05 }) as unknown as FlashUnit['durations'][number]
const at = (of: FlashUnit, power: number) => flashTime(of, power as PowerShare)

describe('the flash of a unit', () => {
  it('lasts what is stated, between two powers in proportion of the logarithms', () => {
    const stated = unit({ regulated: 'igbt', durations: [row(1, 1 / 250), row(1 / 16, 1 / 4000)] })
    expect(at(stated, 1)).toMatchObject({ known: 'stated', t01: 1 / 250 })
    expect(at(stated, 1 / 16).t01).toBeCloseTo(1 / 4000, 12)
    // Half of the stops between them, so the geometric mean of the times.
    expect(at(stated, 1 / 4).t01).toBeCloseTo(1 / 1000, 12)
    expect(at(stated, 1 / 4).pulse.cut).toBeLessThanOrEqual(1 / 1000)
  })

  it('t0.5 of an exponential, as a head at full power states it, is 3.32 times shorter than t0.1', () => {
    // The check value dur.ratio.
    const { t01, t05 } = at(unit({ regulated: 'voltage', durations: [row(1, undefined, 1 / 1200)] }), 1)
    expect(t05).toBeCloseTo(1 / 1200, 9)
    expect(t01 / t05).toBeCloseTo(3.32192809, 8)
  })

  it('halves with each stop where it is cut, and grows by some tens of per cent where it is charged less', () => {
    // Each stop less halves the blur on units that cut (practitioners' reports); the growth is from memory.
    const cut = unit({ regulated: 'igbt', durations: [row(1 / 16, 1 / 4000)] })
    for (const power of [1 / 32, 1 / 64])
      expect(at(cut, power).t01 / at(cut, 2 * power).t01).toBeCloseTo(0.5, 1)
    const charged = unit({ regulated: 'voltage', durations: [row(1, 1 / 500)] })
    const longer = at(charged, 1 / 32).t01 * 500
    expect(longer).toBeGreaterThan(1.1)
    expect(longer).toBeLessThan(1.8)
  })

  it('goes down in t0.5 as printed tables of battery flashes do', () => {
    // Such a table, from memory, in units of t0.5 at full: 0.8 at 1/2, 0.35 at 1/4, 0.18, 0.09, 0.045 at 1/32.
    const flash = unit({ regulated: 'igbt', durations: [row(1, undefined, 1 / 880)] })
    const printed = [0.8, 0.35, 0.18, 0.09, 0.045]
    printed.forEach((share, i) => {
      expect(Math.abs(Math.log2((at(flash, 2 ** -(i + 1)).t05 * 880) / share))).toBeLessThan(0.35)
    })
  })

  it('is longer at more power and less known away from what is stated', () => {
    fc.assert(
      fc.property(anyShare, anyShare, (a, b) => {
        const guess = unit({ regulated: 'igbt' })
        const [less, more] = [Math.min(a, b), Math.max(a, b)]
        expect(at(guess, less).t01).toBeLessThanOrEqual(at(guess, more).t01 * (1 + 1e-12))
        expect(at(guess, less).t05).toBeLessThanOrEqual(at(guess, more).t05 * (1 + 1e-12))
      }),
      { seed: 5 },
    )
    const stated = unit({ durations: [row(1, 1 / 250)] })
    expect(at(stated, 1 / 16).u).toBeGreaterThan(at(stated, 1).u)
    expect(at(unit({}), 1)).toMatchObject({ known: 'guessed' })
  })
})

const leaf = (shutter: number, light: Light = makeLight('key', { power: 1 })) =>
  makePlan({
    lights: [light],
    camera: { shutterKind: 'leaf', shutter, shutterMarked: shutter, sync: 1 / 200 },
  })
const slow = (power: number): Light =>
  makeLight('key', {
    power,
    unit: unit({ regulated: 'igbt', durations: [row(1, undefined, 0.001)] }) as never,
  })

describe('a leaf shutter', () => {
  it('cuts a flash of 1 ms t0.5 by 0.42 stop at 2 ms and a stop at 1 ms', () => {
    // The check values dur.clip.500.1000 and dur.clip.1000.1000.
    expect(leafLoss(slow(1), leaf(0.002)).stops).toBeCloseTo(0.415037499, 8)
    expect(leafLoss(slow(1), leaf(0.001)).stops).toBeCloseTo(1, 12)
    expect(leafLoss(slow(1), leaf(0.001)).u).toBeGreaterThan(0)
  })

  it('takes it from what the light gives by its rating, the short flash keeps all', () => {
    const open = makePlan({ lights: [slow(1)] })
    const given = (light: Light, plan = leaf(0.001, light)) => priorStrength(light, plan)!.candelaSeconds
    expect(Math.log2(given(slow(1)) / given(slow(1), open))).toBeCloseTo(-1, 12)
    expect(Math.log2(given(slow(1 / 16)) / given(slow(1 / 16), open))).toBeCloseTo(0, 12)
    const fast = makeLight('key', { mode: 'high-speed', power: 1, unit: slow(1).unit as never })
    expect(leafLoss(fast, leaf(0.001, fast)).stops).toBe(0)
  })

  it('gives back in a what-if what less power or a slower shutter no longer cuts', () => {
    const text = (shutter: string, power: string, readings = '') => `plan: 1
title: A long flash under a leaf shutter
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/8, shutter: ${shutter}, iso: 100, shutter-kind: leaf }
subject: { kind: person }
lights:
  key: { unit: { energy: 400 Ws, regulated: igbt, durations: [{ power: full, t0.5: 1/1000 }] }, power: ${power}, at: { angle: 30 deg left, distance: 1.4 m, height: 2 m } }
${readings}`
    const of = (...args: Parameters<typeof text>) => computeSet(planOf(text(...args)))
    const stops = (set: ReturnType<typeof of>) => set.key!.figure.stops
    const set = of('1/1000', 'full')
    expect(stops(set.with({ knob: { knob: 'strength', light: 'key' }, to: -3 }))).toBeCloseTo(
      stops(of('1/1000', '1/8')),
      9,
    )
    expect(stops(set.with({ knob: { knob: 'shutter' }, to: 1 / 128 }))).toBeCloseTo(
      stops(of('1/125', 'full')),
      9,
    )
    // A meter at the plan's time has not seen the tail either: what it read holds, at another shutter there is more.
    const read = of(
      '1/1000',
      'full',
      'readings:\n  - { at: subject, of: [key], reads: f/8, faces: camera, taken: { key: { power: full, distance: 1.4 m } } }\n',
    )
    expect(read.key!.fNumber).toBeCloseTo(8, 6)
    expect(stops(read.with({ knob: { knob: 'shutter' }, to: 1 / 128 })) - stops(read)).toBeCloseTo(
      stops(of('1/125', 'full')) - stops(set),
      9,
    )
    const readLess = of(
      '1/1000',
      'full',
      'readings:\n  - { at: subject, of: [key], reads: f/8, faces: camera, taken: { key: { power: 1/8, distance: 1.4 m } } }\n',
    )
    expect(stops(readLess) - stops(read)).toBeCloseTo(stops(set) - stops(of('1/1000', '1/8')), 9)
  })
})
