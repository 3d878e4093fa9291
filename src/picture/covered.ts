/** What of the subject a light or a panel hides from the camera. */
import { project, rayThrough } from '../scene/camera-view.js'
import { reach } from '../scene/capsule.js'
import { firstHit } from '../scene/first-hit.js'
import { lazyOf } from '../scene/lazy.js'
import { rayMeets } from '../scene/ray.js'
import type { Capsule, Scene, SceneCamera } from '../scene/scene.js'
import { add, dot, length, scale, type Vec3 } from '../scene/vector.js'

export interface Covered {
  /** Of one head the most: share of what the frame holds of it. 0 for an object. */
  readonly head: number
  /** Share of what the frame holds of the subject. */
  readonly subject: number
}

export interface Gear {
  readonly of: 'light' | 'panel'
  readonly name: string
}

interface Cell {
  /** In the frame, −1 to 1 both ways. */
  readonly x: number
  readonly y: number
  readonly area: number
}

interface Count {
  readonly columns: number
  readonly rows: number
}

/** What the frame holds of the box round a capsule as the camera sees it, in cells. */
const cellsOf = (capsule: Capsule, camera: SceneCamera, { columns, rows }: Count): readonly Cell[] => {
  const middle = scale(add(capsule.from, capsule.to), 0.5)
  const half = (axis: Vec3) => reach(capsule, axis) - dot(middle, axis)
  const [w, h] = [half(camera.right), half(camera.up)]
  const low = project(camera, add(middle, add(scale(camera.right, -w), scale(camera.up, -h))))
  const high = project(camera, add(middle, add(scale(camera.right, w), scale(camera.up, h))))
  if (low.depth <= 0) return []
  const [left, right] = [Math.max(-1, low.x), Math.min(1, high.x)]
  const [bottom, top] = [Math.max(-1, low.y), Math.min(1, high.y)]
  if (right <= left || top <= bottom) return []
  const [across, up] = [(right - left) / columns, (top - bottom) / rows]
  return Array.from({ length: columns * rows }, (_, i) => ({
    x: left + ((i % columns) + 0.5) * across,
    y: bottom + (Math.floor(i / columns) + 0.5) * up,
    area: across * up,
  }))
}

/** Columns and rows of looks at a head and at a body. */
const looks = { head: { columns: 6, rows: 8 }, body: { columns: 8, rows: 12 } } as const

interface Look {
  /** The light or panel that hides the subject there. */
  readonly by: Gear | undefined
  /** Share of the picture for which it stands. */
  readonly area: number
}

/** One line of sight; undefined where it misses the figure, or someone else stands before it. */
const lookAt = (scene: Scene, part: Capsule, { x, y, area }: Cell): Look | undefined => {
  const { camera } = scene
  const toward = rayThrough(camera, x, y)
  const meets = rayMeets({ shape: 'capsule', capsule: part }, camera.eye, toward)
  const first = meets && firstHit(scene, camera.eye, toward)
  if (meets === undefined || first === undefined) return undefined
  if (first.distance > meets.t * length(toward) - 1e-6) return { by: undefined, area }
  return first.on === 'light' || first.on === 'panel'
    ? { by: { of: first.on, name: first.name }, area }
    : undefined
}

interface Looks {
  readonly head: readonly Look[]
  readonly body: readonly Look[]
}

/** Figure by figure; the same for all that may stand before them. */
const looksAtSubject = lazyOf((scene: Scene): readonly Looks[] => {
  const at = (part: Capsule | undefined, count: Count) =>
    part === undefined
      ? []
      : cellsOf(part, scene.camera, count).flatMap((cell) => lookAt(scene, part, cell) ?? [])
  return scene.subject.figures.map(({ head, body }) => ({
    head: at(head, looks.head),
    body: at(body, looks.body),
  }))
})

export const coveredBy = (scene: Scene, { of, name }: Gear): Covered => {
  const all = looksAtSubject(scene)
  const share = (looks: readonly Look[]): number => {
    const sum = (counted: readonly Look[]) => counted.reduce((total, { area }) => total + area, 0)
    const hidden = sum(looks.filter(({ by }) => by?.of === of && by.name === name))
    return hidden === 0 ? 0 : hidden / sum(looks)
  }
  return {
    head: Math.max(0, ...all.map(({ head }) => share(head))),
    subject: share(all.flatMap(({ head, body }) => [...head, ...body])),
  }
}
