/** Light past what stands in its way, against dense sampling of the front by rays written here by plain algebra. */
import { describe, expect, it } from 'vitest'
import { kernelOf } from '../../../src/light/kernel.js'
import type { Receptor } from '../../../src/light/receptor.js'
import { response, toLocal } from '../../../src/light/response.js'
import type { AreaSource } from '../../../src/light/source.js'
import { blockersOf } from '../../../src/light/visibility/blockers.js'
import { outlookFrom } from '../../../src/light/visibility/outlook.js'
import { clearBetween } from '../../../src/light/visibility/sees.js'
import { hiddenShares, visibleResponse } from '../../../src/light/visibility/visible.js'
import { capsule } from '../../../src/scene/capsule.js'
import { face } from '../../../src/scene/facing.js'
import type { Solid, SolidBody } from '../../../src/scene/scene.js'
import { cornersOf } from '../../../src/scene/solids.js'
import { add, cross, dot, scale, subtract, unit, type Vec3 } from '../../../src/scene/vector.js'
import { random } from '../../bench/plan-texts.js'
import { cosinePower, frontAt } from '../fronts.js'

const solid = (body: SolidBody, name = 'thing', of: Solid['of'] = 'figure'): Solid => ({
  name,
  of,
  pointer: '',
  body,
})
const plate = (centre: Vec3, normal: Vec3, width: number, height: number): SolidBody => {
  const one = face('rectangle', centre, unit(normal), width, height)
  return { shape: 'plate', face: one, corners: cornersOf(one) }
}

/** Does the open segment from a to b pass through the body? Marching for round ones, plane and edges for plates. */
const blocks = (body: SolidBody, a: Vec3, b: Vec3): boolean => {
  const way = subtract(b, a)
  if (body.shape === 'plate') {
    const { centre, normal, across, up, width, height } = body.face
    const toward = dot(way, normal)
    const t = dot(subtract(centre, a), normal) / toward
    if (!(t > 0 && t < 1)) return false
    const at = subtract(add(a, scale(way, t)), centre)
    return Math.abs(dot(at, across)) <= width / 2 && Math.abs(dot(at, up)) <= height / 2
  }
  if (body.shape !== 'capsule') throw new Error('not sampled here')
  // Round after scaling: the least distance of two segments by alternating projection.
  const { from, to, across, along, cap, acrossDirection } = body.capsule
  const axis = unit(subtract(to, from), [0, 0, 1])
  const deep = cross(axis, acrossDirection)
  const round = (p: Vec3): Vec3 => [
    dot(subtract(p, from), acrossDirection) / across,
    dot(subtract(p, from), deep) / along,
    dot(subtract(p, from), axis) / cap,
  ]
  const [p, q, high] = [round(a), round(b), round(to)[2]]
  const d = subtract(q, p)
  let t = 0.5
  for (let i = 0; i < 400; i++) {
    const z = Math.min(high, Math.max(0, p[2] + t * d[2]))
    const next = Math.min(1, Math.max(0, dot(subtract([0, 0, z], p), d) / dot(d, d)))
    if (Math.abs(next - t) < 1e-9) break
    t = next
  }
  const at = add(p, scale(d, t))
  const z = Math.min(high, Math.max(0, at[2]))
  return at[0] ** 2 + at[1] ** 2 + (at[2] - z) ** 2 < 1
}

const inside = (outline: readonly number[], u: number, v: number): boolean => {
  for (let i = 0, j = outline.length - 2; i < outline.length; j = i, i += 2)
    if (
      (outline[i]! - outline[j]!) * (v - outline[j + 1]!) -
        (outline[i + 1]! - outline[j + 1]!) * (u - outline[j]!) <
      0
    )
      return false
  return true
}

const sampled = (
  source: AreaSource,
  receptor: Receptor,
  bodies: readonly SolidBody[],
  steps = 90,
): number => {
  const local = toLocal(source, receptor)
  if (local === undefined) return 0
  const kernel = kernelOf(source.pattern, local)
  const { width, height, centre, across, up } = source.face
  const [wide, tall] = [width * 1.02, height * 1.02]
  let sum = 0
  for (let i = 0; i < steps; i++)
    for (let j = 0; j < steps; j++) {
      const u = ((i + 0.5) / steps - 0.5) * wide
      const v = ((j + 0.5) / steps - 0.5) * tall
      if (!inside(source.outline, u, v)) continue
      const place = add(centre, add(scale(across, u), scale(up, v)))
      if (!bodies.some((body) => blocks(body, receptor.at, place))) sum += kernel(u, v)
    }
  return (sum * wide * tall) / steps ** 2 / source.area
}

describe('light past what stands in its way', () => {
  it('is what dense sampling by rays gives, over 150 sets by chance', () => {
    const chance = random(5)
    const between = (from: number, to: number): number => from + (to - from) * chance.next()
    let partly = 0
    for (let i = 0; i < 150; i++) {
      const outline = chance.of(['rectangle', 'disc', 'octagon'] as const)
      const wide = between(0.3, 1.5)
      const source = frontAt(outline, wide, outline === 'rectangle' ? between(0.3, 1.5) : wide, {
        ...(chance.chance(0.3) ? { pattern: cosinePower(between(1.5, 6)) } : {}),
      })
      const toward = unit([between(-0.3, 0.3), between(-0.3, 0.3), 1])
      const at = scale(toward, between(1.5, 4))
      const receptor: Receptor = {
        at,
        normal: unit(add(scale(toward, -1), [between(-0.8, 0.8), between(-0.8, 0.8), 0])),
        kind: chance.chance(0.5) ? 'flat' : 'dome',
      }
      const body = (): SolidBody => {
        const middle = add(scale(at, between(0.25, 0.8)), [between(-0.5, 0.5), between(-0.5, 0.5), 0])
        if (chance.chance(0.4))
          return plate(
            middle,
            [between(-1, 1), between(-1, 1), between(0.2, 1)],
            between(0.1, 0.8),
            between(0.1, 0.8),
          )
        const way = unit([between(-1, 1), between(-1, 1), between(-0.3, 0.3)])
        const half = scale(way, between(0.05, 0.4))
        const sideways = unit(cross(way, [0, 0, 1]))
        return {
          shape: 'capsule',
          capsule: capsule(
            subtract(middle, half),
            add(middle, half),
            between(0.05, 0.25),
            between(0.05, 0.2),
            between(0.05, 0.15),
            sideways,
          ),
        }
      }
      const bodies = Array.from({ length: chance.whole(1, 3) }, body)
      const outlook = outlookFrom(receptor, blockersOf(bodies.map((one) => solid(one))))
      const clear = response(source, receptor)
      const got = visibleResponse(source, outlook)
      const want = sampled(source, receptor, bodies)
      if (got > 0.02 * clear && got < 0.98 * clear) partly++
      expect(Math.abs(got - want), `set ${i}: ${got} sampled ${want} of ${clear}`).toBeLessThan(0.02 * clear)
      expect(got).toBeGreaterThanOrEqual(0)
      expect(got).toBeLessThanOrEqual(clear * (1 + 1e-9))
    }
    expect(partly).toBeGreaterThan(50)
  })

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

  it('passes its own modifier, and sight stops where a body stands', () => {
    const source = frontAt('rectangle', 1, 1)
    const receptor: Receptor = { at: [0, 0, 2], normal: [0, 0, -1], kind: 'flat' }
    const own = solid(plate([0, 0, 0.1], [0, 0, 1], 2, 2), source.light, 'light')
    expect(visibleResponse(source, outlookFrom(receptor, blockersOf([own])))).toBe(response(source, receptor))
    const blockers = blockersOf([own])
    expect(clearBetween(blockers, [0, 0, 2], [0, 0, -1])).toBe(false)
    expect(clearBetween(blockers, [3, 0, 2], [3, 0, -1])).toBe(true)
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
    const want = sampled(source, receptor, [body])
    expect(Math.abs(got - want)).toBeLessThan(0.01 * response(source, receptor))
    expect(want).toBeLessThan(0.3 * response(source, receptor))
  })
})
