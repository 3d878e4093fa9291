/** What a receptor gets that lies flat on one of the surfaces: as the patches about it do, taken evenly between them. */
import { dot, subtract, type Vec3 } from '../../scene/vector.js'
import type { Receptor } from '../receptor.js'
import type { Layout } from './layout.js'
import type { Mesh } from './mesh.js'

/** Sides of patches, and the share of each; together 1. */
export interface Round {
  readonly sides: readonly number[]
  readonly shares: readonly number[]
}

/** Nearer than this a receptor lies on a surface, metres. */
const touching = 1e-3
/** Cosine from which on it faces straight out of it. */
const straight = 0.999999

/**
 * Each patch counts by how near its middle lies, falling evenly to nothing at its own length from there: over patches of
 * one size that is linear between middles. Undefined for a receptor that lies on no surface.
 */
export const patchesRound = (
  { surfaces, patches, layout }: Mesh,
  { at, normal, kind, onSurface }: Receptor,
): Round | undefined => {
  if (kind !== 'flat' || onSurface !== true) return undefined
  for (const surface of surfaces) {
    const { face } = surface
    const facing = dot(normal, face.normal)
    if (Math.abs(facing) < straight) continue
    const off = subtract(at, face.centre)
    if (Math.abs(dot(off, face.normal)) > touching) continue
    const [u, v] = [dot(off, face.across), dot(off, face.up)]
    if (Math.abs(u) > face.width / 2 + touching || Math.abs(v) > face.height / 2 + touching) continue
    const own = patches.flatMap((patch, i) => (patch.surface === surface ? [i] : []))
    return tents(layout, own, at, facing > 0 ? 0 : 1)
  }
  return undefined
}

const tents = (
  { at, across, up, half }: Layout,
  patches: readonly number[],
  place: Vec3,
  side: 0 | 1,
): Round => {
  const sides: number[] = []
  const heights: number[] = []
  let sum = 0
  for (const i of patches) {
    const p = 3 * i
    const x = place[0] - at[p]!
    const y = place[1] - at[p + 1]!
    const z = place[2] - at[p + 2]!
    const u = Math.abs(x * across[p]! + y * across[p + 1]! + z * across[p + 2]!) / (2 * half[2 * i]!)
    const v = Math.abs(x * up[p]! + y * up[p + 1]! + z * up[p + 2]!) / (2 * half[2 * i + 1]!)
    if (u >= 1 || v >= 1) continue
    const height = (1 - u) * (1 - v)
    sides.push(2 * i + side)
    heights.push(height)
    sum += height
  }
  return { sides, shares: heights.map((height) => height / sum) }
}
