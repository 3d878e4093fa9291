/** What one receptor takes of one patch with nothing between: exposure per unit exitance. */

import { dot, type Vec3 } from '../../scene/vector.js'
import { clipByLine, contourIrradiance, polygonSolidAngle } from '../polygon.js'
import type { Receptor } from '../receptor.js'
import type { Layout } from './layout.js'
import { rectangleIrradiance, rectangleSolidAngle } from './rectangle.js'

/** The point formula from this many radii on. */
const far = 3
/** Metres before a patch's plane from which on it gives light. */
const touching = 1e-9

/**
 * @param off metres from the receptor to the patch's plane.
 * @param back the receptor lies behind the patch.
 */
export const weightOf = (
  layout: Layout,
  i: number,
  { at, normal: n, kind, onSurface, against }: Receptor,
  off: number,
  back: boolean,
): number => {
  if (off < touching) return 0
  const { across, up, half, radius, area, normal } = layout
  const p = 3 * i
  const a = half[2 * i]!
  const b = half[2 * i + 1]!
  const dx = layout.at[p]! - at[0]
  const dy = layout.at[p + 1]! - at[1]
  const dz = layout.at[p + 2]! - at[2]
  const toward = n[0] * dx + n[1] * dy + n[2] * dz
  const nu = n[0] * across[p]! + n[1] * across[p + 1]! + n[2] * across[p + 2]!
  const nv = n[0] * up[p]! + n[1] * up[p + 1]! + n[2] * up[p + 2]!
  const dome = kind === 'dome'
  let cut = false
  if (!dome || onSurface === true) {
    const reach = a * Math.abs(nu) + b * Math.abs(nv)
    if (toward <= touching - reach) return 0
    cut = toward < reach - touching
  }
  let mu = 0
  let mv = 0
  let above = 0
  if (against !== undefined) {
    mu = against[0] * across[p]! + against[1] * across[p + 1]! + against[2] * across[p + 2]!
    mv = against[0] * up[p]! + against[1] * up[p + 1]! + against[2] * up[p + 2]!
    above = against[0] * dx + against[1] * dy + against[2] * dz
    const reach = a * Math.abs(mu) + b * Math.abs(mv)
    if (above <= touching - reach) return 0
    if (above < reach - touching) cut = true
  }
  const u = across[p]! * dx + across[p + 1]! * dy + across[p + 2]! * dz
  const v = up[p]! * dx + up[p + 1]! * dy + up[p + 2]! * dz
  const squared = u * u + v * v + off * off
  if (!cut && squared > far * far * radius[i]! * radius[i]!) {
    // The middle's value and its second derivatives along both axes.
    const straight = toward * off
    const bent =
      a * a * (straight * ((6 * u * u) / squared - 1) - 2 * nu * off * u) +
      b * b * (straight * ((6 * v * v) / squared - 1) - 2 * nv * off * v)
    const flat = (straight + (2 * bent) / (3 * squared)) / (squared * squared)
    if (!dome) return (Math.max(0, flat) * area[i]!) / Math.PI
    const bowed = (a * a * ((5 * u * u) / squared - 1) + b * b * ((5 * v * v) / squared - 1)) / (2 * squared)
    const angle = (off * (1 + bowed)) / (squared * Math.sqrt(squared))
    return (Math.max(0, (angle + flat) / 2) * area[i]!) / Math.PI
  }
  const side = back ? -1 : 1
  const nz = side * (n[0] * normal[p]! + n[1] * normal[p + 1]! + n[2] * normal[p + 2]!)
  if (!cut) {
    const facing = rectangleIrradiance(a, b, -u, -v, off, nu, nv, nz)
    if (!dome) return Math.max(0, facing) / Math.PI
    return Math.max(0, rectangleSolidAngle(a, b, -u, -v, off) + facing) / (2 * Math.PI)
  }
  let seen: readonly number[] = [-a, -b, a, -b, a, b, -a, b]
  if (!dome || onSurface === true) seen = clipByLine(seen, nu, nv, toward)
  if (against !== undefined && seen.length >= 6) seen = clipByLine(seen, mu, mv, above)
  if (seen.length < 6) return 0
  const facing = contourIrradiance(seen, -u, -v, off, nu, nv, nz)
  if (!dome) return Math.max(0, facing) / Math.PI
  return Math.max(0, polygonSolidAngle(seen, -u, -v, off) + facing) / (2 * Math.PI)
}

/**
 * What a receptor takes in surroundings of exitance 1: over all directions the mean of (1 + cos)/2 or of the cosine, cut
 * by the plane that it is held against. A dome lying on a surface and held against another is told by its own plane alone.
 */
export const weightOfAll = ({ kind, normal, onSurface, against }: Receptor): number => {
  const cut: Vec3 | undefined = kind === 'dome' && onSurface === true ? normal : against
  if (cut === undefined) return kind === 'flat' ? 1 : 2
  const cosine = dot(normal, cut)
  return kind === 'flat' ? (1 + cosine) / 2 : 1 + cosine / 2
}
