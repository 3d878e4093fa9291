/** What one element of a front gives to a receptor, with both in the front's own coordinates. */
import { gridTransmission, tanCutOff } from './grid.js'
import { photometryOf, tableToward } from './photometric.js'
import type { Pattern } from './source.js'

/** A receptor on the front's plane coordinates: (x, y, z) with z > 0, mirrored to the front if it is behind; its normal likewise. */
export interface LocalReceptor {
  readonly x: number
  readonly y: number
  readonly z: number
  readonly nx: number
  readonly ny: number
  readonly nz: number
  /** It is behind the front. */
  readonly behind: boolean
  readonly dome: boolean
  /** What lies behind the receptor's plane does not count: always for a flat one, for a dome lying on a surface. */
  readonly horizon: boolean
}

/** 1/m²: intensity toward the receptor over that on the axis, times the receptor's weight, over the distance squared. */
export type Kernel = (u: number, v: number) => number

export const kernelOf = (pattern: Pattern, receptor: LocalReceptor): Kernel => {
  const { x, y, z, nx, ny, nz, behind, dome, horizon } = receptor
  const { cosine, head, table, grid } = pattern
  const across = head === undefined ? 0 : Math.LN2 / 2 / head.tanAcross ** 2
  const up = head === undefined ? 0 : Math.LN2 / 2 / head.tanUp ** 2
  const exponent = cosine ?? 0
  return (u, v) => {
    const du = u - x
    const dv = v - y
    const squared = du * du + dv * dv + z * z
    const span = Math.sqrt(squared)
    const seen = (nx * du + ny * dv - nz * z) / span
    if (horizon && seen <= 0) return 0
    let given = (dome ? (1 + seen) / 2 : seen) / squared
    if (table !== undefined) given *= tableToward(table, -du, -dv, behind ? -z : z)
    else if (head !== undefined) given *= Math.exp(-(across * du * du + up * dv * dv) / (z * z))
    else if (exponent === 1) given *= z / span
    else if (exponent !== 0) given *= (z / span) ** exponent
    if (grid !== undefined) given *= gridTransmission(grid, du / z, dv / z)
    return given
  }
}

/**
 * How fast the kernel changes with the tangent of the angle, as the exponent of a cosine that falls alike: a rule's
 * elements must be small against the distance over its root. `kinked`: elements cross the creases of an egg crate.
 */
export const sharpness = (pattern: Pattern, kinked: boolean): number =>
  Math.min(sharpest, unbounded(pattern, kinked))

/** A two-degree beam has half of this. What is sharper is added up no finer, so that no pattern costs work without end. */
const sharpest = 1e4

const unbounded = ({ cosine, head, table, grid }: Pattern, kinked: boolean): number => {
  const beam =
    table !== undefined
      ? photometryOf(table.table).steepness
      : head !== undefined
        ? Math.LN2 / Math.min(head.tanAcross, head.tanUp) ** 2
        : (cosine ?? 0)
  if (grid === undefined || (grid.kind === 'egg-crate' && !kinked)) return 2 + beam
  return 2 + beam + (grid.kind === 'egg-crate' ? 8 : 4) / tanCutOff(grid) ** 2
}
