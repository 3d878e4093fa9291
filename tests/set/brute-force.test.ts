/**
 * Whole plans against figures worked out beside them: lights placed by hand trigonometry, their fronts cut into
 * thousands of cells and added up, strengths from first principles. None of the program's code is used for that. The
 * definitions are those of the plan language and of the standards named in `bruteforce/`.
 */
import '../helpers/empty-space.js'
import { describe, expect, it } from 'vitest'
import type { ComputedSet } from '../../src/set/computed-set.js'
import type { Change } from '../../src/set/knobs.js'
import {
  computed,
  countReadings,
  keyByHand,
  mirrored,
  onBackdropByHand,
  wrongReadings,
} from './bruteforce/compare.js'
import type { HandSet } from './bruteforce/hand-set.js'
import { beam, bothWays, cosine, flux, honeycomb, lambertian, type Pattern } from './bruteforce/patterns.js'
import { group, mirroredPair, zooms } from './bruteforce/sets-backdrop.js'
import { ambientAndLamps, onTheTable, sunBehind, windowKey } from './bruteforce/sets-daylight-and-table.js'
import { highSpeed, kitFigures, readings } from './bruteforce/sets-gear.js'
import { boxes, dishCloseUp, octaAndStrip, shotThrough } from './bruteforce/sets-people.js'
import { overSetting } from './bruteforce/strengths.js'

const sets: readonly HandSet[] = [
  boxes(),
  octaAndStrip(),
  shotThrough(),
  dishCloseUp(),
  mirroredPair(),
  zooms(),
  group(),
  windowKey(),
  sunBehind(),
  ambientAndLamps(),
  onTheTable(),
  kitFigures(),
  readings(),
  highSpeed(),
]
const byName = sets.map((hand) => [hand.name, hand] as const)
const faced = sets.filter((hand) => hand.points.subject !== undefined)

/** Every light of the set at every point of it, metered by the language's defaults. */
const defaultReadings = (set: ComputedSet, hand: HandSet, name = (text: string) => text): readonly number[] =>
  Object.keys(hand.points).flatMap((at) =>
    [...Object.keys(hand.lamps).map((light) => [name(light)]), 'all' as const].map(
      (of) => set.reading({ at: name(at), of })?.luxSeconds ?? 0,
    ),
  )

const alike = (a: readonly number[], b: readonly number[], digits = 9): void => {
  expect(a).toHaveLength(b.length)
  a.forEach((one, i) => {
    expect(one / (b[i] === 0 ? 1 : b[i]!)).toBeCloseTo(b[i] === 0 ? 0 : 1, digits)
  })
}

describe('what a meter reads', () => {
  it.each(byName)('%s', (_, hand) => {
    expect(countReadings(hand)).toBeGreaterThan(12)
    expect(wrongReadings(computed(hand.plan), hand)).toEqual([])
  })

  it.each(faced.map((hand) => [hand.name, hand] as const))('over the camera: %s', (_, hand) => {
    const { key } = computed(hand.plan)
    const { fNumber, iso, losses } = hand.setting
    const want = keyByHand(hand)
    expect(Math.log2(key!.luxSeconds / want)).toBeCloseTo(0, 2)
    expect(key!.overCamera.stops).toBeCloseTo(overSetting(want, fNumber, iso, losses), 2)
    expect(key!.fNumber).toBeCloseTo(Math.sqrt((want * iso) / 250), 1)
  })
})

describe('what all sets keep to', () => {
  it.each(byName)('lights add up: %s', (_, hand) => {
    const set = computed(hand.plan)
    for (const at of Object.keys(hand.points)) {
      const surface = hand.points[at]!.out !== undefined
      const faces = surface ? 'out' : 'camera'
      const all = set.reading({ at, of: 'all', faces })!.luxSeconds
      const each = Object.keys(hand.lamps).map(
        (light) => set.reading({ at, of: [light], faces })?.luxSeconds ?? 0,
      )
      expect(each.reduce<number>((sum, one) => sum + one, 0) / all).toBeCloseTo(1, 9)
    }
  })

  it.each(byName)('its mirror image gives the same, sides swapped: %s', (_, hand) => {
    const there = defaultReadings(computed(hand.plan), hand)
    const back = defaultReadings(computed(mirrored(hand.plan)), hand, mirrored)
    alike(back, there, 3)
  })
})

describe('what the backdrop records', () => {
  it.each([mirroredPair(), zooms(), boxes()].map((hand) => [hand.name, hand] as const))('%s', (_, hand) => {
    const view = computed(hand.plan).backdropView!
    const { fNumber, iso, losses } = hand.setting
    const over = (x: number, z: number) =>
      overSetting(onBackdropByHand(hand, [x, view.middle.at[1], z]), fNumber, iso, losses)
    const [left, right] = ['backdrop-left', 'backdrop-right'].map((name) => hand.points[name]!.at[0])
    const [bottom, top] = ['backdrop-bottom', 'backdrop-top'].map((name) => hand.points[name]!.at[2])
    const steps = Array.from({ length: 13 }, (_, i) => i / 12)
    const found = steps.flatMap((u) =>
      steps.map((v) => over(left! + u * (right! - left!), bottom! + v * (top! - bottom!))),
    )
    const [darkest, brightest] = [Math.min(...found), Math.max(...found)]
    const middle = over(view.middle.at[0], view.middle.at[2])
    expect(Math.abs(view.middle.overCamera.stops - middle)).toBeLessThan(0.01)
    // The program looks between the places of this grid too.
    expect(view.darkest.overCamera.stops).toBeLessThan(darkest + 0.02)
    expect(view.darkest.overCamera.stops).toBeGreaterThan(darkest - 0.05)
    expect(view.brightest.overCamera.stops).toBeGreaterThan(brightest - 0.02)
    expect(view.brightest.overCamera.stops).toBeLessThan(brightest + 0.05)
    expect(view.spread.stops).toBeCloseTo(brightest - darkest, 1)
    // IEC 61966-2-1, of paper of 0.9.
    const linear = 0.9 * 2 ** middle
    const code = linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055
    expect(Math.abs(view.middle.srgb - Math.min(255, 255 * code))).toBeLessThan(1.5)
  })
})

/** A change, asked of one set, and the set as worked out by hand after it. */
const changes: readonly (readonly [string, HandSet, readonly Change[], HandSet])[] = [
  [
    'power of both backdrop lights up a stop',
    mirroredPair(),
    ['paper-left', 'paper-right'].map((light) => ({ knob: { knob: 'strength', light }, to: 1 })),
    mirroredPair({ stops: 1, written: { power: '1/4', aperture: 'f/5.6' } }),
  ],
  [
    'a metered key further off meters the same, and gives the backdrop more',
    mirroredPair(),
    [{ knob: { knob: 'light-distance', light: 'key' }, to: 2.4 }],
    mirroredPair({ keyTape: 2.4 }),
  ],
  [
    'subject further from the backdrop; its lights stay before it',
    mirroredPair(),
    [{ knob: { knob: 'behind' }, to: 3.2 }],
    mirroredPair({ behind: 3.2 }),
  ],
  [
    'aperture',
    mirroredPair(),
    [{ knob: { knob: 'aperture' }, to: 8 }],
    mirroredPair({ fNumber: 8, written: { power: '1/8', aperture: 'f/8' } }),
  ],
  [
    'a box of stated power nearer',
    boxes(),
    [{ knob: { knob: 'light-distance', light: 'fill' }, to: 3 }],
    boxes({ fillTape: 3 }),
  ],
  [
    'zoom of a bare flashgun',
    zooms(),
    [{ knob: { knob: 'zoom', light: 'wide' }, to: 0.05 }],
    zooms({ wide: 50 }),
  ],
]

describe('what if', () => {
  it.each(changes)('%s', (_, before, knobs, after) => {
    const was = computed(before.plan)
    const is = was.with(...knobs)
    const rewritten = computed(after.plan)
    alike(defaultReadings(is, after), defaultReadings(rewritten, after))
    expect(is.key!.overCamera.stops).toBeCloseTo(rewritten.key!.overCamera.stops, 9)
    expect(is.backdropView!.spread.stops).toBeCloseTo(rewritten.backdropView!.spread.stops, 9)
    expect(wrongReadings(is, after)).toEqual([])
    const { fNumber, iso, losses } = after.setting
    expect(is.key!.overCamera.stops).toBeCloseTo(overSetting(keyByHand(after), fNumber, iso, losses), 2)
  })
})

describe('limit cases', () => {
  const umbrella = (distance: number) =>
    computed(`plan: 1
title: One umbrella
camera: { lens: 85 mm, at: { distance: 3 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person, pose: seated }
lights:
  key: { unit: head 400 Ws, modifier: white umbrella 1 m, power: 1/2, at: { angle: 0 deg left, distance: ${distance} m, height: 1.2 m } }
`).reading({ at: 'subject', of: ['key'], dome: 'flat' })!.luxSeconds

  it('from far off, twice the distance is a quarter of the light', () => {
    for (const distance of [12, 25, 50])
      expect(Math.log2(umbrella(2 * distance) / umbrella(distance))).toBeCloseTo(-2, 2)
    // 400 Ws at 30 lm·s, half of them through the front, halved again by the power: Φ/π cd·s.
    expect((umbrella(100) * 100 ** 2 * Math.PI) / (400 * 30 * 0.5 * 0.5)).toBeCloseTo(1, 3)
  })

  it('near a disc, the light falls as 1/(r² + d²) on its axis', () => {
    for (const distance of [0.3, 0.5, 1])
      expect(Math.log2(umbrella(distance) / umbrella(2 * distance))).toBeCloseTo(
        Math.log2((0.25 + 4 * distance ** 2) / (0.25 + distance ** 2)),
        2,
      )
  })

  it('all lengths twice, all powers four times: the same light everywhere', () => {
    const plan = (k: number) => `plan: 1
title: To scale
camera: { lens: 85 mm, at: { distance: ${3 * k} m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person, height: ${1.7 * k} m, width: ${0.45 * k} m, depth: ${0.28 * k} m }
backdrop: { surface: white paper, behind: ${2 * k} m, width: ${2.7 * k} m, height: ${2.8 * k} m }
lights:
  key: { unit: head 400 Ws, modifier: softbox ${60 * k} x ${90 * k} cm, power: 1/${16 / k ** 2}, at: { angle: 35 deg left, distance: ${1.2 * k} m, height: ${2 * k} m } }
  fill: { unit: head 400 Ws, modifier: silver umbrella ${1.2 * k} m, power: 1/${32 / k ** 2}, at: { right: ${1.1 * k} m, front: ${1.5 * k} m, height: ${1.8 * k} m } }
  rim: { unit: head 200 Ws, modifier: beauty dish ${50 * k} cm, grid: 30 deg, power: 1/${8 / k ** 2}, at: { angle: 150 deg right, distance: ${1.4 * k} m, up: 20 deg } }
points: { hands: { front: ${0.2 * k} m, height: ${1.1 * k} m } }
`
    const points = ['subject', 'subject-back', 'subject-left', 'hair', 'hands', 'floor']
    const paper = ['backdrop', 'backdrop-left', 'backdrop-top']
    const [one, two] = [computed(plan(1)), computed(plan(2))] as const
    const light = (set: ComputedSet, names: readonly string[]) =>
      names.flatMap((at) =>
        [['key'], ['fill'], ['rim'], 'all' as const].map((of) => set.reading({ at, of })?.luxSeconds ?? 0),
      )
    alike(light(two, points), light(one, points))
    // What is seen of the backdrop changes a little: the lens is nearer to its focal length.
    alike(light(two, paper), light(one, paper), 1)
  })

  it('no built-in flash gives out more than 45 lm·s for each watt-second', () => {
    const units = { flashgun: 75, 'head 200 Ws': 200, 'head 600 Ws': 600 }
    const fronts: readonly (readonly [string, Pattern])[] = [
      ['softbox 60 x 90 cm', lambertian],
      ['softbox 40 x 40 cm', cosine(2)],
      ['octa 150 cm', lambertian],
      ['strip 30 x 120 cm', lambertian],
      ['white umbrella 1 m', lambertian],
      ['shoot-through umbrella 1 m', bothWays],
      ['silver umbrella 1.5 m', cosine(2)],
      ['deep umbrella 1.3 m', cosine(3)],
      ['beauty dish 55 cm', beam(80)],
      ['standard reflector', beam(60)],
      ['snoot', beam(20)],
      ['honeycomb 20 deg', honeycomb(beam(60), 20)],
      ['bare', () => 1],
    ]
    for (const [unit, energy] of Object.entries(units))
      for (const [modifier, pattern] of fronts) {
        const set = computed(`plan: 1
title: ${unit} in ${modifier}
camera: { lens: 85 mm, at: { distance: 3 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person, pose: seated }
lights:
  key: { unit: ${unit}, modifier: ${modifier}, power: full, at: { angle: 0 deg left, distance: 60 m, height: 1.2 m } }
`)
        const intensity = set.reading({ at: 'subject', of: ['key'], dome: 'flat' })!.luxSeconds * 60 ** 2
        const gives = (intensity * flux(pattern)) / energy
        expect(gives, `${unit}, ${modifier}`).toBeLessThan(45.05)
        expect(gives, `${unit}, ${modifier}`).toBeGreaterThan(0.5)
      }
  })
})
