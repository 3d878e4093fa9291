/** The geometry of all patches as plain columns of numbers, for the inner loops. Lengths in metres, areas in m². */
import type { Vec3 } from '../../scene/vector.js'
import type { Patch } from './patch.js'

export interface Layout {
  readonly count: number
  /** Three numbers a patch: its middle, and unit vectors out of its front, across and up. */
  readonly at: Float64Array
  readonly normal: Float64Array
  readonly across: Float64Array
  readonly up: Float64Array
  /** Two numbers a patch: half its width and half its height. */
  readonly half: Float64Array
  /** From the middle to a corner. */
  readonly radius: Float64Array
  readonly area: Float64Array
}

export const layOut = (patches: readonly Patch[]): Layout => {
  const count = patches.length
  const columns = {
    count,
    at: new Float64Array(3 * count),
    normal: new Float64Array(3 * count),
    across: new Float64Array(3 * count),
    up: new Float64Array(3 * count),
    half: new Float64Array(2 * count),
    radius: new Float64Array(count),
    area: new Float64Array(count),
  }
  patches.forEach(({ face, area }, i) => {
    columns.at.set(face.centre, 3 * i)
    columns.normal.set(face.normal, 3 * i)
    columns.across.set(face.across, 3 * i)
    columns.up.set(face.up, 3 * i)
    columns.half[2 * i] = face.width / 2
    columns.half[2 * i + 1] = face.height / 2
    columns.radius[i] = Math.sqrt(face.width * face.width + face.height * face.height) / 2
    columns.area[i] = area
  })
  return columns
}

/** The place on patch i that lies `s` of its half width across and `t` of its half height up from its middle. */
export const placeOn = (
  { at, across, up, half }: Layout,
  i: number,
  s: number,
  t: number,
  into: [number, number, number],
): Vec3 => {
  const u = s * half[2 * i]!
  const v = t * half[2 * i + 1]!
  const p = 3 * i
  into[0] = at[p]! + (u * across[p]! + v * up[p]!)
  into[1] = at[p + 1]! + (u * across[p + 1]! + v * up[p + 1]!)
  into[2] = at[p + 2]! + (u * across[p + 2]! + v * up[p + 2]!)
  return into
}
