/**
 * A convex body as one place sees it: a cone of directions d. It is bounded by planes through the place, m·d ≥ 0 within,
 * and where the body is rounded by parts of elliptic cones. So any front can be cut by it without projecting the body.
 */
import type { SolidBody } from '../../scene/scene.js'
import type { Vec3 } from '../../scene/vector.js'
import type { Blocker, Round } from './blockers.js'

export interface Silhouette {
  /** Three numbers a plane. */
  readonly planes: Float64Array
  readonly rings: readonly Ring[]
}

/**
 * Part of the cone that touches a rounded end. Within where p·d cos φ + q·d sin φ ≤ a·d, for each φ of the part; the
 * length of (p·d, q·d) against a·d is 1 on the whole cone.
 */
export interface Ring {
  readonly p: Vec3
  readonly q: Vec3
  readonly a: Vec3
  /** φ at the middle of the part, and how far it goes to either side of it. */
  readonly middle: number
  readonly half: number
}

/** Undefined where the body hides nothing: seen edge on, or from within. */
export const silhouetteOf = (blocker: Blocker, at: Vec3): Silhouette | undefined => {
  const { solid, round, sides, centre } = blocker
  if (round !== undefined) return ofRound(round, at)
  const { corners } = solid.body as Exclude<SolidBody, { shape: 'capsule' }>
  return sides === undefined ? ofFlat(corners, at) : ofHull(corners, sides, centre, at)
}

/** Of a flat convex polygon: a plane through each edge, all turned alike. */
export const ofFlat = (corners: readonly Vec3[], at: Vec3): Silhouette | undefined => {
  const count = corners.length
  if (count < 3) return undefined
  const planes = new Float64Array(3 * count)
  let turn = 0
  for (let i = 0; i < count; i++) {
    through(corners[i]!, corners[(i + 1) % count]!, at, planes, 3 * i)
    turn += seenFrom(planes, 3 * i, corners[(i + 2) % count]!, at)
  }
  if (Math.abs(turn) < 1e-15) return undefined
  if (turn < 0) for (let i = 0; i < planes.length; i++) planes[i] = -planes[i]!
  return { planes, rings: [] }
}

/** Edges between a side that is seen and one that is not. */
const ofHull = (
  corners: readonly Vec3[],
  sides: Float64Array,
  centre: Vec3,
  at: Vec3,
): Silhouette | undefined => {
  const count = corners.length / 2
  const seen = (side: number): boolean =>
    sides[4 * side]! * at[0] + sides[4 * side + 1]! * at[1] + sides[4 * side + 2]! * at[2] >
    sides[4 * side + 3]! + 1e-9
  const planes = new Float64Array(9 * count)
  let used = 0
  const edge = (a: Vec3, b: Vec3): void => {
    through(a, b, at, planes, used)
    if (seenFrom(planes, used, centre, at) < 0) for (let k = used; k < used + 3; k++) planes[k] = -planes[k]!
    used += 3
  }
  const front = seen(0)
  const back = seen(1)
  let strip = seen(2)
  for (let i = 0; i < count; i++) {
    const j = (i + 1) % count
    const next = seen(j + 2)
    if (front !== strip) edge(corners[i]!, corners[j]!)
    if (back !== strip) edge(corners[count + i]!, corners[count + j]!)
    if (next !== strip) edge(corners[j]!, corners[count + j]!)
    strip = next
  }
  return used === 0 ? undefined : { planes: planes.subarray(0, used), rings: [] }
}

/** The plane through a place and two corners. */
const through = (a: Vec3, b: Vec3, at: Vec3, planes: Float64Array, i: number): void => {
  const ax = a[0] - at[0]
  const ay = a[1] - at[1]
  const az = a[2] - at[2]
  const bx = b[0] - at[0]
  const by = b[1] - at[1]
  const bz = b[2] - at[2]
  planes[i] = ay * bz - az * by
  planes[i + 1] = az * bx - ax * bz
  planes[i + 2] = ax * by - ay * bx
}

const seenFrom = (planes: Float64Array, i: number, to: Vec3, at: Vec3): number =>
  planes[i]! * (to[0] - at[0]) + planes[i + 1]! * (to[1] - at[1]) + planes[i + 2]! * (to[2] - at[2])

/**
 * Where it is round, a capsule is two balls of radius 1 and all between. The cone that touches a ball does so where the
 * outward normal n has n·a = −1, a the way to its middle; of those the ball at the lower end bounds the whole where n
 * points down, the other where it points up, and where it points neither way a plane touches both.
 */
const ofRound = ({ rows, from, high }: Round, at: Vec3): Silhouette | undefined => {
  const dx = at[0] - from[0]
  const dy = at[1] - from[1]
  const dz = at[2] - from[2]
  const x = rows[0]! * dx + rows[1]! * dy + rows[2]! * dz
  const y = rows[3]! * dx + rows[4]! * dy + rows[5]! * dz
  const z = rows[6]! * dx + rows[7]! * dy + rows[8]! * dz
  const beyond = z < 0 ? z : z > high ? z - high : 0
  const flat = x * x + y * y
  if (flat + beyond * beyond <= 1 + 1e-9) return undefined
  const aside = Math.sqrt(flat)
  // Level directions: away from the axis, and square to that. Right over an end any will do.
  const [ox, oy] = aside > 1e-9 ? [x / aside, y / aside] : [1, 0]
  const carried = (u: number, v: number, w: number): Vec3 => [
    u * rows[0]! + v * rows[3]! + w * rows[6]!,
    u * rows[1]! + v * rows[4]! + w * rows[7]!,
    u * rows[2]! + v * rows[5]! + w * rows[8]!,
  ]
  const q = carried(-oy, ox, 0)
  const rings: Ring[] = []
  for (const end of [0, 1]) {
    // The way to the middle of the ball: `aside` toward the axis, `rise` up.
    const rise = end * high - z
    const square = flat + rise * rise
    const length = Math.sqrt(square)
    const tangent = Math.sqrt(Math.max(square - 1, 1e-18))
    // Of the ring's normals the cosine of φ at which they are level, φ counted from the uppermost.
    const level = rise === 0 ? 0 : rise / (tangent * aside)
    const edge = Math.acos(Math.min(1, Math.max(-1, level)))
    const half = end === 0 ? Math.PI - edge : edge
    if (half <= 0) continue
    rings.push({
      p: carried((rise / length) * ox, (rise / length) * oy, aside / length),
      q,
      a: carried(
        (-aside * ox) / (length * tangent),
        (-aside * oy) / (length * tangent),
        rise / (length * tangent),
      ),
      middle: end === 0 ? Math.PI : 0,
      half,
    })
  }
  return { planes: aside > 1 ? sidesOf(aside, ox, oy, carried) : new Float64Array(0), rings }
}

/** The two planes along its segment that touch both ends: level normals whose part along the way out is 1 / `aside`. */
const sidesOf = (
  aside: number,
  ox: number,
  oy: number,
  carried: (u: number, v: number, w: number) => Vec3,
): Float64Array => {
  const out = 1 / aside
  const over = Math.sqrt(Math.max(0, 1 - out * out))
  const planes = new Float64Array(6)
  planes.set(carried(-out * ox + over * oy, -out * oy - over * ox, 0), 0)
  planes.set(carried(-out * ox - over * oy, -out * oy + over * ox, 0), 3)
  return planes
}
