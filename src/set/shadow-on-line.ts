/** How much of a shadow shows on one line past the outline that throws it. */
import { difference, type Figure } from '../light/figure.js'
import { sumFigure } from '../light/sum-light.js'
import { lightness, luminanceOfLightness } from '../picture/tone.js'
import type { SceneFigure } from '../scene/scene.js'
import { distance } from '../scene/vector.js'
import type { LuxSeconds, Stops } from '../units/quantity.js'
import type { ComputedSet, Exposed } from './computed-set.js'
import type { FieldPlace, PictureField } from './picture-field.js'
import type { Line } from './shadow-lines.js'
import { type ShadowSeen, shows } from './shadow-seen.js'

/** Stops: deeper than this black is black. */
const deepest = 12
/** Places beyond the outline, shares of the frame's short side; farther out as far apart as the figure is narrow. */
const nearOutline = [0.0005, 0.01, 0.0205, 0.035, 0.055, 0.08]
const fewest = 6
/** Of the way from where half of a light is hidden to where all of it is seen. */
const faint = 0.7
/** This many stops short of showing, what surfaces add is not asked for. */
const hopeless = -0.3
/** This many stops from showing, or from not showing, no place in between is looked at. */
const plain = 0.5
/** Metres on the surface within which an edge at half depth is found. */
const within = 0.005
/** Stops: differences under this are the last digits of a sum, and a mirrored set has others. */
export const alike = 1e-6

/**
 * A light that gives less of a place than a fifth makes no shadow of a third of a stop there. A little less than that, as
 * light is not even between the places that are looked at.
 */
export const leastShare = 0.8 * (1 - 2 ** -shows.stops)

export interface Thrown {
  readonly set: ComputedSet
  readonly field: PictureField
  readonly figure: SceneFigure
  readonly light: string
  /** Floors and sweeps count. */
  readonly floors: boolean
  /** What surfaces add counts. */
  readonly filled: boolean
}

interface Sample {
  readonly s: number
  /** Stops by which this side is deeper than the other, over what it must be to show. */
  readonly excess: number
}

/** Undefined where no shadow of this light falls on the line. */
export const shadowOnLine = (thrown: Thrown, line: Line): ShadowSeen | undefined => {
  const cast = line.casts.get(thrown.light)
  if (cast === undefined || cast.end < shows.width) return undefined
  // Farther out than this too little of the light is hidden.
  const end = Math.max(cast.moved + faint * (cast.end - cast.moved), 1.1 * shows.width)
  const places = placesTo(end, line.thick)
  const falls = places.filter((s) => takenAt(thrown, line.place(s)) > 0)
  if (falls.length === 0) return undefined
  const profile = (filled: Exposed | undefined) => {
    const known = new Map<number, Sample>()
    const at = (s: number) => {
      const sample = known.get(s) ?? { s, excess: excessAt(thrown, line, s, filled) }
      known.set(s, sample)
      return sample
    }
    for (const s of places) at(s)
    return { known, at }
  }
  let { known, at } = profile(undefined)
  let best = widestBand(known)
  const deepestOf = () =>
    falls.reduce((most, s) => (at(s).excess > at(most).excess + alike ? s : most), falls[0]!)
  let filled: Exposed | undefined
  if (best.least > hopeless) {
    filled = thrown.filled ? line.place(deepestOf()).indirect : undefined
    if (filled !== undefined) ({ known, at } = profile(filled))
    best = widestBand(known)
    for (const share of [0, 0.25]) {
      if (Math.abs(best.least) > plain) break
      for (const s of between(best.from, share)) if (s < end) at(s)
      best = widestBand(known)
    }
  }
  return seenAt(
    thrown,
    line,
    deepestOf(),
    best.least,
    filled,
    end < cast.end ? [...places, cast.end] : places,
  )
}

/** At a glance: stops by which the shadow is deeper than it must be, at the two places where it is likeliest to be. */
export const promiseOf = (thrown: Thrown, line: Line): number => {
  const { moved } = line.casts.get(thrown.light)!
  const near = line.place(shows.width / 2)
  const open = thrown.set.giving.reduce((sum, light) => sum + near.open(light), 0)
  if (near.open(thrown.light) < leastShare * open) return -shows.stops
  return Math.max(
    ...[shows.width / 2, Math.max(shows.width, 0.6 * moved)].map((s) => excessAt(thrown, line, s, undefined)),
  )
}

const placesTo = (end: number, thick: number): readonly number[] => {
  const near = nearOutline.filter((s) => s < end)
  const from = near[near.length - 1]!
  const step = Math.min(0.6 * thick, Math.max(0.04, (end - from) / fewest))
  const count = Math.max(1, Math.ceil((end - from) / step))
  return [...near, ...Array.from({ length: count }, (_, i) => from + ((i + 1) / count) * (end - from))]
}

/** Ends and inside of the band that starts here, moved by a share of its width. */
const between = (from: number, share: number): readonly number[] =>
  [0, 0.5, 1].flatMap((part) =>
    (share === 0 ? [0] : [-share, share]).map((by) =>
      Math.max(nearOutline[0]!, from + (part + by) * shows.width),
    ),
  )

/** Of all bands of the width that shows, the one whose least is most; straight lines between the samples. */
const widestBand = (
  known: ReadonlyMap<number, Sample>,
): { readonly from: number; readonly least: number } => {
  const samples = [...known.values()].sort((a, b) => a.s - b.s)
  const last = samples[samples.length - 1]!.s
  let best = { from: samples[0]!.s, least: Number.NEGATIVE_INFINITY }
  for (const { s } of samples)
    for (const from of [s, s - shows.width]) {
      if (from < samples[0]!.s || from + shows.width > last) continue
      const least = samples.reduce(
        (lowest, one) => (one.s > from && one.s < from + shows.width ? Math.min(lowest, one.excess) : lowest),
        Math.min(interpolated(samples, from), interpolated(samples, from + shows.width)),
      )
      if (least > best.least + alike) best = { from, least }
    }
  return best
}

const interpolated = (samples: readonly Sample[], s: number): number => {
  const i = samples.findIndex((one) => one.s >= s)
  const [a, b] = [samples[i - 1], samples[i]!]
  return a === undefined || b.s === s
    ? b.excess
    : a.excess + ((b.excess - a.excess) * (s - a.s)) / (b.s - a.s)
}

/** What is judged as backdrop; a floor that nobody wants white may have shadows, as floors do. */
const counts = ({ floors }: Thrown, { hit }: FieldPlace): boolean =>
  hit !== undefined &&
  (hit.on === 'backdrop' || (floors && (hit.on === 'sweep' || (hit.on === 'room' && hit.name === 'floor'))))

const takenAt = (thrown: Thrown, place: FieldPlace): number =>
  counts(thrown, place) ? place.taken(thrown.light, thrown.figure.name) : 0

interface Shade {
  readonly depth: number
  readonly surround: number
  readonly shaded: number
}

const shadeAt = (thrown: Thrown, place: FieldPlace, filled: Exposed | undefined): Shade => {
  const { set, figure, field } = thrown
  const taken = takenAt(thrown, place)
  const all = set.giving.reduce(
    (sum, light) => sum + place.direct(light, figure.name),
    filled?.luxSeconds ?? 0,
  )
  const linear = place.reflectance * field.perLuxSecond
  const [surround, shaded] = [linear * all, linear * Math.max(0, all - taken)]
  const depth = surround > 0 ? Math.min(deepest, Math.log2(Math.min(1, surround) / Math.min(1, shaded))) : 0
  return { depth, surround, shaded }
}

const excessAt = (thrown: Thrown, line: Line, s: number, filled: Exposed | undefined): number => {
  const place = line.place(s)
  if (!counts(thrown, place)) return -deepest
  if (takenAt(thrown, place) === 0) return -shows.stops
  const { depth, surround } = shadeAt(thrown, place, filled)
  const most = depth - mustBe(surround)
  return most < hopeless ? most : most - opposite(thrown, line, s, filled)
}

/** Stops under a tone at which a shadow on it shows. */
const mustBe = (surround: number): number => {
  const white = Math.min(1, surround)
  const under = lightness(white) - shows.lightness
  return under <= 0 ? deepest : Math.max(shows.stops, Math.log2(white / luminanceOfLightness(under)))
}

/**
 * Depth as far out on the other side. Above a head, and where something else is seen on the other side, the shadow is
 * taken as a halo that the light has moved by some way past the outline: on the other side it would be moved inward by
 * as much.
 */
const opposite = (thrown: Thrown, line: Line, s: number, filled: Exposed | undefined): number => {
  const other = line.other?.(s)
  if (other !== undefined && counts(thrown, other))
    return takenAt(thrown, other) === 0 ? 0 : shadeAt(thrown, other, filled).depth
  const { moved } = line.casts.get(thrown.light)!
  const place = line.place(s + 2 * moved)
  return takenAt(thrown, place) === 0 ? 0 : shadeAt(thrown, place, filled).depth
}

/** Between a place where it holds and one where it does not. */
const halved = (
  holds: number,
  not: number,
  test: (s: number) => boolean,
  enough: (a: number, b: number) => boolean,
): number => {
  let [a, b] = [holds, not]
  for (let i = 0; i < 12 && !enough(a, b); i++) {
    const middle = (a + b) / 2
    if (test(middle)) a = middle
    else b = middle
  }
  return (a + b) / 2
}

const seenAt = (
  thrown: Thrown,
  line: Line,
  s: number,
  margin: number,
  filled: Exposed | undefined,
  places: readonly number[],
): ShadowSeen => {
  const place = line.place(s)
  const { depth, surround, shaded } = shadeAt(thrown, place, filled)
  // Half of what is taken where it is deepest: in stops, a shadow that is black has no half.
  const part = (one: FieldPlace) => takenAt(thrown, one) / (one.open(thrown.light) || 1)
  const half = (at: number): boolean => part(line.place(at)) >= part(place) / 2
  const near = (a: number, b: number): boolean => {
    const [p, q] = [line.place(a).hit?.at, line.place(b).hit?.at]
    return p !== undefined && q !== undefined && distance(p, q) <= within
  }
  const beyond = places.find((at) => at > s && !half(at))
  const before = places.findLast((at) => at < s && !half(at))
  const outer = beyond === undefined ? places[places.length - 1]! : halved(s, beyond, half, near)
  const inner = before === undefined ? nearOutline[0]! : halved(s, before, half, near)
  const at = place.hit!.at
  const on = place.hit!.on
  return {
    light: thrown.light,
    figure: thrown.figure.name,
    side: line.side,
    on: on === 'backdrop' || on === 'sweep' ? on : 'floor',
    margin,
    depth: { ...depthFigure(thrown, place, filled, surround), stops: depth as Stops },
    otherSide: opposite(thrown, line, s, filled),
    surround,
    shaded,
    at,
    x: place.x,
    y: place.y,
    width: distance(line.place(inner).hit?.at ?? at, line.place(outer).hit?.at ?? at),
    share: outer - inner,
  }
}

const depthFigure = (
  { set, figure, light, field }: Thrown,
  place: FieldPlace,
  filled: Exposed | undefined,
  surround: number,
): Figure => {
  const open = new Map<string, LuxSeconds>()
  for (const one of set.giving)
    open.set(one, (place.direct(one, figure.name) + (filled?.byLight.get(one) ?? 0)) as LuxSeconds)
  const shaded = new Map(open)
  shaded.set(light, Math.max(0, open.get(light)! - place.taken(light, figure.name)) as LuxSeconds)
  const dark = sumFigure(shaded)
  // What is white already cannot be seen to be any brighter: a tone against the end of the scale.
  return surround > 1
    ? difference(
        {
          stops: -Math.log2(place.reflectance * field.perLuxSecond) as Stops,
          gradient: new Map(),
          variance: 0,
          rendering: 0,
        },
        { ...dark, rendering: 1 },
      )
    : difference(sumFigure(open), dark)
}
