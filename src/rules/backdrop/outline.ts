/** The subject's outline as the camera sees it, and the backdrop behind it. */

import { inFrame } from '../../scene/camera-view.js'
import { edgePoints, type SurfacePoint } from '../../scene/capsule.js'
import type { Capsule, SceneFigure } from '../../scene/scene.js'
import { add, dot, scale, subtract, unit, type Vec3 } from '../../scene/vector.js'
import type { ComputedSet } from '../../set/computed-set.js'

export interface OutlinePlace {
  readonly part: 'hair' | 'body'
  /** `at the top of the head`. */
  readonly where: string
  readonly at: Vec3
  /** Unit: square to the line from the camera, out of the outline. */
  readonly normal: Vec3
  /** What the camera sees past it on the backdrop. */
  readonly behind: Vec3
}

/** Places on the outline that lie in frame and before the backdrop; of one person or object. */
export const outlinePlaces = (set: ComputedSet): readonly OutlinePlace[] => {
  const [figure, other] = set.scene.subject.figures
  if (figure === undefined || other !== undefined) return []
  return candidates(figure, set).flatMap((place): OutlinePlace[] => {
    const behind = behindIt(set, place.at)
    return behind === undefined || !inFrame(set.scene.camera, place.at) ? [] : [{ ...place, behind }]
  })
}

const candidates = (figure: SceneFigure, set: ComputedSet): readonly Omit<OutlinePlace, 'behind'>[] => {
  const { head, body } = figure
  if (head === undefined)
    return [
      ...sides(body, 0.5, set).map(({ side, ...at }) => ({
        part: 'body' as const,
        where: `on its ${side} side`,
        ...at,
      })),
      ...top(body, set).map((at) => ({ part: 'body' as const, where: 'at its top', ...at })),
    ]
  return [
    ...top(head, set).map((at) => ({ part: 'hair' as const, where: 'at the top of the head', ...at })),
    // Over the ears: what of the head's outline is hair on anyone who has some.
    ...sides(head, 1, set).map(({ side, ...at }) => ({
      part: 'hair' as const,
      where: `on the ${side} side of the head`,
      ...at,
    })),
    ...sides(body, 1, set).map(({ side, ...at }) => ({
      part: 'body' as const,
      where: `at the ${side} shoulder`,
      ...at,
    })),
  ]
}

type Side = 'camera-left' | 'camera-right'

/** Left and right edge at a share of the way from a part's lower to its upper end. */
const sides = (
  part: Capsule,
  share: number,
  { scene }: ComputedSet,
): readonly (SurfacePoint & { readonly side: Side })[] => {
  const centre = add(part.from, scale(subtract(part.to, part.from), share))
  const { eye, up, right } = scene.camera
  const found = edgePoints(part, centre, eye, up) ?? []
  return [...found]
    .sort((a, b) => dot(a.normal, right) - dot(b.normal, right))
    .map((one, i): SurfacePoint & { readonly side: Side } => ({
      side: i === 0 ? 'camera-left' : 'camera-right',
      ...one,
    }))
}

const top = (part: Capsule, { scene }: ComputedSet): readonly SurfacePoint[] => {
  const { eye, up, right } = scene.camera
  const found = edgePoints(part, part.to, eye, right)
  return found === undefined
    ? []
    : [found.reduce((best, one) => (dot(one.normal, up) > dot(best.normal, up) ? one : best))]
}

/** Where the line from the camera past a place meets the backdrop; undefined where it misses it. */
const behindIt = ({ scene }: ComputedSet, at: Vec3): Vec3 | undefined => {
  const { backdrop, camera } = scene
  const ray = subtract(at, camera.eye)
  if (backdrop === undefined || ray[1] <= 1e-9 || at[1] >= backdrop.y) return undefined
  const there = add(camera.eye, scale(ray, (backdrop.y - camera.eye[1]) / ray[1]))
  return there[0] < backdrop.left ||
    there[0] > backdrop.right ||
    there[2] < backdrop.bottom ||
    there[2] > backdrop.top
    ? undefined
    : there
}

/** A surface a little inside the outline, turned from it toward the camera by an angle in radians. */
export const turnedIn = ({ at, normal }: OutlinePlace, eye: Vec3, by: number): Vec3 =>
  unit(add(scale(normal, Math.cos(by)), scale(unit(subtract(eye, at)), Math.sin(by))))
