/** A front with a table, against the beams that are built in and against its pieces. */
import { describe, expect, it } from 'vitest'
import { candelaToward, photometryOf } from '../../../src/light/photometric.js'
import { response } from '../../../src/light/response.js'
import { degreesOf } from '../../helpers/make-plan.js'
import { steps } from '../../helpers/photometric-text.js'
import { addedUp, cosinePower, frontAt, sequence, someReceptor } from '../fronts.js'
import { byTable, cosine, piecesOf, tableOf, uneven } from './tables.js'

describe('as a pattern', () => {
  it('a table of a cosⁿ beam is the built-in beam, from half the front’s size up', () => {
    const random = sequence(11)
    for (const power of [1, 2, 4.8, 30]) {
      const table = tableOf({ vertical: steps(0, 90, 1), horizontal: [0], candela: cosine(power) })
      for (const [outline, width, height] of [
        ['rectangle', 0.6, 0.9],
        ['disc', 0.5, 0.5],
      ] as const) {
        const ours = frontAt(outline, width, height, { pattern: byTable(table) })
        const builtIn = frontAt(outline, width, height, { pattern: cosinePower(power) })
        for (let i = 0; i < 60; i++) {
          const receptor = someReceptor(random, ours, 0.5, 4, i % 2 === 0 ? 'flat' : 'dome')
          const expected = response(builtIn, receptor)
          const ahead = response(builtIn, { at: [0, 0, receptor.at[2]], normal: [0, 0, -1], kind: 'flat' })
          expect(Math.abs(response(ours, receptor) - expected) / ahead).toBeLessThan(0.001)
        }
      }
    }
  })

  it('an uneven one is what its pieces add up to', () => {
    const random = sequence(5)
    for (const given of [
      uneven,
      { ...uneven, horizontal: steps(0, 90, 15), opening: [-0.7, -0.7, 0] as const },
      { ...uneven, candela: (v: number, h: number) => (v < 31 && h % 180 < 91 ? 900 : v < 46 ? 400 : 0) },
    ]) {
      const table = tableOf(given)
      const { reference } = photometryOf(table)
      const { outline, width, height } = table.opening!
      const source = frontAt(outline, width, height, { pattern: byTable(table) })
      for (let i = 0; i < 25; i++) {
        const receptor = someReceptor(random, source, 0.5, 4, i % 2 === 0 ? 'flat' : 'dome')
        const pieces = piecesOf(
          source,
          receptor,
          (along, aside, out) => candelaToward(table, along, aside, out) / reference,
        )
        const ahead = response(source, {
          at: [0, 0, receptor.at[2]],
          normal: [0, 0, -1],
          kind: 'flat',
        })
        expect(Math.abs(response(source, receptor) - pieces) / ahead).toBeLessThan(0.003)
      }
    }
  })

  it('through a grid it is cut as the built-in beam is', () => {
    const grid = { kind: 'egg-crate', tanCutOff: Math.tan(degreesOf(40)) } as const
    const table = tableOf({ vertical: steps(0, 90, 1), horizontal: [0], candela: cosine(3) })
    const ours = frontAt('rectangle', 0.5, 0.5, { pattern: { ...byTable(table), grid } })
    const builtIn = frontAt('rectangle', 0.5, 0.5, { pattern: cosinePower(3, grid) })
    const random = sequence(3)
    for (let i = 0; i < 30; i++) {
      const receptor = someReceptor(random, ours, 1, 4, 'dome', 0.5)
      expect(response(ours, receptor) / addedUp(builtIn, receptor)).toBeCloseTo(1, 2)
    }
  })
})
