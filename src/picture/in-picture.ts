/** What of the gear the camera sees, and how far it reaches into the picture. */
import { project, rayThrough } from '../scene/camera-view.js'
import { firstHit } from '../scene/first-hit.js'
import { clip, hull, type PlanePoint, turn } from '../scene/hull.js'
import { lazyOf } from '../scene/lazy.js'
import type { Scene, SceneCamera, Solid } from '../scene/scene.js'
import { add, distance, dot, scale, subtract, type Vec3 } from '../scene/vector.js'
import { onIt } from './hidden.js'

/** `middle`: as far from the left edge as from the right, and nearer to neither top nor bottom. */
export type FrameSide = 'left' | 'right' | 'top' | 'bottom' | 'middle'

export interface Reaching {
  readonly side: FrameSide
  /** Metres, at the thing, by which it would have to leave the picture over that side. */
  readonly by: number
  /** The place that reaches in so far. */
  readonly at: Vec3
}

/**
 * How far places that the camera sees reach into the picture, from the edge that is the least way out. By similar
 * triangles: a share of the half frame, at the depth of the place. Undefined for none.
 */
export const reachingIn = (camera: SceneCamera, seen: readonly Vec3[]): Reaching | undefined => {
  if (seen.length === 0) return undefined
  const none = { by: 0, at: seen[0]! }
  const most = { left: none, right: none, top: none, bottom: none }
  for (const place of seen) {
    const { x, y, depth } = project(camera, place)
    const [across, up] = [depth * camera.tanHalfWidth, depth * camera.tanHalfHeight]
    const further = (side: keyof typeof most, by: number): void => {
      if (by > most[side].by) most[side] = { by, at: place }
    }
    further('left', (x + 1) * across)
    further('right', (1 - x) * across)
    further('bottom', (y + 1) * up)
    further('top', (1 - y) * up)
  }
  const sides = ['top', 'bottom', 'left', 'right'] as const
  const side = sides.reduce((least, one) => (most[one].by < most[least].by - alike ? one : least))
  const middle = (side === 'left' || side === 'right') && Math.abs(most.left.by - most.right.by) < alike
  return { side: middle ? 'middle' : side, ...most[side] }
}

/** Metres: two ways out that differ by less are alike. */
const alike = 1e-6

/** Metres: nearer before the lens than this nothing is looked at. */
const nearest = 0.02

/** A convex solid's corners before the lens; where it reaches behind it, also where its edges come out. */
const cornersAhead = (camera: SceneCamera, corners: readonly Vec3[]): readonly Vec3[] => {
  const depth = (at: Vec3) => dot(subtract(at, camera.eye), camera.forward) - nearest
  const ahead = corners.filter((one) => depth(one) >= 0)
  if (ahead.length === 0 || ahead.length === corners.length) return ahead
  const crossing = ahead.flatMap((one) =>
    corners.flatMap((other) => {
      const [a, b] = [depth(one), depth(other)]
      return b >= 0 ? [] : [add(one, scale(subtract(other, one), a / (a - b)))]
    }),
  )
  return [...ahead, ...crossing]
}

/** True where all corners lie behind the lens, or past one edge of the frame: most gear does. */
const isAside = (
  { eye, forward, right, up, tanHalfWidth, tanHalfHeight }: SceneCamera,
  corners: readonly Vec3[],
): boolean => {
  let past = allEdges
  for (const corner of corners) {
    const x = corner[0] - eye[0]
    const y = corner[1] - eye[1]
    const z = corner[2] - eye[2]
    const depth = x * forward[0] + y * forward[1] + z * forward[2]
    const across = (x * right[0] + y * right[1] + z * right[2]) / tanHalfWidth
    const high = (x * up[0] + y * up[1] + z * up[2]) / tanHalfHeight
    past &=
      (depth < nearest ? 1 : 0) |
      (across > depth ? 2 : 0) |
      (-across > depth ? 4 : 0) |
      (high > depth ? 8 : 0) |
      (-high > depth ? 16 : 0)
    if (past === 0) return false
  }
  return true
}
const allEdges = 31

/** The outline in the frame (−1 to 1 both ways) of a convex solid; empty where the frame holds nothing of it. */
export const outlineInFrame = (camera: SceneCamera, corners: readonly Vec3[]): readonly PlanePoint[] => {
  if (isAside(camera, corners)) return []
  const ahead = cornersAhead(camera, corners)
  if (ahead.length < 3) return []
  let polygon = hull(
    ahead.map((corner): PlanePoint => {
      const { x, y } = project(camera, corner)
      return [x, y]
    }),
  )
  polygon = clip(polygon, ([x]) => x + 1)
  polygon = clip(polygon, ([x]) => 1 - x)
  polygon = clip(polygon, ([, y]) => y + 1)
  polygon = clip(polygon, ([, y]) => 1 - y)
  return polygon.length > 2 && areaOf(polygon) > tooSmall ? polygon : []
}

/** Smaller in the frame than this, of an area of 4, there is nothing to see. */
const tooSmall = 1e-9

/** Of a polygon in the frame, whose own area is 4. */
export const areaOf = (polygon: readonly PlanePoint[]): number =>
  polygon.reduce((sum, p, i) => sum + turn([0, 0], p, polygon[(i + 1) % polygon.length]!) / 2, 0)

const within = (polygon: readonly PlanePoint[], place: PlanePoint): boolean =>
  polygon.every((p, i) => turn(p, polygon[(i + 1) % polygon.length]!, place) >= 0)

/** Rows and columns of looks at one thing, besides its outline. */
const grid = 9
/** Rays at the outline are drawn in by this share, so that they meet the thing. */
const drawnIn = 1e-3

/** Just inside an outline: its corners, and the middles of its edges. */
export const edgeLooks = (polygon: readonly PlanePoint[]): readonly PlanePoint[] => {
  const mean = (axis: 0 | 1) => polygon.reduce((sum, p) => sum + p[axis], 0) / polygon.length
  const middle: PlanePoint = [mean(0), mean(1)]
  const toward = ([x, y]: PlanePoint): PlanePoint => [
    x + (middle[0] - x) * drawnIn,
    y + (middle[1] - y) * drawnIn,
  ]
  return polygon.flatMap((p, i) => {
    const q = polygon[(i + 1) % polygon.length]!
    return [toward(p), toward([(p[0] + q[0]) / 2, (p[1] + q[1]) / 2])]
  })
}

/** Spread evenly over the inside of an outline: each stands for as much of it. */
export const insideLooks = (polygon: readonly PlanePoint[]): readonly PlanePoint[] => {
  const least = (axis: 0 | 1) => Math.min(...polygon.map((p) => p[axis]))
  const span = (axis: 0 | 1) => Math.max(...polygon.map((p) => p[axis])) - least(axis)
  const [left, bottom, width, height] = [least(0), least(1), span(0), span(1)]
  return Array.from({ length: grid * grid }, (_, i): PlanePoint => {
    const [column, row] = [i % grid, Math.floor(i / grid)]
    return [left + ((column + 0.5) / grid) * width, bottom + ((row + 0.5) / grid) * height]
  }).filter((place) => within(polygon, place))
}

/** Where to look for a thing of this outline. */
const looksAt = (polygon: readonly PlanePoint[]): readonly PlanePoint[] => [
  ...edgeLooks(polygon),
  ...insideLooks(polygon),
]

/** Places in metres of a light's or a panel's solid that the camera sees: in the frame, with nothing before them. */
export const seenOf = (scene: Scene, { body, of, name }: Solid): readonly Vec3[] => {
  if (body.shape === 'capsule') return []
  const { camera } = scene
  const outline = outlineInFrame(camera, body.corners)
  return outline.length === 0
    ? []
    : looksAt(outline).flatMap(([x, y]) => {
        const hit = firstHit(scene, camera.eye, rayThrough(camera, x, y))
        return hit !== undefined && hit.on === of && hit.name === name ? [hit.at] : []
      })
}

/** How far a light or a panel (`pointer`, as its solids have it) reaches in; undefined where the camera sees none of it. */
export const reachingOf = (scene: Scene, pointer: string): Reaching | undefined => {
  const known = reachings(scene)
  if (!known.has(pointer))
    known.set(
      pointer,
      reachingIn(
        scene.camera,
        scene.solids.flatMap((solid) => (solid.pointer === pointer ? seenOf(scene, solid) : [])),
      ),
    )
  return known.get(pointer)
}

const reachings = lazyOf((_: Scene) => new Map<string, Reaching | undefined>())

/** True for a place in the frame that nothing stands before. What it lies on does not count. */
export const cameraSees = (scene: Scene, place: Vec3, except?: ReadonlySet<string>): boolean => {
  const { camera } = scene
  const { x, y, depth } = project(camera, place)
  if (depth < nearest || Math.abs(x) > 1 || Math.abs(y) > 1) return false
  const hit = firstHit(scene, camera.eye, subtract(place, camera.eye), except)
  return hit === undefined || hit.distance > distance(place, camera.eye) - onIt
}
