/** Light on surfaces, taken from their patches: fields that are known, and the same places gathered one by one. */
import { describe, expect, it } from 'vitest'
import { firstLight } from '../../../src/light/bounce/first-light.js'
import { gatherFrom } from '../../../src/light/bounce/gather.js'
import { type Mesh, meshOf } from '../../../src/light/bounce/mesh.js'
import { patchesRound } from '../../../src/light/bounce/on-surface.js'
import { radiosity } from '../../../src/light/bounce/radiosity.js'
import { carrierOf, transferOf } from '../../../src/light/bounce/transfer.js'
import type { Receptor } from '../../../src/light/receptor.js'
import { blockersOf } from '../../../src/light/visibility/blockers.js'
import { outlookFrom } from '../../../src/light/visibility/outlook.js'
import type { Solid } from '../../../src/scene/scene.js'
import type { Vec3 } from '../../../src/scene/vector.js'
import { frontAt } from '../fronts.js'
import { alike, box, rectangle, sequence } from './rooms.js'
import { panel, person } from './sets.js'

const onFloor = (x: number, y: number): Receptor => ({
  at: [x, y, 0],
  normal: [0, 0, 1],
  kind: 'flat',
  onSurface: true,
})
const roundAt = (mesh: Mesh, receptor: Receptor, solids: readonly Solid[] = []) =>
  patchesRound(mesh, outlookFrom(receptor, blockersOf(solids)))

/** What a field on the patches' middles is taken to be at a place. */
const taken = (mesh: Mesh, receptor: Receptor, field: (at: Vec3) => number): number => {
  const { sides, shares } = roundAt(mesh, receptor)!
  return sides.reduce((sum, side, k) => sum + shares[k]! * field(mesh.patches[side >> 1]!.face.centre), 0)
}

describe('between the middles of patches', () => {
  const floor = rectangle('floor', [0.3, -0.2, 0], [0, 0, 1], [1, 0, 0], 4, 3)
  const even = meshOf([floor], [])
  // Finer under one place, so that patches of several sizes meet.
  const mixed = meshOf([floor], [[0.8, 0.4, 0.3]])
  const places = (count: number, inset = 0) => {
    const next = sequence(5)
    return Array.from({ length: count }, () =>
      onFloor(0.3 + (4 - 2 * inset) * (next() - 0.5), -0.2 + (3 - 2 * inset) * (next() - 0.5)),
    )
  }

  it('a slope is kept up to the edges, whatever the sizes of patches', () => {
    const slope = ([x, y]: Vec3) => 5 + 2 * x - 3 * y
    expect(new Set(mixed.patches.map(({ area }) => area.toFixed(6))).size).toBeGreaterThan(2)
    for (const mesh of [even, mixed])
      for (const receptor of [...places(60), onFloor(2.3, 1.3), onFloor(-1.7, -1.7)])
        expect(taken(mesh, receptor, slope)).toBeCloseTo(slope(receptor.at), 9)
  })

  it('a bend is kept where patches are of one size', () => {
    const bend = ([x, y]: Vec3) => x * x - 2 * x * y + 3 * y * y
    for (const receptor of places(60, 1))
      expect(taken(even, receptor, bend)).toBeCloseTo(bend(receptor.at), 9)
  })

  it('one patch alone is even, one row runs along itself', () => {
    const one = meshOf([rectangle('card', [0, 0, 0], [0, 0, 1], [1, 0, 0], 0.1, 0.1)], [])
    expect(taken(one, onFloor(0.04, -0.03), () => 7)).toBeCloseTo(7, 12)
    const row = meshOf([rectangle('strip', [0, 0, 0], [0, 0, 1], [1, 0, 0], 2, 0.1)], [])
    for (const x of [-1, -0.3, 0.02, 0.97])
      expect(taken(row, onFloor(x, 0.04), ([along]) => 3 * along)).toBeCloseTo(3 * x, 9)
  })
})

describe('which places are taken from patches', () => {
  const mesh = meshOf(box(4, 5, 2.6, alike(0.6)), [])
  it('those that lie flat on a surface', () => {
    expect(roundAt(mesh, onFloor(2.5, 3))).toBeDefined()
    expect(roundAt(mesh, { ...onFloor(2.5, 3), kind: 'dome' })).toBeUndefined()
    expect(roundAt(mesh, { ...onFloor(2.5, 3), at: [2.5, 3, 0.01] })).toBeUndefined()
    expect(roundAt(mesh, { ...onFloor(2.5, 3), normal: [0, 0.6, 0.8] })).toBeUndefined()
  })
  it('but for those by something that stands there', () => {
    const board = panel('board', [3, 3, 0.5], [1, 0, 0], 1, 1).solids
    expect(roundAt(mesh, onFloor(3.1, 3), board)).toBeUndefined()
    expect(roundAt(mesh, onFloor(0.5, 1), board)).toBeDefined()
    expect(roundAt(mesh, onFloor(2.1, 2.6), person([2, 2.5]))).toBeUndefined()
  })
  it('and behind people who hide much of the room', () => {
    const behind: Receptor = { at: [2, 5, 1], normal: [0, -1, 0], kind: 'flat', onSurface: true }
    expect(roundAt(mesh, behind, person([2, 3.8]))).toBeDefined()
    const row = [1.4, 1.8, 2.2, 2.6].flatMap((x) => person([x, 3.8]))
    expect(roundAt(mesh, behind, row)).toBeUndefined()
  })
})

it('in a room with a person and a board, it is what is gathered at the place itself', () => {
  const board = panel('board', [3.2, 2.2, 1.1], [-1, 0.2, 0], 0.9, 1.4)
  const surfaces = [...box(4, 5, 2.6, [0.7, 0.3, 0.7, 0.7, 0.7, 0.8]), ...board.surfaces]
  const blockers = blockersOf([...person([2, 2.5]), ...board.solids])
  const source = frontAt('rectangle', 0.6, 0.6, { centre: [0.8, 1.5, 2], normal: [0.6, 0.6, -0.4] })
  const mesh = meshOf(surfaces, [
    [-1.2, -1, 2],
    [0, -0.1, 1.56],
    [1.2, -0.3, 1.1],
  ])
  const transfer = transferOf(mesh, blockers)
  const out = radiosity(mesh, transfer, firstLight(mesh, source, blockers))
  const exposure = new Float64Array(out.length)
  carrierOf(mesh, transfer).carry(out, exposure)
  const next = sequence(8)
  const offs = Array.from({ length: 60 }, (_, i): number => {
    const [u, v] = [next() - 0.5, next() - 0.5]
    const receptor: Receptor =
      i % 2 === 0
        ? onFloor(2 + 3.9 * u, 2.5 + 4.9 * v)
        : { at: [2 + 3.9 * u, 5, 1.3 + 2.5 * v], normal: [0, -1, 0], kind: 'flat', onSurface: true }
    const outlook = outlookFrom(receptor, blockers)
    const round = patchesRound(mesh, outlook)
    if (round === undefined) return Number.NaN
    const got = round.sides.reduce((sum, side, k) => sum + round.shares[k]! * exposure[side]!, 0)
    const wanted = gatherFrom(mesh, outlook).reduce((sum, weight, side) => sum + weight * out[side]!, 0)
    return Math.log2(got / wanted)
  }).filter((off) => !Number.isNaN(off))
  expect(offs.length).toBeGreaterThan(30)
  expect(Math.max(...offs.map(Math.abs))).toBeLessThan(0.2)
  const sorted = offs.map(Math.abs).sort((a, b) => a - b)
  expect(sorted[Math.floor(sorted.length / 2)]).toBeLessThan(0.04)
})
