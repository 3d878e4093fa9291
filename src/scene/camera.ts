/**
 * The camera in space. Its eye is taken as the lens, a thin lens of the marked focal length: focused at the distance s
 * it forms the image f·s/(s − f) behind itself, so that half the angle of view has the tangent
 * (frame/2)·(s − f)/(f·s) = frame/(2f(1 + m)), m = f/(s − f) (Gauss's lens equation). Close up the angle narrows.
 */
import type { Camera } from '../language/plan.js'
import type { Metres } from '../units/quantity.js'
import type { SceneCamera } from './scene.js'
import { cross, dot, subtract, unit, type Vec3 } from './vector.js'

/** Nearer than this many focal lengths no thin lens focuses: magnification is held at 10. */
const nearest = 1.1

/** 1 + m at the focus distance; both in metres. */
export const extension = (lens: number, focus: number): number =>
  focus > nearest * lens ? focus / (focus - lens) : nearest / (nearest - 1)

/** Where the camera stands, over the floor. */
export const cameraEye = (camera: Camera): Vec3 => [camera.at.right, -camera.at.distance, camera.at.height]

/** `target` undefined: level, straight ahead. `focusAt`: the point focused on, or a length along the axis. */
export const sceneCamera = (
  camera: Camera,
  eye: Vec3,
  target: Vec3 | undefined,
  focusAt: Vec3 | number,
): SceneCamera => {
  const forward: Vec3 = target === undefined ? [0, 1, 0] : unit(subtract(target, eye), [0, 1, 0])
  // Looking straight up or down, the frame's right stays the set's right.
  const right = unit(cross(forward, [0, 0, 1]), [1, 0, 0])
  const up = cross(right, forward)
  const along = typeof focusAt === 'number' ? focusAt : dot(subtract(focusAt, eye), forward)
  const lens = Math.max(camera.lens, 1e-4)
  const focus = Math.max(along, nearest * lens)
  const { width, height } = camera.sensor
  const [short, long] = width < height ? [width, height] : [height, width]
  const behind = 2 * lens * extension(lens, focus)
  return {
    eye,
    forward,
    right,
    up,
    tanHalfWidth: (camera.frame === 'vertical' ? short : long) / behind,
    tanHalfHeight: (camera.frame === 'vertical' ? long : short) / behind,
    focus: focus as Metres,
  }
}
