/** Highlights and edges of an object in words. */
import type { Highlight } from '../../picture/on-subject.js'
import type { Hit } from '../../scene/first-hit.js'
import type { Thing } from './things.js'

export interface OnSubject {
  readonly thing: Thing
  readonly highlight: Highlight
}

/** Share of the object's width. */
export const widthOf = ({ from, to }: Highlight): number => Math.min(1, (to[0] - from[0]) / 2)
/** Share of its height. */
export const heightOf = ({ from, to }: Highlight): number => Math.min(1, (to[1] - from[1]) / 2)

const percent = (share: number): string => (share < 0.005 ? 'under 1 %' : `${Math.round(share * 100)} %`)

/** `9 % of its width and all of its height`. */
export const sizeOn = (highlight: Highlight): string => {
  const height = heightOf(highlight)
  return `${percent(widthOf(highlight))} of its width and ${height > 0.98 ? 'all' : percent(height)} of its height`
}

/** Shares of the half width: nearer than this to the middle or to an edge. */
const near = { middle: 0.15, edge: 0.8 }

const aside = ({ from, to }: Highlight): number => (from[0] + to[0]) / 2

export const atEdge = (highlight: Highlight): boolean => Math.abs(aside(highlight)) > near.edge

export const whereOn = (highlight: Highlight): string => {
  const x = aside(highlight)
  const side = x < 0 ? 'camera-left' : 'camera-right'
  if (Math.abs(x) < near.middle) return 'down its middle'
  return atEdge(highlight)
    ? `along its ${side} edge`
    : `${Math.round(50 * (1 - Math.abs(x)))} % in from its ${side} edge`
}

/** What gives back less than this looks dark in gloss. */
export const dark = 0.1

/** A black card is seen as what is dark there, however it is lit. */
export const isDark = ({ thing }: OnSubject): boolean =>
  thing.of === 'panel' && thing.panel.surface.reflectance < dark

const edgeText = (hit: Hit | undefined): string => {
  if (hit === undefined) return 'nothing (dark)'
  const name =
    hit.on === 'light' || hit.on === 'panel'
      ? hit.name
      : hit.on === 'operator'
        ? 'whoever holds the camera'
        : `the ${hit.on === 'sweep' ? 'backdrop' : hit.name.replace('-', ' ')}`
  return hit.surface !== undefined && hit.surface.reflectance < dark ? `${name} (dark)` : name
}

export const edgesText = ([left, right]: readonly [Hit | undefined, Hit | undefined]): string => {
  const [a, b] = [edgeText(left), edgeText(right)]
  return a === b
    ? `both of its edges mirror ${a}`
    : `its camera-left edge mirrors ${a}, its camera-right edge ${b}`
}
