/** What an object that mirrors shows: where on it, and how large, as the camera sees both. */
import { project, rayThrough } from '../scene/camera-view.js'
import { firstHit, type Hit } from '../scene/first-hit.js'
import { outlinePlaces } from '../scene/front-places.js'
import { clip, hull, type PlanePoint } from '../scene/hull.js'
import { type MirrorPlace, mirroredDirection } from '../scene/mirror.js'
import { rayReachesFace } from '../scene/ray.js'
import type { Scene, SceneFigure } from '../scene/scene.js'
import { cornersOf } from '../scene/solids.js'
import type { SubjectMirror } from '../scene/subject-mirror.js'
import { distance, dot, subtract, unit, type Vec3 } from '../scene/vector.js'
import { edgeLooks, insideLooks } from './in-picture.js'
import { type Shown, seenInPlane } from './in-plane-mirror.js'

/** −1 at the object's left edge and at its foot, 1 at its right edge and its top, as the camera sees it. */
export interface Highlight {
  readonly from: PlanePoint
  readonly to: PlanePoint
  /** Where on the object its middle lies, and the normal there. */
  readonly at: Vec3
  readonly normal: Vec3
}

/** Undefined where the camera sees nothing of it on the object. */
export const highlightOn = (
  scene: Scene,
  figure: SceneFigure,
  mirror: SubjectMirror,
  shown: Shown,
): Highlight | undefined => {
  const on = extentOf(scene, mirror)
  if (mirror.shape === 'plane') {
    const seen = seenInPlane(scene, { name: figure.name, face: mirror.face }, shown)
    return seen && { from: on(seen.from), to: on(seen.to), at: seen.at, normal: mirror.face.normal }
  }
  const outline = imageOutline(scene, mirror, shown)
  if (outline.length < 3) return undefined
  const looks = [...edgeLooks(outline), ...insideLooks(outline)]
  const seen = looks.flatMap((place) => lookInto(scene, figure, mirror, shown, place) ?? [])
  if (seen.length === 0) return undefined
  const range = (axis: 0 | 1) => seen.map(({ place }) => on(place)[axis])
  const [left, right, bottom, top] = [
    Math.min(...range(0)),
    Math.max(...range(0)),
    Math.min(...range(1)),
    Math.max(...range(1)),
  ]
  const off = ({ place }: Look): number => {
    const [x, y] = on(place)
    return Math.hypot(x - (left + right) / 2, y - (bottom + top) / 2)
  }
  const { at, normal } = seen.reduce((best, one) => (off(one) < off(best) - 1e-9 ? one : best)).met
  return { from: [left, bottom], to: [right, top], at, normal }
}

type Round = Exclude<SubjectMirror, { shape: 'plane' }>

/** About the image, were nothing in the way and its foot and its top no end; in the frame. */
const imageOutline = (scene: Scene, mirror: Round, { face, sides }: Shown): readonly PlanePoint[] => {
  const { eye } = scene.camera
  const places = outlinePlaces(face).flatMap((of): Vec3[] => {
    const place = mirror.place(eye, of)
    if (place === undefined) return []
    return sides === 'front' && dot(subtract(of, place.at), face.normal) >= 0 ? [] : [place.at]
  })
  const end = (z: number): readonly number[] => places.map(([x, y]) => inFrame(scene, [x, y, z])[1])
  const [low, high] = [Math.max(...end(mirror.from)), Math.min(...end(mirror.to))]
  return clip(
    clip(hull(places.map((at) => inFrame(scene, at))), ([, y]) => y - low),
    ([, y]) => high - y,
  )
}

interface Look {
  readonly place: PlanePoint
  readonly met: MirrorPlace
}

/** Metres: what is met so near before a thing is the thing. */
const onIt = 0.02

/** A line of sight to the object and on: undefined where it does not end on the thing. */
const lookInto = (
  scene: Scene,
  figure: SceneFigure,
  mirror: Round,
  { name, face, sides }: Shown,
  place: PlanePoint,
): Look | undefined => {
  const { camera } = scene
  const sight = unit(rayThrough(camera, ...place))
  const met = mirror.meets(camera.eye, sight)
  if (met === undefined) return undefined
  const on = mirroredDirection(met.normal, sight)
  if (sides === 'front' && dot(on, face.normal) >= 0) return undefined
  const far = rayReachesFace(face, met.at, on)
  if (!Number.isFinite(far)) return undefined
  const hidden = (from: Vec3, toward: Vec3, reach: number, except: ReadonlySet<string>): boolean => {
    const hit = firstHit(scene, from, toward, except)
    return hit !== undefined && hit.on !== 'room' && hit.distance < reach - onIt
  }
  const near = distance(camera.eye, met.at)
  return hidden(camera.eye, sight, near, new Set([figure.name])) ||
    hidden(met.at, on, far, new Set([figure.name, name]))
    ? undefined
    : { place, met }
}

const inFrame = (scene: Scene, at: Vec3): PlanePoint => {
  const { x, y } = project(scene.camera, at)
  return [x, y]
}

/** Places round a round thing, by which its edges are found. */
const around = 48

/** From places of the frame to places of the object. */
const extentOf = (scene: Scene, mirror: SubjectMirror): ((place: PlanePoint) => PlanePoint) => {
  const outline = (
    mirror.shape === 'plane' ? cornersOf(mirror.face) : outlineOf(mirror, scene.camera.eye)
  ).map((at) => inFrame(scene, at))
  const half = (axis: 0 | 1) => {
    const all = outline.map((place) => place[axis])
    const [least, most] = [Math.min(...all), Math.max(...all)]
    return { middle: (least + most) / 2, half: (most - least) / 2 }
  }
  const [x, y] = [half(0), half(1)]
  return (place) => [(place[0] - x.middle) / x.half, (place[1] - y.middle) / y.half]
}

const outlineOf = (mirror: Round, eye: Vec3): readonly Vec3[] => {
  const ring = Array.from({ length: around }, (_, i) => mirror.turned(eye, (2 * Math.PI * i) / around).at)
  const [x, y] = mirror.middle
  return mirror.shape === 'ball'
    ? [...ring, [x, y, mirror.from], [x, y, mirror.to]]
    : ring.flatMap((at): Vec3[] => [
        [at[0], at[1], mirror.from],
        [at[0], at[1], mirror.to],
      ])
}

/** How far the surface has turned from the camera at nine tenths of the way to its edge. */
const atEdge = Math.asin(0.9)

/** What the surface shows near its camera-left and its camera-right edge; undefined is nothing at all. A flat thing has none. */
export const edgesShow = (
  scene: Scene,
  figure: SceneFigure,
  mirror: SubjectMirror,
): readonly [Hit | undefined, Hit | undefined] | undefined => {
  if (mirror.shape === 'plane') return undefined
  const { eye } = scene.camera
  const show = (angle: number): Hit | undefined => {
    const { at, normal } = mirror.turned(eye, angle)
    const on = mirroredDirection(normal, unit(subtract(at, eye)))
    return firstHit(scene, at, on, new Set([figure.name]))
  }
  return [show(-atEdge), show(atEdge)]
}
