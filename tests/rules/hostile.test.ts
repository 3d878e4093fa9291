/** Odd but valid sets: no rule throws, every figure is a number, and words are words. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { checkReading } from '../../src/checker/check-plan.js'
import type { Light, Plan } from '../../src/language/plan.js'
import { anyPlan } from '../helpers/any-plan.js'
import { makePlan } from '../helpers/make-plan.js'

const wanted = fc.record({
  framing: fc.constantFrom(undefined, 'face', 'waist', 'full length', 'all'),
  backdrop: fc.constantFrom(
    undefined,
    { tone: 'white' },
    { tone: 'black' },
    { tone: 'any' },
    { tone: 'colour', colour: 'blue' },
    { tone: 'range', name: 'grey', from: 50, to: 180 },
    { tone: 'range', name: 'tone', from: 0, to: 0 },
    { tone: 'range', name: 'tone', from: 255, to: 255 },
  ),
  backdropOverKey: fc.constantFrom(undefined, { from: 0, to: 0 }, { from: -3, to: 1 }),
  backdropEven: fc.constantFrom(undefined, 0, 1 / 3),
  exposure: fc.constantFrom(0, 1 / 3, -32),
  ratio: fc.constantFrom(undefined, { kind: 'lit-to-shadow', ratio: 3 }, { kind: 'key-to-fill', ratio: 1 }),
  sharp: fc.constantFrom(
    undefined,
    { what: 'face' },
    { what: 'subject' },
    { what: 'rows' },
    { what: 'depth', depth: 0.3 },
    { what: 'depth', depth: 0 },
  ),
  motion: fc.constantFrom(undefined, 'frozen'),
  ambient: fc.constantFrom('none', 'any', { underKey: 0 }),
})

const lightTouch = fc.record({
  power: fc.constantFrom(undefined, 1, 1 / 4, 1 / 1024, 64, 0.3),
  meters: fc.constantFrom(
    undefined,
    { reads: 5.6, at: undefined },
    { reads: 0.3, at: 'hair' },
    { reads: 128, at: 'nowhere' },
  ),
  mode: fc.constantFrom('manual', 'automatic', 'high-speed'),
  modelling: fc.boolean(),
  on: fc.boolean(),
  trigger: fc.constantFrom(undefined, { by: 'cable' }, { by: 'basic radio' }, { by: 'optical groups' }),
})

const cameraTouch = fc.record({
  aperture: fc.constantFrom(0.5, 2 ** 2.5, 128),
  shutterMarked: fc.constantFrom(1 / 8000, 1 / 160, 30),
  shutterKind: fc.constantFrom('focal-plane', 'leaf', 'electronic'),
  curtain: fc.constantFrom(undefined, 0.004, 1),
  iso: fc.constantFrom(25, 100, 102400),
  filter: fc.constantFrom(0, 10),
  headroom: fc.constantFrom(0, 0.25, 3),
})

const ambient = fc.constantFrom(
  undefined,
  { reads: 2.8, shutter: 1 / 60, iso: 100, kind: 'incident', colour: 3000 },
  { reads: 0.5, shutter: 30, iso: 6400, kind: 'reflected', colour: undefined },
)

const surfaceFinish = fc.constantFrom('matte', 'satin', 'glossy')
const shine = fc.record({
  subject: fc.record({
    finish: fc.constantFrom('matte', 'glossy', 'clear'),
    shape: fc.constantFrom('plane', 'cylinder', 'ball'),
    glasses: fc.boolean(),
  }),
  backdrop: surfaceFinish,
  table: surfaceFinish,
  floor: surfaceFinish,
})

/** What shines in it as drawn. */
const shining = (
  plan: Plan,
  { subject, backdrop, table, floor }: typeof shine extends fc.Arbitrary<infer T> ? T : never,
): Plan => {
  const finished = <T extends { readonly surface: object }>(
    one: T | undefined,
    finish: string,
  ): T | undefined => one && { ...one, finish, surface: { ...one.surface, finish } }
  return {
    ...plan,
    subject: { ...plan.subject, ...subject, standsOn: finished(plan.subject.standsOn, table) },
    backdrop: finished(plan.backdrop, backdrop),
    room: plan.room && { ...plan.room, floor: { ...plan.room.floor, finish: floor } },
  } as Plan
}

const oddPlan = fc
  .tuple(anyPlan, wanted, fc.array(lightTouch, { minLength: 5, maxLength: 5 }), cameraTouch, ambient, shine)
  .map(([drawn, wants, touches, camera, light, shines]): Plan => {
    const plan = shining(drawn, shines)
    const lights = [...plan.lights].map(([name, one], i): [string, Light] => [
      name,
      { ...one, ...(touches[i] as object) },
    ])
    return {
      ...plan,
      ambient: light as Plan['ambient'],
      camera: {
        ...plan.camera,
        ...(camera as object),
        shutter: camera.shutterMarked as Plan['camera']['shutter'],
      },
      wanted: { ...plan.wanted, ...(wants as object) } as Plan['wanted'],
      lights: new Map(lights),
    }
  })

const check = (plan: Plan) => checkReading({ plan, mistakes: [], texts: new Map([[plan.file, '']]) })

/** Rules that judge how much light arrives. */
const needLight = [
  'backdrop-below-white',
  'backdrop-above-limit',
  'backdrop-uneven',
  'backdrop-off-tone',
  'backdrop-not-black',
  'aperture-off-key',
  'ambient-in-exposure',
  'unit-too-weak',
]

describe('odd sets', () => {
  it('make no rule fail, and no figure that is no number', () => {
    fc.assert(
      fc.property(oddPlan, (plan) => {
        const { findings, defects } = check(plan)
        for (const { measured, message, why, advice } of findings) {
          for (const { value, u } of Object.values(measured)) {
            expect(Number.isFinite(value)).toBe(true)
            if (u !== undefined) expect(Number.isFinite(u)).toBe(true)
          }
          for (const text of [
            message,
            why,
            ...advice.flatMap(({ title, gives = '', costs = '' }) => [title, gives, costs]),
          ])
            expect(text).not.toMatch(/NaN|undefined|Infinity|\[object/)
        }
        // Advice that fails is told as soon as it is read.
        expect(defects?.map(({ rule, error }) => `${rule}: ${(error as Error).stack}`)).toEqual([])
      }),
      { numRuns: 600, seed: 1, endOnFailure: true },
    )
  }, 180_000)

  it('without a light, without a backdrop, or with every light unknown, nothing is said of the light', () => {
    const dark = [makePlan({ lights: [] }), makePlan({ backdrop: 'none', lights: [] })]
    const unknown = makePlan()
    const lights = new Map([...unknown.lights].map(([name, light]) => [name, { ...light, power: undefined }]))
    for (const plan of [...dark, { ...unknown, lights }]) {
      const { findings, notChecked, defects } = check(plan)
      expect(defects).toEqual([])
      expect(findings.filter(({ rule }) => needLight.includes(rule)).map(({ message }) => message)).toEqual(
        [],
      )
      expect(notChecked.length).toBeGreaterThan(0)
    }
  })
})
