/**
 * Bodies that a front's own plane cuts: only what lies on the receptor's side of the plane is in the way. That part is
 * convex, and so is what it covers of the plane: the hull of its outermost points as they are carried there.
 */
import { contactRing } from '../../scene/capsule.js'
import { hull, type PlanePoint } from '../../scene/hull.js'
import { cross, dot, lengthOf, unit, type Vec3 } from '../../scene/vector.js'
import type { Blocker, Round } from './blockers.js'
import type { Polygon } from './polygons.js'
import type { Screen } from './screen.js'

/** A front's plane: unit normal toward the receptor's side, and how far out it lies. */
export interface Plane {
  readonly normal: Vec3
  readonly out: number
}

/** Metres that a body reaches before the plane: least and most; below 0 it lies behind. */
export const reachBefore = ({ solid, round }: Blocker, { normal, out }: Plane): readonly [number, number] => {
  const { body } = solid
  if (body.shape !== 'capsule') {
    let low = Number.POSITIVE_INFINITY
    let high = Number.NEGATIVE_INFINITY
    for (const corner of body.corners) {
      const off = dot(corner, normal) - out
      if (off < low) low = off
      if (off > high) high = off
    }
    return [low, high]
  }
  const { from, to, across, along, cap } = body.capsule
  const { rows } = round!
  const [a, b] = [dot(from, normal) - out, dot(to, normal) - out]
  const x = across * across * (rows[0]! * normal[0] + rows[1]! * normal[1] + rows[2]! * normal[2])
  const y = along * along * (rows[3]! * normal[0] + rows[4]! * normal[1] + rows[5]! * normal[2])
  const z = cap * cap * (rows[6]! * normal[0] + rows[7]! * normal[1] + rows[8]! * normal[2])
  const coat = lengthOf(x, y, z)
  return [Math.min(a, b) - coat, Math.max(a, b) + coat]
}

/** The part of a flat body that lies before the plane, as corners in order. */
export const partBefore = (corners: readonly Vec3[], { normal, out }: Plane): readonly Vec3[] => {
  const kept: Vec3[] = []
  let a = corners[corners.length - 1]!
  let fa = dot(a, normal) - out
  for (const b of corners) {
    const fb = dot(b, normal) - out
    if (fa > 0 !== fb > 0) {
      const share = fa / (fa - fb)
      kept.push([a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1]), a[2] + share * (b[2] - a[2])])
    }
    if (fb > 0) kept.push(b)
    a = b
    fa = fb
  }
  return kept
}

/** What is as high over the plane as the receptor covers nothing of it; so near to that it is cut off. */
const nearly = 1 - 1e-3

/** What of the plane the part of a capsule or hull before it covers, on the screen's axes; undefined where nothing. */
export const coverOfPart = (
  blocker: Blocker,
  plane: Plane,
  screen: Screen,
  at: Vec3,
): Polygon | undefined => {
  const height = dot(at, plane.normal) - plane.out
  const { body } = blocker.solid
  const points: PlanePoint[] = []
  const put = (place: Vec3): void => {
    const d: Vec3 = [place[0] - at[0], place[1] - at[1], place[2] - at[2]]
    const t = -height / dot(d, plane.normal)
    points.push([
      t * dot(d, screen.across) - dot(screen.to, screen.across),
      t * dot(d, screen.up) - dot(screen.to, screen.up),
    ])
  }
  const levels = [plane.out, plane.out + nearly * height] as const
  if (body.shape === 'capsule') {
    for (const end of [body.capsule.from, body.capsule.to])
      for (const place of contactRing(body.capsule, end, at, around) ?? [])
        if (isBetween(dot(place, plane.normal), levels)) put(place)
    for (const level of levels) section(blocker.round!, { normal: plane.normal, out: level }, put)
  } else {
    const { corners } = body
    for (const corner of corners) if (isBetween(dot(corner, plane.normal), levels)) put(corner)
    for (const [a, b] of edgesOf(corners))
      for (const level of levels) {
        const [fa, fb] = [dot(a, plane.normal) - level, dot(b, plane.normal) - level]
        if (fa > 0 === fb > 0) continue
        const share = fa / (fa - fb)
        put([a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1]), a[2] + share * (b[2] - a[2])])
      }
  }
  const edge = hull(points)
  return edge.length < 3 ? undefined : edge.flat()
}

const isBetween = (value: number, [low, high]: readonly [number, number]): boolean =>
  value >= low && value <= high

/** Of a hull of two like rings of corners. */
function* edgesOf(corners: readonly Vec3[]): Iterable<readonly [Vec3, Vec3]> {
  const count = corners.length / 2
  for (let i = 0; i < count; i++) {
    const j = (i + 1) % count
    yield [corners[i]!, corners[j]!]
    yield [corners[count + i]!, corners[count + j]!]
    yield [corners[i]!, corners[count + i]!]
  }
}

/** Points on each ring of contact, and around each section. */
const around = 64

/** Points around the section of a capsule by a plane, if it has one. */
const section = ({ rows, from, high }: Round, plane: Plane, put: (place: Vec3) => void): void => {
  // Where it is round the plane is n·x = d.
  const inverse = [0, 3, 6].map((i): Vec3 => {
    const square = rows[i]! ** 2 + rows[i + 1]! ** 2 + rows[i + 2]! ** 2
    return [rows[i]! / square, rows[i + 1]! / square, rows[i + 2]! / square]
  })
  const back = (x: Vec3): Vec3 =>
    [0, 1, 2].map(
      (k) => from[k]! + x[0] * inverse[0]![k]! + x[1] * inverse[1]![k]! + x[2] * inverse[2]![k]!,
    ) as unknown as Vec3
  const [nx, ny, nz] = inverse.map((axis) => dot(axis, plane.normal)) as [number, number, number]
  const d = plane.out - dot(from, plane.normal)
  const size = Math.hypot(nx, ny, nz)
  const n: Vec3 = [nx / size, ny / size, nz / size]
  const p = unit(cross(n, Math.abs(n[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0]))
  const q = cross(n, p)
  const heights = [0, high, d / size / n[2]].filter((z) => z >= 0 && z <= high)
  for (const z of heights) {
    const off = d / size - z * n[2]
    if (Math.abs(off) >= 1) continue
    const middle: Vec3 = [off * n[0], off * n[1], z + off * n[2]]
    for (let i = 0; i < around; i++) {
      const [c, s] = [Math.cos((2 * Math.PI * i) / around), Math.sin((2 * Math.PI * i) / around)]
      const way: Vec3 = [c * p[0] + s * q[0], c * p[1] + s * q[1], c * p[2] + s * q[2]]
      const t = leaves(middle, way, high)
      put(back([middle[0] + t * way[0], middle[1] + t * way[1], middle[2] + t * way[2]]))
    }
  }
}

/** How far a ray goes that starts within the round capsule. */
const leaves = (x: Vec3, w: Vec3, high: number): number => {
  const flat = w[0] * w[0] + w[1] * w[1]
  let upper = w[2] > 0
  if (flat > 1e-12) {
    const half = x[0] * w[0] + x[1] * w[1]
    const t = (-half + Math.sqrt(Math.max(0, half * half - flat * (x[0] * x[0] + x[1] * x[1] - 1)))) / flat
    const z = x[2] + t * w[2]
    if (z >= 0 && z <= high) return t
    upper = z > high
  }
  const rise = x[2] - (upper ? high : 0)
  const half = x[0] * w[0] + x[1] * w[1] + rise * w[2]
  return -half + Math.sqrt(Math.max(0, half * half - (x[0] * x[0] + x[1] * x[1] + rise * rise - 1)))
}
