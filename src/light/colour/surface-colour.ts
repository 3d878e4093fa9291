/** What surfaces give back of each channel of linear sRGB. */
import type { Surface } from '../../language/plan.js'
import { lazyOf } from '../../scene/lazy.js'
import { linearRgb } from './linear.js'
import { isColour, type Rgb, sharesOfColour } from './rgb.js'

/** Of the luminance that the plan says, in white light. */
export const surfaceShares: (surface: Surface) => Rgb = lazyOf(
  ({ colour, reflectance }: Surface): Rgb =>
    colour === undefined
      ? [reflectance, reflectance, reflectance]
      : sharesOfColour(linearRgb(colour), reflectance),
)

/** Whether a surface changes the colour of light. */
export const isColoured = (surface: Surface | undefined): boolean =>
  surface?.colour !== undefined && isColour(surfaceShares(surface), surface.reflectance)
