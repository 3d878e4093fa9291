/** Places spread over a front, a panel or a window: what is looked for of it is looked for at each. */
import { face } from './facing.js'
import { lazyOf } from './lazy.js'
import type { Face, SceneLight } from './scene.js'
import { cornersOf } from './solids.js'
import { add, scale, subtract, type Vec3 } from './vector.js'

/** Places along each edge of a rectangle; a round outline has corners enough of its own. */
const along = 8
/** From the outline in to the middle. */
const shares = [1, 0.8, 0.6, 0.4, 0.2]

/** In order around it, from a corner on. */
export const outlinePlaces = lazyOf((face: Face): readonly Vec3[] => {
  const corners = cornersOf(face)
  const each = Math.ceil((4 * along) / corners.length)
  return corners.flatMap((corner, i) => {
    const side = subtract(corners[(i + 1) % corners.length]!, corner)
    return Array.from({ length: each }, (_, k) => add(corner, scale(side, k / each)))
  })
})

/** The outline, and rings within it down to the middle. */
export const frontPlaces = lazyOf((face: Face): readonly Vec3[] => [
  ...shares.flatMap((share) =>
    outlinePlaces(face).map((at) => add(face.centre, scale(subtract(at, face.centre), share))),
  ),
  face.centre,
])

/** Metres: as good as no end to it. */
const farOff = 1000
/** Radians across the disc of the sun; from memory. */
const sunDisc = (0.53 * Math.PI) / 180

/** What is seen of a light: its front; of the sun, its disc far off. */
export const shownFace = lazyOf((light: SceneLight): Face => {
  if (light.front !== undefined) return light.front
  const size = farOff * sunDisc
  return face('disc', scale(light.axis, -farOff), light.axis, size, size)
})
