/** How strong a light is by its photometric file. */
import { describe, expect, it } from 'vitest'
import { photometryOf } from '../../../src/light/photometric.js'
import { priorStrength } from '../../../src/light/strength.js'
import { makeLight, makePlan, softbox } from '../../helpers/make-plan.js'
import { steps } from '../../helpers/photometric-text.js'
import { cosine, lampOf, sourceOf, tableOf } from './tables.js'

describe('strength', () => {
  const panel = tableOf({
    vertical: steps(0, 90, 1),
    horizontal: [0],
    candela: cosine(1, 3000),
    opening: [0.3, 0.3, 0],
  })
  const plan = makePlan({ camera: { shutter: 1 / 60 } })
  const lit = (overrides: object = {}) =>
    priorStrength(
      makeLight('key', {
        unit: lampOf(panel),
        modifier: undefined,
        zoom: undefined,
        power: 1,
        ...overrides,
      } as never),
      plan,
    )!

  it('is the candela on the axis over the time that the shutter is open, by power and gel', () => {
    expect(lit()).toMatchObject({ candelaSeconds: expect.closeTo(50, 9), u: 0.2, from: 'stated' })
    expect(lit({ power: 0.25 }).candelaSeconds).toBeCloseTo(12.5, 9)
    const gel = { shift: undefined, colour: undefined, loss: 1 }
    expect(lit({ gel }).candelaSeconds).toBeCloseTo(25, 9)
  })

  it('through a modifier it is what the whole flux gives from that front', () => {
    // Lambertian: π I of flux; half of it leaves the box, which is Lambertian again.
    const box = softbox(0.6, 0.9, { transmits: 0.5 })
    expect(lit({ modifier: box }).candelaSeconds).toBeCloseTo(25, 2)
    expect(lit({ modifier: box }).u).toBeGreaterThan(0.4)
    const source = sourceOf(
      makeLight('key', { unit: lampOf(panel), modifier: box, zoom: undefined } as never),
    )
    expect(source.pattern).toEqual({ cosine: 1, head: undefined, grid: undefined })
  })

  it('where the axis is dark the most counts', () => {
    const washer = tableOf({
      vertical: [0, 20, 50, 90],
      horizontal: [0],
      candela: (v) => [0, 100, 900, 0][[0, 20, 50, 90].indexOf(v)]!,
    })
    expect(photometryOf(washer).reference).toBe(900)
    expect(
      priorStrength(makeLight('key', { unit: lampOf(washer), modifier: undefined, power: 1 } as never), plan),
    ).toMatchObject({ candelaSeconds: expect.closeTo(15, 9) })
  })
})
