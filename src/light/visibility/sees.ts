/** Straight lines of sight past the blockers. */
import { rayMeets } from '../../scene/ray.js'
import { subtract, type Vec3 } from '../../scene/vector.js'
import type { Blocker } from './blockers.js'
import type { Outlook } from './outlook.js'

/** Of the way from one end to the other: what stands nearer to an end than this is that end itself. */
const ends = 1e-4

/** True where nothing stands between two places, their own surfaces apart. */
export const clearBetween = (blockers: readonly Blocker[], a: Vec3, b: Vec3): boolean => {
  const way = subtract(b, a)
  const square = way[0] * way[0] + way[1] * way[1] + way[2] * way[2]
  for (const blocker of blockers) {
    const { centre, radius } = blocker
    const cx = centre[0] - a[0]
    const cy = centre[1] - a[1]
    const cz = centre[2] - a[2]
    const t = Math.min(1, Math.max(0, (cx * way[0] + cy * way[1] + cz * way[2]) / (square || 1)))
    const [dx, dy, dz] = [cx - t * way[0], cy - t * way[1], cz - t * way[2]]
    if (dx * dx + dy * dy + dz * dz > radius * radius) continue
    const hit = rayMeets(blocker.solid.body, a, way)
    if (hit !== undefined && hit.t > ends && hit.t < 1 - ends) return false
  }
  return true
}

/** True where nothing stands between the receptor and the place. What the receptor lies on does not count. */
export const sees = ({ receptor, blockers }: Outlook, to: Vec3): boolean =>
  clearBetween(blockers, receptor.at, to)
