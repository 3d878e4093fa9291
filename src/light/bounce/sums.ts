/**
 * What must hold of all links whatever rounding they come with: in a closed box all that a patch gives out arrives, on
 * sides that give it back or on black things; anywhere no patch sees more than all.
 */
import { type Links, linkCarrier, overPatches } from './carry.js'
import type { Mesh } from './mesh.js'

/** A side inside a closed box sees the box all around it, to this share. */
const nearly = 0.05
/**
 * Steps of Chebyshev's iteration for 1 + the eigenvalues of what goes from side to side, which lie from 0.4 to 2 (opposite
 * walls bring them below 1), in an order that keeps rounding small.
 */
const steps = [0.833, 2.278, 0.599, 1.37, 0.51]
/** So little over all is left: surfaces keep more than that of the light that reaches them. */
const rounding = 1e-3
/** No patch is moved by more than this factor and its inverse. */
const furthest = 2

/**
 * Factors by side of a patch, for what it gives and takes alike, so that the exchange stays the same both ways.
 *
 * @param open by side of a cell, m²: its links with the box were nothing in the way
 * @param lost how much of that ends on black things
 */
export const factorsOf = (mesh: Mesh, links: Links, open: Float64Array, lost: Float64Array): Float64Array => {
  const count = 2 * mesh.patches.length
  const by = new Float64Array(count).fill(1)
  const views = new Float64Array(count)
  const { carry } = linkCarrier(mesh, links)
  const look = (): void => {
    carry(by, views)
    for (let k = 0; k < count; k++) views[k]! *= by[k]!
  }
  if (mesh.closed) {
    const wanted = wantedOf(mesh, open, lost)
    for (const step of steps) {
      look()
      for (let k = 0; k < count; k++)
        if (wanted[k]! >= 0 && views[k]! > 0)
          by[k] = Math.min(
            furthest,
            Math.max(1 / furthest, by[k]! * Math.exp(step * Math.log(wanted[k]! / views[k]!))),
          )
    }
  }
  // Less than one at either end of a link: so reflections always die out.
  look()
  for (let k = 0; k < count; k++) if (views[k]! > 1 + rounding) by[k]! /= views[k]!
  return by
}

/**
 * By side of a patch: of what is not lost the share that must arrive; NaN where the side does not see the box all around.
 * Told by whole roots, as links say nothing of single patches but with their slopes.
 */
const wantedOf = (mesh: Mesh, open: Float64Array, lost: Float64Array): Float64Array => {
  const { next, from, to, layout } = mesh.tree
  const { area } = mesh.layout
  const [seen, gone] = [overPatches(mesh, open), overPatches(mesh, lost)]
  const wanted = new Float64Array(seen.length).fill(Number.NaN)
  for (let c = 0; c < next.length; c = next[c]!)
    for (let side = 0; side < 2; side++) {
      let sum = 0
      for (let i = from[c]!; i < to[c]!; i++) sum += area[i]! * seen[2 * i + side]!
      if (Math.abs(sum / layout.area[c]! - 1) > nearly) continue
      for (let i = from[c]!; i < to[c]!; i++) {
        const k = 2 * i + side
        wanted[k] = Math.max(0, 1 - gone[k]! / seen[k]!)
      }
    }
  return wanted
}
