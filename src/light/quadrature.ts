/**
 * The integral of a kernel over a front: Gauss–Legendre product rules, of as many points as the front's size against
 * its distance asks for, over parts that are halved until they are small enough. Rectangles in across and up; discs,
 * rings and octagons in polar coordinates, the whole disc at once by equal steps around it where it is small.
 */
import { tanCutOff } from './grid.js'
import { type Kernel, kernelOf, type LocalReceptor, sharpness } from './kernel.js'
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

const pointsFor = (ratio: number): number => {
  for (let count = 1; count < most; count++) if (ratio <= reach[count]!) return count
  return most
}

/** The same for a whole disc with so many rings of four times as many points. */
const discReach = [0, 0.3, 1.5, 2.5] as const

/** Halvings of one part: bounds the work for a receptor that all but touches the front. */
const deepest = 24

/** ∫ kernel dA over the front. Unit: that of the kernel, 1/m², times m². */
export const integrate = (source: AreaSource, receptor: LocalReceptor): number => {
  const { grid } = source.pattern
  const kernel = kernelOf(source.pattern, receptor)
  const root = Math.sqrt(sharpness(source.pattern, grid && tanCutOff(grid)))
  if (source.face.outline === 'rectangle') return overRectangle(source, receptor, kernel, root)
  return overRound(source, receptor, kernel, root)
}

/** An egg crate's window of view and its middle lines cut the rectangle first: inside the pieces all is smooth. */
const overRectangle = (source: AreaSource, receptor: LocalReceptor, kernel: Kernel, root: number): number => {
  const { grid } = source.pattern
  const view = grid?.kind === 'egg-crate' ? receptor.z * grid.tanCutOff : undefined
  const across = pieces(source.face.width / 2, receptor.x, view)
  const up = pieces(source.face.height / 2, receptor.y, view)
  let sum = 0
  for (let i = 0; i + 1 < across.length; i++)
    for (let j = 0; j + 1 < up.length; j++)
      sum += overCell(kernel, receptor, root, across[i]!, across[i + 1]!, up[j]!, up[j + 1]!, deepest)
  return sum
}

const pieces = (half: number, middle: number, view: number | undefined): readonly number[] => {
  if (view === undefined) return [-half, half]
  const from = Math.max(-half, middle - view)
  const to = Math.min(half, middle + view)
  if (from >= to) return []
  return middle > from && middle < to ? [from, middle, to] : [from, to]
}

const overCell = (
  kernel: Kernel,
  receptor: LocalReceptor,
  root: number,
  u0: number,
  u1: number,
  v0: number,
  v1: number,
  left: number,
): number => {
  const du = u1 - u0
  const dv = v1 - v0
  const gapU = receptor.x < u0 ? u0 - receptor.x : receptor.x > u1 ? receptor.x - u1 : 0
  const gapV = receptor.y < v0 ? v0 - receptor.y : receptor.y > v1 ? receptor.y - v1 : 0
  const perMetre = root / Math.sqrt(gapU * gapU + gapV * gapV + receptor.z * receptor.z)
  if (left > 0 && Math.max(du, dv) * perMetre > reach[most]) {
    if (du >= dv) {
      const u = (u0 + u1) / 2
      return (
        overCell(kernel, receptor, root, u0, u, v0, v1, left - 1) +
        overCell(kernel, receptor, root, u, u1, v0, v1, left - 1)
      )
    }
    const v = (v0 + v1) / 2
    return (
      overCell(kernel, receptor, root, u0, u1, v0, v, left - 1) +
      overCell(kernel, receptor, root, u0, u1, v, v1, left - 1)
    )
  }
  const across = gauss[pointsFor(du * perMetre)]!
  const up = gauss[pointsFor(dv * perMetre)]!
  let sum = 0
  for (const [u, wu] of across) {
    let line = 0
    for (const [v, wv] of up) line += wv * kernel(u0 + u * du, v0 + v * dv)
    sum += wu * line
  }
  return sum * du * dv
}

/** Discs, rings (ellipses too) and octagons, in polar coordinates on the unit circle around them. */
const overRound = (source: AreaSource, receptor: LocalReceptor, kernel: Kernel, root: number): number => {
  const { face } = source
  const a = face.width / 2
  const b = face.height / 2
  const radius = Math.max(a, b)
  const aside = Math.max(0, Math.hypot(receptor.x, receptor.y) - radius)
  const ratio = (2 * radius * root) / Math.hypot(aside, receptor.z)
  const inner = source.hole
  const octagon = face.outline === 'octagon'
  if (ratio <= discReach[octagon ? 2 : 3]) return overWhole(source, kernel, ratio, inner)
  const sides = octagon ? 8 : 4
  const turn = (2 * Math.PI) / sides
  const round: Round = { a, b, middle: 0, edge: octagon ? Math.cos(turn / 2) : undefined }
  let sum = 0
  for (let i = 0; i < sides; i++) {
    const middle = i * turn
    sum += overSector(
      kernel,
      receptor,
      root,
      { ...round, middle },
      inner,
      1,
      middle - turn / 2,
      middle + turn / 2,
      deepest,
    )
  }
  return sum
}

/** Small against its distance: rings of equal steps. An octagon counts as the disc of its area. */
const overWhole = (source: AreaSource, kernel: Kernel, ratio: number, inner: number): number => {
  const rings = ratio <= discReach[1] ? 1 : ratio <= discReach[2] ? 2 : 3
  const steps = 4 * rings
  const { face, area } = source
  const grown = Math.sqrt(area / ((Math.PI * face.width * face.height * (1 - inner * inner)) / 4))
  const a = (grown * face.width) / 2
  const b = (grown * face.height) / 2
  let sum = 0
  for (const [node, weight] of gauss[rings]!) {
    const share = Math.sqrt(inner * inner + (1 - inner * inner) * node)
    for (let i = 0; i < steps; i++) {
      const angle = ((i + 0.5) * 2 * Math.PI) / steps
      sum += weight * kernel(a * share * Math.cos(angle), b * share * Math.sin(angle))
    }
  }
  return (sum * area) / steps
}

interface Round {
  readonly a: number
  readonly b: number
  /** Azimuth of the middle of this side, and the octagon's edge there; undefined: a circle. */
  readonly middle: number
  readonly edge: number | undefined
}

const overSector = (
  kernel: Kernel,
  receptor: LocalReceptor,
  root: number,
  round: Round,
  s0: number,
  s1: number,
  angle0: number,
  angle1: number,
  left: number,
): number => {
  const { a, b, middle, edge } = round
  const ds = s1 - s0
  const turn = angle1 - angle0
  const centre = (s0 + s1) / 2
  const mid = (angle0 + angle1) / 2
  const out = Math.max(a, b) * ds
  const around = Math.max(a, b) * s1 * turn
  const span = Math.hypot(
    a * centre * Math.cos(mid) - receptor.x,
    b * centre * Math.sin(mid) - receptor.y,
    receptor.z,
  )
  const perMetre = root / Math.max(receptor.z, span - Math.hypot(out, around) / 2)
  if (left > 0 && Math.max(out, around) * perMetre > reach[most]) {
    if (out >= around)
      return (
        overSector(kernel, receptor, root, round, s0, centre, angle0, angle1, left - 1) +
        overSector(kernel, receptor, root, round, centre, s1, angle0, angle1, left - 1)
      )
    return (
      overSector(kernel, receptor, root, round, s0, s1, angle0, mid, left - 1) +
      overSector(kernel, receptor, root, round, s0, s1, mid, angle1, left - 1)
    )
  }
  let sum = 0
  for (const [turned, wa] of gauss[pointsFor(around * perMetre)]!) {
    const angle = angle0 + turned * turn
    const rim = edge === undefined ? 1 : edge / Math.cos(angle - middle)
    const cosine = a * rim * Math.cos(angle)
    const sine = b * rim * Math.sin(angle)
    let line = 0
    for (const [share, ws] of gauss[Math.max(2, pointsFor(out * perMetre))]!) {
      const s = s0 + share * ds
      line += ws * s * kernel(s * cosine, s * sine)
    }
    sum += wa * rim * rim * line
  }
  return sum * ds * turn * a * b
}
