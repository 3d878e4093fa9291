/** Whatever a photometric file holds, a plan that names it is checked to its end, with findings that point into its texts. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { checkPlan } from '../../src/index.js'
import { goodPlan } from '../command/call.js'
import { photometricText, steps } from '../helpers/photometric-text.js'
import { mutate, mutation } from './mutations.js'

const plan = goodPlan.replace(
  'unit: head 400 Ws, modifier: octa 90 cm, meters: f/5.6',
  'unit: { photometric-file: lamp.ies }, power: full',
)

const seeds = [
  photometricText({
    vertical: steps(0, 90, 30),
    horizontal: steps(0, 90, 45),
    candela: (v) => 9000 * Math.cos((v * Math.PI) / 180) ** 3,
  }),
  photometricText({
    tilt: 'INCLUDE\n1\n2\n0 90\n1 0.9',
    vertical: steps(0, 180, 30),
    horizontal: steps(0, 360, 90),
    candela: (v, h) => (v > 100 ? 50 : 3000) + h,
    opening: [-1, -2, 0],
  }),
  photometricText({ type: 2, vertical: [-45, 0, 45], horizontal: [0, 20, 60], candela: () => 7000 }),
]

const numbers = [
  '0',
  '1e-9',
  '1e6',
  '3',
  '45',
  '89',
  '90',
  '91',
  '180',
  '-0.5',
  '20',
  '1000000000',
  '-1',
  '.5',
]

/** Slips of the pen, or one number in place of another. */
const changed = fc.oneof(
  fc
    .tuple(fc.constantFrom(...seeds), fc.array(mutation, { minLength: 1, maxLength: 3 }))
    .map(([seed, mutations]) => mutate(seed, mutations)),
  fc
    .tuple(
      fc.constantFrom(...seeds),
      fc.array(fc.tuple(fc.nat(200), fc.constantFrom(...numbers)), { minLength: 1, maxLength: 3 }),
    )
    .map(([seed, others]) => {
      const parts = seed.split(/(\s+)/)
      const from = parts.findIndex((part) => part.startsWith('TILT='))
      for (const [at, number] of others) {
        const places = parts.flatMap((part, i) => (i > from && /^[-\d.]/.test(part) ? [i] : []))
        parts[places[at % places.length]!] = number
      }
      return parts.join('')
    }),
)

describe('a plan whose light stands in a mutated file', () => {
  it('is checked to its end', { timeout: 240_000 }, () => {
    let [computed, refused] = [0, 0]
    fc.assert(
      fc.property(changed, (lamp) => {
        const checked = checkPlan(plan, {
          file: 'own.plan.yaml',
          port: {
            read: (path) =>
              path === 'lamp.ies'
                ? { ok: true, file: path, text: lamp }
                : { ok: false, says: `${path} cannot be read: no such file` },
          },
        })
        expect(checked.defects ?? []).toEqual([])
        const wrong = checked.findings.filter(({ rule }) => rule === 'plan-unreadable')
        expect(wrong.length).toBeLessThanOrEqual(1)
        if (wrong.length === 1) refused += 1
        else computed += 1
        for (const { message, why, place } of checked.findings) {
          expect(`${message} ${why}`).not.toMatch(/NaN|Infinity|undefined|\[object/)
          expect(place.end).toBeLessThanOrEqual(checked.texts.get(place.file)!.length)
        }
      }),
      { seed: 1986, numRuns: 150 },
    )
    expect(computed).toBeGreaterThan(30)
    expect(refused).toBeGreaterThan(30)
  })
})
