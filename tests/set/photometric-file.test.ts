/** A light whose strength stands in a photometric file, from the plan's text to what a meter shows. */
import { describe, expect, it } from 'vitest'
import { computeSet } from '../../src/set/compute-set.js'
import { photometricText, steps } from '../helpers/photometric-text.js'
import { planOf } from '../language/reading.js'

const lamp = photometricText({
  vertical: steps(0, 90, 2.5),
  horizontal: [0],
  candela: (v) => 2500 * Math.cos((v * Math.PI) / 180),
  opening: [-0.05, -0.05, 0],
})

/** In the dark and the open, the lamp straight before the face. */
const set = (light: string) =>
  computeSet(
    planOf(
      `plan: 1
title: A lamp
camera: { lens: 85 mm, at: { distance: 4 m }, aperture: f/4, shutter: 1/60, iso: 100, held-by: stand }
subject: { kind: object, height: 30 cm, width: 2 cm, depth: 2 cm }
lights:
  key: { unit: { photometric-file: lamp.ies }, ${light}, at: { angle: 0 deg left, distance: 2 m, up: 0 deg } }
`,
      { 'set/lamp.ies': lamp },
    ),
  )
const shown = (light: string): number => set(light).reading({ at: 'subject', of: ['key'] })!.fNumber

describe('a lamp by its photometric file', () => {
  it('meters what its candela give: E = I/d², N² = E·t·S/C', () => {
    // 2500 cd at 2 m are 625 lx, over 1/64 s at ISO 100 and C = 250: N² = 3.906. The front of the thing is 1 cm nearer.
    expect(shown('power: full') ** 2 / ((625 / 64) * (100 / 250))).toBeCloseTo(1, 1)
  })

  it('goes by its power and its gel, and through a modifier by its flux', () => {
    const stops = (light: string): number => 2 * Math.log2(shown(light) / shown('power: full'))
    expect(stops('power: 25 %')).toBeCloseTo(-2, 6)
    expect(stops('power: full, gel: { shift: +159 mired, loss: 2/3 stop }')).toBeCloseTo(-2 / 3, 6)
    // Lambertian lamp, Lambertian box: half of the flux is lost, and next to nothing by its size.
    expect(stops('power: full, modifier: { kind: softbox, size: 50 x 50 cm, transmits: 50 % }')).toBeCloseTo(
      -1,
      1,
    )
  })

  it('is as sure as a stated output', () => {
    expect(set('power: full').strength('key')).toMatchObject({ from: 'stated', u: 0.2 })
  })
})
