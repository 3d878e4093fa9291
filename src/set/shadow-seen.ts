import type { Figure } from '../light/figure.js'
import type { Vec3 } from '../scene/vector.js'

export type ShadowSide = 'camera-left' | 'camera-right' | 'above'

/** The shadow that one figure throws from one light onto the backdrop, on one side of its outline. */
export interface ShadowSeen {
  readonly light: string
  /** The figure's name in the scene. */
  readonly figure: string
  readonly side: ShadowSide
  readonly on: 'backdrop' | 'sweep' | 'floor'
  /**
   * By how many stops the band that shows most is deeper than it must be to show, over all the width that it must have;
   * negative for one that does not show.
   */
  readonly margin: number
  /** Under what the place would record without the figure, where one side is deeper by most; not below what is white. */
  readonly depth: Figure
  /** The same on the other side, stops. */
  readonly otherSide: number
  /** Tones there, linear and not clipped: without the figure, and with it. */
  readonly surround: number
  readonly shaded: number
  readonly at: Vec3
  /** Place of the frame, -1 to 1. */
  readonly x: number
  readonly y: number
  /** Between the places of half its depth: metres on the surface, and a share of the frame's short side. */
  readonly width: number
  readonly share: number
}

/** Stops, L*, and share of the frame's short side: deeper and wider than these a shadow shows. */
export const shows = { stops: 1 / 3, lightness: 6, width: 0.02 } as const
