/** How the frame lies on the backdrop: what of each edge it goes past, and what floor it sees before it. */
import { frameOnPlane, rayThrough } from '../scene/camera-view.js'
import type { Scene, SceneCamera } from '../scene/scene.js'

export interface BackdropMargins {
  /**
   * Metres that the frame goes past each edge, in the backdrop's plane; negative is paper to spare. Where the paper
   * comes forward as a sweep and the frame sees it, `bottom` counts along the floor or table past the sweep's front edge.
   */
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
  /** The frame sees the floor (or table) before the backdrop: `y` of the nearest of it, and whether paper covers it. */
  readonly floor: { readonly nearest: number; readonly covered: boolean } | undefined
}

/** Undefined without a backdrop, or where the camera does not look at its plane. Sees through subject and gear. */
export const backdropMargins = (scene: Scene): BackdropMargins | undefined => {
  const { backdrop, camera } = scene
  const frame = backdrop && frameOnPlane(camera, backdrop.y)
  if (backdrop === undefined || frame === undefined) return undefined
  const nearest = nearestFloor(camera, backdrop.bottom)
  const seesFloor = nearest !== undefined && nearest < backdrop.y
  const below =
    seesFloor && backdrop.sweepFront !== undefined
      ? backdrop.sweepFront - nearest
      : backdrop.bottom - frame.bottom
  return {
    left: backdrop.left - frame.left,
    right: frame.right - backdrop.right,
    top: frame.top - backdrop.top,
    bottom: below,
    floor: seesFloor
      ? { nearest, covered: backdrop.sweepFront !== undefined && nearest >= backdrop.sweepFront }
      : undefined,
  }
}

/** y where the frame's lower edge meets a floor at height z, the nearer of its two corners; undefined over the horizon. */
const nearestFloor = (camera: SceneCamera, z: number): number | undefined => {
  const rise = camera.eye[2] - z
  const meets = [-1, 1].flatMap((x) => {
    const ray = rayThrough(camera, x, -1)
    return rise > 0 && ray[2] < 0 ? [camera.eye[1] + (ray[1] * rise) / -ray[2]] : []
  })
  return meets.length === 0 ? undefined : Math.min(...meets)
}
