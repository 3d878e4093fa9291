/** `{ distance: 2,5 m }` is, to YAML 1.2, two entries; to half the world it is a length. It is one mistake. */
import { expect, it } from 'vitest'
import { checkPlan } from '../../src/index.js'

const plan = (camera: string): string => `plan: 1
title: Comma
camera: ${camera}
subject: { kind: person }
lights: {}
`

it.each([
  ['{ lens: 85 mm, at: { distance: 2,5 m }, aperture: f/8, shutter: 1/125, iso: 100 }', '2,5 m', '2.5 m'],
  [
    '{ lens: 85 mm, at: { distance: 2,5 m, height: 1 m }, aperture: f/8, shutter: 1/125, iso: 100 }',
    '2,5 m',
    '2.5 m',
  ],
  ['{ lens: 85 mm, at: { distance: 2 m }, aperture: f/5,6, shutter: 1/125, iso: 100 }', 'f/5,6', 'f/5.6'],
])('%s', (camera, written, meant) => {
  const text = plan(camera)
  const { findings } = checkPlan(text)
  expect(findings.map(({ message }) => message)).toHaveLength(1)
  expect(findings[0]!.message).toContain(`write ${meant}`)
  const { start, end } = findings[0]!.place
  expect(text.slice(start, end)).toBe(written)
})
