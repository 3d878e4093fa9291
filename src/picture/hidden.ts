import { firstHit } from '../scene/first-hit.js'
import type { Scene } from '../scene/scene.js'
import type { Vec3 } from '../scene/vector.js'

/** Metres: what is met so near before a thing is the thing, or what it lies on. */
export const onIt = 0.02

/**
 * True where something stands on the way from a place to what lies so many metres off that way. Walls stand behind all
 * that is in the room: they hide nothing, and a window lies in one.
 */
export const isHidden = (
  scene: Scene,
  from: Vec3,
  toward: Vec3,
  reach: number,
  except: ReadonlySet<string>,
): boolean => {
  const hit = firstHit(scene, from, toward, except)
  return hit !== undefined && hit.on !== 'room' && hit.distance < reach - onIt
}
