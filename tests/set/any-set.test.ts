/** Whatever the plan, a set answers in finite figures, and the same ones every time. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { backdropMargins } from '../../src/picture/backdrop-in-frame.js'
import { computeSet } from '../../src/set/compute-set.js'
import { knobRange } from '../../src/set/knob-range.js'
import { knobToday, writeKnob } from '../../src/set/knob-value.js'
import type { Knob } from '../../src/set/knobs.js'
import { anyPlan } from '../helpers/any-plan.js'

const cameraKnobs = [
  'aperture',
  'shutter',
  'iso',
  'filter',
  'lens',
  'camera-distance',
  'behind',
  'backdrop-width',
] as const
const lightKnobs = ['strength', 'light-distance', 'before-backdrop', 'zoom'] as const

const finite = (value: number | undefined): void => {
  if (value !== undefined) expect(Number.isFinite(value)).toBe(true)
}

describe('any plan', () => {
  it('meters finite figures', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const set = computeSet(plan)
        for (const at of set.scene.points.keys()) {
          const read = set.reading({ at, of: 'all' })
          finite(read?.figure.stops)
          finite(read?.overCamera.stops)
          if (read !== undefined) finite(set.u(read.figure))
        }
        finite(set.key?.fNumber)
        const view = set.backdropView
        for (const sample of view?.samples ?? []) finite(sample.overCamera.stops)
        if (view !== undefined)
          expect(view.brightest.overCamera.stops).toBeGreaterThanOrEqual(view.darkest.overCamera.stops)
        for (const value of Object.values(backdropMargins(set.scene) ?? {}))
          if (typeof value === 'number') finite(value)
        const again = computeSet(plan)
        expect(again.backdropView?.darkest.at).toEqual(view?.darkest.at)
        expect(again.key?.luxSeconds).toBe(set.key?.luxSeconds)
      }),
      { numRuns: 150, seed: 1, endOnFailure: true },
    )
  })

  it('turns every knob that it has, within its range, and writes its value', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const set = computeSet(plan)
        const knobs: Knob[] = [
          ...cameraKnobs.map((knob): Knob => ({ knob })),
          ...[...plan.lights.keys()].flatMap((light) => lightKnobs.map((knob): Knob => ({ knob, light }))),
        ]
        for (const knob of knobs) {
          const today = knobToday(plan, knob)
          const range = knobRange(plan, knob)
          finite(today)
          if (range === undefined) continue
          expect(today).toBeDefined()
          expect(range.to).toBeGreaterThanOrEqual(range.from)
          for (const to of [range.from, range.to]) {
            finite(to)
            expect(writeKnob(plan, knob, to)).not.toMatch(/NaN|Infinity|undefined/)
            finite(set.with({ knob, to }).key?.figure.stops)
          }
        }
      }),
      { numRuns: 100, seed: 2, endOnFailure: true },
    )
  })
})
