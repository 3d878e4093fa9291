/** The shutter and light in time, for any set: a faster shutter never brings more; marks are literal for time alone. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { leafLoss } from '../../src/light/shutter-loss.js'
import { highSpeedLoss } from '../../src/light/strength.js'
import { darkBand, readoutBand } from '../../src/picture/shutter.js'
import { computeSet } from '../../src/set/compute-set.js'
import { markedTimes } from '../../src/units/marks.js'
import type { Seconds } from '../../src/units/quantity.js'
import { planOf } from '../language/reading.js'

const text = (shutter: string, kind: string, key: string) => `plan: 1
title: Flash, lamp and window light together
ambient: { reads: f/2.8, shutter: 1/60, iso: 100 }
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/8, shutter: ${shutter}, iso: 100, sync: 1/200, shutter-kind: ${kind} }
subject: { kind: person }
lights:
  key: { unit: flashgun, ${key}, at: { angle: 30 deg left, distance: 1.4 m, height: 2 m } }
  rim: { unit: led panel, power: full, at: { angle: 150 deg right, distance: 1.4 m, height: 2 m } }
`
const setOf = (shutter: string, kind = 'focal-plane', key = 'power: 1/2') =>
  computeSet(planOf(text(shutter, kind, key)))

const denominators = markedTimes('third').denominators.filter((one) => one >= 30 && one <= 8000)
const anyMark = fc.constantFrom(...denominators)
const anyKind = fc.constantFrom('focal-plane', 'leaf', 'electronic')
const anyKey = fc.constantFrom('power: full', 'power: 1/8', 'mode: high-speed, power: 1/2', 'meters: f/8')

describe('a faster shutter', () => {
  it('never brings more light of anything, as written and as a what-if', () => {
    fc.assert(
      fc.property(anyMark, anyMark, anyKind, anyKey, (a, b, kind, key) => {
        const [slow, fast] = [Math.min(a, b), Math.max(a, b)].map((one) => `1/${one}`)
        const [was, is] = [setOf(slow!, kind, key), setOf(fast!, kind, key)]
        const tried = was.with({ knob: { knob: 'shutter' }, to: is.plan.camera.shutter })
        for (const of of [['key'], ['rim'], ['ambient'], 'all'] as const) {
          const light = (set: typeof was) => set.reading({ at: 'subject', of })!.luxSeconds
          expect(light(is)).toBeLessThanOrEqual(light(was) * (1 + 1e-9))
          expect(Math.log2(light(tried) / light(is))).toBeCloseTo(0, 6)
        }
      }),
      { numRuns: 60, seed: 1 },
    )
  })
})

describe('marks', () => {
  it('are exact in exposure: each third of the dial is a third of a stop of what burns on', () => {
    fc.assert(
      fc.property(fc.nat({ max: denominators.length - 2 }), (i) => {
        const light = (j: number) => {
          const set = setOf(`1/${denominators[j]}`)
          return set.reading({ at: 'subject', of: ['rim'] })!.figure.stops
        }
        expect(light(i) - light(i + 1)).toBeCloseTo(1 / 3, 9)
      }),
      { numRuns: 20, seed: 2 },
    )
  })

  it('are literal in time: 1/125 is 8 ms for slits, lines and bursts', () => {
    const at = (shutter: string, kind = 'focal-plane') => setOf(shutter, kind).plan.camera
    expect(at('1/125').shutterMarked).toBe(0.008)
    expect(at('1/125').shutter).toBe(2 ** -7)
    fc.assert(
      fc.property(anyMark, (mark) => {
        const time = 1 / mark
        const slit = darkBand({ ...at(`1/${mark}`), curtain: 0.005 as Seconds })
        expect(slit?.open.most ?? 1).toBeCloseTo(Math.min(1, time / 0.005), 12)
        const lines = readoutBand(
          { ...at(`1/${mark}`, 'electronic'), readout: 0.05 as Seconds },
          0 as Seconds,
        )
        expect(lines!.open.most).toBeCloseTo(Math.min(1, time / 0.05), 12)
        const leaf = planOf(text(`1/${mark}`, 'leaf', 'power: full'))
        const decay = leafLoss(leaf.lights.get('key')!, leaf).stops
        // The built-in flash lasts 1/300 over a tenth of its peak, so 1/300/3.32 over half.
        expect(2 ** -decay).toBeCloseTo(1 - 2 ** ((-time * 300 * Math.log(10)) / Math.LN2), 9)
      }),
      { numRuns: 20, seed: 3 },
    )
  })
})

describe('high-speed mode', () => {
  it('never does better than an even burst over the whole run of the slit', () => {
    fc.assert(
      fc.property(anyMark, fc.double({ min: 0.7, max: 1, noNaN: true }), (mark, share) => {
        const plan = planOf(text(`1/${mark}`, 'focal-plane', 'mode: high-speed, power: full'))
        const loss = highSpeedLoss(plan.lights.get('key')!, plan)
        if (loss === undefined) return
        // The check values sync.hss: an even burst through the whole run of the slit gives each strip t of t + T.
        const time = plan.camera.shutterMarked
        expect(loss.stops).toBeGreaterThan(-Math.log2(time / (time + plan.camera.sync * share)) - 1e-9)
      }),
      { seed: 4 },
    )
  })
})
