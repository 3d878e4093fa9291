/** How much of a soft front a flashgun's head lights from where it sits. */
import type { Light, Modifier } from '../../language/plan.js'
import { headAt, zoomOf } from '../../light/emission.js'
import { outlineOf } from '../../light/outline.js'
import type { HeadPattern } from '../../light/source.js'
import { softKinds } from './subtended.js'

export interface Filled {
  /** Share of the front whose light is within two stops of its middle. */
  readonly share: number
  /** Metres from the head to the front. */
  readonly throw: number
}

/** Stops under the middle at which the front counts as dark. */
const dark = 2
/** Of an umbrella's diameter: how far down its shaft the head sits. Common practice, no source. */
const shaft = 0.6
/** Columns and rows of looks at the front. */
const grid = 30

/**
 * Stops under the middle on a plane square to the head: its pattern, half a stop where either tangent is that of its
 * frame, and the law of the cosine, cos³ with the distance along the axis.
 */
export const stopsUnder = ({ tanAcross, tanUp }: HeadPattern, tx: number, ty: number): number =>
  0.5 * ((tx / tanAcross) ** 2 + (ty / tanUp) ** 2) + 1.5 * Math.log2(1 + tx * tx + ty * ty)

const isUmbrella = ({ kind }: Modifier): boolean => kind.endsWith('umbrella')

export const isZoomedInto = ({ unit, modifier }: Light): boolean =>
  unit.kind === 'flash' &&
  unit.strength.kind === 'guide-number' &&
  unit.strength.ratedWith === 'zoom' &&
  modifier !== undefined &&
  (softKinds.includes(modifier.kind) || modifier.kind === 'strip')

/** Undefined for what is no zoom head in a soft front. The head lies along the front's longer side. */
export const filled = (light: Light): Filled | undefined => {
  const { unit, modifier, zoom } = light
  if (!isZoomedInto(light) || modifier === undefined) return undefined
  if (unit.kind !== 'flash' || unit.strength.kind !== 'guide-number') return undefined
  const { width, height } = modifier.size
  const [long, short] = [Math.max(width, height), Math.min(width, height)]
  const away = isUmbrella(modifier) ? shaft * long : modifier.depth
  const head = headAt(unit.strength.table, zoomOf(unit, zoom))
  const { corners } = outlineOf({ outline: modifier.outline, width: long, height: short } as Parameters<
    typeof outlineOf
  >[0])
  let [lit, all] = [0, 0]
  for (let i = 0; i < grid; i++)
    for (let j = 0; j < grid; j++) {
      const x = ((i + 0.5) / grid - 0.5) * long
      const y = ((j + 0.5) / grid - 0.5) * short
      if (!isInside(corners, x, y)) continue
      all++
      if (stopsUnder(head, x / away, y / away) <= dark) lit++
    }
  return { share: lit / all, throw: away }
}

/** Of a convex outline, counter-clockwise. */
const isInside = (corners: readonly number[], x: number, y: number): boolean => {
  for (let i = 0, j = corners.length - 2; i < corners.length; j = i, i += 2) {
    const [ax, ay, bx, by] = [corners[j]!, corners[j + 1]!, corners[i]!, corners[i + 1]!]
    if ((bx - ax) * (y - ay) - (by - ay) * (x - ax) < 0) return false
  }
  return true
}
