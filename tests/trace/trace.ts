/**
 * The exposure of a receptor by chance, from the rendering equation: rays go out as the receptor takes light, are
 * scattered by matte surfaces as cosines, and at every surface that they meet one place on each lamp is looked at
 * (Kajiya 1986; sampling by area of the lamp). Seeded: the same numbers every time. Tells its own standard error.
 */
import type { Vec3 } from '../../src/scene/vector.js'
import type { Bodies } from './bodies.js'
import { Chance, evenSteps } from './chance.js'
import { type Lamp, onFront } from './lamps.js'

export interface Place {
  readonly at: Vec3
  /** Unit: where it faces. */
  readonly normal: Vec3
  /** Takes light as the cosine, or as (1 + cosine)/2 from all around. */
  readonly kind: 'flat' | 'dome'
  /** Unit: nothing comes from behind the plane square to it. */
  readonly against?: Vec3
  /** The body that it lies on. */
  readonly on?: number
}

export interface Effort {
  readonly seed: number
  /** Paths a batch, and places on each lamp. */
  readonly paths: number
  readonly fewest: number
  readonly most: number
  /** Batches go on until the error of the total is no more than this: stops. */
  readonly error: number
}

/** By lamp, per unit of its strength: 1/m². */
export interface Traced {
  readonly direct: Float64Array
  /** Were nothing in the way. */
  readonly open: Float64Array
  readonly indirect: Float64Array
  /** All lamps, each times its weight. */
  readonly total: number
  /** Standard error of the total, stops. */
  readonly error: number
}

const steps = evenSteps(6)
const steps2 = evenSteps(2)
const longest = 60
/** From this bounce on a path ends by chance, as the light would be absorbed. */
const roulette = 3
/** A ray that leaves a round body starts this far off it: metres. */
const lift = 1e-6

const flat = 0
const dome = 1

export class Tracer {
  private readonly chance: Chance
  private readonly shift = new Float64Array(6)
  private readonly even = new Float64Array(6)
  private readonly front = new Float64Array(2)
  private readonly housings: Int32Array
  /** Of the last look at a lamp: whether nothing stood in the way. */
  private clear = false
  private dx = 0
  private dy = 0
  private dz = 0

  constructor(
    readonly bodies: Bodies,
    readonly lamps: readonly Lamp[],
    seed: number,
  ) {
    this.chance = new Chance(seed)
    this.housings = Int32Array.from(lamps, (lamp) => bodies.housing(lamp.name))
  }

  /** What one place on a lamp gives a receptor, as if all of the lamp were there; sets `clear`. */
  private look(
    lamp: number,
    u: number,
    v: number,
    x: number,
    y: number,
    z: number,
    nx: number,
    ny: number,
    nz: number,
    kind: number,
    against: Vec3 | undefined,
    except: number,
  ): number {
    const one = this.lamps[lamp]!
    let gives = 1
    let far = Number.POSITIVE_INFINITY
    let dx: number
    let dy: number
    let dz: number
    if ('from' in one) {
      dx = one.from[0]
      dy = one.from[1]
      dz = one.from[2]
    } else {
      const { centre, across, up, normal, width, height, outline } = one.face
      onFront(outline, u, v, this.front)
      const a = (this.front[0]! * width) / 2
      const b = (this.front[1]! * height) / 2
      dx = centre[0] + a * across[0] + b * up[0] - x
      dy = centre[1] + a * across[1] + b * up[1] - y
      dz = centre[2] + a * across[2] + b * up[2] - z
      const square = dx * dx + dy * dy + dz * dz
      far = Math.sqrt(square)
      dx /= far
      dy /= far
      dz /= far
      gives =
        one.pattern(
          -(dx * across[0] + dy * across[1] + dz * across[2]),
          -(dx * up[0] + dy * up[1] + dz * up[2]),
          -(dx * normal[0] + dy * normal[1] + dz * normal[2]),
        ) / square
      // The front itself may lie in a body's plane.
      far -= 1e-6
    }
    this.clear = false
    const cosine = dx * nx + dy * ny + dz * nz
    const taken = kind === flat ? cosine : (1 + cosine) / 2
    if (!(taken > 0 && gives > 0)) return 0
    if (against !== undefined && dx * against[0] + dy * against[1] + dz * against[2] <= 0) return 0
    this.clear = !this.bodies.blocked(x, y, z, dx, dy, dz, far, except, this.housings[lamp]!)
    return gives * taken
  }

  /** How many looks at a lamp from a place: more from near it. */
  private looks(lamp: number, x: number, y: number, z: number): number {
    const one = this.lamps[lamp]!
    if ('from' in one) return 1
    const { centre, width, height } = one.face
    const square = (centre[0] - x) ** 2 + (centre[1] - y) ** 2 + (centre[2] - z) ** 2
    return Math.min(6, Math.max(1, Math.ceil((1.5 * (width * width + height * height)) / square)))
  }

  /** Exposure of one side of a surface from a lamp. `first`: take the even sequence for the first look. */
  private onSide(
    lamp: number,
    x: number,
    y: number,
    z: number,
    nx: number,
    ny: number,
    nz: number,
    first: boolean,
  ): number {
    const count = this.looks(lamp, x, y, z)
    let sum = 0
    for (let i = 0; i < count; i++) {
      const even = first && i === 0
      const u = even ? this.even[4]! : this.chance.next()
      const v = even ? this.even[5]! : this.chance.next()
      const got = this.look(lamp, u, v, x, y, z, nx, ny, nz, flat, undefined, -1)
      if (this.clear) sum += got
    }
    return sum / count
  }

  /** A direction about a unit vector, at this cosine to it and this turn. */
  private turn(nx: number, ny: number, nz: number, cosine: number, turn: number): void {
    const sine = Math.sqrt(Math.max(0, 1 - cosine * cosine))
    const a = sine * Math.cos(turn)
    const b = sine * Math.sin(turn)
    // A frame about the vector without a branch but for its sign (Duff and others 2017).
    const sign = nz >= 0 ? 1 : -1
    const p = -1 / (sign + nz)
    const q = nx * ny * p
    this.dx = a * (1 + sign * nx * nx * p) + b * q + cosine * nx
    this.dy = a * sign * q + b * (sign + ny * ny * p) + cosine * ny
    this.dz = a * -sign * nx - b * ny + cosine * nz
  }

  /** Follows one path back from the receptor, and adds what comes along it by lamp. */
  private path(place: Place, into: Float64Array): void {
    const { at, normal, against } = place
    const [u, v] = [this.even[0]!, this.even[1]!]
    const turned = 2 * Math.PI * v
    // Directions as often as they count: their mean exitance, times the kernel's whole over π, is the exposure.
    const isFlat = place.kind === 'flat'
    this.turn(normal[0], normal[1], normal[2], isFlat ? Math.sqrt(u) : 2 * Math.sqrt(u) - 1, turned)
    let weight = isFlat ? 1 : 2
    if (against !== undefined && this.dx * against[0] + this.dy * against[1] + this.dz * against[2] <= 0)
      return
    let [x, y, z] = at
    let except = place.on ?? -1
    const { bodies } = this
    for (let bounce = 0; bounce < longest; bounce++) {
      const { dx, dy, dz } = this
      const met = bodies.nearest(x, y, z, dx, dy, dz, except)
      if (met < 0) return
      except = -1
      const inFront = dx * bodies.nx + dy * bodies.ny + dz * bodies.nz < 0
      const reflects = inFront ? bodies.front[met]! : bodies.back[met]!
      const passes = bodies.transmits[met]!
      const all = reflects + passes
      if (all <= 0) return
      const side = inFront ? 1 : -1
      const nx = side * bodies.nx
      const ny = side * bodies.ny
      const nz = side * bodies.nz
      const t = bodies.distance
      x += t * dx
      y += t * dy
      z += t * dz
      if (!bodies.isRectangle(met)) {
        x += lift * nx
        y += lift * ny
        z += lift * nz
      }
      for (let lamp = 0; lamp < this.lamps.length; lamp++) {
        let exitance = 0
        if (reflects > 0) exitance += reflects * this.onSide(lamp, x, y, z, nx, ny, nz, bounce === 0)
        if (passes > 0) exitance += passes * this.onSide(lamp, x, y, z, -nx, -ny, -nz, bounce === 0)
        into[lamp]! += weight * exitance
      }
      if (bounce < roulette) weight *= all
      else if (this.chance.next() >= all) return
      const through = this.chance.next() * all >= reflects ? -1 : 1
      const cosine = Math.sqrt(bounce === 0 ? this.even[2]! : this.chance.next())
      const turn = 2 * Math.PI * (bounce === 0 ? this.even[3]! : this.chance.next())
      this.turn(through * nx, through * ny, through * nz, cosine, turn)
    }
  }

  private shuffle(): void {
    for (let k = 0; k < 6; k++) this.shift[k] = this.chance.next()
  }
  private step(i: number): void {
    for (let k = 0; k < 6; k++) {
      const x = this.shift[k]! + i * steps[k]!
      this.even[k] = x - Math.floor(x)
    }
  }

  /** Adds a batch of looks straight at the lamps. */
  private straight(place: Place, count: number, direct: Float64Array, open: Float64Array): void {
    const { at, normal, against } = place
    const kind = place.kind === 'flat' ? flat : dome
    for (let lamp = 0; lamp < this.lamps.length; lamp++) {
      this.shuffle()
      let [sum, all] = [0, 0]
      for (let i = 0; i < count; i++) {
        const u = this.shift[0]! + i * steps2[0]!
        const v = this.shift[1]! + i * steps2[1]!
        const got = this.look(
          lamp,
          u - Math.floor(u),
          v - Math.floor(v),
          at[0],
          at[1],
          at[2],
          normal[0],
          normal[1],
          normal[2],
          kind,
          against,
          place.on ?? -1,
        )
        all += got
        if (this.clear) sum += got
      }
      direct[lamp] = sum / count
      open[lamp] = all / count
    }
  }

  /** Only what comes straight from the lamps: by lamp, and were nothing in the way. */
  directAt(place: Place, count: number): Pick<Traced, 'direct' | 'open'> {
    const direct = new Float64Array(this.lamps.length)
    const open = new Float64Array(this.lamps.length)
    this.straight(place, count, direct, open)
    return { direct, open }
  }

  at(place: Place, weights: readonly number[], effort: Omit<Effort, 'seed'>): Traced {
    const n = this.lamps.length
    const [direct, open, indirect] = [new Float64Array(n), new Float64Array(n), new Float64Array(n)]
    const [one, bare, bounced] = [new Float64Array(n), new Float64Array(n), new Float64Array(n)]
    let [sum, squares, batches] = [0, 0, 0]
    let error = Number.POSITIVE_INFINITY
    while (batches < effort.fewest || (batches < effort.most && error > effort.error)) {
      this.straight(place, effort.paths, one, bare)
      bounced.fill(0)
      this.shuffle()
      for (let i = 0; i < effort.paths; i++) {
        this.step(i)
        this.path(place, bounced)
      }
      let batch = 0
      for (let lamp = 0; lamp < n; lamp++) {
        const back = bounced[lamp]! / effort.paths
        direct[lamp]! += one[lamp]!
        open[lamp]! += bare[lamp]!
        indirect[lamp]! += back
        batch += weights[lamp]! * (one[lamp]! + back)
      }
      batches++
      sum += batch
      squares += batch * batch
      const mean = sum / batches
      const variance = Math.max(0, squares / batches - mean * mean) / (batches - 1)
      error = sum > 0 ? Math.sqrt(variance) / mean / Math.LN2 : 0
      if (batches < 2) error = Number.POSITIVE_INFINITY
    }
    for (const all of [direct, open, indirect]) for (let i = 0; i < n; i++) all[i]! /= batches
    return { direct, open, indirect, total: sum / batches, error }
  }

  /** A matte surface's exposure in the mean over its front: what a set of places on it gets, evenly spread by chance. */
  meanOver(
    face: { readonly centre: Vec3; readonly normal: Vec3; readonly across: Vec3; readonly up: Vec3 } & {
      readonly width: number
      readonly height: number
      readonly outline?: 'rectangle' | 'disc'
    },
    count: number,
  ): { readonly mean: Float64Array; readonly error: Float64Array } {
    const n = this.lamps.length
    const [sum, squares] = [new Float64Array(n), new Float64Array(n)]
    const here = new Float64Array(2)
    const unit = { paths: 1, fewest: 1, most: 1, error: 1 }
    for (let i = 0; i < count; i++) {
      onFront(face.outline ?? 'rectangle', this.chance.next(), this.chance.next(), here)
      const [a, b] = [(here[0]! * face.width) / 2, (here[1]! * face.height) / 2]
      const at = face.centre.map((x, k) => x + a * face.across[k]! + b * face.up[k]!) as unknown as Vec3
      const got = this.at({ at, normal: face.normal, kind: 'flat' }, new Array(n).fill(1), unit)
      for (let lamp = 0; lamp < n; lamp++) {
        const value = got.direct[lamp]! + got.indirect[lamp]!
        sum[lamp]! += value
        squares[lamp]! += value * value
      }
    }
    return {
      mean: sum.map((x) => x / count),
      error: squares.map((x, i) => Math.sqrt(Math.max(0, x / count - (sum[i]! / count) ** 2) / count)),
    }
  }
}
