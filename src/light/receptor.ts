import type { Vec3 } from '../scene/vector.js'

/**
 * What receives light: a flat receptor (also paper and skin) weighs a direction by its cosine, a raised dome by
 * (1 + cos θ)/2 over all directions. A dome is taken as calibrated to read a light straight ahead as the flat one does.
 */
export interface Receptor {
  readonly at: Vec3
  /** Unit. */
  readonly normal: Vec3
  readonly kind: 'flat' | 'dome'
  /** A dome lying on a surface does not see the surface itself nor behind it: clip at this plane. */
  readonly onSurface?: boolean
  /**
   * Unit, outward: the surface that it is held against, where that is not its own direction (a meter turned at a face).
   * What comes from behind that plane does not reach it.
   */
  readonly against?: Vec3
}
