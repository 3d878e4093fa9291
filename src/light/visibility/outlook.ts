/**
 * The blockers as one receptor sees them. A convex body seen from outside is a convex cone of directions: its edge is a
 * ring of directions in order, worked out when first asked for.
 */
import { capsuleAxes, contactRing, nearestOnSegment } from '../../scene/capsule.js'
import { hull, type PlanePoint } from '../../scene/hull.js'
import type { Capsule } from '../../scene/scene.js'
import { add, cross, dot, scale, subtract, unit, type Vec3 } from '../../scene/vector.js'
import type { Receptor } from '../receptor.js'
import { type Blocker, liesOn } from './blockers.js'

export interface Outlook {
  readonly receptor: Receptor
  /** Those that it does not lie on. */
  readonly blockers: readonly Blocker[]
  /** Directions (not of unit length) around the blocker's edge, in order; at least three. */
  ring(blocker: Blocker): readonly Vec3[] | undefined
}

export const outlookFrom = (receptor: Receptor, blockers: readonly Blocker[]): Outlook => {
  let others: readonly Blocker[] | undefined
  const rings = new Map<Blocker, readonly Vec3[] | undefined>()
  return {
    receptor,
    get blockers() {
      others ??= blockers.filter((one) => !liesOn(one, receptor.at))
      return others
    },
    ring: (blocker) => {
      if (!rings.has(blocker)) rings.set(blocker, ringOf(blocker, receptor.at))
      return rings.get(blocker)
    },
  }
}

/** Points on the ring of each rounded end. */
const ringPoints = 16
/** A polygon on the ring is that much smaller than the ring; grown by this its area is the ring's. */
const grown = Math.sqrt((2 * Math.PI) / ringPoints / Math.sin((2 * Math.PI) / ringPoints))

/** Cosine against the direction to the middle beyond which an edge counts as being there: next to sideways. */
const widest = 0.02

const ringOf = ({ solid: { body }, centre }: Blocker, at: Vec3): readonly Vec3[] | undefined => {
  // The corners of a plate are in order whichever way they are seen, however near.
  if (body.shape === 'plate') return body.corners.map((corner) => subtract(corner, at))
  const points: Vec3[] = []
  if (body.shape === 'capsule') {
    for (const end of [body.capsule.from, body.capsule.to]) {
      const ring = contactRing(body.capsule, end, at, ringPoints)
      if (ring === undefined) return undefined
      const middle = scale(
        ring.reduce<Vec3>((sum, one) => add(sum, one), [0, 0, 0]),
        1 / ringPoints,
      )
      for (const one of ring) points.push(add(middle, scale(subtract(one, middle), grown)))
    }
    return around(points, at, towardCapsule(body.capsule, at))
  }
  points.push(...body.corners)
  return around(points, at, unit(subtract(centre, at), [0, 0, 1]))
}

/**
 * The direction against which all of a capsule lies ahead, however near it is: square to the plane that parts it from
 * the place, which in the space where it is round is the direction to the nearest point of its segment.
 */
const towardCapsule = (capsule: Capsule, at: Vec3): Vec3 => {
  const { across, along, axis } = capsuleAxes(capsule)
  const way = subtract(nearestOnSegment(capsule, at), at)
  return unit(
    add(
      add(
        scale(across, dot(way, across) / capsule.across ** 2),
        scale(along, dot(way, along) / capsule.along ** 2),
      ),
      scale(axis, dot(way, axis) / capsule.cap ** 2),
    ),
    [0, 0, 1],
  )
}

/** The convex hull of points as seen from a place, on a plane square to the direction of their middle. */
const around = (points: readonly Vec3[], at: Vec3, toward: Vec3): readonly Vec3[] | undefined => {
  const p = unit(cross(toward, Math.abs(toward[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0]))
  const q = cross(toward, p)
  const flat = points.map((point): PlanePoint => {
    const d = subtract(point, at)
    const depth = Math.max(dot(d, toward), widest * Math.sqrt(dot(d, d)), 1e-12)
    return [dot(d, p) / depth, dot(d, q) / depth]
  })
  const edge = hull(flat)
  return edge.length < 3 ? undefined : edge.map(([x, y]): Vec3 => add(toward, add(scale(p, x), scale(q, y))))
}
