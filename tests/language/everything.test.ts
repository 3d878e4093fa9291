/** A plan with every key that can stand beside the others, its kits and its room read as files. */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { bare, planOf } from './reading.js'

const written = (name: string) =>
  readFileSync(new URL(`written/everything.${name}.yaml`, import.meta.url), 'utf8')

const files = {
  'set/kits/loft.kit.yaml': written('kit'),
  'set/kits/borrowed.kit.yaml': 'kit: 1\ntitle: Borrowed\nstands: { boom: { highest: 4 m } }\n',
  'set/room.yaml': written('room'),
}
const plan = planOf(written('plan').replaceAll('../kits', 'kits'), files)

describe('everything in a plan', () => {
  it('is understood: camera', () => {
    expect(plan.camera).toMatchObject({
      focus: { on: 'row', row: 1 },
      at: { distance: 3.4, height: 1.5, right: 0.3 },
      filter: 3,
      curtain: 0.004,
      readout: 1 / 30,
      whiteBalance: 5500,
      sync: 1 / 200,
    })
  })

  it('is understood: lights', () => {
    expect(plan.lights.get('key')).toMatchObject({
      lying: true,
      power: expect.closeTo(2 ** (-2 + 1 / 3), 12),
      meters: { reads: 2 ** 2.5, at: 'hands' },
      grid: { kind: 'egg-crate', cutOff: expect.closeTo((40 * Math.PI) / 180, 12) },
      gel: { shift: 159, duv: 0.003, colour: undefined, loss: 2 / 3 },
      aim: {
        at: 'point',
        point: 'subject',
        feather: { by: expect.closeTo(Math.PI / 12, 12), towards: 'camera' },
      },
      modelling: true,
      trigger: { by: 'radio', channel: 3, group: 'A', early: true },
      stand: { kind: 'boom', arm: 1.5, counterweight: 4, sandbag: 10 },
      circuit: 'a',
    })
    expect(plan.lights.get('paper-left')).toMatchObject({
      unit: {
        kind: 'continuous',
        name: 'old hand lamp',
        duv: 0.006,
        strength: { kind: 'lumens', lumens: 9000 },
        flicker: 'mains',
      },
      modifier: { kind: 'snoot', name: 'tin funnel', size: { width: 0.12 }, loss: 1 },
      grid: { kind: 'honeycomb', halfPeak: expect.closeTo(Math.PI / 9, 12) },
      gel: { colour: 'blue', loss: 2 },
    })
    expect(plan.lights.get('low sun')).toMatchObject({
      unit: { kind: 'sun', colour: 4200, duv: 0.001 },
      gel: { names: ['1/2 CTO', '1/4 plus-green'], shift: 109, duv: 0.005, loss: expect.closeTo(0.65, 12) },
      at: { by: 'tape', distance: undefined, up: expect.closeTo((8 * Math.PI) / 180, 12) },
      reads: {
        reads: 2 ** 2.5,
        shutter: expect.closeTo(2 ** -10, 9),
        iso: 100,
        kind: 'incident',
        colour: 4200,
      },
    })
    expect(plan.lights.get('shop window')).toMatchObject({
      size: { width: 1.2, height: 1.5 },
      faces: { kind: 'side', side: 'right' },
    })
    expect(plan.lights.get('on camera')).toMatchObject({
      gel: { names: ['full CTB'], shift: -137, loss: 2 },
      at: { by: 'camera' },
      aim: { at: 'ceiling', above: 'subject' },
    })
  })

  it('is understood: panels and points', () => {
    expect(plan.panels.get('v-left')).toMatchObject({
      kind: 'v-flat',
      opening: Math.PI / 2,
      surface: { name: 'black' },
      outside: { name: 'white' },
      faces: { kind: 'angle', angleLeft: expect.closeTo(-Math.PI / 6, 12) },
    })
    expect(plan.panels.get('bounce')).toMatchObject({
      faces: { kind: 'point', point: 'subject' },
      transmits: 0,
    })
    const silk = plan.panels.get('silk')!
    expect(silk.transmits).toBe(0.45)
    expect(silk.transmits + silk.surface.reflectance).toBeLessThan(1)
    expect(silk.at).toMatchObject({ height: { over: 'table', metres: 0.2 }, right: -0.45 })
    expect(plan.points.get('hands')).toMatchObject({ by: 'offsets', behind: -0.2, right: 0 })
  })

  it('is understood: room, ambient, readings and the rest', () => {
    expect(plan.room).toMatchObject({
      height: expect.closeTo(8.5 * 0.3048, 12),
      walls: { back: { name: 'bare plaster', reflectance: 0.45 }, right: { name: 'black curtain' } },
    })
    expect(plan.room!.mains).toBe(50)
    expect(plan.room!.circuits.get('b')).toEqual({ voltage: 230, breaker: 10 })
    expect(plan.ambient).toMatchObject({
      reads: expect.closeTo(2 ** 1.5, 12),
      colour: 3000,
      flicker: 'mains',
      duv: 0.002,
    })
    expect(plan.readings).toHaveLength(2)
    expect(plan.accept).toEqual([
      { rule: 'frame-past-backdrop', because: 'the edges are cropped in delivery', until: '2027-06-30' },
    ])
    expect(plan.tags).toEqual(['white', 'portrait'])
    expect(plan.subject).toMatchObject({
      standsOn: { height: 0.2, surface: { name: 'white paper', finish: 'satin' }, width: 1, depth: 1.4 },
      area: { width: 1, depth: 2 },
      moves: 2,
      glasses: true,
      age: 'newborn',
    })
  })

  it('is understood: the kit', () => {
    expect(plan.kit!.stands.get('tall')).toEqual({ highest: 3, base: 1, weight: 3, load: 5, count: 4 })
    expect(plan.kit!.stands.get('boom')).toMatchObject({ highest: 4, load: undefined })
    expect(plan.measured).toEqual([
      {
        unit: 'flashgun',
        modifier: 'umbrella-100',
        zoom: 0.024,
        power: 0.25,
        distance: 1.2,
        reads: 2 ** 2.5,
        iso: 100,
      },
    ])
    // The kit's flashgun goes before the built-in one.
    expect(plan.lights.get('key')!.unit).toMatchObject({
      guessed: false,
      colour: 5600,
      duv: 0.004,
      colours: [
        { power: 1, colour: 5600 },
        { power: 1 / 32, colour: 5900 },
      ],
      strength: {
        kind: 'guide-number',
        ratedWith: 'zoom',
        table: [{ metres: 28, zoom: 0.024 }, { metres: 36 }, { metres: 58 }],
      },
      durations: [
        { power: 1, t01: 1 / 300, t05: 1 / 900 },
        { power: 1 / 16, t01: 1 / 6000, t05: undefined },
      ],
      recycle: 2.5,
      flashesPerCharge: 220,
      spareCharges: 2,
      weight: expect.closeTo(0.42, 12),
      preFlash: true,
    })
  })

  it('is the same with the room in a file', () => {
    const inFile = planOf(
      written('plan')
        .replaceAll('../kits', 'kits')
        .replace(/room:\n(?: {2}.*\n)+/, 'room: room.yaml\n')
        // The room file of this set has one circuit of its own.
        .replace('    circuit: a\n', ''),
      files,
    )
    const roomFile = written('room')
    const body = roomFile
      .split('\n')
      .filter((line) => line !== '' && !line.startsWith('#') && !/^(room|title):/.test(line))
      .map((line) => `  ${line}`)
    const inline = planOf(
      written('plan')
        .replaceAll('../kits', 'kits')
        .replace(/room:\n(?: {2}.*\n)+/, `room:\n${body.join('\n')}\n`)
        .replace('    circuit: a\n', ''),
      files,
    )
    expect(bare(inFile)).toEqual(bare(inline))
  })

  it('tells where gear of the kit is written, and where the plan uses it', () => {
    const at = '/lights/key/unit/recycle'
    expect(plan.places.stated(at)).toBe(true)
    expect(plan.places.of(at)).toMatchObject({
      file: 'set/kits/loft.kit.yaml',
      pointer: '/units/flashgun/recycle',
    })
    expect(plan.places.usedAt(at)).toMatchObject({ file: 'set/own.plan.yaml' })
    expect(plan.places.written(at)).toBe('2.5 s')
  })
})
