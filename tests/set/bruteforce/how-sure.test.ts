/**
 * How sure a figure is, against chance: strengths are drawn a good many times from what is known of them, the light is
 * added up by hand each time, and the spread of the figure is taken. One standard deviation each, stops.
 */
import { describe, expect, it } from 'vitest'
import { difference } from '../../../src/light/figure.js'
import { deviation, normally } from './chance.js'
import { computed } from './compare.js'
import { disc, rectangle } from './fronts.js'
import { cameraAt, onTheBackdrop, standing } from './hand-set.js'
import { dome, flat, front, type Lamp, type Receptor } from './lamps.js'
import { lambertian } from './patterns.js'
import { fromGuideNumber, zoomHead } from './strengths.js'
import { byTape, toward, type Vector } from './vectors.js'

/** What is known of a guide number, a modifier's usual loss, two units of one make, the camera, the geometry. */
const guideNumber = 0.35
const ownPart = 0.15
const sharedPart = Math.sqrt(guideNumber ** 2 - ownPart ** 2)
const loss = 0.6
const rendering = 0.15
/** A tenth between two points of one light: half of the variance at each, each light's own. */
const geometry = 0.1 / Math.SQRT2

const draws = 20_000

interface Unsure {
  readonly lamp: Lamp
  /** Lamps with a modifier of one name share its loss. */
  readonly modifier?: string
}

/** Log₂ of the light at each receptor, drawn again and again: all units are of one entry of the kit. */
const drawn = (
  lamps: readonly Unsure[],
  receptors: readonly (readonly [receptor: Receptor, of: readonly number[]])[],
  figure: (stops: readonly number[], normal: () => number) => number,
): number => {
  const normal = normally(20_240_501)
  const parts = receptors.map(([receptor, of]) => of.map((i) => [i, lamps[i]!.lamp.gives(receptor)] as const))
  const modifiers = [...new Set(lamps.flatMap(({ modifier }) => modifier ?? []))]
  const values = Array.from({ length: draws }, () => {
    const make = sharedPart * normal()
    const lost = new Map(modifiers.map((name) => [name, loss * normal()]))
    const off = lamps.map(({ modifier }) => make + ownPart * normal() + (lost.get(modifier ?? '') ?? 0))
    const stops = parts.map((of) =>
      Math.log2(of.reduce((sum, [i, light]) => sum + light * 2 ** (off[i]! + geometry * normal()), 0)),
    )
    return figure(stops, normal)
  })
  return deviation(values)
}

const plan = (lights: string) => `plan: 1
title: How sure
kit:
  units: { gun: { guide-number: 36 m at 35 mm, zoom: 24..105 mm } }
camera: { lens: 85 mm, at: { distance: 3 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: white paper, behind: 2 m }
lights:
${lights}`

const eye = cameraAt(3, standing[2])
const atFace: Receptor = { at: standing, faces: toward(standing, eye), kernel: dome }
const onPaper = (at: Vector): Receptor => ({ at, faces: onTheBackdrop, kernel: flat })
const box = (middle: Vector, share: number): Unsure => ({
  lamp: front({
    middle,
    aim: standing,
    shape: rectangle(0.6, 0.9),
    pattern: lambertian,
    strength: (fromGuideNumber(36) / 2 ** 2) * share,
  }),
  modifier: 'box',
})
const umbrella = (middle: Vector, share: number): Unsure => ({
  lamp: front({
    middle,
    aim: standing,
    shape: disc(1),
    pattern: lambertian,
    strength: (fromGuideNumber(36) / 2 ** 2.2) * share,
  }),
  modifier: 'umbrella',
})
const bare = (middle: Vector, aim: Vector, share: number): Unsure => {
  const { strength, pattern } = zoomHead(36, 35)
  return {
    lamp: front({
      middle,
      aim,
      shape: rectangle(0.075, 0.045, 24),
      pattern,
      strength: strength * share,
    }),
  }
}
const middle: Vector = [0, 2, standing[2]]

const within = (got: number, want: number): void => {
  expect(got / want).toBeGreaterThan(0.9)
  expect(got / want).toBeLessThan(1.1)
}

describe('how sure a figure is', () => {
  it('key and fill over the camera, one unit, two modifiers', () => {
    const set = computed(
      plan(`  key: { unit: gun, modifier: softbox 60 x 90 cm, power: 1/4, at: { angle: 40 deg left, distance: 1.4 m, height: 2 m } }
  fill: { unit: gun, modifier: white umbrella 1 m, power: 1/4, at: { angle: 20 deg right, distance: 1.8 m, height: 1.8 m } }
`),
    )
    const sampled = drawn(
      [box(byTape(standing, 40, 1.4, 2), 1 / 4), umbrella(byTape(standing, -20, 1.8, 1.8), 1 / 4)],
      [[atFace, [0, 1]]],
      ([face], normal) => face! + rendering * normal(),
    )
    within(set.u(set.key!.overCamera), sampled)
  })

  const backdropOverKey = (set: ReturnType<typeof computed>) =>
    set.u(difference(set.reading({ at: 'backdrop', of: 'all' })!.figure, set.key!.figure))

  it('backdrop over key, both lights bare units of one kit entry: what they share cancels', () => {
    const set = computed(
      plan(`  key: { unit: gun, power: 1/16, at: { angle: 50 deg left, distance: 1.8 m, height: 2 m } }
  paper: { role: backdrop, unit: gun, power: 1/8, at: { right: 1.2 m, before-backdrop: 1 m, height: 1.5 m } }
`),
    )
    const sampled = drawn(
      [bare(byTape(standing, 50, 1.8, 2), standing, 1 / 16), bare([1.2, 1, 1.5], middle, 1 / 8)],
      [
        [onPaper(middle), [0, 1]],
        [atFace, [0]],
      ],
      ([paper, face]) => paper! - face!,
    )
    within(backdropOverKey(set), sampled)
    // Each alone is known to a third of a stop; that would be half a stop between them.
    expect(backdropOverKey(set)).toBeLessThan(0.3)
  })

  it('backdrop over key, one unit, the key alone in a box', () => {
    const set = computed(
      plan(`  key: { unit: gun, modifier: softbox 60 x 90 cm, power: 1/4, at: { angle: 40 deg left, distance: 1.4 m, height: 2 m } }
  paper: { role: backdrop, unit: gun, power: 1/16, at: { right: 1.2 m, before-backdrop: 1 m, height: 1.5 m } }
`),
    )
    const sampled = drawn(
      [box(byTape(standing, 40, 1.4, 2), 1 / 4), bare([1.2, 1, 1.5], middle, 1 / 16)],
      [
        [onPaper(middle), [0, 1]],
        [atFace, [0]],
      ],
      ([paper, face]) => paper! - face!,
    )
    within(backdropOverKey(set), sampled)
  })

  it('backdrop over key, both lights of one entry and in one kind of box', () => {
    const set = computed(
      plan(`  key: { unit: gun, modifier: softbox 60 x 90 cm, power: 1/4, at: { angle: 40 deg left, distance: 1.4 m, height: 2 m } }
  paper: { role: backdrop, unit: gun, modifier: softbox 60 x 90 cm, power: full, at: { right: 1.2 m, before-backdrop: 1.2 m, height: 1.5 m }, aim: subject }
`),
    )
    const sampled = drawn(
      [box(byTape(standing, 40, 1.4, 2), 1 / 4), box([1.2, 0.8, 1.5], 1)],
      [
        [onPaper(middle), [0, 1]],
        [atFace, [0]],
      ],
      ([paper, face]) => paper! - face!,
    )
    within(backdropOverKey(set), sampled)
  })

  it('spread of the backdrop between two bare units', () => {
    const set = computed(
      plan(`  key: { unit: gun, modifier: softbox 60 x 90 cm, power: 1/64, at: { angle: 40 deg left, distance: 1.4 m, height: 2 m } }
  paper-left: { role: backdrop, unit: gun, power: 1/4, at: { left: 1.3 m, before-backdrop: 80 cm, height: 1.5 m } }
  paper-right: { role: backdrop, unit: gun, power: 1/8, at: { right: 1.2 m, before-backdrop: 1 m, height: 1.4 m } }
`),
    )
    const view = set.backdropView!
    const sampled = drawn(
      [
        box(byTape(standing, 40, 1.4, 2), 1 / 64),
        bare([-1.3, 1.2, 1.5], middle, 1 / 4),
        bare([1.2, 1, 1.4], middle, 1 / 8),
      ],
      [
        [onPaper(view.brightest.at), [0, 1, 2]],
        [onPaper(view.darkest.at), [0, 1, 2]],
      ],
      ([bright, dark]) => bright! - dark!,
    )
    within(set.u(view.spread), sampled)
  })
})

describe('how sure a strength is, by what it is known from', () => {
  const known = (light: string, more = '') =>
    computed(`plan: 1
title: How sure
kit:
  units:
    gun: { guide-number: 36 m at 35 mm, zoom: 24..105 mm }
    metered: { meters: f/8 at 2 m }
    counted: { energy: 300 Ws, reflector: 60 deg }
  measured:
    - { unit: gun, modifier: octa 90 cm, power: 1/4, distance: 1.2 m, reads: f/5.6, iso: 100 }
camera: { lens: 85 mm, at: { distance: 3 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: grey paper, behind: 1 m }
lights:
  key: { ${light}, at: { angle: 30 deg left, distance: 2 m, height: 2 m } }
${more}`).strength('key')!.u

  it.each([
    ['guide number', 'unit: gun, power: 1/4', '', 0.35],
    [
      'guide number and a usual loss',
      'unit: gun, modifier: softbox 60 x 90 cm, power: 1/4',
      '',
      Math.hypot(0.35, 0.6),
    ],
    ['metered at a distance', 'unit: metered, power: 1/4', '', 0.2],
    ['watt-seconds in a known reflector', 'unit: counted, power: 1/4', '', 0.4],
    ['calibrated once', 'unit: gun, modifier: octa 90 cm, power: 1/4', '', 0.15],
    [
      'read',
      'unit: gun, power: 1/4',
      'readings: [{ at: subject, of: [key], reads: f/8, taken: { key: { power: 1/4 } } }]',
      0.15,
    ],
    [
      'read two stops away',
      'unit: gun, power: 1/4',
      'readings: [{ at: subject, of: [key], reads: f/8, taken: { key: { power: 1/16 } } }]',
      0.25,
    ],
    [
      'read off the paper',
      'unit: gun, power: 1/4',
      'readings: [{ at: backdrop, of: [key], reads: f/4, kind: reflected, taken: { key: { power: 1/4 } } }]',
      0.2,
    ],
    [
      'recorded by a test frame',
      'unit: gun, power: 1/4',
      'readings: [{ at: backdrop, of: [key], records: 90, taken: { key: { power: 1/4 } } }]',
      0.3,
    ],
  ])('%s', (_, light, more, u) => {
    expect(known(light, more)).toBeCloseTo(u, 5)
  })
})
