/** A rectangle cut into near-square cells, finer near places that matter. */
import type { Face } from '../../scene/scene.js'
import { dot, subtract, type Vec3 } from '../../scene/vector.js'

/** A cell on its face: its middle along across and up, and half its lengths, in metres. */
export interface Cell {
  readonly u: number
  readonly v: number
  readonly a: number
  readonly b: number
}

/** A place on a face's own axes, metres from its middle. */
export interface OnFace {
  readonly u: number
  readonly v: number
  readonly z: number
}

/** Another surface as it stands to a face: near and about parallel, each sees the other's edges. */
export interface Facing {
  /** Of the other's axes (across, up, out) in turn: where the face's middle lies along it, metres, and its own across and up. */
  readonly along: readonly (readonly [number, number, number])[]
  /** Half its lengths, metres. */
  readonly half: readonly [number, number]
}

export interface Fineness {
  /** Metres: no cell is longer, and none is cut below the shorter one for being near. */
  readonly longest: number
  readonly shortest: number
  /** A cell may be this long against its distance to what matters. */
  readonly perDistance: number
  /** And against that to a panel or backdrop before it. */
  readonly perGap: number
}

/** Metres: what lies so near to a surface's own plane neither lights it nor sees it. */
const inPlane = 0.02
/** A tie must fall alike in a mirrored set, whatever the last digit. */
const tie = 1 + 1e-9

export const placesOn = (face: Face, near: readonly Vec3[]): readonly OnFace[] => {
  const { centre, across, up, normal } = face
  return near
    .map((at) => {
      const x = at[0] - centre[0]
      const y = at[1] - centre[1]
      const z = at[2] - centre[2]
      return {
        u: x * across[0] + y * across[1] + z * across[2],
        v: x * up[0] + y * up[1] + z * up[2],
        z: x * normal[0] + y * normal[1] + z * normal[2],
      }
    })
    .filter(({ z }) => Math.abs(z) > inPlane)
}

/** A whole face in cells about as long as wide. */
export const squarish = ({ width, height }: Face): readonly Cell[] => {
  const across = Math.min(32, Math.max(1, Math.round((width / height) * tie)))
  const up = Math.min(32, Math.max(1, Math.round((height / width) * tie)))
  const [a, b] = [width / across / 2, height / up / 2]
  const cells: Cell[] = []
  for (let i = 0; i < across; i++)
    for (let j = 0; j < up; j++)
      cells.push({ u: (2 * i - (across - 1)) * a, v: (2 * j - (up - 1)) * b, a, b })
  return cells
}

export const mustHalve = (
  cell: Cell,
  places: readonly OnFace[],
  facing: readonly Facing[],
  { longest, shortest, perDistance, perGap }: Fineness,
  coarser: number,
): boolean => {
  const long = 2 * Math.max(cell.a, cell.b)
  if (long > longest * coarser * tie) return true
  if (long <= shortest * coarser * tie) return false
  const reach = long / (perDistance * coarser * tie)
  for (let k = 0; k < places.length; k++) if (nearerThan(cell, places[k]!, reach)) return true
  const gap = long / (perGap * coarser * tie)
  for (let k = 0; k < facing.length; k++) if (isWithin(cell, facing[k]!, gap)) return true
  return false
}

export const quarters = ({ u, v, a: wide, b: high }: Cell): readonly Cell[] => {
  const [a, b] = [wide / 2, high / 2]
  return [
    { u: u - a, v: v - b, a, b },
    { u: u + a, v: v - b, a, b },
    { u: u - a, v: v + b, a, b },
    { u: u + a, v: v + b, a, b },
  ]
}

const nearerThan = ({ u, v, a, b }: Cell, at: OnFace, reach: number): boolean => {
  const aside = Math.max(0, Math.abs(at.u - u) - a)
  const above = Math.max(0, Math.abs(at.v - v) - b)
  return aside * aside + above * above + at.z * at.z < reach * reach
}

/** Cosine between two planes from which on they count as facing. */
const parallel = 0.5

/** Those of the others that a face looks at across a gap. */
export const facingOf = (own: Face, others: readonly Face[]): readonly Facing[] =>
  others
    .filter((other) => other !== own && Math.abs(dot(own.normal, other.normal)) > parallel)
    .map((other) => {
      const off = subtract(own.centre, other.centre)
      return {
        along: [other.across, other.up, other.normal].map(
          (axis) => [dot(off, axis), dot(own.across, axis), dot(own.up, axis)] as const,
        ),
        half: [other.width / 2, other.height / 2],
      }
    })

/** Whether a cell's middle lies nearer to the other rectangle than this. */
const isWithin = ({ u, v }: Cell, { along, half }: Facing, reach: number): boolean => {
  const at = (axis: number): number => along[axis]![0] + u * along[axis]![1] + v * along[axis]![2]
  const z = at(2)
  if (Math.abs(z) < inPlane || Math.abs(z) >= reach) return false
  const aside = Math.max(0, Math.abs(at(0)) - half[0])
  const above = Math.max(0, Math.abs(at(1)) - half[1])
  return aside * aside + above * above + z * z < reach * reach
}
