/** Tone against culori, a colour library written by others, and against the trade's facts. */
import { converter } from 'culori'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  decode,
  encode,
  lightness,
  linearOfCode,
  luminanceOfLightness,
  recordedLinear,
  srgbCode,
  stopsToRecord,
  stopsToSurelyWhite,
  toneWord,
  toneWords,
} from '../../src/picture/tone.js'

const toLinear = converter('lrgb')
const toLab = converter('lab65')

describe('sRGB and L*', () => {
  it('agree with culori over all codes', () => {
    for (let code = 0; code <= 255; code++) {
      const value = code / 255
      const grey = { mode: 'rgb', r: value, g: value, b: value } as const
      expect(linearOfCode(code)).toBeCloseTo(toLinear(grey).r, 12)
      // The library's matrix leaves a neutral's Y a ten-thousandth off 1.
      expect(lightness(linearOfCode(code))).toBeCloseTo(toLab(grey).l, 3)
      expect(srgbCode(linearOfCode(code))).toBe(code)
    }
  })

  it('encode and decode undo each other, and clip outside 0 to 1', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (linear) => {
        expect(decode(encode(linear))).toBeCloseTo(linear, 6)
        expect(luminanceOfLightness(lightness(linear))).toBeCloseTo(linear, 10)
      }),
    )
    expect([encode(-0.1), encode(2), srgbCode(7), srgbCode(Number.NaN)]).toEqual([0, 1, 255, 0])
  })

  it('never darken as light is added', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.005, max: 1, noNaN: true }),
        fc.double({ min: -8, max: 4, noNaN: true }),
        fc.double({ min: 0, max: 3, noNaN: true }),
        (reflectance, over, more) => {
          const tone = (x: number) => srgbCode(recordedLinear(reflectance, x))
          expect(tone(over + more)).toBeGreaterThanOrEqual(tone(over))
        },
      ),
    )
  })
})

describe('tone of a backdrop', () => {
  it('of 0.9 under a key of f/5.6: the figures of the trade’s table', () => {
    // Worked by hand from the standard's curve: f/5.6 243, f/5.0 220, f/4.5 198, f/4 179.
    const thirds = [0, -1 / 3, -2 / 3, -1]
    expect(thirds.map((over) => srgbCode(recordedLinear(0.9, over)))).toEqual([243, 220, 198, 179])
  })

  it('white for certain needs a quarter stop over where linear 1 is reached', () => {
    // log2(1/0.9) = 0.152 by hand; with a quarter stop of headroom "about +0.4".
    expect(stopsToRecord(0.9, 1)).toBeCloseTo(0.152, 3)
    expect(stopsToSurelyWhite(0.9, 0.25)).toBeCloseTo(0.402, 3)
  })

  it('has a word for each code', () => {
    expect([0, 30, 31, 49, 50, 94, 95, 118, 149, 150, 198, 229, 230, 243, 254, 255].map(toneWord)).toEqual([
      'black',
      'black',
      'near black',
      'near black',
      'dark grey',
      'dark grey',
      'mid grey',
      'mid grey',
      'mid grey',
      'light grey',
      'light grey',
      'light grey',
      'almost white',
      'almost white',
      'almost white',
      'white',
    ])
    expect(toneWords.map(([, upTo]) => upTo)).toEqual(
      [...toneWords.map(([, upTo]) => upTo)].sort((a, b) => a - b),
    )
    expect(toneWord(300)).toBe('white')
  })
})
