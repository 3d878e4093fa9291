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
