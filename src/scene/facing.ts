/** Which way panels, windows and fronts face. */
import type { Facing } from '../language/plan.js'
import { bearing } from './placing.js'
import type { Face } from './scene.js'
import { cross, subtract, unit, type Vec3 } from './vector.js'

/** Unit vectors of the words: left and right as seen from the camera's end of the centre line. */
export const sides = {
  left: [-1, 0, 0],
  right: [1, 0, 0],
  up: [0, 0, 1],
  down: [0, 0, -1],
  camera: [0, -1, 0],
  backdrop: [0, 1, 0],
} as const satisfies Readonly<Record<string, Vec3>>

/** Unit vector out of the face of something at `at`. A point that is not known, or where it stands itself: the camera's end. */
export const facing = (faces: Facing, at: Vec3, point: (name: string) => Vec3 | undefined): Vec3 => {
  if (faces.kind === 'side') return sides[faces.side]
  if (faces.kind === 'angle') return bearing(faces.angleLeft)
  const target = point(faces.point)
  return target === undefined ? sides.camera : unit(subtract(target, at), sides.camera)
}

/** The same way, kept level: for what stands upright. */
export const level = (direction: Vec3): Vec3 => unit([direction[0], direction[1], 0], sides.camera)

/**
 * A face about `centre` that looks along `normal`, its up as near to the vertical as it goes. One that lies flat has
 * its up toward the backdrop when it looks down, toward the camera's end when it looks up.
 */
export const face = (
  outline: Face['outline'],
  centre: Vec3,
  normal: Vec3,
  width: number,
  height: number,
): Face => {
  const flat = Math.hypot(normal[0], normal[1]) < 1e-6
  const upward = flat ? (normal[2] < 0 ? sides.backdrop : sides.camera) : sides.up
  const across = unit(cross(upward, normal))
  return {
    outline,
    centre,
    normal,
    across,
    up: cross(normal, across),
    width: width as Face['width'],
    height: height as Face['height'],
  }
}
