/** Where a light comes from, as the trade says it: so many degrees up, so many to one side of the camera. */
import type { Scene } from '../scene/scene.js'
import { scale, subtract, unit, type Vec3 } from '../scene/vector.js'
import { inDegrees } from '../units/quantity.js'

/** Unit vector from a place to the middle of a light's front, or to the sun; undefined for a light that the scene lacks. */
export const towardLight = (scene: Scene, light: string, from: Vec3): Vec3 | undefined => {
  const found = scene.lights.get(light)
  if (found === undefined) return undefined
  return found.front === undefined ? scale(found.axis, -1) : unit(subtract(found.front.centre, from))
}

/** Degrees over the horizontal; negative is from below. */
export const degreesUp = (toward: Vec3): number => inDegrees(Math.asin(Math.min(1, Math.max(-1, toward[2]))))

/** Seen from above, degrees from the line to the camera, camera-right positive; undefined straight over or under a place. */
export const degreesAside = (scene: Scene, from: Vec3, toward: Vec3): number | undefined => {
  const [x, y] = subtract(scene.camera.eye, from)
  const across = x * toward[1] - y * toward[0]
  const along = x * toward[0] + y * toward[1]
  return Math.hypot(across, along) < 1e-9 ? undefined : inDegrees(Math.atan2(across, along))
}

/** `camera-left` or `camera-right`, of degrees aside. */
export const sideOf = (aside: number): string => (aside < 0 ? 'camera-left' : 'camera-right')
