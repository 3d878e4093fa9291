/** The geometry of all patches as plain columns of numbers, for the inner loops. Lengths in metres, areas in m². */
import { dot, subtract, type Vec3 } from '../../scene/vector.js'
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
  /** Two numbers a patch: where its middle lies on its surface, across and up from the surface's own. */
  readonly on: Float64Array
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
    on: new Float64Array(2 * count),
    radius: new Float64Array(count),
    area: new Float64Array(count),
  }
  patches.forEach(({ surface, face, area }, i) => {
    columns.at.set(face.centre, 3 * i)
    columns.normal.set(face.normal, 3 * i)
    columns.across.set(face.across, 3 * i)
    columns.up.set(face.up, 3 * i)
    columns.half[2 * i] = face.width / 2
    columns.half[2 * i + 1] = face.height / 2
    const aside = subtract(face.centre, surface.face.centre)
    columns.on[2 * i] = dot(aside, face.across)
    columns.on[2 * i + 1] = dot(aside, face.up)
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

/** How far patch i reaches to either side of its middle along a direction. */
export const reachAlong = (
  { across, up, half }: Layout,
  i: number,
  x: number,
  y: number,
  z: number,
): number => {
  const p = 3 * i
  return (
    half[2 * i]! * Math.abs(across[p]! * x + across[p + 1]! * y + across[p + 2]! * z) +
    half[2 * i + 1]! * Math.abs(up[p]! * x + up[p + 1]! * y + up[p + 2]! * z)
  )
}

/** Whether a place this far from the middle of a cell, and so high over its plane, is nearer than so many of its lengths. */
export const isNearer = (
  { across, up, half }: Layout,
  i: number,
  dx: number,
  dy: number,
  dz: number,
  height: number,
  lengths: number,
): boolean => {
  const p = 3 * i
  const [a, b] = [half[2 * i]!, half[2 * i + 1]!]
  const u = Math.max(0, Math.abs(dx * across[p]! + dy * across[p + 1]! + dz * across[p + 2]!) - a)
  const v = Math.max(0, Math.abs(dx * up[p]! + dy * up[p + 1]! + dz * up[p + 2]!) - b)
  const reach = 2 * lengths * Math.max(a, b)
  return u * u + v * v + height * height < reach * reach
}

/** Whether a plane through a place this far from the middle of a cell cuts through the cell. */
export const cutsThrough = (
  layout: Layout,
  c: number,
  plane: Vec3,
  dx: number,
  dy: number,
  dz: number,
): boolean =>
  Math.abs(plane[0] * dx + plane[1] * dy + plane[2] * dz) <
  reachAlong(layout, c, plane[0], plane[1], plane[2])

/** A layout of one cell, which can be set to any of a grid of `count` by `count` on another's. */
export interface OneCell extends Layout {
  take(from: Layout, i: number, s: number, t: number, count: number): void
}

export const oneCell = (): OneCell => {
  const cell = {
    count: 1,
    at: new Float64Array(3),
    normal: new Float64Array(3),
    across: new Float64Array(3),
    up: new Float64Array(3),
    half: new Float64Array(2),
    on: new Float64Array(2),
    radius: new Float64Array(1),
    area: new Float64Array(1),
  }
  const at: [number, number, number] = [0, 0, 0]
  return {
    ...cell,
    take: (from, i, s, t, count) => {
      placeOn(from, i, s, t, at)
      for (let axis = 0; axis < 3; axis++) {
        cell.at[axis] = at[axis]!
        cell.normal[axis] = from.normal[3 * i + axis]!
        cell.across[axis] = from.across[3 * i + axis]!
        cell.up[axis] = from.up[3 * i + axis]!
      }
      cell.half[0] = from.half[2 * i]! / count
      cell.half[1] = from.half[2 * i + 1]! / count
      cell.radius[0] = from.radius[i]! / count
      cell.area[0] = from.area[i]! / (count * count)
    },
  }
}
