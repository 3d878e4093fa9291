/**
 * Whether the surfaces close a box around the set, so that no light is lost: a room with its backdrop and sweep. Told by
 * where they lie, not by what they are called.
 */
import type { Vec3 } from '../../scene/vector.js'
import type { Patch } from './patch.js'

/** Metres: a backdrop that hangs on a wall closes the room as the wall does. */
const onTheWall = 0.03
/** Share of a box's side that may be open for it to count as closed. */
const gap = 0.01
/** A normal this near to an axis is square to it. */
const square = 1 - 1e-9

/**
 * By cell, 1 where it is a part of the closed box; undefined where the cells close none.
 *
 * @param parent by cell, what it was cut from; −1 where it is whole
 */
export const enclosingCells = (
  patches: readonly Patch[],
  parent: readonly number[],
): Uint8Array | undefined => {
  const oneSided = patches.filter(
    ({ surface }) => surface.path !== 'panels' && surface.back === undefined && surface.transmits === 0,
  )
  if (oneSided.length < 6) return undefined
  const low: [number, number, number] = [Infinity, Infinity, Infinity]
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity]
  for (const { face } of oneSided)
    for (const axis of [0, 1, 2] as const) {
      const reach = (Math.abs(face.across[axis]) * face.width + Math.abs(face.up[axis]) * face.height) / 2
      low[axis] = Math.min(low[axis], face.centre[axis] - reach)
      high[axis] = Math.max(high[axis], face.centre[axis] + reach)
    }
  const encloses = new Uint8Array(patches.length)
  const covered = [0, 0, 0, 0, 0, 0]
  patches.forEach(({ face, area }, i) => {
    const side = sideOf(face.centre, face.normal, low, high)
    if (side === undefined) return
    encloses[i] = 1
    if (parent[i]! < 0) covered[side]! += area
  })
  const [x, y, z] = [high[0] - low[0], high[1] - low[1], high[2] - low[2]] as const
  const sides = [y * z, x * z, x * y]
  return covered.every((area, i) => area > (1 - gap) * sides[i >> 1]!) ? encloses : undefined
}

/** Which of the box's sides a patch is a part of, looking inward: 0 and 1 square to x, 2 and 3 to y, 4 and 5 to z. */
const sideOf = (centre: Vec3, normal: Vec3, low: Vec3, high: Vec3): number | undefined => {
  for (const axis of [0, 1, 2] as const) {
    if (normal[axis] > square && centre[axis] - low[axis] < onTheWall) return 2 * axis
    if (normal[axis] < -square && high[axis] - centre[axis] < onTheWall) return 2 * axis + 1
  }
  return undefined
}
