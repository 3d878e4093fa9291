/**
 * Direct light past what stands in its way, without sampling. Seen from the receptor a convex body covers a convex part of
 * the front: what that part would have given is taken off. Parts that several bodies cover are taken off once.
 */
import type { Vec3 } from '../../scene/vector.js'
import { kernelOf, type LocalReceptor, sharpness } from '../kernel.js'
import { holeOf } from '../outline.js'
import { clipByHorizon, clipByLine } from '../polygon.js'
import { integratePolygon } from '../quadrature-polygon.js'
import { fromPolygon, response, toLocal } from '../response.js'
import type { AreaSource, ParallelSource, Source } from '../source.js'
import type { Blocker } from './blockers.js'
import { coversOfFront, coversOfSun, type OnCover } from './covers.js'
import type { Outlook } from './outlook.js'
import { apart, areaOf, lessEach, meet, type Polygon } from './polygons.js'
import { discArea, sunDisc, sunScreen } from './sun.js'

/**
 * As `response`, of what is not hidden; the same to the last digit where nothing is in the way.
 *
 * @param clear the `response`, where it is known already
 */
export const visibleResponse = (
  source: Source,
  outlook: Outlook,
  clear: number = response(source, outlook.receptor),
): number => {
  if (clear === 0 || source.kind === 'uniform') return clear
  return source.kind === 'parallel' ? ofSun(source, outlook, clear) : ofFront(source, outlook, clear)
}

/** By solid's name: the share of the unhindered response that each alone would hide. */
export const hiddenShares = (source: Source, outlook: Outlook): ReadonlyMap<string, number> => {
  const shares = new Map<string, number>()
  const clear = response(source, outlook.receptor)
  if (clear === 0 || source.kind === 'uniform') return shares
  const byName = new Map<string, Hidden>()
  const onCover = (cover: Polygon, { solid: { name } }: Blocker): boolean => {
    const hidden: Hidden = byName.get(name) ?? { covers: [], parts: [] }
    byName.set(name, hidden)
    hide(hidden, cover)
    return false
  }
  let given = areaOf
  let whole: number
  if (source.kind === 'parallel') {
    const screen = sunScreen(source.toward)
    const disc = sunDisc(screen, outlook.receptor)
    whole = areaOf(disc)
    coversOfSun(screen, outlook, disc, onCover)
  } else {
    const local = toLocal(source, outlook.receptor)
    if (local === undefined) return shares
    const front = beforePlane(source, outlook, beforeHorizon(source, local))
    if (front.length < 6) return shares
    given = (polygon) => part(source, local, polygon)
    coversOfFront(source, outlook, front, onCover)
    whole = byName.size === 0 ? 1 : given(front)
  }
  for (const [name, { parts }] of byName) {
    const share = sumOf(parts, given) / whole
    if (share > 1e-9) shares.set(name, Math.min(1, share))
  }
  return shares
}

/** What is covered: by each, and as convex parts that do not overlap. */
interface Hidden {
  readonly covers: Polygon[]
  readonly parts: Polygon[]
}

const hide = ({ covers, parts }: Hidden, cover: Polygon): void => {
  if (covers.length === 0) parts.push(cover)
  else parts.push(...covers.reduce<readonly Polygon[]>(lessEach, [cover]))
  covers.push(cover)
}

const ofSun = ({ toward }: ParallelSource, outlook: Outlook, clear: number): number => {
  const screen = sunScreen(toward)
  const disc = sunDisc(screen, outlook.receptor)
  if (disc.length < 6) return 0
  const hidden = hiddenOf(disc, (onCover) => coversOfSun(screen, outlook, disc, onCover))
  if (hidden === 'all') return 0
  const open = areaOf(disc) - sumOf(hidden.parts, areaOf)
  return open > nothing * discArea ? clear * Math.min(1, open / discArea) : 0
}

const ofFront = (source: AreaSource, outlook: Outlook, clear: number): number => {
  const local = toLocal(source, outlook.receptor)
  if (local === undefined) return 0
  const before = beforeHorizon(source, local)
  const front = beforePlane(source, outlook, before)
  if (front.length < 6) return 0
  const hidden = hiddenOf(front, (onCover) => coversOfFront(source, outlook, front, onCover))
  if (hidden === 'all') return 0
  const given = (polygon: Polygon): number => part(source, local, polygon)
  const whole = front === before ? clear : given(front)
  if (hidden.parts.length === 0) return whole
  const area = areaOf(front)
  const covered = sumOf(hidden.parts, areaOf)
  if (covered > (1 - nothing) * area) return 0
  if (covered < area / 2) {
    const left = whole - sumOf(hidden.parts, given)
    // The whole and its parts are added up by unlike rules: a small rest is told by the open parts alone.
    if (left > whole / 4) return left
  }
  return sumOf(hidden.covers.reduce<readonly Polygon[]>(lessEach, [front]), given)
}

/** Share of the front that counts as nothing. */
const nothing = 1e-6

/** `all` where one blocker covers the whole front. */
const hiddenOf = (front: Polygon, covers: (onCover: OnCover) => void): Hidden | 'all' => {
  const hidden: Hidden = { covers: [], parts: [] }
  let all = false
  covers((cover) => {
    all = cover === front
    if (!all) hide(hidden, cover)
    return all
  })
  return all ? 'all' : hidden
}

const sumOf = (polygons: readonly Polygon[], of: (polygon: Polygon) => number): number => {
  let sum = 0
  for (const one of polygons) sum += of(one)
  return sum
}

/** The part of the front that the receptor faces. */
const beforeHorizon = ({ outline }: AreaSource, { horizon, x, y, z, nx, ny, nz }: LocalReceptor): Polygon =>
  horizon ? clipByHorizon(outline, x, y, z, nx, ny, nz) : outline

/** The part that lies before the plane that the receptor is held against. */
const beforePlane = (
  { face }: AreaSource,
  { receptor: { against, at } }: Outlook,
  front: Polygon,
): Polygon => {
  if (against === undefined || front.length < 6) return front
  const { across, up, centre } = face
  const along = (v: Vec3): number => against[0] * v[0] + against[1] * v[1] + against[2] * v[2]
  return clipByLine(
    front,
    along(across),
    along(up),
    along([centre[0] - at[0], centre[1] - at[1], centre[2] - at[2]]),
  )
}

/** What a part of the front gives, none of it behind the receptor's horizon. */
const part = (source: AreaSource, local: LocalReceptor, polygon: Polygon): number => {
  const given = overPolygon(source, local, polygon)
  if (source.hole === 0) return given / source.area
  const hole = holeOf(source)
  const dark = apart(polygon, hole) ? [] : meet(hole, polygon)
  return (given - (dark.length < 6 ? 0 : overPolygon(source, local, dark))) / source.area
}

const overPolygon = ({ pattern }: AreaSource, local: LocalReceptor, polygon: Polygon): number =>
  pattern.cosine === 1 && pattern.grid === undefined
    ? fromPolygon(polygon, local)
    : integratePolygon(polygon, local, kernelOf(pattern, local), Math.sqrt(sharpness(pattern, true)))
