/**
 * The light of a photometric table: intensity in a direction, bilinear in its two angles as tables are read (nothing
 * outside them), and its integrals, exact for what is interpolated so.
 */
import type { PhotometricTable, Tilt } from '../language/photometric/table.js'
import type { Face } from '../scene/scene.js'
import { before } from './roughness.js'
import type { TablePattern } from './source.js'

const degrees = 180 / Math.PI

export interface Photometry {
  /** Candela that count as 1: those on the axis, or the most where there are next to none. */
  readonly reference: number
  /** Lumens of the whole. */
  readonly flux: number
  /** Any of it leaves behind the front's plane. */
  readonly both: boolean
  /** As `sharpness`, less the 2 of every kernel; where it is steepest. */
  readonly steepness: number
}

const known = new WeakMap<PhotometricTable, Photometry>()

export const photometryOf = (table: PhotometricTable): Photometry => {
  const earlier = known.get(table)
  if (earlier !== undefined) return earlier
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

/** @param angle in the plane; `plane` about the pole; degrees */
const at = ({ inPlane, planes, candela }: PhotometricTable, angle: number, plane: number): number => {
  const rows = inPlane.length
  if (!(angle >= inPlane[0]! && angle <= inPlane[rows - 1]!)) return 0
  const i = before(inPlane, angle)
  const t = (angle - inPlane[i]!) / (inPlane[i + 1]! - inPlane[i]!)
  if (planes.length === 1) return (1 - t) * candela[i]! + t * candela[i + 1]!
  if (!(plane >= planes[0]! && plane <= planes[planes.length - 1]!)) return 0
  const j = before(planes, plane)
  const s = (plane - planes[j]!) / (planes[j + 1]! - planes[j]!)
  const k = j * rows + i
  return (
    (1 - s) * ((1 - t) * candela[k]! + t * candela[k + 1]!) +
    s * ((1 - t) * candela[k + rows]! + t * candela[k + rows + 1]!)
  )
}

/**
 * Candela toward a direction of any length, of a front that stands upright: `right` of who faces it, `up`, `out` along its
 * axis.
 */
export const candelaToward = (table: PhotometricTable, right: number, up: number, out: number): number => {
  switch (table.type) {
    case 'C': {
      const off = Math.sqrt(right * right + up * up)
      const round = table.planes.length === 1 ? 0 : Math.atan2(up, right) * degrees
      return at(table, Math.atan2(off, out) * degrees, round < 0 ? round + 360 : round)
    }
    case 'A': {
      const level = Math.sqrt(right * right + out * out)
      return at(table, Math.atan2(up, level) * degrees, Math.atan2(-right, out) * degrees)
    }
    case 'B': {
      const upright = Math.sqrt(up * up + out * out)
      return at(table, Math.atan2(-right, upright) * degrees, Math.atan2(up, out) * degrees)
    }
  }
}

/** Relative intensity toward what is so far across, up and out from an element of the front. */
export const tableToward = (pattern: TablePattern, across: number, up: number, out: number): number =>
  pattern.gain *
  (pattern.lying
    ? candelaToward(pattern.table, up, -across, out)
    : candelaToward(pattern.table, across, up, out))

/** What a tilted lamp gives of its light, by the way that it burns: between two angles in proportion, outside as at the nearest. */
export const tiltFactor = (tilt: Tilt, face: Face, lying: boolean): number => {
  const { angles, factors } = tilt
  const lamp =
    tilt.lamp === 'upright' ? undefined : (tilt.lamp === 'along width') === lying ? face.up : face.across
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
const nadir = ({ inPlane, planes, candela }: PhotometricTable): number => {
  if (inPlane[0] !== 0) return 0
  const count = Math.max(1, planes.length - 1)
  let sum = 0
  for (let p = 0; p < count; p++) sum += candela[p * inPlane.length]!
  return sum / count
}

/** ∫ I dΩ: I is linear in the angle within a plane, and from one plane to the next. */
const fluxOf = ({ type, inPlane, planes, candela }: PhotometricTable): number => {
  const rows = inPlane.length
  const planeFlux = (plane: number): number => {
    let sum = 0
    for (let i = 0; i + 1 < rows; i++) {
      const a = inPlane[i]! / degrees
      const b = inPlane[i + 1]! / degrees
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
  if (planes.length === 1) return 2 * Math.PI * planeFlux(0)
  const fluxes = Array.from(planes, (_, plane) => planeFlux(plane))
  // What is written past a whole turn to close it counts once.
  const [first, last] = [type === 'C' ? Math.max(0, planes[0]!) : planes[0]!, planes.at(-1)!]
  const end = type === 'C' ? Math.min(360, last) : last
  let whole = 0
  for (let j = 0; j + 1 < planes.length; j++) {
    const [a, b] = [planes[j]!, planes[j + 1]!]
    const [from, to] = [Math.max(a, first), Math.min(b, end)]
    const middle = ((from + to) / 2 - a) / (b - a)
    whole += ((to - from) / degrees) * ((1 - middle) * fluxes[j]! + middle * fluxes[j + 1]!)
  }
  return whole
}

/** Shares of the most: measuring errs by as much. */
const alike = 0.01

/** Its left gives other light than its right, as the light stands. */
export const isOneSided = (table: PhotometricTable, lying: boolean): boolean => {
  const least = alike * table.candela.reduce((largest, one) => Math.max(largest, one), 0)
  for (let off = 5; off < 90; off += 10)
    for (let round = 0; round < 360; round += 15) {
      const aside = Math.sin(off / degrees)
      const right = aside * Math.cos(round / degrees)
      const up = aside * Math.sin(round / degrees)
      const out = Math.cos(off / degrees)
      const here = candelaToward(table, right, up, out)
      const other = lying ? candelaToward(table, right, -up, out) : candelaToward(table, -right, up, out)
      if (Math.abs(here - other) > least) return true
    }
  return false
}

const leavesBehind = ({ type, inPlane, planes, candela }: PhotometricTable): boolean => {
  const rows = inPlane.length
  const angles = type === 'C' ? inPlane : planes
  const lit = (i: number): boolean =>
    type === 'C'
      ? planes.some((_, p) => candela[p * rows + i]! > 0)
      : inPlane.some((_, v) => candela[i * rows + v]! > 0)
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
  const { type, inPlane, planes, candela } = table
  const rows = inPlane.length
  let steepest = 0
  let most = 0
  for (let p = 0; p < planes.length; p++)
    for (let i = 0; i < rows; i++) {
      const here = candela[p * rows + i]!
      most = Math.max(most, here)
      if (i + 1 < rows)
        steepest = Math.max(
          steepest,
          (Math.abs(candela[p * rows + i + 1]! - here) * degrees) / (inPlane[i + 1]! - inPlane[i]!),
        )
      const angle = inPlane[i]! / degrees
      const apart = type === 'C' ? Math.sin(angle) : Math.cos(angle)
      if (p + 1 < planes.length && apart > leastApart)
        steepest = Math.max(
          steepest,
          (Math.abs(candela[(p + 1) * rows + i]! - here) * degrees) / ((planes[p + 1]! - planes[p]!) * apart),
        )
    }
  return Math.min(mostSteep, Math.E * (steepest / most) ** 2)
}

/** Sine of the angle from the pole under which planes run together. */
const leastApart = 0.05
/** Of a table that jumps from one degree to the next: what is steeper is looked at no closer, so that work has an end. */
const mostSteep = 1000
