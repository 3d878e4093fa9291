/** What the camera's frame holds: an ideal pinhole at the lens, perspective without distortion. */
import type { SceneCamera } from './scene.js'
import { add, dot, scale, subtract, type Vec3 } from './vector.js'

export interface Projected {
  /** −1 at the frame's left edge, 1 at its right. */
  readonly x: number
  /** −1 at the bottom edge, 1 at the top. */
  readonly y: number
  /** Metres along the axis; 0 or less is beside or behind the camera, and x and y then only say to which side. */
  readonly depth: number
}

/** A point in the frame. Always finite: a point not in front of the camera is thrown far out of the frame. */
export const project = (camera: SceneCamera, point: Vec3): Projected => {
  const d = subtract(point, camera.eye)
  const depth = dot(d, camera.forward)
  const by = Math.max(depth, 1e-9)
  return {
    x: dot(d, camera.right) / (by * camera.tanHalfWidth),
    y: dot(d, camera.up) / (by * camera.tanHalfHeight),
    depth,
  }
}

/** True for a point in front of the camera and inside the frame. Says nothing of what stands before it. */
export const inFrame = (camera: SceneCamera, point: Vec3): boolean => {
  const { x, y, depth } = project(camera, point)
  return depth > 0 && Math.abs(x) <= 1 && Math.abs(y) <= 1
}

/** The direction (not of unit length: 1 along the axis) in which the camera sees a place of the frame. */
export const rayThrough = (camera: SceneCamera, x: number, y: number): Vec3 =>
  add(
    camera.forward,
    add(scale(camera.right, x * camera.tanHalfWidth), scale(camera.up, y * camera.tanHalfHeight)),
  )

/** How far a direction lies off the frame, in radians from the nearest of it; 0 inside, π behind the camera. */
export const beyondFrame = (camera: SceneCamera, direction: Vec3): number => {
  const depth = dot(direction, camera.forward)
  if (depth <= 0) return Math.PI
  const [a, b] = [dot(direction, camera.right) / depth, dot(direction, camera.up) / depth]
  const { tanHalfWidth: w, tanHalfHeight: h } = camera
  const [x, y] = [Math.max(-w, Math.min(w, a)), Math.max(-h, Math.min(h, b))]
  const [beside, over, turned] = [a - x, b - y, a * y - b * x]
  const across = Math.sqrt(beside * beside + over * over + turned * turned)
  return across === 0 ? 0 : Math.atan2(across, 1 + a * x + b * y)
}

export interface FrameOnPlane {
  /** Corners in order, as x and z in metres; four for a frame that meets the plane whole. */
  readonly polygon: readonly (readonly [number, number])[]
  readonly left: number
  readonly right: number
  readonly bottom: number
  readonly top: number
}

/** Rays flatter to the plane than this (a rise of one in a thousand) are cut off, so that the polygon stays finite. */
const grazing = 1e-3

/** The frame's cut with the plane at `y`, in metres; undefined where the camera does not look at that plane. */
export const frameOnPlane = (camera: SceneCamera, y: number): FrameOnPlane | undefined => {
  const ahead = y - camera.eye[1]
  if (Math.abs(ahead) < 1e-9) return undefined
  const side = Math.sign(ahead)
  const toward = (at: readonly [number, number]) => side * rayThrough(camera, at[0], at[1])[1] - grazing

  const corners: readonly (readonly [number, number])[] = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ]
  // The frame's corners, cut by the half-plane of rays that do reach the plane (Sutherland and Hodgman's clipping).
  const kept = corners.flatMap((corner, i) => {
    const next = corners[(i + 1) % 4]!
    const a = toward(corner)
    const b = toward(next)
    const crossing = (): readonly [number, number] => {
      const t = a / (a - b)
      return [corner[0] + (next[0] - corner[0]) * t, corner[1] + (next[1] - corner[1]) * t]
    }
    if (a > 0) return b > 0 ? [corner] : [corner, crossing()]
    return b > 0 ? [crossing()] : []
  })
  if (kept.length < 3) return undefined

  const polygon = kept.map(([u, v]): readonly [number, number] => {
    const ray = rayThrough(camera, u, v)
    const t = ahead / ray[1]
    return [camera.eye[0] + ray[0] * t, camera.eye[2] + ray[2] * t]
  })
  return { polygon, ...boxOf(polygon) }
}

export const boxOf = (polygon: readonly (readonly [number, number])[]) => ({
  left: Math.min(...polygon.map((p) => p[0])),
  right: Math.max(...polygon.map((p) => p[0])),
  bottom: Math.min(...polygon.map((p) => p[1])),
  top: Math.max(...polygon.map((p) => p[1])),
})
