/** Which blockers can hide some of a front at all: told by balls, segments and planes, in a few dozen steps each. */
import type { AreaSource, ParallelSource } from '../source.js'
import type { Outlook } from './outlook.js'
import { apartSquared } from './segments.js'

/** A disc's corners lie a little further out than its rim: half of a front's size, and that. */
const half = 0.505
const nobody: readonly number[] = []

/** Places among all blockers of those that may stand between the receptor and the front. */
export const inTheWay = (source: AreaSource, { all, receptor }: Outlook): readonly number[] => {
  const { at } = receptor
  const { centre, normal: n, across, up, width, height } = source.face
  const wx = centre[0] - at[0]
  const wy = centre[1] - at[1]
  const wz = centre[2] - at[2]
  const square = wx * wx + wy * wy + wz * wz || 1e-30
  const wide = half * Math.sqrt(width * width + height * height)
  const off = wx * n[0] + wy * n[1] + wz * n[2]
  const side = off > 0 ? -1 : 1
  let found = nobody as number[]
  for (let i = 0; i < all.length; i++) {
    const { centre: middle, radius, round, solid } = all[i]!
    // The ball around it against the cone from the receptor to the front.
    const cx = middle[0] - at[0]
    const cy = middle[1] - at[1]
    const cz = middle[2] - at[2]
    const t = Math.min(1, Math.max(0, (cx * wx + cy * wy + cz * wz) / square))
    const dx = cx - t * wx
    const dy = cy - t * wy
    const dz = cz - t * wz
    const apart = dx * dx + dy * dy + dz * dz
    if (apart > (radius + wide) * (radius + wide)) continue
    const near = radius + wide * Math.min(1, t + radius / Math.sqrt(square))
    if (apart > near * near) continue
    if (side * (cx * n[0] + cy * n[1] + cz * n[2] - off) <= -radius) continue
    const { body } = solid
    if (round !== undefined) {
      const reach = round.coat + wide
      if (apartSquared(round.from, round.span, at, [wx, wy, wz]) > reach * reach) continue
    } else if (body.shape === 'plate') {
      // A receptor and a front on one side of a plate have nothing of it between them.
      const { centre: on, normal: m } = body.face
      const from = (at[0] - on[0]) * m[0] + (at[1] - on[1]) * m[1] + (at[2] - on[2]) * m[2]
      const to = from + wx * m[0] + wy * m[1] + wz * m[2]
      const spread =
        half *
        (width * Math.abs(across[0] * m[0] + across[1] * m[1] + across[2] * m[2]) +
          height * Math.abs(up[0] * m[0] + up[1] * m[1] + up[2] * m[2]))
      if (from > 0 ? to >= spread : to <= -spread) continue
    }
    if (solid.of === 'light' && solid.name === source.light) continue
    if (found === nobody) found = []
    found.push(i)
  }
  return found
}

/** The same for the sun's disc, of this tangent. */
export const beforeSun = (
  { toward }: ParallelSource,
  { all, receptor: { at } }: Outlook,
  tangent: number,
): readonly number[] => {
  let found = nobody as number[]
  for (let i = 0; i < all.length; i++) {
    const { centre, radius } = all[i]!
    const cx = centre[0] - at[0]
    const cy = centre[1] - at[1]
    const cz = centre[2] - at[2]
    const t = cx * toward[0] + cy * toward[1] + cz * toward[2]
    const reach = radius + tangent * Math.max(0, t)
    if (t < -radius || cx * cx + cy * cy + cz * cz - t * t > reach * reach) continue
    if (found === nobody) found = []
    found.push(i)
  }
  return found
}
