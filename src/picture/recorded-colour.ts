/**
 * The colour that a matte surface records: what it gives back of each channel of the light there, white-balanced, clipped
 * channel by channel. A strong channel that clips lets the others catch up: that is how a deep gel goes pale and changes
 * its hue.
 */
import type { Surface } from '../language/plan.js'
import { adapted } from '../light/colour/adapt.js'
import { scaledXyz, type Xyz } from '../light/colour/chromaticity.js'
import { labOfRgb } from '../light/colour/lab.js'
import { type Rgb, rgbOfXyz } from '../light/colour/rgb.js'
import { surfaceShares } from '../light/colour/surface-colour.js'

/**
 * Linear sRGB, not clipped.
 *
 * @param light its Y is 2ˣ, x the stops over the camera's setting
 * @param white of the balance: light like this records neutral. Of any Y
 */
export const recordedRgb = (surface: Surface, light: Xyz, white: Xyz): Rgb => {
  const [r, g, b] = rgbOfXyz(adapted(light, scaledXyz(white, 1 / white[1])))
  const shares = surfaceShares(surface)
  return [r * shares[0], g * shares[1], b * shares[2]]
}

/** What is left of it where each channel ends at `most`, linear. */
export const clippedRgb = ([r, g, b]: Rgb, most: number): Rgb => {
  const clip = (one: number): number => Math.min(most, Math.max(0, one))
  return [clip(r), clip(g), clip(b)]
}

/** How much of a colour's chroma another one has, C*ab along its own hue: 1 for the same, 0 for grey, under 0 for the opposite. */
export const chromaKept = (recorded: Rgb, of: Rgb): number => {
  const [got, whole] = [labOfRgb(recorded), labOfRgb(of)]
  const size = whole.a ** 2 + whole.b ** 2
  return size > 0 ? (got.a * whole.a + got.b * whole.b) / size : 0
}
