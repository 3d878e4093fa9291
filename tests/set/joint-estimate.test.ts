/**
 * All readings of a plan together: what sums, kinds, test frames and old settings tell of each light, how the readings fit
 * each other, and what one more would be worth. By hand: Bayes' rule for normal errors, sums of light, the scale of stops.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Light, MeterReading, Plan } from '../../src/language/plan.js'
import { difference } from '../../src/light/figure.js'
import { computeSet } from '../../src/set/compute-set.js'
import type { ComputedSet, MeterAsk } from '../../src/set/computed-set.js'
import { anyPlan } from '../helpers/any-plan.js'
import {
  flashgun,
  makeLight,
  makePlan,
  offsets,
  type PlanOverrides,
  sun,
  surface,
  tape,
} from '../helpers/make-plan.js'

type Some = { [K in keyof MeterReading]?: unknown }

const reading = (of: MeterReading['of'], reads: number, more: Some = {}): MeterReading =>
  ({
    at: 'subject',
    of,
    read: { reads },
    taken: undefined,
    kind: 'incident',
    dome: 'raised',
    faces: 'camera',
    iso: 100,
    ...more,
  }) as MeterReading

const gun = (name: string): Light['unit'] => ({ ...flashgun, name })

/** Key and fill of different make, to either side of the camera. */
const key = (more: object = {}) =>
  makeLight('key', { unit: gun('one'), at: tape(20, 2), power: 1 / 4, ...more })
const fill = (more: object = {}) =>
  makeLight('fill', { role: 'fill', unit: gun('two'), at: tape(-20, 2), power: 1 / 4, ...more })

const plan = (readings: readonly MeterReading[], more: PlanOverrides = {}): Plan =>
  makePlan({
    camera: { iso: 100, shutter: 2 ** -7 },
    lights: [key(), fill()],
    ...more,
    readings: readings as never,
  })
const shows = (set: ComputedSet, of: MeterAsk['of'], at = 'subject') =>
  set.reading({ at, of, faces: 'camera' })!.fNumber

describe('readings of several lights', () => {
  it('fix their sum and leave each open', () => {
    const [rated, set] = [computeSet(plan([])), computeSet(plan([reading(['key', 'fill'], 11)]))]
    // Two equal lights, 0.35 each: their sum is 0.25 unsure by ratings, and read to 0.132 (two domes, one reading).
    const [prior, read] = [0.35 ** 2 / 2, 0.15 ** 2 - 0.1 ** 2 + 0.1 ** 2 / 2]
    const rise = 2 * Math.log2(11 / shows(rated, ['key', 'fill']))
    const moved = 2 * Math.log2(shows(set, ['key', 'fill']) / shows(rated, ['key', 'fill']))
    expect(moved / rise).toBeCloseTo(prior / (prior + read), 3)
    expect(shows(set, ['key'])).toBeCloseTo(shows(set, ['fill']), 6)
    const posterior = (prior * read) / (prior + read)
    const both = set.reading({ at: 'subject', of: ['key', 'fill'], faces: 'camera' })!.figure
    expect(set.u(both) ** 2 - both.variance).toBeCloseTo(posterior, 6)
    const apart = difference(
      set.reading({ at: 'subject', of: ['key'], faces: 'camera' })!.figure,
      set.reading({ at: 'subject', of: ['fill'], faces: 'camera' })!.figure,
    )
    expect(set.u(apart)).toBeCloseTo(Math.hypot(0.35, 0.35, 0.1), 3)
    expect(set.strength('key')!.from).toBe('guide number')
  })

  it('less a light that is known give one of which nothing else is: f/8 and f/8 and a stop is f/11', () => {
    const unset = { lights: [key(), fill({ power: undefined })] }
    const set = computeSet(plan([reading(['key'], 8), reading('all', 8 * Math.SQRT2)], unset))
    expect(set.unknown).toEqual([])
    expect(set.strength('fill')!.from).toBe('reading')
    expect(shows(set, ['fill'])).toBeCloseTo(8, 1)
    // d log₂(sum − key) = 2·ds − 1·dk, each 0.15, of which the key's dome is in both.
    expect(set.strength('fill')!.u).toBeGreaterThan(0.25)
    expect(set.strength('fill')!.u).toBeLessThan(0.34)
  })

  it('of two lights of which nothing else is known leave both unknown', () => {
    const unset = { lights: [key({ power: undefined }), fill({ power: undefined })] }
    const set = computeSet(plan([reading('all', 11)], unset))
    expect(set.unknown.map(({ name }) => name)).toEqual(['key', 'fill'])
    expect(set.key).toBeUndefined()
  })

  it('count the settings that each light had then', () => {
    const taken = new Map([
      ['key', { power: 1 / 16, distance: 2 }],
      ['fill', { power: 1 / 4, distance: 4 }],
    ])
    // Key f/8 alone today, two stops down then; fill f/8 alone today, two stops less from twice as far: half the light
    // of f/8 in all, a stop under f/8.
    const readings = [reading(['key'], 8), reading(['fill'], 8), reading('all', 8 / Math.SQRT2, { taken })]
    const set = computeSet(plan(readings))
    expect(set.readings[2]!.difference).toBeCloseTo(0, 2)
    expect(shows(set, ['key', 'fill'])).toBeCloseTo(8 * Math.SQRT2, 1)
  })

  it('in any order, of lights in any order, tell the same', () => {
    const readings = [
      reading(['key'], 8),
      reading(['key', 'fill'], 10),
      reading('all', 5.6, { at: 'backdrop', dome: 'flat', faces: 'out' }),
    ]
    const one = computeSet(plan(readings))
    const other = computeSet(plan([...readings].reverse(), { lights: [fill(), key()] }))
    for (const name of ['key', 'fill']) {
      expect(Math.log2(other.strength(name)!.candelaSeconds)).toBeCloseTo(
        Math.log2(one.strength(name)!.candelaSeconds),
        6,
      )
      expect(other.strength(name)!.u).toBeCloseTo(one.strength(name)!.u, 6)
    }
    expect(other.readings.map(({ difference }) => difference).reverse()).toEqual(
      one.readings.map(({ difference }) => expect.closeTo(difference, 6)),
    )
  })

  it('count modelling lamps with all, as the light itself does', () => {
    const lamp = { ...flashgun, modelling: 650 } as Light['unit']
    const lit = plan([], { lights: [makeLight('key', { unit: lamp, modelling: true, at: tape(20, 2) })] })
    const set = computeSet(lit)
    const all = reading('all', shows(set, 'all'))
    const again = computeSet({ ...lit, readings: [all] })
    expect(again.readings[0]!.lights).toEqual(['key', 'key modelling lamp'])
    expect(again.readings[0]!.difference).toBeCloseTo(0, 9)
  })
})

describe('gear that lights share', () => {
  const twins = (readings: readonly MeterReading[]) =>
    computeSet(plan(readings, { lights: [key(), fill({ unit: gun('one') })] }))

  it('a unit that was read a stop under its rating is so in the other light too, for the most part', () => {
    const rated = shows(twins([]), ['key'])
    const set = twins([reading(['key'], rated / Math.SQRT2)])
    const fell = 2 * Math.log2(shows(set, ['fill']) / rated)
    // Shared 0.35² − 0.15² of 0.35².
    expect(fell).toBeCloseTo(-(0.35 ** 2 - 0.15 ** 2) / 0.35 ** 2, 3)
    expect(set.strength('fill')!.u).toBeLessThan(0.3)
    expect(set.strength('fill')!.from).toBe('guide number')
  })

  it('lights of other make stay as rated', () => {
    const set = computeSet(plan([reading(['key'], 4)]))
    const rated = computeSet(plan([])).strength('fill')!
    expect(set.strength('fill')!.candelaSeconds).toBeCloseTo(rated.candelaSeconds, 9)
    expect(set.strength('fill')!.u).toBeCloseTo(rated.u, 12)
  })
})

describe('readings against each other', () => {
  const held = (readings: readonly MeterReading[], more: PlanOverrides = {}) =>
    computeSet(plan(readings, more)).readings

  it('a lone one is held against the rating', () => {
    const rated = shows(computeSet(plan([])), ['key'])
    const [one] = held([reading(['key'], 2 * rated)])
    expect(one).toMatchObject({ index: 0, lights: ['key'] })
    expect(one!.predicted).toBeCloseTo(rated, 6)
    expect(one!.read).toBe(2 * rated)
    expect(one!.difference).toBeCloseTo(2, 6)
    // Rating, reading, and the half of geometry that its point brings.
    expect(one!.u).toBeCloseTo(Math.hypot(0.35, 0.15, 0.1 / Math.SQRT2), 6)
  })

  it('one of a light that was read before is held against that reading', () => {
    const pair = held([reading(['key'], 8), reading(['key'], 8 * Math.SQRT2)])
    expect(pair.map(({ difference }) => difference)).toEqual([expect.closeTo(-1, 5), expect.closeTo(1, 5)])
  })

  it('kinds compare less surely: 0.2 more in square', () => {
    const of = (dome: string) =>
      held([reading(['key'], 8, { faces: 'light' }), reading(['key'], 8, { faces: 'light', dome })])[1]!
    expect(of('flat').u ** 2 - of('raised').u ** 2).toBeCloseTo(0.2 ** 2, 4)
    expect(of('raised').u).toBeLessThan(Math.hypot(0.15, 0.15))
  })

  it('a sum is held against its parts', () => {
    const three = held([reading(['key'], 8), reading(['fill'], 8), reading('all', 8)])
    // f/8 twice is f/11: a stop short.
    expect(three[2]!.difference).toBeCloseTo(-1, 2)
    expect(three[2]!.predicted).toBeCloseTo(8 * Math.SQRT2, 1)
    // Less the key's f/8 nothing is left for the fill.
    expect(three[1]!.difference).toBeGreaterThan(0.5)
  })

  it('are the same in a what-if: strengths stay, and so does how sure they are', () => {
    const set = computeSet(plan([reading(['key'], 8), reading('all', 8)]))
    const moved = set.with({ knob: { knob: 'light-distance', light: 'fill' }, to: 3 })
    expect(moved.readings).toEqual(set.readings)
    for (const light of ['key', 'fill']) expect(moved.strength(light)).toEqual(set.strength(light))
    const figure = set.key!.figure
    expect(moved.u(figure)).toBe(set.u(figure))
  })

  it('of lights by what they are to meter: a sum moves them, and they go on metering as much over it', () => {
    const metered = { power: undefined, meters: { reads: 8, at: undefined } }
    const set = computeSet(plan([reading('all', 16)], { lights: [key(metered), fill(metered)] }))
    const shown = set.reading({ at: 'subject', of: ['key'] })!.fNumber
    expect(shown).toBeGreaterThan(8.5)
    const moved = set.with({ knob: { knob: 'light-distance', light: 'key' }, to: 3 })
    expect(moved.reading({ at: 'subject', of: ['key'] })!.fNumber).toBeCloseTo(shown, 9)
  })

  it('a reading goes before what the light is to meter, and is held against it', () => {
    const metered = { power: undefined, meters: { reads: 8, at: undefined } }
    const set = computeSet(
      plan([reading(['key'], 4, { faces: 'light' })], { lights: [key(metered), fill(metered)] }),
    )
    expect(set.reading({ at: 'subject', of: ['key'] })!.fNumber).toBeCloseTo(4, 6)
    expect(set.readings[0]!.difference).toBeCloseTo(-2, 6)
  })
})

describe('a test frame', () => {
  const paper = { surface: surface('white paper', 0.9) }
  const record = (records: number) =>
    reading('all', 0, { at: 'backdrop', read: { records }, dome: 'flat', faces: 'out' })

  it('makes the tone that it shows surer than the light: the camera renders both alike', () => {
    const set = computeSet(
      plan([record(200)], {
        backdrop: paper,
        lights: [key()],
        camera: { iso: 100, focus: { on: 'distance', distance: 1000 } },
      }),
    )
    const backdrop = set.reading({ at: 'backdrop', of: 'all' })!
    expect(set.strength('key')!.u).toBeCloseTo(0.3, 4)
    // 0.3 less the rendering's 0.15, which comes back in the picture, and half of geometry.
    const tone = Math.sqrt(0.3 ** 2 - 0.15 ** 2 + 0.1 ** 2 / 2)
    expect(set.u(backdrop.overCamera)).toBeCloseTo(tone, 4)
    expect(set.u(backdrop.figure)).toBeGreaterThan(tone)
    expect(set.backdropView!.middle.srgb).toBe(200)
  })

  it('against a meter: the camera is found to render brighter', () => {
    const lights = [key()]
    const camera = { iso: 100, focus: { on: 'distance', distance: 1000 } } as const
    const at = { at: 'backdrop', dome: 'flat', faces: 'out' }
    const lone = computeSet(plan([reading(['key'], 2.8, at)], { backdrop: paper, lights, camera }))
    const code = lone.backdropView!.middle.srgb
    const both = computeSet(
      plan([reading(['key'], 2.8, at), record(code + 15)], { backdrop: paper, lights, camera }),
    )
    expect(both.backdropView!.middle.srgb).toBeGreaterThan(code)
    // The light itself is moved less than the tone.
    const [was, is] = [lone, both].map((set) => set.reading({ at: 'backdrop', of: 'all' })!)
    const light = is!.figure.stops - was!.figure.stops
    expect(light).toBeGreaterThan(0)
    expect(is!.overCamera.stops - was!.overCamera.stops).toBeGreaterThan(light + 0.01)
  })

  it.each([
    [255, 'records white'],
    [253, 'records white'],
    [0, 'records black'],
  ] as const)('that is clipped (%i) tells nothing, and says why', (code, because) => {
    const set = computeSet(plan([record(code)], { backdrop: paper }))
    expect(set.unusedReadings).toEqual([{ index: 0, because }])
    expect(set.readings).toEqual([])
    expect(set.strength('key')).toEqual(computeSet(plan([])).strength('key'))
  })
})

describe('readings that tell nothing', () => {
  const because = (one: MeterReading, more: PlanOverrides = {}) =>
    computeSet(plan([one], more)).unusedReadings.map((unused) => unused.because)

  it('say why', () => {
    expect(because(reading(['key'], 8, { at: 'nowhere' }))).toEqual(['unknown point'])
    expect(because(reading(['key'], 8, { faces: { point: 'nowhere' } }))).toEqual(['unknown point'])
    expect(
      because(reading(['key'], 8, { at: 'hands', kind: 'reflected' }), {
        points: new Map([['hands', offsets({ height: 1 })]]) as never,
      }),
    ).toEqual(['unknown surface'])
    expect(because(reading(['key'], 8), { lights: [key({ on: false }), fill()] })).toEqual(['light is off'])
    expect(because(reading(['nobody'], 8))).toEqual(['light not computed'])
    expect(because(reading([], 8))).toEqual(['no light arrives'])
    expect(because(reading('all', 8))).toEqual([])
    const behind = reading(['key'], 8, { at: 'subject', dome: 'flat', faces: 'backdrop' })
    expect(because(behind, { backdrop: 'none' })).toEqual(['no light arrives'])
    // Turned to the paper it meters the paper's light.
    expect(because(behind)).toEqual([])
  })

  it('such as one of a sun that grazes the surface by next to nothing', () => {
    const grazing = makeLight('sun', { unit: sun, power: undefined, at: tape(60, 5, { upDegrees: 1e-300 }) })
    const floor = reading(['sun'], 8, { at: 'floor', dome: 'flat', faces: 'out' })
    expect(because(floor, { lights: [grazing], backdrop: 'none' })).toEqual(['no light arrives'])
  })

  it('are counted only beyond what anybody takes', () => {
    const many = Array.from({ length: 70 }, () => reading(['key'], 8))
    const set = computeSet(plan(many))
    expect(set.readings).toHaveLength(32)
    expect(set.unusedReadings).toHaveLength(38)
    expect(set.unusedReadings[0]).toEqual({ index: 32, because: 'too many readings' })
  })
})

describe('the ambient', () => {
  const metered = (reads: number) =>
    ({ reads, shutter: 2 ** -7, iso: 100, kind: 'incident', colour: undefined }) as const
  const star = (reads: number) =>
    makeLight('sun', {
      unit: sun,
      reads: metered(reads),
      power: undefined,
      at: tape(60, 5, { upDegrees: 20 }),
    })
  const daylight = (readings: readonly MeterReading[]) =>
    computeSet(plan(readings, { ambient: metered(8), lights: [key(), star(5.6)] }))
  const whole = (set: ComputedSet) => shows(set, ['sun', 'ambient'])

  it('stated with a sun in it is weighed as it is without readings', () => {
    const [plain, read] = [daylight([]), daylight([reading(['key'], 11)])]
    for (const name of ['sun', 'ambient']) {
      expect(Math.log2(read.strength(name)!.candelaSeconds)).toBeCloseTo(
        Math.log2(plain.strength(name)!.candelaSeconds),
        3,
      )
      expect(read.strength(name)!.u).toBeCloseTo(plain.strength(name)!.u, 3)
    }
    for (const set of [plain, read]) {
      const all = set.reading({ at: 'subject', of: ['sun', 'ambient'], faces: 'camera' })!.figure
      // What is left beside the sun is unsure, the whole is as sure as its reading.
      expect(Math.sqrt(set.u(all) ** 2 - all.variance)).toBeCloseTo(0.15, 2)
    }
  })

  it('read, is what was read, sun and all', () => {
    const set = daylight([reading('ambient', 11)])
    expect(whole(set)).toBeCloseTo(11, 2)
    expect(set.strength('ambient')!.from).toBe('reading')
    expect(set.readings[0]!.lights).toEqual(['ambient', 'sun'])
    // f/11 against the f/8 that is stated.
    expect(set.readings[0]!.difference).toBeCloseTo(2 * Math.log2(11 / 8), 2)
  })

  it('with the sun read alone, both are what was read', () => {
    const set = daylight([reading('ambient', 11), reading(['sun'], 8)])
    expect(whole(set)).toBeCloseTo(11, 2)
    expect(shows(set, ['sun'])).toBeCloseTo(8, 2)
  })
})

// ---------------------------------------------------------------- laws

/** What the meter card shows, as readings. */
const computedReadings = (set: ComputedSet): readonly MeterReading[] =>
  [...set.lit.map(({ name }): readonly string[] => [name]), 'all' as const].flatMap((of) => {
    const shown = set.reading({ at: 'subject', of })
    return shown === undefined
      ? []
      : [
          reading(of, shown.fNumber, {
            iso: set.plan.camera.iso,
            dome: shown.dome,
            faces: shown.faces === 'camera' || shown.faces === 'out' ? shown.faces : 'light',
          }),
        ]
  })

/** Stops: where a light stood elsewhere when it was read, what surfaces throw of it is found on fewer patches. */
const asTaken = 0.03

describe('any plan', () => {
  it('fed its own figures as readings changes no strength, and is nowhere less sure', () => {
    fc.assert(
      fc.property(anyPlan, fc.integer({ min: 1, max: 15 }), (some, which) => {
        const set = computeSet({ ...some, readings: [] })
        // A light that is on and not known is in every reading of all, and in no figure.
        fc.pre(set.unknown.length === 0)
        const readings = computedReadings(set).filter((_, i) => ((which >> (i % 4)) & 1) === 1)
        const again = computeSet({ ...some, readings })
        for (const { name } of set.lit) {
          const [was, is] = [set.strength(name)!, again.strength(name)!]
          expect(Math.abs(Math.log2(is.candelaSeconds / was.candelaSeconds))).toBeLessThan(asTaken)
          expect(is.u).toBeLessThanOrEqual(was.u + 1e-9)
        }
        for (const held of again.readings) expect(Math.abs(held.difference)).toBeLessThan(asTaken)
        const [before, after] = [set.key?.overCamera, again.key?.overCamera]
        if (before !== undefined) expect(again.u(after!)).toBeLessThanOrEqual(set.u(before) + 1e-9)
      }),
      { numRuns: 150, seed: 1, endOnFailure: true },
    )
  }, 60_000)

  it('meters finite figures whatever was read', () => {
    const some = fc.record({
      of: fc.constantFrom('all', 'ambient', ['light-0'], ['light-0', 'light-1']),
      reads: fc.constantFrom(0.5, 2, 8, 64, 1e4),
      at: fc.constantFrom('subject', 'backdrop', 'floor', 'camera'),
      kind: fc.constantFrom('incident', 'reflected'),
      dome: fc.constantFrom('raised', 'flat'),
      faces: fc.constantFrom('light', 'camera', 'backdrop', 'out'),
    })
    fc.assert(
      fc.property(anyPlan, fc.array(some, { minLength: 1, maxLength: 5 }), (made, readings) => {
        const names = [...made.lights.keys()]
        const named = (of: unknown) =>
          Array.isArray(of) ? [...new Set(of.map((_, i) => names[i] ?? 'light-0'))] : of
        const set = computeSet({
          ...made,
          readings: readings.map(({ of, reads, ...more }) => reading(named(of) as never, reads, more)),
        })
        for (const { name } of set.lit) {
          expect(Number.isFinite(set.strength(name)!.candelaSeconds)).toBe(true)
          expect(set.strength(name)!.u).toBeGreaterThanOrEqual(0)
        }
        if (set.key !== undefined) expect(set.u(set.key.figure)).toBeGreaterThan(0)
        for (const held of set.readings) {
          expect(Number.isFinite(held.difference)).toBe(true)
          expect(held.u).toBeGreaterThan(0)
        }
        expect(set.readings.length + set.unusedReadings.length).toBe(readings.length)
      }),
      { numRuns: 150, seed: 1, endOnFailure: true },
    )
  }, 60_000)
})

describe('what one more reading would be worth', () => {
  const asks: readonly MeterAsk[] = [
    { at: 'subject', of: ['key'], faces: 'camera' },
    { at: 'subject', of: ['fill'], faces: 'camera' },
    { at: 'subject', of: 'all', faces: 'camera' },
    { at: 'backdrop', of: 'all' },
  ]
  const taken = (set: ComputedSet, ask: MeterAsk): MeterReading => {
    const shown = set.reading(ask)!
    return reading(ask.of as never, shown.fNumber, {
      at: ask.at,
      dome: shown.dome,
      faces: shown.faces,
    })
  }
  const some: readonly (readonly MeterReading[])[] = [
    [],
    [reading(['key'], 8)],
    [reading('all', 11)],
    [reading(['key'], 8), reading('all', 10)],
  ]

  it('is what it turns out to be once it shows what was predicted', () => {
    for (const readings of some) {
      const before = plan(readings)
      const set = computeSet(before)
      for (const ask of asks) {
        const after = computeSet({ ...before, readings: [...readings, taken(set, ask)] })
        const figures = [
          set.reading({ at: 'subject', of: ['key'], faces: 'camera' })!.figure,
          set.reading({ at: 'subject', of: ['fill'], faces: 'camera' })!.figure,
          set.key!.overCamera,
          difference(set.reading({ at: 'backdrop', of: 'all' })!.figure, set.key!.figure),
        ]
        for (const figure of figures) {
          expect(set.uIf(figure, ask)).toBeLessThanOrEqual(set.u(figure) + 1e-12)
          expect(Math.abs(set.uIf(figure, ask) / after.u(figure) - 1)).toBeLessThan(0.01)
        }
      }
    }
  })

  it('nothing where nothing is read', () => {
    const set = computeSet(plan([]))
    const { figure } = set.key!
    expect(set.uIf(figure, { at: 'nowhere', of: ['key'] })).toBe(set.u(figure))
    expect(set.uIf(figure, { at: 'subject', of: ['nobody'] })).toBe(set.u(figure))
  })
})
