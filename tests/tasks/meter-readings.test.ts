import { describe, expect, it } from 'vitest'
import { computeSet } from '../../src/set/compute-set.js'
import { isOfLine, meterReadings } from '../../src/tasks/meter-readings.js'
import { planOf } from '../rules/check-text.js'

const plan = (...readings: readonly string[]) => `plan: 1
title: What was read
camera: { lens: 50 mm, at: { distance: 3 m, height: 1.5 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person, faces-at: 1.5 m }
backdrop: { surface: white paper, behind: 2 m }
lights:
  key: { unit: { energy: 400 Ws, reflector: 60 deg }, power: 1/2, at: { angle: 0 deg left, distance: 4 m, height: 1.5 m } }
  fill: { unit: head 200 Ws, power: 1/2, at: { angle: 30 deg right, distance: 3 m, height: 1.5 m } }
points: { near: { front: 2 m, height: 1.5 m } }
wanted: { framing: waist, shadow: any }
readings:
${readings.map((one) => `  - ${one}`).join('\n')}
`
const set = (...readings: readonly string[]) => computeSet(planOf(plan(...readings)))

describe('what was read', () => {
  it('stands as the author wrote it, held against all else: half the distance is two stops', () => {
    const [far, near, wrong] = meterReadings(
      set(
        '{ at: subject, of: [key], reads: f/8 }',
        '{ at: near, of: [key], reads: "f/16" }',
        '{ at: near, of: [key], reads: f/22 + 0.5 }',
      ),
    )
    expect([far!.reads, near!.reads, wrong!.reads]).toEqual(['f/8', 'f/16', 'f/22 + 0.5'])
    expect(wrong!.held!.odd).toBe(true)
    const pair = meterReadings(
      set('{ at: subject, of: [key], reads: f/8 }', '{ at: near, of: [key], reads: f/16 }'),
    )
    for (const one of pair) {
      expect(Math.abs(one.held!.difference)).toBeLessThan(0.1)
      expect(one.held!.odd).toBe(false)
    }
  })

  it('says which way it was held, and whether it was taken at other settings', () => {
    const read = meterReadings(
      set(
        '{ at: subject, of: [key], reads: f/8, taken: { key: { power: 1/4, distance: 4 m } } }',
        '{ at: subject, of: [key], reads: f/8, faces: camera, taken: { key: { power: 1/2, distance: 4 m } } }',
        '{ at: backdrop, of: all, reads: f/8 }',
        '{ at: backdrop, of: all, records: 200 }',
        '{ at: near, of: [key, fill], reads: f/8, faces: subject }',
      ),
    )
    expect(read.map(({ faces }) => faces)).toEqual(['key', 'camera', 'out', 'surface', 'subject'])
    expect(read.map(({ carried }) => carried)).toEqual([true, false, false, false, false])
    expect(read.map(({ dome }) => dome)).toEqual(['raised', 'raised', 'flat', 'flat', 'raised'])
  })

  it('belongs to the line of the card that was metered alike', () => {
    const made = set('{ at: subject, of: [fill, key], reads: f/11 }', '{ at: subject, of: key, reads: f/8 }')
    const [both, alone] = meterReadings(made)
    const line = (of: readonly string[], faces: 'camera' | { light: string }) =>
      made.reading({ at: 'subject', of, faces })!
    expect(isOfLine(both!, line(['key', 'fill'], 'camera'))).toBe(true)
    expect(isOfLine(both!, line(['key'], 'camera'))).toBe(false)
    expect(isOfLine(alone!, line(['key'], { light: 'key' }))).toBe(true)
    expect(isOfLine(alone!, line(['key'], 'camera'))).toBe(false)
  })

  it('says why one tells nothing', () => {
    const [white] = meterReadings(set('{ at: backdrop, of: all, records: 255 }'))
    expect(white!.unused).toBe('records white')
    expect(white!.held).toBeUndefined()
  })
})
