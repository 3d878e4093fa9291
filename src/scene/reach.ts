/** How far a solid reaches in a direction: its support function. */
import { reach } from './capsule.js'
import type { SolidBody } from './scene.js'
import { dot, scale, type Vec3 } from './vector.js'

/** Metres from the origin, along a unit vector. */
export const reachOf = (body: SolidBody, direction: Vec3): number => {
  if (body.shape === 'capsule') return reach(body.capsule, direction)
  let most = -Infinity
  for (const corner of body.corners) most = Math.max(most, dot(corner, direction))
  return most
}

export interface Ball {
  readonly centre: Vec3
  readonly radius: number
}

/** A ball that holds the solid; not the least one. */
export const ballRound = (body: SolidBody): Ball => {
  const span = (axis: Vec3) => {
    const [far, near] = [reachOf(body, axis), -reachOf(body, scale(axis, -1))]
    return { middle: (far + near) / 2, half: (far - near) / 2 }
  }
  const [x, y, z] = [span([1, 0, 0]), span([0, 1, 0]), span([0, 0, 1])]
  return { centre: [x.middle, y.middle, z.middle], radius: Math.hypot(x.half, y.half, z.half) }
}
