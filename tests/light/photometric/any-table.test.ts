/** Whatever a table holds, its light is finite and found in time. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readPhotometric } from '../../../src/language/photometric/read-photometric.js'
import { photometryOf } from '../../../src/light/photometric.js'
import { response } from '../../../src/light/response.js'
import { add, cross, scale, unit, type Vec3 } from '../../../src/scene/vector.js'
import { type PhotometricText, photometricText } from '../../helpers/photometric-text.js'
import { frontAt, sequence } from '../fronts.js'
import { byTable } from './tables.js'

describe('any table', () => {
  const text = fc
    .record({
      type: fc.constantFrom(1, 2, 3) as fc.Arbitrary<1 | 2 | 3>,
      inner: fc.uniqueArray(fc.integer({ min: 1, max: 89 }), { maxLength: 12 }),
      round: fc.constantFrom([0], [0, 90], [0, 1, 90], [0, 100, 180], [0, 120, 240], [90, 91, 270]),
      whole: fc.boolean(),
      width: fc.constantFrom(-2, -0.01, 0, 0.002, 0.3, 3),
      length: fc.constantFrom(-2, 0, 0.002, 1, 3),
      seed: fc.nat(),
      dark: fc.double({ min: 0, max: 1, noNaN: true }),
    })
    .map(({ type, inner, round, whole, width, length, seed, dark }): PhotometricText => {
      const random = sequence(seed)
      const rising = [...inner].sort((a, b) => a - b)
      return {
        type,
        vertical: type === 1 && whole ? [0, ...rising, 90, 91, 180] : [0, ...rising, 90],
        horizontal:
          type === 1 ? round : whole ? (type === 2 ? [-90, -1, 0, 80] : [-180, -1, 0, 180]) : [0, 45, 90],
        candela: () => (random() < dark ? 0 : 1e6 * random() ** 8),
        opening: [width, length, 0],
      }
    })

  it('gives a light that is none below nothing and none without end, anywhere, in time', () => {
    fc.assert(
      fc.property(text, fc.nat(), (given, seed) => {
        const reading = readPhotometric(photometricText(given))
        if (!reading.ok) {
          expect(reading.says).toMatch(/no light in any direction/)
          return
        }
        const { table } = reading
        const { reference, flux, both, steepness } = photometryOf(table)
        for (const one of [reference, flux]) expect(one).toBeGreaterThan(0)
        expect(Number.isFinite(reference + flux + steepness)).toBe(true)
        const { outline, width, height } = table.opening ?? { outline: 'disc', width: 0.18, height: 0.18 }
        const random = sequence(seed)
        const front = frontAt(outline, width, height, {
          pattern: byTable(table, random() > 0.5),
          both,
          normal: unit([random() - 0.5, random() - 0.5, random()]),
        })
        for (let i = 0; i < 6; i++) {
          const far = 10 ** (3 * random() - 2)
          const off: Vec3 = [random() - 0.5, random() - 0.5, i === 0 ? 0 : random() - 0.5]
          const got = response(front, {
            at: add(front.face.centre, scale(off, far)),
            normal: unit(cross(off, [0.3, 0.2, random()]), [0, 0, 1]),
            kind: i % 2 === 0 ? 'flat' : 'dome',
          })
          expect(got).toBeGreaterThanOrEqual(0)
          expect(Number.isFinite(got)).toBe(true)
        }
      }),
      { numRuns: 150, seed: 9 },
    )
  })
})
