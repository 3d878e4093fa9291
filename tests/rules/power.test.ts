/**
 * Where the rules on power, beams and gear turn, worked out by hand: guide numbers as they are defined, lights that add,
 * the half peak of a beam, the kit's own figures.
 */
import { describe, expect, it } from 'vitest'
import { ruleNamed } from '../../src/rules/index.js'
import type { Evidence } from '../../src/rules/rule.js'
import { contextOf, findingsOf, planOf } from './check-text.js'

const evidence = (rule: string, text: string): readonly Evidence[] =>
  ruleNamed(rule)!.detect(contextOf(rule, planOf(text)))

const beyond = (rule: string, text: string): number => {
  const found = evidence(rule, text)[0]?.beyond
  if (found === undefined || found === 'certain') throw new Error('no figure')
  return found.stops
}

describe('power-differs', () => {
  // Guide number over distance is the f-number at full power and ISO 100: 36 m at 2 m gives f/18, a quarter f/9.
  const bare = (meters: string, power = '1/4') => `plan: 1
title: A measured guide number
camera: { lens: 50 mm, at: { distance: 3 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person, faces-at: 1.5 m }
lights:
  key: { unit: { guide-number: 36 m at 35 mm, rated-as: measured, zoom: 24..105 mm }, zoom: 35 mm, power: ${power}, meters: ${meters}, at: { angle: 0 deg left, distance: 2 m, height: 1.5 m } }
wanted: { framing: waist }
`

  it('sets the guide number against what the light is to meter', () => {
    const [found] = evidence('power-differs', bare('f/8'))
    // Of a point; a head of some centimetres at two metres is within a thousandth of a stop of one.
    expect(Math.abs(found!.measured['over-meters']!.value - 2 * Math.log2(9 / 8))).toBeLessThan(1e-3)
    expect(found!.measured.gives!.value).toBeCloseTo(9, 2)
  })

  it('turns at a third, on either side', () => {
    // 2·log2(9 / 8.02) and 2·log2(9 / 10.1) are a third.
    expect(beyond('power-differs', bare('f/8 + 0.1'))).toBeLessThan(0)
    expect(beyond('power-differs', bare('f/7.1 + 0.2'))).toBeGreaterThan(0)
    expect(beyond('power-differs', bare('f/10'))).toBeLessThan(0)
    expect(beyond('power-differs', bare('f/10 + 0.2'))).toBeGreaterThan(0)
  })

  it('a stop more power and a stop more to meter leave it as it is', () => {
    expect(beyond('power-differs', bare('f/11', '1/2'))).toBeCloseTo(beyond('power-differs', bare('f/8')), 6)
  })

  it('is as sure as the guide number, u 0.35', () => {
    expect(findingsOf('power-differs', bare('f/9'))).toEqual([])
    expect(findingsOf('power-differs', bare('f/11 + 0.3'))[0]!.certainty).toBe('probable')
    expect(findingsOf('power-differs', bare('f/22'))[0]!.certainty).toBe('sure')
  })
})

describe('beam-short', () => {
  // By definition a 60° beam has fallen to half at 30°: two faces 4 m off, each 4·tan 30° = 2.309 m from the middle.
  const row = (spacing: string, beam = '60 deg') => `plan: 1
title: Two faces in one beam
camera: { lens: 24 mm, frame: horizontal, at: { distance: 6 m, height: 1.5 m }, aperture: f/4, shutter: 1/125, iso: 400 }
subject: { kind: group, rows: [ { people: 2, spacing: ${spacing}, faces-at: 1.5 m } ] }
lights:
  key: { unit: { energy: 400 Ws, reflector: ${beam} }, power: full, at: { angle: 0 deg left, distance: 4 m, height: 1.5 m } }
wanted: { framing: all }
`

  it('turns where a beam has fallen to half of its peak, by its own angle', () => {
    expect(beyond('beam-short', row('4.5 m'))).toBeLessThan(0)
    expect(beyond('beam-short', row('4.74 m'))).toBeGreaterThan(0)
    expect(Math.abs(beyond('beam-short', row('4.62 m')))).toBeLessThan(0.02)
    // 4·tan 20° = 1.456 m
    expect(Math.abs(beyond('beam-short', row('2.91 m', '40 deg')))).toBeLessThan(0.02)
  })

  it('names both angles', () => {
    const [found] = evidence('beam-short', row('6 m'))
    expect(found!.measured.spreads!.value).toBeCloseTo(60, 0)
    expect(found!.measured.takes!.value).toBeCloseTo(2 * 36.87, 0)
  })

  it('a flat front spreads 120 degrees: half at cos 60°', () => {
    const soft = (spacing: string) =>
      row(spacing).replace('reflector: 60 deg }', 'reflector: 60 deg }, modifier: softbox 60 x 60 cm')
    expect(beyond('beam-short', soft('12 m'))).toBeLessThan(0)
    expect(beyond('beam-short', soft('15 m'))).toBeGreaterThan(0)
  })

  it('of a pair each lights its half of the backdrop; one of them alone does not do', () => {
    const pair = (second: boolean) => `plan: 1
title: Two snoots on the wall
camera: { lens: 35 mm, frame: horizontal, at: { distance: 2.5 m, height: 1.5 m }, aperture: f/4, shutter: 1/125, iso: 400 }
subject: { kind: person, faces-at: 1.5 m }
backdrop: { surface: grey paper, width: 6 m, height: 4 m, behind: 1.5 m }
lights:
  wall-left: { role: backdrop, unit: { energy: 400 Ws, reflector: 60 deg }, power: full, aim: backdrop-left, at: { left: 1.2 m, before-backdrop: 2.2 m, height: 1.5 m } }
${second ? '  wall-right: { like: wall-left, mirrored: true }' : ''}
wanted: { framing: waist, shadow: any }
`
    expect(beyond('beam-short', pair(false))).toBeGreaterThan(0)
    expect(beyond('beam-short', pair(true))).toBeLessThan(0)
  })
})

describe('light-without-effect', () => {
  // Two small lights on the camera's axis: the second adds log2(1 + 2^-n), n stops under the first.
  const second = (meters: string) => `plan: 1
title: One light over another
camera: { lens: 50 mm, at: { distance: 4 m, height: 1.5 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person, faces-at: 1.5 m }
lights:
  key: { unit: head 600 Ws, modifier: softbox 10 x 10 cm, meters: f/8, at: { angle: 0 deg left, distance: 3 m, height: 1.5 m } }
  fill: { unit: head 200 Ws, modifier: softbox 10 x 10 cm, meters: ${meters}, at: { angle: 0 deg left, distance: 3 m, height: 1.5 m } }
wanted: { framing: waist }
`

  it('adds in exposure: log2(1 + 2^-n)', () => {
    const added = (meters: string) =>
      evidence('light-without-effect', second(meters)).find(({ pointer }) => pointer.includes('fill'))!
        .measured.adds!.value
    expect(added('f/2')).toBeCloseTo(Math.log2(1 + 2 ** -4), 3)
    expect(added('f/2.8')).toBeCloseTo(Math.log2(1 + 2 ** -3), 3)
  })

  it('turns at a tenth of a stop', () => {
    const rules = (meters: string) => findingsOf('light-without-effect', second(meters)).length
    expect(rules('f/2')).toBe(1)
    expect(rules('f/2.8')).toBe(0)
  })

  it('a light from behind is seen where it falls, whatever it adds in front', () => {
    const rim = second('f/2').replace('fill: { unit: head 200 Ws', 'fill: { role: rim, unit: head 200 Ws')
    const behind = rim.replace(
      /(role: rim.*)angle: 0 deg left, distance: 3 m, height: 1.5 m/,
      '$1angle: 170 deg left, distance: 2 m, height: 2 m',
    )
    const dark = behind.replace(
      /(key: .*)modifier: softbox 10 x 10 cm/,
      '$1modifier: softbox 10 x 10 cm, grid: 10 deg',
    )
    expect(findingsOf('light-without-effect', behind)).toEqual([])
    expect(findingsOf('light-without-effect', dark)).toEqual([])
  })
})

describe('kit-short', () => {
  const kit = (rows: string, light: string, more = '') => `plan: 1
title: By the kit
kit: { ${rows} }
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
  key: { power: 1/4, at: { angle: 35 deg left, distance: 2 m, height: 2 m }, ${light} }
${more}
wanted: { framing: head and shoulders }
`
  const heads = (count: number, more: string) =>
    findingsOf(
      'kit-short',
      kit(`units: { mono: { energy: 400 Ws, count: ${count} } }`, 'unit: mono', more),
    ).map(({ message }) => message)

  it('counts what is used, also of lights that are off and of those like another', () => {
    expect(heads(1, '')).toEqual([])
    expect(heads(0, '')).toHaveLength(1)
    expect(heads(1, '  rim: { like: key, mirrored: true }')).toHaveLength(1)
    expect(heads(2, '  rim: { like: key, mirrored: true, off: true }')).toEqual([])
    expect(heads(1, '  rim: { like: key, mirrored: true, off: true }')).toHaveLength(1)
  })

  it('counts nothing that the kit does not count', () => {
    expect(findingsOf('kit-short', kit('units: { mono: { energy: 400 Ws } }', 'unit: mono'))).toEqual([])
    expect(
      findingsOf(
        'kit-short',
        kit('stands: { tall: { count: 1 } }', 'unit: head 400 Ws, stand: { kind: tall }'),
      ),
    ).toEqual([])
  })

  it('adds the weights of unit and modifier: 2.6 + 1.5 kg against 4.1', () => {
    const load = (limit: string) =>
      findingsOf(
        'kit-short',
        kit(
          `units: { mono: { energy: 400 Ws, weight: 2.6 kg } }, modifiers: { box: { kind: softbox, size: 60 x 90 cm, weight: 1500 g } }, stands: { tall: { load: ${limit} } }`,
          'unit: mono, modifier: box, stand: { kind: tall }',
        ),
      ).length
    expect(load('4.1 kg')).toBe(0)
    expect(load('4 kg')).toBe(1)
  })
})

describe('triggers-tied', () => {
  const groups = (key: string, rim: string) => `plan: 1
title: Groups
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
  key: { unit: head 400 Ws, meters: f/5.6, at: { angle: 35 deg left, distance: 2 m, height: 2 m }, trigger: { ${key} } }
  rim: { unit: head 400 Ws, meters: f/5.6, at: { angle: 150 deg left, distance: 2 m, height: 2 m }, trigger: { ${rim} } }
wanted: { framing: head and shoulders }
`
  const tied = (key: string, rim: string) => findingsOf('triggers-tied', groups(key, rim)).length

  it('by group, channel and kind of trigger', () => {
    expect(tied('by: radio, group: A', 'by: radio, group: A')).toBe(1)
    expect(tied('by: radio, group: A', 'by: radio, group: B')).toBe(0)
    expect(tied('by: radio, group: 1', 'by: basic radio, group: 1')).toBe(1)
    expect(tied('by: radio, group: A, channel: 1', 'by: radio, group: A, channel: 2')).toBe(0)
    expect(tied('by: radio, group: A', 'by: optical groups, group: A')).toBe(0)
    expect(tied('by: cable', 'by: radio, group: A')).toBe(0)
  })
})
