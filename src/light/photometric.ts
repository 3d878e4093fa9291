/**
 * The light of a photometric table: intensity in a direction, bilinear in its two angles as tables are read (nothing
 * outside them), and its integrals, exact for what is interpolated so.
 */
import type { PhotometricTable, Tilt } from '../language/photometric/table.js'
import type { Face } from '../scene/scene.js'
import type { TablePattern } from './source.js'

const degrees = 180 / Math.PI

export interface Photometry {
  /** Candela that count as 1: those on the axis, or the most where there are next to none. */
  readonly reference: number
  /** Lumens of the whole. */
  readonly flux: number
  /** Any of it leaves behind the front's plane. */
  readonly both: boolean
  /** As `sharpness`, less the 2 of every kernel. */
  readonly steepness: number
}

const known = new WeakMap<PhotometricTable, Photometry>()

export const photometryOf = (table: PhotometricTable): Photometry => {
  const before = known.get(table)
  if (before !== undefined) return before
  const made = {
    reference: referenceOf(table),
    flux: fluxOf(table),
    both: leavesBehind(table),
    steepness: steepnessOf(table),
  }
  known.set(table, made)
  return made
}

// ---------------------------------------------------------------- in a direction

/** The last of rising angles that is not over this one, not the very last. */
const before = (angles: Float64Array, angle: number): number => {
  let low = 0
  let high = angles.length - 1
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (angles[middle]! <= angle) low = middle
    else high = middle
  }
  return low
}

const at = ({ vertical, horizontal, candela }: PhotometricTable, v: number, h: number): number => {
  const rows = vertical.length
  if (!(v >= vertical[0]! && v <= vertical[rows - 1]!)) return 0
  const i = before(vertical, v)
  const t = (v - vertical[i]!) / (vertical[i + 1]! - vertical[i]!)
  if (horizontal.length === 1) return (1 - t) * candela[i]! + t * candela[i + 1]!
  if (!(h >= horizontal[0]! && h <= horizontal[horizontal.length - 1]!)) return 0
  const j = before(horizontal, h)
  const s = (h - horizontal[j]!) / (horizontal[j + 1]! - horizontal[j]!)
  const k = j * rows + i
  return (
    (1 - s) * ((1 - t) * candela[k]! + t * candela[k + 1]!) +
    s * ((1 - t) * candela[k + rows]! + t * candela[k + rows + 1]!)
  )
}

/**
 * Candela toward a direction of any length: `along` horizontal angle 0, `aside` along 90 (both in the plane of the
 * front), `out` along its axis.
 */
export const candelaToward = (table: PhotometricTable, along: number, aside: number, out: number): number => {
  if (table.type === 'C') {
    const off = Math.sqrt(along * along + aside * aside)
    const round = table.horizontal.length === 1 ? 0 : Math.atan2(aside, along) * degrees
    return at(table, Math.atan2(off, out) * degrees, round < 0 ? round + 360 : round)
  }
  const level = Math.sqrt(along * along + out * out)
  return at(table, Math.atan2(aside, level) * degrees, Math.atan2(-along, out) * degrees)
}

/** Relative intensity toward what is so far across, up and out from an element of the front. */
export const tableToward = (pattern: TablePattern, across: number, up: number, out: number): number =>
  pattern.gain *
  (pattern.lying
    ? candelaToward(pattern.table, up, -across, out)
    : candelaToward(pattern.table, across, up, out))

/** What a tilted lamp gives of its light, by the way that it burns: between two angles in proportion, outside as at the nearest. */
export const tiltFactor = (tilt: Tilt | undefined, face: Face, lying: boolean): number => {
  if (tilt === undefined) return 1
  const { angles, factors } = tilt
  const lamp =
    tilt.lamp === 'upright' ? undefined : (tilt.lamp === 'along 0') === lying ? face.up : face.across
  const angle =
    (lamp === undefined
      ? Math.acos(Math.min(1, Math.max(-1, -face.normal[2])))
      : Math.asin(Math.min(1, Math.abs(lamp[2])))) * degrees
  const last = angles.length - 1
  if (angle <= angles[0]! || last === 0) return factors[0]!
  if (angle >= angles[last]!) return factors[last]!
  const i = before(angles, angle)
  const t = (angle - angles[i]!) / (angles[i + 1]! - angles[i]!)
  return (1 - t) * factors[i]! + t * factors[i + 1]!
}

// ---------------------------------------------------------------- as a whole

/** Less than this share of the most, and the axis is no measure of the light. */
const onAxis = 0.01

const referenceOf = (table: PhotometricTable): number => {
  const most = table.candela.reduce((largest, one) => Math.max(largest, one), 0)
  const ahead = table.type === 'C' ? nadir(table) : at(table, 0, 0)
  return ahead >= onAxis * most ? ahead : most
}

/** Planes may disagree by what measuring errs: their mean. */
const nadir = ({ vertical, horizontal, candela }: PhotometricTable): number => {
  if (vertical[0] !== 0) return 0
  const planes = Math.max(1, horizontal.length - 1)
  let sum = 0
  for (let h = 0; h < planes; h++) sum += candela[h * vertical.length]!
  return sum / planes
}

/** ∫ I dΩ: I is linear in the vertical angle between two rows, and in the horizontal one between two planes. */
const fluxOf = ({ type, vertical, horizontal, candela }: PhotometricTable): number => {
  const rows = vertical.length
  const planeFlux = (plane: number): number => {
    let sum = 0
    for (let i = 0; i + 1 < rows; i++) {
      const a = vertical[i]! / degrees
      const b = vertical[i + 1]! / degrees
      const even = type === 'C' ? Math.cos(a) - Math.cos(b) : Math.sin(b) - Math.sin(a)
      const rising =
        type === 'C'
          ? Math.sin(b) - Math.sin(a) - (b - a) * Math.cos(b)
          : Math.cos(b) - Math.cos(a) + (b - a) * Math.sin(b)
      const first = candela[plane * rows + i]!
      sum += first * even + ((candela[plane * rows + i + 1]! - first) * rising) / (b - a)
    }
    return sum
  }
  if (horizontal.length === 1) return 2 * Math.PI * planeFlux(0)
  const planes = Array.from(horizontal, (_, plane) => planeFlux(plane))
  // What is written past a whole turn to close it counts once.
  const [first, last] = [type === 'C' ? Math.max(0, horizontal[0]!) : horizontal[0]!, horizontal.at(-1)!]
  const end = type === 'C' ? Math.min(360, last) : last
  let whole = 0
  for (let j = 0; j + 1 < planes.length; j++) {
    const [a, b] = [horizontal[j]!, horizontal[j + 1]!]
    const [from, to] = [Math.max(a, first), Math.min(b, end)]
    const middle = ((from + to) / 2 - a) / (b - a)
    whole += ((to - from) / degrees) * ((1 - middle) * planes[j]! + middle * planes[j + 1]!)
  }
  return whole
}

const leavesBehind = ({ type, vertical, horizontal, candela }: PhotometricTable): boolean => {
  const rows = vertical.length
  const angles = type === 'C' ? vertical : horizontal
  const lit = (i: number): boolean =>
    type === 'C'
      ? horizontal.some((_, h) => candela[h * rows + i]! > 0)
      : vertical.some((_, v) => candela[i * rows + v]! > 0)
  return angles.some(
    (angle, i) =>
      (angle > 90 && (lit(i) || (i > 0 && lit(i - 1)))) ||
      (angle < -90 && (lit(i) || (i + 1 < angles.length && lit(i + 1)))),
  )
}

/**
 * A fall e^(−aθ²) is steepest by √(2a/e) of its peak, and has the exponent 2a of a cosine that falls alike: e times the
 * square of the steepest slope. Between planes, where they lie apart.
 */
const steepnessOf = (table: PhotometricTable): number => {
  const { type, vertical, horizontal, candela } = table
  const rows = vertical.length
  let steepest = 0
  let most = 0
  for (let h = 0; h < horizontal.length; h++)
    for (let v = 0; v < rows; v++) {
      const here = candela[h * rows + v]!
      most = Math.max(most, here)
      if (v + 1 < rows)
        steepest = Math.max(
          steepest,
          (Math.abs(candela[h * rows + v + 1]! - here) * degrees) / (vertical[v + 1]! - vertical[v]!),
        )
      const round = vertical[v]! / degrees
      const apart = type === 'C' ? Math.sin(round) : Math.cos(round)
      if (h + 1 < horizontal.length && apart > leastApart)
        steepest = Math.max(
          steepest,
          (Math.abs(candela[(h + 1) * rows + v]! - here) * degrees) /
            ((horizontal[h + 1]! - horizontal[h]!) * apart),
        )
    }
  return Math.min(mostSteep, Math.E * (steepest / most) ** 2)
}

/** Sine of the angle from the pole under which planes run together. */
const leastApart = 0.05
/** Of a table that jumps from one degree to the next: finer parts change nothing over 0.2 %, and work has an end. */
const mostSteep = 1000
