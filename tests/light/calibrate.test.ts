/** What a light is known by, and which knowledge goes before which. */
import { describe, expect, it } from 'vitest'
import type { KitMeasurement, Light, Plan } from '../../src/language/plan.js'
import {
  ambientStrength,
  calibratedStrength,
  type LoneReading,
  type MeteredAt,
} from '../../src/light/calibrate.js'
import { fNumberFor, luxSecondsFor } from '../../src/light/exposure.js'
import { makeSource } from '../../src/light/make-source.js'
import { onAxisResponse, response } from '../../src/light/response.js'
import type { Source } from '../../src/light/source.js'
import { priorStrength, type Strength } from '../../src/light/strength.js'
import { buildScene } from '../../src/scene/build-scene.js'
import { subtract, unit } from '../../src/scene/vector.js'
import { fNumber, iso, luxSeconds, metres, powerShare, seconds } from '../../src/units/quantity.js'
import { makeLight, makePlan, softbox, sun, tape, windowUnit } from '../helpers/make-plan.js'

interface Bench {
  readonly plan: Plan
  readonly light: Light
  readonly source: Source
  /** At the subject's face, dome toward the light. */
  readonly faceResponse: number
  known(readings?: readonly LoneReading[]): Strength | undefined
  /** What a meter shows there of this strength. */
  shows(strength: Strength | undefined): number
}

const bench = (light: Light, overrides: Parameters<typeof makePlan>[0] = {}): Bench => {
  const plan = makePlan({ ...overrides, lights: [light] })
  const scene = buildScene(plan)
  const sceneLight = scene.lights.get(light.name)!
  const source = makeSource(light, sceneLight, plan)!
  const { at } = scene.points.get('subject')!
  const toward =
    source.kind === 'area'
      ? unit(subtract(source.face.centre, at))
      : source.kind === 'parallel'
        ? source.toward
        : ([0, 0, 1] as const)
  const faceResponse = response(source, { at, normal: toward, kind: 'dome' })
  const metered: MeteredAt = {
    readings: [],
    metered: () => faceResponse,
    subject: () => faceResponse,
    onAxis: (distance) => onAxisResponse(source, distance),
  }
  return {
    plan,
    light,
    source,
    faceResponse,
    known: (readings = []) => calibratedStrength(light, plan, { ...metered, readings }),
    shows: (strength) => fNumberFor(luxSeconds(strength!.candelaSeconds * faceResponse), plan.camera.iso),
  }
}

const key = (overrides: Parameters<typeof makeLight>[1] = {}): Light =>
  makeLight('key', { modifier: softbox(0.6, 0.9), at: tape(35, 1.4, { height: 2 }), ...overrides })

const reading = (on: Bench, shown: number, overrides: Partial<LoneReading> = {}): LoneReading => ({
  luxSeconds: luxSecondsFor(fNumber(shown), iso(100)),
  response: on.faceResponse,
  power: undefined,
  u: 0.15,
  ...overrides,
})

describe('a reading of one light', () => {
  it('is what the light gives at that point, whatever its rating says', () => {
    const on = bench(key())
    const strength = on.known([reading(on, 5.6)])
    expect(on.shows(strength)).toBeCloseTo(5.6, 9)
    expect(strength).toMatchObject({ from: 'reading', u: 0.15 })
  })

  it('is carried to another power by the ratio, a little less sure with every stop', () => {
    const on = bench(key({ power: 1 / 16 }))
    const strength = on.known([reading(on, 5.6, { power: powerShare(1 / 4) })])
    expect(on.shows(strength)).toBeCloseTo(2.8, 9)
    expect(strength!.u).toBeCloseTo(0.25, 12)
  })

  it('taken from twice as far says four times the strength of a small light', () => {
    const on = bench(makeLight('key', { at: tape(0, 1.5) }))
    const near = on.known([reading(on, 8)])!
    const far = on.known([reading(on, 8, { response: on.faceResponse / 4 })])!
    expect(far.candelaSeconds / near.candelaSeconds).toBeCloseTo(4, 9)
  })

  it('of no light at all says nothing', () => {
    const on = bench(key())
    expect(on.known([reading(on, 5.6, { response: 0 })])!.from).not.toBe('reading')
  })

  it('agrees with a second one by the surer of the two', () => {
    const on = bench(key())
    const two = on.known([reading(on, 5.6), reading(on, 5.6 * Math.SQRT2, { u: 0.3 })])!
    // Weights 1/0.15² and 1/0.3²: a fifth of the stop between them.
    expect(2 * Math.log2(on.shows(two) / 5.6)).toBeCloseTo(0.2, 9)
    expect(two.u).toBe(0.15)
  })
})

describe('a calibration of the kit', () => {
  const measured = (
    overrides: Partial<Record<keyof KitMeasurement, unknown>> = {},
  ): readonly KitMeasurement[] => [
    {
      unit: 'flashgun',
      modifier: 'softbox 60 x 90 cm',
      zoom: undefined,
      power: 1 / 4,
      distance: 1.2,
      reads: 5.6,
      iso: 100,
      ...overrides,
    } as never as KitMeasurement,
  ]

  it('reads again what it read, on the axis at its distance', () => {
    const on = bench(key(), { measured: measured() })
    const strength = on.known()!
    const there = strength.candelaSeconds * onAxisResponse(on.source, metres(1.2))
    expect(fNumberFor(luxSeconds(there), iso(100))).toBeCloseTo(5.6, 9)
    expect(strength).toMatchObject({ from: 'measured', u: 0.15 })
  })

  it('scales with power, gel and high-speed sync', () => {
    const plain = bench(key(), { measured: measured() }).known()!
    const stops = (on: Bench): number => Math.log2(on.known()!.candelaSeconds / plain.candelaSeconds)
    expect(stops(bench(key({ power: 1 / 8 }), { measured: measured() }))).toBeCloseTo(-1, 12)
    const gel = { shift: 159, colour: undefined, loss: 2 / 3 }
    expect(stops(bench(key({ gel }), { measured: measured() }))).toBeCloseTo(-2 / 3, 12)
  })

  it('holds for its unit and modifier only, and bare for its zoom', () => {
    expect(bench(key(), { measured: measured({ unit: 'other' }) }).known()!.from).toBe('guide number')
    expect(bench(key(), { measured: measured({ modifier: 'octa' }) }).known()!.from).toBe('guide number')
    expect(bench(key(), { measured: measured({ zoom: 0.105 }) }).known()!.from).toBe('measured')
    const bare = measured({ modifier: undefined, zoom: 0.05 })
    expect(bench(makeLight('key', { zoom: 0.05 }), { measured: bare }).known()!.from).toBe('measured')
    expect(bench(makeLight('key', { zoom: 0.035 }), { measured: bare }).known()!.from).toBe('guide number')
  })
})

describe('which knowledge goes first', () => {
  const meters = { reads: 8, at: undefined }
  const measured = [
    {
      unit: 'flashgun',
      modifier: 'softbox 60 x 90 cm',
      zoom: undefined,
      power: 1 / 4,
      distance: 1.2,
      reads: 4,
      iso: 100,
    },
  ] as never as readonly KitMeasurement[]

  it('reading, calibration, what is set, what it is to meter', () => {
    const all = bench(key({ meters }), { measured })
    expect(all.known([reading(all, 5.6)])!.from).toBe('reading')
    expect(all.known()!.from).toBe('measured')
    // With power stated, `meters` is what is wanted, not what is.
    expect(bench(key({ meters })).known()!.from).toBe('guide number')
    const alone = bench(key({ meters, power: undefined }))
    expect(alone.known()).toMatchObject({ from: 'meters', u: 0.15 })
    expect(alone.shows(alone.known())).toBeCloseTo(8, 9)
    expect(bench(key({ power: undefined })).known()).toBeUndefined()
  })

  it('a rating is used as it stands', () => {
    const on = bench(key())
    expect(on.known()).toEqual(priorStrength(on.light, on.plan))
  })
})

describe('continuous light', () => {
  const reads = (shutter: number) =>
    ({ reads: 2.8, shutter, iso: 100, kind: 'incident', colour: undefined }) as never as NonNullable<
      Light['reads']
    >
  const camera = { shutter: 1 / 128 }

  it('a window and the sun read at the subject what they are said to, at the time that was read', () => {
    const glass = makeLight('window', {
      unit: windowUnit,
      reads: reads(1 / 128),
      power: undefined,
      size: { width: 1.2, height: 1.5 },
    })
    const star = makeLight('sun', {
      unit: sun,
      reads: reads(1 / 128),
      power: undefined,
      at: tape(150, 0, { upDegrees: 20 }),
    })
    for (const light of [glass, star]) {
      const on = bench(light, { camera })
      expect(on.shows(on.known())).toBeCloseTo(2.8, 9)
      expect(on.known()!.from).toBe('stated')
    }
  })

  it('gives less to a faster shutter', () => {
    const light = makeLight('sun', {
      unit: sun,
      reads: reads(1 / 64),
      power: undefined,
      at: tape(150, 0, { upDegrees: 20 }),
    })
    const on = bench(light, { camera: { shutter: 1 / 1024 } })
    expect(2 * Math.log2(on.shows(on.known()) / 2.8)).toBeCloseTo(-4, 9)
  })

  it('the ambient reads at the subject what it is said to; a reading of it goes first', () => {
    const plan = makePlan({ ambient: reads(1 / 64), camera: { shutter: seconds(1 / 128) } })
    const stated = ambientStrength(plan, [], 1)!
    expect(fNumberFor(luxSeconds(stated.candelaSeconds), iso(100))).toBeCloseTo(2.8 / Math.SQRT2, 9)
    const read = ambientStrength(
      plan,
      [{ luxSeconds: luxSeconds(10), response: 1, power: undefined, u: 0.15 }],
      1,
    )!
    expect(read).toMatchObject({ from: 'reading' })
    expect(read.candelaSeconds).toBeCloseTo(10, 9)
    expect(ambientStrength(makePlan(), [], 1)).toBeUndefined()
  })
})
