import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Light, Plan } from '../../src/language/plan.js'
import { leastWith, onlyMistake, planOf, pointsAt } from './reading.js'

const lights = (lines: string): string => leastWith({ key: lines, paper: undefined })
const plan = (lines: string): Plan => planOf(lights(lines))

const left = `  a:
    role: backdrop
    unit: flashgun
    power: 1/4
    at: { left: 1.8 m, before-backdrop: 1.2 m, height: 1.5 m }
    aim: { at: backdrop-left, feather: 15 deg towards left }
    meters: { reads: f/8, at: backdrop-left }
    stand: { kind: boom, arm: 1 m }
`.replace('    power: 1/4\n', '')

describe('a light like another', () => {
  it('has all that the other has, but for what it says itself', () => {
    const { lights: both } = plan(`${left}  b: { like: a, zoom: 50 mm }\n`)
    expect(both.get('b')).toEqual({ ...both.get('a')!, name: 'b', zoom: 0.05 })
  })

  it('sets power in the place of meters, and the other way about', () => {
    const { lights: both } = plan(`${left}  b: { like: a, power: 1/8 }\n  c: { like: b, meters: f/4 }\n`)
    expect(both.get('b')).toMatchObject({ power: 1 / 8, meters: undefined })
    expect(both.get('c')).toMatchObject({ power: undefined, meters: { reads: 4, at: undefined } })
  })

  it('takes the role of the other, unless its own name says one', () => {
    const { lights: all } = plan(
      `${left}  b: { like: a }\n  rim: { like: b, aim: subject }\n  hair-2: { like: x }\n  x: { unit: flashgun, at: camera }\n`,
    )
    expect([...all.values()].map((one) => `${one.name} ${one.role}`)).toEqual([
      'a backdrop',
      'b backdrop',
      // Stated at `a`, and so at all that are like it.
      'rim backdrop',
      'hair-2 hair',
      'x fill',
    ])
  })

  it('may stand before the other in the file', () => {
    const { lights: both } = plan(`  b: { like: a }\n${left}`)
    expect([...both.keys()]).toEqual(['b', 'a'])
    expect(both.get('b')!.at).toEqual(both.get('a')!.at)
  })

  it('has its values written at the other light, and used at its own', () => {
    const read = plan(`${left}  b: { like: a, zoom: 50 mm }\n`)
    const { places } = read
    expect(places.stated('/lights/b/at/height')).toBe(true)
    expect(places.of('/lights/b/at/height')).toEqual(places.of('/lights/a/at/height'))
    expect(places.of('/lights/b/at/height').pointer).toBe('/lights/a/at/height')
    expect(places.usedAt('/lights/b/at/height')).toMatchObject({ line: places.of('/lights/b/like').line })
    expect(places.written('/lights/b/at/height')).toBe('1.5 m')
    expect(places.usedAt('/lights/a/at/height')).toBeUndefined()
    expect(places.usedAt('/lights/b/zoom')).toBeUndefined()
    expect(places.stated('/lights/b/gel')).toBe(false)
    expect(places.of('/lights/b/gel').pointer).toBe('/lights/b')
  })
})

describe('a mirrored light', () => {
  it('stands, points and meters on the other side', () => {
    const { lights: both } = plan(`${left}  b: { like: a, mirrored: true }\n`)
    expect(both.get('b')).toEqual({
      ...both.get('a')!,
      name: 'b',
      at: { ...both.get('a')!.at, right: 1.8 },
      aim: { at: 'point', point: 'backdrop-right', feather: { by: Math.PI / 12, towards: 'right' } },
      meters: { reads: 8, at: 'backdrop-right' },
    })
  })

  it('turns bearings, facings and walls', () => {
    const { lights: all } =
      plan(`  key: { unit: flashgun, at: { angle: 35 deg left, distance: 1.4 m }, aim: left-wall }
  b: { like: key, mirrored: true }
  w: { unit: window, size: 1 x 1 m, at: { left: 2 m }, faces: 30 deg right, role: effect }
  v: { like: w, mirrored: true }
  u: { unit: window, size: 1 x 1 m, at: { left: 2 m }, faces: right, role: effect }
  t: { like: u, mirrored: true }
`)
    expect(all.get('b')).toMatchObject({
      at: { angleLeft: expect.closeTo((-35 * Math.PI) / 180, 12) },
      aim: { at: 'wall', wall: 'right-wall' },
    })
    expect(all.get('v')!.faces).toEqual({ kind: 'angle', angleLeft: expect.closeTo(Math.PI / 6, 12) })
    expect(all.get('t')!.faces).toEqual({ kind: 'side', side: 'left' })
  })

  it('does not turn what it says itself', () => {
    const { lights: all } = plan(`${left}  b: { like: a, mirrored: true, at: { left: 1 m, behind: 1 m } }\n`)
    expect(all.get('b')).toMatchObject({ at: { right: -1 }, aim: { point: 'backdrop-right' } })
  })

  it('of a mirrored light is the light, whatever is written in between', () => {
    fc.assert(
      fc.property(fc.array(fc.boolean(), { minLength: 1, maxLength: 8 }), (turns) => {
        const chain = turns.map(
          (turned, i) => `  b${i}: { like: ${i === 0 ? 'a' : `b${i - 1}`}, mirrored: ${turned} }\n`,
        )
        const { lights: all } = plan(left + chain.join(''))
        const last = all.get(`b${turns.length - 1}`)!
        const odd = turns.filter(Boolean).length % 2 === 1
        const expected: Light['at'] = odd
          ? ({ ...all.get('a')!.at, right: 1.8 } as Light['at'])
          : all.get('a')!.at
        expect(last.at).toEqual(expected)
        expect(last.aim).toMatchObject({ point: odd ? 'backdrop-right' : 'backdrop-left' })
      }),
      { numRuns: 30 },
    )
  })

  it('without like is a hint, not a mistake', async () => {
    const { read } = await import('./reading.js')
    const reading = read(leastWith({ paper: '  fill: { unit: flashgun, mirrored: true, at: camera }' }))
    expect(reading.plan).toBeDefined()
    expect(reading.mistakes).toMatchObject([
      { rule: 'value-unused', place: { pointer: '/lights/fill/mirrored' } },
    ])
  })
})

describe('likes that cannot be', () => {
  it('of a light that is not there are told, with the one that was meant', () => {
    const text = lights(`${left.replace('  a:', '  paper-left:')}  b: { like: paper-lefft }\n`)
    const mistake = onlyMistake(text)
    expect(mistake).toMatchObject({ rule: 'unknown-name', advice: ['write paper-left'] })
    expect(pointsAt(mistake, text)).toBe('paper-lefft')
    expect(mistake.place.pointer).toBe('/lights/b/like')
  })

  it.each([
    ['itself', '  a: { like: a }\n'],
    ['two', '  a: { like: b }\n  b: { like: a }\n'],
    ['three and a fourth', '  d: { like: a }\n  a: { like: b }\n  b: { like: c }\n  c: { like: a }\n'],
  ])('in a circle are told once: %s', (_, lines) => {
    expect(onlyMistake(lights(lines)).message).toContain('circle')
  })
})
