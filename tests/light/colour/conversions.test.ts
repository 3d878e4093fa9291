/** Conversions against another library: culori. */
import { type Rgb as CuloriRgb, converter } from 'culori'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { adapted, d65 } from '../../../src/light/colour/adapt.js'
import { chromaOf, labOfRgb } from '../../../src/light/colour/lab.js'
import {
  luminanceOfRgb,
  type Rgb,
  rgbOfXyz,
  sharesOfColour,
  xyzOfRgb,
} from '../../../src/light/colour/rgb.js'

const channel = fc.double({ min: 0, max: 1, noNaN: true })
const anyRgb = fc.tuple(channel, channel, channel)
const lrgb = ([r, g, b]: Rgb) => ({ mode: 'lrgb', r, g, b }) as const
const toXyz = converter('xyz65')
const toXyz50 = converter('xyz50')
const toLab = converter('lab65')
const toRgb: (colour: ReturnType<typeof lrgb>) => CuloriRgb = converter('rgb') as never

describe('linear sRGB', () => {
  it('becomes the XYZ that culori makes of it, and comes back', () => {
    fc.assert(
      fc.property(anyRgb, (rgb) => {
        const theirs = toXyz(lrgb(rgb))
        const ours = xyzOfRgb(rgb)
        ;[theirs.x, theirs.y, theirs.z].forEach((one, i) => {
          expect(Math.abs(ours[i]! - one)).toBeLessThan(1e-6)
        })
        expect(Math.abs(luminanceOfRgb(rgb) - theirs.y)).toBeLessThan(1e-6)
        rgbOfXyz(ours).forEach((one, i) => {
          expect(Math.abs(one - rgb[i]!)).toBeLessThan(1e-9)
        })
      }),
    )
  })

  it('has the L*a*b* that culori makes of it', () => {
    fc.assert(
      fc.property(anyRgb, (rgb) => {
        const theirs = toLab(toRgb(lrgb(rgb)))
        const ours = labOfRgb(rgb)
        expect(Math.abs(ours.l - theirs.l)).toBeLessThan(0.02)
        expect(Math.abs(chromaOf(ours) - Math.hypot(theirs.a, theirs.b))).toBeLessThan(0.05)
      }),
    )
  })
})

describe('white balance', () => {
  it('from D65 to D50 is culori’s Bradford', () => {
    const d50 = toXyz50({ mode: 'xyz65', x: d65[0], y: d65[1], z: d65[2] })
    fc.assert(
      fc.property(anyRgb, (rgb) => {
        const xyz = xyzOfRgb(rgb)
        const theirs = toXyz50({ mode: 'xyz65', x: xyz[0], y: xyz[1], z: xyz[2] })
        const ours = adapted(xyz, d65, [d50.x, d50.y, d50.z])
        ;[theirs.x, theirs.y, theirs.z].forEach((one, i) => {
          expect(Math.abs(ours[i]! - one)).toBeLessThan(2e-4)
        })
      }),
    )
  })

  it('makes its own white neutral', () => {
    const warm = [1.05, 1, 0.5] as const
    rgbOfXyz(adapted(warm, warm)).forEach((one) => {
      expect(one).toBeCloseTo(1, 3)
    })
  })
})

describe('the shares that a coloured surface gives back', () => {
  it('have the luminance that is asked for, and no channel gives back more than it gets', () => {
    fc.assert(
      fc.property(anyRgb, fc.double({ min: 0.001, max: 0.97, noNaN: true }), (rgb, luminance) => {
        fc.pre(luminanceOfRgb(rgb) > 1e-6)
        const shares = sharesOfColour(rgb, luminance)
        expect(luminanceOfRgb(shares)).toBeCloseTo(luminance, 9)
        for (const share of shares) {
          expect(share).toBeGreaterThanOrEqual(-1e-12)
          expect(share).toBeLessThanOrEqual(0.98 + 1e-9)
        }
      }),
    )
  })

  it('keep the proportions of the colour while there is room for them', () => {
    const [r, g, b] = sharesOfColour([0.4, 0.2, 0.1], 0.1)
    expect(r / g).toBeCloseTo(2, 9)
    expect(g / b).toBeCloseTo(2, 9)
  })
})
