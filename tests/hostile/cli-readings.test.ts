/** Readings typed in by hand: what is refused leaves the file as it was; what is written is read back as a reading. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { parse } from 'yaml'
import { call, goodPlan } from '../command/call.js'
import { put, temporaryFolder } from '../files/folder.js'

const folder = temporaryFolder()
const file = join(folder, 'a.plan.yaml')

const taken = async (text: string, reading: string) => {
  put(folder, { 'a.plan.yaml': text })
  const { code, out, err } = await call(folder, ['meter', 'a.plan.yaml', '--read', reading])
  return { code, out, err, after: readFileSync(file, 'utf8') }
}

it.each([
  '',
  '@',
  '=',
  'key',
  'key@subject',
  'key@subject=',
  '@subject=f/5.6',
  'key@subject=5.6',
  'key@subject=f/0',
  'key@subject=f/NaN',
  'key@subject=f/5.6 # c',
  'key@subject=f/5.6, iso: 9',
  'key@subject=f/5.6 }, { at: subject',
  'key@subject=f/5.6\n  - evil: 1',
  'key@subject=f/5.6\nplan: 2',
  'key@subject=*a',
  'key@subject=!!str f/5.6',
  'key+key@subject=f/5.6',
  'none@subject=f/5.6',
  'key@none=f/5.6',
  'key, x: 1@subject=f/5.6',
  'key@subject }=f/5.6',
  'constructor@subject=f/5.6',
  'key@__proto__=f/5.6',
  '\u001b[31m@subject=f/5.6',
  'x'.repeat(100_000),
])('the reading %j is refused, and the plan stays as it is', async (reading) => {
  const { code, out, err, after } = await taken(goodPlan, reading)
  expect({ code, out, after }).toEqual({ code: 2, out: '', after: goodPlan })
  expect(err).toMatch(/^thirdstop: /)
  expect(err).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f]|defect of thirdstop/)
})

const listed = '{ at: subject, of: [key], reads: f/5.6 }'

it.each([
  ['no readings', goodPlan],
  ['CRLF', goodPlan.replaceAll('\n', '\r\n')],
  ['a byte-order mark', `\uFEFF${goodPlan}`],
  ['no end of line', goodPlan.trimEnd()],
  ['an end of document', `${goodPlan}...\n# after\n`],
  ['an empty list', `${goodPlan}readings: [] # none yet\n`],
  ['a list in brackets', `${goodPlan}readings: [${listed}] # one\n`],
  ['brackets over lines', `${goodPlan}readings: [\n  # first\n  ${listed}, # one\n]\n`],
  ['anchors', `${goodPlan}readings: [&r ${listed}, *r]\n`],
  ['dashes', `${goodPlan}readings:\n  # first\n  - ${listed} # one\n  # last\n\nnotes: x\n`],
  ['dashes without indent', `${goodPlan}readings:\n- at: subject\n  of:\n  - key\n  reads: f/5.6\n`],
  ['a folded text at the end', `${goodPlan}notes: >\n  a\n  b\n\n\n`],
  ['a name with a space', goodPlan.replace('  key:', '  key light:')],
  ['a name that is no ASCII', goodPlan.replace('  key:', '  clé:')],
  ['feet and inches', goodPlan.replace('1.5 m, height', '6\'6", height')],
  ['a folded text at the start', goodPlan.replace('plan: 1\n', 'plan: 1\nnotes: >-\n  a\n  b\n')],
])('a reading is added, and nothing else changes: %s', async (_, text) => {
  const name = /^ {2}([^:]+):/m.exec(text.slice(text.indexOf('lights:')))![1]!
  const { code, err, after } = await taken(text, `${name}@subject=f/8`)
  expect({ code, err }).toEqual({ code: 0, err: '' })
  const bare = (yaml: string) => parse(yaml.replace('\uFEFF', ''))
  const { readings: earlier = [], ...rest } = bare(text)
  const { readings, ...others } = bare(after)
  expect(others).toEqual(rest)
  expect(readings.slice(0, -1)).toEqual(earlier ?? [])
  expect(readings.at(-1)).toMatchObject({ at: 'subject', of: [name], reads: 'f/8', iso: 100 })
  for (const comment of text.match(/# \w+/g) ?? []) expect(after).toContain(comment)
  expect(after.startsWith('\uFEFF')).toBe(text.startsWith('\uFEFF'))
  if (text.includes('\r')) expect(after).not.toMatch(/(^|[^\r])\n/)
  expect((await call(folder, ['check', 'a.plan.yaml', '--fail-on', 'error'])).code).toBe(0)
})
