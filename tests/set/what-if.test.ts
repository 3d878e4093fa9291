/** What-ifs against plans that have the change written in; and what they cost. */
import { describe, expect, it } from 'vitest'
import type { Light, Plan } from '../../src/language/plan.js'
import { computeSet } from '../../src/set/compute-set.js'
import type { ComputedSet } from '../../src/set/computed-set.js'
import type { Change } from '../../src/set/knobs.js'
import {
  flashgun,
  makeLight,
  makePlan,
  offsets,
  type PlanOverrides,
  softbox,
  tape,
} from '../helpers/make-plan.js'

/** Everything that a rule may ask, in stops. */
const figures = (set: ComputedSet): readonly number[] => [
  set.key?.figure.stops ?? Number.NaN,
  set.key?.overCamera.stops ?? Number.NaN,
  ...['subject', 'subject-back', 'hair', 'backdrop', 'backdrop-left', 'floor'].flatMap((at) =>
    ['all' as const, ['key'], ['paper'], ['fixed']].map(
      (of) => set.reading({ at, of })?.figure.stops ?? Number.NaN,
    ),
  ),
  ...(['middle', 'darkest', 'brightest'] as const).map(
    (which) => set.backdropView?.[which].overCamera.stops ?? Number.NaN,
  ),
]

const lights = (more: { key?: object; paper?: object } = {}): readonly Light[] => [
  makeLight('key', { modifier: softbox(0.6, 0.9), at: tape(35, 1.4, { height: 2 }), ...more.key }),
  makeLight('paper', {
    role: 'backdrop',
    at: offsets({ right: -1.5, beforeBackdrop: 1.5, height: 1.5 }),
    ...more.paper,
  }),
  makeLight('fixed', { role: 'fill', at: offsets({ right: 1.2, behind: -1.5, height: 1.8 }), power: 1 / 32 }),
]
const plan = (more: PlanOverrides = {}): Plan => makePlan({ lights: lights(), ...more })

/** Each change, and the plan as its author would have written it. */
const cases: readonly (readonly [string, Change, Plan])[] = [
  [
    'power',
    { knob: { knob: 'strength', light: 'key' }, to: 1 },
    plan({ lights: lights({ key: { power: 1 / 2 } }) }),
  ],
  [
    'power of one light leaves the others',
    { knob: { knob: 'strength', light: 'paper' }, to: -2 },
    plan({ lights: lights({ paper: { power: 1 / 16 } }) }),
  ],
  [
    'distance along the bearing, height kept',
    { knob: { knob: 'light-distance', light: 'key' }, to: 2 },
    plan({ lights: lights({ key: { at: tape(35, 2, { height: 2 }) } }) }),
  ],
  [
    'before the backdrop',
    { knob: { knob: 'before-backdrop', light: 'paper' }, to: 0.9 },
    plan({ lights: lights({ paper: { at: offsets({ right: -1.5, beforeBackdrop: 0.9, height: 1.5 }) } }) }),
  ],
  [
    'zoom',
    { knob: { knob: 'zoom', light: 'paper' }, to: 0.07 },
    plan({ lights: lights({ paper: { zoom: 0.07 } }) }),
  ],
  ['aperture', { knob: { knob: 'aperture' }, to: 8 }, plan({ camera: { aperture: 8 } })],
  ['ISO', { knob: { knob: 'iso' }, to: 400 }, plan({ camera: { iso: 400 } })],
  ['filter', { knob: { knob: 'filter' }, to: 3 }, plan({ camera: { filter: 3 } })],
  ['lens', { knob: { knob: 'lens' }, to: 0.05 }, plan({ camera: { lens: 0.05 } })],
  [
    'camera distance',
    { knob: { knob: 'camera-distance' }, to: 3.5 },
    plan({ camera: { at: { distance: 3.5, height: 0.94 * 1.72, right: 0 } } }),
  ],
  [
    'behind: lights stated before the backdrop go along, others stay',
    { knob: { knob: 'behind' }, to: 3 },
    plan({ backdrop: { behind: 3 } }),
  ],
  ['roll', { knob: { knob: 'backdrop-width' }, to: 1 }, plan({ backdrop: { width: 1 } })],
]

/** What-ifs keep the patches that surfaces were cut into for lights where they stood: bounce differs by that little. */
const patchesKept = 0.05

const alike = (a: ComputedSet, b: ComputedSet): void => {
  figures(a).forEach((stops, i) => {
    const other = figures(b)[i]!
    if (Number.isNaN(stops)) expect(other).toBeNaN()
    else expect(Math.abs(stops - other)).toBeLessThan(patchesKept)
  })
}

describe('with a change', () => {
  it.each(cases)('%s: the same as the plan that has it written in', (_, change, written) => {
    const set = computeSet(plan())
    figures(set)
    const after = set.with(change)
    alike(after, computeSet(written))
    expect(figures(after)).not.toEqual(figures(set))
  })

  it.each(cases)('%s: the plan and the set before it stay as they were', (_, change) => {
    const set = computeSet(plan())
    const before = figures(set)
    figures(set.with(change))
    expect(figures(set)).toEqual(before)
    expect(JSON.stringify([...set.plan.lights])).toBe(JSON.stringify([...plan().lights]))
  })

  it('several at once are one after the other', () => {
    const changes = cases.slice(0, 4).map(([, change]) => change)
    const set = computeSet(plan())
    const oneByOne = changes.reduce((so, change) => so.with(change), set)
    alike(set.with(...changes), oneByOne)
  })

  it('and its opposite give the set again', () => {
    const set = computeSet(plan())
    const there = set.with(
      { knob: { knob: 'behind' }, to: 3 },
      { knob: { knob: 'strength', light: 'key' }, to: 1.3 },
    )
    alike(
      there.with({ knob: { knob: 'behind' }, to: 2 }, { knob: { knob: 'strength', light: 'key' }, to: -1.3 }),
      set,
    )
  })

  it('a light placed by offsets moves by tape along its bearing, its height kept', () => {
    const set = computeSet(plan())
    const was = set.scene.lights.get('fixed')!.front!.centre
    const moved = set.with({ knob: { knob: 'light-distance', light: 'fixed' }, to: 2.5 })
    const is = moved.scene.lights.get('fixed')!.front!.centre
    const face = set.scene.subject.tapeFrom
    expect(Math.hypot(is[0] - face[0], is[1] - face[1], is[2] - face[2])).toBeCloseTo(2.5, 9)
    expect(is[2]).toBe(was[2])
    expect(Math.atan2(is[1] - face[1], is[0] - face[0])).toBeCloseTo(
      Math.atan2(was[1] - face[1], was[0] - face[0]),
      9,
    )
  })

  it('a light of a knob that the plan lacks changes nothing', () => {
    const set = computeSet(plan())
    alike(set.with({ knob: { knob: 'strength', light: 'nobody' }, to: 2 }), set)
  })
})

describe('strengths in a what-if', () => {
  const reading = {
    at: 'subject',
    of: ['key'],
    read: { reads: 11 },
    taken: undefined,
    kind: 'incident',
    dome: 'raised',
    faces: 'light',
    iso: 100,
  } as const
  const key = (set: ComputedSet) => set.reading({ at: 'subject', of: ['key'] })!

  it('stay as a reading found them', () => {
    const set = computeSet(plan({ readings: [reading] }))
    expect(key(set).fNumber).toBeCloseTo(11, 9)
    const strength = set.strength('key')!
    const moved = set.with({ knob: { knob: 'light-distance', light: 'key' }, to: 2.8 })
    // Moved for good, the reading would be taken for one at the new place.
    expect(moved.strength('key')).toEqual(strength)
    expect(key(moved).fNumber).toBeLessThan(6)
    expect(key(set.with({ knob: { knob: 'strength', light: 'key' }, to: 1 })).fNumber).toBeCloseTo(
      11 * Math.SQRT2,
      9,
    )
  })

  it('of a light that is to meter f/8 follow what it is to meter', () => {
    const metered = (at: object = {}) =>
      plan({ lights: lights({ key: { power: undefined, meters: { reads: 8, at: undefined }, ...at } }) })
    const set = computeSet(metered())
    const moved = set.with({ knob: { knob: 'light-distance', light: 'key' }, to: 2.8 })
    expect(key(moved).fNumber).toBeCloseTo(8, 9)
    alike(moved, computeSet(metered({ at: tape(35, 2.8, { height: 2 }) })))
    expect(key(set.with({ knob: { knob: 'strength', light: 'key' }, to: 1 })).fNumber).toBeCloseTo(
      8 * Math.SQRT2,
      9,
    )
    // At ISO 200 it is set a stop lower to show f/8 still.
    const faster = set.with({ knob: { knob: 'iso' }, to: 200 })
    expect(key(faster).fNumber).toBeCloseTo(8, 9)
    expect(key(faster).figure.stops - key(set).figure.stops).toBeCloseTo(-1, 9)
  })

  it('of continuous light follow the shutter, of flash not', () => {
    const metered = { reads: 4, shutter: 2 ** -7, iso: 100, kind: 'incident', colour: undefined } as const
    const set = computeSet(plan({ ambient: metered, camera: { shutter: 2 ** -7 } }))
    const slower = set.with({ knob: { knob: 'shutter' }, to: 2 ** -5 })
    const stops = (of: ComputedSet, name: string) => of.reading({ at: 'subject', of: [name] })!.figure.stops
    expect(stops(slower, 'ambient') - stops(set, 'ambient')).toBeCloseTo(2, 9)
    expect(stops(slower, 'key')).toBe(stops(set, 'key'))
    expect(slower.plan.camera.shutterMarked).toBeCloseTo(1 / 30, 12)
  })

  it('of a flash in high-speed sync fall with the shutter', () => {
    const set = computeSet(
      plan({
        camera: { shutter: 2 ** -8, shutterMarked: 1 / 250, sync: 1 / 200 },
        lights: lights({ key: { mode: 'high-speed' } }),
      }),
    )
    const faster = set.with({ knob: { knob: 'shutter' }, to: 2 ** -9 })
    expect(key(faster).figure.stops - key(set).figure.stops).toBeCloseTo(-1, 6)
  })
})

describe('work', () => {
  it('a set asked nothing computes nothing', () => {
    const set = computeSet(plan())
    expect(set.work.responses).toBe(0)
    expect(set.scene.lights.size).toBe(3)
    expect(set.lit.map((light) => light.name)).toEqual(['key', 'paper', 'fixed'])
    expect(set.unknown).toEqual([])
    expect(set.with({ knob: { knob: 'behind' }, to: 3 }).work.responses).toBe(0)
    // Rated strengths need no transport.
    expect(set.work.responses).toBe(0)
  })

  it('a key reading computes a response for each light that it counts, once', () => {
    const set = computeSet(plan())
    expect(set.key).toBe(set.key)
    expect(set.work.responses).toBe(2)
  })

  it('power, aperture, ISO and filter compute no transport again', () => {
    const set = computeSet(plan())
    figures(set)
    const { responses } = set.work
    const changes: readonly Change[] = [
      { knob: { knob: 'aperture' }, to: 11 },
      { knob: { knob: 'iso' }, to: 200 },
      { knob: { knob: 'filter' }, to: 2 },
      { knob: { knob: 'shutter' }, to: 2 ** -8 },
      // A whole stop on every light leaves darkest and brightest where they are.
      ...['key', 'paper', 'fixed'].map((light) => ({ knob: { knob: 'strength', light } as const, to: 1 })),
    ]
    for (const change of changes.slice(0, 4)) figures(set.with(change))
    figures(set.with(...changes))
    expect(set.work.responses).toBe(responses)
    expect(set.with(...changes).backdropView!.darkest.at).toEqual(set.backdropView!.darkest.at)
  })

  it('moving one light computes only what that light gives', () => {
    const set = computeSet(plan())
    const read = (of: ComputedSet) => of.reading({ at: 'hair', of: 'all' })
    read(set)
    const { responses } = set.work
    read(set.with({ knob: { knob: 'light-distance', light: 'key' }, to: 2 }))
    expect(set.work.responses - responses).toBe(1)
  })

  it('an unknown light costs nothing and gives nothing', () => {
    const set = computeSet(plan({ lights: [makeLight('key', { power: undefined }), ...lights().slice(1)] }))
    expect(set.unknown.map((light) => light.name)).toEqual(['key'])
    expect(set.key).toBeUndefined()
    expect(set.reading({ at: 'subject', of: ['key'] })).toBeUndefined()
    expect([...set.reading({ at: 'subject', of: 'all' })!.byLight.keys()]).toEqual(['paper', 'fixed'])
    const off = computeSet(plan({ lights: [makeLight('key', { on: false }), ...lights().slice(1)] }))
    expect(off.keyLights.map((light) => light.name)).toEqual(['fixed'])
    expect(off.reading({ at: 'subject', of: ['key'] })).toBeUndefined()
  })

  it('is quick: a what-if on power takes microseconds', () => {
    const set = computeSet(
      plan({ lights: [...lights(), makeLight('bare', { unit: flashgun, role: 'rim' })] }),
    )
    void set.key
    let sum = 0
    const started = performance.now()
    for (let i = 0; i < 5000; i++)
      sum += set.with({ knob: { knob: 'strength', light: 'key' }, to: i / 5000 }).key!.figure.stops
    const each = ((performance.now() - started) * 1000) / 5000
    expect(sum).toBeGreaterThan(0)
    // A few microseconds on a quiet machine; a transport computed anew would be a hundred times that.
    expect(each).toBeLessThan(150)
  })
})
