/**
 * Tone: from stops over the camera's setting to what the picture records. A plain sRGB rendering, without a camera's
 * own curve: a surface of reflectance ρ at x stops over the setting records linear ρ·2ˣ.
 * Sources: sRGB, IEC 61966-2-1; lightness L*, CIE 15; headroom over a 100 % reflector, ISO 12232.
 */
import type { Stops } from '../units/quantity.js'
import { decode, encode } from '../units/srgb.js'

export { decode, encode } from '../units/srgb.js'

/** 8-bit sRGB code, 0 to 255. */
export const srgbCode = (linear: number): number => Math.round(255 * encode(linear))

/** Linear value of an 8-bit sRGB code. */
export const linearOfCode = (code: number): number => decode(code / 255)

/** CIE L* (0 to 100) of a luminance relative to white. CIE 15:2004, (6/29)³ as the end of the linear part. */
export const lightness = (relative: number): number =>
  relative > (6 / 29) ** 3 ? 116 * Math.cbrt(relative) - 16 : (29 / 3) ** 3 * relative

/** Relative luminance of an L*. */
export const luminanceOfLightness = (lstar: number): number =>
  lstar > 8 ? ((lstar + 16) / 116) ** 3 : lstar / (29 / 3) ** 3

/** Linear value that a surface of this reflectance records at `over` stops over the camera's setting; not clipped. */
export const recordedLinear = (reflectance: number, over: number): number => reflectance * 2 ** over

/** Stops over the camera's setting at which a surface of this reflectance records the linear value. */
export const stopsToRecord = (reflectance: number, linear: number): Stops =>
  Math.log2(linear / reflectance) as Stops

/**
 * Linear value from which every camera with this headroom over a 100 % reflector clips: white for certain.
 * ISO 12232 allows half a stop; the language's default is a quarter.
 */
export const surelyWhite = (headroom: number): number => 2 ** headroom

/** Stops over the camera's setting that make a surface of this reflectance white for certain. */
export const stopsToSurelyWhite = (reflectance: number, headroom: number): Stops =>
  stopsToRecord(reflectance, surelyWhite(headroom))

export type ToneWord =
  | 'black'
  | 'near black'
  | 'dark grey'
  | 'mid grey'
  | 'light grey'
  | 'almost white'
  | 'white'

/**
 * Upper ends (sRGB codes, included). Black ends at 30 and dark grey starts at 50, as the language's `black` and `grey` do;
 * mid grey holds the 18 % card (118) and L* 50 (119); a 0.9 paper level with the key (243) is almost white;
 * only the end of the scale is white.
 */
export const toneWords: readonly (readonly [ToneWord, number])[] = [
  ['black', 30],
  ['near black', 49],
  ['dark grey', 94],
  ['mid grey', 149],
  ['light grey', 229],
  ['almost white', 254],
  ['white', 255],
]

/** The word for an sRGB code; codes between two whole ones belong to the nearer. */
export const toneWord = (code: number): ToneWord =>
  (toneWords.find(([, upTo]) => Math.round(code) <= upTo) ?? toneWords[toneWords.length - 1]!)[0]
