/**
 * What surfaces throw on each other changes slowly along them: it is worked out at the corners of a lattice over each
 * rectangle, where somebody asks, and taken linear between.
 */
import type { Receptor } from '../light/receptor.js'
import type { SceneSurface } from '../scene/scene.js'
import { add, dot, scale, subtract, type Vec3 } from '../scene/vector.js'

/** Metres between corners, and the most of them along a side. */
const spacing = 0.3
const most = 16
/** Corners keep this far from the edge, metres: in it, another surface may stand at no distance. */
const inset = 0.01
/** Nearer than this a receptor lies on a surface, metres. */
const touching = 1e-3

export interface Corner {
  readonly key: string
  readonly at: Vec3
  readonly normal: Vec3
  readonly share: number
}

/** The corners about a receptor that lies flat on a surface, with their shares; undefined where it lies on none. */
export const latticeRound = (
  surfaces: readonly SceneSurface[],
  { at, normal, kind, onSurface }: Receptor,
): readonly Corner[] | undefined => {
  if (kind !== 'flat' || onSurface !== true) return undefined
  for (let index = 0; index < surfaces.length; index++) {
    const { face } = surfaces[index]!
    const facing = dot(normal, face.normal)
    if (Math.abs(facing) < 0.999999) continue
    const from = subtract(at, face.centre)
    if (Math.abs(dot(from, face.normal)) > touching) continue
    const u = dot(from, face.across) / face.width + 0.5
    const v = dot(from, face.up) / face.height + 0.5
    if (u < 0 || u > 1 || v < 0 || v > 1) continue
    return corners(index, facing > 0 ? 1 : -1, face, normal, u, v)
  }
  return undefined
}

const corners = (
  index: number,
  side: 1 | -1,
  face: SceneSurface['face'],
  normal: Vec3,
  u: number,
  v: number,
): readonly Corner[] => {
  const across = cell(face.width, u)
  const up = cell(face.height, v)
  const found: Corner[] = []
  for (const [i, shareAcross] of across)
    for (const [j, shareUp] of up) {
      if (shareAcross * shareUp === 0) continue
      const at = add(
        face.centre,
        add(scale(face.across, place(face.width, i)), scale(face.up, place(face.height, j))),
      )
      found.push({ key: `${index} ${side} ${i} ${j}`, at, normal, share: shareAcross * shareUp })
    }
  return found
}

const cells = (length: number): number => Math.min(most, Math.max(1, Math.ceil(length / spacing)))

/** The two lattice lines about a share of a side, each with how much it counts. */
const cell = (length: number, at: number): readonly (readonly [number, number])[] => {
  const count = cells(length)
  const first = Math.min(count - 1, Math.floor(at * count))
  const beyond = at * count - first
  return [
    [first, 1 - beyond],
    [first + 1, beyond],
  ]
}

/** Where a lattice line runs, from the middle of the side. */
const place = (length: number, line: number): number => {
  const from = (line / cells(length) - 0.5) * length
  const reach = Math.max(0, length / 2 - inset)
  return Math.min(reach, Math.max(-reach, from))
}
