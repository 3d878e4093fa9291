/** What of the subject a light or a panel hides from the camera. */
import { project } from '../scene/camera-view.js'
import { reach } from '../scene/capsule.js'
import { firstHit } from '../scene/first-hit.js'
import { lazyOf } from '../scene/lazy.js'
import { rayMeets } from '../scene/ray.js'
import type { Capsule, Scene, SceneCamera } from '../scene/scene.js'
import { add, dot, length, scale, subtract, type Vec3 } from '../scene/vector.js'

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
  readonly at: Vec3
  /** Square metres. */
  readonly area: number
}

/** A capsule as the camera sees it, cut into cells in its middle plane. */
const cellsOf = (
  capsule: Capsule,
  { right, up }: SceneCamera,
  { columns, rows }: { readonly columns: number; readonly rows: number },
): readonly Cell[] => {
  const middle = scale(add(capsule.from, capsule.to), 0.5)
  const half = (axis: Vec3) => reach(capsule, axis) - dot(middle, axis)
  const [w, h] = [half(right), half(up)]
  const area = (4 * w * h) / (columns * rows)
  return Array.from({ length: columns * rows }, (_, i) => {
    const u = ((i % columns) + 0.5) * (2 / columns) - 1
    const v = (Math.floor(i / columns) + 0.5) * (2 / rows) - 1
    return { at: add(middle, add(scale(right, u * w), scale(up, v * h))), area }
  })
}

/** Columns and rows of looks at a head and at a body. */
const looks = { head: { columns: 6, rows: 8 }, body: { columns: 6, rows: 10 } } as const

interface Look {
  /** The light or panel that hides the subject there. */
  readonly by: Gear | undefined
  /** Share of the picture for which it stands, in no unit. */
  readonly area: number
}

/** One line of sight; undefined where nothing of the figure is in the frame, or someone else stands before it. */
const lookAt = (scene: Scene, part: Capsule, { at, area }: Cell): Look | undefined => {
  const { camera } = scene
  const { x, y, depth } = project(camera, at)
  if (depth <= 0 || Math.abs(x) > 1 || Math.abs(y) > 1) return undefined
  const toward = subtract(at, camera.eye)
  const meets = rayMeets({ shape: 'capsule', capsule: part }, camera.eye, toward)
  const first = firstHit(scene, camera.eye, toward)
  if (meets === undefined || first === undefined) return undefined
  const seen: Look = { by: undefined, area: area / depth ** 2 }
  if (first.distance > meets.t * length(toward) - 1e-6) return seen
  return first.on === 'light' || first.on === 'panel'
    ? { ...seen, by: { of: first.on, name: first.name } }
    : undefined
}

interface Looks {
  readonly head: readonly Look[]
  readonly body: readonly Look[]
}

/** Figure by figure; the same for all that may stand before them. */
const looksAtSubject = lazyOf((scene: Scene): readonly Looks[] => {
  const at = (part: Capsule | undefined, count: (typeof looks)['head' | 'body']) =>
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
