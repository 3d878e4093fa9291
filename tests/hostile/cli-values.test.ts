/**
 * What people mistype and what people who mean harm type, in every value of a small plan, through the command line: an
 * exit code of a checked plan, places inside the text, and nothing printed that is no figure or that steers a terminal.
 */
import { expect, it } from 'vitest'
import { call } from '../command/call.js'
import { put, temporaryFolder } from '../files/folder.js'

const folder = temporaryFolder()

const plan = `plan: 1
title: Headshot on white
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/160, iso: 100 }
subject: { kind: person }
backdrop: { surface: white paper, behind: 2 m }
lights:
  key:   { unit: flashgun, modifier: octa 90 cm, power: 1/4, at: { angle: 35 deg left, distance: 1.2 m, height: 2 m } }
  paper: { role: backdrop, unit: flashgun, power: 1/4, at: { left: 1.5 m, before-backdrop: 1.5 m, height: 1.5 m } }
wanted: { backdrop: white, framing: head and shoulders }
`

/** Text of the plan that a value takes the place of, and what stands before the value there. */
const places: readonly (readonly [string, string])[] = [
  ['plan: 1', 'plan: '],
  ['title: Headshot on white', 'title: '],
  ['85 mm', ''],
  ['2.5 m', ''],
  ['f/5.6', ''],
  ['1/160', ''],
  ['iso: 100', 'iso: '],
  ['person', ''],
  ['white paper', ''],
  ['behind: 2 m', 'behind: '],
  ['flashgun', ''],
  ['octa 90 cm', ''],
  ['power: 1/4', 'power: '],
  ['35 deg left', ''],
  ['{ angle: 35 deg left, distance: 1.2 m, height: 2 m }', ''],
  ['backdrop: white', 'backdrop: '],
  ['head and shoulders', ''],
]

const values = [
  '',
  '~',
  'yes',
  '0',
  '-1',
  '1e999',
  '.nan',
  '-.inf',
  '1000000000',
  '0 m',
  '1 mm',
  '900 m',
  'f/0.3',
  'f/1000',
  '1/8000',
  '1/0',
  '0 deg left',
  '180 deg left',
  'softbox 1 mm x 900 m',
  'octa 900 m',
  '{ reflectance: 0 }',
  '{ angle: 0 deg left, distance: 1 mm, height: 1.62 m }',
  '{ left: 0 m, front: 0 m, height: 1 m }',
  '{ height: 1 m }',
  '[]',
  '{}',
  '[[key]]',
  '"\\e]0;x\\a\\e[31m"',
  '"\\u202e\\u200b\\x9b31m"',
  '"\\0"',
  '&a [*a]',
  '*none',
  '!!binary aGk=',
  '| x',
  'a: b',
  '2:1',
  '2001-01-01',
  '__proto__',
  'constructor',
  'hasOwnProperty',
  '９.５ ｍ',
  '２',
  '\u00a0',
]

/** Values that hold such words themselves are shown as they stand. */
const noFigure = /\bNaN\b|\bundefined\b|\bnull\b|\bInfinity\b|\[object/
const steering = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u200b-\u200f\u2028-\u202e\u2066-\u2069]/

interface Spot {
  readonly line: number
  readonly column: number
  readonly endLine: number
  readonly endColumn: number
}

const spots = (found: unknown): readonly Spot[] =>
  typeof found !== 'object' || found === null
    ? []
    : [...('endColumn' in found ? [found as Spot] : []), ...Object.values(found).flatMap(spots)]

const inside = (text: string, { line, column, endLine, endColumn }: Spot): boolean => {
  const lengths = text.split('\n').map((one) => one.length)
  const reaches = (at: number, to: number) => to >= 1 && to <= (lengths[at - 1] ?? -1) + 1
  return (
    line <= endLine &&
    reaches(line, column) &&
    reaches(endLine, endColumn) &&
    (line < endLine || column <= endColumn)
  )
}

it.each(places)('any value in place of %s', async (from, before) => {
  expect(plan.split(from).length).toBeGreaterThan(1)
  for (const value of values) {
    const text = plan.replace(from, () => before + value)
    put(folder, { 'a.plan.yaml': text })
    const what = { place: from, value }
    for (const form of [['--format', 'lines'], ['--all'], ['--ascii'], ['--explain-plan']]) {
      const { code, out, err } = await call(folder, ['check', 'a.plan.yaml', ...form])
      expect({ what, checked: code === 0 || code === 1, err }).toEqual({ what, checked: true, err: '' })
      expect({ what, word: noFigure.exec(out)?.[0] }).toEqual({ what, word: undefined })
      expect({ what, steers: steering.exec(out)?.[0] }).toEqual({ what, steers: undefined })
    }
    const { out } = await call(folder, ['check', 'a.plan.yaml', '--format', 'json'])
    const outside = spots(JSON.parse(out)).filter((spot) => !inside(text, spot))
    expect({ what, outside }).toEqual({ what, outside: [] })
    const meter = await call(folder, ['meter', 'a.plan.yaml', '--at', '0.3,-0.5,1.5'])
    const said = meter.out + meter.err
    expect({ what, understood: meter.code === 0 || meter.code === 1 }).toEqual({ what, understood: true })
    expect({ what, word: noFigure.exec(said)?.[0], steers: steering.exec(said)?.[0] }).toEqual({
      what,
      word: undefined,
      steers: undefined,
    })
  }
})
