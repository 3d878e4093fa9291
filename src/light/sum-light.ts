/** Light adds in exposure: from what each light gives at a receptor to one figure. */
import type { LuxSeconds, Stops } from '../units/quantity.js'
import type { Figure } from './figure.js'
import { uncertainties } from './how-sure.js'

/** Exposures of all lights together. */
export const sumLight = (parts: ReadonlyMap<string, LuxSeconds>): LuxSeconds => {
  let sum = 0
  for (const part of parts.values()) sum += part
  return sum as LuxSeconds
}

/**
 * log₂ lx·s of the sum, its gradient over the lights' strengths (each one's share of the light, together 1), and what
 * geometry adds: the difference of two points lit by one light keeps 0.1 stop, so each point brings half of that in
 * square, each light for itself. No light at all gives −∞ and no gradient.
 *
 * @param bounceU standard uncertainty of the sum, stops, from what is thrown back by surfaces
 */
export const sumFigure = (parts: ReadonlyMap<string, LuxSeconds>, bounceU = 0): Figure => {
  const sum = sumLight(parts)
  const gradient = new Map<string, number>()
  let variance = bounceU ** 2
  for (const [light, part] of parts) {
    if (part <= 0) continue
    const share = part / sum
    gradient.set(light, share)
    variance += (share ** 2 * uncertainties.geometry ** 2) / 2
  }
  return { stops: Math.log2(sum) as Stops, gradient, variance, rendering: 0 }
}
