/**
 * How much light the cells of the surfaces exchange, with what stands between. Found once for a set of surfaces and
 * solids: all lights share it.
 *
 * Cells exchange light as large as they may be: two are parted further only while they are wide against their
 * distance, or something hides a part of either. After Hanrahan, Salzman and Aupperle, "A rapid hierarchical radiosity algorithm"
 * (1991); from memory.
 */
import type { Blocker } from '../visibility/blockers.js'
import { Between } from './between.js'
import { type Carrier, type Links, linkCarrier } from './carry.js'
import { Pair } from './exchange.js'
import type { Mesh } from './mesh.js'
import { factorsOf } from './sums.js'

/** A·F of any two patches is their link's kernel over both, times both their factors: the same both ways. */
export interface Transfer {
  readonly links: Links
  /** By side of a patch. No patch sees more than all. */
  readonly factors: Float64Array
}

/** Nothing is exchanged. */
export const noTransfer = ({ patches }: Mesh): Transfer => ({
  links: {
    one: new Int32Array(0),
    other: new Int32Array(0),
    shared: new Float64Array(0),
    slopes: new Float64Array(0),
  },
  factors: new Float64Array(2 * patches.length).fill(1),
})

/** From exitance by side of a patch to the exposure that it makes by side of a patch. */
export const carrierOf = (mesh: Mesh, { links, factors }: Transfer): Carrier => {
  const { carry } = linkCarrier(mesh, links)
  const scaled = new Float64Array(factors.length)
  return {
    carry: (given, into) => {
      for (let k = 0; k < scaled.length; k++) scaled[k] = factors[k]! * given[k]!
      carry(scaled, into)
      for (let k = 0; k < scaled.length; k++) into[k]! *= factors[k]!
    },
  }
}

/** Cells are parted while their radii together are more than this share of their distance. */
const wide = 0.9
/** The same where some of the lines between them are hidden. */
const wideHidden = 0.75
/** Areas within this factor are of cells that are about alike. */
const alike = 0.9
/** Share of what the smaller one sees, under which neither matters. */
const little = 0.002
/** The same where what stands between is close to one of them. */
const littleClose = 0.05

export const transferOf = (mesh: Mesh, blockers: readonly Blocker[]): Transfer => {
  const { tree } = mesh
  const linking = new Linking(mesh, blockers)
  const roots: number[] = []
  for (let c = 0; c < tree.parent.length; c = tree.next[c]!) roots.push(c)
  for (let i = 0; i < roots.length; i++)
    for (let j = i + 1; j < roots.length; j++) linking.roots(roots[i]!, roots[j]!)
  return linking.done()
}

class Linking {
  private count = 0
  private room = 4096
  private one = new Int32Array(this.room)
  private other = new Int32Array(this.room)
  private shared = new Float64Array(this.room)
  private slopes = new Float64Array(4 * this.room)
  /** By side of a cell, m²: what of its view of the box ends on black things. */
  private readonly lost: Float64Array
  /** The same of its view of the box were it empty. */
  private readonly open: Float64Array
  private readonly between: Between
  private readonly pair: Pair

  constructor(
    private readonly mesh: Mesh,
    blockers: readonly Blocker[],
  ) {
    this.between = new Between(mesh, blockers)
    this.pair = new Pair(mesh.tree.layout)
    this.lost = new Float64Array(2 * mesh.tree.parent.length)
    this.open = new Float64Array(2 * mesh.tree.parent.length)
  }

  roots(i: number, j: number): void {
    const { oneSided } = this.mesh.tree
    for (let a = 0; a < (oneSided[i] === 1 ? 1 : 2); a++)
      for (let b = 0; b < (oneSided[j] === 1 ? 1 : 2); b++) this.link(i, a, j, b, 1)
  }

  private link(i: number, a: number, j: number, b: number, depth: number): void {
    const { pair, between } = this
    const { from, to, encloses } = this.mesh.tree
    if (!pair.take(i, 1 - 2 * a, j, 1 - 2 * b)) return
    const { nearness, most } = pair
    const partI = to[i]! - from[i]! > 1
    const partJ = to[j]! - from[j]! > 1
    const partable = (partI || partJ) && most > little
    const some = between.take(i, j, depth)
    if (partable && nearness > wide) {
      this.part(i, a, j, b, depth)
      return
    }
    if (some) {
      const cutI = partI && between.closeToI
      const cutJ = partJ && between.closeToJ
      if ((cutI || cutJ) && most > littleClose) {
        this.parts(i, cutI, a, j, cutJ, b, depth)
        return
      }
      between.look(i, j, most > little ? 8 : 1, depth)
      if (partable && nearness > wideHidden && between.clear > 0 && between.clear < 1) {
        this.part(i, a, j, b, depth)
        return
      }
    }
    const seen = pair.exchange()
    if (seen === 0) return
    if (encloses[j] === 1) {
      this.open[2 * i + a]! += seen
      this.lost[2 * i + a]! += between.lostFromI * seen
    }
    if (encloses[i] === 1) {
      this.open[2 * j + b]! += seen
      this.lost[2 * j + b]! += between.lostFromJ * seen
    }
    if (between.clear > 0) this.put(2 * i + a, 2 * j + b, between.clear * seen)
  }

  private put(one: number, other: number, shared: number): void {
    if (this.count === this.room) this.grow()
    const k = this.count++
    this.one[k] = one
    this.other[k] = other
    this.shared[k] = shared
    this.pair.slopes(this.between.grows, this.slopes, 4 * k)
  }

  private grow(): void {
    this.room *= 2
    const larger = <T extends Int32Array | Float64Array>(into: T, from: T): T => {
      into.set(from)
      return into
    }
    this.one = larger(new Int32Array(this.room), this.one)
    this.other = larger(new Int32Array(this.room), this.other)
    this.shared = larger(new Float64Array(this.room), this.shared)
    this.slopes = larger(new Float64Array(4 * this.room), this.slopes)
  }

  /** The larger one in its quarters; both, where they are alike: neither may be chosen by its place in the list. */
  private part(i: number, a: number, j: number, b: number, depth: number): void {
    const { layout, from, to } = this.mesh.tree
    const { area } = layout
    const cutI = to[i]! - from[i]! > 1 && (to[j]! - from[j]! === 1 || area[i]! > alike * area[j]!)
    const cutJ = to[j]! - from[j]! > 1 && (to[i]! - from[i]! === 1 || area[j]! > alike * area[i]!)
    this.parts(i, cutI, a, j, cutJ, b, depth)
  }

  private parts(
    i: number,
    cutI: boolean,
    a: number,
    j: number,
    cutJ: boolean,
    b: number,
    depth: number,
  ): void {
    const { next } = this.mesh.tree
    for (let c = cutI ? i + 1 : i; c < next[i]!; c = cutI ? next[c]! : next[i]!)
      for (let d = cutJ ? j + 1 : j; d < next[j]!; d = cutJ ? next[d]! : next[j]!)
        this.link(c, a, d, b, depth + 1)
  }

  done(): Transfer {
    const links = {
      one: this.one.subarray(0, this.count),
      other: this.other.subarray(0, this.count),
      shared: this.shared.subarray(0, this.count),
      slopes: this.slopes.subarray(0, 4 * this.count),
    }
    return { links, factors: factorsOf(this.mesh, links, this.open, this.lost) }
  }
}
