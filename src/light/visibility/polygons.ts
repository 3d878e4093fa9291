/** Convex polygons on a plane: u₀, v₀, u₁, v₁ …, counter-clockwise. */
import { clipByLine } from '../polygon.js'

export type Polygon = readonly number[]

export const areaOf = (polygon: Polygon): number => {
  let sum = 0
  for (let i = 0, j = polygon.length - 2; i < polygon.length; j = i, i += 2)
    sum += polygon[j]! * polygon[i + 1]! - polygon[i]! * polygon[j + 1]!
  return sum / 2
}

/** Keeps what lies to the left of the edge from a to b (`sign` 1) or to its right (−1). */
const besideEdge = (
  polygon: Polygon,
  au: number,
  av: number,
  bu: number,
  bv: number,
  sign: 1 | -1,
): Polygon =>
  clipByLine(polygon, -sign * (bv - av), sign * (bu - au), sign * ((bv - av) * au - (bu - au) * av))

/** What two have in common. */
export const meet = (a: Polygon, b: Polygon): Polygon => {
  let kept = a
  for (let i = 0, j = b.length - 2; i < b.length && kept.length >= 6; j = i, i += 2)
    kept = besideEdge(kept, b[j]!, b[j + 1]!, b[i]!, b[i + 1]!, 1)
  return kept
}

/** Parts smaller than this share of what they are cut from are slivers of rounding. */
const sliver = 1e-9

/** The first without the second, as convex parts. */
export const less = (a: Polygon, b: Polygon): readonly Polygon[] => {
  if (a === b) return []
  if (apart(a, b)) return [a]
  const least = sliver * areaOf(a)
  const parts: Polygon[] = []
  let left = a
  for (let i = 0, j = b.length - 2; i < b.length; j = i, i += 2) {
    const outside = besideEdge(left, b[j]!, b[j + 1]!, b[i]!, b[i + 1]!, -1)
    if (outside.length < 6) continue
    // They have nothing in common after all.
    if (outside === left) return [a]
    if (areaOf(outside) > least) parts.push(outside)
    left = besideEdge(left, b[j]!, b[j + 1]!, b[i]!, b[i + 1]!, 1)
    if (left.length < 6) return [a]
  }
  return parts
}

/** Some parts without all of several polygons. */
export const lessAll = (parts: readonly Polygon[], holes: readonly Polygon[]): readonly Polygon[] => {
  let left = parts
  for (const hole of holes) {
    if (left.length === 0) break
    const next: Polygon[] = []
    for (const one of left) for (const rest of less(one, hole)) next.push(rest)
    left = next
  }
  return left
}

/** What several cover together, as convex parts that do not overlap. */
export const union = (polygons: readonly Polygon[]): readonly Polygon[] =>
  polygons.length < 2 ? polygons : polygons.flatMap((one, i) => lessAll([one], polygons.slice(0, i)))

/** The largest first, so that those in front of the same part are soon done with. */
export const largestFirst = (polygons: readonly Polygon[]): readonly Polygon[] =>
  polygons.length < 2 ? polygons : [...polygons].sort((a, b) => areaOf(b) - areaOf(a))

/** Told by their extent along u and v alone. */
export const apart = (a: Polygon, b: Polygon): boolean => {
  for (let k = 0; k < 2; k++) {
    let aLow = a[k]!
    let aHigh = aLow
    let bLow = b[k]!
    let bHigh = bLow
    for (let i = k + 2; i < a.length; i += 2) {
      aLow = Math.min(aLow, a[i]!)
      aHigh = Math.max(aHigh, a[i]!)
    }
    for (let i = k + 2; i < b.length; i += 2) {
      bLow = Math.min(bLow, b[i]!)
      bHigh = Math.max(bHigh, b[i]!)
    }
    if (aHigh <= bLow || bHigh <= aLow) return true
  }
  return false
}
