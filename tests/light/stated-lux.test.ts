/** Lux are stated at a place: there the program must read them again, however near the panel is. */
import { expect, it } from 'vitest'
import { computeSet, readPlan } from '../../src/index.js'

it.each([
  ['30 x 30 cm', 1],
  ['30 x 30 cm', 0.5],
  ['60 x 60 cm', 1],
  ['120 x 60 cm', 1],
])('a panel of %s gives at %d m the lux that it is stated with', (size, distance) => {
  const { plan } = readPlan(
    'panel.plan.yaml',
    `plan: 1
title: Panel
kit:
  units: { panel: { lux: 2000 lx at ${distance} m, beam: 120 deg, size: ${size} } }
camera: { lens: 85 mm, at: { distance: 3 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person, pose: seated }
lights:
  key: { unit: panel, power: full, at: { angle: 0 deg left, distance: ${distance} m, height: 1.2 m } }
`,
    { read: () => ({ ok: false, says: 'no files' }) },
  )
  // 1/125 is 1/128 s.
  const read = computeSet(plan!).reading({ at: 'subject', of: ['key'], dome: 'flat' })!
  expect(read.luxSeconds * 128).toBeCloseTo(2000, 0)
})
