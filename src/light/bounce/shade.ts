/** Which share of a patch's light from a source is not hidden, by lines between places on both. */
import type { AreaSource, ParallelSource } from '../source.js'
import { apartSquared } from '../visibility/segments.js'
import { type Layout, placeOn } from './layout.js'
import type { Obstacle } from './obstacles.js'
import { blocked } from './rays.js'

/** Metres to where the sun's lines end: past all that can stand in a set. */
const sunAway = 100

/** Places along a side, from its middle in halves of its length. */
const along = [[0], [-0.5, 0.5], [-2 / 3, 0, 2 / 3], [-0.75, -0.25, 0.25, 0.75]] as const

export class Shade {
  private readonly some: Obstacle[] = []
  /** Places on the source, three numbers each, by one, two, three and four along either side; of the sun, from the patch. */
  private readonly middle: Float64Array
  private readonly four: Float64Array
  private readonly nine: Float64Array
  private readonly sixteen: Float64Array
  private readonly wide: number
  private readonly sun: boolean
  private readonly at: [number, number, number] = [0, 0, 0]
  private readonly from: [number, number, number] = [0, 0, 0]
  private readonly way: [number, number, number] = [0, 0, 0]

  constructor(
    private readonly layout: Layout,
    source: AreaSource | ParallelSource,
    private readonly obstacles: readonly Obstacle[],
  ) {
    this.sun = source.kind === 'parallel'
    if (source.kind === 'parallel') {
      this.middle = Float64Array.from(source.toward, (one) => sunAway * one)
      this.four = this.middle
      this.nine = this.middle
      this.sixteen = this.middle
      this.wide = 0
      return
    }
    const { centre, across, up, width, height, outline } = source.face
    // What is round, as the square of its area.
    const half = outline === 'rectangle' ? 0.5 : 0.25 * Math.sqrt(Math.PI)
    const places = (shares: readonly number[]): Float64Array =>
      Float64Array.from(
        shares.flatMap((s) =>
          shares.flatMap((t) =>
            centre.map((x, k) => x + half * (s * width * across[k]! + t * height * up[k]!)),
          ),
        ),
      )
    this.middle = Float64Array.from(centre)
    this.four = places(along[1])
    this.nine = places(along[2])
    this.sixteen = places(along[3])
    this.wide = Math.hypot(width, height) / 2
  }

  clear(i: number): number {
    const count = this.inTheWay(i)
    if (count === 0) return 1
    const { layout, some, at, sun } = this
    const long = 2 * Math.max(layout.half[2 * i]!, layout.half[2 * i + 1]!)
    // Penumbras are about as wide as the source: where that is little against the patch, its places matter more.
    const { wide } = this
    const places = along[wide > 2 * long ? 0 : wide > long ? 1 : wide > long / 2 ? 2 : 3]!
    const targets =
      wide > 2 * long ? this.sixteen : wide > long ? this.nine : wide > long / 2 ? this.four : this.middle
    let free = 0
    const each = places.length
    for (let place = 0; place < each * each; place++) {
      placeOn(layout, i, places[Math.floor(place / each)]!, places[place % each]!, at)
      for (let k = 0; k < targets.length; k += 3) {
        const x = targets[k]! + (sun ? at[0] : 0)
        const y = targets[k + 1]! + (sun ? at[1] : 0)
        const z = targets[k + 2]! + (sun ? at[2] : 0)
        if (!blocked(some, count, at[0], at[1], at[2], x, y, z)) free++
      }
    }
    return (3 * free) / (targets.length * each * each)
  }

  /** Puts in `some` what comes near the hull of patch and source; how many. */
  private inTheWay(i: number): number {
    const { layout, obstacles, some, middle, wide, sun, from, way } = this
    const p = 3 * i
    for (let axis = 0; axis < 3; axis++) {
      from[axis] = layout.at[p + axis]!
      way[axis] = sun ? middle[axis]! : middle[axis]! - layout.at[p + axis]!
    }
    const square = way[0] * way[0] + way[1] * way[1] + way[2] * way[2]
    const patch = layout.radius[i]!
    let count = 0
    for (let k = 0; k < obstacles.length; k++) {
      const one = obstacles[k]!
      const x = one.x - from[0]
      const y = one.y - from[1]
      const z = one.z - from[2]
      const share = (x * way[0] + y * way[1] + z * way[2]) / (square || 1)
      const t = Math.min(1, Math.max(0, share))
      const ox = x - t * way[0]
      const oy = y - t * way[1]
      const oz = z - t * way[2]
      const off = ox * ox + oy * oy + oz * oz
      const coat = Math.max(patch, wide)
      const reach = one.radius + coat
      if (off >= reach * reach) continue
      const { round } = one.blocker
      if (round !== undefined) {
        const apart = round.coat + coat
        if (apartSquared(round.from, round.span, from, way) >= apart * apart) continue
      }
      some[count++] = one
    }
    return count
  }
}
