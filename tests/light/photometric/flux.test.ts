/** Lumens of a table: closed forms, small steps over the sphere, and what arrives on the walls of a closed box. */
import { describe, expect, it } from 'vitest'
import { photometryOf } from '../../../src/light/photometric.js'
import { response } from '../../../src/light/response.js'
import type { AreaSource } from '../../../src/light/source.js'
import { unit, type Vec3 } from '../../../src/scene/vector.js'
import { degreesOf } from '../../helpers/make-plan.js'
import { type PhotometricText, steps } from '../../helpers/photometric-text.js'
import { frontAt } from '../fronts.js'
import { byTable, cosine, overSphere, tableOf, uneven } from './tables.js'

describe('flux', () => {
  it('is that of closed forms', () => {
    const flux = (given: PhotometricText): number => photometryOf(tableOf(given)).flux
    // All round alike: 4π I; a half-space: 2π I; Lambertian: π I; cosⁿ: 2π I/(n + 1).
    expect(flux({ vertical: steps(0, 180, 30), horizontal: [0], candela: () => 100 })).toBeCloseTo(
      400 * Math.PI,
      9,
    )
    expect(flux({ vertical: [0, 90], horizontal: steps(0, 90, 30), candela: () => 100 })).toBeCloseTo(
      200 * Math.PI,
      9,
    )
    const degree = { vertical: steps(0, 90, 1), horizontal: [0] }
    expect(flux({ ...degree, candela: cosine(1) }) / (1000 * Math.PI)).toBeCloseTo(1, 4)
    expect(flux({ ...degree, candela: cosine(9) }) / (200 * Math.PI)).toBeCloseTo(1, 3)
    // The same sphere, cut by planes about another axis; half of it.
    const whole = { type: 3, vertical: steps(-90, 90, 30), horizontal: steps(-180, 180, 60) } as const
    expect(flux({ ...whole, candela: () => 100 })).toBeCloseTo(400 * Math.PI, 9)
    const ahead = { type: 2, vertical: steps(-90, 90, 30), horizontal: steps(-90, 90, 45) } as const
    expect(flux({ ...ahead, candela: () => 100 })).toBeCloseTo(200 * Math.PI, 9)
    // 20° to both sides and 10° up and down: between two meridians and two parallels about either axis.
    const oblong = { vertical: [-10, 10], horizontal: [-20, 20], candela: () => 100 } as const
    expect(flux({ ...oblong, type: 3 })).toBeCloseTo(100 * degreesOf(40) * 2 * Math.sin(degreesOf(10)), 9)
    expect(flux({ ...oblong, type: 2 })).toBeCloseTo(100 * degreesOf(20) * 2 * Math.sin(degreesOf(20)), 9)
  })

  it('is what small steps over the sphere add up to', () => {
    const open = { ...uneven, horizontal: [90, 120, 200, 270] }
    const wide = {
      ...uneven,
      type: 3,
      vertical: steps(-90, 90, 15),
      horizontal: steps(-120, 150, 30),
    } as const
    const flood = { ...wide, type: 2, horizontal: steps(-75, 75, 15) } as const
    for (const given of [uneven, open, wide, flood]) {
      const table = tableOf(given)
      expect(photometryOf(table).flux / overSphere(table)).toBeCloseTo(1, 3)
    }
  })

  it('arrives on the walls of a closed box, whole, from a front of any size', () => {
    const size: Vec3 = [3, 4, 2.5]
    const middle: Vec3 = [1.3, 1.9, 1.2]
    /** Lumens on all six walls from a light of unit reference. */
    const onWalls = (source: AreaSource, fine: number): number => {
      let sum = 0
      for (let axis = 0; axis < 3; axis++)
        for (const side of [0, 1]) {
          const [s, t] = [(axis + 1) % 3, (axis + 2) % 3] as const
          const normal: [number, number, number] = [0, 0, 0]
          normal[axis] = side === 0 ? 1 : -1
          for (let i = 0; i < fine; i++)
            for (let j = 0; j < fine; j++) {
              const at: [number, number, number] = [0, 0, 0]
              at[axis] = side * size[axis]!
              at[s] = ((i + 0.5) * size[s]!) / fine
              at[t] = ((j + 0.5) * size[t]!) / fine
              sum += (response(source, { at, normal, kind: 'flat' }) * size[s]! * size[t]!) / fine ** 2
            }
        }
      return sum
    }
    const halfTurn: PhotometricText = { ...uneven, horizontal: steps(0, 180, 30), opening: [-0.5, -0.5, 0] }
    const narrow: PhotometricText = {
      vertical: steps(0, 90, 2.5),
      horizontal: [0],
      candela: cosine(30),
      opening: [0.05, 0.05, 0],
    }
    const flood: PhotometricText = {
      ...uneven,
      type: 2,
      vertical: steps(-90, 90, 15),
      horizontal: steps(0, 90, 15),
    }
    for (const given of [uneven, halfTurn, narrow, flood]) {
      const table = tableOf(given)
      const { reference, flux, both } = photometryOf(table)
      const { outline, width, height } = table.opening!
      const front = frontAt(outline, width, height, {
        pattern: byTable(table),
        both,
        centre: middle,
        normal: unit([0.3, 1, -0.2]),
      })
      expect((onWalls(front, 40) * reference) / flux).toBeCloseTo(1, 2)
    }
  })
})
