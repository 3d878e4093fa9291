/**
 * Where things show in what mirrors. The law: the line to the eye and the line to what is seen make the same angle with
 * the normal, on either side of it and in one plane with it; the normal halves the angle between them.
 * Source: the law of reflection; of round mirrors, Alhazen's problem.
 */
import type { SceneCamera } from './scene.js'
import { add, cross, distance, dot, length, scale, subtract, unit, type Vec3 } from './vector.js'

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
  /** How far that place moves, and where to, for a normal turned by so much, metres per radian. */
  moves(normal: Vec3, turned: Vec3): Vec3
}

/** Unit axes, square to each other, and half the size along each, metres. */
export interface Axis {
  readonly along: Vec3
  readonly half: number
}

/** A ball, or an egg: each half axis its own. Along two axes it is the section of a cylinder, in the plane of both. */
export const roundMirror = (middle: Vec3, axes: readonly Axis[]): RoundMirror => {
  const stretched = (v: Vec3): Vec3 =>
    axes.reduce<Vec3>((sum, { along, half }) => add(sum, scale(along, dot(v, along) * half ** 2)), [0, 0, 0])
  return {
    middle,
    at: (normal) => {
      const out = stretched(normal)
      return add(middle, scale(out, 1 / Math.sqrt(dot(normal, out))))
    },
    moves: (normal, turned) => {
      const [out, by] = [stretched(normal), stretched(turned)]
      const reach = Math.sqrt(dot(normal, out))
      return subtract(scale(by, 1 / reach), scale(out, dot(out, turned) / reach ** 3))
    },
  }
}

export interface MirrorPlace {
  readonly at: Vec3
  /** Unit, outward. */
  readonly normal: Vec3
}

/** Many more than are ever needed: near the end each squares what is off. */
const rounds = 100
const close = 1e-10
/** Flatter to the surface than this (sine) nothing is seen in it. */
const grazing = 1e-6
/** A step that makes the way longer is halved until it does not. */
const halvings = 40
/** Of the way: two that differ by less are as long. */
const equal = 1e-15

/**
 * The place of a round thing at which the eye sees a light in it; undefined where the thing itself stands between, and
 * none shows. It is where the way from the eye by it to the light is shortest (Fermat), of which a thing that is round
 * outward has one place only: Newton's steps toward the normal that halves the angle, each kept so short that the way
 * gets no longer. A normal turned along the plane of eye and light turns what halves the angle by the cosine of half of
 * it, one turned across by its inverse (of round mirrors, the tangential and the sagittal focus).
 */
export const mirrorPlace = (mirror: RoundMirror, eye: Vec3, light: Vec3): MirrorPlace | undefined => {
  const way = (at: Vec3): number => distance(eye, at) + distance(at, light)
  let normal = mirrorNormal(mirror.middle, eye, subtract(light, mirror.middle))
  let at = mirror.at(normal)
  for (let round = 0; round < rounds; round++) {
    const [toEye, toLight] = [subtract(eye, at), subtract(light, at)]
    const [near, far] = [length(toEye), length(toLight)]
    const wanted = mirrorNormal(at, eye, toLight)
    const facing = dot(wanted, toEye) / near
    // Straight through the thing.
    if (facing < grazing) return undefined
    if (distance(wanted, normal) < close)
      return dot(normal, toEye) > grazing * near && dot(normal, toLight) > grazing * far
        ? { at, normal }
        : undefined
    const step = turnToward(mirror, normal, wanted, unit(cross(toEye, toLight), across(normal)), {
      along: ((1 / near + 1 / far) * facing) / 2,
      across: (1 / near + 1 / far) / (2 * facing),
    })
    const was = way(at)
    let by = 1
    for (let halving = 0; halving < halvings; halving++, by /= 2) {
      const next = unit(add(normal, scale(step, by)))
      const there = mirror.at(next)
      if (way(there) > was * (1 + equal)) continue
      ;[normal, at] = [next, there]
      break
    }
  }
  return undefined
}

/** Any direction square to it. */
const across = (normal: Vec3): Vec3 => unit(cross(normal, Math.abs(normal[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0]))

/**
 * By how much to turn the normal, for it to be the wanted one where it then is: (1 + H·M)·step = off, in the plane that
 * touches there, M how the place moves with the normal and H how the wanted normal turns back with the place.
 */
const turnToward = (
  mirror: RoundMirror,
  normal: Vec3,
  wanted: Vec3,
  offPlane: Vec3,
  turns: { readonly along: number; readonly across: number },
): Vec3 => {
  const flat = subtract(offPlane, scale(normal, dot(offPlane, normal)))
  const v = unit(flat, across(normal))
  const u = cross(v, normal)
  const off = [dot(wanted, u), dot(wanted, v)] as const
  const [mu, mv] = [mirror.moves(normal, u), mirror.moves(normal, v)]
  const [a, b] = [1 + turns.along * dot(mu, u), turns.along * dot(mv, u)]
  const [c, d] = [turns.across * dot(mu, v), 1 + turns.across * dot(mv, v)]
  const det = a * d - b * c
  return add(scale(u, (off[0] * d - off[1] * b) / det), scale(v, (off[1] * a - off[0] * c) / det))
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
