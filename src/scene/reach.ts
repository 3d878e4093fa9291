/** How far a solid reaches: in a direction (its support function), and all round (a ball that holds it). */
import { reach } from './capsule.js'
import type { SolidBody } from './scene.js'
import { add, distance, dot, scale, type Vec3 } from './vector.js'

/** Metres from the origin, along a unit vector. */
export const reachOf = (body: SolidBody, direction: Vec3): number => {
  if (body.shape === 'capsule') return reach(body.capsule, direction)
  let most = -Infinity
  for (const corner of body.corners) most = Math.max(most, dot(corner, direction))
  return most
}

export interface Ball {
  readonly centre: Vec3
  /** Metres: no part of it is further from the centre. */
  readonly radius: number
}

/** Not the least one. */
export const ballRound = (body: SolidBody): Ball => {
  if (body.shape === 'capsule') {
    const { from, to, across, along, cap } = body.capsule
    return {
      centre: scale(add(from, to), 0.5),
      radius: distance(from, to) / 2 + Math.max(across, along, cap),
    }
  }
  const { corners } = body
  const centre = scale(
    corners.reduce<Vec3>((sum, corner) => add(sum, corner), [0, 0, 0]),
    1 / corners.length,
  )
  return { centre, radius: Math.max(...corners.map((corner) => distance(corner, centre))) }
}
