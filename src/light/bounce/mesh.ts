/**
 * The surfaces cut into patches over which bounced light is taken as even: near-square cells, finer near what matters.
 * All cuts are halves about a middle, so that a mirrored set has a mirrored mesh.
 */
import type { Face, SceneSurface } from '../../scene/scene.js'
import type { Vec3 } from '../../scene/vector.js'
import { enclosingPatches } from './enclosure.js'
import { type Layout, layOut } from './layout.js'
import type { Patch } from './patch.js'

/** Side 2i is the front of patch i, side 2i + 1 its back. */
export interface Mesh {
  readonly patches: readonly Patch[]
  /** The patches' geometry as plain columns. */
  readonly layout: Layout
  /** Sides that light reaches, in order: all fronts, and the backs that give back or let through something. */
  readonly sides: Int32Array
  /** By patch, 1 where it is part of a closed box around the set; all 0 where there is no such box. */
  readonly encloses: Uint8Array
  /** True where light cannot leave the set. */
  readonly closed: boolean
}

/** As many patches as a room with a few panels is worth. */
const usualBudget = 220
/** However crowded the set: the work grows with the square. Only the surfaces themselves can be more. */
const hardBudget = 600

/** Metres: no patch is longer, where there is room for as many, and none is cut below the shorter one. */
const longest = 1.3
const shortest = 0.12
/** A patch may be this long against its distance to what matters. */
const perDistance = 0.5
/** Metres: what lies so near to a surface's own plane neither lights it nor sees it. */
const inPlane = 0.02
/** Metres: rectangles thinner than this give back nothing. */
const thinnest = 1e-6

/**
 * @param near places in metres that light comes from or that are metered; the mesh is finer around them.
 * @param budget about how many patches at most; over it, all are cut coarser alike.
 */
export const meshOf = (
  surfaces: readonly SceneSurface[],
  near: readonly Vec3[],
  budget = usualBudget,
): Mesh => {
  const whole = surfaces.filter(({ face }) => face.width > thinnest && face.height > thinnest)
  const most = Math.min(budget, hardBudget)
  let coarser = 1
  let cells = whole.map((surface) => cellsOf(surface.face, near, coarser, most))
  while (coarser < 64 && cells.reduce((sum, of) => sum + of.length, 0) > most) {
    coarser *= 2 ** 0.25
    cells = whole.map((surface) => cellsOf(surface.face, near, coarser, most))
  }
  const patches = whole.flatMap((surface, i) => cells[i]!.map((cell) => patchOf(surface, cell)))
  const encloses = enclosingPatches(patches)
  return {
    patches,
    layout: layOut(patches),
    sides: Int32Array.from(patches.flatMap(litSides)),
    encloses: encloses ?? new Uint8Array(patches.length),
    closed: encloses !== undefined,
  }
}

const litSides = ({ surface }: Patch, i: number): number[] =>
  surface.back === undefined && surface.transmits === 0 ? [2 * i] : [2 * i, 2 * i + 1]

/** A cell on its face: its middle along across and up, and half its lengths, in metres. */
interface Cell {
  readonly u: number
  readonly v: number
  readonly a: number
  readonly b: number
}

const cellsOf = (face: Face, near: readonly Vec3[], coarser: number, most: number): readonly Cell[] => {
  const { width, height } = face
  const places = near.map((at) => onFace(face, at)).filter(({ z }) => Math.abs(z) > inPlane)
  const found: Cell[] = []
  const cut = (cell: Cell): void => {
    const long = 2 * Math.max(cell.a, cell.b)
    const tooLong =
      long > longest * coarser ||
      (long > shortest * coarser && places.some((at) => long > perDistance * coarser * distanceTo(cell, at)))
    // More than the whole mesh may have is too many already: the next round is coarser.
    if (!tooLong || found.length > most) found.push(cell)
    else halved(cell).forEach(cut)
  }
  const across = Math.min(32, Math.max(1, Math.round(width / height)))
  const up = Math.min(32, Math.max(1, Math.round(height / width)))
  for (let i = 0; i < across; i++)
    for (let j = 0; j < up; j++)
      cut({
        u: (i - (across - 1) / 2) * (width / across),
        v: (j - (up - 1) / 2) * (height / up),
        a: width / across / 2,
        b: height / up / 2,
      })
  return found
}

const halved = ({ u, v, a, b }: Cell): readonly Cell[] => {
  const half = { a: a / 2, b: b / 2 }
  return [
    { u: u - a / 2, v: v - b / 2, ...half },
    { u: u + a / 2, v: v - b / 2, ...half },
    { u: u - a / 2, v: v + b / 2, ...half },
    { u: u + a / 2, v: v + b / 2, ...half },
  ]
}

interface OnFace {
  readonly u: number
  readonly v: number
  readonly z: number
}

const onFace = ({ centre, across, up, normal }: Face, at: Vec3): OnFace => {
  const x = at[0] - centre[0]
  const y = at[1] - centre[1]
  const z = at[2] - centre[2]
  return {
    u: x * across[0] + y * across[1] + z * across[2],
    v: x * up[0] + y * up[1] + z * up[2],
    z: x * normal[0] + y * normal[1] + z * normal[2],
  }
}

const distanceTo = ({ u, v, a, b }: Cell, at: OnFace): number => {
  const aside = Math.max(0, Math.abs(at.u - u) - a)
  const above = Math.max(0, Math.abs(at.v - v) - b)
  return Math.sqrt(aside * aside + above * above + at.z * at.z)
}

const patchOf = (surface: SceneSurface, { u, v, a, b }: Cell): Patch => {
  const { face } = surface
  const { centre, across, up } = face
  return {
    surface,
    face: {
      ...face,
      centre: [
        centre[0] + (u * across[0] + v * up[0]),
        centre[1] + (u * across[1] + v * up[1]),
        centre[2] + (u * across[2] + v * up[2]),
      ],
      width: (2 * a) as Face['width'],
      height: (2 * b) as Face['height'],
    },
    area: 4 * a * b,
  }
}
