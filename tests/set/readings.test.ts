/** What readings tell of a light, by hand: inverse squares on the axis of a small light, and the scale of stops. */
import '../helpers/empty-space.js'
import { describe, expect, it } from 'vitest'
import type { MeterReading, Plan } from '../../src/language/plan.js'
import { difference } from '../../src/light/figure.js'
import { computeSet } from '../../src/set/compute-set.js'
import { makeLight, makePlan, offsets, type PlanOverrides, surface, tape } from '../helpers/make-plan.js'

type Some = { [K in keyof MeterReading]?: unknown }

const reading = (more: Some = {}): MeterReading =>
  ({
    at: 'subject',
    of: ['key'],
    read: { reads: 8 },
    taken: undefined,
    kind: 'incident',
    dome: 'raised',
    faces: 'light',
    iso: 100,
    ...more,
  }) as MeterReading

const taken = (power: number | undefined, distance: number | undefined) =>
  new Map([['key', { power, distance }]])

const plan = (readings: readonly MeterReading[], more: PlanOverrides = {}): Plan =>
  makePlan({
    camera: { iso: 100, shutter: 2 ** -7 },
    lights: [makeLight('key', { at: tape(0, 2), power: 1 / 4 })],
    ...more,
    readings: readings as never,
  })
const shows = (of: Plan) => computeSet(of).reading({ at: 'subject', of: ['key'] })!.fNumber

describe('a reading of one light', () => {
  it('is what the light meters, whatever its rating', () => {
    expect(shows(plan([]))).not.toBeCloseTo(8, 1)
    expect(shows(plan([reading()]))).toBeCloseTo(8, 9)
    const strength = computeSet(plan([reading()])).strength('key')!
    expect(strength.from).toBe('reading')
    expect(strength.u).toBeCloseTo(0.15, 5)
  })

  it('is scaled from the power it was taken at, a twentieth of a stop less sure for each stop', () => {
    const set = computeSet(plan([reading({ taken: taken(1 / 16, 2) })]))
    expect(set.reading({ at: 'subject', of: ['key'] })!.fNumber).toBeCloseTo(16, 9)
    expect(set.strength('key')!.u).toBeCloseTo(0.25, 5)
  })

  it('is carried from the distance it was taken at: f/8 at 4 m is f/16 at 2 m', () => {
    // A bare flash 6 cm wide at 2 m: within a thousandth of the inverse square.
    expect(shows(plan([reading({ taken: taken(1 / 4, 4) })]))).toBeCloseTo(16, 1)
  })

  it('counts the ISO it was taken at', () => {
    expect(shows(plan([reading({ iso: 400 })]))).toBeCloseTo(4, 9)
  })

  it('at the backdrop holds for the subject too', () => {
    const at = reading({ at: 'backdrop', dome: 'flat', faces: 'out' })
    // On the axis, 2 m to the face and 4 m to the paper.
    expect(shows(plan([at]))).toBeCloseTo(16, 1)
  })

  it('of all is one of the only light that is on', () => {
    expect(shows(plan([reading({ of: 'all' })]))).toBeCloseTo(8, 9)
    const two = plan([reading({ of: 'all' })], {
      lights: [makeLight('key', { at: tape(0, 2) }), makeLight('fill', { role: 'fill', at: tape(40, 2) })],
    })
    expect(computeSet(two).strength('key')!.from).toBe('guide number')
  })

  it('several of one light give their mean in stops, a little surer than one', () => {
    const set = computeSet(plan([reading(), reading({ read: { reads: 11.313708498984761 } })]))
    expect(set.reading({ at: 'subject', of: ['key'] })!.fNumber).toBeCloseTo(8 * 2 ** 0.25, 9)
    // 0.1 of each reading's 0.15 is how the dome answers this light, and is in both.
    expect(set.strength('key')!.u).toBeCloseTo(Math.sqrt(0.1 ** 2 + (0.15 ** 2 - 0.1 ** 2) / 2), 5)
  })

  it('makes a light without power or meters known', () => {
    const unset = plan([reading()], { lights: [makeLight('key', { at: tape(0, 2), power: undefined })] })
    expect(computeSet(unset).unknown).toEqual([])
    expect(shows(unset)).toBeCloseTo(8, 9)
  })

  it('of a point that the set lacks, or of a light that is off, tells nothing', () => {
    expect(computeSet(plan([reading({ at: 'nowhere' })])).strength('key')!.from).toBe('guide number')
    const off = plan([reading()], { lights: [makeLight('key', { on: false })] })
    expect(computeSet(off).strength('key')).toBeUndefined()
  })
})

describe('a reading off a surface', () => {
  const paper = { surface: surface('white paper', 0.9) }

  it('reflected includes the surface: 2.5 stops on paper of 0.9', () => {
    // log2(0.9/(π·12.5/250)) = 2.518 by ISO 2720's constants; "about 2.4" is common practice.
    const reflected = reading({ at: 'backdrop', kind: 'reflected', dome: 'flat', faces: 'out' })
    const incident = reading({ at: 'backdrop', dome: 'flat', faces: 'out' })
    const set = computeSet(plan([reflected], { backdrop: paper }))
    const down = 2 * Math.log2(shows(plan([incident])) / set.reading({ at: 'subject', of: ['key'] })!.fNumber)
    expect(down).toBeCloseTo(2.518, 3)
    expect(set.strength('key')!.u).toBeCloseTo(0.2, 5)
  })

  it('a test frame: paper of 0.9 that records 243 is level with the camera', () => {
    const record = reading({ at: 'backdrop', of: 'all', read: { records: 243 } })
    const set = computeSet(
      plan([record], {
        backdrop: paper,
        camera: { aperture: 8, filter: 2, shutter: 2 ** -7, focus: { on: 'distance', distance: 1000 } },
      }),
    )
    const backdrop = set.reading({ at: 'backdrop', of: 'all' })!
    // 243 is a whole code: half of one is 0.02 stop there.
    expect(backdrop.overCamera.stops).toBeCloseTo(0, 1)
    expect(backdrop.fNumber).toBeCloseTo(16, 0)
    expect(set.backdropView!.middle.srgb).toBe(243)
    expect(set.strength('key')!.u).toBeCloseTo(0.3, 5)
  })

  it('a test frame that shows white there tells nothing but "at least"', () => {
    const record = reading({ at: 'backdrop', of: 'all', read: { records: 255 } })
    expect(computeSet(plan([record])).strength('key')!.from).toBe('guide number')
  })
})

describe('a reading of the ambient', () => {
  it('is enough where the plan states none', () => {
    const set = computeSet(plan([reading({ of: 'ambient', faces: 'camera', read: { reads: 2 } })]))
    expect(set.reading({ at: 'subject', of: ['ambient'] })!.fNumber).toBeCloseTo(2, 9)
    expect(computeSet(plan([])).reading({ at: 'subject', of: ['ambient'] })).toBeUndefined()
  })

  it('makes it known, and counts with all', () => {
    const read = reading({ of: 'ambient', faces: 'camera', read: { reads: 2 } })
    const ambient = { reads: 8, shutter: 2 ** -7, iso: 100, kind: 'incident', colour: undefined } as const
    const set = computeSet(plan([read], { ambient }))
    expect(set.reading({ at: 'subject', of: ['ambient'] })!.fNumber).toBeCloseTo(2, 9)
    expect([...set.reading({ at: 'subject', of: 'all' })!.byLight.keys()]).toEqual(['key', 'ambient'])
  })
})

describe('a meter’s place', () => {
  const set = computeSet(
    plan([], {
      lights: [
        makeLight('key', { at: tape(60, 2) }),
        makeLight('paper', { role: 'backdrop', at: offsets({ right: 1.5, beforeBackdrop: 1, height: 1.5 }) }),
      ],
    }),
  )
  const asked = (ask: Parameters<typeof set.reading>[0]) => {
    const { dome, faces, point } = set.reading(ask)!
    return [point, dome, faces]
  }

  it('follows the language’s defaults', () => {
    expect(asked({ at: 'subject', of: ['key'] })).toEqual(['subject', 'raised', 'key'])
    expect(asked({ at: 'subject', of: ['key', 'paper'] })).toEqual(['subject', 'raised', 'camera'])
    expect(asked({ at: 'subject', of: 'all' })).toEqual(['subject', 'raised', 'camera'])
    expect(asked({ at: 'backdrop', of: ['paper'] })).toEqual(['backdrop', 'flat', 'out'])
    expect(asked({ at: 'floor', of: 'all' })).toEqual(['floor', 'flat', 'out'])
    expect(asked({ at: [0.5, 0, 1], of: ['key'] })).toEqual(['0.5,0,1', 'raised', 'key'])
    expect(asked({ at: 'subject', of: 'all', dome: 'flat', faces: { direction: [0, 0, 1] } })).toEqual([
      'subject',
      'flat',
      '0,0,1',
    ])
    expect(set.reading({ at: 'nowhere', of: 'all' })).toBeUndefined()
    expect(set.reading({ at: 'subject', of: 'all', faces: { light: 'nobody' } })).toBeUndefined()
  })

  it('the dome turned to the camera loses what theory says: (1 + cos θ)/2', () => {
    // Key at 60°: 0.75 of the light; a prototype computed −0.42 stop.
    const to = (faces: 'camera' | { light: string }) =>
      set.reading({ at: 'subject', of: ['key'], faces })!.figure.stops
    expect(to('camera') - to({ light: 'key' })).toBeCloseTo(-0.415, 2)
  })

  it('the key reading is raised, to the camera, of key and fill', () => {
    expect(set.key).toMatchObject({ point: 'subject', of: ['key'], dome: 'raised', faces: 'camera' })
  })
})

describe('what a light is to meter', () => {
  const metered = (role: 'key' | 'rim' | 'hair' | 'backdrop', at: ReturnType<typeof tape>, where?: string) =>
    computeSet(
      makePlan({
        points: new Map([['hands', offsets({ behind: -0.3, height: 1 })]]) as never,
        lights: [makeLight('one', { role, at, power: undefined, meters: { reads: 5.6, at: where } })],
      }),
    )
  const shown = (set: ReturnType<typeof computeSet>, at: string) => set.reading({ at, of: ['one'] })!.fNumber

  it('it meters at the point of its role, facing it; flat at the backdrop; or where the plan says', () => {
    expect(shown(metered('key', tape(30, 2)), 'subject')).toBeCloseTo(5.6, 9)
    expect(shown(metered('rim', tape(150, 1.5)), 'subject-back')).toBeCloseTo(5.6, 9)
    expect(shown(metered('hair', tape(160, 1.2, { height: 2.4 })), 'hair')).toBeCloseTo(5.6, 9)
    const behind = offsets({ right: 1.4, beforeBackdrop: 1, height: 1.5 })
    expect(shown(metered('backdrop', behind), 'backdrop')).toBeCloseTo(5.6, 9)
    expect(shown(metered('key', tape(30, 2), 'hands'), 'hands')).toBeCloseTo(5.6, 9)
  })

  it('a power beats it: what is set is what it gives', () => {
    const both = makePlan({ lights: [makeLight('one', { power: 1, meters: { reads: 2, at: undefined } })] })
    expect(computeSet(both).strength('one')!.from).toBe('guide number')
  })
})

describe('how sure', () => {
  const read = computeSet(plan([reading()]))
  const rated = computeSet(plan([]))

  it('a reading is good to 0.15, its carrying to another point adds geometry, a tone the rendering', () => {
    const key = read.key!
    // Half of geometry's 0.1 in square belongs to either point.
    expect(read.u(key.figure)).toBeCloseTo(Math.hypot(0.15, 0.1 / Math.SQRT2), 5)
    expect(read.u(key.overCamera)).toBeCloseTo(Math.hypot(0.15, 0.1 / Math.SQRT2, 0.15), 5)
  })

  it('two points of one light share its strength: only geometry is left, however little is known of it', () => {
    for (const set of [read, rated]) {
      const apart = difference(set.reading({ at: 'backdrop', of: ['key'] })!.figure, set.key!.figure)
      expect(set.u(apart)).toBeCloseTo(0.1, 9)
    }
    expect(rated.u(rated.key!.figure)).toBeGreaterThan(0.35)
  })
})
