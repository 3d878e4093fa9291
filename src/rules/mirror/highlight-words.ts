/** Highlights and edges of an object in words. */
import type { EdgeView, Highlight } from '../../picture/on-subject.js'
import type { Hit } from '../../scene/first-hit.js'
import type { PlanePoint } from '../../scene/hull.js'
import type { SubjectMirror } from '../../scene/subject-mirror.js'
import type { Thing } from './things.js'

export interface OnSubject {
  readonly thing: Thing
  /** At least one; from camera-left on. */
  readonly highlights: readonly Highlight[]
}

/** Share of the object's width. */
export const widthOf = ({ from, to }: Highlight): number => Math.min(1, (to[0] - from[0]) / 2)
/** Share of its height. */
export const heightOf = ({ from, to }: Highlight): number => Math.min(1, (to[1] - from[1]) / 2)

const bySize = (a: Highlight, b: Highlight): number => b.covers - a.covers

export const largest = ({ highlights }: OnSubject): Highlight => [...highlights].sort(bySize)[0]!

/** Shares of the half width: nearer than this to the middle or to an edge. */
const near = { middle: 0.15, edge: 0.8 }

const across = ({ from, to }: Highlight): number => (from[0] + to[0]) / 2

/** At both edges, or along more than half of a ball's. */
export const isBehind = ({ highlights }: OnSubject): boolean =>
  highlights.some(({ round }) => round !== undefined) ||
  (highlights.some((one) => across(one) < -near.edge) && highlights.some((one) => across(one) > near.edge))

/** What gives back less than this looks dark in gloss. */
const dark = 0.1

/** A black card is seen as what is dark there, however it is lit. */
export const isDark = ({ thing }: OnSubject): boolean =>
  thing.of === 'panel' && thing.panel.surface.reflectance < dark

/** The side of a highlight as wide and as high as this, a hot spot, and the height of a long one; shares of the object's. */
export interface Kinds {
  readonly spot: number
  readonly long: number
}

/** Of the largest piece: a smaller one beside it is not told. */
const sliver = 0.02

/** `key as a long highlight, 9 % of its width and all of its height, down its middle`. */
export const shownText = (one: OnSubject, shape: SubjectMirror['shape'], kinds: Kinds): string => {
  const { thing, highlights } = one
  const [first, next] = [...highlights].sort(bySize)
  const second = next && next.covers > sliver * first!.covers ? next : undefined
  if (first!.round !== undefined)
    return `${thing.name} as a ${isDark(one) ? 'dark rim' : 'rim of light'} ${rimText(first!, first!.round)}`
  if (second !== undefined && shape === 'cylinder' && isBehind({ thing, highlights: [first!, second] }))
    return `${thing.name} as two ${isDark(one) ? 'dark ' : ''}stripes, one along each edge, ${stripesText(highlights.filter((part) => part === first || part === second))}`
  const parts = [first!, ...(second === undefined ? [] : [second])]
  return `${thing.name} as ${parts.map((part) => partText(part, isDark(one), shape, kinds)).join(' and as ')}`
}

const percent = (share: number): string => (share < 0.005 ? 'under 1 %' : `${Math.round(share * 100)} %`)
const ofHeight = (share: number): string => `${share > 0.98 ? 'all' : percent(share)} of its height`

/** It covers less of the box about it than this. */
const crescent = 0.35

const partText = (
  part: Highlight,
  isDarkPart: boolean,
  shape: SubjectMirror['shape'],
  { spot, long }: Kinds,
): string => {
  const size = `${percent(widthOf(part))} of its width and ${ofHeight(heightOf(part))}`
  const atEdge =
    shape === 'ball' ? Math.hypot(...part.centre) > near.edge : Math.abs(across(part)) > near.edge
  const as = isDarkPart
    ? `a dark ${atEdge ? 'edge' : 'stripe'}, ${size},`
    : heightOf(part) >= long
      ? `a long highlight, ${size},`
      : Math.sqrt(widthOf(part) * heightOf(part)) <= spot
        ? 'a hot spot'
        : shape === 'ball' && part.covers < crescent * widthOf(part) * heightOf(part)
          ? `a crescent, ${size},`
          : `a patch, ${size},`
  return `${as} ${shape === 'ball' ? onBall(part.centre) : whereOn(part)}`
}

const stripesText = (stripes: readonly Highlight[]): string => {
  const both = (of: (one: Highlight) => string): string => {
    const [a, b] = stripes.map(of)
    return a === b ? a! : `${a} and ${b}`
  }
  const widths = both((one) => percent(widthOf(one)))
  const heights = both((one) => (heightOf(one) > 0.98 ? 'all' : percent(heightOf(one))))
  return `${widths} of its width and ${heights} of its height`
}

const rimText = ({ covers, centre }: Highlight, round: number): string => {
  // As thick all along as it is on the mean.
  const thick = (1 - Math.sqrt(Math.max(0, 1 - covers / round))) / 2
  const way =
    round > 0.97
      ? 'all round it'
      : `round ${percent(round)} of it, open at its ${sideOf([-centre[0], -centre[1]])} edge`
  return `${way}, ${percent(thick)} of its width thick`
}

const whereOn = (part: Highlight): string => {
  const x = across(part)
  const side = x < 0 ? 'camera-left' : 'camera-right'
  if (Math.abs(x) < near.middle) return 'down its middle'
  return Math.abs(x) > near.edge
    ? `along its ${side} edge`
    : `${Math.round(50 * (1 - Math.abs(x)))} % in from its ${side} edge`
}

const onBall = (place: PlanePoint): string => {
  const out = Math.hypot(...place)
  if (out < near.middle) return 'in its middle'
  const edge = `its ${sideOf(place)} edge`
  return out > near.edge ? `along ${edge}` : `${Math.round(50 * (1 - out))} % in from ${edge}`
}

/** Sine of 22.5 degrees: of eight directions. */
const oblique = 0.38

const sideOf = ([x, y]: PlanePoint): string => {
  const out = Math.hypot(x, y)
  return [
    ...(Math.abs(y) > oblique * out ? [y > 0 ? 'upper' : 'lower'] : []),
    ...(Math.abs(x) > oblique * out ? [x < 0 ? 'camera-left' : 'camera-right'] : []),
  ].join(' ')
}

export const nameOf = (hit: Hit): string => {
  if (hit.on === 'light' || hit.on === 'panel') return hit.name
  return hit.on === 'operator'
    ? 'whoever holds the camera'
    : `the ${hit.on === 'sweep' ? 'backdrop' : hit.name.replace('-', ' ')}`
}

const edgeText = ({ mirrors: hit }: EdgeView): string => {
  if (hit === undefined) return 'nothing (dark)'
  return hit.surface !== undefined && hit.surface.reflectance < dark ? `${nameOf(hit)} (dark)` : nameOf(hit)
}

export const edgesText = ([left, right]: readonly [EdgeView, EdgeView]): string => {
  const [a, b] = [edgeText(left), edgeText(right)]
  return a === b
    ? `both of its edges mirror ${a}`
    : `its camera-left edge mirrors ${a}, its camera-right edge ${b}`
}
