/** Gels that are advised: near the shift that is wanted, and of the strength that green wants. */
import { describe, expect, it } from 'vitest'
import { gelRow } from '../../src/language/catalogue/gels.js'
import { kelvinOf } from '../../src/light/colour/mired.js'
import { usualDuv } from '../../src/light/colour/white.js'
import { colourWord, gelBetween } from '../../src/rules/colour/casts.js'

const white = (mired: number, greener = 0) => {
  const kelvin = kelvinOf(mired)
  return { kelvin, duv: usualDuv(kelvin) + greener }
}
/** `full and 1/4 CTO`, `two sheets of 1/8 CTB`: what each sheet is called. */
const sheets = (name: string): readonly string[] => {
  const kind = name.split(' ').at(-1)!
  return name
    .replace(/^two sheets of (.+)$/, '$1 and $1')
    .split(' and ')
    .map((one) => (one.includes(' ') ? one : `${one} ${kind}`))
}
const comes = (name: string, of: 'shift' | 'duv'): number =>
  sheets(name).reduce((sum, one) => sum + gelRow(one)![of], 0)

describe('a gel that is advised', () => {
  it('comes within some ten mired of what is wanted, by one sheet or two of a kind', () => {
    for (let shift = 40; shift <= 250; shift += 3)
      for (const [from, to] of [
        [100, 100 + shift],
        [100 + shift, 100],
      ] as const) {
        const gel = gelBetween(white(from), white(to))!
        expect(sheets(gel.name).length).toBeLessThanOrEqual(2)
        expect(Math.abs(comes(gel.name, 'shift') - (to - from)), `${to - from}: ${gel.name}`).toBeLessThan(
          13.1,
        )
        expect(gel.loss).toBeCloseTo(
          sheets(gel.name).reduce((sum, one) => sum + gelRow(one)!.loss, 0),
          12,
        )
      }
  })

  it('is one sheet where one is near enough', () => {
    // 5600 to 3200 K wants +134, 6500 to 3200 K +159: check values of colour, col.need.
    expect(gelBetween(white(1e6 / 5600), white(1e6 / 3200))!.name).toBe('3/4 CTO')
    expect(gelBetween(white(1e6 / 6500), white(1e6 / 3200))!.name).toBe('full CTO')
    expect(gelBetween(white(1e6 / 3200), white(1e6 / 5700))!.name).toBe('full CTB')
    expect(gelBetween(white(100), white(323))!.name).toBe('full and 1/4 CTO')
  })

  it('takes green by magenta and magenta by green, by their strength', () => {
    for (const [greener, name] of [
      [0.02, 'full minus-green'],
      [0.01, '1/2 minus-green'],
      [0.005, '1/4 minus-green'],
      [0.0025, '1/8 minus-green'],
      [-0.01, '1/2 plus-green'],
    ] as const)
      expect(gelBetween(white(200, greener), white(200))!.name, `${greener}`).toBe(name)
    const both = gelBetween(white(180, 0.02), white(290))!.name
    expect(both).toBe('1/2 CTO and full minus-green')
  })

  it('is none for what no gel mends', () => {
    expect(gelBetween(white(180), white(183))).toBeUndefined()
    expect(gelBetween(white(180), white(180))).toBeUndefined()
  })
})

describe('the colour of a surface', () => {
  it('is as its name says, else as it looks', () => {
    const surface = (name: string, colour: readonly [number, number, number]) => colourWord({ name, colour })
    expect(surface('yellow wall', [0.9, 0.7, 0.2])).toBe('yellow')
    expect(surface('colour #60a050', [0.38, 0.63, 0.31])).toBe('green')
    expect(surface('wooden floor', [0.55, 0.4, 0.26])).toBe('brown')
    expect(surface('colour #b03030', [0.69, 0.19, 0.19])).toBe('red')
  })
})
