/** The backdrop: a plane square to the centre line and centred on it, and what the camera sees of it. */
import type { Plan } from '../language/plan.js'
import type { Metres } from '../units/quantity.js'
import { boxOf, frameOnPlane } from './camera-view.js'
import { support } from './figures.js'
import { clip } from './hull.js'
import type { SceneBackdrop, SceneCamera, SceneSubject } from './scene.js'
import type { Vec3 } from './vector.js'

/** A sky stands a kilometre off and has no edge that a lens could reach; its foot is the horizon. */
const sky = { y: 1000, half: 1e5 }

/**
 * Its foot is on the floor, or on the table where a sweep lies on it; its height is its own, from its foot. A paper
 * taller than the room ends at the ceiling.
 */
export const sceneBackdrop = (plan: Plan): SceneBackdrop | undefined => {
  const { backdrop, room, subject } = plan
  if (backdrop === undefined) return undefined
  if (backdrop.sky !== undefined)
    return {
      y: sky.y as Metres,
      left: -sky.half as Metres,
      right: sky.half as Metres,
      bottom: 0 as Metres,
      top: sky.half as Metres,
      sweepFront: undefined,
    }
  const bottom = backdrop.sweep === undefined ? 0 : support(subject)
  const top = bottom + backdrop.height
  return {
    y: backdrop.behind,
    left: (-backdrop.width / 2) as Metres,
    right: (backdrop.width / 2) as Metres,
    bottom: bottom as Metres,
    top: (room !== undefined && room.height > bottom ? Math.min(top, room.height) : top) as Metres,
    sweepFront: backdrop.sweep && (-backdrop.sweep.front as Metres),
  }
}

/** Where a light aimed at the backdrop points: on the centre line at the height of the face, whatever the camera sees. */
export const backdropMiddle = (backdrop: SceneBackdrop, faceHeight: number): Vec3 => [
  0,
  backdrop.y,
  Math.min(backdrop.top, Math.max(backdrop.bottom, faceHeight)),
]

export interface BackdropInFrame {
  /** The part that the frame holds, as x and z; convex. Nothing that stands before it is taken off. */
  readonly polygon: readonly (readonly [number, number])[]
  /** Its extent. */
  readonly left: number
  readonly right: number
  readonly bottom: number
  readonly top: number
}

type Corner = readonly [number, number]

/**
 * What the frame holds of the upright part of the backdrop (not of its sweep), and a table as wide as the frame does not
 * hide; undefined where that is nothing.
 */
export const backdropInFrame = (
  camera: SceneCamera,
  backdrop: SceneBackdrop,
  table?: SceneSubject['table'],
): BackdropInFrame | undefined => {
  const frame = frameOnPlane(camera, backdrop.y)
  if (frame === undefined) return undefined
  let polygon: readonly Corner[] = frame.polygon
  polygon = clip(polygon, ([x]) => x - backdrop.left)
  polygon = clip(polygon, ([x]) => backdrop.right - x)
  polygon = clip(polygon, ([, z]) => z - backdrop.bottom)
  polygon = clip(polygon, ([, z]) => backdrop.top - z)
  const hidden =
    table && polygon.length >= 3 ? hiddenUnder(camera, backdrop, table, boxOf(polygon)) : undefined
  if (hidden !== undefined) polygon = clip(polygon, ([, z]) => z - hidden)
  if (polygon.length < 3) return undefined
  const box = boxOf(polygon)
  return box.right - box.left > 1e-6 && box.top - box.bottom > 1e-6 ? { polygon, ...box } : undefined
}

/** The height on the backdrop under which a table's far edge hides it, all across; undefined where it does not. */
const hiddenUnder = (
  { eye }: SceneCamera,
  { y }: SceneBackdrop,
  { z, min, max }: NonNullable<SceneSubject['table']>,
  box: { readonly left: number; readonly right: number },
): number | undefined => {
  const edge = max[1]
  if (eye[2] <= z || edge <= eye[1] || edge >= y) return undefined
  const ratio = (y - eye[1]) / (edge - eye[1])
  const across = (x: number) => eye[0] + (x - eye[0]) * ratio
  return across(min[0]) <= box.left && across(max[0]) >= box.right ? eye[2] + (z - eye[2]) * ratio : undefined
}

/** Where the level through `z` (`across`) or the upright through `x` meets a convex polygon's edges: its two ends. */
export const span = (
  polygon: readonly Corner[],
  way: 'across' | 'up',
  at: number,
): readonly [number, number] | undefined => {
  const [fixed, free] = way === 'across' ? ([1, 0] as const) : ([0, 1] as const)
  const hits = polygon.flatMap((p, i) => {
    const q = polygon[(i + 1) % polygon.length]!
    const a = p[fixed] - at
    const b = q[fixed] - at
    if (a * b > 0 || a === b) return []
    return [p[free] + ((q[free] - p[free]) * a) / (a - b)]
  })
  return hits.length === 0 ? undefined : [Math.min(...hits), Math.max(...hits)]
}
