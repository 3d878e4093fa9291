/**
 * Direct light past what stands in its way, without sampling. Seen from the receptor a convex body covers a convex part of
 * the front: that part is carried onto the front's plane, and what it would have given is taken off. Parts that several
 * bodies cover are taken off once.
 */
import { rayMeets } from '../../scene/ray.js'
import { add, dot, scale, subtract, type Vec3 } from '../../scene/vector.js'
import { kernelOf, type LocalReceptor, sharpness } from '../kernel.js'
import { holeOf } from '../outline.js'
import { clipByHorizon, clipByLine } from '../polygon.js'
import { integratePolygon } from '../quadrature-polygon.js'
import { fromPolygon, response, toLocal } from '../response.js'
import type { AreaSource, Source } from '../source.js'
import type { Blocker } from './blockers.js'
import type { Outlook } from './outlook.js'
import { apartSquared } from './segments.js'

/** u₀, v₀, u₁, v₁ … on the front's plane, counter-clockwise, convex. */
type Polygon = readonly number[]

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
  if (source.kind === 'parallel') return sunHidden(source.toward, outlook) ? 0 : clear
  const local = toLocal(source, outlook.receptor)
  if (local === undefined) return 0
  const front = againstPlane(source, outlook)
  if (front.length < 6) return 0
  const whole = front === source.outline ? clear : part(source, local, front)
  const hidden = hiddenParts(source, outlook, front)
  if (hidden.length === 0) return whole
  let off = 0
  let area = 0
  for (const one of hidden) {
    area += areaOf(one)
    off += part(source, local, one)
  }
  return area > (1 - covered) * areaOf(front) ? 0 : Math.max(0, whole - off)
}

/** Share of the front that counts as nothing. */
const covered = 1e-6

/** By solid's name: the share of the unhindered response that each alone would hide. */
export const hiddenShares = (source: Source, outlook: Outlook): ReadonlyMap<string, number> => {
  const shares = new Map<string, number>()
  const clear = response(source, outlook.receptor)
  if (clear === 0 || source.kind === 'uniform') return shares
  if (source.kind === 'parallel') {
    for (const { solid } of outlook.blockers)
      if (rayMeets(solid.body, outlook.receptor.at, source.toward) !== undefined) shares.set(solid.name, 1)
    return shares
  }
  const local = toLocal(source, outlook.receptor)
  const front = againstPlane(source, outlook)
  if (local === undefined || front.length < 6) return shares
  const whole = part(source, local, front)
  const byName = new Map<string, Polygon[]>()
  for (const blocker of inTheWay(source, outlook)) {
    const cover = coverOf(source, outlook, blocker, front)
    if (cover === undefined) continue
    const before = byName.get(blocker.solid.name) ?? []
    byName.set(blocker.solid.name, [...before, ...before.reduce(lessEach, [cover])])
  }
  for (const [name, parts] of byName) {
    const share = parts.reduce((sum, one) => sum + part(source, local, one), 0) / whole
    if (share > 1e-9) shares.set(name, Math.min(1, share))
  }
  return shares
}

/** The sun is taken as a ray: the half a degree of its disc softens no edge that matters in a studio. */
const sunHidden = (toward: Vec3, { receptor, blockers }: Outlook): boolean => {
  const { against } = receptor
  if (against !== undefined && against[0] * toward[0] + against[1] * toward[1] + against[2] * toward[2] <= 0)
    return true
  return blockers.some(({ solid }) => rayMeets(solid.body, receptor.at, toward) !== undefined)
}

/** On which side of the front the receptor stands: 1 in front, −1 behind. */
const sideOf = ({ face }: AreaSource, at: Vec3): 1 | -1 =>
  (at[0] - face.centre[0]) * face.normal[0] +
    (at[1] - face.centre[1]) * face.normal[1] +
    (at[2] - face.centre[2]) * face.normal[2] <
  0
    ? -1
    : 1

/** The part of the front that lies before the plane that the receptor is held against. */
const againstPlane = (source: AreaSource, { receptor }: Outlook): Polygon => {
  const { against, at } = receptor
  if (against === undefined) return source.outline
  const { across, up, centre } = source.face
  const d: Vec3 = [centre[0] - at[0], centre[1] - at[1], centre[2] - at[2]]
  const along = (v: Vec3): number => against[0] * v[0] + against[1] * v[1] + against[2] * v[2]
  return clipByLine(source.outline, along(across), along(up), along(d))
}

/** What a part of the front gives. */
const part = (source: AreaSource, local: LocalReceptor, polygon: Polygon): number => {
  const given = overPolygon(source, local, polygon)
  if (source.hole === 0) return given / source.area
  const dark = meet(polygon, holeOf(source))
  return (given - (dark.length < 6 ? 0 : overPolygon(source, local, dark))) / source.area
}

const overPolygon = ({ pattern }: AreaSource, local: LocalReceptor, polygon: Polygon): number => {
  if (pattern.cosine === 1 && pattern.grid === undefined) return fromPolygon(polygon, local)
  const { x, y, z, nx, ny, nz, horizon } = local
  const seen = horizon ? clipByHorizon(polygon, x, y, z, nx, ny, nz) : polygon
  return seen.length < 6
    ? 0
    : integratePolygon(seen, local, kernelOf(pattern, local), Math.sqrt(sharpness(pattern, true)))
}

/** Those whose sphere comes near the lines from the receptor to the front. */
function* inTheWay(source: AreaSource, { receptor, blockers }: Outlook): Iterable<Blocker> {
  const { at } = receptor
  const { centre, width, height } = source.face
  const wide = Math.hypot(width, height) / 2
  const [wx, wy, wz] = [centre[0] - at[0], centre[1] - at[1], centre[2] - at[2]]
  const square = wx * wx + wy * wy + wz * wz
  const way = Math.sqrt(square)
  for (const blocker of blockers) {
    if (blocker.solid.of === 'light' && blocker.solid.name === source.light) continue
    const [cx, cy, cz] = [blocker.centre[0] - at[0], blocker.centre[1] - at[1], blocker.centre[2] - at[2]]
    const t = Math.min(1, Math.max(0, (cx * wx + cy * wy + cz * wz) / (square || 1)))
    const [dx, dy, dz] = [cx - t * wx, cy - t * wy, cz - t * wz]
    const near = blocker.radius + wide * Math.min(1, t + blocker.radius / (way || 1))
    if (dx * dx + dy * dy + dz * dz > near * near) continue
    if (blocker.spine !== undefined) {
      const { from, along, coat } = blocker.spine
      const reach = coat + wide
      if (apartSquared(from, along, at, [wx, wy, wz]) > reach * reach) continue
    }
    yield blocker
  }
}

/** Directions flatter to the front's plane than this never reach it. */
const flattest = 1e-4

/** The part of the front that a blocker covers; undefined where none. */
const coverOf = (
  source: AreaSource,
  outlook: Outlook,
  blocker: Blocker,
  front: Polygon,
): Polygon | undefined => {
  const { face } = source
  const { at } = outlook.receptor
  const side = sideOf(source, at)
  const [dx, dy, dz] = [at[0] - face.centre[0], at[1] - face.centre[1], at[2] - face.centre[2]]
  const off = (v: Vec3): number => dx * v[0] + dy * v[1] + dz * v[2]
  const z = Math.abs(off(face.normal))
  if (beyondFront(source, blocker, side)) return undefined
  const whole = outlook.ring(blocker)
  const n = face.normal
  const ring = blocker.solid.body.shape === 'plate' ? upTo(whole!, scale(n, -side), z) : whole
  if (ring === undefined || ring.length < 3) return undefined
  // Toward the front's plane: positive.
  const sinks = ring.map((d) => -side * (d[0] * n[0] + d[1] * n[1] + d[2] * n[2]))
  const x = off(face.across)
  const y = off(face.up)
  const points: number[] = []
  const push = (d: Vec3, sink: number): void => {
    const t = z / sink
    points.push(
      x + t * (d[0] * face.across[0] + d[1] * face.across[1] + d[2] * face.across[2]),
      y + t * (d[0] * face.up[0] + d[1] * face.up[1] + d[2] * face.up[2]),
    )
  }
  for (let i = 0; i < ring.length; i++) {
    const j = (i + 1) % ring.length
    const [a, b] = [ring[i]!, ring[j]!]
    const [sa, sb] = [sinks[i]! - flattest, sinks[j]! - flattest]
    if (sa >= 0) push(a, sinks[i]!)
    if (sa >= 0 !== sb >= 0) {
      const k = sa / (sa - sb)
      push([a[0] + k * (b[0] - a[0]), a[1] + k * (b[1] - a[1]), a[2] + k * (b[2] - a[2])], flattest)
    }
  }
  if (points.length < 6) return undefined
  const cover = meet(front, counterClockwise(points))
  return cover.length < 6 ? undefined : cover
}

/** The part of a flat ring that lies no further along a direction than the front does: what is beyond hides nothing. */
const upTo = (ring: readonly Vec3[], along: Vec3, most: number): readonly Vec3[] => {
  const beyond = ring.map((d) => dot(d, along) - most)
  if (beyond.every((one) => one <= 0)) return ring
  return ring.flatMap((a, i): Vec3[] => {
    const j = (i + 1) % ring.length
    const [b, fa, fb] = [ring[j]!, beyond[i]!, beyond[j]!]
    const kept: Vec3[] = fa <= 0 ? [a] : []
    if (fa <= 0 !== fb <= 0) kept.push(add(a, scale(subtract(b, a), fa / (fa - fb))))
    return kept
  })
}

/** A body whose middle lies behind the front hides nothing of it. */
const beyondFront = ({ face }: AreaSource, { centre, solid }: Blocker, side: 1 | -1): boolean =>
  solid.body.shape !== 'plate' &&
  side *
    ((centre[0] - face.centre[0]) * face.normal[0] +
      (centre[1] - face.centre[1]) * face.normal[1] +
      (centre[2] - face.centre[2]) * face.normal[2]) <=
    0

/** What is hidden of the front, as convex parts that do not overlap. */
const hiddenParts = (source: AreaSource, outlook: Outlook, front: Polygon): readonly Polygon[] => {
  const covers: Polygon[] = []
  let parts: readonly Polygon[] = []
  for (const blocker of inTheWay(source, outlook)) {
    const cover = coverOf(source, outlook, blocker, front)
    if (cover === undefined) continue
    parts = [...parts, ...covers.reduce(lessEach, [cover])]
    covers.push(cover)
  }
  return parts
}

const lessEach = (parts: Polygon[], hole: Polygon): Polygon[] => parts.flatMap((one) => less(one, hole))

// ---------------------------------------------------------------- convex polygons

export const areaOf = (polygon: Polygon): number => {
  let sum = 0
  for (let i = 0, j = polygon.length - 2; i < polygon.length; j = i, i += 2)
    sum += polygon[j]! * polygon[i + 1]! - polygon[i]! * polygon[j + 1]!
  return sum / 2
}

const counterClockwise = (polygon: Polygon): Polygon => {
  if (areaOf(polygon) >= 0) return polygon
  const turned: number[] = []
  for (let i = polygon.length - 2; i >= 0; i -= 2) turned.push(polygon[i]!, polygon[i + 1]!)
  return turned
}

/** Keeps what lies to the left of the edge from a to b (`sign` 1) or to its right (−1). */
const besideEdge = (
  polygon: Polygon,
  au: number,
  av: number,
  bu: number,
  bv: number,
  sign: 1 | -1,
): Polygon =>
  clipByLine(polygon, -sign * (bv - av), sign * (bu - au), sign * ((bv - av) * au - (bu - au) * av))

/** What two have in common. */
export const meet = (a: Polygon, b: Polygon): Polygon => {
  let kept = a
  for (let i = 0, j = b.length - 2; i < b.length && kept.length >= 6; j = i, i += 2)
    kept = besideEdge(kept, b[j]!, b[j + 1]!, b[i]!, b[i + 1]!, 1)
  return kept
}

/** Parts smaller than this share of what they are cut from are slivers of rounding. */
const sliver = 1e-9

/** The first without the second, as convex parts. */
export const less = (a: Polygon, b: Polygon): Polygon[] => {
  if (meet(a, b).length < 6) return [a]
  const least = sliver * areaOf(a)
  const parts: Polygon[] = []
  let left = a
  for (let i = 0, j = b.length - 2; i < b.length && left.length >= 6; j = i, i += 2) {
    const outside = besideEdge(left, b[j]!, b[j + 1]!, b[i]!, b[i + 1]!, -1)
    if (outside.length >= 6 && areaOf(outside) > least) parts.push(outside)
    left = besideEdge(left, b[j]!, b[j + 1]!, b[i]!, b[i + 1]!, 1)
  }
  return parts
}
