/** The colour that a surface records, against culori and laws that hold whatever the colour. */
import { converter } from 'culori'
import { describe, expect, it } from 'vitest'
import type { Surface } from '../../src/language/plan.js'
import { scaledXyz } from '../../src/light/colour/chromaticity.js'
import { rgbOfXyz, xyzOfRgb } from '../../src/light/colour/rgb.js'
import { usualDuv, xyzOfWhite } from '../../src/light/colour/white.js'
import { chromaKept, clippedRgb, recordedRgb } from '../../src/picture/recorded-colour.js'
import { encode, surelyWhite } from '../../src/picture/tone.js'
import type { Kelvin } from '../../src/units/quantity.js'

const surface = (reflectance: number, colour?: readonly [number, number, number]): Surface =>
  ({ name: 'test', reflectance, u: 0, colour }) as Surface
const white = (kelvin: number) => xyzOfWhite({ kelvin: kelvin as Kelvin, duv: usualDuv(kelvin) })
const most = surelyWhite(0.25)

describe('a surface in light', () => {
  it.each([2900, 4200, 5500, 9000])(
    'that the camera is balanced for records its own colour: %d K',
    (kelvin) => {
      const card = recordedRgb(surface(0.9), white(kelvin), white(kelvin))
      // White paper level with the key: sRGB 243 (design figure).
      expect(card.map((one) => Math.round(255 * encode(one)))).toEqual([243, 243, 243])
      const colour = [0.247, 0.561, 0.816] as const
      const blue = recordedRgb(surface(0.25, colour), white(kelvin), white(kelvin))
      const own = converter('lrgb')({ mode: 'rgb', r: colour[0], g: colour[1], b: colour[2] })
      expect(blue[0] / blue[1]).toBeCloseTo(own.r / own.g, 2)
      expect(blue[2] / blue[1]).toBeCloseTo(own.b / own.g, 2)
    },
  )

  it('is warm under tungsten when balanced for daylight, as the light itself is', () => {
    const [r, g, b] = recordedRgb(surface(0.18), white(2900), white(5500))
    expect(r).toBeGreaterThan(1.2 * g)
    expect(b).toBeLessThan(0.6 * g)
  })

  it('keeps on grey what it keeps on white, log2(0.9/0.18) stops sooner', () => {
    // Reference cases W17: 2.32 stops.
    const gelled = xyzOfRgb([1.5, 0.9, 0.6])
    const kept = (reflectance: number, stops: number) => {
      const lit = recordedRgb(surface(reflectance), scaledXyz(gelled, 2 ** stops), white(6504))
      return clippedRgb(lit, most)
    }
    kept(0.9, 0).forEach((one, i) => {
      expect(one).toBeCloseTo(kept(0.18, Math.log2(0.9 / 0.18))[i]!, 9)
    })
  })
})

describe('what is kept of a colour', () => {
  const deep = recordedRgb(surface(0.9), xyzOfRgb([1.6, 0.7, 0.3]), white(6504))

  it('is all of it until a channel clips, and falls to nothing as all of them do', () => {
    const at = (stops: number) => {
      const lit = deep.map((one) => one * 2 ** stops) as never
      return chromaKept(clippedRgb(lit, most), lit)
    }
    expect(at(-2)).toBeCloseTo(1, 9)
    const falling = [0, 0.5, 1, 1.5, 2, 3].map(at)
    falling.slice(1).forEach((one, i) => {
      expect(one).toBeLessThan(falling[i]!)
    })
    expect(at(4)).toBeLessThan(0.02)
  })

  it('is the ratio of culori’s chroma where the hue stays', () => {
    const toLch = converter('lch65')
    const paler = deep.map((one) => 0.4 * one) as never as readonly [number, number, number]
    const chroma = ([r, g, b]: readonly [number, number, number]) => toLch({ mode: 'lrgb', r, g, b }).c
    expect(chromaKept(paler, deep)).toBeCloseTo(chroma(paler) / chroma(deep), 2)
  })

  it('falls with white light on top', () => {
    const spilled = (by: number) => chromaKept(deep.map((one) => 0.2 * one + by) as never, deep)
    expect(spilled(0.1)).toBeLessThan(spilled(0.02))
    expect(rgbOfXyz(white(6504))[0]).toBeCloseTo(1, 1)
  })
})
