/** Verdicts as a truth table, and uncertainties against drawing many sets of strengths. */
import { describe, expect, it } from 'vitest'
import type { UncertainStrength } from '../../src/light/causes.js'
import { difference, type Figure } from '../../src/light/figure.js'
import { uncertainties, uncertainty as uncertaintyBy, verdict } from '../../src/light/how-sure.js'
import { sumFigure } from '../../src/light/sum-light.js'
import type { LuxSeconds } from '../../src/units/quantity.js'
import { sequence } from './fronts.js'

const parts = (given: Readonly<Record<string, number>>): ReadonlyMap<string, LuxSeconds> =>
  new Map(Object.entries(given) as [string, LuxSeconds][])

describe('verdicts', () => {
  // One row a verdict and both sides of each edge.
  it.each([
    [0.5, 0.2, 'sure'],
    [0.41, 0.2, 'sure'],
    [0.4, 0.2, 'probable'],
    [0.21, 0.2, 'probable'],
    [0.2, 0.2, 'possible'],
    [0.001, 0.2, 'possible'],
    [0, 0.2, 'open'],
    [-0.19, 0.2, 'open'],
    [-0.2, 0.2, 'clear'],
    [-3, 0.2, 'clear'],
    [1e-5, 0, 'sure'],
    [0, 0, 'clear'],
    [-0, 0, 'clear'],
    [-1, 0, 'clear'],
  ] as const)('%f stops beyond, u %f: %s', (d, u, expected) => {
    expect(verdict(d, u)).toBe(expected)
  })

  it('do not hang on the last digit', () => {
    expect(verdict(0.1 + 0.2 - 0.3, 0.1)).toBe('open')
    expect(verdict(3 * 0.1, 0.15)).toBe('probable')
    expect(verdict(4e-7, 0)).toBe('clear')
  })
})

describe('sums of light', () => {
  it('add in exposure and share the sum', () => {
    const both = sumFigure(parts({ key: 80, fill: 40 }))
    expect(both.stops).toBeCloseTo(Math.log2(120), 12)
    expect(both.gradient.get('key')).toBeCloseTo(2 / 3, 12)
    expect([...both.gradient.values()].reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 12)
  })

  it('have the gradient that a small turn of each light shows', () => {
    const at = (turn: number): number => sumFigure(parts({ key: 80 * 2 ** turn, fill: 40, rim: 5 })).stops
    const slope = (at(1e-5) - at(-1e-5)) / 2e-5
    expect(sumFigure(parts({ key: 80, fill: 40, rim: 5 })).gradient.get('key')).toBeCloseTo(slope, 6)
  })

  it('of nothing are no light', () => {
    expect(sumFigure(parts({ key: 0 })).stops).toBe(Number.NEGATIVE_INFINITY)
    expect(sumFigure(new Map()).gradient.size).toBe(0)
  })
})

describe('uncertainties', () => {
  const uncertainty = (figure: Figure, strengths: ReadonlyMap<string, UncertainStrength>): number =>
    uncertaintyBy(figure, (light) => strengths.get(light))
  const one = (u: number, shared?: UncertainStrength['shared']): UncertainStrength =>
    shared === undefined ? { u } : { u, shared }

  it('of one light: its own, and geometry between two of its points', () => {
    const strengths = new Map([['key', one(0.35)]])
    const face = sumFigure(parts({ key: 80 }))
    const paper = sumFigure(parts({ key: 10 }))
    expect(uncertainty(face, strengths)).toBeCloseTo(Math.hypot(0.35, 0.1 / Math.SQRT2), 12)
    expect(uncertainty(difference(face, paper), strengths)).toBeCloseTo(uncertainties.geometry, 12)
  })

  it('of an absolute tone count the camera once; of a difference of two tones not at all', () => {
    const toned = { ...sumFigure(parts({ key: 80 })), rendering: 1 }
    const strengths = new Map([['key', one(0)]])
    expect(uncertainty(toned, strengths)).toBeCloseTo(Math.hypot(0.15, 0.1 / Math.SQRT2), 12)
    expect(uncertainty(difference(toned, toned), strengths)).toBeCloseTo(0.1, 12)
  })

  it('two lights of one kit entry keep 0.15 each in their difference', () => {
    const entry = [{ entry: 'unit flashgun', u: Math.sqrt(0.35 ** 2 - 0.15 ** 2) }]
    const strengths = new Map([
      ['left', one(0.35, entry)],
      ['right', one(0.35, entry)],
    ])
    const figures = difference(sumFigure(parts({ left: 10 })), sumFigure(parts({ right: 10 })))
    expect(uncertainty(figures, strengths)).toBeCloseTo(Math.hypot(0.15 * Math.SQRT2, 0.1), 12)
  })

  it('are the spread that drawn strengths show', () => {
    // Four lights, two of one unit and two behind one modifier; linearised, against 20,000 draws.
    const strengths = new Map([
      ['a', one(0.2, [{ entry: 'unit', u: 0.15 }])],
      [
        'b',
        one(0.25, [
          { entry: 'unit', u: 0.15 },
          { entry: 'box', u: 0.1 },
        ]),
      ],
      ['c', one(0.2, [{ entry: 'box', u: 0.1 }])],
      ['d', one(0.1)],
    ])
    const [first, second] = [
      { a: 40, b: 30, c: 20, d: 5 },
      { a: 3, b: 1, c: 30, d: 30 },
    ]
    const figure = difference(sumFigure(parts(first)), sumFigure(parts(second)))
    const random = sequence(23)
    const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
    const drawn = Array.from({ length: 20000 }, () => {
      const [unit, box] = [0.15 * normal(), 0.1 * normal()]
      const turn = {
        a: unit + Math.sqrt(0.2 ** 2 - 0.15 ** 2) * normal(),
        b: unit + box + Math.sqrt(0.25 ** 2 - 0.15 ** 2 - 0.1 ** 2) * normal(),
        c: box + Math.sqrt(0.2 ** 2 - 0.1 ** 2) * normal(),
        d: 0.1 * normal(),
      }
      const sum = (of: typeof first): number =>
        (['a', 'b', 'c', 'd'] as const).reduce((all, name) => all + of[name] * 2 ** turn[name], 0)
      return Math.log2(sum(first) / sum(second))
    })
    const mean = drawn.reduce((sum, value) => sum + value, 0) / drawn.length
    const spread = Math.sqrt(drawn.reduce((sum, value) => sum + (value - mean) ** 2, 0) / drawn.length)
    expect(uncertainty({ ...figure, variance: 0 }, strengths) / spread).toBeCloseTo(1, 1)
    expect(Math.abs(uncertainty({ ...figure, variance: 0 }, strengths) / spread - 1)).toBeLessThan(0.03)
  })
})
