/** Sets with things in the way, as the bounce and as the tracer of `tests/trace` take them: they share no code for light. */
import { firstLight } from '../../../src/light/bounce/first-light.js'
import { gatherFrom } from '../../../src/light/bounce/gather.js'
import { type Mesh, meshOf } from '../../../src/light/bounce/mesh.js'
import { radiosity } from '../../../src/light/bounce/radiosity.js'
import { carrierOf, type Transfer, transferOf } from '../../../src/light/bounce/transfer.js'
import type { Receptor } from '../../../src/light/receptor.js'
import type { Source } from '../../../src/light/source.js'
import { type Blocker, blockersOf } from '../../../src/light/visibility/blockers.js'
import { outlookFrom } from '../../../src/light/visibility/outlook.js'
import { visibleResponse } from '../../../src/light/visibility/visible.js'
import { capsule } from '../../../src/scene/capsule.js'
import type { SceneSurface, Solid } from '../../../src/scene/scene.js'
import { cornersOf } from '../../../src/scene/solids.js'
import { cross, type Vec3 } from '../../../src/scene/vector.js'
import { Bodies, type Body, black } from '../../trace/bodies.js'
import { cosine, type Lamp } from '../../trace/lamps.js'
import { Tracer } from '../../trace/trace.js'
import { matte, rectangle } from './rooms.js'

export interface TestSet {
  readonly surfaces: readonly SceneSurface[]
  readonly solids: readonly Solid[]
  readonly sources: readonly Source[]
  /** What matters besides the sources. */
  readonly near?: readonly Vec3[]
}

const solid = (name: string, of: Solid['of'], body: Solid['body']): Solid => ({ name, of, pointer: '', body })

/** A person of 1.7 m: head and body, black, at this place and turned so far from looking along -y. */
export const person = ([x, y]: readonly [number, number], turn = 0): readonly Solid[] => {
  const across: Vec3 = [Math.cos(turn), Math.sin(turn), 0]
  return [
    solid('person', 'figure', {
      shape: 'capsule',
      capsule: capsule([x, y, 1.56], [x, y, 1.59], 0.08, 0.1, 0.11, across),
    }),
    solid('person', 'figure', {
      shape: 'capsule',
      capsule: capsule([x, y, 0.14], [x, y, 1.3], 0.23, 0.14, 0.14, across),
    }),
  ]
}

/** A flat panel: what gives light and what stands in its way. `toward` need not be of unit length. */
export const panel = (
  name: string,
  centre: Vec3,
  toward: Vec3,
  width: number,
  height: number,
  front = 0.8,
  back = front,
  transmits = 0,
): { readonly surfaces: readonly SceneSurface[]; readonly solids: readonly Solid[] } => {
  const size = Math.hypot(...toward)
  const normal: Vec3 = [toward[0] / size, toward[1] / size, toward[2] / size]
  const side = cross(Math.abs(normal[2]) > 0.9 ? [0, 1, 0] : [0, 0, 1], normal)
  const long = Math.hypot(...side)
  const across: Vec3 = [side[0] / long, side[1] / long, side[2] / long]
  const surface = rectangle(name, centre, normal, across, width, height, front, {
    path: 'panels',
    back: matte(back),
    transmits,
  })
  const { face } = surface
  return {
    surfaces: [surface],
    solids: [solid(name, 'panel', { shape: 'plate', face, corners: cornersOf(face) })],
  }
}

export interface Solved {
  readonly set: TestSet
  readonly mesh: Mesh
  readonly blockers: readonly Blocker[]
  readonly transfer: Transfer
  readonly first: readonly Float64Array[]
  readonly out: readonly Float64Array[]
  /** Exposure by source: straight, and thrown back. */
  at(receptor: Receptor): { readonly direct: number[]; readonly bounced: number[] }
}

export const solve = (set: TestSet, budget?: number): Solved => {
  const blockers = blockersOf(set.solids)
  const near = [
    ...set.sources.flatMap((one) => (one.kind === 'area' ? [one.face.centre] : [])),
    ...(set.near ?? []),
  ]
  const mesh = meshOf(set.surfaces, near, budget)
  const transfer = transferOf(mesh, blockers)
  const first = set.sources.map((source) => firstLight(mesh, source, blockers))
  const out = first.map((one) => radiosity(mesh, transfer, one))
  return {
    set,
    mesh,
    blockers,
    transfer,
    first,
    out,
    at: (receptor) => {
      const outlook = outlookFrom(receptor, blockers)
      const weights = gatherFrom(mesh, outlook)
      return {
        direct: set.sources.map((source) => visibleResponse(source, outlook)),
        bounced: out.map((one) => one.reduce((sum, given, side) => sum + given * weights[side]!, 0)),
      }
    },
  }
}

/** The same set for the tracer. Surfaces first: where one lies on a plate the surface is met. */
export const tracerOf = ({ surfaces, solids, sources }: TestSet, seed = 1): Tracer =>
  new Tracer(
    new Bodies([
      ...surfaces.map(
        (one): Body => ({
          name: one.name,
          shape: { shape: 'rectangle', face: one.face },
          matte: {
            front: one.front.reflectance,
            back: one.back?.reflectance ?? 0,
            transmits: one.transmits,
          },
        }),
      ),
      ...solids.map(
        ({ name, body }): Body => ({
          name,
          shape: body.shape === 'plate' ? { shape: 'rectangle', face: body.face } : body,
          matte: black,
        }),
      ),
    ]),
    sources.map((source, i): Lamp => {
      if (source.kind === 'parallel') return { name: `${i}`, from: source.toward }
      if (source.kind === 'uniform') throw new Error('the tracer has no ambient light')
      return { name: `${i}`, face: source.face, pattern: cosine(source.pattern.cosine!, source.both) }
    }),
    seed,
  )

/** Both totals, and the tracer's parts, for all sources at strength 1. */
export const compare = (solved: Solved, tracer: Tracer, receptor: Receptor, on?: number) => {
  const { at, normal, kind, against } = receptor
  const mine = solved.at(receptor)
  const traced = tracer.at(
    { at, normal, kind, ...(against === undefined ? {} : { against }), ...(on === undefined ? {} : { on }) },
    solved.set.sources.map(() => 1),
    { paths: 256, fewest: 16, most: 200, error: 0.007 },
  )
  const sum = (all: Iterable<number>): number => [...all].reduce((a, b) => a + b, 0)
  const total = sum(mine.direct) + sum(mine.bounced)
  return {
    off: Math.log2(total / traced.total),
    offBounced: Math.log2(sum(mine.bounced) / sum(traced.indirect)),
    direct: [sum(mine.direct), sum(traced.direct)],
    bounced: [sum(mine.bounced), sum(traced.indirect)],
    total: traced.total,
    error: traced.error,
  }
}

/** Form factors of all sides of patches, row by row: what arrives at each where only the column's gives out 1. */
export const between = (mesh: Mesh, transfer: Transfer): readonly Float64Array[] => {
  const count = 2 * mesh.patches.length
  const { carry } = carrierOf(mesh, transfer)
  const rows = Array.from({ length: count }, () => new Float64Array(count))
  const given = new Float64Array(count)
  const arrives = new Float64Array(count)
  for (let k = 0; k < count; k++) {
    given.fill(0)
    given[k] = 1
    carry(given, arrives)
    for (let i = 0; i < count; i++) rows[i]![k] = arrives[i]!
  }
  return rows
}
