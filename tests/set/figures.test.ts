/** What a meter shows in a set: laws that hold whatever the model, and facts of the trade. */
import '../helpers/empty-space.js'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Plan } from '../../src/language/plan.js'
import { difference } from '../../src/light/figure.js'
import type { Vec3 } from '../../src/scene/vector.js'
import { unit } from '../../src/scene/vector.js'
import { computeSet } from '../../src/set/compute-set.js'
import { writeFNumber } from '../../src/units/marks.js'
import { anyPlan } from '../helpers/any-plan.js'
import {
  flashgun,
  makeLight,
  makeModifier,
  makePlan,
  offsets,
  softbox,
  sun,
  tape,
  windowUnit,
} from '../helpers/make-plan.js'
import { mirrorName, mirrorPlan, scalePlan } from '../helpers/mirror-plan.js'

/** Rated lights of every kind, in front of and behind the subject. */
const studio = (): Plan =>
  makePlan({
    camera: { at: { distance: 2.5, height: 1.5, right: 0.3 } },
    lights: [
      makeLight('key', { modifier: softbox(0.6, 0.9), at: tape(35, 1.4, { height: 2 }) }),
      makeLight('fill', {
        role: 'fill',
        modifier: makeModifier(),
        at: tape(-20, 2.2, { height: 1.6 }),
        power: 1 / 8,
      }),
      makeLight('rim', {
        role: 'rim',
        modifier: softbox(0.3, 1.2),
        at: tape(-150, 1.5, { height: 1.9 }),
        power: 1 / 16,
      }),
      makeLight('paper', {
        role: 'backdrop',
        modifier: softbox(0.4, 0.4),
        at: offsets({ right: -1.5, beforeBackdrop: 1.5, height: 1.5 }),
      }),
    ],
  })

const place = fc.tuple(
  fc.double({ min: -1.5, max: 1.5, noNaN: true }),
  fc.double({ min: -1.5, max: 1.9, noNaN: true }),
  fc.double({ min: 0, max: 2.4, noNaN: true }),
) as fc.Arbitrary<Vec3>
const direction = fc
  .tuple(
    fc.double({ min: -1, max: 1, noNaN: true }),
    fc.double({ min: -1, max: 1, noNaN: true }),
    fc.double({ min: -1, max: 1, noNaN: true }),
  )
  .map((at) => unit(at as Vec3))
const dome = fc.constantFrom('raised' as const, 'flat' as const)

describe('laws', () => {
  it('lights add: all is the sum of each alone, anywhere', () => {
    const set = computeSet(studio())
    fc.assert(
      fc.property(place, direction, dome, (at, toward, raised) => {
        const read = (of: 'all' | readonly string[]) =>
          set.reading({ at, of, dome: raised, faces: { direction: toward } })?.luxSeconds ?? 0
        const each = set.lit.map((light) => read([light.name]))
        const sum = each.reduce<number>((a, b) => a + b, 0)
        expect(Math.abs(read('all') - sum)).toBeLessThanOrEqual(1e-9 * sum)
      }),
    )
  })

  it('a mirrored plan gives the same figures, names of sides swapped', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const set = computeSet(plan)
        const mirrored = computeSet(mirrorPlan(plan))
        for (const of of ['all' as const, ...[...set.plan.lights.keys()].map((name) => [name])]) {
          for (const at of set.scene.points.keys()) {
            const here = set.reading({ at, of })
            const there = mirrored.reading({ at: mirrorName(at), of })
            // What is a few ten-thousandths of a lux-second, kilometres off, is let be.
            if (here === undefined || here.figure.stops < -12) continue
            const apart = Math.abs((there?.figure.stops ?? Number.NEGATIVE_INFINITY) - here.figure.stops)
            // Where a front peeps over the horizon of a surface, the pieces into which it is cut show.
            expect(apart).toBeLessThan(here.faces === 'out' ? 0.05 : 1e-6)
          }
        }
        expect(mirrored.key?.figure.stops ?? 0).toBeCloseTo(set.key?.figure.stops ?? 0, 3)
      }),
      { numRuns: 100, seed: 1, endOnFailure: true },
    )
  })

  it('mirrors the view of the backdrop', () => {
    const view = computeSet(studio()).backdropView!
    const mirrored = computeSet(mirrorPlan(studio())).backdropView!
    const swapped = (where: string) =>
      where.replace(/left|right/, (side) => (side === 'left' ? 'right' : 'left'))
    for (const which of ['middle', 'darkest', 'brightest'] as const) {
      expect(mirrored[which].overCamera.stops).toBeCloseTo(view[which].overCamera.stops, 9)
      expect(mirrored[which].where).toBe(swapped(view[which].where))
      expect(mirrored[which].at[0]).toBeCloseTo(-view[which].at[0], 9)
    }
    expect(mirrored.left).toBeCloseTo(-view.right, 9)
  })

  it('a set k times as large, its power k² times, meters the same', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.3, max: 4, noNaN: true }), (k) => {
        const plan = studio()
        const large = scalePlan(plan, k)
        const lights = new Map(
          [...large.lights].map(([name, light]) => [
            name,
            { ...light, power: (light.power! * k * k) as never },
          ]),
        )
        const set = computeSet(plan)
        const scaled = computeSet({ ...large, lights })
        for (const name of ['subject', 'subject-back', 'hair', 'backdrop', 'floor'])
          for (const of of ['all' as const, ['key'], ['paper']])
            expect(scaled.reading({ at: name, of })?.figure.stops ?? 0).toBeCloseTo(
              set.reading({ at: name, of })?.figure.stops ?? 0,
              9,
            )
      }),
      { numRuns: 25, seed: 1 },
    )
  })

  it('the camera, wherever it goes, moves no light’s reading at a fixed place', () => {
    const set = computeSet(studio())
    const fixed = [
      { at: 'subject', of: ['key'] },
      { at: 'hair', of: ['rim'] },
      { at: [0.4, 1.2, 1] as Vec3, of: 'all' as const, faces: { direction: [0, -1, 0] as Vec3 } },
    ]
    fc.assert(
      fc.property(
        fc.double({ min: -1.5, max: 1.5, noNaN: true }),
        fc.double({ min: 1, max: 4, noNaN: true }),
        fc.double({ min: 0.035, max: 0.2, noNaN: true }),
        (right, distance, lens) => {
          const plan = studio()
          const camera = { ...plan.camera, lens, at: { ...plan.camera.at, right, distance } }
          const moved = computeSet({ ...plan, camera: camera as Plan['camera'] })
          for (const ask of fixed)
            expect(moved.reading(ask)!.figure.stops).toBe(set.reading(ask)!.figure.stops)
        },
      ),
      { numRuns: 25, seed: 1 },
    )
  })

  it('twice the power is a stop more, of that light only', () => {
    const plan = studio()
    const lights = new Map(plan.lights).set('key', { ...plan.lights.get('key')!, power: 0.5 as never })
    const [before, after] = [computeSet(plan), computeSet({ ...plan, lights })]
    const ask = { at: 'subject', of: ['key'] }
    expect(after.reading(ask)!.figure.stops - before.reading(ask)!.figure.stops).toBeCloseTo(1, 12)
    const other = { at: 'subject', of: ['fill'] }
    expect(after.reading(other)!.figure.stops).toBe(before.reading(other)!.figure.stops)
  })
})

describe('the trade (common practice, no source)', () => {
  const one = (reads: number) =>
    computeSet(
      makePlan({ lights: [makeLight('key', { power: undefined, meters: { reads, at: undefined } })] }),
    )
  const shows = (reads: number) => writeFNumber(one(reads).reading({ at: 'subject', of: ['key'] })!.fNumber)

  it('one stop over a key of f/5.6 meters f/8, and f/7.1 is a third under that', () => {
    expect(shows(2 ** 2.5)).toBe('f/5.6')
    expect(shows(2 ** 2.5 * Math.SQRT2)).toBe('f/8')
    expect(shows(2 ** (3 ** 1) * 2 ** (-1 / 6))).toBe('f/7.1')
    const stronger = one(2 ** 2.5).with({ knob: { knob: 'strength', light: 'key' }, to: 2 / 3 })
    expect(writeFNumber(stronger.reading({ at: 'subject', of: ['key'] })!.fNumber)).toBe('f/7.1')
  })

  it('moving the key nearer, the exposure following the face, darkens the backdrop', () => {
    const set = computeSet(
      makePlan({ lights: [makeLight('key', { modifier: softbox(0.6, 0.9), at: tape(20, 2) })] }),
    )
    const drop = (distance: number) => {
      const moved = set.with({ knob: { knob: 'light-distance', light: 'key' }, to: distance })
      return difference(moved.reading({ at: 'backdrop', of: 'all' })!.figure, moved.key!.figure).stops
    }
    const drops = [3, 2.4, 1.8, 1.2, 0.8].map(drop)
    for (let i = 1; i < drops.length; i++) expect(drops[i]!).toBeLessThan(drops[i - 1]! - 0.2)
  })

  it('with the light three metres from a subject near the backdrop, face and backdrop meter almost alike', () => {
    const apart = (distance: number, behind: number) => {
      const set = computeSet(
        makePlan({
          backdrop: { behind },
          lights: [makeLight('key', { modifier: softbox(0.6, 0.9), at: tape(10, distance) })],
        }),
      )
      return difference(set.reading({ at: 'backdrop', of: 'all' })!.figure, set.key!.figure).stops
    }
    expect(Math.abs(apart(3, 0.4))).toBeLessThan(0.45)
    expect(apart(1, 2)).toBeLessThan(-2.5)
  })

  it('light falls off two stops with the distance doubled, from a small light', () => {
    const set = computeSet(makePlan({ lights: [makeLight('key', { at: tape(0, 1.5) })] }))
    const at = (distance: number) =>
      set
        .with({ knob: { knob: 'light-distance', light: 'key' }, to: distance })
        .reading({ at: 'subject', of: ['key'] })!.figure.stops
    expect(at(1.5) - at(3)).toBeCloseTo(2, 2)
  })
})

describe('what the camera makes of it', () => {
  const set = (camera: object) =>
    computeSet(
      makePlan({
        camera: { aperture: 8, iso: 100, focus: { on: 'distance', distance: 1000 }, ...camera },
        lights: [
          makeLight('key', { power: undefined, meters: { reads: 8, at: undefined }, at: tape(0, 1.5) }),
        ],
      }),
    )

  it('a key metered at the camera’s aperture is level with it; a filter takes what it says', () => {
    const key = (camera: object) => set(camera).reading({ at: 'subject', of: ['key'] })!
    expect(key({}).overCamera.stops).toBeCloseTo(0, 3)
    expect(key({ filter: 3 }).overCamera.stops).toBeCloseTo(-3, 3)
    // The meter does not look through the filter.
    expect(key({ filter: 3 }).fNumber).toBeCloseTo(8, 9)
    expect(key({ aperture: 4 }).overCamera.stops).toBeCloseTo(2, 3)
  })

  it('close up it loses what the extension takes: two stops at life size', () => {
    const near = set({ lens: 0.1, focus: { on: 'distance', distance: 0.2 } })
    expect(near.reading({ at: 'subject', of: ['key'] })!.overCamera.stops).toBeCloseTo(-2, 9)
  })

  it('paper of 0.9 level with the camera records 243, and 255 a quarter stop of headroom further', () => {
    const plan = (reads: number) =>
      computeSet(
        makePlan({
          camera: { aperture: 8, focus: { on: 'distance', distance: 1000 } },
          lights: [
            makeLight('paper', {
              role: 'backdrop',
              power: undefined,
              meters: { reads, at: undefined },
              at: offsets({ right: 0, behind: -30, height: 1.6 }),
            }),
          ],
        }),
      ).backdropView!.middle
    // The camera's lens is focused at a kilometre: no close-up loss.
    expect(plan(8).srgb).toBe(243)
    expect(plan(8 * 2 ** 0.21).linear).toBeGreaterThan(2 ** 0.25)
  })
})

describe('continuous light', () => {
  const outdoors = (camera: object) =>
    computeSet(
      makePlan({
        camera: { iso: 100, ...camera },
        ambient: { reads: 2 ** 1.5, shutter: 2 ** -6, iso: 100, kind: 'incident', colour: undefined },
        lights: [],
      }),
    )
  const reads = (camera: object) => outdoors(camera).reading({ at: 'subject', of: ['ambient'] })!.fNumber

  it('follows shutter and ISO, by the marks', () => {
    // f/2.8 at 1/60, ISO 100: f/2 at 1/125, f/4 at 1/125 and ISO 400, f/5.6 at 1/15. By the scale of stops.
    expect(reads({ shutter: 2 ** -7 })).toBeCloseTo(2, 9)
    expect(reads({ shutter: 2 ** -7, iso: 400 })).toBeCloseTo(4, 9)
    expect(reads({ shutter: 2 ** -4 })).toBeCloseTo(2 ** 2.5, 9)
  })

  it('a flash does not care for the shutter, a sun and a window do', () => {
    const metered = { reads: 8, shutter: 2 ** -7, iso: 100, kind: 'incident', colour: undefined } as const
    const at = (shutter: number) =>
      computeSet(
        makePlan({
          camera: { shutter, shutterMarked: shutter, sync: 1 / 200 },
          lights: [
            makeLight('key'),
            makeLight('sun', {
              role: 'rim',
              unit: sun,
              reads: metered,
              power: undefined,
              at: tape(150, 5, { upDegrees: 20 }),
            }),
            makeLight('window', {
              role: 'fill',
              unit: windowUnit,
              reads: metered,
              power: undefined,
              size: { width: 1.2, height: 1.5 },
              at: offsets({ right: -1.8, height: 1.4 }),
              faces: { kind: 'side', side: 'right' },
            }),
          ],
        }),
      )
    const read = (shutter: number, light: string) =>
      at(shutter).reading({ at: 'subject', of: [light] })!.figure.stops
    expect(read(2 ** -8, 'key')).toBe(read(2 ** -7, 'key'))
    for (const light of ['sun', 'window']) {
      expect(at(2 ** -7).reading({ at: 'subject', of: [light] })!.fNumber).toBeCloseTo(8, 9)
      expect(read(2 ** -8, light) - read(2 ** -7, light)).toBeCloseTo(-1, 9)
    }
  })

  it('the ambient reading holds what sun and window give: together they meter what was read', () => {
    const metered = (reads: number) =>
      ({ reads, shutter: 2 ** -7, iso: 100, kind: 'incident', colour: undefined }) as const
    const set = computeSet(
      makePlan({
        camera: { shutter: 2 ** -7 },
        ambient: metered(8),
        lights: [
          makeLight('sun', {
            role: 'key',
            unit: sun,
            reads: metered(5.6),
            power: undefined,
            at: tape(60, 5, { upDegrees: 20 }),
          }),
        ],
      }),
    )
    const together = set.reading({ at: 'subject', of: ['sun', 'ambient'], faces: 'camera' })!
    expect(together.fNumber).toBeCloseTo(8, 9)
    expect(set.reading({ at: 'subject', of: ['ambient'] })!.fNumber).toBeLessThan(8)
  })

  it('a modelling lamp counts with everything, not with its flash alone', () => {
    const lamp = { ...flashgun, modelling: 150 } as typeof flashgun
    const set = (modelling: boolean, shutter = 1 / 160) =>
      computeSet(
        makePlan({
          camera: { shutter },
          lights: [makeLight('key', { unit: lamp, modifier: softbox(0.6, 0.9), modelling })],
        }),
      )
    const read = (of: 'all' | string[], on: boolean, shutter?: number) =>
      set(on, shutter).reading({ at: 'subject', of, faces: 'camera' })!.luxSeconds
    expect(read(['key'], true)).toBe(read(['key'], false))
    const adds = read('all', true) - read('all', false)
    expect(adds).toBeGreaterThan(0)
    expect(read(['key modelling lamp'], true)).toBeCloseTo(adds, 9)
    expect(read(['key modelling lamp'], true, 1 / 80)).toBeCloseTo(2 * adds, 9)
  })
})
