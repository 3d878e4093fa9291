/**
 * The beam of a flashgun's zoom head: intensity falls by half a stop at each edge of the 36 × 24 mm frame of its
 * zoom, by one at the corner (common practice, no source), and goes on falling: 2^−½((tx/ax)² + (ty/ay)²) with tx, ty
 * the tangents of the angle to either side. The frame's edge gives the half stop, its corner the whole one.
 */
import type { Metres } from '../units/quantity.js'
import type { HeadPattern } from './source.js'

/** The zoom at which guide numbers of flashguns are compared, and against which a modifier's loss is stated. */
export const ratedZoom = 0.035 as Metres

/** Half a stop at the edges of the frame that a lens of this focal length sees. */
export const framePattern = (zoom: Metres): HeadPattern => ({ tanAcross: 0.018 / zoom, tanUp: 0.012 / zoom })

/** Steps of the integral below: an even function that decays as e^(−w²), so equal steps converge geometrically. */
const step = 0.15
const weights = Array.from({ length: 40 }, (_, i) => {
  const squared = ((i + 0.5) * step) ** 2
  return { squared, weight: 4 * Math.sqrt(Math.PI) * step * squared * Math.exp(-squared) }
})

/**
 * Flux over peak intensity, sr. The integral over both tangents of 2^−½(…)·(1 + tx² + ty²)^−3/2 becomes one over w
 * when the last factor is written as a Laplace transform.
 */
export const headSolidAngle = (pattern: HeadPattern): number => {
  const across = Math.LN2 / (2 * pattern.tanAcross ** 2)
  const up = Math.LN2 / (2 * pattern.tanUp ** 2)
  let sum = 0
  for (const { squared, weight } of weights) sum += weight / Math.sqrt((across + squared) * (up + squared))
  return sum
}

/** The frame's pattern, wider or narrower by one factor, so that flux over peak is `solidAngle` (sr, under 2π). */
export const headOfSolidAngle = (zoom: Metres, solidAngle: number): HeadPattern => {
  const frame = framePattern(zoom)
  const widened = (by: number): HeadPattern => ({ tanAcross: frame.tanAcross * by, tanUp: frame.tanUp * by })
  let low = -6
  let high = 6
  for (let i = 0; i < 30; i++) {
    const middle = (low + high) / 2
    if (headSolidAngle(widened(2 ** middle)) < solidAngle) low = middle
    else high = middle
  }
  return widened(2 ** ((low + high) / 2))
}
