/** How fine a front is to be added up for one receptor, part by part, and which part of it gives anything at all. */
import { evenly, type LocalReceptor, reachOf } from './kernel.js'
import { type Rough, roughOver } from './roughness.js'
import type { AreaSource, Pattern, TablePattern } from './source.js'

/** Bounds on the front's plane, metres along its `across` and `up`. */
export interface Window {
  readonly u0: number
  readonly u1: number
  readonly v0: number
  readonly v1: number
}

export interface Grain {
  /** √sharpness of what is smooth everywhere. */
  readonly root: number
  /** √sharpness within u0 to u1, v0 to v1 on the front; 0 where it gives nothing. */
  readonly rootOver: (u0: number, u1: number, v0: number, v1: number) => number
  /** Metres: what is rough is parted no finer. */
  readonly finest: number
  /** Nothing is given outside; undefined: anywhere. */
  readonly window: Window | undefined
}

/**
 * A front is parted in so many a side at most for the sake of a table that jumps; in fewer where it jumps all over, for of
 * many jumps the mean is what matters, and work has an end.
 */
const mostParts = 48
const leastParts = 12
/** Rises and falls of the whole brightness: more than these are jumps all over. */
const fewJumps = 3

/**
 * √sharpness for a bend of the slope by 1 a radian: rules of few points stumble over bends as if they were steeper than
 * they are. Measured.
 */
const ofBend = 6

export const grainOf = ({ pattern, face }: AreaSource, receptor: LocalReceptor, kinked: boolean): Grain => {
  const root = Math.sqrt(evenly(pattern, kinked))
  const window = windowOf(pattern, receptor)
  const { table } = pattern
  if (table === undefined) return { root, rootOver: () => root, finest: 0, window }
  const within = roughOn(table, receptor)
  const { most: seen, varied } = within(-face.width / 2, face.width / 2, -face.height / 2, face.height / 2)
  const jumps = Math.max(1, varied / (fewJumps * seen))
  return {
    root,
    rootOver: (u0, u1, v0, v1) => {
      const { most, slope, bend, ends } = within(u0, u1, v0, v1)
      if (most === 0) return 0
      if (ends) return jump
      return Math.max(Math.sqrt(root * root + Math.E * (slope / seen) ** 2), (ofBend * bend) / seen)
    },
    finest: Math.max(face.width, face.height) / Math.max(leastParts, mostParts / Math.sqrt(jumps)),
    window,
  }
}

/** √sharpness where light ends at once: parted as fine as it goes. */
export const jump = 1e9

const roughOn = (
  { table, lying }: TablePattern,
  { x, y, z, behind }: LocalReceptor,
): ((u0: number, u1: number, v0: number, v1: number) => Rough) => {
  const out = behind ? -z : z
  return lying
    ? (u0, u1, v0, v1) => roughOver(table, y - v1, y - v0, u0 - x, u1 - x, out)
    : (u0, u1, v0, v1) => roughOver(table, x - u1, x - u0, y - v1, y - v0, out)
}

/** Where the beam reaches, the grid lets through and the table has planes; undefined where that is everywhere. */
const windowOf = (pattern: Pattern, { x, y, z, behind }: LocalReceptor): Window | undefined => {
  const reach = reachOf(pattern)
  const { table } = pattern
  const planes = table === undefined || behind ? undefined : litPlanes(table)
  if (reach === undefined && planes === undefined) return undefined
  const [across, up] = reach ?? [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY]
  const window = { u0: x - z * across, u1: x + z * across, v0: y - z * up, v1: y + z * up }
  if (planes === undefined) return window
  const [side, from, to] = planes
  // From an element to the receptor is the other way as from the receptor to the element.
  return side === 'u'
    ? { ...window, u0: Math.max(window.u0, x - z * to), u1: Math.min(window.u1, x - z * from) }
    : { ...window, v0: Math.max(window.v0, y - z * to), v1: Math.min(window.v1, y - z * from) }
}

/** Planes about a pole end in lines on the front: tangents to its right or up that they lie between. */
const litPlanes = ({
  table: { type, planes },
  lying,
}: TablePattern): readonly ['u' | 'v', from: number, to: number] | undefined => {
  const [first, last] = [planes[0]!, planes[planes.length - 1]!]
  if (type === 'C' || (first <= -90 && last >= 90)) return undefined
  const from = first <= -90 ? Number.NEGATIVE_INFINITY : Math.tan((first * Math.PI) / 180)
  const to = last >= 90 ? Number.POSITIVE_INFINITY : Math.tan((last * Math.PI) / 180)
  const turned = (type === 'B') !== lying
  // Of type A they count toward the light's own right, and lying that points down.
  return type === 'A' ? [turned ? 'v' : 'u', -to, -from] : lying ? ['u', -to, -from] : ['v', from, to]
}

/** The whole front is in the window. */
export const holds = ({ u0, u1, v0, v1 }: Window, { width, height }: AreaSource['face']): boolean =>
  u0 <= -width / 2 && u1 >= width / 2 && v0 <= -height / 2 && v1 >= height / 2
