/**
 * A computed figure and how sure it is. A figure is a log₂ quantity; what it owes to each light's strength is kept
 * as a gradient, so that the difference of two figures lit by the same light loses that light's uncertainty.
 */
import type { Stops } from '../units/quantity.js'

export interface Figure {
  readonly stops: Stops
  /** ∂stops/∂(log₂ strength) by light; the shares of one reading sum to 1. */
  readonly gradient: ReadonlyMap<string, number>
  /** Variance of its own in stops²: geometry, bounce. */
  readonly variance: number
  /** 1 where the camera's rendering enters (an absolute tone), 0 where it cancels. */
  readonly rendering: number
}

/** a − b. Gradients and rendering subtract; own variances add. */
export const difference = (a: Figure, b: Figure): Figure => {
  const gradient = new Map(a.gradient)
  for (const [light, share] of b.gradient) gradient.set(light, (gradient.get(light) ?? 0) - share)
  return {
    stops: (a.stops - b.stops) as Stops,
    gradient,
    variance: a.variance + b.variance,
    rendering: a.rendering - b.rendering,
  }
}

/** The same figure moved by an exact amount. */
export const shifted = ({ stops, gradient, variance, rendering }: Figure, by: number): Figure => ({
  stops: (stops + by) as Stops,
  gradient,
  variance,
  rendering,
})
