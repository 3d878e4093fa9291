import type { Figure } from '../light/figure.js'
import type { Vec3 } from '../scene/vector.js'
import type { Metres } from '../units/quantity.js'

/** The part of the backdrop in frame, metered flat and outward over a grid. All figures are over the camera's setting (x of 3-light). */
export interface BackdropView {
  /** The rectangle in frame, clipped to the backdrop and kept 3 % inside. */
  readonly left: Metres
  readonly right: Metres
  readonly bottom: Metres
  readonly top: Metres
  readonly samples: readonly BackdropSample[]
  readonly middle: BackdropSample
  readonly darkest: BackdropSample
  readonly brightest: BackdropSample
  /** Brightest over darkest. */
  readonly spread: Figure
}

export interface BackdropSample {
  readonly at: Vec3
  /** In words: `middle`, `left`, `upper right` … as seen by the camera. */
  readonly where: string
  readonly overCamera: Figure
  /** Tone of the surface there. */
  readonly linear: number
  readonly srgb: number
}
