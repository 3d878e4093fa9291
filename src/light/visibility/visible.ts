/**
 * Direct light past what stands in its way, without sampling. Seen from the receptor a convex body covers a convex part of
 * the front: what that part would have given is taken off. Parts that several bodies cover are taken off once.
 */
import type { Vec3 } from '../../scene/vector.js'
import { grainOf } from '../grain.js'
import { kernelOf, type LocalReceptor } from '../kernel.js'
import { holeOf } from '../outline.js'
import { clipByHorizon, clipByLine } from '../polygon.js'
import { integratePolygon } from '../quadrature-polygon.js'
import { fromPolygon, response, toLocal } from '../response.js'
import type { AreaSource, ParallelSource, Source } from '../source.js'
import { type Cover, coversOfFront, coversOfSun } from './covers.js'
import { beforeSun, inTheWay } from './in-the-way.js'
import type { Outlook } from './outlook.js'
import { apart, areaOf, largestFirst, lessAll, meet, type Polygon, union } from './polygons.js'
import { sunDisc, sunScreen, sunTangent, wholeSun } from './sun.js'

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
  if (source.kind === 'uniform' || response(source, outlook.receptor) === 0) return new Map()
  if (source.kind === 'parallel') {
    const screen = sunScreen(source.toward)
    const disc = sunDisc(screen, outlook.receptor)
    const way = beforeSun(source, outlook, sunTangent)
    return sharesOf(coversOfSun(screen, outlook, way, disc, false), disc, areaOf)
  }
  const local = toLocal(source, outlook.receptor)
  if (local === undefined) return new Map()
  const front = beforePlane(source, outlook, beforeHorizon(source, local))
  if (front.length < 6) return new Map()
  const covers = coversOfFront(source, outlook, inTheWay(source, outlook), front, false)
  return sharesOf(covers, front, giver(source, local))
}

const sharesOf = (
  covers: readonly Cover[],
  front: Polygon,
  given: (polygon: Polygon) => number,
): ReadonlyMap<string, number> => {
  const byName = new Map<string, Polygon[]>()
  for (const { polygon, blocker } of covers) {
    const { name } = blocker.solid
    byName.set(name, [...(byName.get(name) ?? []), polygon])
  }
  const shares = new Map<string, number>()
  if (byName.size === 0) return shares
  const whole = given(front)
  for (const [name, polygons] of byName) {
    const share = sumOf(union(polygons), given) / whole
    if (share > 1e-9) shares.set(name, Math.min(1, share))
  }
  return shares
}

const ofSun = (source: ParallelSource, outlook: Outlook, clear: number): number => {
  const way = beforeSun(source, outlook, sunTangent)
  if (way.length === 0 && outlook.receptor.against === undefined) return clear
  const screen = sunScreen(source.toward)
  const disc = sunDisc(screen, outlook.receptor)
  if (disc.length < 6) return 0
  const covers = coversOfSun(screen, outlook, way, disc, true)
  if (covers.length === 0 && disc === wholeSun) return clear
  const open = lessAll(
    [disc],
    covers.map(({ polygon }) => polygon),
  )
  const share = sumOf(open, areaOf) / areaOf(wholeSun)
  return share > nothing ? clear * share : 0
}

const ofFront = (source: AreaSource, outlook: Outlook, clear: number): number => {
  const way = inTheWay(source, outlook)
  if (way.length === 0 && outlook.receptor.against === undefined) return clear
  const local = toLocal(source, outlook.receptor)
  if (local === undefined) return 0
  const before = beforeHorizon(source, local)
  const front = beforePlane(source, outlook, before)
  if (front.length < 6) return 0
  const covers = coversOfFront(source, outlook, way, front, true)
  const polygons = largestFirst(covers.map(({ polygon }) => polygon))
  if (polygons[0] === front) return 0
  const given = giver(source, local)
  if (polygons.length === 0) return front === before ? clear : given(front)
  const area = areaOf(front)
  if (sumOf(polygons, areaOf) < area / 2) {
    const whole = front === before ? clear : given(front)
    const left = whole - sumOf(union(polygons), given)
    // The whole and its parts are added up by unlike rules: a small rest is told by the open parts alone.
    if (left > whole / 4) return left
  }
  const open = lessAll([front], polygons)
  return sumOf(open, areaOf) > nothing * area ? sumOf(open, given) : 0
}

/** Share of the front that counts as nothing. */
const nothing = 1e-6

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

/** What parts of the front give, none of them behind the receptor's horizon. */
const giver = (source: AreaSource, local: LocalReceptor): ((polygon: Polygon) => number) => {
  const { pattern, area } = source
  const even = pattern.cosine === 1 && pattern.grid === undefined
  const kernel = even ? undefined : kernelOf(pattern, local)
  const grain = even ? undefined : grainOf(source, local, true)
  const over = (polygon: Polygon): number =>
    kernel === undefined || grain === undefined
      ? fromPolygon(polygon, local)
      : integratePolygon(polygon, local, kernel, grain)
  if (source.hole === 0) return (polygon) => over(polygon) / area
  const hole = holeOf(source)
  return (polygon) => {
    const dark = apart(polygon, hole) ? [] : meet(hole, polygon)
    return (over(polygon) - (dark.length < 6 ? 0 : over(dark))) / area
  }
}
