import { describe, expect, it } from 'vitest'
import { look } from '../../src/reports/look.js'
import { meterJson } from '../../src/reports/meter-json.js'
import { meterPage } from '../../src/reports/meter-page.js'
import { meterTable } from '../../src/reports/meter-table.js'
import { markdownPage } from '../../src/reports/page.js'
import { computeSet } from '../../src/set/compute-set.js'
import { meterCard } from '../../src/tasks/meter.js'
import { planOf } from '../rules/check-text.js'

const plan = (readings = '', title = 'Two lights') => `plan: 1
title: ${title}
camera: { lens: 85 mm, at: { distance: 3 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
  key: { unit: head 400 Ws, modifier: octa 90 cm, power: 1/4, at: { angle: 35 deg left, distance: 1.5 m, height: 2 m }, trigger: { by: radio, group: A } }
  fill: { unit: head 200 Ws, modifier: white umbrella 1 m, power: 1/8, at: { angle: 10 deg right, distance: 2 m, height: 1.8 m }, trigger: { by: radio, group: A } }
wanted: { framing: head and shoulders }
${readings}
`
const cardOf = (text: string) => meterCard(computeSet(planOf(text)), [])
const read = `readings:
  - { at: subject, of: [key], reads: f/8, taken: { key: { power: 1/4, distance: 1.5 m } } }
  - { at: subject, of: [fill], reads: f/5.6, taken: { fill: { power: 1/4, distance: 2 m } } }
  - { at: hair, of: [key], reads: f/2, taken: { key: { power: 1/4, distance: 1.5 m } } }`

describe('the card for people', () => {
  it('says what to meter in which order, what it will read and what it did read', () => {
    const text = meterTable(cardOf(plan(read)), look())
    const lines = text.split('\n').map((line) => line.trim().replace(/\s{2,}/g, ' | '))
    const at = lines.findIndex((line) => line.startsWith('fire'))
    expect(lines[at]).toBe('fire | step | light | at | dome to | will read | ± | did read | differs | note')
    expect(lines[at + 1]).toMatch(
      /^radio A \| 1 \| key \| subject \| key \| f\/\S+( \+ 0\.\d)? \| 0\.\d \| f\/8 \| [-+]\d\.\d \| fill off/,
    )
    expect(lines[at + 2]).toMatch(/^2 \| fill \| subject \| fill \| .* \| f\/5\.6 \* \| .* \| key off$/)
    expect(lines[at + 3]).toMatch(/^together \| 3 \| key \+ fill \| subject \| camera \| .* \| sets camera$/)
    expect(lines[at + 4]).toMatch(/^also read \| key \| hair \| key \| f\/2 \| -\d\.\d \| odd$/)
    expect(text).toContain("* taken at other settings than today's")
  })

  it('has no column for what nobody has read yet', () => {
    const text = meterTable(cardOf(plan()), look())
    expect(text).toMatch(/fire .* step .* will read .* note/)
    expect(text).not.toMatch(/did read|differs|Differs/)
  })
})

describe('colour on the card', () => {
  const unlike = plan('ambient: { reads: f/4, shutter: 1/60, iso: 100, colour: 4000 K, duv: 0.02 }').replace(
    'power: 1/8,',
    'power: 1/8, colour: 4800 K,',
  )

  it('is told where the plan tells of lights of unlike colour, and nowhere else', () => {
    expect(meterTable(cardOf(unlike), look())).toMatch(/over key .* colour +dome to/)
    expect(meterTable(cardOf(plan()), look())).not.toContain('colour')
    expect(meterJson(cardOf(plan()))).not.toContain('kelvin')
  })

  it('is that of each light, and of all as they mix', () => {
    const text = meterTable(cardOf(unlike), look())
    expect(text).toMatch(/subject +key .* 5500 K +key/)
    expect(text).toMatch(/ fill .* 4800 K +fill/)
    expect(text).toMatch(/ ambient .* 4000 K green +camera/)
    const points: { of: unknown; kelvin: number; duv: number }[] = JSON.parse(
      meterJson(cardOf(unlike)),
    ).points
    const all = points.find(({ of }) => of === 'all')!
    expect(all.kelvin).toBeGreaterThan(4900)
    expect(all.kelvin).toBeLessThan(5500)
    expect(all.duv).toBeGreaterThan(0.0033)
  })

  it('has no temperature for light through a deep gel', () => {
    const deep = unlike.replace('power: 1/8,', 'power: 1/8, gel: { colour: magenta, loss: 3 stops },')
    expect(meterTable(cardOf(deep), look())).toMatch(/ fill .* coloured +fill/)
    expect(meterJson(cardOf(deep))).toMatch(/"kelvin":\s*null/)
  })
})

describe('a card without a key', () => {
  it('says that no light is one, and has no column against it', () => {
    const text = meterTable(cardOf(plan().replace('key:', 'rim:').replace('fill:', 'kicker:')), look())
    expect(text).toContain('no key reading: no light of the plan is a key or a fill')
    expect(text).not.toContain('over key')
  })
})

describe('the shadow side on the card', () => {
  const key = /\n {2}fill: .*/
  const board =
    'panels:\n  board: { kind: reflector, surface: white board, size: 1 x 2 m, at: { right: 50 cm, height: 1.5 m }, faces: left }'
  const rows = (text: string) =>
    meterTable(cardOf(text), look())
      .split('\n')
      .map((line) => line.trim().replace(/\s{2,}/g, ' | '))

  it('is the fill alone, dome to the camera, where a light fills', () => {
    const set = computeSet(planOf(plan()))
    const fill = set.reading({ at: 'subject', of: ['fill'], dome: 'raised', faces: 'camera' })!
    const { shadow } = meterCard(set, [])
    expect(shadow!.toward).toBe('camera')
    expect(shadow!.entry.figure.luxSeconds).toBeCloseTo(fill.luxSeconds, 9)
    expect(shadow!.ratio).toBeCloseTo(set.key!.luxSeconds / fill.luxSeconds, 9)
  })

  it('is metered toward a board, and says that it came off it', () => {
    const text = rows(plan(board).replace(key, ''))
    expect(text.some((line) => /^shadow \| f\/\S+.* \| aside$/.test(line))).toBe(true)
    expect(text).toContain('came by | light | straight | off board')
    expect(text.some((line) => /shadow \| 100 %$/.test(line))).toBe(true)
    expect(text.join(' ')).toMatch(/the dome turned aside, camera-right and key kept off it by a hand/)
  })

  it('tells a scrim from a board by name', () => {
    const silk = `${board}\n  silk: { kind: scrim, transmits: 45 %, size: 60 x 90 cm, at: { left: 40 cm, front: 50 cm, height: 1.6 m }, faces: right }`
    expect(rows(plan(silk))).toContain('came by | light | straight | off board, through silk')
    const many = `${silk}\n  another-long-name: { kind: reflector, size: 1 x 1 m, at: { left: 2 m }, faces: right }`
    const text = rows(plan(many))
    expect(text).toContain('came by | light | straight | panels')
    expect(text.join(' ')).toMatch(/what a scrim lets through counts with the panels/)
  })

  it('is not there where nothing but the key lights the face', () => {
    expect(cardOf(plan().replace(key, '')).shadow).toBeUndefined()
    expect(JSON.parse(meterJson(cardOf(plan().replace(key, '')))).shadowSide).toBeNull()
  })

  it('is in JSON with what is kept off the dome', () => {
    const { shadowSide } = JSON.parse(meterJson(cardOf(plan(board).replace(key, ''))))
    expect(shadowSide).toMatchObject({ point: 'subject', shaded: ['key'], dome: 'raised' })
    expect(shadowSide.paths.panels).toBeCloseTo(1, 3)
    expect(shadowSide.ratio).toBeGreaterThan(2)
  })
})

describe('the card on a narrow terminal', () => {
  it('puts what fires them over the lights of a group', () => {
    const text = meterTable(cardOf(plan(read)), look({ columns: 78 }))
    expect(text).toMatch(/\nradio A\n +1 +key/)
    expect(text).toMatch(/\ntogether\n +3 +key \+ fill/)
  })
})

describe('the card as Markdown', () => {
  it('has the same rows in tables, with what hides itself made visible', () => {
    const page = markdownPage(meterPage(cardOf(plan(read, '"Two | \\u202e <b>lights</b>"'))))
    expect(page).toMatch(/^# Two \| \\\\u\{202e\} \\<b\\>lights\\<\/b\\>\n/)
    expect(page).toContain(
      '| fire | step | light | at | dome to | will read | ± | did read | differs | note |',
    )
    expect(page).toMatch(/\n\| {2}\| 2 \| fill \| subject \| fill \| .* \| f\/5\.6 \\\* \| .* \|\n/)
    expect(page).toContain('\n## What a meter will read\n')
    for (const line of page.split('\n').filter((one) => one.startsWith('|')))
      expect(line.replace(/\\\|/g, '').split('|').length).toBeGreaterThan(8)
  })
})

describe('the card as JSON', () => {
  it('holds steps and readings as data', () => {
    const { order, readings } = JSON.parse(meterJson(cardOf(plan(read)))) as {
      order: { fires: string | null; of: string[]; without: string[]; setsCamera: boolean; u: number }[]
      readings: { pointer: string; difference: number; u: number; odd: boolean; carried: boolean }[]
    }
    expect(order.map(({ fires, of, without, setsCamera }) => [fires, of, without, setsCamera])).toEqual([
      ['radio A', ['key'], ['fill'], false],
      ['radio A', ['fill'], ['key'], false],
      [null, ['key', 'fill'], [], true],
    ])
    expect(readings.map(({ pointer, odd, carried }) => [pointer, odd, carried])).toEqual([
      ['/readings/0', expect.any(Boolean), false],
      ['/readings/1', false, true],
      ['/readings/2', true, false],
    ])
  })
})
