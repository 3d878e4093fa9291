/** Which obstacles may stand between two cells: most pairs need no more than this. */
import type { Blocker } from '../visibility/blockers.js'
import { apartSquared } from '../visibility/segments.js'
import { type Layout, reachAlong } from './layout.js'
import type { Mesh } from './mesh.js'
import { type Obstacle, obstacleOf } from './obstacles.js'

export interface Obstacles {
  readonly all: readonly Obstacle[]
  /** By obstacle and cell, of flat ones: it lies wholly before (1), wholly behind (−1), in its plane (2), else 0. */
  readonly before: Int8Array
  /** Likewise, 1 where it stands so near to the cell that its shadow over it is no even one. */
  readonly close: Uint8Array
}

/**
 * An obstacle nearer than so many of a cell's radii, and not in its plane, is close to it: a plate may part it from all
 * that lies behind, a body stands in a part of its view.
 */
const closeBy = { plate: 1.2, body: 0.7 } as const

/** Metres: so near to a plate's plane a cell lies in it. */
const inPlane = 1e-6

export const obstaclesOf = (mesh: Mesh, blockers: readonly Blocker[]): Obstacles => {
  const cells = mesh.tree.layout
  const before = new Int8Array(blockers.length * cells.count)
  const close = new Uint8Array(blockers.length * cells.count)
  blockers.forEach(({ solid: { body } }, k) => {
    if (body.shape !== 'plate') return
    const { centre, normal } = body.face
    const { at } = cells
    for (let i = 0; i < cells.count; i++) {
      const p = 3 * i
      const off =
        (at[p]! - centre[0]) * normal[0] +
        (at[p + 1]! - centre[1]) * normal[1] +
        (at[p + 2]! - centre[2]) * normal[2]
      const reach = reachAlong(cells, i, normal[0], normal[1], normal[2])
      const flat = Math.abs(off) < inPlane && reach < inPlane
      before[k * cells.count + i] = flat ? 2 : off >= reach - inPlane ? 1 : off <= inPlane - reach ? -1 : 0
    }
  })
  const all = blockers.map((one) => obstacleOf(mesh, one))
  all.forEach((one, k) => {
    for (let i = 0; i < cells.count; i++)
      if (before[k * cells.count + i] !== 2 && isClose(cells, i, one)) close[k * cells.count + i] = 1
  })
  return { all, before, close }
}

const from: [number, number, number] = [0, 0, 0]
const way: [number, number, number] = [0, 0, 0]

/** Whether an obstacle meets the hull of two cells, and a plate has them on both its sides. */
export const mayStand = (
  { at, radius, count }: Layout,
  { all, before }: Obstacles,
  k: number,
  i: number,
  j: number,
): boolean => {
  const sideI = before[k * count + i]!
  const sideJ = before[k * count + j]!
  if (sideI === 2 || sideJ === 2 || (sideI !== 0 && sideI === sideJ)) return false
  const p = 3 * i
  const q = 3 * j
  const dx = at[q]! - at[p]!
  const dy = at[q + 1]! - at[p + 1]!
  const dz = at[q + 2]! - at[p + 2]!
  const one = all[k]!
  const x = one.x - at[p]!
  const y = one.y - at[p + 1]!
  const z = one.z - at[p + 2]!
  const along = Math.min(1, Math.max(0, (x * dx + y * dy + z * dz) / (dx * dx + dy * dy + dz * dz)))
  const offX = x - along * dx
  const offY = y - along * dy
  const offZ = z - along * dz
  const coat = Math.max(radius[i]!, radius[j]!)
  const reach = one.radius + coat
  if (offX * offX + offY * offY + offZ * offZ >= reach * reach) return false
  if (one.kind === 'plate') return plateStands(one.numbers, at[p]!, at[p + 1]!, at[p + 2]!, dx, dy, dz, coat)
  const { round } = one.blocker
  if (round === undefined) return true
  for (let axis = 0; axis < 3; axis++) from[axis] = at[p + axis]!
  way[0] = dx
  way[1] = dy
  way[2] = dz
  const apart = round.coat + coat
  return apartSquared(round.from, round.span, from, way) < apart * apart
}

/** Told by the capsule's segment and coat, the plate's rectangle, or the ball around anything else. */
const isClose = ({ at, radius }: Layout, i: number, one: Obstacle): boolean => {
  const [x, y, z] = [at[3 * i]!, at[3 * i + 1]!, at[3 * i + 2]!]
  const reach = (one.kind === 'plate' ? closeBy.plate : closeBy.body) * radius[i]!
  const ball = Math.hypot(x - one.x, y - one.y, z - one.z) - one.radius
  if (ball >= reach) return false
  const { round } = one.blocker
  if (round !== undefined) {
    const apart = reach + round.coat
    return apartSquared(round.from, round.span, [x, y, z], [0, 0, 0]) < apart * apart
  }
  if (one.kind !== 'plate') return true
  const n = one.numbers
  const [dx, dy, dz] = [x - n[0]!, y - n[1]!, z - n[2]!]
  const off = n[3]! * dx + n[4]! * dy + n[5]! * dz
  const beyond = (k: number): number => {
    // Axes come over half their lengths: so many of those, and how long one is.
    const u = Math.abs(n[k]! * dx + n[k + 1]! * dy + n[k + 2]! * dz)
    return u <= 1 ? 0 : (u - 1) / n[k === 6 ? 12 : 13]!
  }
  return Math.hypot(off, beyond(6), beyond(9)) < reach
}

/** Whether the plane of a plate is crossed near the plate itself by lines no further than so much from a line between cells. */
export const plateStands = (
  n: Float64Array,
  ax: number,
  ay: number,
  az: number,
  dx: number,
  dy: number,
  dz: number,
  coat: number,
): boolean => {
  const slope = n[3]! * dx + n[4]! * dy + n[5]! * dz
  const steep = Math.abs(slope) / Math.sqrt(dx * dx + dy * dy + dz * dz)
  if (steep < 0.2) return true
  const x = ax - n[0]!
  const y = ay - n[1]!
  const z = az - n[2]!
  const t = -(n[3]! * x + n[4]! * y + n[5]! * z) / slope
  // Cells reach to either side of the plane too.
  const wide = coat / steep
  const u = Math.abs(n[6]! * (x + t * dx) + n[7]! * (y + t * dy) + n[8]! * (z + t * dz))
  if (u > 1 + wide * n[12]!) return false
  const v = Math.abs(n[9]! * (x + t * dx) + n[10]! * (y + t * dy) + n[11]! * (z + t * dz))
  return v <= 1 + wide * n[13]!
}
