/** What each blocker covers of a front, or of the sun's disc, as one receptor sees it. */
import type { Vec3 } from '../../scene/vector.js'
import type { AreaSource } from '../source.js'
import type { Blocker } from './blockers.js'
import type { Outlook } from './outlook.js'
import { meet, type Polygon } from './polygons.js'
import { coverOf, type Screen, screenOf } from './screen.js'
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
 * @param way places of the blockers that may cover some of it
 * @param front the part of the source's outline that counts
 * @param first end the search with the first blocker that covers all of it
 */
export const coversOfFront = (
  { face }: AreaSource,
  outlook: Outlook,
  way: readonly number[],
  front: Polygon,
  first: boolean,
): readonly Cover[] => {
  const { at } = outlook.receptor
  const screen = screenOf(face, at)
  const plane = planeToward(face, at)
  const covers: Cover[] = []
  for (const i of way) {
    const silhouette = outlook.silhouette(i)
    if (silhouette === undefined) continue
    const blocker = outlook.all[i]!
    const polygon = coverBefore(blocker, silhouette, screen, plane, at, front)
    if (polygon === undefined) continue
    covers.push({ polygon, blocker })
    if (first && polygon === front) break
  }
  return covers
}

/** The sun's disc is on a screen one metre off; nothing lies behind it. */
export const coversOfSun = (
  screen: Screen,
  outlook: Outlook,
  way: readonly number[],
  disc: Polygon,
  first: boolean,
): readonly Cover[] => {
  const covers: Cover[] = []
  for (const i of way) {
    const silhouette = outlook.silhouette(i)
    const polygon = silhouette && coverOf(screen, silhouette, disc)
    if (polygon === undefined) continue
    covers.push({ polygon, blocker: outlook.all[i]! })
    if (first && polygon === disc) break
  }
  return covers
}

const planeToward = ({ normal, centre }: AreaSource['face'], at: Vec3): Plane => {
  const off =
    (at[0] - centre[0]) * normal[0] + (at[1] - centre[1]) * normal[1] + (at[2] - centre[2]) * normal[2]
  const side = off < 0 ? -1 : 1
  return {
    normal: [side * normal[0], side * normal[1], side * normal[2]],
    out: side * (centre[0] * normal[0] + centre[1] * normal[1] + centre[2] * normal[2]),
  }
}

/** Of a blocker that the front's plane may cut. */
const coverBefore = (
  blocker: Blocker,
  silhouette: Silhouette,
  screen: Screen,
  plane: Plane,
  at: Vec3,
  front: Polygon,
): Polygon | undefined => {
  const { centre, radius, solid } = blocker
  const { normal, out } = plane
  const cone = coverOf(screen, silhouette, front)
  if (cone === undefined) return undefined
  if (centre[0] * normal[0] + centre[1] * normal[1] + centre[2] * normal[2] - out >= radius) return cone
  const [least, most] = reachBefore(blocker, plane)
  if (most <= inPlane) return undefined
  if (least >= -inPlane) return cone
  const { body } = solid
  if (body.shape === 'plate') {
    const before = ofFlat(partBefore(body.corners, plane), at)
    return before && coverOf(screen, before, front)
  }
  const part = coverOfPart(blocker, plane, screen, at)
  const cover = part && meet(front, part)
  return cover === undefined || cover.length < 6 ? undefined : cover
}
