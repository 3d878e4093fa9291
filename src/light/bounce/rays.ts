/** Where straight lines meet obstacles. Nothing is allocated for a line. */
import { rayMeets } from '../../scene/ray.js'
import type { Obstacle } from './obstacles.js'

/** Of the way from one end to the other: what stands nearer to an end than this is that end itself. */
export const ends = 1e-5

/** What `cast` found: nothing in the way; or else 1, and `endsBlack` where the line ends on a black thing. */
export const clear = 0
export const endsBlack = 2

/** What a line from one place to another meets first, of the first `count` of a list. */
export const cast = (
  list: readonly Obstacle[],
  count: number,
  ax: number,
  ay: number,
  az: number,
  bx: number,
  by: number,
  bz: number,
): number => {
  const dx = bx - ax
  const dy = by - ay
  const dz = bz - az
  const square = dx * dx + dy * dy + dz * dz
  let first = Number.POSITIVE_INFINITY
  let isLost = false
  for (let k = 0; k < count; k++) {
    const one = list[k]!
    // A plate is told faster than the ball around it.
    if (one.kind !== 'plate' && !nearBall(one, ax, ay, az, dx, dy, dz, square)) continue
    const t = meets(one, ax, ay, az, dx, dy, dz)
    if (!(t > ends && t < 1 - ends && t < first)) continue
    first = t
    isLost = true
    if (one.givesFront || one.givesBack) {
      const { numbers } = one
      const toFront = numbers[3]! * dx + numbers[4]! * dy + numbers[5]! * dz < 0
      isLost = !(toFront ? one.givesFront : one.givesBack)
    }
  }
  return first > 1 ? clear : isLost ? 1 | endsBlack : 1
}

/** True where anything stands between two places, of the first `count` of a list. */
export const blocked = (
  list: readonly Obstacle[],
  count: number,
  ax: number,
  ay: number,
  az: number,
  bx: number,
  by: number,
  bz: number,
): boolean => {
  const dx = bx - ax
  const dy = by - ay
  const dz = bz - az
  const square = dx * dx + dy * dy + dz * dz
  for (let k = 0; k < count; k++) {
    const one = list[k]!
    if (one.kind !== 'plate' && !nearBall(one, ax, ay, az, dx, dy, dz, square)) continue
    const t = meets(one, ax, ay, az, dx, dy, dz)
    if (t > ends && t < 1 - ends) return true
  }
  return false
}

/** Whether a line comes near the ball around an obstacle: most lines do not, and it is told fast. */
export const nearBall = (
  one: Obstacle,
  ax: number,
  ay: number,
  az: number,
  dx: number,
  dy: number,
  dz: number,
  square: number,
): boolean => {
  const cx = one.x - ax
  const cy = one.y - ay
  const cz = one.z - az
  const near = Math.min(1, Math.max(0, (cx * dx + cy * dy + cz * dz) / square))
  const ox = cx - near * dx
  const oy = cy - near * dy
  const oz = cz - near * dz
  return ox * ox + oy * oy + oz * oz <= one.radius * one.radius
}

/** Where the ray enters it, in lengths of the direction; infinite where it does not, or starts inside. */
export const meets = (
  one: Obstacle,
  ax: number,
  ay: number,
  az: number,
  dx: number,
  dy: number,
  dz: number,
): number => {
  const n = one.numbers
  if (one.kind === 'plate') {
    const slope = n[3]! * dx + n[4]! * dy + n[5]! * dz
    if (slope === 0) return Number.POSITIVE_INFINITY
    const x = n[0]! - ax
    const y = n[1]! - ay
    const z = n[2]! - az
    const t = (n[3]! * x + n[4]! * y + n[5]! * z) / slope
    const px = t * dx - x
    const py = t * dy - y
    const pz = t * dz - z
    const u = n[6]! * px + n[7]! * py + n[8]! * pz
    const v = n[9]! * px + n[10]! * py + n[11]! * pz
    return u <= 1 && u >= -1 && v <= 1 && v >= -1 ? t : Number.POSITIVE_INFINITY
  }
  if (one.kind === 'capsule') return meetsCapsule(n, ax, ay, az, dx, dy, dz)
  if (one.kind === 'hull') return meetsHull(n, ax, ay, az, dx, dy, dz)
  const hit = rayMeets(one.blocker.solid.body, [ax, ay, az], [dx, dy, dz])
  return hit === undefined ? Number.POSITIVE_INFINITY : hit.t
}

const meetsHull = (
  n: Float64Array,
  ax: number,
  ay: number,
  az: number,
  dx: number,
  dy: number,
  dz: number,
): number => {
  let enters = Number.NEGATIVE_INFINITY
  let leaves = Number.POSITIVE_INFINITY
  for (let k = 0; k < n.length; k += 4) {
    const outside = n[k]! * ax + n[k + 1]! * ay + n[k + 2]! * az - n[k + 3]!
    const slope = n[k]! * dx + n[k + 1]! * dy + n[k + 2]! * dz
    if (slope === 0) {
      if (outside > 0) return Number.POSITIVE_INFINITY
    } else if (slope < 0) {
      if (-outside > enters * slope) continue
      enters = -outside / slope
    } else if (-outside < leaves * slope) leaves = -outside / slope
    if (enters >= leaves) return Number.POSITIVE_INFINITY
  }
  return enters > 0 ? enters : Number.POSITIVE_INFINITY
}

const meetsCapsule = (
  n: Float64Array,
  ax: number,
  ay: number,
  az: number,
  dx: number,
  dy: number,
  dz: number,
): number => {
  const fx = ax - n[0]!
  const fy = ay - n[1]!
  const fz = az - n[2]!
  return entersCapsule(
    n[3]! * fx + n[4]! * fy + n[5]! * fz,
    n[6]! * fx + n[7]! * fy + n[8]! * fz,
    n[9]! * fx + n[10]! * fy + n[11]! * fz,
    n[3]! * dx + n[4]! * dy + n[5]! * dz,
    n[6]! * dx + n[7]! * dy + n[8]! * dz,
    n[9]! * dx + n[10]! * dy + n[11]! * dz,
    n[12]!,
  )
}

/** The same in the space where a capsule is round about the upright from 0 to `high`. */
export const entersCapsule = (
  x: number,
  y: number,
  z: number,
  ex: number,
  ey: number,
  ez: number,
  high: number,
): number => {
  const across = ex * ex + ey * ey
  const beside = x * ex + y * ey
  // By its sides, where the ray enters the endless tube between the two ends; else only by the ball at the end it comes from.
  let atEntry = ez > 0 ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY
  if (across > 1e-18) {
    const under = beside * beside - across * (x * x + y * y - 1)
    if (under <= 0) return Number.POSITIVE_INFINITY
    const t = (-beside - Math.sqrt(under)) / across
    atEntry = z + t * ez
    if (atEntry >= 0 && atEntry <= high) return t > 0 ? t : Number.POSITIVE_INFINITY
  }
  const w = atEntry < 0 ? z : z - high
  const all = across + ez * ez
  const half = beside + w * ez
  const under = half * half - all * (x * x + y * y + w * w - 1)
  if (under <= 0) return Number.POSITIVE_INFINITY
  const t = (-half - Math.sqrt(under)) / all
  return t > 0 ? t : Number.POSITIVE_INFINITY
}
