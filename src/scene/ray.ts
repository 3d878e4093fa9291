/**
 * Where a ray meets what stands in the set. Distances are in lengths of the direction, which need not be of unit length;
 * Infinity is nowhere. Thousands of rays ask: what they need of a body is laid out once, and the normal is worked out
 * only of what is met.
 */
import { roundOf } from './capsule.js'
import { lazyOf } from './lazy.js'
import type { Capsule, Face, SolidBody } from './scene.js'
import { add, dot, scale, subtract, unit, type Vec3 } from './vector.js'

export interface RayHit {
  /** Along the direction; positive. */
  readonly t: number
  /** Unit, toward where the ray came from. */
  readonly normal: Vec3
}

/** Nearer than this the ray starts on the thing. */
const least = 1e-9
const nowhere = Number.POSITIVE_INFINITY

export const rayMeets = (body: SolidBody, from: Vec3, direction: Vec3): RayHit | undefined => {
  if (body.shape === 'plate') return rayMeetsFace(body.face, from, direction)
  const t = rayReaches(body, from, direction)
  if (t === nowhere) return undefined
  const normal =
    body.shape === 'capsule'
      ? capsuleNormal(body.capsule, add(from, scale(direction, t)))
      : hullNormal(body.corners, t, from, direction)
  return { t, normal }
}

export const rayReaches = (body: SolidBody, from: Vec3, direction: Vec3): number => {
  switch (body.shape) {
    case 'capsule':
      return rayReachesCapsule(body.capsule, from, direction)
    case 'plate':
      return rayReachesFace(body.face, from, direction)
    case 'hull':
      return rayReachesHull(body.corners, from, direction)
  }
}

// ---------------------------------------------------------------- flat fronts and plates

/** A flat front or plate, from either side. */
export const rayMeetsFace = (face: Face, from: Vec3, direction: Vec3): RayHit | undefined => {
  const t = rayReachesFace(face, from, direction)
  return t === nowhere ? undefined : { t, normal: against(face.normal, direction) }
}

export const rayReachesFace = (face: Face, from: Vec3, direction: Vec3): number => {
  const { normal, centre, across, up } = face
  const toward = dot(direction, normal)
  if (Math.abs(toward) < 1e-12) return nowhere
  const x = from[0] - centre[0]
  const y = from[1] - centre[1]
  const z = from[2] - centre[2]
  const t = -(x * normal[0] + y * normal[1] + z * normal[2]) / toward
  if (t <= least) return nowhere
  const u =
    (Math.abs(x * across[0] + y * across[1] + z * across[2] + t * dot(direction, across)) * 2) / face.width
  // Of no width, it is never met: 0 / 0 is no share.
  if (!(u <= 1)) return nowhere
  const v = (Math.abs(x * up[0] + y * up[1] + z * up[2] + t * dot(direction, up)) * 2) / face.height
  const inside =
    face.outline === 'rectangle'
      ? v <= 1
      : face.outline === 'octagon'
        ? insideOctagon(u, v)
        : u * u + v * v <= 1
  return inside ? t : nowhere
}

/** Metres by which a ray passes outside the outline in its plane, 0 or less inside; Infinity where it does not come to the plane. */
export const outsideFace = (face: Face, from: Vec3, direction: Vec3): number => {
  const { normal, centre, across, up, width, height, outline } = face
  const toward = dot(direction, normal)
  const from0 = subtract(from, centre)
  const t = -dot(from0, normal) / toward
  if (Math.abs(toward) < 1e-12 || t <= least) return nowhere
  const at = add(from0, scale(direction, t))
  const [x, y] = [Math.abs(dot(at, across)), Math.abs(dot(at, up))]
  if (outline === 'rectangle') return Math.max(x - width / 2, y - height / 2)
  const [u, v] = [(2 * x) / width, (2 * y) / height]
  const over =
    outline === 'octagon' ? Math.max(u, v, (u + v) * Math.SQRT1_2) - octagonEdge : Math.hypot(u, v) - 1
  return (over * Math.min(width, height)) / 2
}

const against = (normal: Vec3, direction: Vec3): Vec3 =>
  dot(normal, direction) > 0 ? scale(normal, -1) : normal

/** Tip to tip 2, corners half a step off the axes. */
const octagonEdge = Math.cos(Math.PI / 8)
const insideOctagon = (u: number, v: number): boolean =>
  u <= octagonEdge && v <= octagonEdge && (u + v) * Math.SQRT1_2 <= octagonEdge

// ---------------------------------------------------------------- capsules

/** The root nearer to the start of a·t² + 2·b·t + c = 0 that lies ahead; c > 0 outside. */
const entering = (a: number, b: number, c: number): number => {
  const square = b * b - a * c
  if (a <= 0 || square < 0) return nowhere
  const t = (-b - Math.sqrt(square)) / a
  return t > least ? t : nowhere
}

const rayReachesCapsule = (capsule: Capsule, from: Vec3, direction: Vec3): number => {
  const { from: foot, x, y, z, high } = roundOf(capsule)
  const dx = from[0] - foot[0]
  const dy = from[1] - foot[1]
  const dz = from[2] - foot[2]
  const px = dx * x[0] + dy * x[1] + dz * x[2]
  const py = dx * y[0] + dy * y[1] + dz * y[2]
  const pz = dx * z[0] + dy * z[1] + dz * z[2]
  const flat = px * px + py * py
  // A ray that starts inside meets nothing: what holds its start does not hide what lies around it.
  const beyond = pz < 0 ? pz : pz > high ? pz - high : 0
  if (flat + beyond * beyond < 1) return nowhere
  const wx = dot(direction, x)
  const wy = dot(direction, y)
  const wz = dot(direction, z)
  const across = px * wx + py * wy
  const side = entering(wx * wx + wy * wy, across, flat - 1)
  const at = pz + side * wz
  let best = at >= 0 && at <= high ? side : nowhere
  const square = wx * wx + wy * wy + wz * wz
  for (let end = 0; end < 2; end++) {
    const away = end === 0 ? pz : pz - high
    const t = entering(square, across + away * wz, flat + away * away - 1)
    if (t < best) best = t
  }
  return best
}

/** The gradient of the round surface, carried back by the inverse transpose of the map. */
const capsuleNormal = (capsule: Capsule, at: Vec3): Vec3 => {
  const { from, x, y, z, high } = roundOf(capsule)
  const d = subtract(at, from)
  const along = dot(d, z)
  const beyond = along - Math.min(high, Math.max(0, along))
  return unit(add(add(scale(x, dot(d, x)), scale(y, dot(d, y))), scale(z, beyond)))
}

// ---------------------------------------------------------------- hulls

/** Numbers of a triangle: a corner, and from it to the two others. */
const perTriangle = 9

/**
 * A hull of two like rings of corners, front and back, as modifiers are built: its front, its back and the flat strips
 * between. Each strip is cut by the two corners of either ring.
 */
const trianglesOf = lazyOf((corners: readonly Vec3[]): Float64Array => {
  const numbers: number[] = []
  const put = (a: Vec3, b: Vec3, c: Vec3) => numbers.push(...a, ...subtract(b, a), ...subtract(c, a))
  const count = corners.length / 2
  for (let i = 0; i < count; i++) {
    const j = (i + 1) % count
    const [a, b, c, d] = [corners[i]!, corners[j]!, corners[count + i]!, corners[count + j]!]
    put(a, b, c)
    put(b, d, c)
    if (i > 1) {
      put(corners[0]!, corners[i - 1]!, a)
      put(corners[count]!, corners[count + i - 1]!, c)
    }
  }
  return Float64Array.from(numbers)
})

const rayReachesHull = (corners: readonly Vec3[], from: Vec3, direction: Vec3): number => {
  const triangles = trianglesOf(corners)
  let best = nowhere
  for (let k = 0; k < triangles.length; k += perTriangle)
    best = Math.min(best, rayReachesTriangle(triangles, k, from, direction))
  return best
}

const hullNormal = (corners: readonly Vec3[], t: number, from: Vec3, direction: Vec3): Vec3 => {
  const n = trianglesOf(corners)
  let k = 0
  while (rayReachesTriangle(n, k, from, direction) !== t) k += perTriangle
  const [bx, by, bz, cx, cy, cz] = n.subarray(k + 3, k + perTriangle) as unknown as Six
  return against(unit([by * cz - bz * cy, bz * cx - bx * cz, bx * cy - by * cx]), direction)
}
type Six = readonly [number, number, number, number, number, number]

/** Möller and Trumbore, "Fast, minimum storage ray/triangle intersection" (1997); from memory, held by tests. */
const rayReachesTriangle = (n: Float64Array, k: number, from: Vec3, direction: Vec3): number => {
  const [dx, dy, dz] = direction
  const bx = n[k + 3]!
  const by = n[k + 4]!
  const bz = n[k + 5]!
  const cx = n[k + 6]!
  const cy = n[k + 7]!
  const cz = n[k + 8]!
  const px = dy * cz - dz * cy
  const py = dz * cx - dx * cz
  const pz = dx * cy - dy * cx
  const volume = bx * px + by * py + bz * pz
  if (Math.abs(volume) < 1e-15) return nowhere
  const x = from[0] - n[k]!
  const y = from[1] - n[k + 1]!
  const z = from[2] - n[k + 2]!
  const u = (x * px + y * py + z * pz) / volume
  if (u < -1e-9 || u > 1 + 1e-9) return nowhere
  const qx = y * bz - z * by
  const qy = z * bx - x * bz
  const qz = x * by - y * bx
  const v = (dx * qx + dy * qy + dz * qz) / volume
  const t = (cx * qx + cy * qy + cz * qz) / volume
  return v < -1e-9 || u + v > 1 + 1e-9 || t <= least ? nowhere : t
}
