/** What a sun reads is read in its light (common practice, no source): a flag takes it from the face, and adds nothing elsewhere. */
import { describe, expect, it } from 'vitest'
import { computeSet } from '../../src/set/compute-set.js'
import { planOf } from '../rules/check-text.js'

const plan = (flag: string) => `plan: 1
title: Sun and a flag
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: white paper, behind: 3 m }
lights:
  sun: { role: key, unit: sun, at: { angle: 60 deg right, up: 20 deg }, reads: f/8, shutter: 1/125, iso: 100 }
${flag}points: { hands: { front: 60 cm, height: 1 m } }
wanted: { framing: waist, backdrop: white }
`
const flag = `panels:
  hat: { kind: flag, size: 20 x 20 cm, at: { angle: 60 deg right, distance: 50 cm, up: 20 deg }, faces: subject }
`

describe('a sun that a flag keeps from the face', () => {
  const [open, flagged] = [plan(''), plan(flag)].map((text) => computeSet(planOf(text)))
  const stops = (set: typeof open, at: string) => set!.reading({ at, of: ['sun'] })!.figure.stops

  it('is as strong elsewhere as without the flag', () => {
    for (const at of ['hands', 'backdrop', 'floor'])
      expect(Math.abs(stops(flagged, at) - stops(open, at))).toBeLessThan(0.1)
  })

  it('reads at the face what was read where nothing is in the way, stops less where the flag is', () => {
    expect(open!.reading({ at: 'subject', of: ['sun'] })!.fNumber).toBeCloseTo(8, 1)
    expect(stops(open, 'subject') - stops(flagged, 'subject')).toBeGreaterThan(3)
  })
})
