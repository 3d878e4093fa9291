/**
 * Light carried over all links at once. What cells exchange runs evenly over either, as the kernel does to first order:
 * K(x, y) = K (1 + s·x + t·y), so a large cell takes more at the end that is nearer, and a bright end counts from where
 * it is. The kernel is the same both ways, so the exchange of any two patches is.
 */
import type { Mesh } from './mesh.js'

/** By link: two sides of cells, and what they see of each other, A·F, in m². */
export interface Links {
  readonly one: Int32Array
  readonly other: Int32Array
  readonly shared: Float64Array
  /** Four numbers a link: by how much of itself it grows per metre across and up the first cell, and the second. */
  readonly slopes: Float64Array
}

/** Numbers by side of a cell: a mean and what changes along across and up, per metre or times metres. */
interface ByCell {
  readonly mean: Float64Array
  readonly u: Float64Array
  readonly v: Float64Array
}

export interface Carrier {
  /** From exitance by side of a patch to the exposure that it makes by side of a patch. */
  carry(given: Float64Array, into: Float64Array): void
}

const byCell = (count: number): ByCell => ({
  mean: new Float64Array(count),
  u: new Float64Array(count),
  v: new Float64Array(count),
})

export const linkCarrier = (mesh: Mesh, { one, other, shared, slopes }: Links): Carrier => {
  const { area } = mesh.tree.layout
  const gives = byCell(2 * area.length)
  const takes = byCell(2 * area.length)
  return {
    carry: (given, into) => {
      pull(mesh, given, gives)
      takes.mean.fill(0)
      takes.u.fill(0)
      takes.v.fill(0)
      for (let k = 0; k < shared.length; k++) {
        const a = one[k]!
        const b = other[k]!
        const toA = shared[k]! / area[a >> 1]!
        const toB = shared[k]! / area[b >> 1]!
        const ua = slopes[4 * k]!
        const va = slopes[4 * k + 1]!
        const ub = slopes[4 * k + 2]!
        const vb = slopes[4 * k + 3]!
        const fromA = toB * gives.mean[a]!
        const fromB = toA * gives.mean[b]!
        takes.mean[a]! += fromB + toA * (ub * gives.u[b]! + vb * gives.v[b]!)
        takes.u[a]! += fromB * ua
        takes.v[a]! += fromB * va
        takes.mean[b]! += fromA + toB * (ua * gives.u[a]! + va * gives.v[a]!)
        takes.u[b]! += fromA * ub
        takes.v[b]! += fromA * vb
      }
      push(mesh, takes, into)
    },
  }
}

/** Means and first moments of all cells, from their patches up. */
const pull = ({ tree }: Mesh, given: Float64Array, { mean, u, v }: ByCell): void => {
  const { parent, from, to, offset } = tree
  const { area } = tree.layout
  mean.fill(0)
  u.fill(0)
  v.fill(0)
  for (let c = parent.length - 1; c >= 0; c--) {
    const above = parent[c]!
    const isPatch = to[c]! - from[c]! === 1
    for (let side = 0; side < 2; side++) {
      const k = 2 * c + side
      if (isPatch) mean[k] = given[2 * from[c]! + side]!
      if (above < 0) continue
      const share = area[c]! / area[above]!
      const up = 2 * above + side
      mean[up]! += share * mean[k]!
      u[up]! += share * (u[k]! + mean[k]! * offset[2 * c]!)
      v[up]! += share * (v[k]! + mean[k]! * offset[2 * c + 1]!)
    }
  }
}

/** From all cells down to their patches. Changes what it is given. */
const push = ({ tree }: Mesh, { mean, u, v }: ByCell, into: Float64Array): void => {
  const { parent, from, to, offset } = tree
  for (let c = 0; c < parent.length; c++) {
    const above = parent[c]!
    for (let side = 0; side < 2; side++) {
      const k = 2 * c + side
      if (above >= 0) {
        const up = 2 * above + side
        mean[k]! += mean[up]! + u[up]! * offset[2 * c]! + v[up]! * offset[2 * c + 1]!
        u[k]! += u[up]!
        v[k]! += v[up]!
      }
      if (to[c]! - from[c]! === 1) into[2 * from[c]! + side] = Math.max(0, mean[k]!)
    }
  }
}

/** By side of a patch: what all cells that it is part of have by area, added up. */
export const overPatches = ({ tree, patches }: Mesh, ofCells: Float64Array): Float64Array => {
  const { parent, from, to } = tree
  const { area } = tree.layout
  const down = new Float64Array(ofCells.length)
  const sums = new Float64Array(2 * patches.length)
  for (let c = 0; c < parent.length; c++)
    for (let side = 0; side < 2; side++) {
      const above = parent[c]! < 0 ? 0 : down[2 * parent[c]! + side]!
      const sum = above + ofCells[2 * c + side]! / area[c]!
      down[2 * c + side] = sum
      if (to[c]! - from[c]! === 1) sums[2 * from[c]! + side] = sum
    }
  return sums
}
