/** The patches of one surface on its own axes, and how what they get runs from one to the next. */
import type { Face } from '../../scene/scene.js'
import { dot, type Vec3 } from '../../scene/vector.js'
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

const known = new WeakMap<Mesh, readonly Sheet[]>()

export const sheetsOf = (mesh: Mesh): readonly Sheet[] => {
  let sheets = known.get(mesh)
  if (sheets === undefined) {
    const { surfaces, patches } = mesh
    let next = 0
    sheets = surfaces.map((surface) => {
      const first = next
      while (next < patches.length && patches[next]!.surface === surface) next++
      return new Sheet(mesh, surface.face, first, next)
    })
    known.set(mesh, sheets)
  }
  return sheets
}

/** Patches whose edges are no further apart than this touch, metres. */
const apart = 1e-6

export class Sheet {
  /** By patch, metres: its middle across and up from that of the surface, half its lengths. */
  private readonly u: Float64Array
  private readonly v: Float64Array
  private readonly a: Float64Array
  private readonly b: Float64Array
  private readonly slopes: (readonly Slope[] | undefined)[] = []

  constructor(
    { layout }: Mesh,
    readonly face: Face,
    private readonly first: number,
    to: number,
  ) {
    const count = to - first
    const along = (i: number, axis: Vec3): number => {
      const p = 3 * (first + i)
      return dot([layout.at[p]!, layout.at[p + 1]!, layout.at[p + 2]!], axis) - dot(face.centre, axis)
    }
    this.u = Float64Array.from({ length: count }, (_, i) => along(i, face.across))
    this.v = Float64Array.from({ length: count }, (_, i) => along(i, face.up))
    this.a = Float64Array.from({ length: count }, (_, i) => layout.half[2 * (first + i)]!)
    this.b = Float64Array.from({ length: count }, (_, i) => layout.half[2 * (first + i) + 1]!)
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

  /**
   * Each patch counts by how near its middle lies, falling evenly to nothing at its own length from there: over patches
   * of one size that is linear between middles. Half of each one's own slope from there is added, which between middles
   * follows a bend to the third order; and half of the mean slope from where those patches lie in the mean, which takes
   * a slope on to the edges.
   */
  round(u: number, v: number, side: 0 | 1): Round {
    const about: number[] = []
    const tents: number[] = []
    let [sum, u0, v0] = [0, 0, 0]
    for (let i = 0; i < this.u.length; i++) {
      const x = Math.abs(u - this.u[i]!) / (2 * this.a[i]!)
      const y = Math.abs(v - this.v[i]!) / (2 * this.b[i]!)
      if (x >= 1 || y >= 1) continue
      const tent = (1 - x) * (1 - y)
      about.push(i)
      tents.push(tent)
      sum += tent
      u0 += tent * this.u[i]!
      v0 += tent * this.v[i]!
    }
    const shares = new Map<number, number>()
    const add = (i: number, share: number): void => {
      const k = 2 * (this.first + i) + side
      shares.set(k, (shares.get(k) ?? 0) + share)
    }
    about.forEach((i, k) => {
      const share = tents[k]! / sum
      const du = (u - this.u[i]! + (u - u0 / sum)) / 2
      const dv = (v - this.v[i]! + (v - v0 / sum)) / 2
      add(i, share)
      for (const { to, perU, perV } of this.slopeAt(i)) {
        const adds = share * (du * perU + dv * perV)
        add(to, adds)
        add(i, -adds)
      }
    })
    return { sides: [...shares.keys()], shares: [...shares.values()] }
  }

  /** The slope at a patch from how its neighbours differ from it, by least squares weighted with their areas. */
  private slopeAt(i: number): readonly Slope[] {
    const was = this.slopes[i]
    if (was !== undefined) return was
    const next: { readonly to: number; readonly u: number; readonly v: number; readonly area: number }[] = []
    let [uu, uv, vv] = [0, 0, 0]
    for (let to = 0; to < this.u.length; to++) {
      const [x, y] = [this.u[to]! - this.u[i]!, this.v[to]! - this.v[i]!]
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
