/**
 * A light as the transport sees it: an outline in space and a pattern whose value is 1 on its axis in the far field.
 * Strength is kept apart (on-axis far-field intensity, cd·s for flash, cd for continuous light), so that a change of
 * power computes no transport again.
 */
import type { PhotometricTable } from '../language/photometric/table.js'
import type { Face } from '../scene/scene.js'
import type { Vec3 } from '../scene/vector.js'

export interface AreaSource {
  readonly kind: 'area'
  readonly light: string
  readonly face: Face
  /**
   * Corners on the face, metres along its `across` and `up` from its centre, flat: u₀, v₀, u₁, v₁ … Seen from in front
   * counter-clockwise; a disc has at least 24, with equal area; of a ring, its rim.
   */
  readonly outline: readonly number[]
  /** The same corners in space. */
  readonly polygon: readonly Vec3[]
  /** m²: what the intensity is spread over. */
  readonly area: number
  /** Radius of a ring's dark middle against that of its rim; 0 for all other outlines. */
  readonly hole: number
  readonly pattern: Pattern
  /** It gives light behind its plane too: the same pattern backwards (umbrellas), or what its table says. */
  readonly both: boolean
}

/** Light from one direction: the sun. `response` is per lux·s on a plane square to it. */
export interface ParallelSource {
  readonly kind: 'parallel'
  readonly light: string
  /** Unit: from the set toward the sun. */
  readonly toward: Vec3
}

/** Ambient: uniform over the upper half. Per lux·s on a level plane in the open. */
export interface UniformSource {
  readonly kind: 'uniform'
  readonly light: string
}

export type Source = AreaSource | ParallelSource | UniformSource

/** Radiant pattern of each element of the face, relative to its normal, times a grid's transmission. */
export interface Pattern {
  /** Radiance ∝ cosⁿ⁻¹: intensity ∝ cosⁿ. 1 is Lambertian. Undefined for what has `head` or `table`. */
  readonly cosine: number | undefined
  /** A flash head: half-coverage tangents across and up at −1/2 stop. */
  readonly head: HeadPattern | undefined
  /** A photometric table: intensity of each element, its own projection in it. */
  readonly table?: TablePattern
  readonly grid: GridPattern | undefined
}

export interface TablePattern {
  readonly table: PhotometricTable
  /** What its candela are multiplied by to be relative: 1 on the axis, but for a lamp that burns tilted. */
  readonly gain: number
  /** Its horizontal angle 0 points up, not to the right of who faces it. */
  readonly lying: boolean
}

export interface HeadPattern {
  readonly tanAcross: number
  readonly tanUp: number
}

export type GridPattern =
  | { readonly kind: 'egg-crate'; readonly tanCutOff: number }
  /** Half-peak angle as sold: the full width at half the peak, radians. */
  | { readonly kind: 'honeycomb'; readonly halfPeak: number }
