/** The outline of a figure as the camera sees it. */

import { type Projected, project } from './camera-view.js'
import { contactRing, endPoint } from './capsule.js'
import { hull, type PlanePoint, turn } from './hull.js'
import type { Capsule, SceneCamera, SceneFigure } from './scene.js'
import { add, scale } from './vector.js'

/** A place in the frame: −1 to 1 from edge to edge, x to the right, y up. */
export type FramePoint = PlanePoint

/** Points on the ring of each rounded end: the polygon lies inside the true outline by at most 0.13 % of its radius. */
const ringPoints = 64

/**
 * A capsule is the convex hull of its two rounded ends, and perspective keeps convexity for what lies in front of the
 * camera: its outline is the hull of the two ends' outlines. Undefined where a part of it is not in front.
 */
const capsuleOutline = (capsule: Capsule, camera: SceneCamera): readonly FramePoint[] | undefined => {
  const seen: Projected[] = []
  for (const centre of [capsule.from, capsule.to]) {
    const ring = contactRing(capsule, centre, camera.eye, ringPoints)
    if (ring === undefined) return undefined
    for (const point of ring) seen.push(project(camera, point))
  }
  return seen.every((one) => one.depth > 1e-6) ? hull(seen.map((one) => [one.x, one.y])) : undefined
}

/** How far along a ray from a place inside a convex counter-clockwise polygon its edge lies; the ray is not of unit length. */
const exit = (polygon: readonly FramePoint[], from: FramePoint, ray: FramePoint): number => {
  let nearest = Infinity
  for (let i = 0; i < polygon.length; i++) {
    const p = polygon[i]!
    const q = polygon[(i + 1) % polygon.length]!
    const edge: FramePoint = [q[0] - p[0], q[1] - p[1]]
    const outward = ray[0] * edge[1] - ray[1] * edge[0]
    if (outward <= 0) continue
    nearest = Math.min(nearest, ((p[0] - from[0]) * edge[1] - (p[1] - from[1]) * edge[0]) / outward)
  }
  return nearest
}

const holds = (polygon: readonly FramePoint[], at: FramePoint): boolean =>
  polygon.every((p, i) => turn(p, polygon[(i + 1) % polygon.length]!, at) > 0)

/** Where the edges of two polygons cross. */
const crossings = (a: readonly FramePoint[], b: readonly FramePoint[]): FramePoint[] =>
  a.flatMap((p, i) => {
    const q = a[(i + 1) % a.length]!
    return b.flatMap((r, j) => {
      const s = b[(j + 1) % b.length]!
      const along = turn(p, q, s) - turn(p, q, r)
      if (along === 0) return []
      const t = -turn(p, q, r) / along
      const at: FramePoint = [r[0] + (s[0] - r[0]) * t, r[1] + (s[1] - r[1]) * t]
      const [dx, dy] = [q[0] - p[0], q[1] - p[1]]
      const u = ((at[0] - p[0]) * dx + (at[1] - p[1]) * dy) / (dx * dx + dy * dy)
      return t >= 0 && t <= 1 && u >= 0 && u <= 1 ? [at] : []
    })
  })

/** Two convex polygons that share a place inside: seen from there their union is a star, so each direction has one edge. */
const union = (
  a: readonly FramePoint[],
  b: readonly FramePoint[],
  shared: FramePoint,
): readonly FramePoint[] =>
  [...a, ...b, ...crossings(a, b)]
    .map((corner): FramePoint => [corner[0] - shared[0], corner[1] - shared[1]])
    .map((ray) => ({ ray, angle: Math.atan2(ray[1], ray[0]) }))
    .sort((one, other) => one.angle - other.angle)
    .map(({ ray }): FramePoint => {
      const far = Math.max(exit(a, shared, ray), exit(b, shared, ray))
      return [shared[0] + ray[0] * far, shared[1] + ray[1] * far]
    })

/** Between the head's lower end and the body's upper end, which overlap: inside both. */
const neck = (head: Capsule, body: Capsule) => scale(add(endPoint(head, -1), endPoint(body, 1)), 0.5)

/**
 * The outline of head and body as the camera sees them: a simple polygon, counter-clockwise, in places of the frame
 * (also beyond its edges). Empty where the figure is not wholly in front of the camera.
 */
export const silhouette = (figure: SceneFigure, camera: SceneCamera): readonly FramePoint[] => {
  const body = capsuleOutline(figure.body, camera)
  if (body === undefined) return []
  if (figure.head === undefined) return body
  const head = capsuleOutline(figure.head, camera)
  if (head === undefined) return []
  const { x, y } = project(camera, neck(figure.head, figure.body))
  return holds(head, [x, y]) && holds(body, [x, y]) ? union(head, body, [x, y]) : hull([...head, ...body])
}
