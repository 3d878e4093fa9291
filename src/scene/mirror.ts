/**
 * Where things show in what mirrors. The law: the line to the eye and the line to what is seen make the same angle with
 * the normal, on either side of it and in one plane with it; the normal halves the angle between them.
 * Source: the law of reflection; of round mirrors, Alhazen's problem.
 */
import type { SceneCamera } from './scene.js'
import { add, dot, length, scale, subtract, unit, type Vec3 } from './vector.js'

/** A plane by one of its places and its unit normal. */
export interface Plane {
  readonly at: Vec3
  readonly normal: Vec3
}

export const mirroredPlace = ({ at, normal }: Plane, place: Vec3): Vec3 =>
  subtract(place, scale(normal, 2 * dot(subtract(place, at), normal)))

/** A direction after it has met a surface of this unit normal; a ray from the eye goes on so. */
export const mirroredDirection = (normal: Vec3, direction: Vec3): Vec3 =>
  subtract(direction, scale(normal, 2 * dot(direction, normal)))

/**
 * The camera behind the mirror, which sees straight what the camera sees in it, at the same place of the frame: its
 * right is the camera's right in the mirror, so it is left-handed.
 */
export const mirroredCamera = (plane: Plane, camera: SceneCamera): SceneCamera => ({
  ...camera,
  eye: mirroredPlace(plane, camera.eye),
  forward: mirroredDirection(plane.normal, camera.forward),
  right: mirroredDirection(plane.normal, camera.right),
  up: mirroredDirection(plane.normal, camera.up),
})

/** The unit normal that a mirror at a place must have, for the eye to see in it what lies in a direction. */
export const mirrorNormal = (place: Vec3, eye: Vec3, toward: Vec3): Vec3 =>
  unit(add(unit(subtract(eye, place)), unit(toward)))

/** A thing that is round outward everywhere: where its surface has a given outward normal. */
export interface RoundMirror {
  readonly middle: Vec3
  at(normal: Vec3): Vec3
  /** Its flattest radius of curvature, metres. */
  readonly flattest: number
}

/** Unit axes, square to each other, and half the size along each, metres. */
export interface Axis {
  readonly along: Vec3
  readonly half: number
}

/** A ball, or an egg: each half axis its own. Along two axes it is the section of a cylinder, in the plane of both. */
export const roundMirror = (middle: Vec3, axes: readonly Axis[]): RoundMirror => {
  const halves = axes.map(({ half }) => half)
  return {
    middle,
    flattest: Math.max(...halves) ** 2 / Math.min(...halves),
    at: (normal) => {
      const along = axes.map((axis) => dot(normal, axis.along))
      const reach = Math.hypot(...along.map((one, i) => one * halves[i]!))
      return axes.reduce<Vec3>(
        (at, axis, i) => add(at, scale(axis.along, (along[i]! * axis.half ** 2) / reach)),
        middle,
      )
    },
  }
}

export interface MirrorPlace {
  readonly at: Vec3
  /** Unit, outward. */
  readonly normal: Vec3
}

const rounds = 400
const close = 1e-10
/** Flatter to the surface than this (sine) nothing is seen in it. */
const grazing = 1e-6

/**
 * The place of a round thing at which the eye sees a light in it; undefined where the thing itself stands between, and
 * none shows. The normal is turned toward the one that the law asks for where it is now, by as much of the way as keeps
 * it from swinging past: what is near before a large ball turns fast.
 */
export const mirrorPlace = (mirror: RoundMirror, eye: Vec3, light: Vec3): MirrorPlace | undefined => {
  let normal = mirrorNormal(mirror.middle, eye, subtract(light, mirror.middle))
  for (let round = 0; round < rounds; round++) {
    const at = mirror.at(normal)
    const [toEye, toLight] = [subtract(eye, at), subtract(light, at)]
    const wanted = mirrorNormal(at, eye, toLight)
    const off = subtract(wanted, normal)
    const [near, far] = [length(toEye), length(toLight)]
    const facing = dot(wanted, toEye) / near
    if (length(off) < close)
      return dot(normal, toEye) > grazing * near && dot(normal, toLight) > grazing * far
        ? { at, normal }
        : undefined
    const swing = ((mirror.flattest / 2) * (1 / near + 1 / far)) / Math.max(facing, 0.05)
    normal = unit(add(normal, scale(off, 1 / (1 + swing))))
  }
  return undefined
}

/** An upright cylinder of elliptic section, endless; its axis stands on `middle`. */
export interface Cylinder {
  readonly middle: Vec3
  readonly section: readonly [Axis, Axis]
}

/**
 * The same on a cylinder. Seen from above it is a ring; of its height the mirror changes nothing, so that along the way
 * on the floor from the eye to the light by way of the ring the line rises evenly.
 */
export const mirrorPlaceOnCylinder = (
  { middle, section }: Cylinder,
  eye: Vec3,
  light: Vec3,
): MirrorPlace | undefined => {
  const level = ([x, y]: Vec3): Vec3 => [x, y, 0]
  const ring = mirrorPlace(roundMirror(level(middle), section), level(eye), level(light))
  if (ring === undefined) return undefined
  const [x, y] = ring.at
  const near = Math.hypot(eye[0] - x, eye[1] - y)
  const far = Math.hypot(light[0] - x, light[1] - y)
  return { at: [x, y, eye[2] + ((light[2] - eye[2]) * near) / (near + far)], normal: ring.normal }
}
