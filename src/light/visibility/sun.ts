/** The sun's disc, half a degree wide, so that the edges of its shadows soften as they do. */
import { cross, unit, type Vec3 } from '../../scene/vector.js'
import { clipByLine } from '../polygon.js'
import type { Receptor } from '../receptor.js'
import type { Polygon } from './polygons.js'
import type { Screen } from './screen.js'

/** Tangent of its mean angular radius: 959.63″ at one astronomical unit (Allen's Astrophysical Quantities; from memory). */
const radius = Math.tan((959.63 / 3600) * (Math.PI / 180))

const sides = 16
const turn = (2 * Math.PI) / sides
/** Corners of a polygon of the disc's area. */
export const sunTangent = radius * Math.sqrt(turn / Math.sin(turn))
export const wholeSun: Polygon = Array.from({ length: sides }, (_, i) => [
  sunTangent * Math.cos((i + 0.5) * turn),
  sunTangent * Math.sin((i + 0.5) * turn),
]).flat()

export const sunScreen = (toward: Vec3): Screen => {
  const across = unit(cross(toward, Math.abs(toward[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0]))
  return {
    to: toward,
    across,
    up: cross(toward, across),
    halfWidth: sunTangent,
    halfHeight: sunTangent,
  }
}

/** The part of the disc before the plane that the receptor is held against. */
export const sunDisc = ({ to, across, up }: Screen, { against }: Receptor): Polygon => {
  if (against === undefined) return wholeSun
  const along = (v: Vec3): number => against[0] * v[0] + against[1] * v[1] + against[2] * v[2]
  return clipByLine(wholeSun, along(across), along(up), along(to))
}
