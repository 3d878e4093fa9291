/** From lights of a plan to sources: the shape and pattern of every kind of gear. */
import { describe, expect, it } from 'vitest'
import type { FlashUnit, Light } from '../../src/language/plan.js'
import { framePattern } from '../../src/light/flash-head.js'
import { ambientSource, makeSource, whyNoSource } from '../../src/light/make-source.js'
import { response } from '../../src/light/response.js'
import type { AreaSource, Source } from '../../src/light/source.js'
import { buildScene } from '../../src/scene/build-scene.js'
import { cross, distance, dot, subtract, type Vec3 } from '../../src/scene/vector.js'
import { metres } from '../../src/units/quantity.js'
import {
  degreesOf,
  flashgun,
  head,
  makeLight,
  makeModifier,
  makePlan,
  softbox,
  sun,
  tape,
  windowUnit,
} from '../helpers/make-plan.js'
import { polygonArea } from './fronts.js'

const made = (light: Light): { readonly source: Source | undefined; readonly why: string | undefined } => {
  const plan = makePlan({ lights: [light] })
  const sceneLight = buildScene(plan).lights.get(light.name)!
  return { source: makeSource(light, sceneLight, plan), why: whyNoSource(light, sceneLight) }
}

const area = (overrides: Parameters<typeof makeLight>[1]): AreaSource => {
  const { source, why } = made(makeLight('key', overrides))
  if (source?.kind !== 'area') throw new Error(`no front: ${why}`)
  return source
}

const lamp = (strength: object): Light['unit'] =>
  ({
    ...flashgun,
    kind: 'continuous',
    name: 'lamp',
    strength,
    size: { width: 0.3, height: 0.3 },
  }) as never as Light['unit']

describe('every kind of light', () => {
  it('a bare flashgun: a small rectangle with the pattern of its zoom, on its side where it lies', () => {
    const wide = area({ zoom: 0.05 })
    expect(wide.face.outline).toBe('rectangle')
    expect(wide.pattern.head!.tanAcross).toBeCloseTo(framePattern(metres(0.05)).tanAcross, 9)
    const turned = area({ zoom: 0.05, lying: true })
    expect(turned.pattern.head).toEqual({
      tanAcross: wide.pattern.head!.tanUp,
      tanUp: wide.pattern.head!.tanAcross,
    })
  })

  it('a head: the disc of its reflector, cosⁿ between half peaks', () => {
    const source = area({ unit: head(400), zoom: undefined })
    expect(source.face.outline).toBe('disc')
    expect(Math.cos(degreesOf(30)) ** source.pattern.cosine!).toBeCloseTo(0.5, 12)
    expect(source.both).toBe(false)
  })

  it('a bare tube: the same to all sides', () => {
    const unit = {
      ...flashgun,
      strength: { ...(flashgun as FlashUnit).strength, ratedWith: 'bare' },
    } as never as Light['unit']
    const source = area({ unit, zoom: undefined })
    expect(source.pattern.cosine).toBe(0)
    expect(source.both).toBe(true)
  })

  it('modifiers: their own outline, emission and grid; the grid of the light goes first', () => {
    const box = area({ modifier: softbox(0.6, 0.9) })
    expect([box.face.outline, box.pattern, box.both]).toEqual([
      'rectangle',
      { cosine: 1, head: undefined, grid: undefined },
      false,
    ])
    expect(area({ modifier: makeModifier() }).both).toBe(true)
    const grid = { kind: 'egg-crate', cutOff: degreesOf(45) } as const
    const gridded = area({ modifier: softbox(0.6, 0.9, { grid }) }).pattern.grid
    expect(gridded?.kind).toBe('egg-crate')
    expect(gridded?.kind === 'egg-crate' ? gridded.tanCutOff : 0).toBeCloseTo(1, 12)
    const comb = { kind: 'honeycomb', halfPeak: degreesOf(20) } as const
    expect(area({ modifier: softbox(0.6, 0.9, { grid }), grid: comb }).pattern.grid).toEqual(comb)
  })

  it('continuous light: its beam, else an even front', () => {
    expect(
      area({ unit: lamp({ kind: 'lux', lux: 2000, distance: 1, beam: undefined }) }).pattern.cosine,
    ).toBe(1)
    const beam = area({ unit: lamp({ kind: 'lumens', lumens: 5000, beam: degreesOf(60) }) })
    expect(beam.pattern.cosine).toBeCloseTo(4.8188, 3) // check value geo.cosn.30
  })

  it('a window is an even rectangle, the sun comes from one side, the ambient from above', () => {
    const glass = area({ unit: windowUnit, size: { width: 1.2, height: 1.5 }, zoom: undefined })
    expect([glass.pattern.cosine, glass.area]).toEqual([1, 1.2 * 1.5])
    const { source } = made(makeLight('sun', { unit: sun, at: tape(90, 0, { upDegrees: 30 }) }))
    expect(source?.kind).toBe('parallel')
    // From camera-left, 30° up.
    const toward = source?.kind === 'parallel' ? source.toward : ([0, 0, 0] as Vec3)
    expect(distance(toward, [-Math.cos(degreesOf(30)), 0, 0.5])).toBeLessThan(1e-9)
    expect(ambientSource).toEqual({ kind: 'uniform', light: 'ambient' })
  })

  it('says where a light has no front', () => {
    expect(made(makeLight('key')).why).toBeUndefined()
    const light = makeLight('key')
    const sceneLight = buildScene(makePlan({ lights: [light] })).lights.get('key')!
    expect(whyNoSource(light, { ...sceneLight, front: undefined })).toBe('no front')
  })
})

describe('outlines in space', () => {
  const sources = {
    box: area({ modifier: softbox(0.6, 0.9), at: tape(35, 1.4, { height: 2 }) }),
    lying: area({ modifier: softbox(0.6, 0.9), lying: true, at: tape(-60, 1.4, { height: 1 }) }),
    umbrella: area({ modifier: makeModifier(), at: tape(120, 1.4, { height: 2.2 }) }),
    octa: area({ modifier: makeModifier({ outline: 'octagon' }) }),
    dish: area({ modifier: makeModifier({ outline: 'ring' }) }),
  }
  for (const [name, source] of Object.entries(sources))
    it(`${name}: flat on its face, counter-clockwise from in front, as large as it is said to be`, () => {
      const { polygon, face } = source
      let turning: Vec3 = [0, 0, 0]
      polygon.forEach((corner, i) => {
        expect(Math.abs(dot(subtract(corner, face.centre), face.normal))).toBeLessThan(1e-12)
        const next = polygon[(i + 1) % polygon.length]!
        const part = cross(subtract(corner, face.centre), subtract(next, face.centre))
        turning = [turning[0] + part[0] / 2, turning[1] + part[1] / 2, turning[2] + part[2] / 2]
      })
      expect(dot(turning, face.normal)).toBeCloseTo(polygonArea(source.outline), 9)
      expect(polygonArea(source.outline) * (1 - source.hole ** 2)).toBeCloseTo(source.area, 9)
    })

  it('a light aimed at the face gives most to a meter that faces it', () => {
    const { centre, normal } = sources.box.face
    const at: Vec3 = [centre[0] + 1.4 * normal[0], centre[1] + 1.4 * normal[1], centre[2] + 1.4 * normal[2]]
    const to = (facing: Vec3): number => response(sources.box, { at, normal: facing, kind: 'flat' })
    const facing = to([-normal[0], -normal[1], -normal[2]])
    expect(facing).toBeGreaterThan(to([0, -1, 0]))
    expect(facing).toBeGreaterThan(to([0, 0, 1]))
  })
})
