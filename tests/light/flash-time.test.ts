/** Durations and kept shares of a flash, against pulses that are summed step by step. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { FlashUnit, Light } from '../../src/language/plan.js'
import { flashTime } from '../../src/light/flash-time.js'
import { cutAt, keptShare, overHalf, overTenth, type Pulse, timeUntil, uncut } from '../../src/light/pulse.js'
import { leafLoss } from '../../src/light/shutter-loss.js'
import { priorStrength } from '../../src/light/strength.js'
import { computeSet } from '../../src/set/compute-set.js'
import type { PowerShare, Seconds } from '../../src/units/quantity.js'
import { makeLight, makePlan } from '../helpers/make-plan.js'
import { planOf } from '../language/reading.js'

/** What a light meter on an oscilloscope would show: intensity at equal steps, each a bit less than the last; the peak is 1. */
const trace = ({ half, cut, tail }: Pulse) => {
  const steps = 100_000
  const step = Math.min(cut + 20 * tail, 20 * half) / steps
  const [before, after] = [half, tail].map((life) => Math.exp((-Math.LN2 * step) / life))
  const at: number[] = []
  let now = Math.exp((-Math.LN2 * step) / 2 / half)
  for (let i = 0; i < steps; i++) {
    at.push(now)
    now *= (i + 1) * step < cut ? before! : after!
  }
  return { step, at }
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
        const sum = (pulse: Pulse) => {
          const { step, at } = trace(pulse)
          return step * at.reduce((all, one) => all + one, 0)
        }
        expect(sum(cutAt(half, share)) / sum(uncut(half))).toBeCloseTo(share, 3)
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

  it('has let out a share by the time at which its trace sums up to it', () => {
    fc.assert(
      fc.property(anyHalf, anyShare, fc.double({ min: 0.02, max: 0.98, noNaN: true }), (half, share, out) => {
        const pulse = cutAt(half, share)
        expect(shareBy(pulse, timeUntil(pulse, out))).toBeCloseTo(out, 3)
      }),
      { numRuns: 20, seed: 7 },
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
  it('lasts what is stated, at the powers of which it is', () => {
    for (const regulated of ['igbt', 'voltage'] as const) {
      const stated = unit({ regulated, durations: [row(1, 1 / 250), row(1 / 16, undefined, 1 / 4000)] })
      expect(at(stated, 1).known).toBe('stated')
      expect(at(stated, 1).t01).toBeCloseTo(1 / 250, 12)
      expect(at(stated, 1 / 16).t05).toBeCloseTo(1 / 4000, 12)
    }
  })

  it('charged less, lasts between two powers in proportion of the logarithms', () => {
    const stated = unit({ regulated: 'voltage', durations: [row(1, 1 / 500), row(1 / 16, 1 / 320)] })
    // Half of the stops between them, so the geometric mean of the times.
    expect(at(stated, 1 / 4).t01).toBeCloseTo(1 / 400, 12)
  })

  it('cut, is between two powers one discharge that is switched off when the share is out', () => {
    // Rows that one discharge gives: the powers between them are its trace up to each share, whatever is stated beside.
    const half = 0.001 as Seconds
    const durations = [1, 1 / 8].map((power) => row(power, longOver(cutAt(half, power as PowerShare), 0.1)))
    const stated = unit({ regulated: 'igbt', durations })
    for (const power of [0.89, 0.79, 0.71, 1 / 2, 1 / 4] as PowerShare[]) {
      const pulse = cutAt(half, power)
      expect(at(stated, power).t01 / longOver(pulse, 0.1)).toBeCloseTo(1, 3)
      expect(at(stated, power).t05 / longOver(pulse, 0.5)).toBeCloseTo(1, 3)
    }
  })

  it('cut, is over sooner at less power, and a leaf shutter takes less of it', () => {
    const stated = unit({ regulated: 'igbt', durations: [row(1, 1 / 300), row(1 / 8, 1 / 3000)] })
    const times = Array.from({ length: 40 }, (_, i) => 8 ** (-i / 39))
    const all = times.map((power) => {
      const light = makeLight('key', { power, unit: stated as never })
      return { ...at(stated, power), lost: leafLoss(light, leaf(1 / 800, light)).stops }
    })
    for (let i = 1; i < all.length; i++) {
      const [more, less] = [all[i - 1]!, all[i]!]
      expect(less.t01).toBeLessThan(more.t01)
      expect(less.lost).toBeLessThanOrEqual(more.lost)
      // The two rows' discharges differ by a seventh: until the cut comes below half the peak, t0.5 is the discharge's.
      expect(less.t05).toBeLessThan(more.t05 * 1.01)
    }
    expect(all.at(-1)!.t01).toBeCloseTo(1 / 3000, 9)
  })

  it('of a cut pulse is measured 1.5 to 2 times longer over a tenth than over a half', () => {
    // Common practice, no source; near full power it is nearly an exponential.
    for (const share of [1 / 2, 1 / 4, 1 / 8, 1 / 64, 1 / 256] as PowerShare[]) {
      const pulse = cutAt(0.001 as Seconds, share)
      const ratio = longOver(pulse, 0.1) / longOver(pulse, 0.5)
      expect(ratio).toBeGreaterThan(1.5)
      expect(ratio).toBeLessThan(2)
    }
  })

  it('may last into a fast leaf shutter where it nominally does not', () => {
    const half = unit({ regulated: 'igbt', durations: [row(1 / 2, 1 / 1200)] })
    const light = makeLight('key', { power: 1 / 2, unit: half as never })
    const { stops, u } = leafLoss(light, leaf(1 / 800, light))
    // Over a tenth it is over well before; some of its dying out is left, and more if it lasts longer than told.
    expect(stops).toBeGreaterThan(0)
    expect(stops).toBeLessThan(0.05)
    expect(u).toBeGreaterThan(stops / 2)
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

  it('that a late flash runs into keeps on average what frames of all delays sum up to', () => {
    // The delays are the program's own, from memory: half a millisecond, one and a half, three at most.
    const latest = { radio: 0.0005, 'basic radio': 0.0015, 'optical groups': 0.003 } as const
    fc.assert(
      fc.property(
        fc.constantFrom<keyof typeof latest>('radio', 'basic radio', 'optical groups'),
        fc.double({ min: 1 / 4000, max: 1 / 125, noNaN: true }),
        fc.constantFrom(1, 1 / 2, 1 / 8),
        (by, open, power) => {
          const trigger = { by, channel: undefined, group: undefined, early: false }
          const light = { ...slow(power), trigger }
          const { step, at: flash } = trace(flashTime(light.unit as FlashUnit, power as PowerShare).pulse)
          // Light that is out by each step; the frame ends with what is out by then.
          let out = 0
          const outBy = [0, ...flash.map((one) => (out += one))]
          const frames = Array.from({ length: 300 }, (_, i) => {
            const left = open - ((i + 0.5) / 300) * latest[by]
            return outBy[Math.min(flash.length, Math.max(0, Math.round(left / step)))]! / out
          })
          const mean = frames.reduce((all, one) => all + one, 0) / frames.length
          const { stops, least, most, u, uLess } = leafLoss(light, leaf(open, light))
          expect(Math.abs(2 ** -Math.min(stops, 10) - Math.max(mean, 2 ** -10))).toBeLessThan(0.01)
          expect(2 ** -least).toBeCloseTo(Math.max(2 ** -10, frames[0]!), 1)
          expect(2 ** -most).toBeCloseTo(Math.max(2 ** -10, frames.at(-1)!), 1)
          if (stops > 0) expect(u).toBeGreaterThan(0)
          expect(least).toBeLessThanOrEqual(stops + 1e-9)
          expect(stops).toBeLessThanOrEqual(most + 1e-9)
          // On the side of less loss it is never less sure than the range allows, but for the duration's own u.
          expect(uLess).toBeLessThan(stops - least + u + 1e-9)
        },
      ),
      { numRuns: 15, seed: 6 },
    )
  })

  it('closes before a flash that comes too late: black', () => {
    const late = {
      ...slow(1),
      trigger: { by: 'optical groups', channel: undefined, group: undefined, early: false },
    } as const
    const { least, most, u } = leafLoss(late, leaf(1 / 1600, late))
    expect(most).toBe(10)
    // By hand: 0.625 ms of a flash of 1 ms t0.5.
    expect(least).toBeCloseTo(-Math.log2(1 - 2 ** -0.625), 9)
    expect(u).toBeGreaterThan(2)
    expect(
      leafLoss({ ...late, trigger: { ...late.trigger, by: 'cable' } }, leaf(1 / 1600, late)).u,
    ).toBeLessThan(0.5)
  })

  it('takes it from what the light gives by its rating, the short flash keeps all', () => {
    const open = makePlan({ lights: [slow(1)] })
    const given = (light: Light, plan = leaf(0.001, light)) => priorStrength(light, plan)!.candelaSeconds
    expect(Math.log2(given(slow(1)) / given(slow(1), open))).toBeCloseTo(-1, 12)
    expect(Math.log2(given(slow(1 / 16)) / given(slow(1 / 16), open))).toBeCloseTo(0, 9)
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
