import { describe, expect, it } from 'vitest'
import { bare, least, ownFile, planOf } from './reading.js'

/** Expected values: the table of defaults and the least plan of the language, version 1. */
describe('the least plan', () => {
  const plan = planOf(least)

  it('has a camera whose unstated settings are the defaults', () => {
    expect(plan.camera).toEqual({
      sensor: { width: 0.036, height: 0.024 },
      lens: 0.085,
      frame: 'vertical',
      at: { distance: 2.5, height: 0.94 * 1.72, right: 0 },
      aim: { at: 'level' },
      focus: { on: 'subject' },
      aperture: 2 ** 2.5,
      // 1/160 is the third-stop mark two thirds over 1/128.
      shutter: expect.closeTo(2 ** (-7 - 1 / 3), 12),
      shutterMarked: 1 / 160,
      iso: 100,
      filter: 0,
      sync: 1 / 160,
      curtain: undefined,
      shutterKind: 'focal-plane',
      readout: undefined,
      exposure: 'manual',
      headroom: 1 / 4,
      whiteBalance: undefined,
      heldBy: 'person',
    })
  })

  it('has a standing person', () => {
    expect(plan.subject).toEqual({
      kind: 'person',
      height: 1.72,
      pose: 'standing',
      facesAt: 0.94 * 1.72,
      turnedRight: 0,
      width: 0.45,
      depth: 0.28,
      rows: [],
      standsOn: undefined,
      reflectance: 0.35,
      finish: 'matte',
      shape: undefined,
      moves: undefined,
      area: undefined,
      glasses: false,
      hair: undefined,
      age: undefined,
    })
  })

  it('has a backdrop of studio width', () => {
    expect(plan.backdrop).toEqual({
      surface: { name: 'white paper', reflectance: 0.9, u: expect.any(Number), colour: undefined },
      width: 2.72,
      height: 2.8,
      behind: 2,
      sweep: undefined,
      finish: 'matte',
      sky: undefined,
    })
  })

  it('has a key by its name, a backdrop light by its role, each aimed by it', () => {
    const key = plan.lights.get('key')!
    expect(key).toMatchObject({
      role: 'key',
      on: true,
      power: 1 / 4,
      zoom: 0.035,
      at: {
        by: 'tape',
        angleLeft: expect.closeTo((35 * Math.PI) / 180, 12),
        distance: 1.2,
        height: { over: 'floor', metres: 2 },
        up: undefined,
      },
      aim: { at: 'point', point: 'subject', feather: undefined },
      lying: false,
      mode: 'manual',
      modelling: false,
    })
    expect(key.modifier).toMatchObject({
      kind: 'shoot-through umbrella',
      outline: 'disc',
      size: { width: 1, height: 1 },
      loss: 1.8,
      lossU: 0.6,
      emission: { cosine: 1, both: true },
      guessed: true,
    })
    expect(plan.lights.get('paper')).toMatchObject({
      role: 'backdrop',
      modifier: undefined,
      at: {
        by: 'offsets',
        right: -1.5,
        behind: 0,
        beforeBackdrop: 1.5,
        height: { over: 'floor', metres: 1.5 },
      },
      aim: { at: 'point', point: 'backdrop' },
    })
  })

  it('has the built-in flashgun: guide number 36 m at 35 mm, full to 1/128 in thirds, 24 to 105 mm', () => {
    expect(plan.lights.get('key')!.unit).toMatchObject({
      kind: 'flash',
      name: 'flashgun',
      guessed: true,
      strength: {
        kind: 'guide-number',
        table: [{ metres: 36, zoom: 0.035 }],
        ratedAs: 'print',
        ratedWith: 'zoom',
      },
      power: { from: 1 / 128, to: 1, step: 1 / 3, dial: undefined },
      zoom: { from: 0.024, to: 0.105 },
    })
  })

  it('wants the shadow hidden since white is wanted, the face sharp, no ambient since all lights flash', () => {
    expect(plan.wanted).toMatchObject({
      framing: 'head and shoulders',
      backdrop: { tone: 'white' },
      shadow: 'hidden',
      sharp: { what: 'face' },
      ambient: 'none',
      exposure: 0,
    })
  })

  it('has nothing that it does not state', () => {
    expect(bare(plan)).toMatchObject({
      title: 'Headshot on white',
      notes: undefined,
      tags: [],
      room: undefined,
      ambient: undefined,
      readings: [],
      accept: [],
      measured: [],
      kit: undefined,
      lengths: 'metric',
    })
    expect(plan.file).toBe(ownFile)
    expect(plan.panels.size + plan.points.size).toBe(0)
  })
})
