/** What surfaces give back of each channel of linear sRGB. */
import type { Surface } from '../../language/plan.js'
import { lazyOf } from '../../scene/lazy.js'
import { linearRgb } from './linear.js'
import { type Rgb, sharesOfColour } from './rgb.js'

/** Of the luminance that the plan says, in white light. */
export const surfaceShares: (surface: Surface) => Rgb = lazyOf(
  ({ colour, reflectance }: Surface): Rgb =>
    colour === undefined
      ? [reflectance, reflectance, reflectance]
      : sharesOfColour(linearRgb(colour), reflectance),
)

/** Wider apart than this share of their mean, the channels of a surface make a colour. */
const grey = 0.02

/** Whether a surface changes the colour of light. */
export const isColoured = (surface: Surface | undefined): boolean => {
  if (surface?.colour === undefined) return false
  const shares = surfaceShares(surface)
  return Math.max(...shares) - Math.min(...shares) > grey * surface.reflectance
}
