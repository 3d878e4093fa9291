/** What an object that mirrors shows: where on it, and how large, as the camera sees both. */
import { project } from '../scene/camera-view.js'
import { firstHit, type Hit } from '../scene/first-hit.js'
import type { PlanePoint } from '../scene/hull.js'
import { type MirrorPlace, mirroredDirection } from '../scene/mirror.js'
import { edgePlaces, mirrorCurves } from '../scene/mirror-curves.js'
import { rayReachesFace } from '../scene/ray.js'
import type { Scene, SceneFigure } from '../scene/scene.js'
import { cornersOf } from '../scene/solids.js'
import type { RoundSubjectMirror, SubjectMirror } from '../scene/subject-mirror.js'
import { distance, subtract, unit, type Vec3 } from '../scene/vector.js'
import { isHidden } from './hidden.js'
import { type Shown, seenInPlane } from './in-plane-mirror.js'
import { runsOn } from './in-round-mirror.js'
import { patchesOf } from './patches.js'

/** −1 at the object's left edge and at its foot, 1 at its right edge and its top, as the camera sees it. */
export interface Highlight {
  readonly from: PlanePoint
  readonly to: PlanePoint
  /** Of what the camera sees of the object. */
  readonly covers: number
  /** The middle of what is lit: of a crescent it lies beside it. */
  readonly centre: PlanePoint
  /** Share of the way round, of a rim of light on a ball that goes most of the way or all. */
  readonly round?: number
  /** A place of it that lies near its middle, and the normal there. */
  readonly at: Vec3
  readonly normal: Vec3
}

/** Each in one piece, from camera-left on. None where the camera sees nothing of it on the object. */
export const highlightsOn = (
  scene: Scene,
  figure: SceneFigure,
  mirror: SubjectMirror,
  shown: Shown,
): readonly Highlight[] => {
  const on = extentOf(scene, mirror)
  if (mirror.shape === 'plane') {
    const seen = seenInPlane(scene, { name: figure.name, face: mirror.face }, shown)
    if (seen === undefined) return []
    const [from, to] = [on(seen.from), on(seen.to)]
    return [
      {
        from,
        to,
        covers: ((to[0] - from[0]) * (to[1] - from[1])) / 4,
        centre: [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2],
        at: seen.at,
        normal: mirror.face.normal,
      },
    ]
  }
  // Of all that a ball can show, the frame has a disc.
  const whole = mirror.shape === 'ball' ? Math.PI : 4
  const place = ({ at }: MirrorPlace): PlanePoint => on(inFrame(scene, at))
  const seen = (met: MirrorPlace): boolean => isSeen(scene, figure, shown, met)
  return runsOn(mirror, scene.camera.eye, shown)
    .flatMap((run) =>
      patchesOf(run, seen, place).map(({ from, to, area, centre, span, met }): Highlight => {
        const round = mirror.shape === 'ball' && !run.holdsStart ? span / (2 * Math.PI) : 0
        return { from, to, covers: area / whole, centre, ...(round > mostOfIt ? { round } : {}), ...met }
      }),
    )
    .sort((a, b) => a.from[0] + a.to[0] - b.from[0] - b.to[0])
}

/** A front that reaches so far round the line of sight without meeting it lies behind, and shows along the edge. */
const mostOfIt = 0.5

/** True where nothing stands between the eye and the object, nor between it and what it shows. */
const isSeen = (
  scene: Scene,
  figure: SceneFigure,
  { name, face }: Shown,
  { at, normal }: MirrorPlace,
): boolean => {
  const { eye } = scene.camera
  const sight = unit(subtract(at, eye))
  const on = mirroredDirection(normal, sight)
  return (
    !isHidden(scene, eye, sight, distance(eye, at), new Set([figure.name])) &&
    !isHidden(scene, at, on, rayReachesFace(face, at, on), new Set([figure.name, name]))
  )
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

const outlineOf = (mirror: RoundSubjectMirror, eye: Vec3): readonly Vec3[] => {
  const turns = Array.from({ length: around }, (_, i) => (2 * Math.PI * i) / around)
  if (mirror.shape === 'ball') {
    const { curve } = mirrorCurves(mirror, eye)
    return turns.map((angle) => {
      const arc = curve(angle)
      return arc.at(arc.to).at
    })
  }
  return turns.flatMap((angle): Vec3[] => {
    const [x, y] = mirror.turned(eye, angle).at
    return [
      [x, y, mirror.from],
      [x, y, mirror.to],
    ]
  })
}

/** How far the surface has turned from the camera near its edge, at these shares of the way there; the first is told. */
const nearEdge = [0.9, 0.95].map(Math.asin)

/** What is seen in the surface near an edge, and past it right beside; undefined is nothing at all. */
export interface EdgeView {
  readonly mirrors: Hit | undefined
  readonly ground: Hit | undefined
  /** What it mirrors at several places near the edge, and where the surface is there. */
  readonly near: readonly { readonly hit: Hit | undefined; readonly at: Vec3 }[]
}

/** Of its camera-left and its camera-right edge, at the height of its middle. A flat thing has none. */
export const edgesShow = (
  scene: Scene,
  figure: SceneFigure,
  mirror: SubjectMirror,
): readonly [EdgeView, EdgeView] | undefined => {
  if (mirror.shape === 'plane') return undefined
  const { eye } = scene.camera
  const own = new Set([figure.name])
  const [left, right] = edgePlaces(mirror, eye)
  const view = (side: 1 | -1, edge: Vec3): EdgeView => {
    const near = nearEdge.map((angle) => {
      const { at, normal } = mirror.turned(eye, side * angle)
      const on = mirroredDirection(normal, unit(subtract(at, eye)))
      return { hit: firstHit(scene, at, on, own), at }
    })
    return { mirrors: near[0]!.hit, ground: firstHit(scene, eye, unit(subtract(edge, eye)), own), near }
  }
  return [view(-1, left.at), view(1, right.at)]
}
