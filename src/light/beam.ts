/**
 * Beams: intensity ∝ cosⁿ of the angle off the axis (radiance ∝ cosⁿ⁻¹; n = 1 is Lambertian). The usual model of
 * lamps with a stated beam angle; n and the flux follow from it by integration.
 */
import type { Radians } from '../units/quantity.js'

/** Exponent for a beam angle: full width at half the peak intensity, n = ln ½ / ln cos(half of it). */
export const beamExponent = (beamAngle: Radians): number => Math.log(0.5) / Math.log(Math.cos(beamAngle / 2))

/** Flux over peak intensity of a cosⁿ beam into the half-space in front: 2π/(n+1) sr. */
export const beamSolidAngle = (exponent: number): number => (2 * Math.PI) / (exponent + 1)

/** A head's standard reflector: 55 to 65° between half peaks. Common practice, no source. */
export const standardReflector = ((60 * Math.PI) / 180) as Radians
