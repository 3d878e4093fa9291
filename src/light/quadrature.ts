/**
 * The integral of a kernel over a front: Gauss–Legendre product rules, of as many points as the front's size against
 * its distance asks for, over parts that are halved until they are small enough. Rectangles in across and up; discs,
 * rings and octagons in polar coordinates, the whole disc at once by equal steps around it where it is small.
 */
import { lengthOf } from '../scene/vector.js'
import { type Grain, grainOf, holds, jump, type Window } from './grain.js'
import { type Kernel, kernelOf, type LocalReceptor } from './kernel.js'
import { holeOf } from './outline.js'
import { clipByHorizon } from './polygon.js'
import { integratePolygon } from './quadrature-polygon.js'
import type { AreaSource } from './source.js'

/** Nodes and weights on 0 to 1, by number of points. */
const gauss: readonly (readonly (readonly [number, number])[])[] = [
  [],
  [[0.5, 1]],
  [
    [0.2113248654051871, 0.5],
    [0.7886751345948129, 0.5],
  ],
  [
    [0.1127016653792583, 0.2777777777777778],
    [0.5, 0.4444444444444444],
    [0.8872983346207417, 0.2777777777777778],
  ],
  [
    [0.06943184420297371, 0.17392742256872692],
    [0.33000947820757187, 0.3260725774312731],
    [0.6699905217924281, 0.3260725774312731],
    [0.9305681557970262, 0.17392742256872692],
  ],
]

/** Largest size times √sharpness over distance that so many points a side may take: about 0.1 % each. */
const reach = [0, 0.15, 0.7, 1.3, 2] as const
const most = 4

/** @param fine the part is as fine as parts get */
const pointsFor = (ratio: number, least: number, root: number, fine: boolean): number => {
  const enough = !fine ? most : root === jump ? 2 : 3
  for (let count = least; count < enough; count++) if (ratio <= reach[count]!) return count
  return enough
}

/** The same for a whole disc with so many rings of four times as many points. */
const discReach = [0, 0.3, 1.5, 2.5] as const

/** Halvings of one part: bounds the work for a receptor that all but touches the front. */
const deepest = 24

/** One integral: what is added up, for whom, and how fine. */
interface Sum {
  readonly kernel: Kernel
  readonly receptor: LocalReceptor
  readonly grain: Grain
  /** Fewest points a side. */
  readonly least: number
}

/** √sharpness from which a round front is cut to what its beam reaches of it, a polygon, to save the rest. */
const sharp = 8

/** ∫ kernel dA over the front. Unit: that of the kernel, 1/m², times m². */
export const integrate = (source: AreaSource, receptor: LocalReceptor): number => {
  const { outline, hole, pattern, face } = source
  const kernel = kernelOf(pattern, receptor)
  const seen = receptor.horizon
    ? clipByHorizon(outline, receptor.x, receptor.y, receptor.z, receptor.nx, receptor.ny, receptor.nz)
    : outline
  if (seen.length === 0) return 0
  const rectangle = face.outline === 'rectangle'
  const whole = seen === outline
  const grain = grainOf(source, receptor, !(rectangle && whole))
  if (rectangle && whole) {
    const least = pattern.grid === undefined ? 1 : 2
    return overRectangle(source, { kernel, receptor, grain, least })
  }
  if (whole && (grain.root < sharp || grain.window === undefined || holds(grain.window, face)))
    return overRound(source, { kernel, receptor, grain, least: 1 })
  const lit = integratePolygon(seen, receptor, kernel, grain)
  if (hole === 0) return lit
  const { x, y, z, nx, ny, nz } = receptor
  const dark = receptor.horizon ? clipByHorizon(holeOf(source), x, y, z, nx, ny, nz) : holeOf(source)
  return Math.max(0, lit - integratePolygon(dark, receptor, kernel, grain))
}

/** A beam's or grid's window of view cuts the rectangle first, and lines through its middle, where egg crates bend and planes of a table meet. */
const overRectangle = ({ pattern, face }: AreaSource, sum: Sum): number => {
  const { x, y } = sum.receptor
  const window = sum.grain.window ?? (pattern.table === undefined ? undefined : everywhere)
  const across = window === undefined ? side(face.width) : pieces(face.width, x, window.u0, window.u1)
  const up = window === undefined ? side(face.height) : pieces(face.height, y, window.v0, window.v1)
  let whole = 0
  for (let i = 0; i + 1 < across.length; i++)
    for (let j = 0; j + 1 < up.length; j++)
      whole += overCell(sum, across[i]!, across[i + 1]!, up[j]!, up[j + 1]!, deepest)
  return whole
}

const everywhere: Window = {
  u0: Number.NEGATIVE_INFINITY,
  u1: Number.POSITIVE_INFINITY,
  v0: Number.NEGATIVE_INFINITY,
  v1: Number.POSITIVE_INFINITY,
}

const side = (size: number): readonly number[] => [-size / 2, size / 2]

const pieces = (size: number, middle: number, least: number, most: number): readonly number[] => {
  const from = Math.max(-size / 2, least)
  const to = Math.min(size / 2, most)
  if (from >= to) return []
  return middle > from && middle < to ? [from, middle, to] : [from, to]
}

const overCell = (sum: Sum, u0: number, u1: number, v0: number, v1: number, left: number): number => {
  const { kernel, receptor, grain, least } = sum
  const du = u1 - u0
  const dv = v1 - v0
  const gapU = receptor.x < u0 ? u0 - receptor.x : receptor.x > u1 ? receptor.x - u1 : 0
  const gapV = receptor.y < v0 ? v0 - receptor.y : receptor.y > v1 ? receptor.y - v1 : 0
  const span = Math.sqrt(gapU * gapU + gapV * gapV + receptor.z * receptor.z)
  const root = grain.rootOver(u0, u1, v0, v1)
  if (root === 0) return 0
  const perMetre = root / span
  const size = Math.max(du, dv)
  const fine = size <= grain.finest && size * grain.root <= reach[most] * span
  if (left > 0 && size * perMetre > reach[most] && !fine) {
    if (du >= dv) {
      const u = (u0 + u1) / 2
      return overCell(sum, u0, u, v0, v1, left - 1) + overCell(sum, u, u1, v0, v1, left - 1)
    }
    const v = (v0 + v1) / 2
    return overCell(sum, u0, u1, v0, v, left - 1) + overCell(sum, u0, u1, v, v1, left - 1)
  }
  const up = gauss[pointsFor(dv * perMetre, least, root, fine)]!
  let whole = 0
  for (const [u, wu] of gauss[pointsFor(du * perMetre, least, root, fine)]!) {
    let line = 0
    for (const [v, wv] of up) line += wv * kernel(u0 + u * du, v0 + v * dv)
    whole += wu * line
  }
  return whole * du * dv
}

/** Discs, rings (ellipses too) and octagons, in polar coordinates on the unit circle around them. */
const overRound = (source: AreaSource, sum: Sum): number => {
  const { face, hole } = source
  const { receptor } = sum
  const a = face.width / 2
  const b = face.height / 2
  const radius = Math.max(a, b)
  const aside = Math.max(0, lengthOf(receptor.x, receptor.y, 0) - radius)
  const root = sum.grain.rootOver(-a, a, -b, b)
  if (root === 0) return 0
  const ratio = (2 * radius * root) / lengthOf(aside, receptor.z, 0)
  const octagon = face.outline === 'octagon'
  if (ratio <= discReach[octagon ? 2 : 3]) return overWhole(source, sum.kernel, ratio)
  const sides = octagon ? 8 : 4
  const turn = (2 * Math.PI) / sides
  const edge = octagon ? Math.cos(turn / 2) : undefined
  let whole = 0
  for (let i = 0; i < sides; i++) {
    const middle = i * turn
    whole += overSector(sum, { a, b, middle, edge }, hole, 1, middle - turn / 2, middle + turn / 2, deepest)
  }
  return whole
}

/** Small against its distance: rings of equal steps. An octagon counts as the disc of its area. */
const overWhole = ({ face, area, hole }: AreaSource, kernel: Kernel, ratio: number): number => {
  const rings = ratio <= discReach[1] ? 1 : ratio <= discReach[2] ? 2 : 3
  const steps = 4 * rings
  const dark = hole * hole
  const grown = Math.sqrt(area / (Math.PI * (1 - dark) * face.width * face.height))
  const a = grown * face.width
  const b = grown * face.height
  let whole = 0
  for (const [node, weight] of gauss[rings]!) {
    const share = Math.sqrt(dark + (1 - dark) * node)
    for (let i = 0; i < steps; i++) {
      const angle = ((i + 0.5) * 2 * Math.PI) / steps
      whole += weight * kernel(a * share * Math.cos(angle), b * share * Math.sin(angle))
    }
  }
  return (whole * area) / steps
}

interface Round {
  readonly a: number
  readonly b: number
  /** Azimuth of the middle of this side, and how near the octagon's edge comes there; undefined: a circle. */
  readonly middle: number
  readonly edge: number | undefined
}

const overSector = (
  sum: Sum,
  round: Round,
  s0: number,
  s1: number,
  angle0: number,
  angle1: number,
  left: number,
): number => {
  const { kernel, receptor, grain } = sum
  const { a, b, middle, edge } = round
  const ds = s1 - s0
  const turn = angle1 - angle0
  const s = (s0 + s1) / 2
  const angle = (angle0 + angle1) / 2
  const radius = Math.max(a, b)
  const out = radius * ds
  const around = radius * s1 * turn
  const [u, v] = [a * s * Math.cos(angle), b * s * Math.sin(angle)]
  const half = lengthOf(out, around, 0) / 2
  const span = Math.max(receptor.z, lengthOf(u - receptor.x, v - receptor.y, receptor.z) - half)
  const root = grain.rootOver(u - half, u + half, v - half, v + half)
  if (root === 0) return 0
  const perMetre = root / span
  const size = Math.max(out, around)
  const fine = size <= grain.finest && size * grain.root <= reach[most] * span
  if (left > 0 && size * perMetre > reach[most] && !fine)
    return out >= around
      ? overSector(sum, round, s0, s, angle0, angle1, left - 1) +
          overSector(sum, round, s, s1, angle0, angle1, left - 1)
      : overSector(sum, round, s0, s1, angle0, angle, left - 1) +
          overSector(sum, round, s0, s1, angle, angle1, left - 1)
  const outward = gauss[pointsFor(out * perMetre, 2, root, fine)]!
  let whole = 0
  for (const [turned, wa] of gauss[pointsFor(around * perMetre, 1, root, fine)]!) {
    const at = angle0 + turned * turn
    const rim = edge === undefined ? 1 : edge / Math.cos(at - middle)
    const rimU = a * rim * Math.cos(at)
    const rimV = b * rim * Math.sin(at)
    let line = 0
    for (const [share, ws] of outward) {
      const t = s0 + share * ds
      line += ws * t * kernel(t * rimU, t * rimV)
    }
    whole += wa * rim * rim * line
  }
  return whole * ds * turn * a * b
}
