/** What photographers know of whole sets with rooms, walls and panels in them: common practice, no source. */
import { describe, expect, it } from 'vitest'
import type { Vec3 } from '../../src/scene/vector.js'
import { computeSet } from '../../src/set/compute-set.js'
import type { ComputedSet } from '../../src/set/computed-set.js'
import { findingsOf, planOf } from '../rules/check-text.js'

/** Stops of all that comes to a place that faces somewhere, past what stands in its way; `against` a body where it lies on one. */
const stopsAt = (set: ComputedSet, at: Vec3, normal: Vec3, against?: Vec3): number =>
  set.exposure({ at, normal, kind: 'flat', ...(against === undefined ? {} : { against }) }, 'all')!.figure
    .stops

/** The plane of the face that is turned 45 degrees to camera left or right. */
const cheek = (set: ComputedSet, side: 1 | -1): number => {
  const { head, face } = set.scene.subject.figures[0]!
  const [across, along] = [side * Math.SQRT1_2, -Math.SQRT1_2]
  // Where an ellipse is square to that direction.
  const size = Math.hypot(across * head!.across, along * head!.along)
  const at: Vec3 = [
    face[0] + (across * head!.across ** 2) / size,
    face[1] + head!.along + (along * head!.along ** 2) / size,
    face[2],
  ]
  return stopsAt(set, at, [across, along, 0], [across, along, 0])
}

describe('a portrait with one light from the left', () => {
  const keys = {
    softbox: 'modifier: softbox 60 x 90 cm',
    umbrella: 'modifier: white umbrella 1 m',
    'shoot-through umbrella': 'modifier: shoot-through umbrella 1 m',
  } as const
  const portrait = (key: string, more = ''): ComputedSet =>
    computeSet(
      planOf(`plan: 1
title: One light from the left
camera: { lens: 85 mm, at: { distance: 2 m }, aperture: f/8, shutter: 1/125, iso: 100, held-by: stand }
subject: { kind: person }
lights:
  key: { unit: head 400 Ws, ${key}, power: 1/4, at: { angle: 35 deg left, distance: 1.2 m, height: 1.9 m } }
${more}`),
    )
  const room = (paint: string, [width, length, height] = [3, 4, 2.4]): string =>
    `room: { width: ${width} m, length: ${length} m, height: ${height} m, behind-backdrop: 1.2 m, walls: ${paint}, ceiling: ${paint}, floor: wooden floor }\n`
  const flat = (outside: string): string =>
    `panels:
  flat: { kind: v-flat, size: 1 x 2.2 m, opening: 100 deg, inside: ${outside}, outside: ${outside}, at: { right: 70 cm, front: 20 cm }, faces: subject }
`

  it.each(Object.entries(keys))(
    '%s: a small white room lifts the shadow side by a stop or more',
    (_, key) => {
      const [open, white] = [portrait(key), portrait(key, room('white paint'))]
      expect(cheek(white, 1) - cheek(open, 1)).toBeGreaterThan(1)
      // The side in the light hardly knows: less than half as much.
      expect(cheek(white, -1) - cheek(open, -1)).toBeLessThan((cheek(white, 1) - cheek(open, 1)) / 2)
    },
  )

  it('a small white room flattens more than a large one, a shoot-through more than a box, a narrow beam least', () => {
    const fill = (key: string, size?: [number, number, number]) =>
      cheek(portrait(key, room('white paint', size)), 1) - cheek(portrait(key), 1)
    expect(fill(keys.softbox)).toBeGreaterThan(fill(keys.softbox, [8, 10, 4]) + 0.7)
    expect(fill(keys['shoot-through umbrella'])).toBeGreaterThan(fill(keys.softbox) + 0.3)
    expect(fill('modifier: standard reflector')).toBeLessThan(fill(keys.softbox) - 0.3)
  })

  it('a room painted black is nearly the open', () => {
    const [open, black] = [portrait(keys.softbox), portrait(keys.softbox, room('black paint'))]
    expect(cheek(black, 1) - cheek(open, 1)).toBeLessThan(0.25)
  })

  it('throws light about that is spread over the room far more evenly than what comes straight', () => {
    const set = portrait(keys.softbox, room('white paint'))
    const dome = (at: Vec3, ways: readonly ('direct' | 'room')[]) =>
      Math.log2(set.exposure({ at, normal: [0, -1, 0], kind: 'dome' }, 'all', ways)!.luxSeconds)
    const spread = (ways: readonly ('direct' | 'room')[]) => {
      const all = [-0.4, 0.4].flatMap((x) => [-0.8, -0.4].map((y) => dome([x, y, 1.5], ways)))
      return Math.max(...all) - Math.min(...all)
    }
    expect(spread(['room'])).toBeLessThan(spread(['direct']) / 2)
  })

  it('a white v-flat by the shadow side fills it by a stop or more; a black one takes a white room’s fill away', () => {
    const open = portrait(keys.softbox, 'backdrop: { surface: grey paper, behind: 2 m }\n')
    const filled = portrait(keys.softbox, `backdrop: { surface: grey paper, behind: 2 m }\n${flat('white')}`)
    expect(cheek(filled, 1) - cheek(open, 1)).toBeGreaterThan(1)
    expect(cheek(filled, -1) - cheek(open, -1)).toBeLessThan(0.2)
    const [white, cut] = [
      portrait(keys.softbox, room('white paint', [4, 5, 2.6])),
      portrait(keys.softbox, room('white paint', [4, 5, 2.6]) + flat('black')),
    ]
    expect(cheek(white, 1) - cheek(cut, 1)).toBeGreaterThan(0.5)
  })
})

describe('one source of 2 m behind the camera, the subject close to the paper', () => {
  const set = (source: string, camera: string, behind: string): ComputedSet =>
    computeSet(
      planOf(`plan: 1
title: One large source behind the camera
camera: { lens: 85 mm, at: { distance: 3 m${camera} }, aim: subject, aperture: f/8, shutter: 1/125, iso: 100, held-by: stand }
subject: { kind: person }
backdrop: { surface: white paper, width: 3.5 m, height: 2.8 m, behind: ${behind} }
lights:
  key: { unit: head 600 Ws, modifier: ${source}, meters: f/8, at: { angle: 0 deg, distance: 3.8 m, height: 1.7 m } }
wanted: { framing: head and shoulders, backdrop: any, shadow: any }
`),
    )
  /** What is lost on the paper so far beside the outline of the head as the camera sees it, stops; left and right. */
  const lost = (of: ComputedSet, out: number): readonly number[] => {
    const { eye } = of.scene.camera
    const { head, face } = of.scene.subject.figures[0]!
    const y = of.scene.backdrop!.y
    const middle: Vec3 = [face[0], face[1] + head!.along, face[2]]
    return ([-1, 1] as const).map((side) => {
      // Past the side of a head of elliptic section: the tangent from the eye, by bisection of lines against it.
      const misses = (x: number): boolean => {
        const [dx, dy] = [(x - eye[0]) / head!.across, (y - eye[1]) / head!.along]
        const [ox, oy] = [(eye[0] - middle[0]) / head!.across, (eye[1] - middle[1]) / head!.along]
        return Math.abs(ox * dy - oy * dx) > Math.hypot(dx, dy)
      }
      let [inside, outside] = [
        middle[0] + ((y - eye[1]) / (middle[1] - eye[1]) - 1) * (middle[0] - eye[0]),
        0,
      ]
      outside = inside + side
      for (let i = 0; i < 50; i++) {
        const half = (inside + outside) / 2
        if (misses(half)) outside = half
        else inside = half
      }
      const receptor = {
        at: [outside + side * out, y, face[2]] as Vec3,
        normal: [0, -1, 0] as Vec3,
        kind: 'flat' as const,
        onSurface: true,
      }
      return of.unshaded(receptor, 'all')!.figure.stops - of.exposure(receptor, 'all')!.figure.stops
    })
  }
  const sources = ['softbox 2 x 2 m', 'octa 2 m', 'white umbrella 2 m', 'shoot-through umbrella 2 m']

  it.each(sources)('%s: face and paper within a third of a stop', (source) => {
    for (const behind of ['20 cm', '30 cm']) {
      const of = set(source, '', behind)
      const { face } = of.scene.subject.figures[0]!
      const paper = of.unshaded(
        { at: [face[0] + 0.5, of.scene.backdrop!.y, face[2]], normal: [0, -1, 0], kind: 'flat' },
        'all',
      )!.figure.stops
      const sitter = stopsAt(of, face, [0, -1, 0], [0, -1, 0])
      expect(Math.abs(paper - sitter)).toBeLessThan(1 / 3)
    }
  })

  it.each(sources)(
    '%s: alike at both edges, and back within a quarter of a stop ten centimetres out',
    (source) => {
      for (const behind of ['30 cm', '50 cm']) {
        const of = set(source, '', behind)
        for (const out of [0.005, 0.03, 0.06, 0.1, 0.2]) {
          const [left, right] = lost(of, out)
          expect(Math.abs(left! - right!)).toBeLessThan(0.02)
          if (out >= 0.1) expect(Math.max(left!, right!)).toBeLessThan(0.25)
        }
        expect(lost(of, 0.005)[0]).toBeGreaterThan(0.3)
      }
    },
  )

  it.each(sources)('%s: half a metre aside, one side is at least a stop deeper', (source) => {
    const of = set(source, ', aside: 50 cm right', '50 cm')
    const [left, right] = lost(of, 0.01)
    // What the camera sees past the one edge lies deep in the shadow, past the other out of it.
    expect(right! - left!).toBeGreaterThan(1)
  })
})

describe('a white backdrop a stop over the key', () => {
  /** Heads left and right light the paper evenly; all in a studio of grey walls. */
  const studio = (behind: number): string => `plan: 1
title: On white in a studio
room: { width: 6 m, length: 8 m, height: 3.2 m, behind-backdrop: 0.5 m, walls: grey paint, ceiling: grey paint, floor: dark carpet }
camera: { lens: 105 mm, at: { distance: 2.6 m }, aperture: f/8, shutter: 1/125, iso: 100, held-by: stand }
subject: { kind: person }
backdrop: { surface: white paper, behind: ${behind} m }
lights:
  key: { unit: head 400 Ws, modifier: softbox 60 x 90 cm, grid: 40 deg, meters: f/8, at: { angle: 35 deg left, distance: 1.3 m, height: 2 m } }
  paper-left: { role: backdrop, unit: head 600 Ws, modifier: standard reflector, meters: LEVEL, at: { left: 2.2 m, before-backdrop: 1.3 m, height: 1.6 m } }
  paper-right: { like: paper-left, mirrored: true }
wanted: { framing: head and shoulders, backdrop: white, shadow: any }
`
  /** With the lights on the paper turned until its middle comes to a stop over the key. */
  const aStopOver = (behind: number): string => {
    const at = (f: number): string => studio(behind).replace('LEVEL', `f/${f.toFixed(3)}`)
    let f = 8
    for (let i = 0; i < 3; i++) {
      const set = computeSet(planOf(at(f)))
      f *= 2 ** ((1 - (set.backdropView!.middle.overCamera.stops - set.key!.overCamera.stops)) / 2)
    }
    return at(f)
  }

  it.each([
    [1.2, 1],
    [1.5, 1],
    [2.4, 0],
    [3, 0],
  ])('%f m behind the subject: wrap is told %i times', (behind, times) => {
    expect(findingsOf('edge-wrap', aStopOver(behind)).length).toBe(times)
  })
})
