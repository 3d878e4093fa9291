/** The explained plan tells which way the angles of a photometric file are taken to go. */
import { describe, expect, it } from 'vitest'
import { explainPlan } from '../../src/tasks/explain-plan.js'
import { type PhotometricText, photometricText, steps } from '../helpers/photometric-text.js'
import { planOf } from '../language/reading.js'

const rows = (table: Partial<PhotometricText>, light = ''): readonly string[] => {
  const plan = planOf(
    `plan: 1
title: A lamp
camera: { lens: 85 mm, at: { distance: 4 m }, aperture: f/4, shutter: 1/60, iso: 100 }
subject: { kind: person }
lights:
  key: { unit: { photometric-file: lamp.ies }, power: full, at: { angle: 40 deg left, distance: 2 m, height: 2 m }${light} }
`,
    {
      'set/lamp.ies': photometricText({
        vertical: steps(0, 90, 30),
        horizontal: steps(0, 360, 90),
        candela: (v, h) => 1000 + v + (h === 90 ? 500 : 0),
        opening: [0.2, 0.6, 0],
        ...table,
      }),
    },
  )
  return explainPlan(plan)
    .flatMap((section) => section.rows)
    .filter(({ name }) => /unit.*(?:angles|size)/.test(name))
    .map(({ value }) => value)
}

describe('the explained plan', () => {
  it('tells of type C where 0 and 90 are, as the light stands', () => {
    expect(rows({})[1]).toBe('horizontal angle 0 to the right of who faces it, 90 up')
    expect(rows({}, ', lying: true')[1]).toMatch(
      /^horizontal angle 0 up, 90 to the left of who faces it; left and right stay as they are/,
    )
    expect(rows({ candela: (v, h) => 1000 + v + (h === 180 ? 500 : 0) })[1]).toMatch(/; left and right stay/)
  })

  it('tells of types B and A how their angles grow, and of their length that it stands upright', () => {
    const given = { vertical: steps(-90, 90, 30), horizontal: steps(0, 90, 30), candela: () => 700 }
    for (const type of [2, 3] as const)
      expect(rows({ ...given, type })).toEqual([
        expect.stringMatching(/^20 cm x 60 cm/),
        'vertical angles up, horizontal ones to the left of who faces it',
      ])
  })

  it('says nothing of what is alike all round', () => {
    expect(rows({ horizontal: [0] })).toHaveLength(1)
  })
})
