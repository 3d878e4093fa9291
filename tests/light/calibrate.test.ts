/** What a light is known by, and which knowledge goes before which. */
import { describe, expect, it } from 'vitest'
import type { KitMeasurement, Light, Plan } from '../../src/language/plan.js'
import {
  ambientStrength,
  calibratedStrength,
  type MeteredAt,
  unknownStrength,
} from '../../src/light/calibrate.js'
import { fNumberFor, luxSecondsFor } from '../../src/light/exposure.js'
import { makeSource } from '../../src/light/make-source.js'
import { onAxisResponse, response } from '../../src/light/response.js'
import type { Source } from '../../src/light/source.js'
import { priorStrength, type Strength } from '../../src/light/strength.js'
import { buildScene } from '../../src/scene/build-scene.js'
import { subtract, unit } from '../../src/scene/vector.js'
import { fNumber, iso, luxSeconds, metres, seconds } from '../../src/units/quantity.js'
import { makeLight, makePlan, softbox, sun, tape, windowUnit } from '../helpers/make-plan.js'

interface Bench {
  readonly plan: Plan
  readonly light: Light
  readonly source: Source
  /** At the subject's face, dome toward the light. */
  readonly faceResponse: number
  known(): Strength | undefined
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
    metered: () => faceResponse,
    subject: () => faceResponse,
    onAxis: (distance) => onAxisResponse(source, distance),
  }
  return {
    plan,
    light,
    source,
    faceResponse,
    known: () => calibratedStrength(light, plan, metered),
    shows: (strength) => fNumberFor(luxSeconds(strength!.candelaSeconds * faceResponse), plan.camera.iso),
  }
}

const key = (overrides: Parameters<typeof makeLight>[1] = {}): Light =>
  makeLight('key', { modifier: softbox(0.6, 0.9), at: tape(35, 1.4, { height: 2 }), ...overrides })

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

  it('calibration, what is set, what it is to meter', () => {
    expect(bench(key({ meters }), { measured }).known()!.from).toBe('measured')
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

  it('the ambient reads at the subject what it is said to', () => {
    const plan = makePlan({ ambient: reads(1 / 64), camera: { shutter: seconds(1 / 128) } })
    const stated = ambientStrength(plan, 1, [], false)!
    expect(fNumberFor(luxSeconds(stated.candelaSeconds), iso(100))).toBeCloseTo(2.8 / Math.SQRT2, 9)
    expect(stated).toMatchObject({ from: 'stated', u: 0.15 })
    expect(ambientStrength(makePlan(), 1, [], false)).toBeUndefined()
  })

  it('what is left of the ambient beside a sun is the less sure the less it is', () => {
    const plan = makePlan({ ambient: reads(1 / 128), camera: { shutter: seconds(1 / 128) } })
    const whole = luxSecondsFor(fNumber(2.8), iso(100))
    const beside = (share: number) =>
      ambientStrength(plan, 1, [{ light: 'sun', luxSeconds: share * whole, u: 0.15 }], false)
    const half = beside(0.5)!
    expect(half.candelaSeconds / whole).toBeCloseTo(0.5, 12)
    // d log₂(W − P) = (W·dw − P·dp)/(W − P): 2·0.15 and 1·0.15 in square.
    expect(half.u).toBeCloseTo(Math.hypot(0.3, 0.15), 12)
    // Together they are as sure as the ambient's own reading: the sun's part cancels.
    const sunPart = half.shared!.find(({ entry }) => entry === 'own sun')!.u
    expect(0.5 * sunPart + 0.5 * 0.15).toBeCloseTo(0, 12)
    expect(beside(0.95)).toBeUndefined()
    expect(beside(1.2)).toBeUndefined()
  })
})

describe('a light of which nothing is known', () => {
  it('starts at the middle of what its unit can be set to, ten stops unsure', () => {
    const light = key({ power: undefined })
    const on = bench(light)
    const at = (power: number) => bench(key({ power })).known()!.candelaSeconds
    const start = unknownStrength(light, on.plan)
    expect(Math.log2(start.candelaSeconds)).toBeCloseTo((Math.log2(at(1)) + Math.log2(at(1 / 128))) / 2, 9)
    expect(start.u).toBe(10)
    expect(unknownStrength(undefined, on.plan).candelaSeconds).toBeGreaterThan(0)
  })
})
