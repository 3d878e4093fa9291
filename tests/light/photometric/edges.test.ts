/** Tables that end lit and beams that are sharp: found as exactly as what is smooth, in a bounded number of steps. */
import { describe, expect, it } from 'vitest'
import { beamExponent } from '../../../src/light/beam.js'
import { grainOf } from '../../../src/light/grain.js'
import { kernelOf } from '../../../src/light/kernel.js'
import { candelaToward } from '../../../src/light/photometric.js'
import { integratePolygon } from '../../../src/light/quadrature-polygon.js'
import type { Receptor } from '../../../src/light/receptor.js'
import { response, toLocal } from '../../../src/light/response.js'
import type { AreaSource } from '../../../src/light/source.js'
import { degrees } from '../../../src/units/quantity.js'
import { degreesOf } from '../../helpers/make-plan.js'
import { type PhotometricText, steps } from '../../helpers/photometric-text.js'
import { addedUp, cosinePower, frontAt } from '../fronts.js'
import { byTable, piecesOf, tableOf } from './tables.js'

const frontOf = (given: PhotometricText, lying = false): AreaSource => {
  const table = tableOf(given)
  const { outline, width, height } = table.opening!
  return frontAt(outline, width, height, { pattern: byTable(table, lying) })
}

/** In front by `z`, off the axis by `off` degrees toward `round`, looking back at the front's middle. */
const receptorAt = (z: number, off: number, round: number, kind: Receptor['kind'] = 'flat'): Receptor => {
  const aside = Math.tan(degreesOf(off))
  const span = Math.sqrt(1 + aside * aside)
  const [x, y] = [aside * Math.cos(degreesOf(round)), aside * Math.sin(degreesOf(round))]
  return { at: [x * z, y * z, z], normal: [-x / span, -y / span, -1 / span], kind }
}

/** What small pieces of the front add up to. */
const bySmall = (source: AreaSource, receptor: Receptor, fine = 500): number => {
  const { table, gain, lying } = source.pattern.table!
  return piecesOf(
    source,
    receptor,
    (across, up, out) =>
      gain * (lying ? candelaToward(table, up, -across, out) : candelaToward(table, across, up, out)),
    fine,
  )
}

const sloping = (v: number): number => 1000 - 5 * v

describe('a table that ends lit', () => {
  it('at 40° gives what the part of the front gives that is within 40°', () => {
    const front = frontOf({
      vertical: steps(0, 40, 10),
      horizontal: [0],
      candela: sloping,
      opening: [0.3, 0.6, 0],
    })
    // 2 m out and 42° off toward the longer side, facing the plane: by 4000 × 4000 pieces of a separate program.
    const across = degreesOf(42)
    const lux = 1000 * response(front, { at: [2 * Math.tan(across), 0, 2], normal: [0, 0, -1], kind: 'flat' })
    expect(lux / 28.274).toBeCloseTo(1, 2)
  })

  it('of any type, round or not, upright or lying, is what its pieces add up to', () => {
    const leaning = (v: number, h: number): number => 1000 - 4 * Math.abs(v) + 3 * h
    const tables: readonly PhotometricText[] = [
      { vertical: steps(0, 40, 10), horizontal: [0], candela: sloping, opening: [0.3, 0.6, 0] },
      { vertical: steps(0, 40, 10), horizontal: [0, 90], candela: sloping, opening: [-0.5, -0.5, 0] },
      { type: 2, vertical: [-50, 0, 50], horizontal: [-40, 0, 30], candela: leaning, opening: [0.3, 0.6, 0] },
      { type: 3, vertical: [-50, 0, 50], horizontal: [-40, 0, 30], candela: leaning, opening: [0.3, 0.6, 0] },
      { type: 3, vertical: [-35, 0, 35], horizontal: [-50, 50], candela: leaning, opening: [-0.4, -0.4, 0] },
    ]
    for (const given of tables)
      for (const lying of [false, true]) {
        const front = frontOf(given, lying)
        for (const z of [0.4, 2])
          for (const off of [20, 36, 43])
            for (const round of [0, 50, 90]) {
              const receptor = receptorAt(z, off, round, round % 20 === 0 ? 'flat' : 'dome')
              const [got, small] = [response(front, receptor), bySmall(front, receptor, 240)]
              const ahead = response(front, receptorAt(z, 0, 0))
              expect(Math.abs(got - small)).toBeLessThan(0.01 * Math.max(small, ahead / 10))
            }
      }
  })

  it('read at every 15 degrees and dark at its end it is so within 0.5 %', () => {
    const front = frontOf({
      vertical: steps(0, 90, 15),
      horizontal: steps(0, 360, 45),
      candela: (v, h) => Math.round((1000 + 2 * Math.abs(180 - h)) * Math.cos(degreesOf(v)) ** 2),
      opening: [0.4, 0.7, 0],
    })
    for (const z of [0.4, 0.7, 1.5, 4])
      for (const off of [0, 15, 31, 48])
        for (const round of [10, 135, 260]) {
          const receptor = receptorAt(z, off, round)
          expect(response(front, receptor) / bySmall(front, receptor, 200)).toBeCloseTo(1, 2.3)
        }
  })
})

describe('work', () => {
  it('is bounded for whatever table on a wide front near by', () => {
    for (const [candela, most] of [
      [(v: number) => (v > 40 ? 0 : 1000), 5000],
      [(v: number, h: number) => ((v * 7 + h) % 40 < 20 ? 1000 : 0), 12_000],
    ] as const)
      for (const opening of [
        [3, 3, 0],
        [-3, -3, 0],
        [0.1, 3, 0],
      ] as const) {
        const front = frontOf({ vertical: steps(0, 90, 1), horizontal: steps(0, 360, 10), candela, opening })
        let asked = 0
        const table = {
          ...front.pattern.table!,
          get gain() {
            asked += 1
            return 1
          },
        }
        const counted = { ...front, pattern: { ...front.pattern, table } }
        for (const z of [0.01, 0.3, 1.5]) {
          asked = 0
          expect(response(counted, receptorAt(z, 20, 30))).toBeGreaterThan(0)
          expect(asked).toBeGreaterThan(0)
          expect(asked).toBeLessThan(most)
        }
      }
  })

  it('is bounded for a beam however sharp, on a front however wide, and all of its light is found', () => {
    for (const angle of [2, 5, 15])
      for (const outline of ['rectangle', 'disc'] as const) {
        const pattern = cosinePower(beamExponent(degrees(angle)))
        const front = frontAt(outline, 20, 20, { pattern })
        for (const z of [0.2, 1.5, 6]) {
          const receptor: Receptor = { at: [1.1, -0.7, z], normal: [0, 0, -1], kind: 'flat' }
          const local = toLocal(front, receptor)!
          const kernel = kernelOf(pattern, local)
          let asked = 0
          const counted = (u: number, v: number): number => {
            asked += 1
            return kernel(u, v)
          }
          integratePolygon(front.outline, local, counted, grainOf(front, local, true))
          expect(asked).toBeLessThan(20_000)
          // ∫ cosⁿ⁺¹ dA/d² over the whole plane is 2π/(n + 1), here but for what the rim cuts off.
          const whole = (2 * Math.PI) / (pattern.cosine! + 1) / front.area
          expect(response(front, receptor) / whole).toBeCloseTo(1, 2)
        }
        // On a small part of it, by pieces.
        const part = frontAt('rectangle', 0.5, 0.5, { pattern })
        const receptor = receptorAt(1.5, angle / 2, 40, 'dome')
        expect(response(part, receptor) / addedUp(part, receptor, 500)).toBeCloseTo(1, 2)
      }
  })

  it('a front is dark beyond the reach of its beam, and no darker than it is within', () => {
    const front = frontAt('rectangle', 1, 1, { pattern: cosinePower(beamExponent(degrees(4))) })
    let last = Number.POSITIVE_INFINITY
    for (let x = 0; x < 4; x += 0.05) {
      const here = response(front, { at: [x, 0, 2], normal: [0, 0, -1], kind: 'flat' })
      expect(here).toBeLessThanOrEqual(last + 1e-9)
      last = here
    }
    expect(last).toBe(0)
  })
})
