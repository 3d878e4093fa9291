/**
 * What of a flat convex thing a round object shows, stretch by stretch of its curves, were nothing in the way. The
 * object throws the lines of sight apart, so that each place round about shows once or, behind it, not at all: a thing
 * that reaches out on both sides from behind it shows at both of its edges.
 */
import { type MirrorPlace, mirroredDirection } from '../scene/mirror.js'
import { type MirrorCurve, type MirrorCurves, mirrorCurves } from '../scene/mirror-curves.js'
import { outsideFace } from '../scene/ray.js'
import { cornersOf } from '../scene/solids.js'
import type { RoundSubjectMirror } from '../scene/subject-mirror.js'
import { dot, subtract, unit, type Vec3 } from '../scene/vector.js'
import type { Shown } from './in-plane-mirror.js'

/** Curves beside each other that show it. */
export interface Run {
  readonly from: number
  readonly to: number
  /** All round. */
  readonly closed: boolean
  /** All its curves show it from where they start: on a ball, the middle. */
  readonly holdsStart: boolean
  /** What shows it of a curve of the run, from 0 to 1 along it; undefined where it does not by a hair's breadth. */
  stretch(angle: number): ((share: number) => MirrorPlace) | undefined
}

/** Curves that are tried, besides those of its own corners. */
const tried = 24
/** Places of a curve that are tried before it is searched between. */
const coarse = 6
const halvings = 16
const golden = (3 - Math.sqrt(5)) / 2
const searches = 24

export const runsOn = (mirror: RoundSubjectMirror, eye: Vec3, shown: Shown): readonly Run[] => {
  const curves = mirrorCurves(mirror, eye)
  const { from, to } = curves
  const lit = (angle: number): Stretch | undefined => stretchOf(curves.curve(angle), eye, shown)
  const stretch: Run['stretch'] = (angle) => {
    const curve = curves.curve(angle)
    const found = stretchOf(curve, eye, shown)
    return found && ((share) => curve.at(found[0] + (found[1] - found[0]) * share))
  }
  const even = Array.from({ length: tried + 1 }, (_, i) => from + ((to - from) * i) / tried)
  const angles = [...even, ...anglesOf(curves, mirror, eye, shown)].sort((a, b) => a - b)
  const isLit = angles.map((angle) => lit(angle) !== undefined)
  const holdsStart = (angle: number): boolean => lit(angle)?.[0] === curves.curve(angle).from
  const first = isLit.indexOf(false)
  if (first < 0) return [{ from, to, closed: curves.closed, holdsStart: holdsStart(0), stretch }]
  const edge = (sees: number, not: number): number => {
    let [a, b] = [sees, not]
    for (let round = 0; round < halvings; round++) {
      const half = (a + b) / 2
      if (lit(half) === undefined) b = half
      else a = half
    }
    return a
  }
  // Round a ball the last run may go on into the first: it is cut where nothing shows.
  const turned = curves.closed
    ? [...angles.slice(first, -1), ...angles.slice(0, first + 1).map((angle) => angle + to - from)]
    : angles
  const shows = curves.closed ? [...isLit.slice(first, -1), ...isLit.slice(0, first + 1)] : isLit
  return shows.flatMap((here, i): readonly Run[] => {
    if (!here || shows[i - 1]) return []
    let last = i
    while (shows[last + 1]) last++
    const [before, after] = [turned[i - 1], turned[last + 1]]
    return [
      {
        from: before === undefined ? turned[i]! : edge(turned[i]!, before),
        to: after === undefined ? turned[last]! : edge(turned[last]!, after),
        closed: false,
        holdsStart: holdsStart(turned[i]!),
        stretch,
      },
    ]
  })
}

/** Of the curves that show its middle and its corners: without them what is small falls between. */
const anglesOf = (
  curves: MirrorCurves,
  mirror: RoundSubjectMirror,
  eye: Vec3,
  { face }: Shown,
): readonly number[] =>
  [face.centre, ...cornersOf(face)].flatMap((of) => {
    const place = mirror.place(eye, of)
    const angle = curves.angleOf(place?.normal ?? subtract(of, mirror.middle))
    return angle > curves.from && angle < curves.to ? [angle] : []
  })

type Stretch = readonly [number, number]

/** Along a curve the lines of sight meet the thing's plane along a line: how far outside that is falls, then rises. */
const stretchOf = (curve: MirrorCurve, eye: Vec3, { face, sides }: Shown): Stretch | undefined => {
  const outside = (along: number): number => {
    const { at, normal } = curve.at(along)
    const on = mirroredDirection(normal, unit(subtract(at, eye)))
    return sides === 'front' && dot(on, face.normal) >= 0
      ? Number.POSITIVE_INFINITY
      : outsideFace(face, at, on)
  }
  const step = (curve.to - curve.from) / coarse
  const places = Array.from({ length: coarse + 1 }, (_, i) => curve.from + step * i)
  const values = places.map(outside)
  const least = values.indexOf(Math.min(...values))
  if (!Number.isFinite(values[least]!)) return undefined
  const inside =
    values[least]! <= 0
      ? places[least]!
      : searched(
          outside,
          places[Math.max(0, least - 1)]!,
          places[least]!,
          places[Math.min(coarse, least + 1)]!,
        )
  if (inside === undefined) return undefined
  const end = (way: 1 | -1): number => {
    let i = least
    while (i >= 0 && i <= coarse && (values[i]! <= 0 || (places[i]! - inside) * way < 0)) i += way
    const not = places[i]
    if (not === undefined) return way > 0 ? curve.to : curve.from
    return edgeBetween(outside, inside, not)
  }
  return [end(-1), end(1)]
}

/** Radians or metres. */
const close = 1e-6

/** Where it comes out, by false position (Illinois), by halves where it is out of all reach; on the inner side. */
const edgeBetween = (outside: (along: number) => number, inside: number, not: number): number => {
  let [a, b] = [inside, not]
  let [ya, yb] = [outside(a), outside(b)]
  for (let round = 0; round < searches && Math.abs(b - a) > close; round++) {
    const falls = Number.isFinite(yb) && yb > ya
    const next = falls ? Math.max(0.01, Math.min(0.99, ya / (ya - yb))) * (b - a) + a : (a + b) / 2
    const got = outside(next)
    if (got <= 0) {
      ;[a, ya] = [next, got]
      yb /= 2
    } else {
      ;[b, yb] = [next, got]
      ya /= 2
    }
  }
  return a
}

/** The first place that is found inside, where the least lies between two places; golden section. */
const searched = (
  outside: (along: number) => number,
  from: number,
  best: number,
  to: number,
): number | undefined => {
  let [low, middle, high] = [from, best, to]
  let value = outside(middle)
  for (let round = 0; round < searches; round++) {
    const next =
      high - middle > middle - low ? middle + golden * (high - middle) : middle - golden * (middle - low)
    const got = outside(next)
    if (got <= 0) return next
    if (got < value) {
      if (next > middle) low = middle
      else high = middle
      ;[middle, value] = [next, got]
    } else if (next > middle) high = next
    else low = next
  }
  return undefined
}
