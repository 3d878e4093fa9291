/**
 * White light by two numbers, as colour meters show it: correlated colour temperature, and the distance from the
 * black-body locus in the 1960 diagram (Duv of ANSI C78.377: green positive, magenta negative).
 *
 * Light of which only the temperature is stated is a black body up to 3600 K and daylight from 4500 K on; between, the
 * distance of daylight from the black body, some 0.003, grows in smoothly over mireds, so that no kelvin more or less makes
 * a step.
 */
import { as, type Kelvin } from '../../units/quantity.js'
import { apartUv, type Uv, uvOfXy, uvOfXyz, type Xyz, xyOfUv, xyzOfXy } from './chromaticity.js'
import { daylightXy, planckianUv, smooth } from './loci.js'
import { kelvinOf, miredOf } from './mired.js'

export interface White {
  readonly kelvin: Kelvin
  /** Distance from the black-body locus, green positive. */
  readonly duv: number
}

/** CIE 15: what lies further than this from the locus has no colour temperature. */
export const farthestWhite = 0.05

/** The ends between which temperatures are told, mired: 40000 and 1000 K. */
const ends = { from: 25, to: 1000 } as const
/** Half the step, mired, over which the direction of the locus is taken. */
const step = 0.5

/** A place on the black-body locus, with the unit direction toward green, square to it, and its run: uv for each mired. */
const onLocus = (mired: number) => {
  const at = planckianUv(kelvinOf(mired))
  const [a, b] = [planckianUv(kelvinOf(mired - step)), planckianUv(kelvinOf(mired + step))]
  const [du, dv] = [(b.u - a.u) / (2 * step), (b.v - a.v) / (2 * step)]
  const run = Math.hypot(du, dv)
  // Warmer runs to the right: green lies to the left of that.
  return { at, along: { u: du / run, v: dv / run }, green: { u: -dv / run, v: du / run }, run }
}

/** uv for each mired along the black-body locus: what turns a distance toward green into mireds that look as large. */
export const uvPerMired = (mired: number): number => onLocus(mired).run

/** Chromaticity at a distance from the black-body locus, green positive. */
export const uvOfWhite = (kelvin: number, duv: number): Uv => {
  const { at, green } = onLocus(miredOf(kelvin))
  return { u: at.u + duv * green.u, v: at.v + duv * green.v }
}

/** Tristimulus values with Y = 1. */
export const xyzOfWhite = ({ kelvin, duv }: White): Xyz => xyzOfXy(xyOfUv(uvOfWhite(kelvin, duv)))

/** Mired. */
const tiny = 1e-6
/** Nodes of the first search, mired. */
const nodes: readonly number[] = Array.from(
  { length: 40 },
  (_, i) => ends.from + (i * (ends.to - ends.from)) / 39,
)

/**
 * The nearest place on the black-body locus in the 1960 diagram, 1000 to 40000 K, and the distance to it. `farthestWhite`
 * says from where on the temperature means nothing.
 */
export const whiteOfUv = (uv: Uv): White => {
  let nearest = ends.from as number
  let least = Number.POSITIVE_INFINITY
  for (const node of nodes) {
    const { u, v } = planckianUv(kelvinOf(node))
    const apart = (u - uv.u) ** 2 + (v - uv.v) ** 2
    if (apart < least) [least, nearest] = [apart, node]
  }
  const width = (ends.to - ends.from) / 39
  let [from, to] = [Math.max(ends.from, nearest - width), Math.min(ends.to, nearest + width)]
  // Along the locus what is left changes its sign once: halved until it is nothing.
  for (let round = 0; round < 40; round++) {
    const middle = (from + to) / 2
    const { at, along } = onLocus(middle)
    if ((uv.u - at.u) * along.u + (uv.v - at.v) * along.v > 0) from = middle
    else to = middle
  }
  const mired = (from + to) / 2
  const { at, green } = onLocus(mired)
  const toGreen = (uv.u - at.u) * green.u + (uv.v - at.v) * green.v
  // Past an end of the locus the nearest place is that end, and nothing is square to it.
  const isEnd = mired - ends.from < tiny || ends.to - mired < tiny
  const duv = isEnd ? Math.sign(toGreen) * apartUv(uv, at) : toGreen
  return { kelvin: as<Kelvin>(kelvinOf(mired)), duv }
}

export const whiteOfXyz = (xyz: Xyz): White => whiteOfUv(uvOfXyz(xyz))

/** Mireds over which light of a stated temperature turns from daylight into a black body. */
const crossing = { daylight: 1e6 / 4500, blackBody: 1e6 / 3600 } as const

/** How far from the black-body locus light lies of which only the temperature is stated. */
export const usualDuv = (kelvin: number): number => {
  const mired = miredOf(kelvin)
  const share = smooth((crossing.blackBody - mired) / (crossing.blackBody - crossing.daylight))
  return share === 0 ? 0 : share * whiteOfUv(uvOfXy(daylightXy(kelvin))).duv
}
