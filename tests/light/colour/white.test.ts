/** Colour temperature and the distance from the locus, against other approximations, published values and their own inverse. */
import { describe, expect, it } from 'vitest'
import { apartUv, uvOfXy, xyOfUv } from '../../../src/light/colour/chromaticity.js'
import { daylightXy, krystekUv, planckianUv } from '../../../src/light/colour/loci.js'
import { miredOf } from '../../../src/light/colour/mired.js'
import { usualDuv, uvOfWhite, uvPerMired, whiteOfUv, xyzOfWhite } from '../../../src/light/colour/white.js'

const run = (from: number, to: number, steps = 200): number[] =>
  Array.from({ length: steps + 1 }, (_, i) => 1e6 / (1e6 / from + (i / steps) * (1e6 / to - 1e6 / from)))

/** McCamy 1992: n from the epicentre (0.3320, 0.1858). */
const mccamy = ({ x, y }: { x: number; y: number }): number => {
  const n = (x - 0.332) / (y - 0.1858)
  return -449 * n ** 3 + 3525 * n ** 2 - 6823.3 * n + 5520.33
}

/** Planck's law over the colour matching functions as sums of Gaussians (Wyman, Sloan and Shirley 2013; from memory), c₂ = 14388 µm·K. */
const integrated = (kelvin: number) => {
  const g = (l: number, mean: number, below: number, over: number) =>
    Math.exp(-0.5 * ((l - mean) / (l < mean ? below : over)) ** 2)
  let [x, y, z] = [0, 0, 0]
  for (let l = 360; l <= 830; l += 1) {
    const s = 1 / (l ** 5 * Math.expm1(14388e3 / (l * kelvin)))
    x += s * (1.056 * g(l, 599.8, 37.9, 31) + 0.362 * g(l, 442, 16, 26.7) - 0.065 * g(l, 501.1, 20.4, 26.2))
    y += s * (0.821 * g(l, 568.8, 46.9, 40.5) + 0.286 * g(l, 530.9, 16.3, 31.1))
    z += s * (1.217 * g(l, 437, 11.8, 36) + 0.681 * g(l, 459, 26, 13.8))
  }
  return { x: x / (x + y + z), y: y / (x + y + z) }
}

describe('black bodies', () => {
  it.each(run(1667, 15000, 30))('lie within 1.3 mired of where Krystek (1985) puts them: %d K', (kelvin) => {
    const mired = miredOf(kelvin)
    expect(apartUv(planckianUv(kelvin), krystekUv(kelvin)) / uvPerMired(mired)).toBeLessThan(1.5)
  })

  it('lie where Planck’s law puts them, from 2200 to 40000 K, as near as the fitted observer is good', () => {
    for (const kelvin of run(2200, 40000, 60))
      expect(apartUv(planckianUv(kelvin), uvOfXy(integrated(kelvin))), `${kelvin} K`).toBeLessThan(0.003)
  })

  it('run on without a step, also where one formula takes over from another', () => {
    for (const meet of [1667, 2222, 3800, 4000, 4200, 7000, 25000])
      expect(apartUv(planckianUv(meet - 0.01), planckianUv(meet + 0.01)), `${meet} K`).toBeLessThan(1e-5)
  })
})

describe('the temperature of a chromaticity', () => {
  it.each([1000, 1500, 1667, 2000, 3000, 3999, 4001, 5000, 8000, 15000, 30000, 40000])(
    'is found again, at every distance from the locus: %d K',
    (kelvin) => {
      for (const duv of [-0.03, -0.01, -0.002, 0, 0.002, 0.012, 0.03]) {
        const found = whiteOfUv(uvOfWhite(kelvin, duv))
        expect(Math.abs(miredOf(found.kelvin) - miredOf(kelvin))).toBeLessThan(0.1)
        expect(Math.abs(found.duv - duv)).toBeLessThan(2e-5)
      }
    },
  )

  it('has nothing nearer on a fine walk along the locus', () => {
    for (const uv of [
      { u: 0.25, v: 0.34 },
      { u: 0.21, v: 0.335 },
      { u: 0.2, v: 0.29 },
      { u: 0.3, v: 0.36 },
    ]) {
      const { duv } = whiteOfUv(uv)
      const nearest = Math.min(...run(1000, 40000, 20000).map((kelvin) => apartUv(planckianUv(kelvin), uv)))
      expect(Math.abs(duv)).toBeLessThanOrEqual(nearest + 1e-9)
      expect(Math.abs(duv)).toBeGreaterThan(nearest - 1e-6)
    }
  })

  // CIE 15: illuminants A, D50, D55, D65; chromaticities from the check values (col.ill), temperatures by the standard.
  it.each([
    ['A', 0.44758, 0.40745, 2856],
    ['D50', 0.3457, 0.3585, 5003],
    ['D55', 0.33243, 0.34744, 5503],
    ['D65', 0.3127, 0.329, 6504],
  ])('of illuminant %s is what CIE 15 says, within 1.5 mired', (_, x, y, kelvin) => {
    expect(Math.abs(miredOf(whiteOfUv(uvOfXy({ x, y })).kelvin) - miredOf(kelvin))).toBeLessThan(1.5)
  })

  it.each(run(2900, 6500, 12))('is what McCamy (1992) makes of it, within 2 mired: %d K', (kelvin) => {
    expect(Math.abs(miredOf(mccamy(xyOfUv(planckianUv(kelvin)))) - miredOf(kelvin))).toBeLessThan(2)
  })

  it('says green of green and magenta of magenta', () => {
    // The locus is crossed upward in y toward green.
    const { x, y } = xyOfUv(planckianUv(4000))
    expect(whiteOfUv(uvOfXy({ x, y: y + 0.01 })).duv).toBeGreaterThan(0.003)
    expect(whiteOfUv(uvOfXy({ x, y: y - 0.01 })).duv).toBeLessThan(-0.003)
  })
})

describe('light of which only the temperature is stated', () => {
  it('is a black body below the crossing and daylight over it', () => {
    for (const kelvin of [1000, 2900, 3500]) expect(usualDuv(kelvin)).toBe(0)
    for (const kelvin of [4600, 5500, 6500, 10000, 25000]) {
      const daylight = uvOfXy(daylightXy(kelvin))
      expect(
        apartUv(uvOfWhite(kelvin, usualDuv(kelvin)), daylight) / uvPerMired(miredOf(kelvin)),
      ).toBeLessThan(0.3)
    }
  })

  it('does not jump between 3999 and 4001 K, nor anywhere', () => {
    const all = run(1000, 40000, 3900).map((kelvin) => uvOfWhite(kelvin, usualDuv(kelvin)))
    const steps = all.slice(1).map((uv, i) => apartUv(uv, all[i]!))
    // A quarter mired each: 0.0001 along the locus, a little more where it crosses over.
    expect(Math.max(...steps)).toBeLessThan(0.00017)
  })

  it('keeps the temperature that was stated', () => {
    for (const kelvin of [1850, 3200, 3999, 4001, 5600, 12000]) {
      const xyz = xyzOfWhite({ kelvin: kelvin as never, duv: usualDuv(kelvin) })
      expect(xyz[1]).toBe(1)
      const found = whiteOfUv(uvOfWhite(kelvin, usualDuv(kelvin)))
      expect(Math.abs(miredOf(found.kelvin) - miredOf(kelvin))).toBeLessThan(0.05)
    }
  })
})
