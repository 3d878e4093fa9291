/** What each blocker covers of a front, or of the sun's disc, as one receptor sees it. */
import type { Vec3 } from '../../scene/vector.js'
import type { AreaSource } from '../source.js'
import type { Blocker } from './blockers.js'
import type { Outlook } from './outlook.js'
import { meet, type Polygon } from './polygons.js'
import { coverOf, type Screen, screenOf } from './screen.js'
import { apartSquared } from './segments.js'
import { ofFlat, type Silhouette } from './silhouette.js'
import { coverOfPart, type Plane, partBefore, reachBefore } from './straddling.js'

/** The part of the front that a blocker covers. */
export interface Cover {
  readonly polygon: Polygon
  readonly blocker: Blocker
}

/** Nearer than this to the front's plane, metres, a body's edge lies in it. */
const inPlane = 1e-6

/**
 * @param front the part of the source's outline that counts
 * @param first end the search with the first blocker that covers all of it
 */
export const coversOfFront = (
  source: AreaSource,
  outlook: Outlook,
  front: Polygon,
  first: boolean,
): readonly Cover[] => {
  const covers: Cover[] = []
  const { all, receptor } = outlook
  const { at } = receptor
  const { face } = source
  const { centre, normal: n, across, up } = face
  const wx = centre[0] - at[0]
  const wy = centre[1] - at[1]
  const wz = centre[2] - at[2]
  const square = wx * wx + wy * wy + wz * wz
  const way = Math.sqrt(square)
  // A disc's corners lie a little further out than its rim.
  const wide = 0.505 * Math.hypot(face.width, face.height)
  const side = wx * n[0] + wy * n[1] + wz * n[2] > 0 ? -1 : 1
  let screen: Screen | undefined
  for (let i = 0; i < all.length; i++) {
    const blocker = all[i]!
    const { centre: middle, radius, round, solid } = blocker
    // A ball around it against the cone from the receptor to the front.
    const cx = middle[0] - at[0]
    const cy = middle[1] - at[1]
    const cz = middle[2] - at[2]
    const t = Math.min(1, Math.max(0, (cx * wx + cy * wy + cz * wz) / (square || 1)))
    const dx = cx - t * wx
    const dy = cy - t * wy
    const dz = cz - t * wz
    const near = radius + wide * Math.min(1, t + radius / (way || 1))
    if (dx * dx + dy * dy + dz * dz > near * near) continue
    if (solid.of === 'light' && solid.name === source.light) continue
    const ahead = side * ((cx - wx) * n[0] + (cy - wy) * n[1] + (cz - wz) * n[2])
    if (ahead <= -radius) continue
    if (round !== undefined) {
      const reach = round.coat + wide
      if (apartSquared(round.from, round.span, at, [wx, wy, wz]) > reach * reach) continue
    } else if (solid.body.shape === 'plate') {
      // A receptor and a front on one side of a plate have nothing of it between them.
      const { centre: on, normal: m } = solid.body.face
      const from = (at[0] - on[0]) * m[0] + (at[1] - on[1]) * m[1] + (at[2] - on[2]) * m[2]
      const to = from + wx * m[0] + wy * m[1] + wz * m[2]
      const spread =
        0.505 *
        (face.width * Math.abs(across[0] * m[0] + across[1] * m[1] + across[2] * m[2]) +
          face.height * Math.abs(up[0] * m[0] + up[1] * m[1] + up[2] * m[2]))
      if (from > 0 ? to >= spread : to <= -spread) continue
    }
    const silhouette = outlook.silhouette(i)
    if (silhouette === undefined) continue
    screen ??= screenOf(face, source.outline, at)
    const polygon =
      ahead >= radius
        ? coverOf(screen, silhouette, front)
        : coverAcross(source, blocker, silhouette, screen, at, side, front)
    if (polygon === undefined) continue
    covers.push({ polygon, blocker })
    if (first && polygon === front) break
  }
  return covers
}

/** Of a blocker that the front's plane may cut. */
const coverAcross = (
  { face: { normal, centre } }: AreaSource,
  blocker: Blocker,
  silhouette: Silhouette,
  screen: Screen,
  at: Vec3,
  side: 1 | -1,
  front: Polygon,
): Polygon | undefined => {
  const toward: Vec3 = [side * normal[0], side * normal[1], side * normal[2]]
  const plane: Plane = {
    normal: toward,
    out: centre[0] * toward[0] + centre[1] * toward[1] + centre[2] * toward[2],
  }
  const [least, most] = reachBefore(blocker, plane)
  if (most <= inPlane) return undefined
  if (least >= -inPlane) return coverOf(screen, silhouette, front)
  const { body } = blocker.solid
  if (body.shape === 'plate') {
    const before = ofFlat(partBefore(body.corners, plane), at)
    return before && coverOf(screen, before, front)
  }
  const part = coverOfPart(blocker, plane, screen, at)
  const cover = part && meet(front, part)
  return cover === undefined || cover.length < 6 ? undefined : cover
}

/** The sun's disc is on a screen one metre off; nothing lies behind it. */
export const coversOfSun = (
  screen: Screen,
  outlook: Outlook,
  disc: Polygon,
  first: boolean,
): readonly Cover[] => {
  const covers: Cover[] = []
  const { all, receptor } = outlook
  const { at } = receptor
  const { to } = screen
  for (let i = 0; i < all.length; i++) {
    const { centre, radius } = all[i]!
    const cx = centre[0] - at[0]
    const cy = centre[1] - at[1]
    const cz = centre[2] - at[2]
    const t = cx * to[0] + cy * to[1] + cz * to[2]
    const reach = radius + screen.halfWidth * Math.max(0, t)
    if (t < -radius || cx * cx + cy * cy + cz * cz - t * t > reach * reach) continue
    const silhouette = outlook.silhouette(i)
    if (silhouette === undefined) continue
    const polygon = coverOf(screen, silhouette, disc)
    if (polygon === undefined) continue
    covers.push({ polygon, blocker: all[i]! })
    if (first && polygon === disc) break
  }
  return covers
}
