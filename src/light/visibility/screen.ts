/** A flat front (or the sun's disc, one metre off) as a place sees it, and what a silhouette covers of it. */
import type { Face } from '../../scene/scene.js'
import type { Vec3 } from '../../scene/vector.js'
import type { Polygon } from './polygons.js'
import type { Ring, Silhouette } from './silhouette.js'

export interface Screen {
  /** From the place to the middle. */
  readonly to: Vec3
  readonly across: Vec3
  readonly up: Vec3
  /** Nothing of it lies further from its middle along `across` and `up`. */
  readonly halfWidth: number
  readonly halfHeight: number
}

/** A disc's corners lie a little further out than its rim. */
const half = 0.505

export const screenOf = ({ centre, across, up, width, height }: Face, at: Vec3): Screen => ({
  to: [centre[0] - at[0], centre[1] - at[1], centre[2] - at[2]],
  across,
  up,
  halfWidth: half * width,
  halfHeight: half * height,
})

// The polygon that is being cut. Nothing of it is kept between two questions.
let now = new Float64Array(256)
let spare = new Float64Array(256)
let value = new Float64Array(128)
let count = 0
let whole = true

const begin = (polygon: Polygon): void => {
  count = polygon.length
  if (2 * count + 64 > now.length) {
    now = new Float64Array(4 * count + 64)
    spare = new Float64Array(4 * count + 64)
    value = new Float64Array(2 * count + 32)
  }
  for (let i = 0; i < count; i++) now[i] = polygon[i]!
  whole = true
}

/** Keeps what is not below 0 of fu·u + fv·v + f0. False where nothing is left. */
const keep = (fu: number, fv: number, f0: number, halfWidth: number, halfHeight: number): boolean => {
  const reach = Math.abs(fu) * halfWidth + Math.abs(fv) * halfHeight
  if (f0 >= reach) return true
  if (f0 <= -reach) return false
  let inside = 0
  for (let i = 0; i < count; i += 2) {
    const f = fu * now[i]! + fv * now[i + 1]! + f0
    value[i >> 1] = f
    if (f >= 0) inside++
  }
  if (2 * inside === count) return true
  if (inside === 0) return false
  let kept = 0
  let j = count - 2
  let before = value[j >> 1]!
  for (let i = 0; i < count; i += 2) {
    const f = value[i >> 1]!
    if (before >= 0 !== f >= 0) {
      const share = before / (before - f)
      spare[kept++] = now[j]! + share * (now[i]! - now[j]!)
      spare[kept++] = now[j + 1]! + share * (now[i + 1]! - now[j + 1]!)
    }
    if (f >= 0) {
      spare[kept++] = now[i]!
      spare[kept++] = now[i + 1]!
    }
    j = i
    before = f
  }
  const was = now
  now = spare
  spare = was
  count = kept
  whole = false
  return count >= 6 && room()
}

/** A cut adds a corner at most. */
const room = (): boolean => {
  if (count + 4 > spare.length) {
    const grown = new Float64Array(2 * now.length)
    grown.set(now)
    now = grown
    spare = new Float64Array(grown.length)
    value = new Float64Array(grown.length)
  }
  return true
}

/** The part of a convex polygon on the screen that a silhouette covers: itself where that is all, undefined where none. */
export const coverOf = (screen: Screen, silhouette: Silhouette, polygon: Polygon): Polygon | undefined => {
  const { to, across, up, halfWidth, halfHeight } = screen
  const { planes, rings } = silhouette
  begin(polygon)
  for (let i = 0; i < planes.length; i += 3) {
    const mx = planes[i]!
    const my = planes[i + 1]!
    const mz = planes[i + 2]!
    if (
      !keep(
        mx * across[0] + my * across[1] + mz * across[2],
        mx * up[0] + my * up[1] + mz * up[2],
        mx * to[0] + my * to[1] + mz * to[2],
        halfWidth,
        halfHeight,
      )
    )
      return undefined
  }
  for (const ring of rings) if (!keepWithin(ring, screen)) return undefined
  if (whole) return polygon
  const cover = new Array<number>(count)
  for (let i = 0; i < count; i++) cover[i] = now[i]!
  return cover
}

/**
 * Cut by a rounded end only along what of it lies toward the screen: seen along the cone's axis the screen takes up the
 * directions from `low` to `high` around `toward`, all of them where the axis meets it.
 */
const keepWithin = (ring: Ring, screen: Screen): boolean => {
  const { p, q, middle, half } = ring
  const { to, across, up, halfWidth, halfHeight } = screen
  const p0 = dot(p, to)
  const pu = dot(p, across)
  const pv = dot(p, up)
  const q0 = dot(q, to)
  const qu = dot(q, across)
  const qv = dot(q, up)
  const a0 = dot(ring.a, to)
  const au = dot(ring.a, across)
  const av = dot(ring.a, up)
  let low = 0
  let high = 0
  let far = 0
  for (let corner = 0; corner < 4; corner++) {
    const u = (corner & 1) === 0 ? halfWidth : -halfWidth
    const v = (corner & 2) === 0 ? halfHeight : -halfHeight
    const x = p0 + u * pu + v * pv
    const y = q0 + u * qu + v * qv
    far = Math.max(far, x * x + y * y)
    const angle = Math.atan2(p0 * y - q0 * x, p0 * x + q0 * y)
    if (angle < low) low = angle
    if (angle > high) high = angle
  }
  // All of the screen well within the cone: no chord would cut it.
  const near = a0 - halfWidth * Math.abs(au) - halfHeight * Math.abs(av)
  if (near > 0 && far < 0.95 * near * near) return true
  // Where it crosses the screen the cone is about as wide as this, against how far the screen reaches.
  const wide = halfWidth * Math.sqrt(pu * pu + qu * qu) + halfHeight * Math.sqrt(pv * pv + qv * qv)
  const away = Math.sqrt(p0 * p0 + q0 * q0)
  const radius = Math.min(away + wide, a0 > 0 ? 1.5 * a0 : Number.POSITIVE_INFINITY)
  const perRadian = Math.sqrt(radius / (finest * wide))
  const alongPart = (from: number, until: number): boolean => {
    const steps = Math.min(64, Math.max(1, Math.ceil(perRadian * (until - from))))
    const step = (until - from) / steps
    // Chords of equal area: this far from the middle against the circle.
    const k = step > 1e-6 ? Math.sqrt(step / 2 / Math.tan(step / 2)) : 1
    for (let i = 0; i < steps; i++) {
      const turn = middle + from + (i + 0.5) * step
      const cosine = Math.cos(turn)
      const sine = Math.sin(turn)
      if (
        !keep(
          k * au - cosine * pu - sine * qu,
          k * av - cosine * pv - sine * qv,
          k * a0 - cosine * p0 - sine * q0,
          halfWidth,
          halfHeight,
        )
      )
        return false
    }
    return true
  }
  if (high - low >= Math.PI || away < 1e-12) return alongPart(-half, half)
  const toward = wrapped(Math.atan2(q0, p0) - middle)
  for (const turn of [toward, toward - 2 * Math.PI, toward + 2 * Math.PI]) {
    const from = Math.max(-half, turn + low)
    const until = Math.min(half, turn + high)
    if (from < until && !alongPart(from, until)) return false
  }
  return true
}

/** 24 times how far a chord may lie off the cone, against the size of the screen. */
const finest = 0.05

const wrapped = (angle: number): number =>
  angle > Math.PI ? angle - 2 * Math.PI : angle <= -Math.PI ? angle + 2 * Math.PI : angle

const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
