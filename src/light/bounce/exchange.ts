/**
 * How much two sides of cells see of each other with nothing between: A·F, in m², the same both ways.
 *
 * Far apart, the point formula with its second-order terms; near, the contour formula from several points of the smaller
 * one, cut at their horizon.
 */
import { clipByHorizon, contourIrradiance } from '../polygon.js'
import { type Layout, reachAlong } from './layout.js'
import { rectangleIrradiance } from './rectangle.js'

/** Point formula up to this nearness. */
const near = 0.85
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

/** Two sides of cells as they stand to each other. One object serves many pairs, one after the other. */
export class Pair {
  /** Their radii together against their distance. */
  nearness = 0
  /** No less than the share of the smaller one's view that the larger fills. */
  most = 0
  private i = 0
  private j = 0
  private facingI = 1
  private facingJ = 1
  private dx = 0
  private dy = 0
  private dz = 0
  private squared = 0
  /** How far the middle of each lies before the other's plane. */
  private out = 0
  private back = 0
  /** Neither reaches behind the other's plane. */
  private whole = true

  constructor(private readonly layout: Layout) {}

  /**
   * False where they do not face each other.
   *
   * @param facingI 1 for the front of cell i, −1 for its back; `facingJ` likewise.
   */
  take(i: number, facingI: number, j: number, facingJ: number): boolean {
    const { layout } = this
    const { at, normal, radius, area } = layout
    const p = 3 * i
    const q = 3 * j
    const dx = at[q]! - at[p]!
    const dy = at[q + 1]! - at[p + 1]!
    const dz = at[q + 2]! - at[p + 2]!
    const out = facingI * (normal[p]! * dx + normal[p + 1]! * dy + normal[p + 2]! * dz)
    if (out <= -radius[j]!) return false
    const back = -facingJ * (normal[q]! * dx + normal[q + 1]! * dy + normal[q + 2]! * dz)
    if (back <= -radius[i]!) return false
    const reachI = reachAlong(layout, i, normal[q]!, normal[q + 1]!, normal[q + 2]!)
    const reachJ = reachAlong(layout, j, normal[p]!, normal[p + 1]!, normal[p + 2]!)
    if (out <= touching - reachJ || back <= touching - reachI) return false
    this.i = i
    this.j = j
    this.facingI = facingI
    this.facingJ = facingJ
    this.dx = dx
    this.dy = dy
    this.dz = dz
    this.out = out
    this.back = back
    this.whole = out >= reachJ - touching && back >= reachI - touching
    const squared = dx * dx + dy * dy + dz * dz
    this.squared = squared
    const distance = Math.sqrt(squared)
    this.nearness = (radius[i]! + radius[j]!) / distance
    const cosines = Math.min(1, (out + reachJ) / distance) * Math.min(1, (back + reachI) / distance)
    this.most = Math.min(1, (cosines * Math.max(area[i]!, area[j]!)) / (Math.PI * squared))
    return true
  }

  /** With nothing between. */
  exchange(): number {
    const { layout, i, j, facingI, facingJ, out, back, squared, whole } = this
    const { radius, area, half } = layout
    if (!whole || this.nearness > near) {
      // From points of the smaller one; of two alike, told by how they stand and not by which comes first.
      const bySize = radius[i]! - radius[j]!
      const fromJ = Math.abs(bySize) > 1e-9 * radius[i]! ? bySize > 0 : back > out * (1 + 1e-9)
      return fromJ
        ? nearExchange(layout, j, facingJ, i, facingI, whole, squared)
        : nearExchange(layout, i, facingI, j, facingJ, whole, squared)
    }
    const straight = out * back
    // Second derivatives of cos·cos/r² along each cell's own axes, times a third of half its length squared, halved.
    let bent = 0
    for (let axis = 0; axis < 2; axis++) {
      const alongI = this.along(axis, i)
      const slopeI = -facingJ * this.leaning(axis, i, j) * out
      const alongJ = this.along(axis, j)
      const slopeJ = facingI * this.leaning(axis, j, i) * back
      const halfI = half[2 * i + axis]!
      const halfJ = half[2 * j + axis]!
      bent +=
        halfI * halfI * (straight * ((6 * alongI * alongI) / squared - 1) - 2 * slopeI * alongI) +
        halfJ * halfJ * (straight * ((6 * alongJ * alongJ) / squared - 1) - 2 * slopeJ * alongJ)
    }
    const seen = (straight + (2 * bent) / (3 * squared)) / (Math.PI * squared * squared)
    return Math.max(0, seen) * area[i]! * area[j]!
  }

  /**
   * First derivatives of ln(cos·cos/r²) along the axes of i and of j, per metre.
   *
   * @param grows what is added to each, from the middle of a cell to its end
   */
  slopes(grows: Float64Array, into: Float64Array, first: number): void {
    const { i, j, facingI, facingJ, squared } = this
    const { half } = this.layout
    const least = 1e-3 * Math.sqrt(squared)
    const out = Math.max(this.out, least)
    const back = Math.max(this.back, least)
    for (let axis = 0; axis < 2; axis++) {
      const ofI = (facingJ * this.leaning(axis, i, j)) / back + (4 * this.along(axis, i)) / squared
      const ofJ = (facingI * this.leaning(axis, j, i)) / out - (4 * this.along(axis, j)) / squared
      into[first + axis] = gentle(ofI, half[2 * i + axis]!, grows[axis]!)
      into[first + 2 + axis] = gentle(ofJ, half[2 * j + axis]!, grows[2 + axis]!)
    }
  }

  /** How far j lies from i along an axis of a cell. */
  private along(axis: number, cell: number): number {
    const axes = axis === 0 ? this.layout.across : this.layout.up
    const k = 3 * cell
    return axes[k]! * this.dx + axes[k + 1]! * this.dy + axes[k + 2]! * this.dz
  }

  /** An axis of a cell along the normal of another. */
  private leaning(axis: number, cell: number, other: number): number {
    const { across, up, normal } = this.layout
    const axes = axis === 0 ? across : up
    const k = 3 * cell
    const l = 3 * other
    return axes[k]! * normal[l]! + axes[k + 1]! * normal[l + 1]! + axes[k + 2]! * normal[l + 2]!
  }
}

/** At no end of a cell does the exchange fall by more than this share, along either axis. */
const steepest = 0.5

const gentle = (slope: number, reach: number, grown: number): number =>
  Math.min(steepest, Math.max(-steepest, slope * reach + grown)) / reach

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
