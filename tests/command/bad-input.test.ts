/** What can be wrong with a file: one clear finding or message each, at its place, and no other plan pays for it. */
import { execFileSync } from 'node:child_process'
import { mkdirSync, readdirSync, readFileSync, symlinkSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { put, temporaryFolder } from '../files/folder.js'
import { call, goodPlan } from './call.js'

const outer = temporaryFolder()
const folder = join(outer, 'studio')
const key = /^ {2}key: .*$/m
const withKey = (at: string): string =>
  goodPlan.replace(key, `  key: { unit: head 400 Ws, modifier: octa 90 cm, power: 1/4, at: ${at} }`)

/** Levels of an alias bomb: each list holds the one before nine times. */
const bomb = `${goodPlan}notes: &a0 x\n${Array.from(
  { length: 12 },
  (_, n) => `x-${n}: &a${n + 1} [${Array(9).fill(`*a${n}`).join(', ')}]\n`,
).join('')}`

/** Name, text, exit code, and the start of the one line that says what is wrong. */
const cases: readonly (readonly [string, string | Uint8Array, 1 | 2, RegExp])[] = [
  ['empty', '', 1, /^empty\.plan\.yaml:1:1: error: .*empty/],
  ['blank', ' \n\n', 1, /^blank\.plan\.yaml:\d:\d: error: .*empty/],
  [
    'binary',
    Uint8Array.from({ length: 4096 }, (_, n) => (n * 97) % 256),
    2,
    /^thirdstop: binary\.plan\.yaml is not UTF-8/,
  ],
  ['zeros', '\0\0\0\0', 1, /^zeros\.plan\.yaml:1:1: error: /],
  ['utf16', Buffer.from(goodPlan, 'utf16le'), 1, /^utf16\.plan\.yaml:1:\d: error: .*UTF-8/],
  ['truncated', goodPlan.slice(0, goodPlan.indexOf('octa')), 1, /^truncated\.plan\.yaml:7:\d+: error: /],
  ['tabs', goodPlan.replace('  key:', '\tkey:'), 1, /^tabs\.plan\.yaml:7:1: error: .*tab/],
  ['several', `${goodPlan}---\n${goodPlan}`, 1, /^several\.plan\.yaml:9:1: error: .*document/],
  ['proto', `${goodPlan}__proto__: { subject: 1 }\n`, 1, /^proto\.plan\.yaml:9:1: error: .*__proto__/],
  ['bomb', bomb, 1, /^bomb\.plan\.yaml:\d+:\d+: error: /],
  ['recursive', `${goodPlan}tags: &t [*t]\n`, 1, /^recursive\.plan\.yaml:9:\d+: error: /],
  [
    'large',
    `${goodPlan}# ${'x'.repeat(2 * 1024 * 1024)}\n`,
    2,
    /^thirdstop: large\.plan\.yaml is larger than 1 MiB/,
  ],
  [
    'unit',
    goodPlan.replace('distance: 1.5 m', 'distance: 1.5 yd'),
    1,
    /^unit\.plan\.yaml:7:\d+: error: .*1\.5 yd/,
  ],
  [
    'unitless',
    goodPlan.replace('distance: 1.5 m', 'distance: 1.5'),
    1,
    /^unitless\.plan\.yaml:7:\d+: error: .*1\.5/,
  ],
  [
    'unknown',
    goodPlan.replace('head 400 Ws', 'hed 400 Ws'),
    1,
    /^unknown\.plan\.yaml:7:\d+: error: .*hed 400 Ws/,
  ],
  ['nan', goodPlan.replace('iso: 100', 'iso: .nan'), 1, /^nan\.plan\.yaml:3:\d+: error: /],
  ['infinite', goodPlan.replace('iso: 100', 'iso: .inf'), 1, /^infinite\.plan\.yaml:3:\d+: error: /],
  ['minus', goodPlan.replace('iso: 100', 'iso: -1e999'), 1, /^minus\.plan\.yaml:3:\d+: error: /],
  [
    'crowd',
    goodPlan.replace(
      '{ kind: person }',
      '{ kind: group, rows: [{ people: 1000000000, spacing: 50 cm, faces-at: 1 m }] }',
    ),
    1,
    /^crowd\.plan\.yaml:4:\d+: error: .*1000000000/,
  ],
  [
    'zero',
    withKey('{ angle: 10 deg left, distance: 0 m, height: 1.9 m }'),
    1,
    /^zero\.plan\.yaml:7:\d+: error: /,
  ],
  [
    'absurd',
    withKey('{ angle: 10 deg left, distance: 99999 km, height: 1.9 m }'),
    1,
    /^absurd\.plan\.yaml:7:\d+: error: /,
  ],
  [
    'kilometres',
    withKey('{ angle: 10 deg left, distance: 1001 m, height: 1.9 m }'),
    1,
    /^kilometres\.plan\.yaml:7:\d+: error: /,
  ],
  [
    'triangle',
    withKey('{ angle: 10 deg left, distance: 20 cm, height: 2.5 m }'),
    1,
    /^triangle\.plan\.yaml:7:\d+: error: .*\[no-triangle\]/,
  ],
  ['inside', withKey('{ left: 0 m, behind: 10 cm, height: 1.6 m }'), 1, /^inside\.plan\.yaml:7:\d+: error: /],
  ['no-kit', `${goodPlan}kit: kits/none.kit.yaml\n`, 1, /^no-kit\.plan\.yaml:9:6: error: .*no such file/],
  ['outside', `${goodPlan}kit: ../secret.kit.yaml\n`, 1, /^outside\.plan\.yaml:9:6: error: .*outside/],
  ['linked', `${goodPlan}kit: kits/linked.kit.yaml\n`, 1, /^linked\.plan\.yaml:9:6: error: .*outside/],
  ['folder', `${goodPlan}kit: kits\n`, 1, /^folder\.plan\.yaml:9:6: error: .*folder/],
  [
    'address',
    `${goodPlan}base: https://example.org/a.base.yaml\n`,
    1,
    /^address\.plan\.yaml:9:7: error: .*address/,
  ],
  ['itself', `${goodPlan}base: itself.plan.yaml\n`, 1, /^itself\.plan\.yaml:9:7: error: .*circle/],
  ['words', 'a plan is a map\n', 1, /^words\.plan\.yaml:1:1: error: /],
]

put(folder, {
  '.git/HEAD': '',
  'kits/corner.kit.yaml': 'kit: 1\ntitle: Corner\n',
  'zz-good.plan.yaml': goodPlan,
})
put(outer, { 'secret.kit.yaml': 'kit: 1\ntitle: SECRET\n' })
symlinkSync('../../secret.kit.yaml', join(folder, 'kits/linked.kit.yaml'))
for (const [name, text] of cases) put(folder, { [`${name}.plan.yaml`]: text })

const files = (): string => readdirSync(folder, { recursive: true }).sort().join('\n')
const before = files()

describe('a bad file', () => {
  it.each(cases)('%s', async (name, _, code, line) => {
    const {
      code: ended,
      out,
      err,
    } = await call(folder, ['check', '--format', 'lines', `${name}.plan.yaml`, 'zz-good.plan.yaml'])
    expect({ ended, said: code === 2 ? err : out }).toEqual({
      ended: code,
      said: expect.stringMatching(line),
    })
    const said = (code === 2 ? err : out).split('\n').filter((one) => !one.includes(': note: '))
    expect(said).toHaveLength(2)
    expect(out + err).not.toContain('SECRET')
    expect(out + err).not.toMatch(/defect of thirdstop/)
  })

  it('does not keep the others from being checked', async () => {
    const { code, out, err } = await call(folder, ['check', '--format', 'json'])
    expect(code).toBe(2)
    const run = JSON.parse(out)
    const names = (list: { file: string }[]) => list.map(({ file }) => file.replace('.plan.yaml', '')).sort()
    const refused = cases.filter(([, , end]) => end === 2).map(([name]) => name)
    expect(names(run.problems)).toEqual(refused.sort())
    expect(names(run.plans)).toEqual(
      [...cases.filter(([, , end]) => end === 1).map(([name]) => name), 'zz-good'].sort(),
    )
    const good = run.plans.find(({ file }: { file: string }) => file === 'zz-good.plan.yaml')
    expect(good.findings.filter(({ level }: { level: string }) => level !== 'note')).toEqual([])
    expect(err.trim().split('\n')).toHaveLength(refused.length)
  })

  it('shows the same in the form for people, and in ASCII', async () => {
    for (const more of [[], ['--all'], ['--ascii']]) {
      const { code, out, err } = await call(folder, ['check', ...more])
      expect(code).toBe(2)
      expect(err).not.toMatch(/defect of thirdstop/)
      expect(out).not.toMatch(/NaN|undefined|Infinity|\[object/)
      expect(
        out.split('\n').filter((one) => /^\S+\.yaml:\d+:\d+: error: /.test(one)).length,
      ).toBeGreaterThanOrEqual(cases.filter(([, , end]) => end === 1).length)
    }
  })

  it('writes nothing', () => {
    expect(files()).toBe(before)
  })
})

describe('a good file in odd clothes', () => {
  it.each([
    ['a byte-order mark', `\uFEFF${goodPlan}`],
    ['CRLF', goodPlan.replaceAll('\n', '\r\n')],
    ['a byte-order mark and CRLF', `\uFEFF${goodPlan.replaceAll('\n', '\r\n')}`],
    ['%YAML 1.1', `%YAML 1.1\n---\n${goodPlan}`],
    ['no end of line', goodPlan.trimEnd()],
  ])('%s', async (_, text) => {
    put(folder, { 'odd.yaml': text })
    const { code, out } = await call(folder, ['check', '--fail-on', 'warning', 'odd.yaml'])
    expect({ code, out }).toEqual({ code: 0, out: expect.stringContaining('odd.yaml: ') })
  })

  it('names places alike with and without a byte-order mark', async () => {
    const wrong = goodPlan.replace('plan: 1', 'plan: 2')
    for (const text of [wrong, `\uFEFF${wrong}`, wrong.replaceAll('\n', '\r\n')]) {
      put(folder, { 'odd.yaml': text })
      const { out } = await call(folder, ['check', '--format', 'lines', 'odd.yaml'])
      expect(out).toMatch(/^odd\.yaml:1:7: error: /)
    }
  })
})

describe('a name that would steer the terminal', () => {
  it.each([
    ['check', 'missing\u001b[31mred\u202e.yaml'],
    ['meter', 'missing\u001b[31mred\u202e.yaml'],
    ['explain', 'no\u009brule'],
    ['chek\u001b[2J'],
    ['check', '--colour\u202e'],
  ])('%s %s is shown with its codes', async (...words) => {
    const { code, out, err } = await call(folder, words)
    expect({ code, out }).toEqual({ code: 2, out: '' })
    expect(err).toMatch(/^thirdstop: .*\\u\{(1b|9b|202e)\}/)
    expect(err).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202e]/)
  })
})

describe('what is no plain file', () => {
  it('is refused, and waits for nobody', async () => {
    execFileSync('mkfifo', [join(folder, 'pipe.yaml')])
    mkdirSync(join(folder, 'hollow'), { recursive: true })
    symlinkSync('loop.yaml', join(folder, 'loop.yaml'))
    const { code, err, out } = await call(folder, [
      'check',
      ...['pipe.yaml', 'hollow', 'loop.yaml', 'none.plan.yaml', '/dev/zero', 'zz-good.plan.yaml'],
    ])
    expect(code).toBe(2)
    expect(out).toMatch(/^zz-good\.plan\.yaml: /m)
    for (const line of [
      /^thirdstop: pipe\.yaml cannot be read: it is a pipe or a device/m,
      /^thirdstop: hollow holds no plan/m,
      /^thirdstop: loop\.yaml cannot be read: its links go in a circle$/m,
      /^thirdstop: none\.plan\.yaml cannot be read: no such file$/m,
      /^thirdstop: .*dev\/zero cannot be read: it is a pipe or a device/m,
    ])
      expect(err).toMatch(line)
    expect(readFileSync(join(folder, 'zz-good.plan.yaml'), 'utf8')).toBe(goodPlan)
  })
})
