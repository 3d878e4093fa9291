/** What a photometric file says of its light, with symmetries written out and all factors in. */
import type { Metres, Watts } from '../../units/quantity.js'

/**
 * Which way the angles go, with the light aimed level and seen from in front (right is the right of who faces it):
 *
 * | type | pole     | planes about it                       | within a plane                       |
 * | C    | the axis | horizontal: 0 right, 90 up, 180 left  | vertical: 0 ahead, 180 back          |
 * | A    | up       | horizontal: 0 ahead, 90 left          | vertical: −90 down, 0 level, 90 up   |
 * | B    | left     | vertical: 0 ahead, 90 up, −90 down    | horizontal: −90 right, 0, 90 left    |
 *
 * Sources, none of them the standards' own text. LM-63-02's definitions as they are quoted in public: horizontal angles go
 * counter-clockwise in type C and clockwise in A and B; the planes of A and C share a vertical axis, those of B a
 * horizontal one. The publisher's abstract of LM-75: a goniometer of type A stands on a horizontal axis and one of type B
 * on a vertical one, so that the axis that turns with the light, its pole, is vertical in A and horizontal in B.
 * Radiance's ies2rad and source.cal: C as seen from below a hanging light, B with vertical angles about the pole, as other
 * open readers have it.
 *
 * Where they disagree: LM-63-02 does not say from where counter-clockwise is seen, and who draws type C on a plan, from
 * above, has it mirrored. Of type B I. Ashdown's account of LM-63, and readers that follow it, turn
 * horizontal angles about the pole and count vertical ones toward it. Ashdown puts the pole of A along the luminaire's
 * length and that of B along its width, as it is here.
 */
export interface PhotometricTable {
  readonly type: 'C' | 'B' | 'A'
  /** Degrees, rising: the planes about the pole. Type C: 0 to 360, or one where it is alike all round. */
  readonly planes: Float64Array
  /** Degrees, rising: directions within each plane; outside of them, and of the planes, there is no light. */
  readonly inPlane: Float64Array
  /** Candela at full power, for each plane one for each angle in it; none under 0, some over it. */
  readonly candela: Float64Array
  /** Undefined for a point and where the file states nothing. */
  readonly opening: LuminousOpening | undefined
  /** Of the whole luminaire; undefined where the file states none. */
  readonly watts: Watts | undefined
  /** How a lamp's light changes with the way it burns; undefined where it does not. */
  readonly tilt: Tilt | undefined
}

/** The part of a light that glows, seen along its axis. A disc of unlike sides is an ellipse. */
export interface LuminousOpening {
  readonly outline: 'rectangle' | 'disc'
  /** From side to side, metres: type C's length (along the horizontal angle 0), the width of types A and B. */
  readonly width: Metres
  /** From below up, metres: type C's width, the length of types A and B (within the plane of the horizontal angle 0). */
  readonly height: Metres
}

export interface Tilt {
  /** Which way the lamp lies in a light that points straight down: upright, or along the width or height of its front. */
  readonly lamp: 'upright' | 'along width' | 'along height'
  /** Degrees that the light is tilted from straight down in the lamp's plane, rising. */
  readonly angles: Float64Array
  /** One for each angle. */
  readonly factors: Float64Array
}
