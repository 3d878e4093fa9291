/**
 * The same integral over a front that the receptor's horizon cuts, where a product rule would stumble over the edge:
 * the polygon is clipped, fanned into triangles, and these halved until they are small enough.
 */
import { lengthOf } from '../scene/vector.js'
import type { Grain, Window } from './grain.js'
import type { Kernel, LocalReceptor } from './kernel.js'
import { clipByLine } from './polygon.js'

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

/** ∫ kernel dA over a convex polygon. */
export const integratePolygon = (
  outline: readonly number[],
  receptor: LocalReceptor,
  kernel: Kernel,
  grain: Grain,
): number => {
  const seen = grain.window === undefined ? outline : clipByWindow(outline, grain.window)
  const sum = { kernel, receptor, grain }
  let whole = 0
  for (let i = 4; i < seen.length; i += 2)
    whole += overTriangle(
      sum,
      seen[0]!,
      seen[1]!,
      seen[i - 2]!,
      seen[i - 1]!,
      seen[i]!,
      seen[i + 1]!,
      deepest,
    )
  return whole
}

const clipByWindow = (outline: readonly number[], { u0, u1, v0, v1 }: Window): readonly number[] => {
  let seen = outline
  for (const [fu, fv, bound] of [
    [1, 0, -u0],
    [-1, 0, u1],
    [0, 1, -v0],
    [0, -1, v1],
  ] as const)
    if (seen.length > 0 && bound < Number.POSITIVE_INFINITY) seen = clipByLine(seen, fu, fv, bound)
  return seen
}

interface Sum {
  readonly kernel: Kernel
  readonly receptor: LocalReceptor
  readonly grain: Grain
}

const overTriangle = (
  all: Sum,
  au: number,
  av: number,
  bu: number,
  bv: number,
  cu: number,
  cv: number,
  left: number,
): number => {
  const { kernel, receptor, grain } = all
  const ab = lengthOf(bu - au, bv - av, 0)
  const bc = lengthOf(cu - bu, cv - bv, 0)
  const ca = lengthOf(au - cu, av - cv, 0)
  const size = Math.max(ab, bc, ca)
  const span = Math.max(
    receptor.z,
    lengthOf((au + bu + cu) / 3 - receptor.x, (av + bv + cv) / 3 - receptor.y, receptor.z) - (2 * size) / 3,
  )
  const root = grain.rootOver(
    Math.min(au, bu, cu),
    Math.max(au, bu, cu),
    Math.min(av, bv, cv),
    Math.max(av, bv, cv),
  )
  if (root === 0) return 0
  const ratio = (size * root) / span
  const fine = size <= grain.finest && size * grain.root <= reach[2] * span
  if (left > 0 && ratio > reach[2] && !fine) {
    // Across the longest side, so that halves stay as round as they were.
    if (ab < size && bc === size) return overTriangle(all, bu, bv, cu, cv, au, av, left)
    if (ab < size) return overTriangle(all, cu, cv, au, av, bu, bv, left)
    const mu = (au + bu) / 2
    const mv = (av + bv) / 2
    return (
      overTriangle(all, au, av, mu, mv, cu, cv, left - 1) +
      overTriangle(all, mu, mv, bu, bv, cu, cv, left - 1)
    )
  }
  let sum = 0
  for (const [b, c, weight] of rules[ratio <= reach[0] ? 0 : fine || ratio <= reach[1] ? 1 : 2]!)
    sum += weight * kernel(au + b * (bu - au) + c * (cu - au), av + b * (bv - av) + c * (cv - av))
  return (sum * Math.abs((bu - au) * (cv - av) - (bv - av) * (cu - au))) / 2
}
