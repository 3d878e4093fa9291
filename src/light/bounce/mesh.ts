/**
 * The surfaces cut into patches over which light given back is taken as even: near-square cells, each halved both ways
 * until it is small enough, finer near what matters. The cells that were cut stay as a tree over the patches, so that
 * what is far apart can be taken together.
 *
 * All cuts are halves about a middle, so that a mirrored set has a mirrored mesh.
 */
import type { Face, SceneSurface } from '../../scene/scene.js'
import type { Vec3 } from '../../scene/vector.js'
import { type Cell, type Fineness, facingOf, mustHalve, placesOn, quarters, squarish } from './cells.js'
import { enclosingCells } from './enclosure.js'
import { type Layout, layOut } from './layout.js'
import type { Patch } from './patch.js'

/** Side 2i is the front of patch i, side 2i + 1 its back; of the tree's cells likewise. */
export interface Mesh {
  readonly patches: readonly Patch[]
  readonly surfaces: readonly SceneSurface[]
  /** The patches' geometry as plain columns. */
  readonly layout: Layout
  readonly tree: Tree
  /** True where light cannot leave the set. */
  readonly closed: boolean
}

/** All cells, each before those that it was cut into; by cell: */
export interface Tree {
  readonly layout: Layout
  /** What it was cut from; −1 for a root. */
  readonly parent: Int32Array
  /** Two numbers a cell: how far its middle lies from that of what it was cut from, metres along across and up. */
  readonly offset: Float64Array
  /** Its patches: from the first on, before the second. */
  readonly from: Int32Array
  readonly to: Int32Array
  /** The next cell that is no part of it. */
  readonly next: Int32Array
  /** The patches of its surface, likewise. */
  readonly surfaceFrom: Int32Array
  readonly surfaceTo: Int32Array
  /** 1 where light reaches the front only: the back gives back and lets through nothing. */
  readonly oneSided: Uint8Array
  /** 1 where it is part of a closed box around the set; all 0 where there is no such box. */
  readonly encloses: Uint8Array
}

/** As many patches as a room with a few panels is worth. */
const usualBudget = 700
/** However crowded the set. Only the surfaces themselves can be more. */
const hardBudget = 2000

const usual: Fineness = { longest: 0.65, shortest: 0.12, perDistance: 0.5, perGap: 1 }
/**
 * Panels stand near to what is metered: a bright middle must not be lost in the mean. Where there are too many patches,
 * theirs are made coarser by the square root of what others are.
 */
const ofPanels: Fineness = { ...usual, shortest: 0.1, perDistance: 0.25 }
const coarserBy = 2 ** 0.125
const stepsToCoarse = 48
/** From here on panels too are cut coarser in full, and by whole steps: there are too many of them, or they are vast. */
const coarse = coarserBy ** stepsToCoarse
const coarsest = 2 ** 20
const ofPanelsCoarser = (coarser: number): number =>
  coarser <= coarse ? Math.sqrt(coarser) : coarser / Math.sqrt(coarse)

/** Metres: rectangles thinner than this give back nothing. */
const thinnest = 1e-6

/**
 * @param near places in metres that light comes from or that are metered; the mesh is finer around them.
 * @param budget about how many patches at most; over it, all are cut coarser.
 */
export const meshOf = (
  surfaces: readonly SceneSurface[],
  near: readonly Vec3[],
  budget = usualBudget,
): Mesh => {
  const whole = surfaces.filter(({ face }) => face.width > thinnest && face.height > thinnest)
  const inner = whole.filter(({ path }) => path !== 'room').map(({ face }) => face)
  const all = whole.map(({ face }) => face)
  const views = whole.map(({ face, path }) => ({
    roots: squarish(face),
    fineness: path === 'panels' ? ofPanels : usual,
    places: placesOn(face, near),
    facing: facingOf(face, path === 'room' ? inner : all),
  }))
  const most = Math.min(budget, hardBudget)
  const halves = (s: number, coarser: number) => (cell: Cell) =>
    mustHalve(
      cell,
      views[s]!.places,
      views[s]!.facing,
      views[s]!.fineness,
      views[s]!.fineness === ofPanels ? ofPanelsCoarser(coarser) : coarser,
    )
  /** Counts no further than past what may be. */
  const tooMany = (coarser: number): boolean => {
    let left = most
    const count = (cell: Cell, must: (cell: Cell) => boolean): void => {
      if (left < 0) return
      if (must(cell)) for (const part of quarters(cell)) count(part, must)
      else left--
    }
    views.forEach(({ roots }, s) => {
      const must = halves(s, coarser)
      for (const root of roots) count(root, must)
    })
    return left < 0
  }
  const coarser = leastCoarse(tooMany)

  const patches: Patch[] = []
  const cells: Patch[] = []
  const columns = {
    parent: [],
    offset: [],
    from: [],
    to: [],
    next: [],
    surfaceFrom: [],
    surfaceTo: [],
  } as Record<'parent' | 'offset' | 'from' | 'to' | 'next' | 'surfaceFrom' | 'surfaceTo', number[]>
  whole.forEach((surface, s) => {
    const must = halves(s, coarser)
    const grow = (cell: Cell, parent: number, of: Cell): void => {
      const here = cells.length
      const patch = patchOf(surface, cell)
      cells.push(patch)
      columns.parent.push(parent)
      columns.offset.push(cell.u - of.u, cell.v - of.v)
      columns.from.push(patches.length)
      columns.to.push(0)
      columns.next.push(0)
      if (must(cell)) for (const part of quarters(cell)) grow(part, here, cell)
      else patches.push(patch)
      columns.to[here] = patches.length
      columns.next[here] = cells.length
    }
    const [firstCell, firstPatch] = [cells.length, patches.length]
    for (const root of views[s]!.roots) grow(root, -1, root)
    for (let c = firstCell; c < cells.length; c++) {
      columns.surfaceFrom.push(firstPatch)
      columns.surfaceTo.push(patches.length)
    }
  })
  const encloses = enclosingCells(cells, columns.parent)
  return {
    patches,
    surfaces: whole,
    layout: layOut(patches),
    tree: {
      layout: layOut(cells),
      parent: Int32Array.from(columns.parent),
      offset: Float64Array.from(columns.offset),
      from: Int32Array.from(columns.from),
      to: Int32Array.from(columns.to),
      next: Int32Array.from(columns.next),
      surfaceFrom: Int32Array.from(columns.surfaceFrom),
      surfaceTo: Int32Array.from(columns.surfaceTo),
      oneSided: Uint8Array.from(cells, ({ surface }) =>
        surface.back === undefined && surface.transmits === 0 ? 1 : 0,
      ),
      encloses: encloses ?? new Uint8Array(cells.length),
    },
    closed: encloses !== undefined,
  }
}

/** The least step of coarseness that leaves no more than may be: the coarser the fewer. */
const leastCoarse = (tooMany: (coarser: number) => boolean): number => {
  if (!tooMany(1)) return 1
  let [few, many] = [stepsToCoarse, 0]
  if (tooMany(coarse)) {
    let coarser = 2 * coarse
    while (coarser < coarsest && tooMany(coarser)) coarser *= 2
    return coarser
  }
  while (few - many > 1) {
    const middle = (few + many) >> 1
    if (tooMany(coarserBy ** middle)) many = middle
    else few = middle
  }
  return coarserBy ** few
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
