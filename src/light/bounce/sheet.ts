/** The patches of one surface on its own axes, and how what they get or give runs from one to the next. */
import type { Face } from '../../scene/scene.js'
import type { Mesh } from './mesh.js'

/** Sides of patches, and the share of each: together 1, some may be negative. */
export interface Round {
  readonly sides: readonly number[]
  readonly shares: readonly number[]
}

/** What of the difference to a patch counts toward the slope along either axis: 1/m. */
interface Slope {
  readonly to: number
  readonly perU: number
  readonly perV: number
}

interface Known {
  readonly sheets: readonly Sheet[]
  readonly byPatch: readonly Sheet[]
}
const known = new WeakMap<Mesh, Known>()

const knownOf = (mesh: Mesh): Known => {
  let made = known.get(mesh)
  if (made === undefined) {
    const { surfaces, patches } = mesh
    const byPatch: Sheet[] = []
    const sheets = surfaces.map((surface) => {
      const first = byPatch.length
      let next = first
      while (next < patches.length && patches[next]!.surface === surface) next++
      const sheet = new Sheet(mesh, surface.face, first, next)
      while (byPatch.length < next) byPatch.push(sheet)
      return sheet
    })
    made = { sheets, byPatch }
    known.set(mesh, made)
  }
  return made
}

export const sheetsOf = (mesh: Mesh): readonly Sheet[] => knownOf(mesh).sheets

export const sheetOf = (mesh: Mesh, patch: number): Sheet => knownOf(mesh).byPatch[patch]!

/** Patches whose edges are no further apart than this touch, metres. */
const apart = 1e-6

export class Sheet {
  /** By patch, metres: its middle across and up from that of the surface, half its lengths. */
  private readonly u: Float64Array
  private readonly v: Float64Array
  private readonly a: Float64Array
  private readonly b: Float64Array
  private readonly about: number[] = []
  private readonly tents: number[] = []
  private readonly slopes: (readonly Slope[] | undefined)[] = []

  constructor(
    { layout }: Mesh,
    readonly face: Face,
    private readonly first: number,
    to: number,
  ) {
    const column = (of: Float64Array, axis: 0 | 1): Float64Array =>
      Float64Array.from({ length: to - first }, (_, i) => of[2 * (first + i) + axis]!)
    this.u = column(layout.on, 0)
    this.v = column(layout.on, 1)
    this.a = column(layout.half, 0)
    this.b = column(layout.half, 1)
  }

  /** Metres: the longest of the patches that a place lies on. */
  lengthAt(u: number, v: number): number {
    let longest = 0
    for (let i = 0; i < this.u.length; i++) {
      const [a, b] = [this.a[i]!, this.b[i]!]
      if (Math.abs(u - this.u[i]!) <= a + apart && Math.abs(v - this.v[i]!) <= b + apart)
        longest = Math.max(longest, 2 * a, 2 * b)
    }
    return longest
  }

  /** What is taken to come from a place, as from the patches about it. */
  round(u: number, v: number, side: 0 | 1): Round {
    const shares = new Float64Array(2 * this.u.length)
    this.share(u, v, 0, 1, shares, 0)
    const sides: number[] = []
    shares.forEach((share, k) => {
      if (share !== 0) sides.push(k)
    })
    return {
      sides: sides.map((k) => 2 * this.first + k + side),
      shares: sides.map((k) => shares[k]!),
    }
  }

  /** Adds a weight to the sides of the whole mesh as it is shared out to the patches about a place. */
  spread(u: number, v: number, side: number, weight: number, into: Float64Array): void {
    this.share(u, v, side, weight, into, 2 * this.first)
  }

  /**
   * Each patch counts by how near its middle lies, falling evenly to nothing at its own length from there: over patches
   * of one size that is linear between middles. Half of each one's own slope from there is added, which between middles
   * follows a bend to the third order; and half of the mean slope from where those patches lie in the mean, which takes
   * a slope on to the edges.
   */
  private share(u: number, v: number, side: number, weight: number, into: Float64Array, from: number): void {
    let count = 0
    let sum = 0
    let u0 = 0
    let v0 = 0
    for (let i = 0; i < this.u.length; i++) {
      const x = Math.abs(u - this.u[i]!) / (2 * this.a[i]!)
      const y = Math.abs(v - this.v[i]!) / (2 * this.b[i]!)
      if (x >= 1 || y >= 1) continue
      const tent = (1 - x) * (1 - y)
      this.about[count] = i
      this.tents[count++] = tent
      sum += tent
      u0 += tent * this.u[i]!
      v0 += tent * this.v[i]!
    }
    for (let k = 0; k < count; k++) {
      const i = this.about[k]!
      const share = (weight * this.tents[k]!) / sum
      const du = (share * (u - this.u[i]! + (u - u0 / sum))) / 2
      const dv = (share * (v - this.v[i]! + (v - v0 / sum))) / 2
      let own = share
      const slopes = this.slopeAt(i)
      for (let l = 0; l < slopes.length; l++) {
        const { to, perU, perV } = slopes[l]!
        const adds = du * perU + dv * perV
        into[from + 2 * to + side]! += adds
        own -= adds
      }
      into[from + 2 * i + side]! += own
    }
  }

  /** The slope at a patch from how its neighbours differ from it, by least squares weighted with their areas. */
  private slopeAt(i: number): readonly Slope[] {
    const was = this.slopes[i]
    if (was !== undefined) return was
    const next: { readonly to: number; readonly u: number; readonly v: number; readonly area: number }[] = []
    let [uu, uv, vv] = [0, 0, 0]
    for (let to = 0; to < this.u.length; to++) {
      const x = this.u[to]! - this.u[i]!
      const y = this.v[to]! - this.v[i]!
      if (to === i || Math.abs(x) > this.a[to]! + this.a[i]! + apart) continue
      if (Math.abs(y) > this.b[to]! + this.b[i]! + apart) continue
      const area = this.a[to]! * this.b[to]!
      next.push({ to, u: x, v: y, area })
      uu += area * x * x
      uv += area * x * y
      vv += area * y * y
    }
    const det = uu * vv - uv * uv
    const least = 1e-9 * (uu + vv)
    const made = next.map(
      ({ to, u, v, area }): Slope =>
        det > least * (uu + vv)
          ? { to, perU: (area * (vv * u - uv * v)) / det, perV: (area * (uu * v - uv * u)) / det }
          : // One row of patches, which all lie along one axis.
            { to, perU: uu > least ? (area * u) / uu : 0, perV: vv > least ? (area * v) / vv : 0 },
    )
    this.slopes[i] = made
    return made
  }
}
