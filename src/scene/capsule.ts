/**
 * Geometry of a capsule in elliptic section. An affine map turns it into a round one (a segment with a coat of radius
 * 1); tangency and convexity survive such a map, so everything here is done on the round one and carried back.
 */
import type { Metres } from '../units/quantity.js'
import { lazyOf } from './lazy.js'
import type { Capsule } from './scene.js'
import { add, cross, dot, length, scale, subtract, unit, type Vec3 } from './vector.js'

/** Unit vectors of the capsule: across, along its depth, and its axis from `from` to `to`. Right-handed. */
export interface CapsuleAxes {
  readonly across: Vec3
  readonly along: Vec3
  readonly axis: Vec3
}

/** A capsule whose ends coincide counts as upright. */
export const capsuleAxes = (capsule: Capsule): CapsuleAxes => {
  const across = capsule.acrossDirection
  const axis = unit(subtract(capsule.to, capsule.from), [0, 0, 1])
  return { across, along: cross(axis, across), axis }
}

/** What takes places and directions to where the capsule is round, its segment along z from 0 to `high`. */
export interface RoundSpace {
  readonly from: Vec3
  readonly x: Vec3
  readonly y: Vec3
  readonly z: Vec3
  readonly high: number
}

export const roundOf = lazyOf((capsule: Capsule): RoundSpace => {
  const { across, along, axis } = capsuleAxes(capsule)
  return {
    from: capsule.from,
    x: scale(across, 1 / capsule.across),
    y: scale(along, 1 / capsule.along),
    z: scale(axis, 1 / capsule.cap),
    high: length(subtract(capsule.to, capsule.from)) / capsule.cap,
  }
})

/** A vector's coordinates where the capsule is round. */
const toRound = (capsule: Capsule, axes: CapsuleAxes, v: Vec3): Vec3 => [
  dot(v, axes.across) / capsule.across,
  dot(v, axes.along) / capsule.along,
  dot(v, axes.axis) / capsule.cap,
]

const fromRound = (capsule: Capsule, axes: CapsuleAxes, v: Vec3): Vec3 =>
  add(
    add(scale(axes.across, v[0] * capsule.across), scale(axes.along, v[1] * capsule.along)),
    scale(axes.axis, v[2] * capsule.cap),
  )

/** True for points strictly inside. */
export const isInside = (capsule: Capsule, point: Vec3): boolean => {
  const axes = capsuleAxes(capsule)
  const [x, y, z] = toRound(capsule, axes, subtract(point, capsule.from))
  const high = length(subtract(capsule.to, capsule.from)) / capsule.cap
  const beyond = z < 0 ? z : z > high ? z - high : 0
  return x * x + y * y + beyond * beyond < 1 - 1e-9
}

/** How far the capsule reaches in a direction (a unit vector): its support function, metres from the origin. */
export const reach = (capsule: Capsule, direction: Vec3): number => {
  const { across, along, axis } = capsuleAxes(capsule)
  return (
    Math.max(dot(capsule.from, direction), dot(capsule.to, direction)) +
    length([
      capsule.across * dot(across, direction),
      capsule.along * dot(along, direction),
      capsule.cap * dot(axis, direction),
    ])
  )
}

/** The outermost point of one end: 1 the end at `to`, −1 the end at `from`. */
export const endPoint = (capsule: Capsule, end: 1 | -1): Vec3 =>
  add(end === 1 ? capsule.to : capsule.from, scale(capsuleAxes(capsule).axis, end * capsule.cap))

/** The point of the segment nearest to a place. */
export const nearestOnSegment = (capsule: Capsule, place: Vec3): Vec3 => {
  const span = subtract(capsule.to, capsule.from)
  const square = dot(span, span)
  const t = square > 0 ? dot(subtract(place, capsule.from), span) / square : 0
  return add(capsule.from, scale(span, Math.min(1, Math.max(0, t))))
}

export interface SurfacePoint {
  readonly at: Vec3
  /** Unit, outward. */
  readonly normal: Vec3
}

const normalAt = (capsule: Capsule, axes: CapsuleAxes, round: Vec3): Vec3 =>
  // The gradient of the round surface, carried back by the inverse transpose of the map.
  unit(
    add(
      add(scale(axes.across, round[0] / capsule.across), scale(axes.along, round[1] / capsule.along)),
      scale(axes.axis, round[2] / capsule.cap),
    ),
  )

/** Where a ray from a point of the segment, square to the segment or at an end, leaves the capsule. */
export const surfaceToward = (capsule: Capsule, from: Vec3, direction: Vec3): SurfacePoint => {
  const axes = capsuleAxes(capsule)
  const round = unit(toRound(capsule, axes, direction), [0, -1, 0])
  return { at: add(from, fromRound(capsule, axes, round)), normal: normalAt(capsule, axes, round) }
}

/**
 * The two points at which planes through the eye that contain the direction `up` touch the section about `centre` (a
 * point of the segment): the left and right edges as a camera with that `up` sees them, in no order. Undefined where
 * the eye looks along `up` at the section, so that it has no such edges.
 */
export const edgePoints = (
  capsule: Capsule,
  centre: Vec3,
  eye: Vec3,
  up: Vec3,
): readonly [SurfacePoint, SurfacePoint] | undefined => {
  const axes = capsuleAxes(capsule)
  const along = unit(toRound(capsule, axes, up), [0, 0, 1])
  const e = toRound(capsule, axes, subtract(eye, centre))
  const flat = subtract(e, scale(along, dot(e, along)))
  const square = dot(flat, flat)
  if (square <= 1 + 1e-9) return undefined
  const aside = scale(unit(cross(along, flat)), Math.sqrt(1 - 1 / square))
  const near = scale(flat, 1 / square)
  const touch = (round: Vec3): SurfacePoint => ({
    at: add(centre, fromRound(capsule, axes, round)),
    normal: normalAt(capsule, axes, round),
  })
  return [touch(add(near, aside)), touch(subtract(near, aside))]
}

/**
 * The ring of points at which rays from the eye touch the rounded end about `centre`: an ellipse in space. `count`
 * points; undefined where the eye is inside that end.
 */
export const contactRing = (
  capsule: Capsule,
  centre: Vec3,
  eye: Vec3,
  count: number,
): readonly Vec3[] | undefined => {
  const axes = capsuleAxes(capsule)
  const e = toRound(capsule, axes, subtract(eye, centre))
  const square = dot(e, e)
  if (square <= 1 + 1e-9) return undefined
  const toward = scale(e, 1 / Math.sqrt(square))
  const p = unit(cross(toward, Math.abs(toward[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0]))
  const radius = Math.sqrt(1 - 1 / square)
  // The map is linear: middle and half axes of the ellipse are carried back, not each of its points.
  const carried = (round: Vec3, by: number) => fromRound(capsule, axes, scale(round, by))
  const m = add(centre, carried(e, 1 / square))
  const a = carried(p, radius)
  const b = carried(cross(toward, p), radius)
  const ring: Vec3[] = []
  for (let i = 0; i < count; i++) {
    const turn = (2 * Math.PI * i) / count
    const [cosine, sine] = [Math.cos(turn), Math.sin(turn)]
    ring.push([
      m[0] + cosine * a[0] + sine * b[0],
      m[1] + cosine * a[1] + sine * b[1],
      m[2] + cosine * a[2] + sine * b[2],
    ])
  }
  return ring
}

/** The `keep` metres of a capsule at its end `to`, as a capsule of their own with blunter ends where need be. */
export const endPart = (whole: Capsule, keep: number): Capsule => {
  const end = endPoint(whole, 1)
  const back = unit(subtract(whole.from, whole.to), [0, 0, -1])
  if (keep >= length(subtract(end, endPoint(whole, -1)))) return whole
  const cap = Math.min(whole.cap, 0.49 * keep)
  return {
    ...whole,
    from: add(end, scale(back, keep - cap)),
    to: add(end, scale(back, cap)),
    cap: cap as Metres,
  }
}

/** Nothing is thinner than this: a width of nothing must not divide by nothing. */
const thinnest = 1e-6

export const capsule = (
  from: Vec3,
  to: Vec3,
  across: number,
  along: number,
  cap: number,
  acrossDirection: Vec3,
): Capsule => ({
  from,
  to,
  across: Math.max(across, thinnest) as Metres,
  along: Math.max(along, thinnest) as Metres,
  cap: Math.max(cap, thinnest) as Metres,
  acrossDirection,
})
