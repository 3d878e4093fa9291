/**
 * Lamps: a flat front that throws its intensity from every point of it alike, in one pattern; or parallel light.
 * Everything is per unit of the intensity on the axis from far off (of parallel light: of its exposure square to it).
 * Patterns are those that the design of the light defines, written down once more.
 */
import type { Face } from '../../src/scene/scene.js'
import type { Vec3 } from '../../src/scene/vector.js'

/** Intensity against that on the axis, toward a unit vector in the front's frame: across, up, out. */
export type Pattern = (x: number, y: number, z: number) => number

export type Lamp =
  | { readonly name: string; readonly face: Face; readonly pattern: Pattern }
  /** Where parallel light comes from: unit vector. */
  | { readonly name: string; readonly from: Vec3 }

/** cosⁿ of the angle to the axis: radiance ∝ cosⁿ⁻¹. `both`: the same backwards. */
export const cosine =
  (n: number, both = false): Pattern =>
  (_x, _y, z) =>
    z > 0 ? z ** n : both && z < 0 ? (-z) ** n : 0

export const lambertian = cosine(1)

/** Half of the peak at half of the beam's angle: radians. */
export const beam = (angle: number): Pattern => cosine(Math.log(0.5) / Math.log(Math.cos(angle / 2)))

/**
 * A flash head at a zoom of a 36 × 24 mm frame: half a stop down at the middle of each edge, one at the corner,
 * elliptical and separable in the tangents at once: so stops go as the sum of squares.
 */
export const zoomHead =
  (millimetres: number): Pattern =>
  (x, y, z) => {
    if (z <= 0) return 0
    const [u, v] = [((x / z) * millimetres) / 18, ((y / z) * millimetres) / 12]
    return Math.SQRT1_2 ** (u * u + v * v)
  }

/** Square cells: how much of a cell's mouth is still open to light on the slant, across and up. */
export const eggCrate = (under: Pattern, cutOff: number): Pattern => {
  const edge = Math.tan(cutOff)
  const open = (tangent: number) => Math.max(0, 1 - Math.abs(tangent) / edge)
  return (x, y, z) => (z > 0 ? under(x, y, z) * open(x / z) * open(y / z) : 0)
}

/** Round cells: what a cell's mouth and foot, seen on the slant, still have in common; half at half the angle given. */
export const honeycomb = (under: Pattern, between: number): Pattern => {
  const shared = (apart: number): number =>
    apart < 1 ? (2 * (Math.acos(apart) - apart * Math.sqrt(1 - apart * apart))) / Math.PI : 0
  let [low, high] = [0, 1]
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2
    if (shared(middle) > 0.5) low = middle
    else high = middle
  }
  const scale = low / Math.tan(between / 2)
  return (x, y, z) => (z > 0 ? under(x, y, z) * shared((Math.hypot(x, y) / z) * scale) : 0)
}

/** A dish's plate hides the middle of its front: share of the diameter. */
export const plate = 0.3

/** Two even numbers to a place on the front, in halves of its width and height; evenly over its area. */
export const onFront = (outline: Face['outline'], u: number, v: number, into: Float64Array): void => {
  if (outline === 'rectangle') {
    into[0] = 2 * u - 1
    into[1] = 2 * v - 1
  } else if (outline === 'octagon') {
    // Corners on the circle, one side level: eight alike triangles from the middle.
    const slice = Math.floor(8 * u)
    const along = 8 * u - slice
    const out = Math.sqrt(v)
    const [a, b] = [((slice - 0.5) * Math.PI) / 4, ((slice + 0.5) * Math.PI) / 4]
    into[0] = out * ((1 - along) * Math.cos(a) + along * Math.cos(b))
    into[1] = out * ((1 - along) * Math.sin(a) + along * Math.sin(b))
  } else {
    const inner = outline === 'ring' ? plate * plate : 0
    const out = Math.sqrt(inner + (1 - inner) * u)
    into[0] = out * Math.cos(2 * Math.PI * v)
    into[1] = out * Math.sin(2 * Math.PI * v)
  }
}
