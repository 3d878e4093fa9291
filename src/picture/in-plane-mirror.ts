/** What the camera sees in a flat thing that mirrors: a glossy backdrop, table or floor, the front of a flat object. */
import { rayThrough } from '../scene/camera-view.js'
import { clip, type PlanePoint, turn } from '../scene/hull.js'
import { mirroredCamera, mirroredDirection } from '../scene/mirror.js'
import { rayReachesFace } from '../scene/ray.js'
import type { Face, Scene } from '../scene/scene.js'
import { cornersOf } from '../scene/solids.js'
import { add, dot, scale, subtract, unit, type Vec3 } from '../scene/vector.js'
import { isHidden } from './hidden.js'
import { areaOf, edgeLooks, insideLooks, outlineInFrame } from './in-picture.js'

export interface PlaneMirror {
  /** What it is a part of: it hides nothing of itself. */
  readonly name: string
  readonly face: Face
}

export interface Shown {
  readonly name: string
  readonly face: Face
  /** A light shows its front alone; a panel both of its sides. */
  readonly sides: 'front' | 'both'
}

export interface SeenInPlane {
  /** Of the frame that its image takes up. */
  readonly share: number
  /** Extent of the image in the frame, −1 to 1 both ways. */
  readonly from: PlanePoint
  readonly to: PlanePoint
  /** A place of the mirror near the middle of the image, and the place that is seen there. */
  readonly at: Vec3
  readonly seen: Vec3
}

/** Undefined where the camera sees nothing of it: it lies elsewhere, looks away, or something stands in the way. */
export const seenInPlane = (scene: Scene, mirror: PlaneMirror, shown: Shown): SeenInPlane | undefined => {
  const outline = imageOutline(scene, mirror, shown)
  if (outline.length < 3) return undefined
  const found = (looks: readonly PlanePoint[]): readonly Look[] =>
    looks.flatMap((place) => lookInto(scene, mirror, shown, place) ?? [])
  const looks = insideLooks(outline)
  const inside = found(looks)
  const seen = [...inside, ...found(edgeLooks(outline))]
  if (seen.length === 0) return undefined
  const range = (axis: 0 | 1) => seen.map(({ place }) => place[axis])
  const from: PlanePoint = [Math.min(...range(0)), Math.min(...range(1))]
  const to: PlanePoint = [Math.max(...range(0)), Math.max(...range(1))]
  const off = ({ place: [x, y] }: Look): number =>
    Math.hypot(x - (from[0] + to[0]) / 2, y - (from[1] + to[1]) / 2)
  const middle = seen.reduce((best, one) => (off(one) < off(best) - 1e-9 ? one : best))
  return {
    share: ((areaOf(outline) / 4) * inside.length) / Math.max(1, looks.length),
    from,
    to,
    at: middle.at,
    seen: middle.seen,
  }
}

/** The image, were nothing in the way: as the camera behind the mirror sees the thing through the mirror's outline. */
const imageOutline = ({ camera }: Scene, { face }: PlaneMirror, shown: Shown): readonly PlanePoint[] => {
  const over = (place: Vec3): number => dot(subtract(place, face.centre), face.normal)
  if (over(camera.eye) <= 0) return []
  const corners = before(cornersOf(shown.face), over)
  if (corners.length < 3) return []
  const image = outlineInFrame(mirroredCamera({ at: face.centre, normal: face.normal }, camera), corners)
  if (image.length === 0) return []
  const frame = outlineInFrame(camera, cornersOf(face))
  return frame.length === 0
    ? []
    : frame.reduce<readonly PlanePoint[]>(
        (left, p, i) => clip(left, (at) => turn(p, frame[(i + 1) % frame.length]!, at)),
        image,
      )
}

/** What of a flat convex outline lies before the mirror. */
const before = (corners: readonly Vec3[], over: (place: Vec3) => number): readonly Vec3[] =>
  corners.flatMap((p, i): readonly Vec3[] => {
    const q = corners[(i + 1) % corners.length]!
    const [a, b] = [over(p), over(q)]
    const crossing = (): Vec3 => add(p, scale(subtract(q, p), a / (a - b)))
    if (a >= 0) return b >= 0 ? [p] : [p, crossing()]
    return b >= 0 ? [crossing()] : []
  })

interface Look {
  readonly place: PlanePoint
  readonly at: Vec3
  readonly seen: Vec3
}

/** A line of sight to the mirror and on: undefined where it does not end on the thing. */
const lookInto = (scene: Scene, mirror: PlaneMirror, shown: Shown, place: PlanePoint): Look | undefined => {
  const { eye } = scene.camera
  const sight = unit(rayThrough(scene.camera, ...place))
  const near = rayReachesFace(mirror.face, eye, sight)
  if (!Number.isFinite(near) || isHidden(scene, eye, sight, near, new Set([mirror.name]))) return undefined
  const at = add(eye, scale(sight, near))
  const on = mirroredDirection(mirror.face.normal, sight)
  if (shown.sides === 'front' && dot(on, shown.face.normal) >= 0) return undefined
  const far = rayReachesFace(shown.face, at, on)
  if (!Number.isFinite(far) || isHidden(scene, at, on, far, new Set([mirror.name, shown.name])))
    return undefined
  return { place, at, seen: add(at, scale(on, far)) }
}
