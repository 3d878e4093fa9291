/**
 * Exitances once all reflections have died out: B = M (E + F B), M what each side gives back of its own light and lets
 * through of the other side's.
 */
import type { Mesh } from './mesh.js'

import { carrierOf, type Transfer } from './transfer.js'

/** No side may give out more than this share of what comes to its patch. */
const most = 0.995
/** Largest relative change of a side in the last round. */
const close = 5e-4
/** Rounds in which the overall level is set as well; after that the series alone runs on, which always ends. */
const levelled = 12
const rounds = 2000

/** Exitance by side per unit of strength, from the exposure that `firstLight` gives. */
export const radiosity = (mesh: Mesh, transfer: Transfer, first: Float64Array): Float64Array => {
  const { layout } = mesh
  const count = first.length
  const { own, through } = shares(mesh)
  const give = (exposure: Float64Array, into: Float64Array): void => {
    for (let k = 0; k < count; k++) into[k] = own[k]! * exposure[k]! + through[k]! * exposure[k ^ 1]!
  }
  const start = new Float64Array(count)
  give(first, start)
  let now = start.slice()
  let next = new Float64Array(count)
  const exposure = new Float64Array(count)
  const { carry } = carrierOf(mesh, transfer)
  for (let round = 0; round < rounds; round++) {
    carry(now, exposure)
    give(exposure, next)
    // The level at which all that is given out equals what comes new and what comes again.
    let fresh = 0
    let lost = 0
    for (let k = 0; k < count; k++) {
      const size = layout.area[k >> 1]!
      fresh += size * start[k]!
      lost += size * (now[k]! - next[k]!)
    }
    const level = round < levelled && lost > 0 ? fresh / lost : 1
    let highest = 0
    for (let k = 0; k < count; k++) {
      next[k] = start[k]! + level * next[k]!
      highest = Math.max(highest, next[k]!)
    }
    let settled = Math.abs(level - 1) < close
    for (let k = 0; k < count && settled; k++)
      settled = Math.abs(next[k]! - now[k]!) <= close * Math.max(next[k]!, 1e-3 * highest)
    const was = now
    now = next
    next = was
    if (settled) break
  }
  return now
}

/** By side: the share given back, and the share that comes through from the other side. */
const shares = ({ patches }: Mesh) => {
  const own = new Float64Array(2 * patches.length)
  const through = new Float64Array(2 * patches.length)
  patches.forEach(({ surface }, i) => {
    const passed = Math.max(0, surface.transmits)
    for (const side of [0, 1]) {
      const reflectance = Math.max(0, (side === 0 ? surface.front : surface.back)?.reflectance ?? 0)
      const scale = Math.min(1, most / Math.max(1e-12, reflectance + passed))
      own[2 * i + side] = scale * reflectance
      through[2 * i + side] = scale * passed
    }
  })
  return { own, through }
}
