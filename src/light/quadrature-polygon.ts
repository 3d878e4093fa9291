/**
 * The same integral over a front that the receptor's horizon cuts, where a product rule would stumble over the edge:
 * the polygon is clipped, fanned into triangles, and these halved until they are small enough.
 */
import { lengthOf } from '../scene/vector.js'
import type { Kernel, LocalReceptor } from './kernel.js'

/** Barycentric nodes and weights of degree 1, 2 and 5 (the last Radon's seven points; from memory, held by tests). */
const a5 = (6 - Math.sqrt(15)) / 21
const b5 = (6 + Math.sqrt(15)) / 21
const wa5 = (155 - Math.sqrt(15)) / 1200
const wb5 = (155 + Math.sqrt(15)) / 1200
const rules: readonly (readonly (readonly [number, number, number])[])[] = [
  [[1 / 3, 1 / 3, 1]],
  [
    [1 / 6, 1 / 6, 1 / 3],
    [2 / 3, 1 / 6, 1 / 3],
    [1 / 6, 2 / 3, 1 / 3],
  ],
  [
    [1 / 3, 1 / 3, 9 / 40],
    [a5, a5, wa5],
    [1 - 2 * a5, a5, wa5],
    [a5, 1 - 2 * a5, wa5],
    [b5, b5, wb5],
    [1 - 2 * b5, b5, wb5],
    [b5, 1 - 2 * b5, wb5],
  ],
]

/** Largest size times √sharpness over distance for each rule. */
const reach = [0.2, 0.8, 2.4] as const
const deepest = 24

/** ∫ kernel dA over a convex polygon; `root`: √sharpness. */
export const integratePolygon = (
  outline: readonly number[],
  receptor: LocalReceptor,
  kernel: Kernel,
  root: number,
): number => {
  let sum = 0
  for (let i = 4; i < outline.length; i += 2)
    sum += overTriangle(
      kernel,
      receptor,
      root,
      outline[0]!,
      outline[1]!,
      outline[i - 2]!,
      outline[i - 1]!,
      outline[i]!,
      outline[i + 1]!,
      deepest,
    )
  return sum
}

const overTriangle = (
  kernel: Kernel,
  receptor: LocalReceptor,
  root: number,
  au: number,
  av: number,
  bu: number,
  bv: number,
  cu: number,
  cv: number,
  left: number,
): number => {
  const ab = lengthOf(bu - au, bv - av, 0)
  const bc = lengthOf(cu - bu, cv - bv, 0)
  const ca = lengthOf(au - cu, av - cv, 0)
  const size = Math.max(ab, bc, ca)
  const span = lengthOf((au + bu + cu) / 3 - receptor.x, (av + bv + cv) / 3 - receptor.y, receptor.z)
  const ratio = (size * root) / Math.max(receptor.z, span - (2 * size) / 3)
  if (left > 0 && ratio > reach[2]) {
    // Across the longest side, so that halves stay as round as they were.
    if (ab < size && bc === size) return overTriangle(kernel, receptor, root, bu, bv, cu, cv, au, av, left)
    if (ab < size) return overTriangle(kernel, receptor, root, cu, cv, au, av, bu, bv, left)
    const mu = (au + bu) / 2
    const mv = (av + bv) / 2
    return (
      overTriangle(kernel, receptor, root, au, av, mu, mv, cu, cv, left - 1) +
      overTriangle(kernel, receptor, root, mu, mv, bu, bv, cu, cv, left - 1)
    )
  }
  let sum = 0
  for (const [b, c, weight] of rules[ratio <= reach[0] ? 0 : ratio <= reach[1] ? 1 : 2]!)
    sum += weight * kernel(au + b * (bu - au) + c * (cu - au), av + b * (bv - av) + c * (cv - av))
  return (sum * Math.abs((bu - au) * (cv - av) - (bv - av) * (cu - au))) / 2
}
