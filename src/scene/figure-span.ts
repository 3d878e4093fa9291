/** From where to where a figure reaches along a line across or up the frame. */
import { project, rayThrough } from './camera-view.js'
import { rayMeets } from './ray.js'
import type { Capsule, SceneCamera, SceneFigure } from './scene.js'

/** Halvings of the step with which an edge is sought: a frame in a million. */
const halvings = 20

const capsuleSpan = (
  capsule: Capsule,
  camera: SceneCamera,
  way: 'across' | 'up',
  at: number,
): readonly [number, number] | undefined => {
  const ends = [capsule.from, capsule.to].map((end) => project(camera, end))
  if (ends.some(({ depth }) => depth <= 1e-6)) return undefined
  const [fixed, free] = way === 'across' ? (['y', 'x'] as const) : (['x', 'y'] as const)
  const [p, q] = [ends[0]!, ends[1]!]
  const along = q[fixed] - p[fixed]
  const share = along === 0 ? 0.5 : Math.min(1, Math.max(0, (at - p[fixed]) / along))
  const start = p[free] + (q[free] - p[free]) * share
  const meets = (value: number): boolean => {
    const ray = way === 'across' ? rayThrough(camera, value, at) : rayThrough(camera, at, value)
    return rayMeets({ shape: 'capsule', capsule }, camera.eye, ray) !== undefined
  }
  if (!meets(start)) return undefined
  const edge = (sign: 1 | -1): number => {
    let step = 0.05
    while (step < 100 && meets(start + sign * step)) step *= 2
    let [inside, outside] = [0, step]
    for (let i = 0; i < halvings; i++) {
      const middle = (inside + outside) / 2
      if (meets(start + sign * middle)) inside = middle
      else outside = middle
    }
    return start + sign * outside
  }
  return [edge(-1), edge(1)]
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
): readonly [number, number] | undefined => {
  const spans = [figure.head, figure.body].flatMap((part) => {
    const span = part && capsuleSpan(part, camera, way, at)
    return span === undefined ? [] : [span]
  })
  return spans.length === 0
    ? undefined
    : [Math.min(...spans.map((one) => one[0])), Math.max(...spans.map((one) => one[1]))]
}
