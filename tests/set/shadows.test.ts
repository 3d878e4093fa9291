/**
 * Shadows that show, against a front cut into small cells and lines of sight to each of them, with a body's own test for
 * being in the way. Facts of the trade are common practice, no source.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { onBackdrop } from '../../src/rules/on-surface.js'
import { project } from '../../src/scene/camera-view.js'
import type { Vec3 } from '../../src/scene/vector.js'
import { computeSet } from '../../src/set/compute-set.js'
import type { ComputedSet } from '../../src/set/computed-set.js'
import { pictureField } from '../../src/set/picture-field.js'
import type { ShadowSeen } from '../../src/set/shadow-seen.js'
import { planOf } from '../rules/check-text.js'
import { hiddenByHand } from './lines-of-sight.js'

interface Wall {
  readonly aside?: string
  readonly behind?: string
  readonly key?: string
  readonly more?: string
  readonly grey?: number
  readonly shutter?: string
}

/** One person near a wall; one square box of 2 m, 4 m before the face, unless said. */
const wall = ({
  aside = '',
  behind = '0.5 m',
  key,
  more = '',
  grey = 0.5,
  shutter,
}: Wall = {}): ComputedSet =>
  computeSet(
    planOf(`plan: 1
title: Person near a wall
camera: { lens: 85 mm, at: { distance: 3.5 m${aside === '' ? '' : `, aside: ${aside}`} }, aim: subject, aperture: f/8, shutter: ${shutter ?? '1/125'}, iso: 100, held-by: stand }
subject: { kind: person }
backdrop: { surface: { reflectance: ${grey} }, width: 6 m, height: 4 m, behind: ${behind} }
lights:
  key: { unit: head 400 Ws, meters: f/8, ${key ?? 'modifier: softbox 2 x 2 m, at: { angle: 0 deg, distance: 4 m, height: 1.6 m }'} }
${more}wanted: { framing: head and shoulders, backdrop: any, shadow: any }
`),
  )

/** The wall faces the camera's end. */
const onWall = (set: ComputedSet, at: Vec3, cells: number): number =>
  hiddenByHand(set, set.scene.subject.figures[0]!, at, ([, y]) => Math.max(0, -y), cells)

const fieldOf = (set: ComputedSet) => pictureField(set, 1)

/** Where the figure ends on a line across the frame, by looking. */
const edgeOf = (set: ComputedSet, y: number, sign: 1 | -1): number => {
  const field = fieldOf(set)
  let [inside, outside]: [number, number] = [
    project(set.scene.camera, set.scene.subject.figures[0]!.body.to).x,
    sign,
  ]
  for (let i = 0; i < 30; i++) {
    const middle = (inside + outside) / 2
    if (field.place(middle, y).hit?.on === 'figure') inside = middle
    else outside = middle
  }
  return outside
}

const strongest = (set: ComputedSet): ShadowSeen | undefined =>
  [...set.shadows].sort((a, b) => b.margin - a.margin)[0]
const showing = (set: ComputedSet): readonly ShadowSeen[] => set.shadows.filter(({ margin }) => margin > 0)

const aside = { key: 'modifier: softbox 90 x 90 cm, at: { angle: 45 deg left, distance: 1.5 m, up: 35 deg }' }

describe('what the figure hides of a front', () => {
  it.each([
    ['on the axis', wall()],
    ['from aside', wall({ aside: '40 cm right' })],
    ['a smaller one at 45 degrees', wall({ ...aside, behind: '0.3 m' })],
  ])('is what lines of sight to its cells say: %s', (_, set) => {
    const field = fieldOf(set)
    let compared = 0
    for (let y = -0.9; y <= 0.5; y += 0.2)
      for (let x = -0.9; x <= 0.9; x += 0.15) {
        const place = field.place(x, y)
        if (place.hit?.on !== 'backdrop') continue
        const share = place.taken('key', 'person') / place.open('key')
        expect(Math.abs(share - onWall(set, place.hit.at, 24))).toBeLessThan(0.025)
        compared++
      }
    expect(compared).toBeGreaterThan(40)
  })
})

describe('what the camera records', () => {
  const set = wall({ ...aside, behind: '0.3 m' })
  // Recorded linear per lx·s, from the one sample that is metered anyway.
  const { middle } = set.backdropView!
  const perLuxSecond =
    2 ** middle.overCamera.stops / 2 ** set.exposure(onBackdrop(middle.at), 'all')!.figure.stops
  const field = pictureField(set, perLuxSecond)

  it('is reflectance times the light that is left, on the figure and on the wall', () => {
    const seen = new Set<string>()
    for (let x = -0.95; x < 1; x += 0.1) {
      const place = field.place(x, 0)
      const on = place.hit!.on
      seen.add(on)
      const left = set.exposure(
        { at: place.hit!.at, normal: place.hit!.normal, kind: 'flat', onSurface: true },
        'all',
        ['direct', 'room', 'panels', 'backdrop'],
      )
      const reflectance = on === 'figure' ? set.plan.subject.reflectance : 0.5
      expect(place.linear).toBeCloseTo(reflectance * (left?.luxSeconds ?? 0) * perLuxSecond, 9)
    }
    expect([...seen].sort()).toEqual(['backdrop', 'figure'])
  })

  it('lies in the shadow of those lights of which something is hidden', () => {
    for (let x = 0.15; x < 1; x += 0.05) {
      const place = field.place(x, 0)
      if (place.hit!.on !== 'backdrop') continue
      const hidden = onWall(set, place.hit!.at, 24)
      if (hidden > 0.02) expect(place.shadows).toEqual(['key'])
      if (place.shadows.length === 0) expect(hidden).toBeLessThan(0.02)
    }
  })

  it('is white without end where a light that is on looks into the lens, and black where nothing is', () => {
    const into = wall({
      more: '  rim: { unit: head 400 Ws, modifier: softbox 30 x 30 cm, power: 1/16, at: { angle: 178 deg left, distance: 0.4 m, height: 2 m }, aim: camera }\n',
    })
    const { x, y } = project(into.scene.camera, into.scene.lights.get('rim')!.front!.centre)
    expect(fieldOf(into).place(x, y).linear).toBe(Number.POSITIVE_INFINITY)
    expect(fieldOf(into).place(30, 0).linear).toBe(0)
  })
})

describe('the edges of a shadow', () => {
  // One box of 90 cm at 45 degrees: both edges at half of what is taken where the shadow is deepest, by lines of sight.
  it('are found within a centimetre', () => {
    const set = wall({ ...aside, behind: '0.5 m' })
    const seen = strongest(set)!
    const field = fieldOf(set)
    const shareAt = (x: number): number => {
      const { hit } = field.place(x, seen.y)
      return hit?.on === 'backdrop' ? onWall(set, hit.at, 24) : 0
    }
    const half = shareAt(seen.x) / 2
    const edge = (sign: 1 | -1): number => {
      let x = seen.x
      while (Math.abs(x + sign * 0.002) < 1 && shareAt(x + sign * 0.002) >= half) x += sign * 0.002
      return field.place(x, seen.y).hit!.at[0]
    }
    expect(Math.abs(edge(1) - edge(-1) - seen.width)).toBeLessThan(0.01)
  })
})

describe('one source of 2 m behind the camera, the subject half a metre before the wall', () => {
  it('leaves a halo at the outline that is gone ten centimetres out, both sides alike', () => {
    const set = wall()
    const field = fieldOf(set)
    const y = 0
    const depth = (x: number) => {
      const place = field.place(x, y)
      return -Math.log2(1 - place.taken('key', 'person') / place.open('key'))
    }
    const [left, right] = [edgeOf(set, y, -1), edgeOf(set, y, 1)]
    const metre = 2 / (2 * set.scene.camera.tanHalfWidth * 4)
    // An independent prototype gave 0.84 at the edge and 0.08 ten centimetres out; the trade asks for a quarter there.
    expect(Math.abs(depth(right) - 0.84)).toBeLessThan(0.15)
    expect(Math.abs(depth(right + 0.1 * metre) - 0.08)).toBeLessThan(0.1)
    for (const s of [0.001, 0.05, 0.1, 0.2])
      expect(depth(left - s * metre)).toBeCloseTo(depth(right + s * metre), 2)
  })

  it('lights the wall within a third of a stop of the face, and no shadow shows', () => {
    const set = wall({ behind: '0.3 m' })
    const flat = (at: Vec3) => set.unshaded({ at, normal: [0, -1, 0], kind: 'flat' }, 'all')!.figure.stops
    const { face } = set.scene.subject.figures[0]!
    expect(Math.abs(flat([face[0] + 0.3, 0.3, face[2]]) - flat(face))).toBeLessThan(1 / 3)
    expect(showing(set)).toEqual([])
  })

  it('shows it on one side, a stop deeper than on the other, from half a metre aside', () => {
    const seen = strongest(wall({ aside: '50 cm right' }))
    expect(seen!.side).toBe('camera-right')
    expect(seen!.depth.stops - seen!.otherSide).toBeGreaterThan(1)
  })

  it('shows it the more, the farther aside; alike to both sides', () => {
    const margins = [10, 20, 30, 40].map((cm) => strongest(wall({ aside: `${cm} cm right` }))!.margin)
    for (let i = 1; i < margins.length; i++) expect(margins[i]!).toBeGreaterThan(margins[i - 1]!)
    const mirrored = [10, 20, 30, 40].map((cm) => strongest(wall({ aside: `${cm} cm left` }))!)
    mirrored.forEach((one, i) => {
      expect(one.side).toBe('camera-left')
      expect(one.margin).toBeCloseTo(margins[i]!, 9)
    })
  })
})

describe('a white room', () => {
  const room =
    'room: { width: 4 m, length: 6 m, height: 2.5 m, behind-backdrop: 10 cm, walls: white paint, ceiling: white paint, floor: white paint }\n'
  const inRoom = (text: string): ComputedSet =>
    computeSet(
      planOf(`plan: 1
title: Person near a wall in a white room
camera: { lens: 85 mm, at: { distance: 3 m }, aim: subject, aperture: f/8, shutter: 1/125, iso: 100, held-by: stand }
subject: { kind: person }
backdrop: { surface: { reflectance: 0.5 }, width: 3.6 m, height: 2.4 m, behind: 0.5 m }
${text}lights:
  key: { unit: head 400 Ws, power: 1/2, modifier: softbox 60 x 60 cm, at: { angle: 30 deg left, distance: 1.6 m, height: 1.9 m } }
wanted: { framing: head and shoulders, backdrop: any, shadow: any }
`),
    )

  it('fills the shadow, which is at its deepest in straight light', () => {
    const [dark, white] = [inRoom(''), inRoom(room)]
    const depth = (shadows: readonly ShadowSeen[]) => Math.max(...shadows.map((one) => one.depth.stops))
    expect(depth(white.unfilledShadows)).toBeCloseTo(depth(dark.unfilledShadows), 6)
    expect(depth(white.shadows)).toBeLessThan(depth(white.unfilledShadows) - 1)
    // What is left: the surfaces' light at the place against all of it, as exposures say.
    const [seen] = white.shadows
    const at = { at: seen!.at, normal: [0, -1, 0] as Vec3, kind: 'flat' as const, onSurface: true }
    const left = white.exposure(at, 'all', ['direct', 'room', 'panels', 'backdrop'])!.luxSeconds
    expect(seen!.depth.stops).toBeCloseTo(Math.log2(white.unshaded(at, 'all')!.luxSeconds / left), 1)
  })
})

/** The definition, on a fine grid and by lines of sight: stops over what shows, the best band of 2 % on either side. */
const marginByHand = (set: ComputedSet, y: number): number => {
  const field = fieldOf(set)
  const step = 0.004
  const unit = 2 * Math.min(1, set.scene.camera.tanHalfHeight / set.scene.camera.tanHalfWidth)
  const depthAt = (x: number): number | undefined => {
    const { hit } = field.place(x, y)
    return hit?.on === 'backdrop' ? -Math.log2(1 - onWall(set, hit.at, 8)) : undefined
  }
  let best = Number.NEGATIVE_INFINITY
  for (const sign of [-1, 1] as const) {
    const [edge, other] = [edgeOf(set, y, sign), edgeOf(set, y, -sign as 1 | -1)]
    const excess: number[] = []
    for (let s = 0.0005; sign * edge + s * unit < 1; s += step) {
      const depth = depthAt(edge + sign * s * unit)
      if (depth === undefined) break
      excess.push(Math.min(12, depth) - (depthAt(other - sign * s * unit) ?? 0) - 1 / 3)
    }
    for (let i = 0; i + 5 < excess.length; i++) best = Math.max(best, Math.min(...excess.slice(i, i + 6)))
  }
  return best
}

describe('how much of it shows', () => {
  // Paper of 0.5 a third of a stop under the camera: a third of a stop is more than six L*, as L* is flatter up there.
  it.each([
    ['ten centimetres aside', wall({ aside: '10 cm right' })],
    ['thirty', wall({ aside: '30 cm right' })],
    ['a box at 45 degrees, close to the wall', wall({ ...aside, behind: '0.3 m' })],
  ])('is what a fine grid of lines of sight says: %s', (_, set) => {
    const bare = computeSet(set.plan)
    const byHand = Math.max(...[-0.8, -0.05, -0.01].map((y) => marginByHand(bare, y)))
    const found = strongest(bare)?.margin ?? Number.NEGATIVE_INFINITY
    expect(Math.abs(found - byHand)).toBeLessThan(0.15)
  })
})

const between = (from: number, to: number) =>
  fc.double({ min: from, max: to, noNaN: true }).map((n) => n.toFixed(2))
const side = fc.constantFrom('left', 'right')
const front = fc.constantFrom('softbox 60 x 90 cm', 'octa 120 cm', 'standard reflector', 'beauty dish 55 cm')
const subject = fc.constantFrom(
  '{ kind: person }',
  '{ kind: person, turned: 40 deg left }',
  '{ kind: group, rows: [ { people: 3, spacing: 60 cm, faces-at: 1.5 m }, { people: 2, spacing: 60 cm, behind: 30 cm, faces-at: 1.7 m } ] }',
  '{ kind: object, height: 40 cm, width: 20 cm, depth: 20 cm, stands-on: { height: 1 m, size: 60 x 60 cm, surface: white board } }',
)
const lamp = fc
  .tuple(front, between(0, 150), side, between(0.9, 4), between(0.4, 3))
  .map(
    ([modifier, angle, of, distance, height]) =>
      `{ unit: head 400 Ws, modifier: ${modifier}, power: 1/4, at: { angle: ${angle} deg ${of}, distance: ${Math.max(Number(distance), Math.abs(Number(height) - 1.6) + 0.2).toFixed(2)} m, height: ${height} m } }`,
  )
const anyWall = fc
  .tuple(
    subject,
    lamp,
    lamp,
    between(0.1, 3),
    between(-0.6, 0.6),
    between(0.5, 2),
    fc.constantFrom('35', '85'),
    fc.boolean(),
  )
  .map(
    ([who, one, other, behind, aside, height, lens, swept]) => `plan: 1
title: Somebody before a wall
camera: { lens: ${lens} mm, at: { distance: 3.2 m, height: ${height} m, aside: ${Math.abs(Number(aside))} m ${Number(aside) < 0 ? 'left' : 'right'} }, aim: subject, aperture: f/8, shutter: 1/125, iso: 100 }
subject: ${who}
backdrop: { surface: grey paper, width: 6 m, height: 4 m, behind: ${behind} m${swept ? ', sweep: { front: 1.5 m }' : ''} }
lights: { key: ${one}, fill: ${other} }
wanted: { backdrop: any, shadow: hidden }
`,
  )

describe('whoever stands before whatever wall', () => {
  it('has shadows of finite depth and size, on one side deeper than on the other where they show', () => {
    let found = 0
    fc.assert(
      fc.property(anyWall, (text) => {
        const set = computeSet(planOf(text))
        for (const one of set.shadows) {
          found++
          for (const figure of [
            one.margin,
            one.depth.stops,
            one.otherSide,
            one.width,
            one.share,
            set.u(one.depth),
          ])
            expect(Number.isFinite(figure)).toBe(true)
          expect(one.width).toBeGreaterThanOrEqual(0)
          expect(one.shaded).toBeLessThanOrEqual(one.surround)
          if (one.margin > 0) {
            expect(one.depth.stops - one.otherSide - 1 / 3).toBeGreaterThan(one.margin - 1e-9)
            expect(one.share).toBeGreaterThan(0.01)
          }
        }
      }),
      { numRuns: 120, seed: 11 },
    )
    expect(found).toBeGreaterThan(60)
  })
})
