/** Where a ray meets what stands in the set. Distances are in lengths of the direction, which need not be of unit length. */
import { capsuleAxes } from './capsule.js'
import type { Capsule, Face, SolidBody } from './scene.js'
import { add, cross, dot, scale, subtract, unit, type Vec3 } from './vector.js'

export interface RayHit {
  /** Along the direction; positive. */
  readonly t: number
  /** Unit, toward where the ray came from. */
  readonly normal: Vec3
}

/** Nearer than this the ray starts on the thing. */
const least = 1e-9

export const rayMeets = (body: SolidBody, from: Vec3, direction: Vec3): RayHit | undefined => {
  switch (body.shape) {
    case 'capsule':
      return rayMeetsCapsule(body.capsule, from, direction)
    case 'plate':
      return rayMeetsFace(body.face, from, direction)
    case 'hull':
      return rayMeetsHull(body.corners, from, direction)
  }
}

const against = (normal: Vec3, direction: Vec3): Vec3 =>
  dot(normal, direction) > 0 ? scale(normal, -1) : normal

/** A flat front or plate, from either side. */
export const rayMeetsFace = (face: Face, from: Vec3, direction: Vec3): RayHit | undefined => {
  const toward = dot(direction, face.normal)
  if (Math.abs(toward) < 1e-12) return undefined
  const t = dot(subtract(face.centre, from), face.normal) / toward
  if (t <= least) return undefined
  const at = subtract(add(from, scale(direction, t)), face.centre)
  const u = (2 * dot(at, face.across)) / face.width
  const v = (2 * dot(at, face.up)) / face.height
  const inside =
    face.outline === 'rectangle'
      ? Math.abs(u) <= 1 && Math.abs(v) <= 1
      : face.outline === 'octagon'
        ? insideOctagon(Math.abs(u), Math.abs(v))
        : u * u + v * v <= 1
  return inside ? { t, normal: against(face.normal, direction) } : undefined
}

/** Tip to tip 2, corners half a step off the axes. */
const insideOctagon = (u: number, v: number): boolean => {
  const edge = Math.cos(Math.PI / 8)
  return u <= edge && v <= edge && (u + v) * Math.SQRT1_2 <= edge
}

/** The root nearer to the start of a·t² + 2·b·t + c = 0 that lies ahead; c > 0 outside. */
const entering = (a: number, b: number, c: number): number | undefined => {
  const square = b * b - a * c
  if (a <= 0 || square < 0) return undefined
  const t = (-b - Math.sqrt(square)) / a
  return t > least ? t : undefined
}

const rayMeetsCapsule = (capsule: Capsule, from: Vec3, direction: Vec3): RayHit | undefined => {
  const { across, along, axis } = capsuleAxes(capsule)
  const d = subtract(from, capsule.from)
  const p: Vec3 = [dot(d, across) / capsule.across, dot(d, along) / capsule.along, dot(d, axis) / capsule.cap]
  const w: Vec3 = [
    dot(direction, across) / capsule.across,
    dot(direction, along) / capsule.along,
    dot(direction, axis) / capsule.cap,
  ]
  const high =
    Math.sqrt(dot(subtract(capsule.to, capsule.from), subtract(capsule.to, capsule.from))) / capsule.cap
  let best: number | undefined
  let middle = 0
  const flat = p[0] * p[0] + p[1] * p[1]
  // A ray that starts inside meets nothing: what holds its start does not hide what lies around it.
  const beyond = p[2] < 0 ? p[2] : p[2] > high ? p[2] - high : 0
  if (flat + beyond * beyond < 1) return undefined
  const side = entering(w[0] * w[0] + w[1] * w[1], p[0] * w[0] + p[1] * w[1], flat - 1)
  if (side !== undefined) {
    const z = p[2] + side * w[2]
    if (z >= 0 && z <= high) [best, middle] = [side, z]
  }
  for (const end of [0, high]) {
    const z = p[2] - end
    const t = entering(dot(w, w), p[0] * w[0] + p[1] * w[1] + z * w[2], flat + z * z - 1)
    if (t !== undefined && (best === undefined || t < best)) [best, middle] = [t, end]
  }
  if (best === undefined) return undefined
  const round: Vec3 = [p[0] + best * w[0], p[1] + best * w[1], p[2] + best * w[2] - middle]
  const normal = unit(
    add(
      add(scale(across, round[0] / capsule.across), scale(along, round[1] / capsule.along)),
      scale(axis, round[2] / capsule.cap),
    ),
  )
  return { t: best, normal }
}

/**
 * A hull of two like rings of corners, front and back, as modifiers are built: its front, its back and the flat strips
 * between. Each strip is cut by the two corners of either ring.
 */
const rayMeetsHull = (corners: readonly Vec3[], from: Vec3, direction: Vec3): RayHit | undefined => {
  const count = corners.length / 2
  let best: RayHit | undefined
  const meet = (a: Vec3, b: Vec3, c: Vec3): void => {
    const hit = rayMeetsTriangle(a, b, c, from, direction)
    if (hit !== undefined && (best === undefined || hit.t < best.t)) best = hit
  }
  for (let i = 0; i < count; i++) {
    const j = (i + 1) % count
    const [a, b, c, d] = [corners[i]!, corners[j]!, corners[count + i]!, corners[count + j]!]
    meet(a, b, c)
    meet(b, d, c)
    if (i > 1) {
      meet(corners[0]!, corners[i - 1]!, a)
      meet(corners[count]!, corners[count + i - 1]!, c)
    }
  }
  return best
}

/** Möller and Trumbore, "Fast, minimum storage ray/triangle intersection" (1997); from memory, held by tests. */
const rayMeetsTriangle = (a: Vec3, b: Vec3, c: Vec3, from: Vec3, direction: Vec3): RayHit | undefined => {
  const ab = subtract(b, a)
  const ac = subtract(c, a)
  const p = cross(direction, ac)
  const volume = dot(ab, p)
  if (Math.abs(volume) < 1e-15) return undefined
  const d = subtract(from, a)
  const u = dot(d, p) / volume
  const q = cross(d, ab)
  const v = dot(direction, q) / volume
  const t = dot(ac, q) / volume
  return u < -1e-9 || v < -1e-9 || u + v > 1 + 1e-9 || t <= least
    ? undefined
    : { t, normal: against(unit(cross(ab, ac)), direction) }
}
