/** A run of a round thing's curves cut into the pieces that are seen, by lines of sight spread over it. */
import { type PlanePoint, turn } from '../scene/hull.js'
import type { MirrorPlace } from '../scene/mirror.js'
import type { Run } from './in-round-mirror.js'

export interface Patch {
  readonly from: PlanePoint
  readonly to: PlanePoint
  readonly area: number
  /** Of its area. */
  readonly centre: PlanePoint
  /** Radians over which it reaches from curve to curve. */
  readonly span: number
  /** A place of it near its middle. */
  readonly met: MirrorPlace
}

type Stretch = NonNullable<ReturnType<Run['stretch']>>

/** What is seen of a curve in one piece, as shares of its stretch. */
interface Part {
  readonly angle: number
  readonly stretch: Stretch
  readonly from: number
  readonly to: number
}

/** Steps from curve to curve of a run, and of one that goes all round; steps along each. */
const steps = { across: 24, round: 36, along: 4 }
/** The ends are drawn in by this share, so that lines of sight there meet the thing. */
const drawnIn = 1e-4
const drawn = (share: number): number => drawnIn + (1 - 2 * drawnIn) * share
const halvings = 8

/**
 * @param isSeen whether nothing stands in the way there
 * @param placeOf where that is on the object
 */
export const patchesOf = (
  run: Run,
  isSeen: (met: MirrorPlace) => boolean,
  placeOf: (met: MirrorPlace) => PlanePoint,
): readonly Patch[] => {
  const partsAt = (angle: number): readonly Part[] => {
    const stretch = run.stretch(angle)
    return stretch === undefined
      ? []
      : seenParts((share) => isSeen(stretch(drawn(share)))).map(([from, to]) => ({
          angle,
          stretch,
          from,
          to,
        }))
  }
  const count = run.closed ? steps.round : steps.across
  // Closer at the ends of a run, where an edge along the curves begins all at once.
  const spread = (share: number): number => (run.closed ? share : (1 - Math.cos(Math.PI * share)) / 2)
  const angles = Array.from(
    { length: count + 1 },
    (_, i) => run.from + (run.to - run.from) * drawn(spread(i / count)),
  )
  const spaced = angles.map(partsAt)
  // Where a piece ends between two curves, one more is laid along its end.
  const columns = spaced.flatMap((parts, i) => {
    const next = spaced[i + 1] ?? []
    const step = (angles[i + 1] ?? angles[i]!) - angles[i]!
    const ends = (
      of: readonly Part[],
      others: readonly Part[],
      way: 1 | -1,
    ): readonly (readonly Part[])[] => {
      const [lone] = of.filter((part) => !others.some((other) => touch(part, other)))
      if (lone === undefined) return []
      const share = (lone.from + lone.to) / 2
      const last = lastOf((part) => {
        const stretch = run.stretch(lone.angle + way * step * part)
        return stretch !== undefined && isSeen(stretch(drawn(share)))
      })
      return last === 0 ? [] : [partsAt(lone.angle + way * step * last)]
    }
    return i === count ? [parts] : [parts, ...ends(parts, next, 1), ...ends(next, parts, -1)]
  })
  return piecesOf(columns, run.closed).map((piece) => patchOf(piece, columns, placeOf))
}

/** The share from 0, where it is so, up to which it is, given that at 1 it is not. */
const lastOf = (isSo: (share: number) => boolean): number => {
  let [so, not] = [0, 1]
  for (let halving = 0; halving < halvings; halving++) {
    const half = (so + not) / 2
    if (isSo(half)) so = half
    else not = half
  }
  return so
}

const seenParts = (isSeen: (share: number) => boolean): readonly (readonly [number, number])[] => {
  const { along } = steps
  const seen = Array.from({ length: along + 1 }, (_, k) => isSeen(k / along))
  return seen.flatMap((here, k): readonly (readonly [number, number])[] => {
    if (!here || seen[k - 1]) return []
    let last = k
    while (seen[last + 1]) last++
    const from = k === 0 ? 0 : (k - lastOf((part) => isSeen((k - part) / along))) / along
    const to = last === along ? 1 : (last + lastOf((part) => isSeen((last + part) / along))) / along
    return [[from, to]]
  })
}

const touch = (a: Part, b: Part): boolean => a.from <= b.to && b.from <= a.to

/** What hangs together, from curve to curve; all round, the last curve is the first. */
const piecesOf = (columns: readonly (readonly Part[])[], closed: boolean): readonly ReadonlySet<Part>[] => {
  const besides = new Map<Part, Part[]>(columns.flat().map((part) => [part, []]))
  columns.forEach((parts, i) => {
    const next = columns[i + 1] ?? (closed ? columns[0]! : [])
    for (const a of parts)
      for (const b of next)
        if (touch(a, b)) {
          besides.get(a)!.push(b)
          besides.get(b)!.push(a)
        }
  })
  const taken = new Set<Part>()
  return [...besides.keys()].flatMap((start): ReadonlySet<Part>[] => {
    if (taken.has(start)) return []
    const piece = new Set([start])
    for (const part of piece) {
      taken.add(part)
      for (const next of besides.get(part)!) piece.add(next)
    }
    return [piece]
  })
}

const patchOf = (
  piece: ReadonlySet<Part>,
  columns: readonly (readonly Part[])[],
  placeOf: (met: MirrorPlace) => PlanePoint,
): Patch => {
  const metAt = ({ stretch, from, to }: Part, share: number): MirrorPlace =>
    stretch(drawn(from + (to - from) * share))
  const looks = new Map(
    [...piece].map((part) => [
      part,
      Array.from({ length: steps.along + 1 }, (_, k) => {
        const met = metAt(part, k / steps.along)
        return { met, place: placeOf(met) }
      }),
    ]),
  )
  const all = [...looks.values()].flat()
  const range = (axis: 0 | 1): readonly [number, number] => [
    Math.min(...all.map(({ place }) => place[axis])),
    Math.max(...all.map(({ place }) => place[axis])),
  ]
  const [[left, right], [low, high]] = [range(0), range(1)]
  const middle: PlanePoint = [(left + right) / 2, (low + high) / 2]
  let [area, x, y, span] = [0, 0, 0, 0]
  columns.forEach((parts, i) => {
    let across = 0
    for (const a of parts)
      for (const b of columns[i + 1] ?? []) {
        if (!piece.has(a) || !piece.has(b) || !touch(a, b)) continue
        across = b.angle - a.angle
        const [p, q] = [looks.get(a)!, looks.get(b)!]
        for (let k = 0; k < steps.along; k++) {
          const corners = [p[k]!, q[k]!, q[k + 1]!, p[k + 1]!].map(({ place }) => place)
          const one =
            Math.abs(
              turn(corners[0]!, corners[1]!, corners[2]!) + turn(corners[0]!, corners[2]!, corners[3]!),
            ) / 2
          area += one
          x += (one * corners.reduce((sum, place) => sum + place[0], 0)) / 4
          y += (one * corners.reduce((sum, place) => sum + place[1], 0)) / 4
        }
      }
    span += across
  })
  const off = ({ place }: (typeof all)[number]): number =>
    Math.hypot(place[0] - middle[0], place[1] - middle[1])
  const inside = [...looks.values()].map((row) => row[steps.along / 2]!)
  return {
    from: [left, low],
    to: [right, high],
    area,
    centre: area > 0 ? [x / area, y / area] : middle,
    span,
    met: inside.reduce((best, one) => (off(one) < off(best) - 1e-9 ? one : best)).met,
  }
}
