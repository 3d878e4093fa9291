/** What must be sharp, along the axis of the lens. */
import type { Plan } from '../../language/plan.js'
import { dot, subtract, type Vec3 } from '../../scene/vector.js'
import type { ComputedSet } from '../../set/computed-set.js'

/** Depth of a face from nose to ears, cm. Common practice, no source. */
export const faceDepth = 12

/** Distances from the lens along its axis, metres. `free`: the focus may lie anywhere in it. */
export interface Span {
  readonly near: number
  readonly far: number
  readonly free: boolean
}

const along = (set: ComputedSet, at: Vec3): number =>
  dot(subtract(at, set.scene.camera.eye), set.scene.camera.forward)

/**
 * What must be sharp, as distances from the lens. Undefined where it lies at or behind the lens.
 *
 * @param face depth of a face, cm
 */
export const wantedSpan = (set: ComputedSet, face: number): Span | undefined => {
  const { plan } = set
  const { sharp } = plan.wanted
  const { figures } = set.scene.subject
  if (sharp === undefined) return undefined
  const span = (near: number, far: number, free: boolean): Span | undefined =>
    near > plan.camera.lens ? { near, far, free } : undefined
  const depths = figures.map((figure) => along(set, figure.face))
  const [near, far] = [Math.min(...depths), Math.max(...depths)]
  if (sharp.what === 'rows') return span(near, far, false)
  const point = set.scene.points.get('subject')
  const middle = point === undefined ? near : along(set, point.at)
  if (sharp.what === 'subject') {
    const [front, back] = figures
      .flatMap((figure) => bodySpan(set, figure.body))
      .reduce(([least, most], depth) => [Math.min(least, depth), Math.max(most, depth)] as const, [
        Number.POSITIVE_INFINITY,
        Number.NEGATIVE_INFINITY,
      ] as const)
    return span(Math.min(near, front), Math.max(far, back), false)
  }
  const depth = sharp.what === 'depth' ? sharp.depth : face / 100
  const onIt = Math.abs(set.scene.camera.focus - middle) < 1e-3
  return span(middle - depth / 2, middle + depth / 2, onIt)
}

/** A body's nearest and farthest along the axis, by its depth about its segment. */
const bodySpan = (
  set: ComputedSet,
  body: { readonly from: Vec3; readonly to: Vec3; readonly along: number },
): readonly number[] =>
  [body.from, body.to].flatMap((end) => [along(set, end) - body.along, along(set, end) + body.along])

export const whatIsWanted = (plan: Plan): string => {
  const { sharp } = plan.wanted
  return sharp?.what === 'rows'
    ? 'the rows'
    : sharp?.what === 'face'
      ? 'the face'
      : sharp?.what === 'depth'
        ? 'the wanted depth'
        : 'the subject'
}
