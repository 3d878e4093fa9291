/** Where on the backdrop a figure's shadow can fall, as the camera sees it. */
import { project } from './camera-view.js'
import { contactRing } from './capsule.js'
import { hull, type PlanePoint } from './hull.js'
import { lazy } from './lazy.js'
import type { Capsule, Face, SceneBackdrop, SceneCamera, SceneFigure } from './scene.js'
import { add, dot, scale, subtract, type Vec3 } from './vector.js'

/** A light's middle and the corners of what its front lies in; the sun as a place very far off. */
export interface CastsFrom {
  readonly middle: Vec3
  readonly corners: readonly Vec3[]
}

/** Convex outlines in places of the frame (−1 to 1 from edge to edge; also beyond); under three corners: nothing there. */
export interface ShadowReach {
  /** Holds all of the shadow, its soft edge counted. */
  readonly all: () => readonly PlanePoint[]
  /** From where the light's middle is hidden: by the head, by the body. */
  readonly cores: readonly (readonly PlanePoint[])[]
}

/** Points of the ring at which rays from one point touch a rounded end. */
const ringPoints = { all: 8, core: 24 }
/** Metres: shadows that run along the backdrop have no end. */
const farthest = 50
/** Metres from which the sun shines. */
const sunAt = 1e5

/** Of the rectangle that holds the front, alike on all sides. */
export const castsFromFace = ({ centre, across, up, width, height }: Face): CastsFrom => ({
  middle: centre,
  corners: [-0.5, 0.5].flatMap((u) =>
    [-0.5, 0.5].map((v) => add(centre, add(scale(across, u * width), scale(up, v * height)))),
  ),
})

export const castsFromSun = (toward: Vec3, near: Vec3): CastsFrom => {
  const at = sunAsPlace(toward, near)
  return { middle: at, corners: [at] }
}

const sunAsPlace = (toward: Vec3, near: Vec3): Vec3 => add(near, scale(toward, sunAt))

/** @param floors true where the shadow is also sought on the floor or table before the backdrop */
export const shadowReach = (
  figure: SceneFigure,
  { middle, corners }: CastsFrom,
  backdrop: SceneBackdrop,
  camera: SceneCamera,
  floors: boolean,
): ShadowReach => {
  const parts = figure.head === undefined ? [figure.body] : [figure.head, figure.body]
  const onto = (light: Vec3, past: Vec3) => throughTo(light, past, backdrop, floors)
  const of = (some: readonly Capsule[], lights: readonly Vec3[], count: number): readonly PlanePoint[] => {
    const points: PlanePoint[] = []
    for (const light of lights)
      for (const part of some)
        for (const end of [part.from, part.to]) {
          const ring = contactRing(part, end, light, count)
          // A light inside the figure: everything may be in its shadow.
          if (ring === undefined) return whole
          for (const one of widened(ring)) {
            const at = onto(light, one)
            const seen = at && project(camera, at)
            if (seen !== undefined && seen.depth > 1e-6) points.push([seen.x, seen.y])
          }
        }
    return hull(points)
  }
  return {
    all: lazy(() => of(parts, corners, ringPoints.all)),
    cores: parts.map((part) => of([part], [middle], ringPoints.core)),
  }
}

const whole: readonly PlanePoint[] = [
  [-1, -1],
  [1, -1],
  [1, 1],
  [-1, 1],
]

/** So that the polygon holds the ring. */
const widened = (ring: readonly Vec3[]): readonly Vec3[] => {
  let [x, y, z] = [0, 0, 0]
  for (const one of ring) {
    x += one[0]
    y += one[1]
    z += one[2]
  }
  const middle = scale([x, y, z], 1 / ring.length)
  const by = 1 / Math.cos(Math.PI / ring.length)
  return ring.map(
    (one): Vec3 => [
      middle[0] + by * (one[0] - middle[0]),
      middle[1] + by * (one[1] - middle[1]),
      middle[2] + by * (one[2] - middle[2]),
    ],
  )
}

/** Where the ray from a light past a point meets the backdrop's plane beyond that point, or the floor before it. */
const throughTo = (
  light: Vec3,
  past: Vec3,
  { y, bottom }: SceneBackdrop,
  floors: boolean,
): Vec3 | undefined => {
  const way = subtract(past, light)
  const most = 1 + farthest / Math.sqrt(dot(way, way))
  const down =
    floors && way[2] < 0 && past[2] >= bottom ? (bottom - light[2]) / way[2] : Number.POSITIVE_INFINITY
  const back = way[1] > 0 && past[1] < y && light[1] < y ? (y - light[1]) / way[1] : Number.POSITIVE_INFINITY
  if (!floors && (past[1] >= y || light[1] >= y)) return undefined
  const t = Math.min(most, down, back)
  return add(light, scale(way, t))
}
