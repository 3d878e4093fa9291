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

export interface Carrier {
  /** From exitance by side of a patch to the exposure that it makes by side of a patch: linear, so of what is next to nothing a little less. */
  carry(given: Float64Array, into: Float64Array): void
}

/** By side of a cell three numbers lie together: a mean, and what it grows by along across and up. */
const each = 3

export const linkCarrier = (mesh: Mesh, { one, other, shared, slopes }: Links): Carrier => {
  const { area } = mesh.tree.layout
  const gives = new Float64Array(2 * each * area.length)
  const takes = new Float64Array(2 * each * area.length)
  const over = area.map((size) => 1 / size)
  return {
    carry: (given, into) => {
      pull(mesh, given, gives)
      takes.fill(0)
      for (let k = 0; k < shared.length; k++) {
        const a = each * one[k]!
        const b = each * other[k]!
        const toA = shared[k]! * over[one[k]! >> 1]!
        const toB = shared[k]! * over[other[k]! >> 1]!
        const ua = slopes[4 * k]!
        const va = slopes[4 * k + 1]!
        const ub = slopes[4 * k + 2]!
        const vb = slopes[4 * k + 3]!
        const fromA = toB * gives[a]!
        const fromB = toA * gives[b]!
        takes[a]! += fromB + toA * (ub * gives[b + 1]! + vb * gives[b + 2]!)
        takes[a + 1]! += fromB * ua
        takes[a + 2]! += fromB * va
        takes[b]! += fromA + toB * (ua * gives[a + 1]! + va * gives[a + 2]!)
        takes[b + 1]! += fromA * ub
        takes[b + 2]! += fromA * vb
      }
      push(mesh, takes, into)
    },
  }
}

/** Means and first moments of all cells, from their patches up. */
const pull = ({ tree }: Mesh, given: Float64Array, gives: Float64Array): void => {
  const { parent, from, to, offset, oneSided } = tree
  const { area } = tree.layout
  gives.fill(0)
  for (let c = parent.length - 1; c >= 0; c--) {
    const above = parent[c]!
    const isPatch = to[c]! - from[c]! === 1
    for (let side = 0; side < 2 - oneSided[c]!; side++) {
      const k = each * (2 * c + side)
      if (isPatch) gives[k] = given[2 * from[c]! + side]!
      if (above < 0) continue
      const share = area[c]! / area[above]!
      const up = each * (2 * above + side)
      gives[up]! += share * gives[k]!
      gives[up + 1]! += share * (gives[k + 1]! + gives[k]! * offset[2 * c]!)
      gives[up + 2]! += share * (gives[k + 2]! + gives[k]! * offset[2 * c + 1]!)
    }
  }
}

/** From all cells down to their patches. Changes what it is given. */
const push = ({ tree }: Mesh, takes: Float64Array, into: Float64Array): void => {
  const { parent, from, to, offset, oneSided } = tree
  for (let c = 0; c < parent.length; c++) {
    const above = parent[c]!
    const isPatch = to[c]! - from[c]! === 1
    for (let side = 0; side < 2 - oneSided[c]!; side++) {
      const k = each * (2 * c + side)
      if (above >= 0) {
        const up = each * (2 * above + side)
        takes[k]! += takes[up]! + takes[up + 1]! * offset[2 * c]! + takes[up + 2]! * offset[2 * c + 1]!
        takes[k + 1]! += takes[up + 1]!
        takes[k + 2]! += takes[up + 2]!
      }
      if (isPatch) into[2 * from[c]! + side] = takes[k]!
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
