/** Light past what stands in its way, against fronts added up by straight lines, similar triangles and symmetry. */
import { describe, expect, it } from 'vitest'
import type { Receptor } from '../../../src/light/receptor.js'
import { response } from '../../../src/light/response.js'
import type { ParallelSource } from '../../../src/light/source.js'
import { blockersOf, liesOn } from '../../../src/light/visibility/blockers.js'
import { outlookFrom } from '../../../src/light/visibility/outlook.js'
import { clearBetween, sees } from '../../../src/light/visibility/sees.js'
import { hiddenShares, visibleResponse } from '../../../src/light/visibility/visible.js'
import { capsule } from '../../../src/scene/capsule.js'
import { face } from '../../../src/scene/facing.js'
import type { SolidBody } from '../../../src/scene/scene.js'
import { cornersOf } from '../../../src/scene/solids.js'
import { add, scale, unit, type Vec3 } from '../../../src/scene/vector.js'
import { random } from '../../bench/plan-texts.js'
import { cosinePower, frontAt } from '../fronts.js'
import { blocksOf, openShare, plate, rounded, solid, tapered } from './rays.js'

type Chance = ReturnType<typeof random>
const between = (chance: Chance, from: number, to: number): number => from + (to - from) * chance.next()
const somewhere = (chance: Chance): Vec3 =>
  unit([between(chance, -1, 1), between(chance, -1, 1), between(chance, -1, 1)])

const someBody = (chance: Chance, middle: Vec3): SolidBody => {
  const size = (from: number, to: number) => between(chance, from, to)
  switch (chance.of(['plate', 'hull', 'capsule'] as const)) {
    case 'plate':
      return plate(middle, somewhere(chance), size(0.1, 1), size(0.1, 0.8))
    case 'hull': {
      const outline = chance.of(['rectangle', 'disc', 'octagon'] as const)
      const front = face(outline, middle, somewhere(chance), size(0.1, 0.8), size(0.1, 0.8))
      return tapered(front, size(0.05, 0.5), size(0.2, 1))
    }
    case 'capsule':
      return rounded(
        middle,
        scale(somewhere(chance), size(0, 0.5)),
        size(0.05, 0.25),
        size(0.05, 0.2),
        size(0.05, 0.2),
      )
  }
}

type Span = readonly [number, number]
type Case = readonly [string, Span, number, Span, number, number, number, number]

describe('light past what stands in its way', () => {
  it.each([
    // From the front to the receptor: where bodies stand, as shares of the way; how far aside; how wide the front.
    ['between front and receptor', [0.25, 0.9], 0.6, [0.3, 1.5], 150, 1500, 0.01, 70],
    ["across the front's own plane", [-0.15, 0.15], 0.6, [0.3, 1.5], 150, 1500, 0.01, 70],
    ['close to the receptor', [0.9, 1], 0.3, [0.3, 1.5], 150, 2000, 0.01, 15],
    ['with a front of a few centimetres', [0.05, 0.98], 0.2, [0.02, 0.06], 1000, 800, 0.015, 25],
  ] as readonly Case[])(
    'is what lines give, bodies %s',
    (_, way, aside, sizes, sets, lines, close, wanted) => {
      const chance = random(5)
      let partly = 0
      for (let i = 0; i < sets; i++) {
        const outline = chance.of(['rectangle', 'disc', 'octagon', 'ring'] as const)
        const wide = between(chance, ...sizes)
        const source = frontAt(
          outline,
          wide,
          outline === 'rectangle' ? wide * between(chance, 0.4, 1.6) : wide,
          {
            ...(chance.chance(0.3) ? { pattern: cosinePower(between(chance, 1.5, 6)) } : {}),
            both: chance.chance(0.2),
          },
        )
        const behind = source.both && chance.chance(0.5)
        const toward = unit([between(chance, -0.4, 0.4), between(chance, -0.4, 0.4), behind ? -1 : 1])
        const at = scale(toward, between(chance, 0.8, 4))
        const turned: Vec3 = [between(chance, -0.8, 0.8), between(chance, -0.8, 0.8), 0]
        const receptor: Receptor = {
          at,
          normal: unit(add(scale(toward, -1), turned)),
          kind: chance.chance(0.5) ? 'flat' : 'dome',
          ...(chance.chance(0.2) ? { against: unit(add(scale(toward, -1), somewhere(chance))) } : {}),
        }
        const bodies = Array.from({ length: chance.whole(1, 4) }, () =>
          someBody(
            chance,
            add(scale(at, between(chance, ...way)), [
              between(chance, -aside, aside),
              between(chance, -aside, aside),
              0,
            ]),
          ),
        )
        const blockers = blockersOf(bodies.map((one) => solid(one)))
        if (blockers.some((one) => liesOn(one, at))) continue
        const clear = response(source, receptor)
        if (clear === 0) continue
        const share = visibleResponse(source, outlookFrom(receptor, blockers)) / clear
        const want = openShare(source, receptor, bodies, lines)
        if (share > 0.02 && share < 0.98) partly++
        expect(Math.abs(share - want), `set ${i}: ${share}, by lines ${want}`).toBeLessThan(close)
        expect(share).toBeGreaterThanOrEqual(0)
        expect(share).toBeLessThanOrEqual(1 + 1e-9)
      }
      expect(partly).toBeGreaterThan(wanted)
    },
  )

  it('is the response to the last digit where nothing is in the way', () => {
    const source = frontAt('octagon', 0.9, 0.9)
    const receptor: Receptor = { at: [0.2, 0.1, 2], normal: [0, 0, -1], kind: 'dome' }
    const aside = solid(plate([1.5, 0, 1], [1, 0, 0], 1, 1))
    expect(visibleResponse(source, outlookFrom(receptor, blockersOf([aside])))).toBe(
      response(source, receptor),
    )
  })

  it('is half where a plate covers half, by symmetry, and nothing where it covers all', () => {
    const source = frontAt('rectangle', 1, 1)
    const receptor: Receptor = { at: [0, 0, 2], normal: [0, 0, -1], kind: 'flat' }
    const half = solid(plate([1, 0, 1], [0, 0, 1], 2, 4), 'half')
    const outlook = outlookFrom(receptor, blockersOf([half]))
    const clear = response(source, receptor)
    expect(visibleResponse(source, outlook) / clear).toBeCloseTo(0.5, 9)
    expect(hiddenShares(source, outlook).get('half')).toBeCloseTo(0.5, 9)
    const all = solid(plate([0, 0, 1], [0, 0, 1], 4, 4))
    expect(visibleResponse(source, outlookFrom(receptor, blockersOf([all])))).toBe(0)
  })

  // Similar triangles: penumbra of a straight edge = source · b / a (check values shadow.pen.*).
  it.each([
    [0.6, 1.5, 1, 0.4],
    [0.05, 1.5, 1, 0.0333333333],
    [1.2, 1, 0.02, 0.024],
  ])(
    'ramps over the penumbra of similar triangles: a source of %s m, an edge at %s m, a screen %s m behind',
    (wide, a, b, penumbra) => {
      const source = frontAt('rectangle', wide, 0.001)
      const edge = solid(plate([5, 0, a], [0, 0, 1], 10, 10))
      const share = (x: number): number => {
        const receptor: Receptor = { at: [x, 0, a + b], normal: [0, 0, -1], kind: 'flat' }
        return visibleResponse(source, outlookFrom(receptor, blockersOf([edge]))) / response(source, receptor)
      }
      const last = (wanted: (share: number) => boolean): number => {
        let [from, to] = [-penumbra, penumbra]
        for (let i = 0; i < 60; i++) {
          const middle = (from + to) / 2
          if (wanted(share(middle))) from = middle
          else to = middle
        }
        return from
      }
      expect(last((got) => got > 1e-9) - last((got) => got > 1 - 1e-9)).toBeCloseTo(penumbra, 4)
    },
  )

  it('does not come from behind the plane that a meter is held against', () => {
    const source = frontAt('rectangle', 1, 1)
    const receptor: Receptor = { at: [0, 0, 2], normal: [0, 0, -1], kind: 'dome' }
    const clear = response(source, receptor)
    const seen = (against: Vec3): number =>
      visibleResponse(source, outlookFrom({ ...receptor, against }, [])) / clear
    expect(seen([0, 0, -1])).toBe(1)
    expect(seen([1, 0, 0])).toBeCloseTo(0.5, 9)
    expect(seen([0, 0, 1])).toBe(0)
  })

  it('passes its own modifier, and a body that holds the receptor', () => {
    const source = frontAt('rectangle', 1, 1)
    const receptor: Receptor = { at: [0, 0, 2], normal: [0, 0, -1], kind: 'flat' }
    const clear = response(source, receptor)
    const through = (body: SolidBody, name: string, of: 'light' | 'figure') =>
      visibleResponse(source, outlookFrom(receptor, blockersOf([solid(body, name, of)])))
    const before = plate([0, 0, 0.1], [0, 0, 1], 2, 2)
    expect(through(before, source.light, 'light')).toBe(clear)
    expect(through(before, 'other', 'light')).toBe(0)
    const box = tapered(face('rectangle', [0, 0, 2.2], [0, 0, 1], 1, 1), 0.4, 0.5)
    expect(through(box, 'box', 'figure')).toBe(clear)
    expect(through(rounded([0, 0, 2], [0, 0.2, 0], 0.1, 0.1, 0.1), 'person', 'figure')).toBe(clear)
  })

  it('falls steadily to nothing as an edge comes before the front, and is never less than nothing', () => {
    // A round front, so that the last of it is a sliver; a straight edge, then a rounded one.
    const source = frontAt('disc', 0.6, 0.6, { pattern: cosinePower(3) })
    const receptor: Receptor = { at: [0, 0, 2], normal: [0, 0, -1], kind: 'dome' }
    const clear = response(source, receptor)
    for (const body of [
      (x: number) => plate([x - 1, 0, 1], [0, 0, 1], 2, 4),
      (x: number) => rounded([x - 0.25, 0, 1], [0, 2, 0], 0.25, 0.25, 0.25),
    ]) {
      let before = 1
      for (let x = -0.2; x < 0.2; x += 0.001) {
        const share = visibleResponse(source, outlookFrom(receptor, blockersOf([solid(body(x))]))) / clear
        expect(share).toBeGreaterThanOrEqual(0)
        expect(share).toBeLessThan(before + 1e-3)
        before = share
      }
      expect(before).toBe(0)
    }
  })

  it('comes from the sun as from a disc half a degree wide', () => {
    const sun: ParallelSource = { kind: 'parallel', light: 'sun', toward: unit([0, 0.6, 0.8]) }
    const clear = 0.8
    // A long edge along x, straight before the sun's middle at x, y = 0; similar triangles: its penumbra on a plane
    // square to the light is 2 · tan 0.2666° wide for each metre of way.
    const way = 3
    const at = (off: number): Receptor => ({
      at: scale(unit([0, 0.8, -0.6]), off),
      normal: [0, 0, 1],
      kind: 'flat',
    })
    const normal = sun.toward
    const edge = plate(add(scale(sun.toward, way), scale(unit([0, 0.8, -0.6]), 1)), normal, 6, 2)
    const share = (off: number) =>
      visibleResponse(sun, outlookFrom(at(off), blockersOf([solid(edge)]))) / clear
    const half = way * Math.tan((0.26656 * Math.PI) / 180)
    expect(share(0)).toBeCloseTo(0.5, 6)
    expect(share(-1.01 * half)).toBe(1)
    expect(share(1.01 * half)).toBe(0)
    expect(share(-0.97 * half)).toBeLessThan(1)
    expect(share(0.97 * half)).toBeGreaterThan(0)
    // Of a circle cut at half its radius: 1/3 − √3/(4π) lies beyond.
    expect(share(half / 2)).toBeCloseTo(1 / 3 - Math.sqrt(3) / (4 * Math.PI), 2)
    expect(hiddenShares(sun, outlookFrom(at(0), blockersOf([solid(edge, 'edge')]))).get('edge')).toBeCloseTo(
      0.5,
      6,
    )
    expect(visibleResponse(sun, outlookFrom({ ...at(0), against: scale(normal, -1) }, []))).toBe(0)
  })

  it('gives finite figures for degenerate bodies', () => {
    const source = frontAt('rectangle', 1, 1)
    const at: Vec3 = [0, 0, 1]
    const receptor: Receptor = { at, normal: [0, 0, -1], kind: 'flat' }
    const odd: SolidBody[] = [
      plate(at, [0, 0, 1], 1, 1),
      plate([0, 0, 0], [0, 0, 1], 1, 1),
      plate([0, 0, 0.5], [1, 0, 0], 1, 1),
      plate([0, 0, 0.5], [0, 0, 1], 0, 0),
      { shape: 'capsule', capsule: capsule(at, at, 0, 0, 0, [1, 0, 0]) },
      {
        shape: 'hull',
        corners: [...cornersOf(source.face), ...cornersOf(source.face)].map((p): Vec3 => add(p, [0, 0, 1])),
      },
    ]
    for (const body of odd) {
      const got = visibleResponse(source, outlookFrom(receptor, blockersOf([solid(body)])))
      expect(got).toBeGreaterThanOrEqual(0)
      expect(Number.isFinite(got)).toBe(true)
    }
  })

  it.each([0.02, 0.05, 0.1])('comes through nobody who stands %s m beside the meter', (gap) => {
    const body: SolidBody = {
      shape: 'capsule',
      capsule: capsule([0, 0, 0.14], [0, 0, 1.36], 0.225, 0.14, 0.14, [1, 0, 0]),
    }
    // Beside the upper end, the source behind the body.
    const front = face('rectangle', [0, 3, 1.3], [0, -1, 0], 0.6, 0.6)
    const source = frontAt('rectangle', 0.6, 0.6, { centre: front.centre, normal: front.normal })
    const receptor: Receptor = { at: [0, -0.14 - gap, 1.3], normal: [0, 1, 0], kind: 'dome' }
    const got = visibleResponse(source, outlookFrom(receptor, blockersOf([solid(body)])))
    const clear = response(source, receptor)
    const want = openShare(source, receptor, [body])
    expect(Math.abs(got / clear - want)).toBeLessThan(0.01)
    expect(want).toBeLessThan(0.3)
  })
})

describe('sight', () => {
  it('stops at what a line meets, as told by other means, over lines by chance', () => {
    const chance = random(9)
    let stopped = 0
    for (let i = 0; i < 3000; i++) {
      const body = someBody(chance, scale(somewhere(chance), 0.2))
      const blockers = blockersOf([solid(body)])
      const a = scale(somewhere(chance), 1.4)
      const b = add(scale(a, -1), scale(somewhere(chance), 0.4))
      const blocks = blocksOf(body)(a, b)
      if (blocks) stopped++
      expect(clearBetween(blockers, a, b), `line ${i}, ${body.shape}`).toBe(!blocks)
    }
    expect(stopped).toBeGreaterThan(500)
  })

  it('does not go behind the plane that a meter is held against, and starts within what holds it', () => {
    const receptor: Receptor = { at: [0, 0, 0], normal: [1, 0, 0], kind: 'dome', against: [0, 0, 1] }
    const skin = rounded([0, 0, -0.2], [0, 0.1, 0], 0.2, 0.2, 0.2)
    const outlook = outlookFrom(receptor, blockersOf([solid(skin)]))
    expect(sees(outlook, [0, 1, 0.1])).toBe(true)
    expect(sees(outlook, [0, 1, -0.1])).toBe(false)
    expect(
      sees(
        outlookFrom({ at: [0, 0, -0.2], normal: [1, 0, 0], kind: 'flat' }, blockersOf([solid(skin)])),
        [0, 0, 3],
      ),
    ).toBe(true)
    const panel = blockersOf([solid(plate([0, 0, 1], [0, 0, 1], 1, 1))])
    expect(sees(outlookFrom(receptor, panel), [0, 0, 2])).toBe(false)
    expect(sees(outlookFrom(receptor, panel), [0, 0, 1])).toBe(true)
    expect(sees(outlookFrom(receptor, panel), [2, 0, 2])).toBe(true)
  })
})
