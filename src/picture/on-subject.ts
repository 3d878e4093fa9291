/** What an object that mirrors shows: where on it, and how large, as the camera sees both. */
import { project } from '../scene/camera-view.js'
import { firstHit, type Hit } from '../scene/first-hit.js'
import { outlinePlaces } from '../scene/front-places.js'
import { clip, type PlanePoint } from '../scene/hull.js'
import { mirroredDirection } from '../scene/mirror.js'
import type { Scene, SceneFigure } from '../scene/scene.js'
import { cornersOf } from '../scene/solids.js'
import type { SubjectMirror } from '../scene/subject-mirror.js'
import { distance, dot, subtract, unit, type Vec3 } from '../scene/vector.js'
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
  const places = [...outlinePlaces(shown.face), shown.face.centre].map((of) =>
    placeOf(scene, figure, mirror, shown, of),
  )
  const middle = places.pop()
  const outline = places.flatMap((place) => (place === undefined ? [] : [on(inFrame(scene, place.at))]))
  // A cylinder ends at its foot and its top; beside it the mirror itself keeps what it shows.
  const kept = clip(
    clip(outline, ([, y]) => y + 1),
    ([, y]) => 1 - y,
  )
  const first = middle ?? places.find((place) => place !== undefined)
  if (kept.length < 3 || first === undefined) return undefined
  const range = (axis: 0 | 1) => kept.map((place) => place[axis])
  return {
    from: [Math.min(...range(0)), Math.min(...range(1))],
    to: [Math.max(...range(0)), Math.max(...range(1))],
    at: first.at,
    normal: first.normal,
  }
}

type Round = Exclude<SubjectMirror, { shape: 'plane' }>

/** Metres: what is met so near before a thing is the thing. */
const onIt = 0.02

const placeOf = (
  scene: Scene,
  figure: SceneFigure,
  mirror: Round,
  { name, face, sides }: Shown,
  of: Vec3,
) => {
  const { eye } = scene.camera
  const place = mirror.place(eye, of)
  if (place === undefined) return undefined
  const toward = subtract(of, place.at)
  if (sides === 'front' && dot(toward, face.normal) >= 0) return undefined
  const hidden = (from: Vec3, to: Vec3, except: ReadonlySet<string>): boolean => {
    const hit = firstHit(scene, from, subtract(to, from), except)
    return hit !== undefined && hit.on !== 'room' && hit.distance < distance(from, to) - onIt
  }
  return hidden(eye, place.at, new Set([figure.name])) || hidden(place.at, of, new Set([figure.name, name]))
    ? undefined
    : place
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
