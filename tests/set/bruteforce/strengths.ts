/** How strong lights are by what is stated of them, and the meter's arithmetic. */
import { bisect, flux, type Pattern, zoomed } from './patterns.js'

/** Incident meters' constant, lx·s: within the range of ISO 2720 for a flat receptor. */
const c = 250

/** Exposure that makes a meter at this speed show this f-number: N² = H·S/C. */
export const luxSecondsFor = (fNumber: number, iso = 100): number => (fNumber ** 2 * c) / iso

/** Stops over the camera's setting. */
export const overSetting = (luxSeconds: number, fNumber: number, iso: number, losses = 0): number =>
  Math.log2(luxSeconds / luxSecondsFor(fNumber, iso)) - losses

/** A lens drawn out to focus close: image over object size of a thin lens, lengths in metres. */
export const closeUp = (lens: number, distance: number): number => 2 * Math.log2(1 + lens / (distance - lens))

/** Printed guide numbers run optimistic: 2/3 stop off. Candela-seconds at full power: H·d² = C·GN²/100. */
export const fromGuideNumber = (metres: number, off = 2 / 3): number => (c / 100) * metres ** 2 * 2 ** -off

/** 30 lm·s from each watt-second, this share of it through the front, into this pattern. */
export const fromEnergy = (wattSeconds: number, passes: number, pattern: Pattern): number =>
  (30 * wattSeconds * passes) / flux(pattern)

/** No more than 45 lm·s can come out for each watt-second put in. */
export const capped = (strength: number, wattSeconds: number, pattern: Pattern): number =>
  Math.min(strength, (45 * wattSeconds) / flux(pattern))

/** Guide number at another zoom than that it is rated at: ^0.65 below 35 mm, ^0.45 to 105 mm, flat above. */
const zoomLaw = (zoom: number): number =>
  zoom < 35 ? (zoom / 35) ** 0.65 : (Math.min(zoom, 105) / 35) ** 0.45

/** A bare zoom head: strength by the guide number, beam as wide as lets out the flux that it has at 35 mm. */
export const zoomHead = (
  guideNumberAt35: number,
  zoom: number,
): { readonly strength: number; readonly pattern: Pattern } => {
  const atRated = fromGuideNumber(guideNumberAt35)
  const strength = atRated * zoomLaw(zoom) ** 2
  const carried = atRated * flux(zoomed(35))
  const asMarked = strength * flux(zoomed(zoom))
  // Long zooms may lose up to half a stop at the rim of the reflector.
  const out = zoom > 35 ? Math.min(carried, Math.max(asMarked, carried / Math.SQRT2)) : carried
  const widened = bisect((wide) => strength * flux(zoomed(zoom, wide)) - out, 0.3, 4)
  return { strength, pattern: zoomed(zoom, widened) }
}
