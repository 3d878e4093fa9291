/** The share of the lines between two patches that nothing crosses, by a few fixed lines; most pairs need none. */
import type { Blocker } from '../visibility/blockers.js'
import { clearBetween } from '../visibility/sees.js'
import { type Layout, placeOn } from './layout.js'
import type { Mesh } from './mesh.js'

export interface Obstacles {
  readonly blockers: readonly Blocker[]
  /** By blocker and patch, of flat ones: the patch lies wholly before (1), wholly behind (−1), in its plane (2), else 0. */
  readonly before: Int8Array
}

/** Metres: so near to a plate's plane a patch lies in it. */
const inPlane = 1e-6

export const obstaclesOf = ({ layout }: Mesh, blockers: readonly Blocker[]): Obstacles => {
  const before = new Int8Array(blockers.length * layout.count)
  blockers.forEach(({ solid: { body } }, k) => {
    if (body.shape !== 'plate') return
    const { centre, normal } = body.face
    const { at, across, up, half } = layout
    for (let i = 0; i < layout.count; i++) {
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
      before[k * layout.count + i] = flat ? 2 : off >= reach - inPlane ? 1 : off <= inPlane - reach ? -1 : 0
    }
  })
  return { blockers, before }
}

const some: Blocker[] = []
const a: [number, number, number] = [0, 0, 0]
const b: [number, number, number] = [0, 0, 0]
const quarters = [
  [-0.5, -0.5],
  [0.5, -0.5],
  [-0.5, 0.5],
  [0.5, 0.5],
] as const

export const clearShare = (layout: Layout, obstacles: Obstacles, i: number, j: number): number => {
  some.length = 0
  const { blockers } = obstacles
  for (let k = 0; k < blockers.length; k++) if (mayStand(layout, obstacles, k, i, j)) some.push(blockers[k]!)
  if (some.length === 0) return 1
  const { swapped, s, t } = pairing(layout, i, j)
  let clear = 0
  for (const [u, v] of quarters) {
    placeOn(layout, i, u, v, a)
    placeOn(layout, j, s * (swapped ? v : u), t * (swapped ? u : v), b)
    if (clearBetween(some, a, b)) clear++
  }
  return clear / 4
}

/** Whether a blocker's ball meets the hull of two patches, and a plate has them on both its sides. */
const mayStand = (
  { at, radius, count }: Layout,
  { blockers, before }: Obstacles,
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
  const { centre, radius: around } = blockers[k]!
  const x = centre[0] - at[p]!
  const y = centre[1] - at[p + 1]!
  const z = centre[2] - at[p + 2]!
  const along = Math.min(1, Math.max(0, (x * dx + y * dy + z * dz) / (dx * dx + dy * dy + dz * dz)))
  const offX = x - along * dx
  const offY = y - along * dy
  const offZ = z - along * dz
  const reach = around + Math.max(radius[i]!, radius[j]!)
  return offX * offX + offY * offY + offZ * offZ < reach * reach
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
