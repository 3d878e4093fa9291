/** What a photometric file says of its light, with symmetries written out and all factors in. */
import type { Metres, Watts } from '../../units/quantity.js'

export interface PhotometricTable {
  /**
   * Type C: `vertical` from the front's axis (0) backwards (180), `horizontal` around it, 0 along the front's width,
   * toward the right of someone who faces the light, and on counter-clockwise as seen from there: 90 is up. (LM-63-02
   * says counter-clockwise; that it is as seen from below a hanging light is how Radiance's ies2rad takes it.) Types B
   * and A: `vertical` up (90) and down (−90), `horizontal` from the axis toward the light's own right: clockwise as seen
   * from above.
   */
  readonly type: 'C' | 'B' | 'A'
  /** Degrees, rising; what lies outside gets no light. */
  readonly vertical: Float64Array
  /** Degrees, rising. Type C: 0 to 360, or one angle where it is alike all round. */
  readonly horizontal: Float64Array
  /** Candela at full power, for each horizontal angle one for each vertical angle; none under 0, some over it. */
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
  /** Along the horizontal angle 0. */
  readonly width: Metres
  /** Along the horizontal angle 90. */
  readonly height: Metres
}

export interface Tilt {
  /** Which way the lamp lies in a light that points straight down: upright, along horizontal angle 0, or along 90. */
  readonly lamp: 'upright' | 'along 0' | 'along 90'
  /** Degrees that the light is tilted from straight down in the lamp's plane, rising. */
  readonly angles: Float64Array
  /** One for each angle. */
  readonly factors: Float64Array
}
