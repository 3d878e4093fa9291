/**
 * What a ray can meet: matte rectangles, capsules of elliptic section, convex hulls. Flat arrays and plain numbers in
 * the inner loops; nothing is allocated for a ray.
 */
import type { Capsule, Face } from '../../src/scene/scene.js'
import { add, cross, dot, length, scale, subtract, unit, type Vec3 } from '../../src/scene/vector.js'

/** What a body gives back of light: a share on either side, and what passes. A black body gives nothing. */
export interface Matte {
  readonly front: number
  readonly back: number
  readonly transmits: number
}
export const black: Matte = { front: 0, back: 0, transmits: 0 }

export type Shape =
  | {
      readonly shape: 'rectangle'
      readonly face: Pick<Face, 'centre' | 'normal' | 'across' | 'up' | 'width' | 'height'>
    }
  | { readonly shape: 'capsule'; readonly capsule: Capsule }
  | { readonly shape: 'hull'; readonly corners: readonly Vec3[] }

export interface Body {
  readonly name: string
  readonly shape: Shape
  readonly matte: Matte
  /** The lamp that this is the housing of: it does not shade that lamp. */
  readonly housing?: string
}

/** Nothing nearer than this is met, so that a ray does not meet the surface that it leaves: metres. */
const ahead = 1e-7
/** A body must be nearer by this than one already met: where two lie in one plane, the first in the list counts. */
const clearly = 1e-6

/** Planes that bound the hull of some corners: four numbers each, the outward normal and how far it reaches. */
const planesOf = (corners: readonly Vec3[]): readonly (readonly number[])[] => {
  const planes: number[][] = []
  const n = corners.length
  const middle = scale(
    corners.reduce((sum, one) => add(sum, one), [0, 0, 0] as Vec3),
    1 / n,
  )
  const size = Math.max(...corners.map((one) => length(subtract(one, middle))))
  for (let i = 0; i < n; i++)
    for (let j = i + 1; j < n; j++)
      for (let k = j + 1; k < n; k++) {
        const square = cross(subtract(corners[j]!, corners[i]!), subtract(corners[k]!, corners[i]!))
        if (length(square) < 1e-7 * size * size) continue
        const one = unit(square)
        const offsets = corners.map((corner) => dot(subtract(corner, corners[i]!), one))
        const [low, high] = [Math.min(...offsets), Math.max(...offsets)]
        const slack = 1e-9 * size
        if (low < -slack && high > slack) continue
        const normal = high > slack ? scale(one, -1) : one
        const reach = dot(corners[i]!, normal)
        const known = planes.some(
          ([x, y, z, d]) => dot([x!, y!, z!], normal) > 1 - 1e-9 && Math.abs(d! - reach) < 1e-7 * size,
        )
        if (!known) planes.push([...normal, reach])
      }
  if (planes.length < 4 || planes.every(([x, y, z, d]) => Math.abs(dot([x!, y!, z!], middle) - d!) < 1e-9))
    throw new Error('a hull must have some thickness')
  return planes
}

const perRectangle = 12
const perCapsule = 17

export class Bodies {
  /** In the order of their numbers: rectangles, capsules, hulls. */
  readonly list: readonly Body[]
  /** By number: reflectance in front, behind, and what passes. */
  readonly front: Float64Array
  readonly back: Float64Array
  readonly transmits: Float64Array

  /** Of the body last met: how far along the ray, and its outward normal there. */
  distance = 0
  nx = 0
  ny = 0
  nz = 0

  private readonly rectangles: Float64Array
  private readonly capsules: Float64Array
  private readonly hulls: Float64Array
  private readonly planes: Float64Array
  private readonly rectangleCount: number
  private readonly capsuleCount: number
  private readonly hullCount: number

  constructor(bodies: readonly Body[]) {
    const of = (shape: Shape['shape']) => bodies.filter((body) => body.shape.shape === shape)
    this.list = [...of('rectangle'), ...of('capsule'), ...of('hull')]
    this.front = Float64Array.from(this.list, (body) => body.matte.front)
    this.back = Float64Array.from(this.list, (body) => body.matte.back)
    this.transmits = Float64Array.from(this.list, (body) => body.matte.transmits)

    const shapes = this.list.map((body) => body.shape)
    const rectangles = shapes.flatMap((one) => (one.shape === 'rectangle' ? [one.face] : []))
    this.rectangles = Float64Array.from(
      rectangles.flatMap((face) => [
        ...face.centre,
        ...face.normal,
        ...scale(face.across, 2 / face.width),
        ...scale(face.up, 2 / face.height),
      ]),
    )
    const capsules = shapes.flatMap((one) => (one.shape === 'capsule' ? [one.capsule] : []))
    this.capsules = Float64Array.from(capsules.flatMap(capsuleNumbers))

    const hulls = shapes.flatMap((one) => (one.shape === 'hull' ? [one.corners] : []))
    const planes = hulls.map(planesOf)
    this.planes = Float64Array.from(planes.flat(2))
    let first = 0
    // A sphere about each, then where its planes begin and end.
    this.hulls = Float64Array.from(
      hulls.flatMap((corners, i) => {
        const middle = scale(
          corners.reduce((sum, one) => add(sum, one), [0, 0, 0] as Vec3),
          1 / corners.length,
        )
        const radius = Math.max(...corners.map((one) => length(subtract(one, middle))))
        const numbers = [...middle, radius * radius * 1.001, first, first + planes[i]!.length]
        first += planes[i]!.length
        return numbers
      }),
    )
    this.rectangleCount = rectangles.length
    this.capsuleCount = capsules.length
    this.hullCount = hulls.length
  }

  number(name: string): number {
    return this.list.findIndex((body) => body.name === name)
  }

  isRectangle(number: number): boolean {
    return number < this.rectangleCount
  }

  /** Numbers of the bodies that are a lamp's housing: at most one is asked for. */
  housing(lamp: string): number {
    return this.list.findIndex((body) => body.housing === lamp)
  }

  /** The nearest body's number, or −1; `except` is passed through. Direction of unit length. */
  nearest(ox: number, oy: number, oz: number, dx: number, dy: number, dz: number, except: number): number {
    let best = Number.POSITIVE_INFINITY
    let met = -1
    for (let i = 0; i < this.rectangleCount; i++) {
      const t = this.toRectangle(i, ox, oy, oz, dx, dy, dz)
      if (t < best - clearly && i !== except) {
        best = t
        met = i
      }
    }
    for (let i = 0; i < this.capsuleCount; i++) {
      const t = this.toCapsule(i, ox, oy, oz, dx, dy, dz)
      if (t < best - clearly && i + this.rectangleCount !== except) {
        best = t
        met = i + this.rectangleCount
      }
    }
    for (let i = 0; i < this.hullCount; i++) {
      const t = this.toHull(i, ox, oy, oz, dx, dy, dz)
      const number = i + this.rectangleCount + this.capsuleCount
      if (t < best - clearly && number !== except) {
        best = t
        met = number
      }
    }
    this.distance = best
    if (met >= 0) this.faceAt(met, ox + best * dx, oy + best * dy, oz + best * dz)
    return met
  }

  /** True where a body stands on the way of this length; two bodies may be passed through. */
  blocked(
    ox: number,
    oy: number,
    oz: number,
    dx: number,
    dy: number,
    dz: number,
    until: number,
    except: number,
    housing: number,
  ): boolean {
    for (let i = 0; i < this.capsuleCount; i++)
      if (this.toCapsule(i, ox, oy, oz, dx, dy, dz) < until && i + this.rectangleCount !== except) return true
    for (let i = 0; i < this.rectangleCount; i++)
      if (this.toRectangle(i, ox, oy, oz, dx, dy, dz) < until && i !== except && i !== housing) return true
    for (let i = 0; i < this.hullCount; i++) {
      const number = i + this.rectangleCount + this.capsuleCount
      if (number !== except && number !== housing && this.toHull(i, ox, oy, oz, dx, dy, dz) < until)
        return true
    }
    return false
  }

  private toRectangle(
    i: number,
    ox: number,
    oy: number,
    oz: number,
    dx: number,
    dy: number,
    dz: number,
  ): number {
    const r = this.rectangles
    const b = i * perRectangle
    const x = r[b]! - ox
    const y = r[b + 1]! - oy
    const z = r[b + 2]! - oz
    const slope = r[b + 3]! * dx + r[b + 4]! * dy + r[b + 5]! * dz
    if (slope === 0) return Number.POSITIVE_INFINITY
    const t = (r[b + 3]! * x + r[b + 4]! * y + r[b + 5]! * z) / slope
    if (!(t > ahead)) return Number.POSITIVE_INFINITY
    const px = t * dx - x
    const py = t * dy - y
    const pz = t * dz - z
    const u = r[b + 6]! * px + r[b + 7]! * py + r[b + 8]! * pz
    if (u > 1 || u < -1) return Number.POSITIVE_INFINITY
    const v = r[b + 9]! * px + r[b + 10]! * py + r[b + 11]! * pz
    return v > 1 || v < -1 ? Number.POSITIVE_INFINITY : t
  }

  /** Divided by its semi-axes a capsule is all points within 1 of the upright from 0 to `high`. */
  private toCapsule(
    i: number,
    ox: number,
    oy: number,
    oz: number,
    dx: number,
    dy: number,
    dz: number,
  ): number {
    const c = this.capsules
    const b = i * perCapsule
    const mx = ox - c[b + 13]!
    const my = oy - c[b + 14]!
    const mz = oz - c[b + 15]!
    const toward = mx * dx + my * dy + mz * dz
    const beyond = mx * mx + my * my + mz * mz - c[b + 16]!
    if (beyond > 0 && (toward > 0 || toward * toward < beyond)) return Number.POSITIVE_INFINITY

    const fx = ox - c[b]!
    const fy = oy - c[b + 1]!
    const fz = oz - c[b + 2]!
    const x = c[b + 3]! * fx + c[b + 4]! * fy + c[b + 5]! * fz
    const y = c[b + 6]! * fx + c[b + 7]! * fy + c[b + 8]! * fz
    const z = c[b + 9]! * fx + c[b + 10]! * fy + c[b + 11]! * fz
    const ex = c[b + 3]! * dx + c[b + 4]! * dy + c[b + 5]! * dz
    const ey = c[b + 6]! * dx + c[b + 7]! * dy + c[b + 8]! * dz
    const ez = c[b + 9]! * dx + c[b + 10]! * dy + c[b + 11]! * dz
    const high = c[b + 12]!

    let atEntry = ez > 0 ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY
    const across = ex * ex + ey * ey
    if (across > 1e-18) {
      const half = x * ex + y * ey
      const under = half * half - across * (x * x + y * y - 1)
      if (under <= 0) return Number.POSITIVE_INFINITY
      const t = (-half - Math.sqrt(under)) / across
      atEntry = z + t * ez
      if (atEntry >= 0 && atEntry <= high) return t > ahead ? t : Number.POSITIVE_INFINITY
    }
    // It enters the long cylinder beyond one end: so it can enter the capsule only by that end's ball.
    const w = atEntry < 0 ? z : z - high
    const all = across + ez * ez
    const half = x * ex + y * ey + w * ez
    const under = half * half - all * (x * x + y * y + w * w - 1)
    if (under <= 0) return Number.POSITIVE_INFINITY
    const t = (-half - Math.sqrt(under)) / all
    return t > ahead ? t : Number.POSITIVE_INFINITY
  }

  private toHull(i: number, ox: number, oy: number, oz: number, dx: number, dy: number, dz: number): number {
    const h = this.hulls
    const mx = ox - h[i * 6]!
    const my = oy - h[i * 6 + 1]!
    const mz = oz - h[i * 6 + 2]!
    const toward = mx * dx + my * dy + mz * dz
    const beyond = mx * mx + my * my + mz * mz - h[i * 6 + 3]!
    if (beyond > 0 && (toward > 0 || toward * toward < beyond)) return Number.POSITIVE_INFINITY
    let enter = Number.NEGATIVE_INFINITY
    let leave = Number.POSITIVE_INFINITY
    const p = this.planes
    for (let k = h[i * 6 + 4]!; k < h[i * 6 + 5]!; k++) {
      const outside = p[k * 4]! * ox + p[k * 4 + 1]! * oy + p[k * 4 + 2]! * oz - p[k * 4 + 3]!
      const slope = p[k * 4]! * dx + p[k * 4 + 1]! * dy + p[k * 4 + 2]! * dz
      if (slope === 0) {
        if (outside > 0) return Number.POSITIVE_INFINITY
        continue
      }
      const t = -outside / slope
      if (slope < 0) enter = Math.max(enter, t)
      else leave = Math.min(leave, t)
    }
    return enter > ahead && enter < leave ? enter : Number.POSITIVE_INFINITY
  }

  /** Outward normal of a body at a place on it; hulls are black and need none. */
  private faceAt(number: number, x: number, y: number, z: number): void {
    if (number < this.rectangleCount) {
      const r = this.rectangles
      const b = number * perRectangle
      this.nx = r[b + 3]!
      this.ny = r[b + 4]!
      this.nz = r[b + 5]!
      return
    }
    if (number >= this.rectangleCount + this.capsuleCount) return
    const c = this.capsules
    const b = (number - this.rectangleCount) * perCapsule
    const [fx, fy, fz] = [x - c[b]!, y - c[b + 1]!, z - c[b + 2]!]
    const u = c[b + 3]! * fx + c[b + 4]! * fy + c[b + 5]! * fz
    const v = c[b + 6]! * fx + c[b + 7]! * fy + c[b + 8]! * fz
    const above = c[b + 9]! * fx + c[b + 10]! * fy + c[b + 11]! * fz
    const w = above < 0 ? above : above > c[b + 12]! ? above - c[b + 12]! : 0
    const nx = c[b + 3]! * u + c[b + 6]! * v + c[b + 9]! * w
    const ny = c[b + 4]! * u + c[b + 7]! * v + c[b + 10]! * w
    const nz = c[b + 5]! * u + c[b + 8]! * v + c[b + 11]! * w
    const size = Math.sqrt(nx * nx + ny * ny + nz * nz)
    this.nx = nx / size
    this.ny = ny / size
    this.nz = nz / size
  }
}

/** Its foot, the three directions over their semi-axes, how long the segment is in the last, a sphere about it. */
const capsuleNumbers = (capsule: Capsule): number[] => {
  const span = subtract(capsule.to, capsule.from)
  const axis = unit(span, [0, 0, 1])
  const across = capsule.acrossDirection
  const along = cross(axis, across)
  const middle = add(capsule.from, scale(span, 0.5))
  const radius = length(span) / 2 + Math.max(capsule.across, capsule.along, capsule.cap)
  return [
    ...capsule.from,
    ...scale(across, 1 / capsule.across),
    ...scale(along, 1 / capsule.along),
    ...scale(axis, 1 / capsule.cap),
    length(span) / capsule.cap,
    ...middle,
    radius * radius * 1.001,
  ]
}
