/** What a lit backdrop costs: light back round the subject's outline, and a veil over the picture. */
import type { Figure } from '../light/figure.js'
import type { Receptor } from '../light/receptor.js'

export interface WrapSide {
  /** The figure's name in the scene. */
  readonly figure: string
  readonly side: 'camera-left' | 'camera-right'
  readonly receptor: Receptor
  /** Stops against the key reading. */
  readonly reKey: Figure
  /** What of it each light makes by way of the backdrop: lx·s. */
  readonly byLight: ReadonlyMap<string, number>
}

export interface Haze {
  /** Means of recorded linear values, not clipped: over the frame, over what surrounds it, and as the veil takes them. */
  readonly frame: number
  readonly surround: number
  readonly mean: number
  /** What of the mean each light makes, by whatever way. */
  readonly byLight: ReadonlyMap<string, number>
  /** What of the mean comes from the backdrop and its sweep outside the frame. */
  readonly backdropOutside: number
  /** Stops by which a black that records 0.02 is lifted. */
  readonly lift: Figure
}
