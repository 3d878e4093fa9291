/**
 * Irradiance from a uniform Lambertian rectangle, exact: as `polygon.ts` does it for any outline, but lean. The
 * rectangle reaches a to either side and b up and down from its middle; the receptor stands at (x, y, z), z > 0, on the
 * rectangle's own axes.
 *
 * Contour formula as in `polygon.ts`; the angle between two points of a straight edge and the solid angle of a
 * rectangle from its four corners follow from it and from elementary geometry. Held by tests against integration.
 */

/** The angle that an edge from `from` to `to` fills, seen from a point `away` off its line. */
const angle = (from: number, to: number, away: number): number =>
  Math.atan2((to - from) * away, from * to + away * away)

/** The component along (nx, ny, nz) of the vector irradiance for radiance 1. What lies behind the receptor counts negative. */
export const rectangleIrradiance = (
  a: number,
  b: number,
  x: number,
  y: number,
  z: number,
  nx: number,
  ny: number,
  nz: number,
): number => {
  const left = -a - x
  const right = a - x
  const low = -b - y
  const high = b - y
  const zz = z * z
  const toLow = Math.sqrt(low * low + zz)
  const toHigh = Math.sqrt(high * high + zz)
  const toLeft = Math.sqrt(left * left + zz)
  const toRight = Math.sqrt(right * right + zz)
  const alongLow = angle(left, right, toLow) / toLow
  const alongHigh = angle(left, right, toHigh) / toHigh
  const alongLeft = angle(low, high, toLeft) / toLeft
  const alongRight = angle(low, high, toRight) / toRight
  return (
    (nx * z * (alongLeft - alongRight) +
      ny * z * (alongLow - alongHigh) +
      nz * (low * alongLow - high * alongHigh + left * alongLeft - right * alongRight)) /
    2
  )
}

/** Solid angle, sr. */
export const rectangleSolidAngle = (a: number, b: number, x: number, y: number, z: number): number => {
  const left = -a - x
  const right = a - x
  const low = -b - y
  const high = b - y
  return corner(right, high, z) - corner(left, high, z) - corner(right, low, z) + corner(left, low, z)
}

const corner = (x: number, y: number, z: number): number =>
  Math.atan((x * y) / (z * Math.sqrt(x * x + y * y + z * z)))
