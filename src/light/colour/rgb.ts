/** Linear sRGB and XYZ with Y = 1 for white: IEC 61966-2-1, its primaries and D65, worked out to all digits. */
import type { Xyz } from './chromaticity.js'

/** Linear; 1, 1, 1 is D65 of Y = 1. Light outside the triangle of the primaries has negative parts. */
export type Rgb = readonly [number, number, number]

export const rgbOfXyz = ([x, y, z]: Xyz): Rgb => [
  3.2409699419045226 * x - 1.537383177570094 * y - 0.4986107602930034 * z,
  -0.9692436362808796 * x + 1.8759675015077202 * y + 0.04155505740717559 * z,
  0.05563007969699366 * x - 0.20397695888897652 * y + 1.0569715142428786 * z,
]

export const xyzOfRgb = ([r, g, b]: Rgb): Xyz => [
  0.41239079926595934 * r + 0.357584339383878 * g + 0.1804807884018343 * b,
  0.21263900587151027 * r + 0.715168678767756 * g + 0.07219231536073371 * b,
  0.01933081871559182 * r + 0.11919477979462598 * g + 0.9505321522496607 * b,
]

export const luminanceOfRgb = ([r, g, b]: Rgb): number =>
  0.21263900587151027 * r + 0.715168678767756 * g + 0.07219231536073371 * b

/** No surface gives back more than this of one channel, and no gel lets more through. */
const most = 0.98

/**
 * The shares of each channel that a surface gives back, or a gel lets through: of this colour, of this luminance. Where
 * that asks more of a channel than all there is, the colour is paler than stated: a bright gel cannot be a deep one.
 *
 * @param colour linear sRGB; only its proportions count
 */
export const sharesOfColour = (colour: Rgb, luminance: number): Rgb => {
  const own = luminanceOfRgb(colour)
  if (!(own > 0)) return [luminance, luminance, luminance]
  const highest = Math.max(...colour) / own
  const depth = highest <= 1 ? 1 : Math.max(0, Math.min(1, (most / luminance - 1) / (highest - 1)))
  const share = (one: number): number => luminance * (1 + depth * (one / own - 1))
  return [share(colour[0]), share(colour[1]), share(colour[2])]
}

/** Wider apart than this share of their mean, the channels make a colour. */
const grey = 0.02

/** Whether shares of the channels change the colour of light. */
export const isColour = (shares: Rgb, luminance: number): boolean =>
  Math.max(...shares) - Math.min(...shares) > grey * luminance
