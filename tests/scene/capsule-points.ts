/** Points all over a capsule's surface, by its parametric form: the rounded ends and the coat between them. */
import type { Capsule } from '../../src/scene/scene.js'
import { add, cross, scale, subtract, unit, type Vec3 } from '../../src/scene/vector.js'

export const surfacePoints = (capsule: Capsule, fineness: number): Vec3[] => {
  const axis = unit(subtract(capsule.to, capsule.from), [0, 0, 1])
  const along = cross(axis, capsule.acrossDirection)
  const points: Vec3[] = []
  for (let i = 0; i < 2 * fineness; i++) {
    const turn = (Math.PI * i) / fineness
    for (let j = 0; j <= fineness / 2; j++) {
      const rise = (Math.PI * j) / fineness
      const ring = Math.cos(rise)
      const flat = add(
        scale(capsule.acrossDirection, capsule.across * ring * Math.cos(turn)),
        scale(along, capsule.along * ring * Math.sin(turn)),
      )
      const up = scale(axis, capsule.cap * Math.sin(rise))
      points.push(add(capsule.to, add(flat, up)), add(capsule.from, subtract(flat, up)))
    }
  }
  return points
}
