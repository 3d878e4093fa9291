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
 * elements must be small against the distance over its root. Of a table where it is steepest. `kinked`: elements cross the
 * creases of an egg crate.
 */
export const sharpness = (pattern: Pattern, kinked: boolean): number =>
  evenly(pattern, kinked) + (pattern.table === undefined ? 0 : photometryOf(pattern.table.table).steepness)

/** The same without what a table has of its own. */
export const evenly = ({ cosine, head, grid }: Pattern, kinked: boolean): number => {
  const beam = head === undefined ? (cosine ?? 0) : Math.LN2 / Math.min(head.tanAcross, head.tanUp) ** 2
  if (grid === undefined || (grid.kind === 'egg-crate' && !kinked)) return 2 + beam
  return 2 + beam + (grid.kind === 'egg-crate' ? 8 : 4) / tanCutOff(grid) ** 2
}

/** Beyond this a beam gives under a 2⁻¹⁶th of what it gives ahead, and all that is further out together little more. */
const faint = 2 ** 16

/**
 * Tangents across and up beyond which the kernel is nothing, or next to nothing beside the light ahead; undefined where
 * none are worth cutting at. What is sharp is added up within them, so that no beam costs work without end.
 */
export const reachOf = ({
  cosine,
  head,
  grid,
}: Pattern): readonly [across: number, up: number] | undefined => {
  let across = Number.POSITIVE_INFINITY
  let up = across
  if (head !== undefined) {
    const widths = Math.sqrt(2 * Math.log2(faint))
    across = widths * head.tanAcross
    up = widths * head.tanUp
  } else if (cosine !== undefined && cosine > broad) {
    across = Math.sqrt(faint ** (2 / (cosine + 3)) - 1)
    up = across
  }
  const cut = grid === undefined ? across : Math.min(across, tanCutOff(grid))
  if (cut === Number.POSITIVE_INFINITY && up === cut) return undefined
  return [cut, grid === undefined ? up : Math.min(up, tanCutOff(grid))]
}

/** Exponent of beams of 30° and wider: the few parts that they need are soon added up. */
const broad = 20
