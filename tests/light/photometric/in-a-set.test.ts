/** A light with a table as it stands in a set: which way its angles turn, and what its lamp gives tilted. */
import { describe, expect, it } from 'vitest'
import type { PhotometricTable } from '../../../src/language/photometric/table.js'
import type { Light } from '../../../src/language/plan.js'
import { photometryOf } from '../../../src/light/photometric.js'
import { onAxisResponse, response } from '../../../src/light/response.js'
import type { AreaSource } from '../../../src/light/source.js'
import { add, scale, unit } from '../../../src/scene/vector.js'
import { metres } from '../../../src/units/quantity.js'
import { degreesOf, makeLight, offsets, tape } from '../../helpers/make-plan.js'
import { type PhotometricText, steps } from '../../helpers/photometric-text.js'
import { lampOf, sourceOf, tableOf, uneven } from './tables.js'

describe('as it stands in a set', () => {
  const oneSided: PhotometricText = {
    vertical: [0, 30, 60, 90],
    horizontal: [0, 90, 180, 270, 360],
    // Ten times as much toward 0 as toward 180, twice as much toward 90 as toward 270.
    candela: (v, h) => (v === 90 ? 0 : v === 0 ? 1000 : [2000, 800, 200, 400, 2000][h / 90]!),
    opening: [0.02, 0.04, 0],
  }
  /** Behind the subject, looking straight at the camera. */
  const place = { at: offsets({ behind: 1, height: 1.5 }), aim: { at: 'point', point: 'camera' } }
  const light = (overrides: object = {}, table = tableOf(oneSided)): Light =>
    makeLight('key', {
      unit: lampOf(table),
      modifier: undefined,
      zoom: undefined,
      ...place,
      ...overrides,
    } as never)
  /** What is given 30° off the axis to a side of the front, against what is given straight ahead, by candela. */
  const toward = (source: AreaSource, across: number, up: number): number => {
    const { face } = source
    const off = add(scale(face.across, across), scale(face.up, up))
    const way = unit(add(scale(face.normal, Math.cos(degreesOf(30))), scale(off, Math.sin(degreesOf(30)))))
    return (
      100 * response(source, { at: add(face.centre, scale(way, 10)), normal: scale(way, -1), kind: 'flat' })
    )
  }

  it('horizontal angle 0 lies to the right of who faces it, 90 above', () => {
    const source = sourceOf(light())
    // Seen from the camera, right is x and above is z.
    expect(source.face.across[0]).toBeCloseTo(1, 2)
    expect(source.face.up[2]).toBeCloseTo(1, 2)
    expect(toward(source, 1, 0)).toBeCloseTo(2, 2)
    expect(toward(source, 0, 1)).toBeCloseTo(0.8, 2)
    expect(toward(source, -1, 0)).toBeCloseTo(0.2, 2)
    expect(toward(source, 0, -1)).toBeCloseTo(0.4, 2)
    expect([source.face.width, source.face.height]).toEqual([0.04, 0.02])
  })

  it('lying it is turned by a quarter, with its front', () => {
    const source = sourceOf(light({ lying: true }))
    expect([source.face.width, source.face.height]).toEqual([0.02, 0.04])
    expect(toward(source, 0, 1)).toBeCloseTo(2, 2)
    expect(toward(source, -1, 0)).toBeCloseTo(0.8, 2)
    expect(toward(source, 0, -1)).toBeCloseTo(0.2, 2)
    expect(toward(source, 1, 0)).toBeCloseTo(0.4, 2)
  })

  it('types B and A: horizontal angles grow toward the light’s own right', () => {
    const given: PhotometricText = {
      type: 2,
      vertical: steps(-90, 90, 30),
      horizontal: steps(-90, 90, 30),
      candela: (v, h) => 1000 + 10 * h + v,
      opening: [0.02, 0.05, 0],
    }
    for (const type of [2, 3] as const) {
      const source = sourceOf(light({}, tableOf({ ...given, type })))
      expect(toward(source, -1, 0)).toBeCloseTo(1.3, 2)
      expect(toward(source, 1, 0)).toBeCloseTo(0.7, 2)
      expect(toward(source, 0, 1)).toBeCloseTo(1.03, 2)
      // Their length stands upright, as the plane of the horizontal angle 0 does.
      expect([source.face.width, source.face.height]).toEqual([0.02, 0.05])
    }
  })

  it('a mirrored table on the other side gives mirrored light', () => {
    const mirrored = tableOf({ ...oneSided, candela: (v, h) => oneSided.candela(v, (540 - h) % 360) })
    for (const [x, y, z] of [
      [0.3, -0.5, 1.6],
      [-1, -2, 0.4],
      [0.8, 0.2, 1.2],
    ] as const) {
      const at = (side: number, table: PhotometricTable): number =>
        response(
          sourceOf(
            light(
              {
                at: offsets({ right: side * 0.8, behind: 1, height: 1.9 }),
                aim: { at: 'point', point: 'subject' },
              },
              table,
            ),
          ),
          { at: [side * x, y, z], normal: [0, 1, 0], kind: 'dome' },
        )
      expect(at(-1, mirrored)).toBeCloseTo(at(1, tableOf(oneSided)), 9)
    }
  })

  it('gives light behind it where its table does, and only there', () => {
    const up = tableOf({
      vertical: steps(0, 180, 30),
      horizontal: [0],
      candela: (v) => (v > 90 ? 300 : v === 90 ? 0 : 600),
      opening: [0.02, 0.02, 0],
    })
    const source = sourceOf(light({}, up))
    expect(source.both).toBe(true)
    const { face } = source
    const at = add(face.centre, scale(face.normal, -2))
    expect(response(source, { at, normal: face.normal, kind: 'flat' })).toBeCloseTo(0.5 / 4, 4)
    expect(sourceOf(light()).both).toBe(false)
    // In proportion down to nothing at 120 still leaves some behind.
    const over = tableOf({ vertical: [0, 90, 120], horizontal: [0], candela: (v) => (v === 120 ? 0 : 50) })
    expect(photometryOf(over).both).toBe(true)
    expect(photometryOf(tableOf(uneven)).both).toBe(true)
  })

  it('without an opening the front is that of a bare lamp; a stated size goes first', () => {
    const point = tableOf({ ...oneSided, opening: [0, 0, 0] })
    expect(sourceOf(light({}, point)).face).toMatchObject({ outline: 'disc', width: 0.18 })
    const round = tableOf({ ...oneSided, opening: [-0.3, -0.3, 0] })
    expect(sourceOf(light({}, round)).face).toMatchObject({ outline: 'disc', width: 0.3, height: 0.3 })
    const stated = { ...lampOf(round), size: { width: 0.6, height: 0.2 } } as never as Light['unit']
    expect(sourceOf(light({ unit: stated })).face).toMatchObject({ outline: 'rectangle', width: 0.6 })
  })

  it('a lamp that burns tilted gives what the file says of that', () => {
    // Straight down, level, and half way: the lamp stands upright in the light that points down.
    const tilt = (lamp: 1 | 2 | 3) => `INCLUDE\n${lamp}\n3\n0 45 90\n1 0.9 0.7`
    const given = (lamp: 1 | 2 | 3, at: object, lying = false): number => {
      const table = tableOf({ ...oneSided, candela: (v) => (v === 90 ? 0 : 1000), tilt: tilt(lamp) })
      return 4 * onAxisResponse(sourceOf(light({ ...at, lying }, table)), metres(2), 'flat')
    }
    const level = { at: tape(0, 1, { upDegrees: 0 }), aim: { at: 'point', point: 'subject' } }
    const down = { at: offsets({ height: 3 }), aim: { at: 'point', point: 'floor' } }
    const half = { at: tape(0, 1.5, { upDegrees: 45 }), aim: { at: 'point', point: 'subject' } }
    expect(given(1, level)).toBeCloseTo(0.7, 2)
    expect(given(1, half)).toBeCloseTo(0.9, 2)
    expect(given(1, down)).toBeCloseTo(1, 2)
    // Along the front's width it stays level however the light is tilted; along its height it tilts with it.
    expect(given(2, half)).toBeCloseTo(1, 2)
    expect(given(3, half)).toBeCloseTo(0.9, 2)
    expect(given(2, half, true)).toBeCloseTo(0.9, 2)
    expect(given(3, half, true)).toBeCloseTo(1, 2)
  })
})
