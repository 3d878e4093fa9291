/** The share of the lines between two clusters that nothing crosses, by a few fixed lines; most pairs need none. */
import type { Blocker } from '../visibility/blockers.js'
import { apartSquared } from '../visibility/segments.js'
import { type Layout, placeOn } from './layout.js'
import type { Mesh } from './mesh.js'
import { cast, clear, lostFromA, lostFromB, type Obstacle, obstacleOf } from './obstacles.js'

export interface Obstacles {
  readonly all: readonly Obstacle[]
  /** By obstacle and cluster, of flat ones: it lies wholly before (1), wholly behind (−1), in its plane (2), else 0. */
  readonly before: Int8Array
}

/** Metres: so near to a plate's plane a cluster lies in it. */
const inPlane = 1e-6

export const obstaclesOf = (mesh: Mesh, blockers: readonly Blocker[]): Obstacles => {
  const clusters = mesh.tree.layout
  const before = new Int8Array(blockers.length * clusters.count)
  blockers.forEach(({ solid: { body } }, k) => {
    if (body.shape !== 'plate') return
    const { centre, normal } = body.face
    const { at, across, up, half } = clusters
    for (let i = 0; i < clusters.count; i++) {
      const p = 3 * i
      const off =
        (at[p]! - centre[0]) * normal[0] +
        (at[p + 1]! - centre[1]) * normal[1] +
        (at[p + 2]! - centre[2]) * normal[2]
      const reach =
        half[2 * i]! *
          Math.abs(across[p]! * normal[0] + across[p + 1]! * normal[1] + across[p + 2]! * normal[2]) +
        half[2 * i + 1]! * Math.abs(up[p]! * normal[0] + up[p + 1]! * normal[1] + up[p + 2]! * normal[2])
      const flat = Math.abs(off) < inPlane && reach < inPlane
      before[k * clusters.count + i] = flat ? 2 : off >= reach - inPlane ? 1 : off <= inPlane - reach ? -1 : 0
    }
  })
  return { all: blockers.map((one) => obstacleOf(mesh, one)), before }
}

const some: Obstacle[] = []
const a: [number, number, number] = [0, 0, 0]
const b: [number, number, number] = [0, 0, 0]
const quarters = [
  [-0.5, -0.5],
  [0.5, -0.5],
  [-0.5, 0.5],
  [0.5, 0.5],
] as const

/** Shares of the lines between clusters i and j: free ones, and those that end on a black thing, from i and from j. */
export interface Between {
  /** Whether anything stands near the lines at all. */
  some: boolean
  clear: number
  lostFromI: number
  lostFromJ: number
}

export const between = (
  clusters: Layout,
  obstacles: Obstacles,
  i: number,
  j: number,
  into: Between,
): Between => {
  into.some = false
  into.clear = 1
  into.lostFromI = 0
  into.lostFromJ = 0
  const { all } = obstacles
  let count = 0
  for (let k = 0; k < all.length; k++) if (mayStand(clusters, obstacles, k, i, j)) some[count++] = all[k]!
  if (count === 0) return into
  into.some = true
  const { swapped, s, t } = pairing(clusters, i, j)
  let [free, fromI, fromJ] = [0, 0, 0]
  for (const [u, v] of quarters) {
    placeOn(clusters, i, u, v, a)
    placeOn(clusters, j, s * (swapped ? v : u), t * (swapped ? u : v), b)
    const met = cast(some, count, a[0], a[1], a[2], b[0], b[1], b[2])
    if (met === clear) free++
    if ((met & lostFromA) !== 0) fromI++
    if ((met & lostFromB) !== 0) fromJ++
  }
  into.clear = free / 4
  into.lostFromI = fromI / 4
  into.lostFromJ = fromJ / 4
  return into
}

const from: [number, number, number] = [0, 0, 0]
const way: [number, number, number] = [0, 0, 0]

/** Whether an obstacle meets the hull of two clusters, and a plate has them on both its sides. */
const mayStand = (
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
  const { spine } = one.blocker
  if (spine === undefined) return true
  for (let axis = 0; axis < 3; axis++) from[axis] = at[p + axis]!
  way[0] = dx
  way[1] = dy
  way[2] = dz
  const apart = spine.coat + coat
  return apartSquared(spine.from, spine.along, from, way) < apart * apart
}

/**
 * Which quarter of one patch goes with which of the other, so that the lines run side by side and do not cross in one
 * place. Told by how the axes look from along the line, hence alike in a mirrored set.
 */
const pairing = (
  { at, across, up }: Layout,
  i: number,
  j: number,
): { readonly swapped: boolean; readonly s: number; readonly t: number } => {
  const p = 3 * i
  const q = 3 * j
  const d = [at[q]! - at[p]!, at[q + 1]! - at[p + 1]!, at[q + 2]! - at[p + 2]!] as const
  const squared = d[0] * d[0] + d[1] * d[1] + d[2] * d[2]
  const alike = (one: Float64Array, other: Float64Array): number =>
    one[p]! * other[q]! +
    one[p + 1]! * other[q + 1]! +
    one[p + 2]! * other[q + 2]! -
    ((one[p]! * d[0] + one[p + 1]! * d[1] + one[p + 2]! * d[2]) *
      (other[q]! * d[0] + other[q + 1]! * d[1] + other[q + 2]! * d[2])) /
      squared
  const straightS = alike(across, across)
  const straightT = alike(up, up)
  const crossS = alike(up, across)
  const crossT = alike(across, up)
  const swapped = Math.abs(crossS) + Math.abs(crossT) > Math.abs(straightS) + Math.abs(straightT) + 1e-9
  const [s, t] = swapped ? [crossS, crossT] : [straightS, straightT]
  return { swapped, s: s < 0 ? -1 : 1, t: t < 0 ? -1 : 1 }
}
