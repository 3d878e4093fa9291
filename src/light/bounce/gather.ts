/**
 * What a receptor gets from each side of the mesh. Cells of the tree are taken as large as their distance allows; a
 * patch that is large against its distance piece by piece, with its exitance taken as running evenly from patch to patch.
 */
import type { Receptor } from '../receptor.js'
import type { Outlook } from '../visibility/outlook.js'
import { apartSquared } from '../visibility/segments.js'
import { cutsThrough, isNearer, type Layout, oneCell, placeOn } from './layout.js'
import type { Mesh } from './mesh.js'
import { type Obstacle, obstacleOf } from './obstacles.js'
import { cast, clear, endsBlack } from './rays.js'
import { sheetOf } from './sheet.js'
import { plateStands } from './standing.js'
import { weightOf, weightOfAll } from './weight.js'

/** Nearly all that a receptor in a closed box sees is the box: then it is taken as all. */
const nearly = 0.05
/** Shares of all that a receptor takes, from which on something is looked at in four and in nine places. */
const large = [0.006, 0.02] as const
/** And from which on a cell is looked at in parts where some of it is hidden. */
const small = 0.006
/** How far off, in lengths of its longer side, cells count as one, and a patch as even. */
const asOne = 1.2
const asEven = 1

/** At no end of a cell is the kernel taken to fall by more than this share, along either axis. */
const steepest = 0.45

/** One serves all: nothing of them is kept. */
const piece = oneCell()
const way: [number, number, number] = [0, 0, 0]

const middles: readonly (readonly number[])[] = [
  [0],
  [-0.5, 0.5],
  [-2 / 3, 0, 2 / 3],
  [-0.75, -0.25, 0.25, 0.75],
]

/** Exposure at the receptor per unit exitance of each side. In a closed box a flat one gets 1 in all, a dome in free air 2. */
export const gatherFrom = (mesh: Mesh, outlook: Outlook): Float64Array =>
  new Gathering(mesh, outlook).weights()

class Gathering {
  private readonly receptor: Receptor
  private readonly obstacles: readonly Obstacle[]
  private readonly all: number
  /** By side. */
  private readonly found: Float64Array
  /** What the box would give with nothing in the way, what it gives, and what of it is lost on black things. */
  private open = 0
  private count = 0
  private readonly some: Obstacle[] = []
  private free = 1
  private gone = 0
  private seen = 0
  private lost = 0
  private inner = 0
  private readonly at: [number, number, number] = [0, 0, 0]

  constructor(
    private readonly mesh: Mesh,
    outlook: Outlook,
  ) {
    this.receptor = outlook.receptor
    this.obstacles = outlook.blockers.map((one) => obstacleOf(mesh, one))
    this.all = weightOfAll(outlook.receptor)
    this.found = new Float64Array(2 * mesh.layout.count)
  }

  weights(): Float64Array {
    const { mesh, found } = this
    const { next } = mesh.tree
    for (let c = 0; c < next.length; c = next[c]!) this.cell(c)
    let scale = 1
    if (mesh.closed && Math.abs(this.open / this.all - 1) < nearly) {
      // In a closed box what is not lost comes from somewhere: the few lines that were looked along tell it only roughly.
      const left = this.all - (this.lost * this.all) / this.open - this.inner
      if (this.seen > 0) scale = Math.min(2, Math.max(0.5, left / this.seen))
    }
    if (scale !== 1) {
      const { encloses, from, to } = mesh.tree
      for (let c = 0; c < next.length; c = next[c]!)
        if (encloses[c] === 1) for (let k = 2 * from[c]!; k < 2 * to[c]!; k++) found[k]! *= scale
    }
    return found
  }

  private cell(c: number): void {
    const { mesh, receptor } = this
    const { tree, layout } = mesh
    const p = 3 * c
    const dx = receptor.at[0] - tree.layout.at[p]!
    const dy = receptor.at[1] - tree.layout.at[p + 1]!
    const dz = receptor.at[2] - tree.layout.at[p + 2]!
    const { normal } = tree.layout
    const off = dx * normal[p]! + dy * normal[p + 1]! + dz * normal[p + 2]!
    const oneSided = tree.oneSided[c] === 1
    // In the plane of a surface that has one side only, a receptor lies before it.
    const back = off < 0 && !(oneSided && off > -1e-6)
    if (back && oneSided) return
    const height = Math.max(Math.abs(off), oneSided ? 1e-6 : 0)
    const [from, to] = [tree.from[c]!, tree.to[c]!]
    const isPatch = to - from === 1
    if (
      isNearer(tree.layout, c, dx, dy, dz, height, isPatch ? asEven : asOne) ||
      (!isPatch && this.isCut(c, dx, dy, dz))
    ) {
      if (isPatch) this.pieces(c, from, back ? 1 : 0, height)
      else for (let part = c + 1; part < tree.next[c]!; part = tree.next[part]!) this.cell(part)
      return
    }
    const weight = weightOf(tree.layout, c, receptor, height, back)
    if (!(weight > 0)) return
    const share = weight / this.all
    this.find(tree.layout, c)
    this.look(tree.layout, c, share > large[1] ? 2 : share > large[0] ? 1 : 0)
    if (this.isMixed() && share > small) {
      if (!isPatch) {
        for (let part = c + 1; part < tree.next[c]!; part = tree.next[part]!) this.cell(part)
        return
      }
      this.look(tree.layout, c, 3)
    }
    const seen = this.counted(weight, tree.encloses[c] === 1)
    const by = this.found
    const side = back ? 1 : 0
    if (isPatch) {
      by[2 * from + side]! += seen
      return
    }
    // Over the cell the kernel runs evenly, by its first derivatives.
    const { across, up, half } = tree.layout
    const [ax, ay, az] = [across[p]!, across[p + 1]!, across[p + 2]!]
    const [bx, by_, bz] = [up[p]!, up[p + 1]!, up[p + 2]!]
    const su = this.slope(dx, dy, dz, ax, ay, az, half[2 * c]!)
    const sv = this.slope(dx, dy, dz, bx, by_, bz, half[2 * c + 1]!)
    const { on, area } = layout
    const [u, v] = [tree.layout.on[2 * c]!, tree.layout.on[2 * c + 1]!]
    const each = seen / tree.layout.area[c]!
    for (let i = from; i < to; i++)
      by[2 * i + side]! += each * area[i]! * (1 + su * (on[2 * i]! - u) + sv * (on[2 * i + 1]! - v))
  }

  /** By how much of itself a flat receptor's or a dome's kernel grows per metre along an axis of a cell this far away. */
  private slope(dx: number, dy: number, dz: number, x: number, y: number, z: number, reach: number): number {
    const [nx, ny, nz] = this.receptor.normal
    const square = dx * dx + dy * dy + dz * dz
    const far = Math.sqrt(square)
    const along = -(dx * x + dy * y + dz * z)
    const toward = -(dx * nx + dy * ny + dz * nz)
    const n = nx * x + ny * y + nz * z
    const own =
      this.receptor.kind === 'dome'
        ? (along / far + n) / Math.max(far + toward, 1e-3 * far)
        : n / Math.max(toward, 1e-3 * far)
    return Math.min(steepest / reach, Math.max(-steepest / reach, own - (4 * along) / square))
  }

  /** Whether a plane behind which the receptor takes nothing cuts through a cell. */
  private isCut(c: number, dx: number, dy: number, dz: number): boolean {
    const { kind, onSurface, normal, against } = this.receptor
    const { layout } = this.mesh.tree
    return (
      ((kind === 'flat' || onSurface === true) && cutsThrough(layout, c, normal, dx, dy, dz)) ||
      (against !== undefined && cutsThrough(layout, c, against, dx, dy, dz))
    )
  }

  /** Looks at a cell along so many lines: what of them is free, and what is lost on black things. */
  private look(layout: Layout, i: number, fine: number): void {
    const { at, some, count, receptor } = this
    if (count === 0) {
      this.free = 1
      this.gone = 0
      return
    }
    const places = middles[fine]!
    const eye = receptor.at
    const lines = places.length * places.length
    let free = 0
    let lost = 0
    for (let line = 0; line < lines; line++) {
      placeOn(layout, i, places[Math.floor(line / places.length)]!, places[line % places.length]!, at)
      const met = cast(some, count, eye[0], eye[1], eye[2], at[0], at[1], at[2])
      if (met === clear) free++
      if ((met & endsBlack) !== 0) lost++
    }
    this.free = free / lines
    this.gone = lost / lines
  }

  /** Puts in `some` what may stand before a cell. */
  private find(layout: Layout, i: number): void {
    const { obstacles, some, receptor } = this
    const [x, y, z] = receptor.at
    const dx = layout.at[3 * i]! - x
    const dy = layout.at[3 * i + 1]! - y
    const dz = layout.at[3 * i + 2]! - z
    const square = dx * dx + dy * dy + dz * dz
    let count = 0
    for (let k = 0; k < obstacles.length; k++) {
      const one = obstacles[k]!
      const cx = one.x - x
      const cy = one.y - y
      const cz = one.z - z
      // Toward the receptor the lines to a cell lie ever closer together.
      const t = Math.min(1, Math.max(0, (cx * dx + cy * dy + cz * dz) / square))
      const ox = cx - t * dx
      const oy = cy - t * dy
      const oz = cz - t * dz
      const coat = layout.radius[i]! * Math.min(1, t + one.radius / Math.sqrt(square))
      const reach = one.radius + coat
      if (ox * ox + oy * oy + oz * oz >= reach * reach) continue
      const { round } = one.blocker
      if (round !== undefined) {
        way[0] = dx
        way[1] = dy
        way[2] = dz
        const apart = round.coat + coat
        if (apartSquared(round.from, round.span, receptor.at, way) >= apart * apart) continue
      } else if (one.kind === 'plate' && !plateStands(one.numbers, x, y, z, dx, dy, dz, coat)) continue
      some[count++] = one
    }
    this.count = count
  }

  private isMixed(): boolean {
    return this.free > 0 && this.free < 1
  }

  /** What is seen of a weight, as the last look found it. */
  private counted(weight: number, box: boolean): number {
    const seen = weight * this.free
    if (box) {
      this.open += weight
      this.seen += seen
      this.lost += weight * this.gone
    } else this.inner += seen
    return seen
  }

  private pieces(c: number, i: number, side: number, height: number): void {
    const { mesh, receptor } = this
    const box = mesh.tree.encloses[c] === 1
    const { layout } = mesh
    const long = 2 * Math.max(layout.half[2 * i]!, layout.half[2 * i + 1]!)
    const count = Math.min(6, Math.max(2, Math.ceil(long / (0.7 * height))))
    const sheet = sheetOf(mesh, i)
    this.find(layout, i)
    for (let k = 0; k < count; k++)
      for (let l = 0; l < count; l++) {
        const s = (2 * k + 1) / count - 1
        const t = (2 * l + 1) / count - 1
        piece.take(layout, i, s, t, count)
        const weight = weightOf(piece, 0, receptor, height, side === 1)
        if (!(weight > 0)) continue
        this.look(piece, 0, weight > large[0] * this.all ? 1 : 0)
        const seen = this.counted(weight, box)
        const [u, v] = [
          layout.on[2 * i]! + s * layout.half[2 * i]!,
          layout.on[2 * i + 1]! + t * layout.half[2 * i + 1]!,
        ]
        if (seen > 0) sheet.spread(u, v, side, seen, this.found)
      }
  }
}
