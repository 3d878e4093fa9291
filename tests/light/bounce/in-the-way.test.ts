/**
 * Bounced light with panels and people in the way. Held by energy, by the furnace, by symmetry, and against the path
 * tracer of `tests/trace`, which shares no code with `src/light`.
 */
import { describe, expect, it } from 'vitest'
import { gatherFrom } from '../../../src/light/bounce/gather.js'
import { radiosity } from '../../../src/light/bounce/radiosity.js'
import { carrierOf } from '../../../src/light/bounce/transfer.js'
import type { Receptor } from '../../../src/light/receptor.js'
import type { Source } from '../../../src/light/source.js'
import { outlookFrom } from '../../../src/light/visibility/outlook.js'
import { surfaceToward } from '../../../src/scene/capsule.js'
import type { Capsule } from '../../../src/scene/scene.js'
import { cornersOf } from '../../../src/scene/solids.js'
import { add, cross, length, scale, subtract, unit, type Vec3 } from '../../../src/scene/vector.js'
import { frontAt } from '../fronts.js'
import { alike, box, rectangle, sequence } from './rooms.js'
import { between, compare, panel, person, solve, type TestSet, tracerOf } from './sets.js'

const walls = [0.7, 0.5, 0.7, 0.6, 0.3, 0.8]
const leaf = panel('leaf', [0.6, 2, 1.2], [1, -0.3, 0], 1.2, 2.3, 0.85, 0.05)
const low = panel('low', [2.3, 1.9, 0.7], [-0.4, 0, 1], 1, 0.8)
const paper = panel('paper', [1.5, 3.4, 1.3], [0, -1, 0], 2, 2.2)
const box60x90 = frontAt('rectangle', 0.6, 0.9, { centre: [2.4, 1, 1.9], normal: [-0.7, 0.9, -0.3] })
const dish = frontAt('disc', 0.2, 0.2, { centre: [0.6, 0.7, 1.5], normal: [0.4, 0.9, 0] })

const all = (...parts: readonly ReturnType<typeof panel>[]) => ({
  surfaces: parts.flatMap(({ surfaces }) => surfaces),
  solids: parts.flatMap(({ solids }) => solids),
})
const inRoom = (
  parts: readonly ReturnType<typeof panel>[],
  people: TestSet['solids'],
  sources: readonly Source[],
  rho: readonly number[] = walls,
): TestSet => {
  const { surfaces, solids } = all(...parts)
  return {
    surfaces: [...box(3, 4, 2.5, rho), ...surfaces],
    solids: [...solids, ...people],
    sources,
    near: [[1.5, 2, 1.6], ...parts.map((one) => one.surfaces[0]!.face.centre)],
  }
}

/** Places over a capsule with the area that each stands for, by turning about its axis and over both ends. */
const overCapsule = (
  capsule: Capsule,
): readonly { readonly at: Vec3; readonly normal: Vec3; readonly area: number }[] => {
  const span = subtract(capsule.to, capsule.from)
  const axis = unit(span)
  const [around, steps] = [12, 4]
  const found: { at: Vec3; normal: Vec3; area: number }[] = []
  const point = (turn: number, from: Vec3, rise: number) => {
    const flat = add(
      scale(capsule.acrossDirection, Math.cos(turn) * capsule.across),
      scale(cross(axis, capsule.acrossDirection), Math.sin(turn) * capsule.along),
    )
    return surfaceToward(
      capsule,
      from,
      add(scale(flat, Math.cos(rise)), scale(axis, Math.sin(rise) * capsule.cap)),
    )
  }
  const put = (a: Vec3, b: Vec3, c: Vec3, d: Vec3, middle: ReturnType<typeof point>): void => {
    const area = length(cross(subtract(c, a), subtract(d, b))) / 2
    found.push({ at: middle.at, normal: middle.normal, area })
  }
  for (let i = 0; i < around; i++) {
    const [t0, t1] = [i, i + 1].map((k) => (k * 2 * Math.PI) / around) as [number, number]
    const tm = (t0 + t1) / 2
    for (let j = 0; j < steps; j++) {
      const [f0, f1] = [j, j + 1].map((k) => add(capsule.from, scale(span, k / steps))) as [Vec3, Vec3]
      const fm = scale(add(f0, f1), 0.5)
      put(
        point(t0, f0, 0).at,
        point(t1, f0, 0).at,
        point(t1, f1, 0).at,
        point(t0, f1, 0).at,
        point(tm, fm, 0),
      )
    }
    for (const [end, way] of [
      [capsule.from, -1],
      [capsule.to, 1],
    ] as const)
      for (let j = 0; j < 3; j++) {
        const [r0, r1] = [j, j + 1].map((k) => (way * k * Math.PI) / 6) as [number, number]
        put(
          point(t0, end, r0).at,
          point(t1, end, r0).at,
          point(t1, end, r1).at,
          point(t0, end, r1).at,
          point(tm, end, (r0 + r1) / 2),
        )
      }
  }
  return found
}

describe('energy', () => {
  for (const [what, parts, people] of [
    ['panels', [leaf, low, paper], []],
    ['a person', [], person([1.5, 2.3], 0.3)],
    ['panels and two people', [leaf, low, paper], [...person([1.5, 2.3], 0.3), ...person([0.8, 1.1])]],
  ] as const)
    it(`that comes in is taken up by surfaces and bodies: ${what}`, () => {
      const solved = solve(inRoom(parts, people, [box60x90]))
      const { mesh, transfer, out, first } = solved
      const again = new Float64Array(out[0]!.length)
      carrierOf(mesh, transfer).carry(out[0]!, again)
      let kept = 0
      mesh.patches.forEach(({ surface, area }, i) => {
        for (const side of [0, 1]) {
          const rho = (side === 0 ? surface.front : surface.back)?.reflectance ?? 0
          kept += (1 - rho) * area * (first[0]![2 * i + side]! + again[2 * i + side]!)
        }
      })
      for (const { body } of people)
        if (body.shape === 'capsule')
          for (const { at, normal, area } of overCapsule(body.capsule)) {
            const { direct, bounced } = solved.at({ at, normal, kind: 'flat' })
            kept += area * (direct[0]! + bounced[0]!)
          }
      expect(kept / Math.PI).toBeGreaterThan(0.99)
      expect(kept / Math.PI).toBeLessThan(1.01)
    })

  it('of two lamps is the sum of each', () => {
    const solved = solve(inRoom([leaf, low], person([1.5, 2.3]), [box60x90, dish]))
    const { mesh, transfer, first, out } = solved
    const both = radiosity(
      mesh,
      transfer,
      first[0]!.map((one, k) => one + first[1]![k]!),
    )
    both.forEach((one, k) => {
      expect(Math.abs(one - out[0]![k]! - out[1]![k]!)).toBeLessThan(1e-3 * one + 1e-6)
    })
  })
})

describe('a furnace with a panel of the same grey in it', () => {
  const rho = 0.6
  const grey = [
    panel('leaf', [0.6, 2, 1.2], [1, -0.3, 0], 1.2, 2.3, rho),
    panel('paper', [1.5, 3.4, 1.3], [0, -1, 0], 2, 2.2, rho),
  ]
  const solved = solve(inRoom(grey, [], [], alike(rho)))
  const { mesh, transfer, blockers } = solved
  // Each side gives out 1 − ρ of its own: B = ρ (E₀ + E) with ρ E₀ = 1 − ρ.
  const own = new Float64Array(2 * mesh.patches.length)
  mesh.patches.forEach((_, i) => {
    own[2 * i] = (1 - rho) / rho
    if (mesh.patches[i]!.surface.back !== undefined) own[2 * i + 1] = (1 - rho) / rho
  })
  const out = radiosity(mesh, transfer, own)

  it('is of one radiance', () => {
    out.forEach((one, k) => {
      if (own[k]! > 0) expect(Math.abs(one - 1)).toBeLessThan(0.01)
    })
  })

  it('reads flat 1 and on a dome 2, anywhere and turned anyhow', () => {
    const random = sequence(5)
    for (let n = 0; n < 80; n++) {
      const at: Vec3 = [0.05 + 2.9 * random(), 0.05 + 3.9 * random(), 0.05 + 2.4 * random()]
      const z = 2 * random() - 1
      const turn = 2 * Math.PI * random()
      const r = Math.sqrt(1 - z * z)
      const normal: Vec3 = [r * Math.cos(turn), r * Math.sin(turn), z]
      const read = (receptor: Receptor): number =>
        gatherFrom(mesh, outlookFrom(receptor, blockers)).reduce((sum, one, k) => sum + one * out[k]!, 0)
      expect(Math.abs(read({ at, normal, kind: 'flat' }) - 1)).toBeLessThan(0.01)
      expect(Math.abs(read({ at, normal, kind: 'dome' }) - 2)).toBeLessThan(0.02)
      // Held against a plane on the same side, a dome takes what a dome on that plane does.
      expect(Math.abs(read({ at, normal, kind: 'dome', against: normal }) - 1.5)).toBeLessThan(0.02)
    }
  })
})

describe('form factors with things in the way', () => {
  const solved = solve(inRoom([leaf, low, paper], person([1.5, 2.3], 0.3), [box60x90]))
  const { mesh, transfer } = solved
  const { area } = mesh.layout
  const factors = between(mesh, transfer)

  it('are the same both ways: A F = A F', () => {
    factors.forEach((row, i) => {
      for (let j = 0; j < i; j++)
        expect(row[j]! * area[i >> 1]!).toBeCloseTo(factors[j]![i]! * area[j >> 1]!, 12)
    })
  })

  it('give no more than all, by rows and by columns', () => {
    const rows = new Float64Array(factors.length)
    carrierOf(mesh, transfer).carry(new Float64Array(rows.length).fill(1), rows)
    expect(Math.max(...rows)).toBeLessThan(1.0011)
    const columns = new Float64Array(factors.length)
    factors.forEach((row, i) => {
      row.forEach((one, j) => {
        columns[j]! += (one * area[i >> 1]!) / area[j >> 1]!
      })
    })
    // Taken one by one, no side counts less than nothing.
    expect(Math.max(...columns)).toBeLessThan(1.01)
  })
})

it('gives the mirrored answer in a mirrored set', () => {
  const mirror = ([x, y, z]: Vec3): Vec3 => [3 - x, y, z]
  const turned = ([x, y, z]: Vec3): Vec3 => [-x, y, z]
  const made = (at: (place: Vec3) => Vec3, way: (v: Vec3) => Vec3, rho: readonly number[]): TestSet => ({
    ...inRoom(
      [
        panel('leaf', at([0.6, 2, 1.2]), way([1, -0.3, 0]), 1.2, 2.3, 0.85, 0.05),
        panel('low', at([2.2, 1.9, 0.7]), way([-0.4, 0, 1]), 1, 0.8),
        panel('paper', at([1.6, 3.4, 1.3]), way([0, -1, 0]), 2, 2.2),
      ],
      person(at([1.4, 2.3, 0]).slice(0, 2) as [number, number], way([1, 0, 0])[0] * 0.3),
      [
        frontAt('rectangle', 0.6, 0.9, { centre: at([2.4, 1, 1.9]), normal: way([-0.7, 0.9, -0.3]) }),
        frontAt('rectangle', 0.3, 0.3, { centre: at([0.5, 0.4, 1.4]), normal: way([0.3, 1, 0]) }),
      ],
      rho,
    ),
    near: [at([1.5, 2, 1.6]), at([0.6, 2, 1.2]), at([2.2, 1.9, 0.7])],
  })
  const one = solve(
    made(
      (x) => x,
      (v) => v,
      walls,
    ),
  )
  const other = solve(made(mirror, turned, [walls[1]!, walls[0]!, ...walls.slice(2)]))
  const random = sequence(9)
  for (let n = 0; n < 60; n++) {
    const at: Vec3 = [0.02 + 2.96 * random(), 0.02 + 3.96 * random(), 0.02 + 2.46 * random()]
    const normal = unit([2 * random() - 1, 2 * random() - 1, 2 * random() - 1])
    const kind = n % 2 === 0 ? 'flat' : 'dome'
    const a = one.at({ at, normal, kind }).bounced
    const b = other.at({ at: mirror(at), normal: turned(normal), kind }).bounced
    a.forEach((got, k) => {
      expect(Math.abs(got - b[k]!)).toBeLessThan(1e-6 * got)
    })
  }
})

it('keeps to its budget in the most crowded set', () => {
  const random = sequence(7)
  const somewhere = (): [number, number] => [0.5 + 7 * random(), 0.5 + 9 * random()]
  const boards = Array.from({ length: 64 }, (_, i) =>
    panel(`board ${i}`, [...somewhere(), 1.2], [random() - 0.5, random() - 0.5, 0], 1, 2.2),
  )
  const { surfaces, solids } = all(...boards)
  const people = Array.from({ length: 40 }, () => person(somewhere())).flat()
  const lamps = Array.from({ length: 8 }, () =>
    frontAt('octagon', 0.9, 0.9, {
      centre: [...somewhere(), 2],
      normal: [random() - 0.5, random() - 0.5, -0.2],
    }),
  )
  const { mesh, transfer, out } = solve({
    surfaces: [...box(8, 10, 3, walls), ...surfaces],
    solids: [...solids, ...people],
    sources: lamps,
    near: boards.map((one) => one.surfaces[0]!.face.centre),
  })
  expect(mesh.patches.length).toBeLessThanOrEqual(700)
  // The pairs of all patches, both sides of them, would be over half a million.
  expect(transfer.links.shared.length).toBeLessThan(60_000)
  for (const one of out) expect(one.every((given) => Number.isFinite(given) && given >= 0)).toBe(true)
})

/** Of the places of a set those no more than six stops under the brightest, each within 0.1 stop of the tracer. */
const holds = (set: TestSet, places: readonly Receptor[]): void => {
  const solved = solve({ ...set, near: [...(set.near ?? []), ...places.map(({ at }) => at)] })
  const tracer = tracerOf(set)
  const found = places.map((place) => {
    const on = set.solids.findIndex(
      ({ body }) =>
        body.shape === 'capsule' && place.against !== undefined && nearCoat(body.capsule, place.at),
    )
    return compare(solved, tracer, place, on < 0 ? undefined : numberOf(tracer, set, on))
  })
  const key = Math.max(...found.map(({ total }) => total))
  found.forEach(({ off, total, error }, i) => {
    if (total < key / 64) return
    const { at, kind } = places[i]!
    expect(Math.abs(off), `${kind} at ${at.join(' ')}: ${off.toFixed(3)} ± ${error.toFixed(3)}`).toBeLessThan(
      0.1 + 2 * error,
    )
  })
}
const numberOf = (tracer: ReturnType<typeof tracerOf>, set: TestSet, solid: number): number => {
  const capsules = set.solids.filter(({ body }) => body.shape === 'capsule')
  const first = tracer.bodies.list.findIndex(({ shape }) => shape.shape === 'capsule')
  return first + capsules.indexOf(set.solids[solid]!)
}
const nearCoat = (capsule: Capsule, at: Vec3): boolean =>
  overCapsule(capsule).some((one) => length(subtract(one.at, at)) < 0.03)

const flat = (at: Vec3, normal: Vec3): Receptor => ({ at, normal: unit(normal), kind: 'flat' })
const dome = (at: Vec3, normal: Vec3): Receptor => ({ at, normal: unit(normal), kind: 'dome' })

describe('against light traced by chance, within 0.1 stop', () => {
  const about: readonly Receptor[] = [
    flat([1.5, 1.9, 1.6], [0, -1, 0]),
    dome([1.5, 1.9, 1.6], [0, -1, 0]),
    flat([1.2, 1.5, 1.2], [-1, 0, 0]),
    flat([2.5, 2.8, 1.2], [1, 0, 0]),
    dome([1.1, 2.9, 1.4], [0, 1, 0.3]),
    flat([2.7, 0.4, 0.6], [-0.3, 1, 0.4]),
  ]
  it('in a room with panels', () => holds(inRoom([leaf, low, paper], [], [box60x90]), about))
  it('in a room with panels and people', () =>
    holds(inRoom([leaf, low, paper], [...person([1.5, 2.2]), ...person([0.7, 1])], [box60x90, dish]), about))
  it('in a white room with panels and a person', () =>
    holds(inRoom([leaf, low], person([1.5, 2.2]), [box60x90], alike(0.85)), about))

  it('on a face, turned away from its surface', () => {
    const set = inRoom([leaf], person([1.5, 2.2]), [box60x90])
    const head = set.solids.find(({ body }) => body.shape === 'capsule')!.body
    if (head.shape !== 'capsule') throw new Error('a head is a capsule')
    const places = (
      [
        [0, -1, 0],
        [-1, -0.4, 0],
        [1, -0.4, 0.2],
      ] as const
    ).map((way) => {
      const { at, normal } = surfaceToward(
        head.capsule,
        scale(add(head.capsule.from, head.capsule.to), 0.5),
        way,
      )
      return { at, normal: [0, -1, 0] as Vec3, kind: 'dome' as const, against: normal }
    })
    holds(set, places)
  })

  it('without a room: floor and backdrop alone', () => {
    const floor = rectangle('floor', [0, 0, 0], [0, 0, 1], [1, 0, 0], 5, 6, 0.6)
    const backdrop = panel('backdrop', [0, 2, 1.4], [0, -1, 0], 2.7, 2.8, 0.8)
    const set: TestSet = {
      surfaces: [floor, ...backdrop.surfaces],
      solids: [...backdrop.solids, ...person([0, 0.3])],
      sources: [frontAt('octagon', 1.2, 1.2, { centre: [-1.2, -1, 1.9], normal: [0.7, 0.7, -0.2] })],
      near: [[0, 0.1, 1.6]],
    }
    holds(set, [
      dome([0, 0.1, 1.6], [0, -1, 0]),
      flat([0.4, 0.3, 1.2], [0, 1, 0]),
      flat([0.6, 1.9, 0.8], [0, 1, -0.5]),
      flat([0.5, 0, 0.5], [0, 0, -1]),
      flat([0.9, 0.8, 1.2], [1, 0, 0]),
      flat([0, 1.2, 0.3], [0, 0.3, -1]),
    ])
  })

  it('the sun through the roof of nothing: walls and a person in it', () => {
    const [left, right, , back, floor] = box(3, 4, 2.5, walls)
    const set: TestSet = {
      surfaces: [left!, right!, back!, floor!],
      solids: [
        ...[left!, right!, back!].map(({ name, face }): TestSet['solids'][number] => ({
          name,
          of: 'backdrop',
          pointer: '',
          body: { shape: 'plate', face, corners: cornersOf(face) },
        })),
        ...person([1.5, 2.2]),
      ],
      sources: [{ kind: 'parallel', light: 'sun', toward: unit([0.5, -0.6, 0.9]) }],
      near: [[1.5, 2, 1.6]],
    }
    holds(set, [
      dome([1.5, 1.9, 1.6], [0, -1, 0]),
      flat([1.2, 1.5, 1.2], [1, 0, -0.2]),
      flat([0.5, 2.5, 1], [-1, 0, 0]),
      flat([1.5, 3, 1.2], [0, 1, 0]),
    ])
  })

  it('a scrim before the lamp in a room', () => {
    const scrim = panel('scrim', [1.8, 1.2, 1.6], [-0.5, 0.8, 0], 1.2, 1.6, 0.3, 0.3, 0.5)
    const set = inRoom([scrim], person([1.4, 2.4]), [
      frontAt('disc', 0.3, 0.3, { centre: [2.3, 0.4, 1.8], normal: [-0.5, 0.8, -0.15] }),
    ])
    holds(set, [
      dome([1.4, 2.1, 1.5], [0, -1, 0]),
      flat([1.5, 1.8, 1.2], [0.4, -1, 0]),
      flat([0.5, 1.5, 1.2], [1, 0, 0]),
      flat([2.2, 2.8, 1.2], [0, -1, 0]),
    ])
  })

  describe('near to what throws it: 2 to 30 cm off, flat toward it and a dome along it', () => {
    const lit = inRoom([leaf], person([1.5, 2.1]), [box60x90])
    for (const [what, at, normal] of [
      ['a panel', [0.6, 2, 1.2], [1, -0.3, 0]],
      ['the edge of a panel', [0.773, 1.425, 1.2], [1, -0.3, 0]],
      ['the floor', [1.2, 1.2, 0], [0, 0, 1]],
      ['a wall beside the lamp', [3, 1.9, 1.4], [-1, 0, 0]],
      ['a wall near a corner', [3, 3.8, 1.4], [-1, 0, 0]],
      ['the back wall', [1.4, 4, 1.3], [0, -1, 0]],
      ['the left wall', [0, 1, 1.3], [1, 0, 0]],
      ['the ceiling', [2, 1.5, 2.5], [0, 0, -1]],
    ] as readonly (readonly [string, Vec3, Vec3])[])
      it(what, () => {
        const out = unit(normal)
        const aside: Vec3 = [out[1], out[2], out[0]]
        holds(
          lit,
          [0.02, 0.05, 0.1, 0.2, 0.3].flatMap((off) => {
            const place = add(at, scale(out, off))
            return [flat(place, scale(out, -1)), dome(place, aside)]
          }),
        )
      })
  })
})
