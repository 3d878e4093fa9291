/**
 * Form factors between all sides that light reaches, with what stands between. Found once for a set of surfaces and
 * solids: all lights share them.
 */
import type { Blocker } from '../visibility/blockers.js'
import { balance, noMoreThanAll } from './balance.js'
import { clearShare, type Obstacles, obstaclesOf } from './between.js'
import { exchange } from './exchange.js'
import type { Mesh } from './mesh.js'

export interface Transfer {
  /** As in the mesh; row and column k of the factors are of `sides[k]`. */
  readonly sides: Int32Array
  /** Row by row: exposure of the row's side per unit exitance of the column's. No row and no column of A·F gives more than all. */
  readonly factors: Float64Array
}

export const transferOf = (mesh: Mesh, blockers: readonly Blocker[]): Transfer => {
  const { sides, layout, closed, encloses } = mesh
  const count = sides.length
  const { area } = layout
  const shared = new Float64Array(count * count)
  for (let i = 0; i < count; i++) {
    const one = sides[i]!
    for (let j = i + 1; j < count; j++) {
      const other = sides[j]!
      if (one >> 1 === other >> 1) continue
      const seen = exchange(layout, one >> 1, 1 - 2 * (one & 1), other >> 1, 1 - 2 * (other & 1))
      shared[i * count + j] = seen
      shared[j * count + i] = seen
    }
  }
  const areas = Float64Array.from(sides, (side) => area[side >> 1]!)
  if (closed) balance(shared, areas, (k) => encloses[sides[k]! >> 1] === 1)
  if (blockers.length > 0) hide(shared, mesh, obstaclesOf(mesh, blockers))
  noMoreThanAll(shared, areas)
  for (let i = 0; i < count; i++) {
    const row = i * count
    for (let j = 0; j < count; j++) shared[row + j]! /= areas[i]!
  }
  return { sides, factors: shared }
}

const hide = (shared: Float64Array, { sides, layout }: Mesh, obstacles: Obstacles): void => {
  const count = sides.length
  for (let i = 0; i < count; i++)
    for (let j = i + 1; j < count; j++) {
      const at = i * count + j
      if (shared[at] === 0) continue
      const clear = clearShare(layout, obstacles, sides[i]! >> 1, sides[j]! >> 1)
      if (clear === 1) continue
      shared[at]! *= clear
      shared[j * count + i]! *= clear
    }
}
