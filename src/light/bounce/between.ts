/** The share of the lines between two cells that nothing crosses, by a few fixed lines. */
import type { Blocker } from '../visibility/blockers.js'
import { placeOn } from './layout.js'
import type { Mesh } from './mesh.js'
import type { Obstacle } from './obstacles.js'
import { ends, entersCapsule, meets, nearBall } from './rays.js'
import { mayStand, type Obstacles, obstaclesOf } from './standing.js'

/** Five places on a cell: its middle and the middles of its quarters, by halves of its lengths. */
const places = [0, 0, -0.5, -0.5, 0.5, -0.5, -0.5, 0.5, 0.5, 0.5] as const
const each = 15

interface Lines {
  readonly fromI: Int8Array
  readonly toJ: Int8Array
  /** From the mean of the free lines' signs to what the free share grows by, from the middle of a cell to its end. */
  readonly slope: number
}
const quarters = [1, 2, 3, 4] as const
/** From the middle of each cell to the quarters of the other: the same whichever way their axes run. */
const few: Lines = {
  fromI: Int8Array.of(0, 0, 0, 0, ...quarters),
  toJ: Int8Array.of(...quarters, 0, 0, 0, 0),
  slope: 4,
}

/** From middle to middle. */
const single: Lines = { fromI: Int8Array.of(0), toJ: Int8Array.of(0), slope: 0 }

/** What stands between two cells, and what of the lines between them is free. One object serves many pairs. */
export class Between {
  /** Shares: free lines, and those that end on a black thing, from i and from j. */
  clear = 1
  lostFromI = 0
  lostFromJ = 0
  /** By how much of itself the free share grows from the middle to the end of i across and up, then of j. */
  readonly grows = new Float64Array(4)
  /** Whether some of what stands between stands close to i, to j. */
  closeToI = false
  closeToJ = false
  /** By depth, which obstacles may stand between, and how many. */
  private readonly lists: Int32Array[] = []
  private readonly counts: number[] = []
  private readonly obstacles: Obstacles
  /** The places on all cells in space, and as each obstacle has them: see `local`. */
  private readonly inSpace: Float64Array
  private readonly inOwn: (Float64Array | undefined)[]
  private readonly known: (Uint8Array | undefined)[]
  /** By line: how far along the nearest and the furthest obstacle is met, and whether what arrives there is lost. */
  private readonly first = new Float64Array(8)
  private readonly last = new Float64Array(8)
  private readonly lostFirst = new Uint8Array(8)
  private readonly lostLast = new Uint8Array(8)

  constructor(
    private readonly mesh: Mesh,
    blockers: readonly Blocker[],
  ) {
    const { layout } = mesh.tree
    this.obstacles = obstaclesOf(mesh, blockers)
    this.lists.push(Int32Array.from(blockers.keys()))
    this.counts.push(blockers.length)
    this.inOwn = blockers.map(() => undefined)
    this.known = blockers.map(() => undefined)
    this.inSpace = new Float64Array(each * layout.count)
    const at: [number, number, number] = [0, 0, 0]
    for (let c = 0; c < layout.count; c++)
      for (let k = 0; k < 5; k++) {
        placeOn(layout, c, places[2 * k]!, places[2 * k + 1]!, at)
        this.inSpace[each * c + 3 * k] = at[0]
        this.inSpace[each * c + 3 * k + 1] = at[1]
        this.inSpace[each * c + 3 * k + 2] = at[2]
      }
  }

  /**
   * False where nothing can stand between.
   *
   * @param depth one more than that of the pair of which they are parts: only what stands between those may stand here
   */
  take(i: number, j: number, depth: number): boolean {
    const { obstacles, counts, lists } = this
    const { close } = obstacles
    const cells = this.mesh.tree.layout
    this.clear = 1
    this.lostFromI = 0
    this.lostFromJ = 0
    this.grows.fill(0)
    this.closeToI = false
    this.closeToJ = false
    const before = lists[depth - 1]!
    let here = lists[depth]
    if (here === undefined) {
      here = new Int32Array(before.length)
      lists[depth] = here
    }
    let count = 0
    for (let at = 0; at < counts[depth - 1]!; at++) {
      const k = before[at]!
      if (!mayStand(cells, obstacles, k, i, j)) continue
      here[count++] = k
      if (close[k * cells.count + i] === 1) this.closeToI = true
      if (close[k * cells.count + j] === 1) this.closeToJ = true
    }
    counts[depth] = count
    return count > 0
  }

  /** @param lines so many of them: 8 or 1; of the pair last taken, at this depth. */
  look(i: number, j: number, number: 8 | 1, depth: number): void {
    const { grows, first, last, lostFirst, lostLast } = this
    const lines = number === 8 ? few : single
    const { fromI, toJ } = lines
    const some = this.lists[depth]!
    const count = this.counts[depth]!
    first.fill(2)
    last.fill(-1)
    for (let k = 0; k < count; k++) this.meet(some[k]!, i, j, lines)
    let free = 0
    let lostI = 0
    let lostJ = 0
    for (let line = 0; line < number; line++) {
      if (first[line]! < 1) {
        lostI += lostFirst[line]!
        lostJ += lostLast[line]!
        continue
      }
      free++
      const p = 2 * fromI[line]!
      const q = 2 * toJ[line]!
      grows[0]! += places[p]!
      grows[1]! += places[p + 1]!
      grows[2]! += places[q]!
      grows[3]! += places[q + 1]!
    }
    if (free > 0) for (let k = 0; k < 4; k++) grows[k]! *= (2 * lines.slope) / free
    this.clear = free / number
    this.lostFromI = lostI / number
    this.lostFromJ = lostJ / number
  }

  private meet(k: number, i: number, j: number, { fromI, toJ }: Lines): void {
    const one = this.obstacles.all[k]!
    const { first, last, lostFirst, lostLast } = this
    const own = this.local(k, i, j)
    const high = one.numbers[12]!
    for (let line = 0; line < fromI.length; line++) {
      const p = each * i + 3 * fromI[line]!
      const q = each * j + 3 * toJ[line]!
      const x = own[p]!
      const y = own[p + 1]!
      const z = own[p + 2]!
      const dx = own[q]! - x
      const dy = own[q + 1]! - y
      const dz = own[q + 2]! - z
      let t: number
      let lostI = 1
      let lostJ = 1
      if (one.kind === 'plate') {
        if (z > 0 === z + dz > 0) continue
        t = -z / dz
        if (Math.abs(x + t * dx) > 1 || Math.abs(y + t * dy) > 1) continue
        const front = one.givesFront ? 0 : 1
        const back = one.givesBack ? 0 : 1
        lostI = z > 0 ? front : back
        lostJ = z > 0 ? back : front
      } else if (one.kind === 'capsule') t = entersCapsule(x, y, z, dx, dy, dz, high)
      else if (nearBall(one, x, y, z, dx, dy, dz, dx * dx + dy * dy + dz * dz))
        t = meets(one, x, y, z, dx, dy, dz)
      else continue
      if (!(t > ends && t < 1 - ends)) continue
      if (t < first[line]!) {
        first[line] = t
        lostFirst[line] = lostI
      }
      if (t > last[line]!) {
        last[line] = t
        lostLast[line] = lostJ
      }
    }
  }

  /**
   * The places on all cells, those of i and j among them, in the obstacle's own space: of a plate half lengths from its
   * middle and metres before it; of a capsule where it is round.
   */
  private local(k: number, i: number, j: number): Float64Array {
    const one = this.obstacles.all[k]!
    if (one.kind !== 'plate' && one.kind !== 'capsule') return this.inSpace
    let own = this.inOwn[k]
    let known = this.known[k]
    if (own === undefined || known === undefined) {
      own = new Float64Array(this.inSpace.length)
      known = new Uint8Array(this.mesh.tree.layout.count)
      this.inOwn[k] = own
      this.known[k] = known
    }
    for (let c = i; ; c = j) {
      if (known[c] === 0) {
        known[c] = 1
        carried(one, this.inSpace, own, each * c)
      }
      if (c === j) return own
    }
  }
}

const carried = (
  { kind, numbers: n }: Obstacle,
  inSpace: Float64Array,
  own: Float64Array,
  from: number,
): void => {
  // Rows of the map: of a plate across, up and out; of a capsule as they are.
  const third = kind === 'plate' ? 3 : 9
  const [a, b] = kind === 'plate' ? [6, 9] : [3, 6]
  for (let k = from; k < from + each; k += 3) {
    const x = inSpace[k]! - n[0]!
    const y = inSpace[k + 1]! - n[1]!
    const z = inSpace[k + 2]! - n[2]!
    own[k] = n[a]! * x + n[a + 1]! * y + n[a + 2]! * z
    own[k + 1] = n[b]! * x + n[b + 1]! * y + n[b + 2]! * z
    own[k + 2] = n[third]! * x + n[third + 1]! * y + n[third + 2]! * z
  }
}
