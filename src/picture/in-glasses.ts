/**
 * What a pair of glasses mirrors. A lens is a shallow cap, round outward and tilted a little down: between its edges it
 * offers the camera normals over a range of angles, and shows whatever lies where one of them throws the line of sight.
 * The light of both surfaces of a lens goes nearly the same way; so does that of the other lens.
 */
import { frontPlaces, shownFace } from '../scene/front-places.js'
import { lazyOf } from '../scene/lazy.js'
import { mirrorNormal } from '../scene/mirror.js'
import type { Face, Scene, SceneFigure, SceneLight, ScenePanel } from '../scene/scene.js'
import { add, cross, distance, dot, length, scale, subtract, unit, type Vec3 } from '../scene/vector.js'
import { isHidden } from './hidden.js'
import { cameraSees } from './in-picture.js'

const degrees = (value: number): number => (value * Math.PI) / 180

/**
 * From memory, as assumed for ordinary glasses; wearers differ by several degrees. The lens leans over at the top; it is
 * some 50 mm wide and a little less high, of about 90 mm radius, and turned a little outward about the face.
 */
const lens = {
  tilt: degrees(8),
  /** Of the normals to either side, and up and down. */
  aside: degrees(16),
  upright: degrees(14),
} as const

interface Worn {
  readonly at: Vec3
  readonly ahead: Vec3
  readonly across: Vec3
  readonly up: Vec3
}

/** @param leaning radians more than the plan has the glasses lean over; a chin down, or up where negative */
const wornBy = ({ face, looks, head }: SceneFigure, leaning: number): Worn => {
  const crown: Vec3 = head === undefined ? [0, 0, 1] : unit(subtract(head.to, head.from), [0, 0, 1])
  const across = unit(cross(looks, crown), [1, 0, 0])
  const upright = cross(across, looks)
  const [lean, keep] = [Math.sin(lens.tilt + leaning), Math.cos(lens.tilt + leaning)]
  return {
    at: face,
    ahead: add(scale(looks, keep), scale(upright, -lean)),
    across,
    up: add(scale(upright, keep), scale(looks, lean)),
  }
}

/** How the normal that shows it lies to those that the lens has, in radians. */
interface Offered {
  /** To spare sideways and upright; negative beyond the edge of the lens. */
  readonly aside: number
  readonly upright: number
  /** It looks lower than the middle of the lens. */
  readonly low: boolean
}

const offered = ({ at, ahead, across, up }: Worn, eye: Vec3, toward: Vec3): Offered => {
  const normal = mirrorNormal(at, eye, toward)
  const depth = dot(normal, ahead)
  const high = Math.atan2(dot(normal, up), depth)
  return {
    aside: lens.aside - Math.abs(Math.atan2(dot(normal, across), depth)),
    upright: lens.upright - Math.abs(high),
    low: high < 0,
  }
}

export interface InGlasses {
  readonly figure: SceneFigure
  /**
   * How far inside the zone that the glasses mirror the part of it lies that lies in it most, radians as seen from the
   * glasses: a normal turned by one degree turns what it shows by two. Negative outside.
   */
  readonly inside: number
  /** The middle of the front lies under the middle of what the glasses mirror: they would have to lean back from it. */
  readonly below: boolean
  /** The front or panel that it is a part of. */
  readonly face: Face
  /** From the glasses toward that part, unit. */
  readonly toward: Vec3
}

/**
 * Undefined where the camera does not see the face, or nothing of the front that looks at the glasses lies in
 * their zone or near it, past what stands between.
 *
 * @param leaning radians that the glasses lean over more than they do as they are worn
 */
export const lightInGlasses = (
  scene: Scene,
  figure: SceneFigure,
  light: SceneLight,
  leaning = 0,
): InGlasses | undefined => {
  const face = shownFace(light)
  return faceInGlasses(scene, figure, { name: light.name, face, side: 1 }, leaning)
}

/** A panel by whichever of its sides looks at the glasses. */
export const panelInGlasses = (
  scene: Scene,
  figure: SceneFigure,
  panel: ScenePanel,
  leaning = 0,
): InGlasses | undefined =>
  panel.faces
    .flatMap((face) => {
      const side = dot(subtract(figure.face, face.centre), face.normal) < 0 ? -1 : 1
      return faceInGlasses(scene, figure, { name: panel.name, face, side }, leaning) ?? []
    })
    .reduce<InGlasses | undefined>(
      (most, one) => (most === undefined || one.inside > most.inside ? one : most),
      undefined,
    )

/** Further outside than this nobody asks by how much: radians. */
const near = degrees(10)

const seenFaces = lazyOf(
  (scene: Scene): ReadonlySet<SceneFigure> =>
    new Set(scene.subject.figures.filter((figure) => cameraSees(scene, figure.face, new Set([figure.name])))),
)

/** No part of a front lies further from its middle than by what it subtends; most fronts need no closer look. */
const isFar = (worn: Worn, eye: Vec3, { centre, width, height }: Face): boolean => {
  const toward = subtract(centre, worn.at)
  const away = length(toward)
  const radius = Math.hypot(width, height) / 2
  if (away < 2 * radius) return false
  const { aside, upright } = offered(worn, eye, toward)
  return 2 * Math.min(aside, upright) + slack * Math.asin(radius / away) < -near
}
/** Of angles measured aside and up in place of straight across. */
const slack = 1.5

const faceInGlasses = (
  scene: Scene,
  figure: SceneFigure,
  { name, face, side }: { readonly name: string; readonly face: Face; readonly side: 1 | -1 },
  leaning: number,
): InGlasses | undefined => {
  const { eye } = scene.camera
  const worn = wornBy(figure, leaning)
  if (isFar(worn, eye, face) || !seenFaces(scene).has(figure)) return undefined
  const seen = frontPlaces(face)
    .filter((place) => side * dot(face.normal, subtract(worn.at, place)) > 0)
    .map((place) => {
      const toward = subtract(place, worn.at)
      const { aside, upright } = offered(worn, eye, toward)
      return { place, toward, inside: 2 * Math.min(aside, upright) }
    })
    .filter(({ inside }) => inside > -near)
    .sort((a, b) => b.inside - a.inside)
  const except = new Set([figure.name, name])
  const most = seen.find(
    ({ place, toward }) => !isHidden(scene, worn.at, toward, distance(worn.at, place), except),
  )
  const below = offered(worn, eye, subtract(face.centre, worn.at)).low
  return most && { figure, face, inside: most.inside, below, toward: unit(most.toward) }
}
