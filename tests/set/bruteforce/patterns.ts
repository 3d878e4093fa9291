/**
 * Beams, as intensity against that on the axis, by the direction in the front's own frame: [across, up, along the axis],
 * a unit vector. And what flux a beam holds, by adding it up over the sphere.
 */
import { degrees, type Vector } from './vectors.js'

export type Pattern = (direction: Vector) => number

/** cosⁿ of the angle to the axis; 1 is Lambertian. */
export const cosine =
  (n: number): Pattern =>
  ([, , z]) =>
    z > 0 ? z ** n : 0

export const lambertian = cosine(1)

/** Lambertian, and the same backwards: a thin cloth lit from one side. */
export const bothWays: Pattern = ([, , z]) => Math.abs(z)

/** cosⁿ that falls to half at half the beam angle. */
export const beam = (angle: number): Pattern =>
  cosine(Math.log(1 / 2) / Math.log(Math.cos(degrees(angle / 2))))

/**
 * A zoom head. The only function that is both separable in the two tangents and the same on ellipses is the Gaussian;
 * half a stop down at each edge of a 36 × 24 mm frame at `zoom`, times `widened`.
 */
export const zoomed =
  (zoom: number, widened = 1): Pattern =>
  ([x, y, z]) => {
    if (z <= 0) return 0
    const u = ((x / z) * zoom) / 18 / widened
    const v = ((y / z) * zoom) / 12 / widened
    return 2 ** (-(u * u + v * v) / 2)
  }

/** Square cells: light at a tangent of t passes to a share of 1 − t over the cut-off's tangent, across and up. */
export const eggCrate = (under: Pattern, cutOff: number): Pattern => {
  const t = Math.tan(degrees(cutOff))
  const passes = (tangent: number) => Math.max(0, 1 - Math.abs(tangent) / t)
  return (d) => (d[2] > 0 ? under(d) * passes(d[0] / d[2]) * passes(d[1] / d[2]) : 0)
}

/** Round cells: what two circles, pushed apart by the slant through the cell, still share of their area. */
const circlesShare = (apart: number): number =>
  apart >= 1 ? 0 : (2 / Math.PI) * (Math.acos(apart) - apart * Math.sqrt(1 - apart * apart))

/** @param between the two directions in which the cells pass half of what they pass straight ahead, degrees */
export const honeycomb = (under: Pattern, between: number): Pattern => {
  const half = bisect((apart) => 1 / 2 - circlesShare(apart), 0, 1)
  const perTangent = half / Math.tan(degrees(between / 2))
  return (d) => (d[2] > 0 ? under(d) * circlesShare((Math.hypot(d[0], d[1]) / d[2]) * perTangent) : 0)
}

/** Lumens for each candela on the axis: midpoints over a quarter of the sphere, since all beams here have four like quarters. */
export const flux = (pattern: Pattern): number => {
  const [rings, around] = [800, 16]
  let sum = 0
  for (let i = 0; i < rings; i++) {
    const polar = ((i + 0.5) / rings) * Math.PI
    for (let j = 0; j < around; j++) {
      const turn = (((j + 0.5) / around) * Math.PI) / 2
      const s = Math.sin(polar)
      sum += s * pattern([s * Math.cos(turn), s * Math.sin(turn), Math.cos(polar)])
    }
  }
  return (sum * 2 * Math.PI ** 2) / (rings * around)
}

/** Where a rising function goes through zero. */
export const bisect = (f: (x: number) => number, from: number, to: number): number => {
  let [low, high] = [from, to]
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2
    if (f(middle) < 0) low = middle
    else high = middle
  }
  return (low + high) / 2
}
