/** The share of the lines between two clusters that nothing crosses, by a few fixed lines; most pairs need none. */
import type { Blocker } from '../visibility/blockers.js'
import { apartSquared } from '../visibility/segments.js'
import { type Layout, placeOn } from './layout.js'
import type { Mesh } from './mesh.js'
import { cast, clear, lostFromA, lostFromB, type Obstacle, obstacleOf } from './obstacles.js'

interface Obstacles {
  readonly all: readonly Obstacle[]
  /** By obstacle and cluster, of flat ones: it lies wholly before (1), wholly behind (−1), in its plane (2), else 0. */
  readonly before: Int8Array
  /** Likewise, 1 where it stands so near to the cell that its shadow over it is no even one. */
  readonly close: Uint8Array
}

/** An obstacle nearer than so many of a cell's radii, and not in its plane, is close to it. */
const closeBy = 1.2

/** Metres: so near to a plate's plane a cluster lies in it. */
const inPlane = 1e-6

const obstaclesOf = (mesh: Mesh, blockers: readonly Blocker[]): Obstacles => {
  const clusters = mesh.tree.layout
  const before = new Int8Array(blockers.length * clusters.count)
  const close = new Uint8Array(blockers.length * clusters.count)
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
  const all = blockers.map((one) => obstacleOf(mesh, one))
  all.forEach((one, k) => {
    for (let i = 0; i < clusters.count; i++)
      if (before[k * clusters.count + i] !== 2 && isClose(clusters, i, one)) close[k * clusters.count + i] = 1
  })
  return { all, before, close }
}

const corners = [-1, -1, 1, -1, -1, 1, 1, 1] as const

/** What stands between two cells, and what of the lines between them is free. One object serves many pairs. */
export class Sight {
  /** Shares: free lines, and those that end on a black thing, from i and from j. */
  clear = 1
  lostFromI = 0
  lostFromJ = 0
  /** By how much of itself the free share grows from the middle to the end of i across and up, then of j. */
  readonly grows = new Float64Array(4)
  /** Whether some of what stands between stands close to i, to j. */
  closeToI = false
  closeToJ = false
  private count = 0
  private readonly some: Obstacle[] = []
  private readonly obstacles: Obstacles
  /** Twelve numbers a cell: the middles of its quarters. */
  private readonly quarters: Float64Array

  constructor(
    private readonly mesh: Mesh,
    blockers: readonly Blocker[],
  ) {
    const { layout } = mesh.tree
    this.obstacles = obstaclesOf(mesh, blockers)
    this.quarters = new Float64Array(12 * layout.count)
    const at: [number, number, number] = [0, 0, 0]
    for (let c = 0; c < layout.count; c++)
      for (let k = 0; k < 4; k++) {
        placeOn(layout, c, corners[2 * k]! / 2, corners[2 * k + 1]! / 2, at)
        this.quarters.set(at, 12 * c + 3 * k)
      }
  }

  /** False where nothing can stand between. */
  take(i: number, j: number): boolean {
    const { obstacles, some } = this
    const { all, close } = obstacles
    const cells = this.mesh.tree.layout
    this.clear = 1
    this.lostFromI = 0
    this.lostFromJ = 0
    this.grows.fill(0)
    this.closeToI = false
    this.closeToJ = false
    let count = 0
    for (let k = 0; k < all.length; k++) {
      if (!mayStand(cells, obstacles, k, i, j)) continue
      some[count++] = all[k]!
      if (close[k * cells.count + i] === 1) this.closeToI = true
      if (close[k * cells.count + j] === 1) this.closeToJ = true
    }
    this.count = count
    return count > 0
  }

  /** From each quarter of i to each of j; or only from the middle of each to the quarters of the other. */
  look(i: number, j: number, all: boolean): void {
    const { some, count, quarters, grows } = this
    const { at } = this.mesh.tree.layout
    let free = 0
    let fromI = 0
    let fromJ = 0
    for (let k = all ? 0 : -1; k < 4; k++)
      for (let l = all ? 0 : -1; l < 4; l++) {
        // Both middles, or a quarter of each, are not among the fewer lines.
        if (!all && k < 0 === l < 0) continue
        const p = k < 0 ? 3 * i : 12 * i + 3 * k
        const q = l < 0 ? 3 * j : 12 * j + 3 * l
        const ofI = k < 0 ? at : quarters
        const ofJ = l < 0 ? at : quarters
        const met = cast(some, count, ofI[p]!, ofI[p + 1]!, ofI[p + 2]!, ofJ[q]!, ofJ[q + 1]!, ofJ[q + 2]!)
        if ((met & lostFromA) !== 0) fromI++
        if ((met & lostFromB) !== 0) fromJ++
        if (met !== clear) continue
        free++
        if (k >= 0) {
          grows[0]! += corners[2 * k]!
          grows[1]! += corners[2 * k + 1]!
        }
        if (l >= 0) {
          grows[2]! += corners[2 * l]!
          grows[3]! += corners[2 * l + 1]!
        }
      }
    // The quarters lie half way to the ends; of the fewer lines only half tell of each cell.
    const lines = all ? 16 : 8
    if (free > 0) for (let k = 0; k < 4; k++) grows[k]! *= (all ? 2 : 4) / free
    this.clear = free / lines
    this.lostFromI = fromI / lines
    this.lostFromJ = fromJ / lines
  }
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
  const reach = closeBy * radius[i]!
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
    return u <= 1 ? 0 : (u - 1) / Math.hypot(n[k]!, n[k + 1]!, n[k + 2]!)
  }
  return Math.hypot(off, beyond(6), beyond(9)) < reach
}
