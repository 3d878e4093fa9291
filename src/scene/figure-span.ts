/** From where to where a figure reaches along a line across or up the frame. */
import { project, rayThrough } from './camera-view.js'
import { roundOf } from './capsule.js'
import { rayReaches } from './ray.js'
import type { Capsule, SceneCamera, SceneFigure } from './scene.js'
import { dot, scale, subtract, type Vec3 } from './vector.js'

type Span = readonly [number, number]

/** Half frames: what reaches beside the lens has no end on that side. */
const far = 100

/**
 * The rays through the line are `still` + value·`moving`. Carried to where the capsule is round, its outline is where a
 * ray touches one of its two balls or, between them, the cylinder: (p·w)² = (p² − 1)·w² for each, and the outermost count.
 */
const capsuleSpan = (
  capsule: Capsule,
  camera: SceneCamera,
  way: 'across' | 'up',
  at: number,
): Span | undefined => {
  if ([capsule.from, capsule.to].some((end) => project(camera, end).depth <= 1e-6)) return undefined
  const still = way === 'across' ? rayThrough(camera, 0, at) : rayThrough(camera, at, 0)
  const moving =
    way === 'across' ? scale(camera.right, camera.tanHalfWidth) : scale(camera.up, camera.tanHalfHeight)
  const { from, x, y, z, high } = roundOf(capsule)
  const round = (v: Vec3): Vec3 => [dot(v, x), dot(v, y), dot(v, z)]
  const p = round(subtract(camera.eye, from))
  const [w, m] = [round(still), round(moving)]
  let [low, top] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  const touch = (value: number): void => {
    low = Math.min(low, value)
    top = Math.max(top, value)
  }
  for (const end of [0, high]) {
    const q: Vec3 = [p[0], p[1], p[2] - end]
    for (const value of touching(q, w, m)) if (dot(q, w) + value * dot(q, m) < 0) touch(value)
  }
  const flat = ([a, b]: Vec3): Vec3 => [a, b, 0]
  const [q, u, n] = [flat(p), flat(w), flat(m)]
  for (const value of touching(q, u, n)) {
    const toward: Vec3 = [u[0] + value * n[0], u[1] + value * n[1], 0]
    const t = -dot(q, toward) / dot(toward, toward)
    const height = p[2] + t * (w[2] + value * m[2])
    if (t > 0 && height >= 0 && height <= high) touch(value)
  }
  const body = { shape: 'capsule', capsule } as const
  for (const sign of [-1, 1])
    if (rayReaches(body, camera.eye, scale(moving, sign)) < Number.POSITIVE_INFINITY) touch(sign * far)
  return low < top ? [low, top] : undefined
}

/** Where lines from p along w + value·m touch the ball (or circle) of radius 1 about the origin; none from inside it. */
const touching = (p: Vec3, w: Vec3, m: Vec3): readonly number[] => {
  const beyond = dot(p, p) - 1
  if (beyond <= 0) return []
  const [pw, pm] = [dot(p, w), dot(p, m)]
  const a = pm * pm - beyond * dot(m, m)
  const b = pw * pm - beyond * dot(w, m)
  const c = pw * pw - beyond * dot(w, w)
  const square = b * b - a * c
  if (a === 0 || square < 0) return []
  const root = Math.sqrt(square)
  return [(-b - root) / a, (-b + root) / a]
}

/**
 * Head and body together, in places of the frame (-1 to 1 from edge to edge; also beyond them), along the line at this
 * height of it (`across`) or this place across it (`up`). Undefined where the line misses the figure.
 */
export const figureSpan = (
  figure: SceneFigure,
  camera: SceneCamera,
  way: 'across' | 'up',
  at: number,
): Span | undefined => {
  const body = capsuleSpan(figure.body, camera, way, at)
  const head = figure.head && capsuleSpan(figure.head, camera, way, at)
  return body === undefined || head === undefined
    ? (body ?? head)
    : [Math.min(body[0], head[0]), Math.max(body[1], head[1])]
}
