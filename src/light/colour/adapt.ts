/**
 * White balance: what makes a light of one white look neutral. Bradford's chromatic adaptation (Lam 1985), as the ICC
 * profile format uses it, complete and linear. Raw converters scale their own channels; the difference is smaller than what a
 * colour name says.
 */
import type { Xyz } from './chromaticity.js'

const cones = ([x, y, z]: Xyz): Xyz => [
  0.8951 * x + 0.2664 * y - 0.1614 * z,
  -0.7502 * x + 1.7135 * y + 0.0367 * z,
  0.0389 * x - 0.0685 * y + 1.0296 * z,
]

const back = ([r, g, b]: Xyz): Xyz => [
  0.9869929054667123 * r - 0.14705425642099013 * g + 0.15996265166373125 * b,
  0.43230526972339456 * r + 0.5183602715367776 * g + 0.0492912282128556 * b,
  -0.008528664575177328 * r + 0.04004282165408487 * g + 0.9684866957875502 * b,
]

/** D65 as it is usually rounded, from memory; the matrices of `rgb.ts` have 1.08906 for its Z. */
export const d65: Xyz = [0.95047, 1, 1.08883]

/** The tristimulus values that look under `to` as these do under `from`; both whites with Y = 1. */
export const adapted = (xyz: Xyz, from: Xyz, to: Xyz = d65): Xyz => {
  const [a, b] = [cones(from), cones(to)]
  const seen = cones(xyz)
  return back([(seen[0] * b[0]) / a[0], (seen[1] * b[1]) / a[1], (seen[2] * b[2]) / a[2]])
}
