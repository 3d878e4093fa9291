import { readFileSync, rmSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { Ajv } from 'ajv'
import { describe, expect, it } from 'vitest'
import { put, temporaryFolder } from '../files/folder.js'
import { call, darkPlan, goodPlan } from './call.js'

const folder = temporaryFolder()
put(folder, { '.git/HEAD': '', 'good.plan.yaml': goodPlan, 'sets/dark.plan.yaml': darkPlan })

const schema = (name: string) =>
  new Ajv({ strict: false }).compile(
    JSON.parse(readFileSync(resolve(import.meta.dirname, `../../schemas/${name}.schema.json`), 'utf8')),
  )

describe('check', () => {
  it('ends with what was found: nothing, something', async () => {
    expect((await call(folder, ['check', 'good.plan.yaml'])).code).toBe(0)
    expect((await call(folder, ['check', 'sets'])).code).toBe(1)
    expect((await call(folder, ['check', 'good.plan.yaml', 'sets', 'none.plan.yaml'])).code).toBe(2)
  })

  it('takes this folder when none is named', async () => {
    const { out, err } = await call(folder, ['check'])
    expect(out).toContain('two plans checked: ')
    expect(out).toMatch(/^nothing found against:\n {2}good\.plan\.yaml \(/m)
    expect(out).toContain('sets/dark.plan.yaml:')
    expect(err).toBe('')
  })

  it('fails on the level that is asked for', async () => {
    const levels = async (file: string): Promise<string[]> => {
      const { out } = await call(folder, ['check', '--format', 'json', file])
      return JSON.parse(out).plans[0].findings.map(({ level }: { level: string }) => level)
    }
    for (const file of ['good.plan.yaml', 'sets/dark.plan.yaml']) {
      const found = await levels(file)
      for (const [failOn, counted] of [
        ['error', ['error']],
        ['warning', ['error', 'warning']],
        ['note', ['error', 'warning', 'note']],
      ] as const) {
        const { code } = await call(folder, ['check', '--fail-on', failOn, file])
        expect(code, `${file} ${failOn}`).toBe(
          found.some((level) => counted.includes(level as never)) ? 1 : 0,
        )
      }
    }
    expect(await levels('sets/dark.plan.yaml')).toContain('warning')
  })

  it('obeys the settings beside the plans, and the flag more', async () => {
    const house = temporaryFolder()
    put(house, {
      'thirdstop.yaml': 'thirdstop: 1\nfail-on: error\nlevels: { backdrop-below-white: note }\n',
      'dark.plan.yaml': darkPlan,
    })
    const { code, out } = await call(house, ['check', '--format', 'lines'])
    expect(out).toMatch(/: note: .*\[backdrop-below-white\]/)
    expect(code).toBe(0)
    expect((await call(house, ['check', '--fail-on', 'note'])).code).toBe(1)
    put(house, { 'thirdstop.yaml': 'thirdstop: 1\nfail-on: note\n' })
    expect((await call(house, ['check'])).code).toBe(1)
    put(house, { 'thirdstop.yaml': 'thirdstop: 1\nlevels: { backdrop-below: off }\n' })
    const wrong = await call(house, ['check'])
    expect(wrong.code).toBe(2)
    expect(wrong.err).toBe(
      'thirdstop: thirdstop.yaml:2:27 there is no rule backdrop-below; did you mean backdrop-below-white?\n',
    )
  })

  it('prints JSON as its schema says', async () => {
    const { out } = await call(folder, [
      'check',
      '--format',
      'json',
      'good.plan.yaml',
      'sets',
      'none.plan.yaml',
    ])
    const run = JSON.parse(out)
    const validate = schema('check')
    expect(validate(run), JSON.stringify(validate.errors)).toBe(true)
    expect(run).toMatchObject({ kind: 'check', format: 1 })
    expect(run.counts.plans).toBe(2)
    expect(run.problems).toEqual([{ file: 'none.plan.yaml', says: 'cannot be read: no such file' }])
    for (const plan of run.plans) {
      const lines = readFileSync(join(folder, plan.file), 'utf8').split('\n')
      for (const { place } of plan.findings) {
        expect(place.line).toBeLessThanOrEqual(lines.length)
        expect(place.endColumn).toBeLessThanOrEqual(lines[place.endLine - 1]!.length + 1)
      }
    }
    expect(out).not.toMatch(/\d\.\d{7,}/)
  })

  it('prints one line a finding for editors', async () => {
    const { out } = await call(folder, ['check', '--format', 'lines'])
    for (const line of out.trimEnd().split('\n')) {
      expect(line).toMatch(/^[^:]+\.plan\.yaml:\d+:\d+: (error|warning|note): .+ \[[a-z-]+\]$/)
    }
  })

  it('is the same whatever the order of the paths, and twice', async () => {
    const one = await call(folder, ['check', 'sets', 'good.plan.yaml'])
    const other = await call(folder, ['check', 'good.plan.yaml', 'sets/dark.plan.yaml', './sets'])
    expect(other).toEqual(one)
    expect(await call(folder, ['check', 'sets', 'good.plan.yaml'])).toEqual(one)
  })

  it('reads one plan from standard input', async () => {
    const { code, out } = await call(folder, ['check', '-', '--format', 'lines'], { input: darkPlan })
    expect(code).toBe(1)
    expect(out).toMatch(/^-:\d+:\d+: warning: /)
    expect((await call(folder, ['check', '-'], { input: goodPlan })).code).toBe(0)
  })

  it('colours only where that is wanted, and says the same', async () => {
    const words = ['check', 'sets']
    const plain = await call(folder, words)
    expect(plain.out).not.toContain('\u001b')
    const painted = await call(folder, words, { terminal: true })
    expect(painted.out).toContain('\u001b[')
    const unpainted = painted.out.replace(/\u001b\[[0-9;]*m/g, '')
    expect((await call(folder, words, { terminal: true, environment: { NO_COLOR: '1' } })).out).toBe(
      unpainted,
    )
    expect((await call(folder, [...words, '--no-color'], { terminal: true })).out).toBe(unpainted)
    const forced = await call(folder, [...words, '--color'])
    expect(forced.out).toContain('\u001b[')
    expect(forced.out.replace(/\u001b\[[0-9;]*m/g, '')).toBe(plain.out)
    const flat = (text: string) => text.replace(/\s+/g, ' ')
    expect(flat(unpainted)).toBe(flat(plain.out))
  })

  describe('keeps to the width of the page', () => {
    const commands = [
      ['check', '--all'],
      ['check', '--explain-plan'],
      ['meter', 'sets/dark.plan.yaml'],
      ['rules'],
      ['explain', 'backdrop-below-white'],
    ]
    const widest = (text: string, whole: RegExp) =>
      Math.max(
        ...text
          .replace(/\u001b\[[0-9;]*m/g, '')
          .split('\n')
          .filter((line) => !whole.test(line))
          .map((line) => line.length),
      )
    // Plans in examples are text to copy, so they are never broken.
    const code = (command: string) => (command.startsWith('explain') ? /^ {4}/ : /^$/)

    it.each(commands.flatMap((words) => [60, 80, 100].map((columns) => [words.join(' '), columns] as const)))(
      '%s at %i columns',
      async (command, columns) => {
        const words = command.split(' ')
        const asked = await call(folder, words, { terminal: true, columns })
        expect(widest(asked.out, code(command))).toBeLessThanOrEqual(columns)
        expect(widest(asked.out, code(command))).toBeGreaterThan(columns * 0.7)
        const wished = await call(folder, words, {
          terminal: true,
          columns: 90,
          environment: { COLUMNS: String(columns) },
        })
        expect(wished.out).toBe(asked.out)
      },
    )

    it('is 100 columns wide without a terminal, and never under 60', async () => {
      const words = ['check', '--all']
      const piped = await call(folder, words)
      expect(widest(piped.out, /: warning: /)).toBeLessThanOrEqual(100)
      expect(widest(piped.out, /: warning: /)).toBeGreaterThan(90)
      expect(piped.out).toMatch(/^sets\/dark\.plan\.yaml:\d+:\d+: warning: .* \[backdrop-below-white\]$/m)
      const narrow = await call(folder, words, { terminal: true, columns: 20 })
      expect(narrow.out).toBe((await call(folder, words, { terminal: true, columns: 60 })).out)
      for (const odd of ['', '0', '-3', 'wide']) {
        const { out } = await call(folder, words, { environment: { COLUMNS: odd } })
        expect(out).toBe(piped.out)
      }
    })
  })

  it('says with --all what was not checked and what would let it', async () => {
    const { out } = await call(folder, ['check', '--all', 'good.plan.yaml'])
    expect(out).toContain('light · dark and open')
    expect(out).toMatch(/left out · [a-z-]+: /)
  })

  it('prints with --explain-plan what it understood', async () => {
    const { out } = await call(folder, ['check', '--explain-plan', 'good.plan.yaml'])
    expect(out).toContain('good.plan.yaml: as understood')
    expect(out).toMatch(/distance +2\.5 m +line 3/)
    expect(out).toMatch(/height +1\.72 m +default/)
    expect(out).toMatch(/meters +f\/5\.6 +line 7/)
    expect(out).toMatch(/strength +by what it meters, ± 0\.\d stop +line 7/)
    // By hand: the tape runs 1.5 m and rises 28 cm from a face at 1.62 m; √(1.5² − 0.28²) = 1.474 m on the floor, at 10°.
    expect(out).toMatch(/ at +84 cm left, 1\.21 m in front, 1\.9 m high; 1\.5 m from the face +line 7/)
    expect(out).not.toMatch(/NaN|undefined|\[object/)
  })

  it('prints stated walls as stated, feet as feet, and what tells the strength of a light', async () => {
    put(folder, {
      'other/feet.plan.yaml': `plan: 1
title: Feet
camera: { lens: 85 mm, at: { distance: 8 ft }, aperture: f/5.6, shutter: 1/125, iso: 100, sync: 1/200 }
room: { width: 16 ft, length: 20 ft, height: 9 ft, walls: white }
ambient: { reads: f/2, shutter: 1/60, iso: 100 }
subject: { kind: object, height: 1 ft }
lights:
  key: { unit: flashgun, power: 1/4, at: { angle: 90 deg right, distance: 4 ft, height: 2 ft } }
  fill: { unit: head 400 Ws, modifier: octa 90 cm, power: 1/8, at: { angle: 40 deg left, distance: 5 ft, height: 6 ft } }
  spare: { unit: flashgun, at: { angle: 40 deg left, distance: 5 ft, height: 6 ft } }
readings:
  - { at: subject, of: [fill], reads: f/4 }
`,
    })
    const { out } = await call(folder, ['check', '--explain-plan', 'other/feet.plan.yaml'])
    expect(out).toMatch(/walls left +reflectance 0\.8\d? +line 4/)
    expect(out).toMatch(/ceiling +reflectance \S+ +default/)
    expect(out).toMatch(/shutter +1\/60 +line 5/)
    expect(out).toMatch(/strength +GN 118 ft at 35 mm, 2\/3 stop off as printed, ± 0\.\d stop +line 8/)
    expect(out).toMatch(/strength +by the readings, ± 0\.\d stop +line 12/)
    expect(out).toMatch(/strength +not known +default/)
    expect(out).toMatch(/ at +\d ft \d(\.\d)? in right, .*2 ft high; 4 ft from the subject +line 8/)
    rmSync(join(folder, 'other'), { recursive: true })
  })

  it('holds accepted findings apart, and their day against --on only', async () => {
    const accepting = `${darkPlan}accept:
  - { rule: backdrop-below-white, because: it is cut out, until: 2026-05-31 }
`
    put(folder, { 'accept.yaml': accepting })
    const json = async (...more: string[]) =>
      JSON.parse((await call(folder, ['check', '--format', 'json', 'accept.yaml', ...more])).out)
    const without = await json()
    expect(without.counts.accepted).toBe(1)
    expect(without.plans[0].accepted[0]).toMatchObject({
      rule: 'backdrop-below-white',
      because: 'it is cut out',
    })
    expect(without.plans[0].notChecked.map(({ rule }: { rule: string }) => rule)).toContain('accept-expired')
    const after = await json('--on', '2026-06-01')
    expect(after.plans[0].findings.map(({ rule }: { rule: string }) => rule)).toContain('accept-expired')
    const onTheDay = await json('--on', '2026-05-31')
    expect(onTheDay.plans[0].findings.map(({ rule }: { rule: string }) => rule)).not.toContain(
      'accept-expired',
    )
  })
})

describe('a call that is wrong', () => {
  it.each([
    [['check', '--format', 'xml'], /--format/],
    [['check', '--colour'], /--colour/],
    [['check', '--fail-on', 'never'], /--fail-on/],
    [['check', '--on', 'tomorrow'], /--on needs a day as YYYY-MM-DD, not tomorrow/],
    [['check', '--on', '2026-02-29'], /--on needs a day/],
    [['check', '--on', '2026-13-01'], /--on needs a day/],
    [['check', '--explain-plan', '--format', 'json'], /--explain-plan/],
    [['chek'], /unknown command 'chek'/],
    [['check', '--root'], /--root/],
    [['meter'], /plan/],
    [['meter', 'a', 'b'], /too many/],
    [['explain'], /rule/],
    [['explain', 'backdrop-bellow-white'], /did you mean backdrop-below-white\?/],
    [['explain', 'constructor'], /there is no rule constructor/],
    [['meter', 'good.plan.yaml', '--facing', '0,0,1'], /--at/],
    [['meter', 'good.plan.yaml', '--at', '1,2'], /three numbers/],
    [['meter', 'good.plan.yaml', '--at', '1,2,NaN'], /three numbers/],
    [['meter', 'good.plan.yaml', '--at', '1,2,3', '--facing', '0,0,0'], /direction/],
    [['meter', 'good.plan.yaml', '--at', '1,2,3', '--dome', 'round'], /raised or flat/],
    [['meter', 'none.plan.yaml'], /none\.plan\.yaml cannot be read: no such file/],
    [['meter', 'sets'], /sets cannot be read: it is a folder/],
    [[], /check/],
  ])('%j ends with 2 and one clear message', async (words, said) => {
    const { code, out, err } = await call(folder, words)
    expect(code).toBe(2)
    expect(err).toMatch(said)
    expect(err).not.toMatch(/ {4}at |^error:/m)
    expect(out).toBe('')
  })
})

describe('help', () => {
  it.each([
    ['--help'],
    ['check', '--help'],
    ['meter', '--help'],
    ['rules', '-h'],
    ['explain', '--help'],
    ['start', '--help'],
  ])('%s %s', async (...words) => {
    const { code, out, err } = await call(
      folder,
      words.filter((word) => word !== undefined),
    )
    expect({ code, err }).toEqual({ code: 0, err: '' })
    expect(out).toMatch(/^Usage: thirdstop/)
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(120)
  })

  it('lists only commands that there are', async () => {
    const { out } = await call(folder, ['--help'])
    const listed = [
      ...out
        .split('Commands:')[1]!
        .split('\n\n')[0]!
        .matchAll(/^ {2}(\w+)/gm),
    ].map((found) => found[1])
    expect(listed).toEqual(['check', 'meter', 'rules', 'explain', 'start'])
  })

  it('says the version', async () => {
    expect((await call(folder, ['--version'])).out).toMatch(/^\d+\.\d+\.\d+\n$/)
  })
})

describe('rules and explain', () => {
  it('list and explain the same rules, for people and as Markdown', async () => {
    const list = (await call(folder, ['rules'])).out
    const ids = [...list.matchAll(/^ {2}([a-z]+(?:-[a-z]+)+) /gm)].map((found) => found[1]!)
    expect(ids.length).toBeGreaterThanOrEqual(16)
    for (const id of ids) {
      expect((await call(folder, ['explain', id])).out.split('\n')[0]).toBe(id)
      expect((await call(folder, ['explain', id, '--format', 'markdown'])).out).toContain(`# ${id}\n`)
    }
    expect((await call(folder, ['rules', '--format', 'markdown'])).out).toContain('| rule | level | finds |')
  })

  it('list what is built in, every name of it readable in a plan, with where its figures are from', async () => {
    const namesIn = async (list: string): Promise<readonly string[]> => {
      const { out, code } = await call(folder, ['explain', list, '--format', 'markdown'])
      expect([list, code, out.split('\n')[0]]).toEqual([list, 0, `# ${list}`])
      return [...out.matchAll(/^\| ([^|]+) \|/gm)].map((found) => found[1]!).slice(2)
    }
    const surfaces = await namesIn('surfaces')
    expect(surfaces.length).toBeGreaterThan(40)
    const modifiers = await namesIn('modifiers')
    const colours = await namesIn('colours')
    const units = (await namesIn('units')).filter((name) => name !== 'sun' && name !== 'window')
    const lights = [
      ...modifiers.map((name) => `unit: head 400 Ws, modifier: ${name}`),
      ...units.map((name) => `unit: ${name}`),
      ...colours.map((name) => `unit: flashgun, gel: { colour: ${name}, loss: 2 stops }`),
    ]
    const panels = surfaces.map((name) => `kind: reflector, surface: ${name}, size: 1 x 1 m, faces: subject`)
    put(folder, {
      'listed/all.plan.yaml': `plan: 1
title: All that is listed
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
${lights.map((light, i) => `  light ${i}: { ${light}, off: true, power: full, at: { left: 1 m, front: 1 m, height: 2 m } }`).join('\n')}
panels:
${panels.map((panel, i) => `  panel ${i}: { ${panel}, at: { left: ${i + 10} m, height: 1 m } }`).join('\n')}
`,
    })
    const { out } = await call(folder, ['check', '--format', 'lines', 'listed'])
    expect(out).not.toMatch(/unknown-name|plan-unreadable/)
    expect((await call(folder, ['explain', 'surfaces'])).out).toMatch(/white paper .*\n?.*from memory/)
    expect((await call(folder, ['explain', 'gels'])).out).toMatch(/full CTO +\+159 mired/)
  })
})
