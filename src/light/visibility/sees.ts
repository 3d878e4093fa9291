/** Straight lines of sight past the blockers. Nothing is allocated for a line. */
import type { Face } from '../../scene/scene.js'
import type { Vec3 } from '../../scene/vector.js'
import type { Blocker, Round } from './blockers.js'
import type { Outlook } from './outlook.js'

/** Of the way from one end to the other: what stands nearer to an end than this is that end itself. */
const ends = 1e-4

/** True where nothing stands between two places, their own surfaces apart. What holds its start does not count. */
export const clearBetween = (blockers: readonly Blocker[], a: Vec3, b: Vec3): boolean => {
  const wx = b[0] - a[0]
  const wy = b[1] - a[1]
  const wz = b[2] - a[2]
  const square = wx * wx + wy * wy + wz * wz || 1
  for (let i = 0; i < blockers.length; i++) {
    const { centre, radius, round, sides, solid } = blockers[i]!
    const cx = centre[0] - a[0]
    const cy = centre[1] - a[1]
    const cz = centre[2] - a[2]
    const nearest = Math.min(1, Math.max(0, (cx * wx + cy * wy + cz * wz) / square))
    const dx = cx - nearest * wx
    const dy = cy - nearest * wy
    const dz = cz - nearest * wz
    if (dx * dx + dy * dy + dz * dz > radius * radius) continue
    const t =
      round !== undefined
        ? toRound(round, a, wx, wy, wz)
        : sides !== undefined
          ? toHull(sides, a, wx, wy, wz)
          : solid.body.shape === 'plate'
            ? toRectangle(solid.body.face, a, wx, wy, wz)
            : -1
    if (t > ends && t < 1 - ends) return false
  }
  return true
}

/** True where nothing stands between the receptor and the place. What the receptor lies on or is held against hides what lies behind it. */
export const sees = ({ receptor, blockers }: Outlook, to: Vec3): boolean => {
  const { at, against } = receptor
  if (
    against !== undefined &&
    (to[0] - at[0]) * against[0] + (to[1] - at[1]) * against[1] + (to[2] - at[2]) * against[2] <= 0
  )
    return false
  return clearBetween(blockers, at, to)
}

// Share of the way at which it is entered; −1 where it is not.

const toRectangle = (
  { centre, normal, across, up, width, height }: Face,
  a: Vec3,
  wx: number,
  wy: number,
  wz: number,
): number => {
  const x = a[0] - centre[0]
  const y = a[1] - centre[1]
  const z = a[2] - centre[2]
  const t =
    -(x * normal[0] + y * normal[1] + z * normal[2]) / (wx * normal[0] + wy * normal[1] + wz * normal[2])
  // Alongside it this is not a number, or has no end.
  if (!(t > 0 && t < 1)) return -1
  const px = x + t * wx
  const py = y + t * wy
  const pz = z + t * wz
  return 2 * Math.abs(px * across[0] + py * across[1] + pz * across[2]) <= width &&
    2 * Math.abs(px * up[0] + py * up[1] + pz * up[2]) <= height
    ? t
    : -1
}

const toHull = (sides: Float64Array, a: Vec3, wx: number, wy: number, wz: number): number => {
  let enters = -1
  let leaves = Number.POSITIVE_INFINITY
  for (let i = 0; i < sides.length; i += 4) {
    const x = sides[i]!
    const y = sides[i + 1]!
    const z = sides[i + 2]!
    const outside = a[0] * x + a[1] * y + a[2] * z - sides[i + 3]!
    const slope = wx * x + wy * y + wz * z
    if (slope === 0) {
      if (outside > 0) return -1
    } else if (slope < 0) enters = Math.max(enters, -outside / slope)
    else leaves = Math.min(leaves, -outside / slope)
  }
  return enters < leaves ? enters : -1
}

const toRound = ({ from, rows, high }: Round, a: Vec3, wx: number, wy: number, wz: number): number => {
  const fx = a[0] - from[0]
  const fy = a[1] - from[1]
  const fz = a[2] - from[2]
  const x = rows[0]! * fx + rows[1]! * fy + rows[2]! * fz
  const y = rows[3]! * fx + rows[4]! * fy + rows[5]! * fz
  const z = rows[6]! * fx + rows[7]! * fy + rows[8]! * fz
  const beyond = z < 0 ? z : z > high ? z - high : 0
  const outside = x * x + y * y - 1
  if (outside + beyond * beyond < 0) return -1
  const ex = rows[0]! * wx + rows[1]! * wy + rows[2]! * wz
  const ey = rows[3]! * wx + rows[4]! * wy + rows[5]! * wz
  const ez = rows[6]! * wx + rows[7]! * wy + rows[8]! * wz
  // It enters by the coat, or else by the ball of the end beyond which it enters the endless cylinder.
  const across = ex * ex + ey * ey
  let upper = ez < 0
  if (across > 1e-18) {
    const half = x * ex + y * ey
    const under = half * half - across * outside
    if (under < 0) return -1
    const t = (-half - Math.sqrt(under)) / across
    const entry = z + t * ez
    if (entry >= 0 && entry <= high) return t
    upper = entry > high
  }
  const rise = upper ? z - high : z
  const all = across + ez * ez
  const half = x * ex + y * ey + rise * ez
  const under = half * half - all * (outside + rise * rise)
  return under < 0 ? -1 : (-half - Math.sqrt(under)) / all
}
