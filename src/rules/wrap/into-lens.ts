/** Lights whose front looks at the lens. */
import { surroundReach } from '../../picture/glare.js'
import { beyondFrame } from '../../scene/camera-view.js'
import type { Scene } from '../../scene/scene.js'
import { dot, subtract, type Vec3 } from '../../scene/vector.js'
import { towardLight } from '../light-direction.js'

export interface SeenFromLens {
  /** Unit: from the lens. */
  readonly toward: Vec3
  /** Radians from the frame; 0 inside it. */
  readonly beyond: number
}

/** The lens stands within this of the light's axis: the front looks at it. */
const looksAtIt = Math.cos(Math.PI / 3)

/** Undefined for a light that lies further than 30° off the frame or has its front turned away; what stands between is not asked. */
export const seenFromLens = (scene: Scene, light: string): SeenFromLens | undefined => {
  const { eye } = scene.camera
  const toward = towardLight(scene, light, eye)
  const found = scene.lights.get(light)
  if (toward === undefined || found === undefined) return undefined
  const beyond = beyondFrame(scene.camera, toward)
  if (beyond >= surroundReach) return undefined
  const { front } = found
  if (front === undefined) return { toward, beyond }
  const away = subtract(eye, front.centre)
  return dot(front.normal, away) > looksAtIt * Math.hypot(...away) ? { toward, beyond } : undefined
}
