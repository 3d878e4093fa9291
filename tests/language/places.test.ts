import { describe, expect, it } from 'vitest'
import { pointer } from '../../src/text/place.js'
import { least, leastWith, ownFile, planOf } from './reading.js'

/** What a pointer's place covers in the plan's own text. */
const covers = (text: string, at: string): string => {
  const place = planOf(text).places.of(at)
  expect(place.file).toBe(ownFile)
  return text.slice(place.start, place.end)
}

describe('places', () => {
  it('cover the value', () => {
    expect(covers(least, '/lights/key/power')).toBe('1/4')
    expect(covers(least, '/camera/at/distance')).toBe('2.5 m')
    expect(planOf(least).places.of('/camera/aperture')).toMatchObject({
      pointer: '/camera/aperture',
      line: 3,
      column: 59,
      endLine: 3,
      endColumn: 64,
    })
  })

  it('of what is a default are those of the nearest that is written', () => {
    expect(covers(least, '/subject/height')).toBe('{ kind: person }')
    expect(covers(least, '/lights/key/stand/arm')).toContain('flashgun')
    expect(covers(least, '/room/width')).toBe('plan')
    expect(planOf(least).places.stated('/subject/height')).toBe(false)
    expect(planOf(least).places.stated('/subject/kind')).toBe(true)
    expect(planOf(least).places.written('/subject/height')).toBeUndefined()
  })

  it('of what takes several lines are its key', () => {
    expect(covers(least, '/lights')).toBe('lights')
    const text = leastWith({ points: 'points:\n  hands:\n    front: 20 cm\n    height: 1 m' })
    expect(covers(text, '/points/hands')).toBe('hands')
    const list = leastWith({ readings: 'readings:\n  - at: subject\n    of: all\n    reads: f/5.6' })
    expect(covers(list, '/readings/0')).toBe('at')
  })

  it('keep the author’s spelling', () => {
    const text = leastWith({
      subject: `subject: { kind: person, height: "5'8" }`.replace('"5\'8"', `'5 ft 8 in'`),
    })
    expect(planOf(text).places.written('/subject/height')).toBe(`'5 ft 8 in'`)
  })

  it('never fail, whatever is asked', () => {
    const { places } = planOf(least)
    for (const at of [
      '',
      '/',
      '/nothing',
      '/lights/key/power/deeper',
      '/tags/7',
      '/~0~1',
      pointer('a/b', 'c~d'),
    ]) {
      const place = places.of(at)
      expect(place.start).toBeLessThanOrEqual(place.end)
      expect(place.end).toBeLessThanOrEqual(least.length)
    }
    expect(places.stated('')).toBe(true)
  })

  it('of what comes through an alias are the anchor’s, used at the alias', () => {
    const text = `${leastWith({ paper: undefined, key: undefined, lights: undefined })}lights:
  key: { unit: flashgun, power: 1/4, at: &place { angle: 35 deg left, distance: 1.2 m } }
  fill: { unit: flashgun, power: 1/8, at: *place }
`
    const { places } = planOf(text)
    const at = places.of('/lights/fill/at/distance')
    expect(text.slice(at.start, at.end)).toBe('1.2 m')
    expect(at.line).toBe(places.of('/lights/key/at').line)
    const used = places.usedAt('/lights/fill/at/distance')!
    expect(text.slice(used.start, used.end)).toContain('place')
    expect(used.line).toBe(at.line + 1)
  })

  it('of what comes through a merge key are the anchor’s, used at it', () => {
    const text = `${leastWith({ paper: undefined, key: undefined, lights: undefined })}lights:
  key: &gun { unit: flashgun, power: 1/4, at: { angle: 35 deg left, distance: 1.2 m } }
  fill: { <<: *gun, power: 1/8 }
`
    const { places, lights } = planOf(text)
    expect(lights.get('fill')).toMatchObject({ power: 1 / 8, at: { distance: 1.2 } })
    expect(places.of('/lights/fill/at').line).toBe(places.of('/lights/key').line)
    expect(places.usedAt('/lights/fill/at')!.line).toBe(places.of('/lights/fill/power').line)
  })

  it('through a base and an alias there say where the plan uses them', () => {
    const { places } = planOf('plan: 1\ntitle: Mine\nbase: b.base.yaml\n', {
      'set/b.base.yaml': `${leastWith({ paper: undefined, key: undefined, lights: undefined })}lights:
  key: { unit: flashgun, power: &p 1/4, at: camera }
  fill: { like: key, power: *p }
`,
    })
    expect(places.of('/lights/fill/power')).toMatchObject({ file: 'set/b.base.yaml' })
    expect(places.usedAt('/lights/fill/power')).toMatchObject({ file: ownFile, line: 3 })
    expect(places.usedAt('/lights/fill/unit')).toMatchObject({ file: ownFile, line: 3 })
  })

  it('of gear that the kit has are in the kit, of gear that is written out in the plan', () => {
    const { places } = planOf(
      `${leastWith({ key: '  key: { like: first }', paper: '  first: { unit: gun, power: 1/4, at: camera }' })}kit: k.kit.yaml\n`,
      { 'set/k.kit.yaml': 'kit: 1\ntitle: K\nunits:\n  gun:\n    energy: 70 Ws\n' },
    )
    const energy = places.of('/lights/key/unit/energy')
    expect(energy).toMatchObject({ file: 'set/k.kit.yaml', line: 5, pointer: '/units/gun/energy' })
    expect(places.usedAt('/lights/key/unit/energy')!.file).toBe(ownFile)
    expect(places.stated('/lights/key/unit/recycle')).toBe(false)
    expect(places.of('/lights/key/unit/recycle')).toEqual(places.of('/lights/key/unit'))
    expect(places.of('/kit/units/gun/energy')).toEqual(energy)
  })
})
