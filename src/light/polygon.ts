/**
 * Irradiance from a uniform Lambertian polygon, exact. Everything is computed on the polygon's own plane: corners are
 * (u, v) on it, the receptor stands at (x, y, z) with z > 0 in front, so that clipping is two-dimensional.
 *
 * Contour formula: Lambert, Photometria (1760), as restated in Stark, "Vertex-based formulations of irradiance from
 * polygonal sources"; the form from memory, held by tests against integration. Solid angle: van Oosterom and Strackee,
 * "The solid angle of a plane triangle", IEEE Trans. Biomed. Eng. 30 (1983), from memory likewise.
 */

/**
 * n·V: the component along (nx, ny, nz) of the polygon's vector irradiance for radiance 1, in sr·1 (lx per cd/m²).
 * Corners counter-clockwise seen from z > 0. Not clipped: what lies behind the receptor counts negative.
 */
export const contourIrradiance = (
  outline: readonly number[],
  x: number,
  y: number,
  z: number,
  nx: number,
  ny: number,
  nz: number,
): number => {
  const count = outline.length
  let sum = 0
  let ax = outline[count - 2]! - x
  let ay = outline[count - 1]! - y
  for (let i = 0; i < count; i += 2) {
    const bx = outline[i]! - x
    const by = outline[i + 1]! - y
    // b × a, with both at −z below the receptor: clockwise order, so that light from the front counts positive.
    const cx = z * (ay - by)
    const cy = z * (bx - ax)
    const cz = bx * ay - by * ax
    const sine = Math.sqrt(cx * cx + cy * cy + cz * cz)
    const cosine = ax * bx + ay * by + z * z
    // A receptor on the line of an edge sees no angle between its ends.
    if (sine > 1e-300) sum += ((nx * cx + ny * cy + nz * cz) * Math.atan2(sine, cosine)) / sine
    ax = bx
    ay = by
  }
  return sum / 2
}

/** Solid angle of a convex polygon seen from (x, y, z), sr. */
export const polygonSolidAngle = (outline: readonly number[], x: number, y: number, z: number): number => {
  const ax = outline[0]! - x
  const ay = outline[1]! - y
  const a = Math.sqrt(ax * ax + ay * ay + z * z)
  let bx = outline[2]! - x
  let by = outline[3]! - y
  let b = Math.sqrt(bx * bx + by * by + z * z)
  let sum = 0
  for (let i = 4; i < outline.length; i += 2) {
    const cx = outline[i]! - x
    const cy = outline[i + 1]! - y
    const c = Math.sqrt(cx * cx + cy * cy + z * z)
    const volume = z * ((bx - ax) * (cy - ay) - (by - ay) * (cx - ax))
    const spread =
      a * b * c +
      (ax * bx + ay * by + z * z) * c +
      (bx * cx + by * cy + z * z) * a +
      (cx * ax + cy * ay + z * z) * b
    sum += 2 * Math.atan2(volume, spread)
    bx = cx
    by = cy
    b = c
  }
  return Math.abs(sum)
}

/** The part of a convex polygon where f(u, v) = fu·u + fv·v + f0 ≥ 0; itself if that is all of it, empty if none. */
export const clipByLine = (
  outline: readonly number[],
  fu: number,
  fv: number,
  f0: number,
): readonly number[] => {
  const count = outline.length
  let above = 0
  for (let i = 0; i < count; i += 2) if (fu * outline[i]! + fv * outline[i + 1]! + f0 >= 0) above++
  if (above * 2 === count) return outline
  if (above === 0) return []
  const kept: number[] = []
  let au = outline[count - 2]!
  let av = outline[count - 1]!
  let fa = fu * au + fv * av + f0
  for (let i = 0; i < count; i += 2) {
    const bu = outline[i]!
    const bv = outline[i + 1]!
    const fb = fu * bu + fv * bv + f0
    if (fa >= 0 !== fb >= 0) {
      const share = fa / (fa - fb)
      kept.push(au + share * (bu - au), av + share * (bv - av))
    }
    if (fb >= 0) kept.push(bu, bv)
    au = bu
    av = bv
    fa = fb
  }
  return kept
}

/** The part of the outline over the horizon of a receptor at (x, y, z) with normal (nx, ny, nz). */
export const clipByHorizon = (
  outline: readonly number[],
  x: number,
  y: number,
  z: number,
  nx: number,
  ny: number,
  nz: number,
): readonly number[] => clipByLine(outline, nx, ny, -(nx * x + ny * y + nz * z))
