/**
 * How much two sides of patches see of each other with nothing between: A·F, in m², the same both ways.
 *
 * Far apart, the point formula with its second-order terms; near, the contour formula from several points of the smaller
 * one, cut at their horizon.
 */
import { clipByHorizon, contourIrradiance } from '../polygon.js'
import { type Layout, reachAlong } from './layout.js'
import { rectangleIrradiance } from './rectangle.js'

/** Point formula where the distance is at least this many times both radii together. */
const far = 1.5
/** Metres: a patch that reaches no further than this behind a plane lies before it. */
const touching = 1e-9

/** Gauss–Legendre on −1 to 1; weights sum to 1. */
const three: readonly (readonly [number, number])[] = [
  [-0.7745966692414834, 5 / 18],
  [0, 8 / 18],
  [0.7745966692414834, 5 / 18],
]
const two: readonly (readonly [number, number])[] = [
  [-0.5773502691896257, 0.5],
  [0.5773502691896257, 0.5],
]

/** @param facingI 1 for the front of patch i, −1 for its back; `facingJ` likewise. */
export const exchange = (layout: Layout, i: number, facingI: number, j: number, facingJ: number): number => {
  const { at, normal, half, radius, area } = layout
  const p = 3 * i
  const q = 3 * j
  const dx = at[q]! - at[p]!
  const dy = at[q + 1]! - at[p + 1]!
  const dz = at[q + 2]! - at[p + 2]!
  const mx = facingI * normal[p]!
  const my = facingI * normal[p + 1]!
  const mz = facingI * normal[p + 2]!
  const nx = -facingJ * normal[q]!
  const ny = -facingJ * normal[q + 1]!
  const nz = -facingJ * normal[q + 2]!
  // How far the middle of each lies before the other's plane.
  const out = mx * dx + my * dy + mz * dz
  const back = nx * dx + ny * dy + nz * dz
  if (out <= -radius[j]! || back <= -radius[i]!) return 0
  const reachI = reachAlong(layout, i, nx, ny, nz)
  const reachJ = reachAlong(layout, j, mx, my, mz)
  if (out <= touching - reachJ || back <= touching - reachI) return 0
  const squared = dx * dx + dy * dy + dz * dz
  const apart = far * (radius[i]! + radius[j]!)
  const whole = out >= reachJ - touching && back >= reachI - touching
  if (!whole || squared < apart * apart) {
    // From points of the smaller one; of two alike, told by how they stand and not by which comes first.
    const bySize = radius[i]! - radius[j]!
    const fromJ = Math.abs(bySize) > 1e-9 * radius[i]! ? bySize > 0 : back > out * (1 + 1e-9)
    return fromJ
      ? nearExchange(layout, j, facingJ, i, facingI, whole, squared)
      : nearExchange(layout, i, facingI, j, facingJ, whole, squared)
  }

  const { across, up } = layout
  const straight = out * back
  // Second derivatives of cos·cos/r² along each patch's own axes, times a third of half its length squared, halved.
  let bent = 0
  for (let k = 0; k < 2; k++) {
    const axes = k === 0 ? across : up
    const alongI = axes[p]! * dx + axes[p + 1]! * dy + axes[p + 2]! * dz
    const slopeI = (axes[p]! * nx + axes[p + 1]! * ny + axes[p + 2]! * nz) * out
    const alongJ = axes[q]! * dx + axes[q + 1]! * dy + axes[q + 2]! * dz
    const slopeJ = (axes[q]! * mx + axes[q + 1]! * my + axes[q + 2]! * mz) * back
    const halfI = half[2 * i + k]!
    const halfJ = half[2 * j + k]!
    bent +=
      halfI * halfI * (straight * ((6 * alongI * alongI) / squared - 1) - 2 * slopeI * alongI) +
      halfJ * halfJ * (straight * ((6 * alongJ * alongJ) / squared - 1) - 2 * slopeJ * alongJ)
  }
  const seen = (straight + (2 * bent) / (3 * squared)) / (Math.PI * squared * squared)
  return Math.max(0, seen) * area[i]! * area[j]!
}

/** From points of patch i, the other one exact. */
const nearExchange = (
  layout: Layout,
  i: number,
  facingI: number,
  j: number,
  facingJ: number,
  whole: boolean,
  squared: number,
): number => {
  const { radius, area } = layout
  // Side by side they touch, and what is seen changes without bound along the edge.
  const points = squared < (radius[i]! + radius[j]!) ** 2 ? three : two
  let sum = 0
  for (const [s, weightS] of points)
    for (const [t, weightT] of points)
      sum += weightS * weightT * seenFrom(layout, i, facingI, s, t, j, facingJ, whole)
  return (sum * area[i]!) / Math.PI
}

/** Irradiance for radiance 1 of a place on patch i from one side of patch j. */
const seenFrom = (
  { at, normal, across, up, half }: Layout,
  i: number,
  facingI: number,
  s: number,
  t: number,
  j: number,
  facingJ: number,
  whole: boolean,
): number => {
  const p = 3 * i
  const q = 3 * j
  const u = s * half[2 * i]!
  const v = t * half[2 * i + 1]!
  const dx = at[p]! + u * across[p]! + v * up[p]! - at[q]!
  const dy = at[p + 1]! + u * across[p + 1]! + v * up[p + 1]! - at[q + 1]!
  const dz = at[p + 2]! + u * across[p + 2]! + v * up[p + 2]! - at[q + 2]!
  const z = facingJ * (dx * normal[q]! + dy * normal[q + 1]! + dz * normal[q + 2]!)
  if (z < touching) return 0
  const x = dx * across[q]! + dy * across[q + 1]! + dz * across[q + 2]!
  const y = dx * up[q]! + dy * up[q + 1]! + dz * up[q + 2]!
  const mx = facingI * normal[p]!
  const my = facingI * normal[p + 1]!
  const mz = facingI * normal[p + 2]!
  const nx = mx * across[q]! + my * across[q + 1]! + mz * across[q + 2]!
  const ny = mx * up[q]! + my * up[q + 1]! + mz * up[q + 2]!
  const nz = facingJ * (mx * normal[q]! + my * normal[q + 1]! + mz * normal[q + 2]!)
  const a = half[2 * j]!
  const b = half[2 * j + 1]!
  if (whole) return Math.max(0, rectangleIrradiance(a, b, x, y, z, nx, ny, nz))
  const seen = clipByHorizon([-a, -b, a, -b, a, b, -a, b], x, y, z, nx, ny, nz)
  return seen.length < 6 ? 0 : Math.max(0, contourIrradiance(seen, x, y, z, nx, ny, nz))
}
