/** Knobs as the author writes them: read back by the language's own readers, they are the value again. */
import { describe, expect, it } from 'vitest'
import type { Plan } from '../../src/language/plan.js'
import { knobPointer, knobToday, writeKnob } from '../../src/set/knob-value.js'
import type { Knob } from '../../src/set/knobs.js'
import { readAperture } from '../../src/units/aperture.js'
import { readLength } from '../../src/units/length.js'
import { readPower } from '../../src/units/power.js'
import { readShutter } from '../../src/units/shutter.js'
import {
  head,
  makeLight,
  makePanel,
  makePlan,
  offsets,
  type PlanOverrides,
  tape,
} from '../helpers/make-plan.js'

const lights = [
  makeLight('key', { at: tape(35, 1.4, { height: 2 }) }),
  makeLight('metered', {
    role: 'fill',
    power: undefined,
    meters: { reads: 2 ** 2.5, at: undefined },
    at: tape(-20, 2),
  }),
  makeLight('paper', { role: 'backdrop', at: offsets({ right: -1.5, beforeBackdrop: 1.5, height: 1.5 }) }),
  makeLight('side', { role: 'rim', at: offsets({ right: 1.2, behind: -0.5, height: 1.8 }) }),
]
const panels = [
  makePanel('flag', { at: offsets({ right: -0.8, behind: 0.3, height: 1.2 }) }),
  makePanel('low', { at: offsets({ right: 0.4 }), size: { width: 0.6, height: 0.5 } as never }),
  makePanel('book', { kind: 'v-flat', at: offsets({ right: 1, height: 1.2 }) }),
]
/** `written`: what stands at some pointers; nothing else is stated. */
const plan = (written: Readonly<Record<string, string>> = {}, more: PlanOverrides = {}): Plan => {
  const made = makePlan({ lights, panels, ...more })
  return {
    ...made,
    places: {
      ...made.places,
      stated: (pointer) => pointer in written,
      written: (pointer) => written[pointer],
    },
  }
}
const light = (
  knob:
    | 'strength'
    | 'light-distance'
    | 'before-backdrop'
    | 'light-height'
    | 'light-up'
    | 'light-angle'
    | 'light-right'
    | 'zoom',
  name: string,
): Knob => ({
  knob,
  light: name,
})

describe('pointer', () => {
  it('is where the value stands, or would', () => {
    const at = (knob: Knob, written?: Readonly<Record<string, string>>) => knobPointer(plan(written), knob)
    expect(at(light('strength', 'key'))).toBe('/lights/key/power')
    expect(at(light('strength', 'metered'))).toBe('/lights/metered/meters')
    expect(at(light('strength', 'metered'), { '/lights/metered/meters/reads': 'f/5.6' })).toBe(
      '/lights/metered/meters/reads',
    )
    expect(at(light('light-distance', 'key'))).toBe('/lights/key/at/distance')
    expect(at(light('light-distance', 'side'))).toBe('/lights/side/at')
    expect(at(light('before-backdrop', 'paper'))).toBe('/lights/paper/at/before-backdrop')
    expect(at(light('before-backdrop', 'side'))).toBe('/lights/side/at')
    expect(at(light('zoom', 'key'))).toBe('/lights/key/zoom')
    expect(at(light('light-height', 'key'))).toBe('/lights/key/at/height')
    expect(at(light('light-angle', 'key'))).toBe('/lights/key/at/angle')
    expect(at(light('light-right', 'side'))).toBe('/lights/side/at/right')
    expect(at(light('light-right', 'paper'))).toBe('/lights/paper/at/left')
    expect(at({ knob: 'panel-right', panel: 'flag' })).toBe('/panels/flag/at/left')
    expect(at({ knob: 'panel-right', panel: 'book' })).toBe('/panels/book/at/right')
    expect(at({ knob: 'panel-height', panel: 'flag' })).toBe('/panels/flag/at/height')
    expect(at({ knob: 'aperture' })).toBe('/camera/aperture')
    expect(at({ knob: 'camera-distance' })).toBe('/camera/at/distance')
    expect(at({ knob: 'camera-aside' })).toBe('/camera/at/aside')
    expect(at({ knob: 'behind' })).toBe('/backdrop/behind')
    expect(at({ knob: 'behind' }, { '/backdrop/behind-last-row': '50 cm' })).toBe('/backdrop/behind-last-row')
    expect(at({ knob: 'backdrop-width' })).toBe('/backdrop/width')
  })
})

describe('today', () => {
  it('is the value in the plan', () => {
    const today = (knob: Knob) => knobToday(plan(), knob)
    expect(today(light('strength', 'key'))).toBe(0)
    expect(today(light('light-distance', 'key'))).toBeCloseTo(1.4, 12)
    // 1.2 m and 0.5 m along the floor, 1.8 m high, from a face at 0.94 × 1.72 m.
    expect(today(light('light-distance', 'side'))).toBeCloseTo(Math.hypot(1.2, 0.5, 1.8 - 0.94 * 1.72), 12)
    expect(today(light('before-backdrop', 'paper'))).toBeCloseTo(1.5, 12)
    expect(today(light('before-backdrop', 'side'))).toBeCloseTo(2.5, 12)
    expect(today(light('light-height', 'key'))).toBe(2)
    // Not stated: at the height of the face.
    expect(today(light('light-height', 'metered'))).toBeCloseTo(0.94 * 1.72, 12)
    expect(today(light('light-angle', 'metered'))).toBeCloseTo((-20 * Math.PI) / 180, 12)
    expect(today(light('light-angle', 'side'))).toBeUndefined()
    const up = plan({}, { lights: [makeLight('key', { at: tape(35, 1.4, { upDegrees: 20 }) })] })
    expect(knobToday(up, light('light-up', 'key'))).toBeCloseTo((20 * Math.PI) / 180, 12)
    expect(knobToday(up, light('light-height', 'key'))).toBeUndefined()
    expect(today(light('light-up', 'key'))).toBeUndefined()
    expect(knobPointer(up, light('light-up', 'key'))).toBe('/lights/key/at/up')
    expect(writeKnob(up, light('light-up', 'key'), (35 * Math.PI) / 180)).toBe('35 deg')
    expect(today(light('light-right', 'side'))).toBe(1.2)
    expect(today(light('light-right', 'key'))).toBeUndefined()
    expect(today({ knob: 'panel-right', panel: 'flag' })).toBe(-0.8)
    expect(today({ knob: 'panel-right', panel: 'nobody' })).toBeUndefined()
    expect(today({ knob: 'panel-height', panel: 'flag' })).toBe(1.2)
    // Not stated: at the height of the face. A v-flat stands on the floor.
    expect(today({ knob: 'panel-height', panel: 'low' })).toBeCloseTo(0.94 * 1.72, 12)
    expect(today({ knob: 'panel-height', panel: 'book' })).toBeUndefined()
    expect(today({ knob: 'behind' })).toBe(2)
    expect(today({ knob: 'lens' })).toBe(0.085)
    expect(today(light('strength', 'nobody'))).toBeUndefined()
  })
})

describe('writing', () => {
  it('heights, bearings and sides', () => {
    expect(writeKnob(plan(), light('light-height', 'key'), 2.25)).toBe('2.25 m')
    expect(writeKnob(plan(), light('light-angle', 'key'), (50 * Math.PI) / 180)).toBe('50 deg left')
    expect(writeKnob(plan(), light('light-angle', 'metered'), (-55 * Math.PI) / 180)).toBe('55 deg right')
    expect(writeKnob(plan(), light('light-right', 'paper'), -1.8)).toBe('1.8 m')
    expect(writeKnob(plan(), { knob: 'camera-aside' }, -0.35)).toBe('35 cm left')
    expect(writeKnob(plan(), { knob: 'camera-aside' }, 0)).toBe('0 cm right')
    expect(writeKnob(plan(), { knob: 'panel-right', panel: 'flag' }, -1.05)).toBe('1.05 m')
    expect(writeKnob(plan(), { knob: 'panel-height', panel: 'flag' }, 1.35)).toBe('1.35 m')
    const over = plan(
      {},
      {
        lights: [
          makeLight('key', {
            at: { ...tape(0, 1, { height: 0.5 }), height: { over: 'table', metres: 0.5 } } as never,
          }),
        ],
        subject: {
          kind: 'object',
          height: 0.3,
          standsOn: { height: 0.8, surface: makePlan().backdrop!.surface, width: 1, depth: 1 },
        },
      },
    )
    expect(writeKnob(over, light('light-height', 'key'), 1.6)).toBe('80 cm over table')
  })

  it('powers on the unit’s steps, metered f-numbers', () => {
    const written = writeKnob(plan(), light('strength', 'key'), -2 / 3)
    expect(written).toBe('1/8 + 0.3')
    expect(writeKnob(plan(), light('strength', 'metered'), 1)).toBe('f/8')
    const read = readPower(writeKnob(plan(), light('strength', 'key'), 1))
    expect(read).toEqual({ ok: true, value: { kind: 'share', share: 0.5 } })
  })

  it('power as its author writes it: percent, watt-seconds, a dial', () => {
    const studio = makeLight('key', { unit: head(400), power: 1 / 4 })
    const write = (as: string, unit = studio.unit) =>
      writeKnob(
        plan({ '/lights/key/power': as }, { lights: [{ ...studio, unit }] }),
        light('strength', 'key'),
        1,
      )
    expect(write('25 %')).toBe('50 %')
    expect(write('100 Ws')).toBe('200 Ws')
    const dialled = {
      ...studio.unit,
      power: { from: 1 / 32, to: 1, step: 0.1, dial: { top: 10 } },
    } as typeof studio.unit
    expect(write('dial 8', dialled)).toBe('dial 9.0')
  })

  it('lengths in the units that stand there, else in the plan’s', () => {
    const knob = light('light-distance', 'key')
    expect(writeKnob(plan(), knob, 1.85)).toBe('1.85 m')
    expect(writeKnob(plan({ '/lights/key/at/distance': '140 cm' }), knob, 1.85)).toBe('185 cm')
    expect(writeKnob(plan({ '/lights/key/at/distance': `4'7"` }), knob, 72 * 0.0254)).toBe(`6'`)
    expect(writeKnob(plan({}, { lengths: 'feet' }), knob, 74 * 0.0254)).toBe('6 ft 2 in')
    const read = readLength(writeKnob(plan(), { knob: 'behind' }, 2.35))
    expect(read).toEqual({ ok: true, value: 2.35 })
  })

  it('camera settings as marks', () => {
    expect(writeKnob(plan(), { knob: 'aperture' }, 2 ** (17 / 6))).toBe('f/7.1')
    expect(writeKnob(plan(), { knob: 'shutter' }, 2 ** -7)).toBe('1/125')
    expect(writeKnob(plan(), { knob: 'iso' }, 200)).toBe('200')
    expect(writeKnob(plan(), { knob: 'filter' }, 3)).toBe('3 stops')
    expect(writeKnob(plan(), { knob: 'lens' }, 0.105)).toBe('105 mm')
    expect(readAperture('f/7.1')).toEqual({ ok: true, value: 2 ** (17 / 6) })
    const time = readShutter('1/125')
    expect(time.ok && time.value.exact).toBe(2 ** -7)
  })

  it('a light placed by offsets gets new offsets', () => {
    // Twice as far along the floor from the face, at the same height.
    const reach = Math.hypot(2 * Math.hypot(1.2, 0.5), 1.8 - 0.94 * 1.72)
    expect(writeKnob(plan(), light('light-distance', 'side'), reach)).toBe(
      '{ right: 2.4 m, front: 1 m, height: 1.8 m }',
    )
    expect(writeKnob(plan(), light('before-backdrop', 'side'), 1.2)).toBe(
      '{ right: 1.2 m, before-backdrop: 1.2 m, height: 1.8 m }',
    )
  })

  it('behind the last row, less the rows', () => {
    const rows = [
      { people: 3, spacing: 0.5, facesAt: 0.8, behind: 0 },
      { people: 2, spacing: 0.7, facesAt: 1.2, behind: 0.45 },
    ]
    const group = plan({ '/backdrop/behind-last-row': '50 cm' }, { subject: { kind: 'group', rows } })
    expect(writeKnob(group, { knob: 'behind' }, 1.2)).toBe('75 cm')
  })
})
