/**
 * Exitances once all reflections have died out: B = M (E + F B), M what each side gives back of its own light and lets
 * through of the other side's.
 */
import type { Surface } from '../../language/plan.js'
import type { Mesh } from './mesh.js'

import { carrierOf, type Transfer } from './transfer.js'

/** No side may give out more than this share of what comes to its patch. */
const most = 0.995
/** Largest relative change of a side in the last round. */
const close = 1e-3
/** Directions that one cycle looks along, and by how much the residual falls until it ends. */
const directions = 8
const enough = 3e-4
/** Cycles; after that the series alone runs on, which always ends. */
const cycles = 8
const rounds = 2000

/** The share of light that a surface gives back. */
export type Reflects = (surface: Surface) => number

const ofAll: Reflects = ({ reflectance }) => reflectance

/**
 * Exitance by side per unit of strength, from the exposure that `firstLight` gives.
 *
 * @param reflects in one channel, where light is followed by colour
 */
export const radiosity = (
  mesh: Mesh,
  transfer: Transfer,
  first: Float64Array,
  reflects: Reflects = ofAll,
): Float64Array => {
  const count = first.length
  const { own, through } = shares(mesh, reflects)
  const give = (exposure: Float64Array, into: Float64Array): void => {
    for (let k = 0; k < count; k++) into[k] = own[k]! * exposure[k]! + through[k]! * exposure[k ^ 1]!
  }
  const start = new Float64Array(count)
  give(first, start)
  if (transfer.links.shared.length === 0) return start
  const exposure = new Float64Array(count)
  const { carry } = carrierOf(mesh, transfer)
  const again = (given: Float64Array, into: Float64Array): void => {
    carry(given, exposure)
    give(exposure, into)
  }
  let now: Float64Array = start
  let next: Float64Array = new Float64Array(count)
  for (let round = 0; round < rounds; round++) {
    again(now, next)
    let highest = 0
    for (let k = 0; k < count; k++) {
      next[k]! += start[k]!
      highest = Math.max(highest, next[k]!)
    }
    let settled = true
    for (let k = 0; k < count && settled; k++)
      settled = Math.abs(next[k]! - now[k]!) <= close * Math.max(next[k]!, 1e-3 * highest)
    if (settled) return positive(next)
    now = round < cycles ? leastResidual(mesh, again, now, next) : next
    next = new Float64Array(count)
  }
  return positive(now)
}

/** Where next to nothing arrives, links that fall evenly over their cells may take away more than that. */
const positive = (exitance: Float64Array): Float64Array => exitance.map((one) => Math.max(0, one))

/**
 * Nearer to what the series ends at than one more round: of all sums of what its next rounds add the one whose residual
 * is least (GMRES; Saad and Schultz, SIAM J. Sci. Stat. Comput. 7, 1986; from memory).
 *
 * @param again what a round makes of what was given
 * @param next one round on from `now`
 */
const leastResidual = (
  { layout }: Mesh,
  again: (given: Float64Array, into: Float64Array) => void,
  now: Float64Array,
  next: Float64Array,
): Float64Array => {
  const count = now.length
  // By area, so that many small patches count no more than the wall that they are cut from.
  const product = (a: Float64Array, b: Float64Array): number => {
    let sum = 0
    for (let k = 0; k < count; k++) sum += layout.area[k >> 1]! * a[k]! * b[k]!
    return sum
  }
  const residual = new Float64Array(count)
  for (let k = 0; k < count; k++) residual[k] = next[k]! - now[k]!
  const norm = Math.sqrt(product(residual, residual))
  if (!(norm > 0)) return next
  const basis = [residual.map((one) => one / norm)]
  /** Column by column, turned to be upper triangular as it grows. */
  const upper: number[][] = []
  const turns: (readonly [number, number])[] = []
  const right = [norm]
  for (let step = 0; step < directions; step++) {
    const along = basis[step]!
    const image = new Float64Array(count)
    again(along, image)
    for (let k = 0; k < count; k++) image[k] = along[k]! - image[k]!
    const column: number[] = []
    for (const one of basis) {
      const share = product(one, image)
      column.push(share)
      for (let k = 0; k < count; k++) image[k]! -= share * one[k]!
    }
    const left = Math.sqrt(product(image, image))
    turns.forEach(([c, s], i) => {
      const [a, b] = [column[i]!, column[i + 1]!]
      column[i] = c * a + s * b
      column[i + 1] = c * b - s * a
    })
    const [a, size] = [column[step]!, Math.hypot(column[step]!, left)]
    if (!(size > 0)) break
    column[step] = size
    upper.push(column)
    turns.push([a / size, left / size])
    right.push((-left / size) * right[step]!)
    right[step]! *= a / size
    if (left <= 1e-12 || Math.abs(right[step + 1]!) <= enough * norm) break
    basis.push(image.map((one) => one / left))
  }
  const found = now.slice()
  const weights: number[] = []
  for (let i = upper.length - 1; i >= 0; i--) {
    let sum = right[i]!
    for (let j = i + 1; j < upper.length; j++) sum -= upper[j]![i]! * weights[j]!
    weights[i] = sum / upper[i]![i]!
  }
  weights.forEach((weight, i) => {
    const along = basis[i]!
    for (let k = 0; k < count; k++) found[k]! += weight * along[k]!
  })
  return found
}

/** By side: the share given back, and the share that comes through from the other side. */
const shares = ({ patches }: Mesh, reflects: Reflects) => {
  const own = new Float64Array(2 * patches.length)
  const through = new Float64Array(2 * patches.length)
  patches.forEach(({ surface }, i) => {
    const passed = Math.max(0, surface.transmits)
    for (const side of [0, 1]) {
      const face = side === 0 ? surface.front : surface.back
      const reflectance = face === undefined ? 0 : Math.max(0, reflects(face))
      const scale = Math.min(1, most / Math.max(1e-12, reflectance + passed))
      own[2 * i + side] = scale * reflectance
      through[2 * i + side] = scale * passed
    }
  })
  return { own, through }
}
