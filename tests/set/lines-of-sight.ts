/** What hides a front, by lines of sight to its cells and a body's own test for being in the way: slow and independent. */
import type { Capsule, SceneFigure } from '../../src/scene/scene.js'
import { add, cross, dot, scale, subtract, type Vec3 } from '../../src/scene/vector.js'
import type { ComputedSet } from '../../src/set/computed-set.js'

/** True where a body stands on the line between two places: the nearest that two segments come, where the body is round. */
export const stands = (body: Capsule, a: Vec3, b: Vec3): boolean => {
  const axis = subtract(body.to, body.from)
  const tall = Math.hypot(...axis)
  const up: Vec3 = tall > 0 ? scale(axis, 1 / tall) : [0, 0, 1]
  const deep = cross(up, body.acrossDirection)
  const round = (v: Vec3): Vec3 => {
    const d = subtract(v, body.from)
    return [dot(d, body.acrossDirection) / body.across, dot(d, deep) / body.along, dot(d, up) / body.cap]
  }
  const [p, q] = [round(a), round(b)]
  const high = tall / body.cap
  // Along the line the distance from the upright axis is convex: the least is found by thirds.
  const off = (t: number) => {
    const [x, y, z] = add(p, scale(subtract(q, p), t))
    return Math.hypot(x, y, z < 0 ? z : z > high ? z - high : 0)
  }
  let [low, top] = [0, 1]
  for (let i = 0; i < 24; i++) {
    const [c, d] = [low + (top - low) / 3, top - (top - low) / 3]
    if (off(c) < off(d)) top = d
    else low = c
  }
  return off((low + top) / 2) < 1
}

/**
 * Share of a light that a figure hides from a place. A Lambertian front, each cell by cosine over the square of the way.
 *
 * @param weigh of a direction (unit) at the receptor
 */
export const hiddenByHand = (
  set: ComputedSet,
  figure: SceneFigure,
  at: Vec3,
  weigh: (toward: Vec3) => number,
  cells: number,
  light = 'key',
): number => {
  const { centre, across, up, normal, width, height } = set.scene.lights.get(light)!.front!
  let [all, hidden] = [0, 0]
  for (let i = 0; i < cells; i++)
    for (let j = 0; j < cells; j++) {
      const cell = add(
        centre,
        add(scale(across, ((i + 0.5) / cells - 0.5) * width), scale(up, ((j + 0.5) / cells - 0.5) * height)),
      )
      const way = subtract(cell, at)
      const far = Math.hypot(...way)
      const given = (weigh(scale(way, 1 / far)) * Math.max(0, -dot(way, normal) / far)) / far ** 2
      all += given
      if ([figure.head!, figure.body].some((part) => stands(part, at, cell))) hidden += given
    }
  return hidden / all
}
