/**
 * How much light the cells of the surfaces exchange, with what stands between. Found once for a set of surfaces and
 * solids: all lights share it.
 *
 * Cells exchange light as large as they may be: two are parted further only while one fills much of what the other sees,
 * or something hides a part of either. After Hanrahan, Salzman and Aupperle, "A rapid hierarchical radiosity algorithm"
 * (1991); from memory.
 */
import type { Blocker } from '../visibility/blockers.js'
import { type Between, between, type Obstacles, obstaclesOf } from './between.js'
import { type Carrier, type Links, linkCarrier } from './carry.js'
import { exchange } from './exchange.js'
import { type Layout, reachAlong } from './layout.js'
import type { Mesh } from './mesh.js'
import { factorsOf } from './sums.js'

/** A·F of any two patches is their link's kernel over both, times both their factors: the same both ways. */
export interface Transfer {
  readonly links: Links
  /** By side of a patch. No patch sees more than all. */
  readonly factors: Float64Array
}

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
/** The same where some of the lines between them are hidden, and where something stands near enough that they may be. */
const wideHidden = 0.5
const wideMaybe = 0.8
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
  private readonly one: number[] = []
  private readonly other: number[] = []
  private readonly shared: number[] = []
  private readonly slopes: number[] = []
  /** By side of a cell, m²: what of its view of the box ends on black things. */
  private readonly lost: Float64Array
  /** The same of its view of the box were it empty. */
  private readonly open: Float64Array
  private readonly obstacles: Obstacles
  private readonly found: Between = {
    some: false,
    closeToI: false,
    closeToJ: false,
    clear: 1,
    lostFromI: 0,
    lostFromJ: 0,
    grows: new Float64Array(4),
  }

  constructor(
    private readonly mesh: Mesh,
    blockers: readonly Blocker[],
  ) {
    this.obstacles = obstaclesOf(mesh, blockers)
    this.lost = new Float64Array(2 * mesh.tree.parent.length)
    this.open = new Float64Array(2 * mesh.tree.parent.length)
  }

  roots(i: number, j: number): void {
    const { oneSided } = this.mesh.tree
    for (let a = 0; a < (oneSided[i] === 1 ? 1 : 2); a++)
      for (let b = 0; b < (oneSided[j] === 1 ? 1 : 2); b++) this.link(i, a, j, b)
  }

  private link(i: number, a: number, j: number, b: number): void {
    const { tree } = this.mesh
    const { layout, from, to } = tree
    const most = atMost(layout, i, 1 - 2 * a, j, 1 - 2 * b)
    if (most === 0) return
    const partable = (to[i]! - from[i]! > 1 || to[j]! - from[j]! > 1) && most > little
    const near = partable ? nearness(layout, i, j) : 0
    if (near > wide) {
      this.part(i, a, j, b)
      return
    }
    const seen = exchange(layout, i, 1 - 2 * a, j, 1 - 2 * b)
    if (seen === 0) return
    const { some, closeToI, closeToJ, clear, lostFromI, lostFromJ } = between(
      layout,
      this.obstacles,
      i,
      j,
      this.found,
    )
    if (near > (clear > 0 && clear < 1 ? wideHidden : some ? wideMaybe : wide)) {
      this.part(i, a, j, b)
      return
    }
    if (closeToI || closeToJ) {
      const [cutI, cutJ] = [closeToI && to[i]! - from[i]! > 1, closeToJ && to[j]! - from[j]! > 1]
      if ((cutI || cutJ) && most > littleClose) {
        this.parts(i, cutI, a, j, cutJ, b)
        return
      }
    }
    if (tree.encloses[j] === 1) {
      this.open[2 * i + a]! += seen
      this.lost[2 * i + a]! += lostFromI * seen
    }
    if (tree.encloses[i] === 1) {
      this.open[2 * j + b]! += seen
      this.lost[2 * j + b]! += lostFromJ * seen
    }
    if (clear === 0) return
    this.one.push(2 * i + a)
    this.other.push(2 * j + b)
    this.shared.push(clear * seen)
    this.slopes.push(...slopesOf(layout, i, 1 - 2 * a, j, 1 - 2 * b, this.found.grows))
  }

  /** The larger one in its quarters; both, where they are alike: neither may be chosen by its place in the list. */
  private part(i: number, a: number, j: number, b: number): void {
    const { layout, from, to } = this.mesh.tree
    const { area } = layout
    const cutI = to[i]! - from[i]! > 1 && (to[j]! - from[j]! === 1 || area[i]! > alike * area[j]!)
    const cutJ = to[j]! - from[j]! > 1 && (to[i]! - from[i]! === 1 || area[j]! > alike * area[i]!)
    this.parts(i, cutI, a, j, cutJ, b)
  }

  private parts(i: number, cutI: boolean, a: number, j: number, cutJ: boolean, b: number): void {
    const { next } = this.mesh.tree
    for (let c = cutI ? i + 1 : i; c < next[i]!; c = cutI ? next[c]! : next[i]!)
      for (let d = cutJ ? j + 1 : j; d < next[j]!; d = cutJ ? next[d]! : next[j]!) this.link(c, a, d, b)
  }

  done(): Transfer {
    const links = {
      one: Int32Array.from(this.one),
      other: Int32Array.from(this.other),
      shared: Float64Array.from(this.shared),
      slopes: Float64Array.from(this.slopes),
    }
    return { links, factors: factorsOf(this.mesh, links, this.open, this.lost) }
  }
}

/** No less than the share of the smaller cell's view that the larger fills; 0 where they do not face each other. */
const atMost = (layout: Layout, i: number, facingI: number, j: number, facingJ: number): number => {
  const { at, normal, radius, area } = layout
  const p = 3 * i
  const q = 3 * j
  const dx = at[q]! - at[p]!
  const dy = at[q + 1]! - at[p + 1]!
  const dz = at[q + 2]! - at[p + 2]!
  const out = facingI * (normal[p]! * dx + normal[p + 1]! * dy + normal[p + 2]! * dz)
  const back = -facingJ * (normal[q]! * dx + normal[q + 1]! * dy + normal[q + 2]! * dz)
  if (out <= -radius[j]! || back <= -radius[i]!) return 0
  const reachJ = reachAlong(layout, j, normal[p]!, normal[p + 1]!, normal[p + 2]!)
  const reachI = reachAlong(layout, i, normal[q]!, normal[q + 1]!, normal[q + 2]!)
  if (out + reachJ <= touching || back + reachI <= touching) return 0
  const squared = dx * dx + dy * dy + dz * dz
  const far = Math.sqrt(squared)
  const cosines = Math.min(1, (out + reachJ) / far) * Math.min(1, (back + reachI) / far)
  return Math.min(1, (cosines * Math.max(area[i]!, area[j]!)) / (Math.PI * squared))
}

/** Metres: a cell that reaches no further than this before a plane lies behind it. */
const touching = 1e-9

/** Radii against the distance. */
const nearness = ({ at, radius }: Layout, i: number, j: number): number =>
  (radius[i]! + radius[j]!) /
  Math.hypot(at[3 * j]! - at[3 * i]!, at[3 * j + 1]! - at[3 * i + 1]!, at[3 * j + 2]! - at[3 * i + 2]!)

/** At no end of a cell does the exchange fall by more than this share, along either axis. */
const steepest = 0.5

/** First derivatives of ln(cos cos / r²) along either cell's axes; none where one reaches behind the other. */
const slopesOf = (
  { at, normal, across, up, half }: Layout,
  i: number,
  facingI: number,
  j: number,
  facingJ: number,
  grows: Float64Array,
): readonly number[] => {
  const p = 3 * i
  const q = 3 * j
  const d = [at[q]! - at[p]!, at[q + 1]! - at[p + 1]!, at[q + 2]! - at[p + 2]!] as const
  const along = (axes: Float64Array, k: number): number =>
    axes[k]! * d[0] + axes[k + 1]! * d[1] + axes[k + 2]! * d[2]
  const square = d[0] * d[0] + d[1] * d[1] + d[2] * d[2]
  const out = facingI * along(normal, p)
  const back = -facingJ * along(normal, q)
  const across2 = (axes: Float64Array, k: number, other: number): number =>
    axes[k]! * normal[other]! + axes[k + 1]! * normal[other + 1]! + axes[k + 2]! * normal[other + 2]!
  const [least, leastBack] = [1e-3 * Math.sqrt(square), 1e-3 * Math.sqrt(square)]
  const o = Math.max(out, least)
  const b = Math.max(back, leastBack)
  const of = (slope: number, reach: number, grown: number): number =>
    Math.min(steepest, Math.max(-steepest, slope * reach + grown)) / reach
  return [
    of((facingJ * across2(across, p, q)) / b + (4 * along(across, p)) / square, half[2 * i]!, grows[0]!),
    of((facingJ * across2(up, p, q)) / b + (4 * along(up, p)) / square, half[2 * i + 1]!, grows[1]!),
    of((facingI * across2(across, q, p)) / o - (4 * along(across, q)) / square, half[2 * j]!, grows[2]!),
    of((facingI * across2(up, q, p)) / o - (4 * along(up, q)) / square, half[2 * j + 1]!, grows[3]!),
  ]
}
