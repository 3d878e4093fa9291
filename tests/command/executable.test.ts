/** The program and the library as they are shipped, built into a folder of their own. */
import { execFileSync, spawnSync } from 'node:child_process'
import { cpSync, existsSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { bundleLibrary, bundleProgram, writeLicences } from '../../src/build/bundles.js'
import { writeCodeCache } from '../../src/build/code-cache.js'
import { writeDeclarations } from '../../src/build/declarations.js'
import { put, temporaryFolder } from '../files/folder.js'
import { darkPlan, goodPlan } from './call.js'

const root = resolve(import.meta.dirname, '../..')
const home = temporaryFolder()
const executable = join(home, 'bin/thirdstop.cjs')
const dist = join(home, 'dist')
const work = join(home, 'work')

/** Four slips a plan, each a finding. */
const slips = goodPlan
  .replace('f/5.6', '5.6')
  .replace('iso: 100', 'iso: many')
  .replace('kind: person', 'kind: persona')
  .replace('behind: 1.5 m', 'behind: 1.5')

beforeAll(async () => {
  cpSync(join(root, 'bin'), join(home, 'bin'), { recursive: true })
  symlinkSync(join(root, 'node_modules'), join(home, 'node_modules'))
  await bundleProgram(dist)
  await writeCodeCache(executable)
  await Promise.all([bundleLibrary(dist), writeDeclarations(dist), writeLicences(dist)])
  put(work, { '.git/HEAD': '', 'good.plan.yaml': goodPlan, 'dark.plan.yaml': darkPlan })
  for (let number = 100; number < 220; number += 1) put(work, { [`many/${number}.plan.yaml`]: slips })
})

const run = (...words: string[]) =>
  spawnSync(process.execPath, [executable, ...words], { cwd: work, encoding: 'utf8', maxBuffer: 1e8 })
const shell = (line: string) =>
  spawnSync('bash', ['-c', line], {
    cwd: work,
    encoding: 'utf8',
    maxBuffer: 1e8,
    env: { ...process.env, CHECK: `${process.execPath} ${executable} check` },
  })

describe('the executable', () => {
  it('checks, and ends with the right code', () => {
    expect(run('check', 'good.plan.yaml')).toMatchObject({ status: 0, stderr: '' })
    expect(run('check', 'dark.plan.yaml')).toMatchObject({ status: 1, stderr: '' })
    expect(run('check', 'none.plan.yaml')).toMatchObject({ status: 2, stdout: '' })
    expect(run('check', '--nonsense')).toMatchObject({ status: 2, stdout: '' })
    expect(run('--version').stdout).toMatch(/^\d+\.\d+\.\d+\n$/)
  })

  it('has all its commands', () => {
    for (const words of [
      ['meter', 'good.plan.yaml'],
      ['rules'],
      ['explain', 'depth-short'],
      ['start', 'new'],
    ]) {
      expect(run(...words), words.join(' ')).toMatchObject({ status: 0, stderr: '' })
    }
    expect(existsSync(join(work, 'new/first.plan.yaml'))).toBe(true)
  })

  it('starts from its code cache, and without it, and with one that is not its own', () => {
    const script = `const { load, cache } = require(${JSON.stringify(executable)})
      const cachedData = cache()
      console.log(cachedData !== undefined && load(cachedData).script.cachedDataRejected)`
    expect(execFileSync(process.execPath, ['-e', script], { encoding: 'utf8' })).toBe('false\n')
    const cached = run('check', 'dark.plan.yaml')
    const file = join(dist, `thirdstop.${process.version}-${process.arch}.cache`)
    const cache = readFileSync(file)
    for (const other of [undefined, Buffer.alloc(0), Buffer.alloc(5000, 7)]) {
      if (other === undefined) rmSync(file)
      else writeFileSync(file, other)
      const uncached = run('check', 'dark.plan.yaml')
      expect([uncached.status, uncached.stdout, uncached.stderr]).toEqual([
        cached.status,
        cached.stdout,
        cached.stderr,
      ])
    }
    writeFileSync(file, cache)
  })

  it('writes all of a long report to a pipe, however slow its reader', () => {
    const whole = run('check', 'many')
    expect(whole.status).toBe(1)
    expect(whole.stdout.length).toBeGreaterThan(100_000)
    expect(whole.stdout).toMatch(/\n120 plans checked: .*\n$/)
    const piped = shell('$CHECK many | (sleep 0.5; cat); exit $PIPESTATUS')
    expect([piped.status, piped.stdout === whole.stdout, piped.stderr]).toEqual([1, true, ''])
    const lines = shell('$CHECK --format lines many | wc -l')
    expect(Number(lines.stdout)).toBe(480)
    const json = shell('$CHECK --format json many | (sleep 0.2; cat)')
    expect(JSON.parse(json.stdout).plans).toHaveLength(120)
  })

  it('ends quietly when the reader of a pipe closes it', () => {
    for (const reader of ['head -n 1', 'true', 'head -c 10']) {
      const closed = shell(`$CHECK many | ${reader}; exit $PIPESTATUS`)
      expect([closed.status, closed.stderr], reader).toEqual([1, ''])
    }
    const errors = shell('$CHECK none.plan.yaml 2>&1 >/dev/null | true; exit $PIPESTATUS')
    expect(errors.status).toBe(2)
  })

  it('reads a plan from standard input', () => {
    expect(shell('$CHECK - < dark.plan.yaml').status).toBe(1)
    expect(shell('cat good.plan.yaml | $CHECK -')).toMatchObject({ status: 0, stderr: '' })
    expect(shell('$CHECK - < .')).toMatchObject({
      status: 2,
      stderr: 'thirdstop: - cannot be read: it is a folder, a file is needed\n',
    })
  })

  it('reads no more of standard input than a plan may have', () => {
    const large = shell('head -c 3000000000 /dev/zero | $CHECK -')
    expect(large).toMatchObject({
      status: 2,
      stdout: '',
      stderr: 'thirdstop: - is larger than 1 MiB; a plan, kit or room file is a few kilobytes of text\n',
    })
    expect(shell('yes | timeout 20 $CHECK -').status).toBe(2)
  })

  it('says in one line what cannot be written, on the other stream', () => {
    const full = 'thirdstop: standard output cannot be written: the disk is full\n'
    for (const words of ['dark.plan.yaml', 'good.plan.yaml', '--format json many', '--help']) {
      expect(shell(`$CHECK ${words} > /dev/full`), words).toMatchObject({ status: 3, stderr: full })
    }
    expect(shell('$CHECK none.plan.yaml 2> /dev/full')).toMatchObject({
      status: 2,
      stdout: 'thirdstop: standard error cannot be written: the disk is full\n',
    })
    expect(shell('$CHECK none.plan.yaml dark.plan.yaml > /dev/full 2>&1').status).toBe(2)
  })

  it('carries the licences of what it holds', () => {
    const licences = readFileSync(join(dist, 'LICENCES.txt'), 'utf8')
    for (const name of ['commander', 'picocolors', 'yaml']) expect(licences).toContain(`${name}\n`)
  })
})

describe('the library', () => {
  it('checks a plan in plain node, prints nothing and ends nothing', () => {
    put(home, {
      'use.mjs': `import { checkPlan } from './dist/library.js'
const { findings } = checkPlan(${JSON.stringify(darkPlan)})
const broken = checkPlan('a: [')
console.log(JSON.stringify([findings.map(({ rule }) => rule), broken.findings.length, process.exitCode ?? 0]))`,
    })
    const [rules, broken, code] = JSON.parse(
      execFileSync(process.execPath, [join(home, 'use.mjs')], { encoding: 'utf8' }),
    )
    expect(rules).toContain('backdrop-below-white')
    expect([broken, code]).toEqual([1, 0])
  })

  it('has types that a strict program compiles against', () => {
    put(home, {
      'use/use.ts': `import { checkPlan, type CheckedPlan, type Finding, type FilePort, meterCard, computeSet, readPlan } from '../dist/types/index.js'
const port: FilePort = { read: (path) => ({ ok: false, says: path }) }
const checked: CheckedPlan = checkPlan('plan: 1', { file: 'a.plan.yaml', port, on: '2026-01-01' })
const levels: ('error' | 'warning' | 'note')[] = checked.findings.map((one: Finding) => one.level)
// @ts-expect-error A level is no number.
const wrong: number[] = levels
const { plan } = readPlan('a.plan.yaml', '', port)
export const over: number[] = plan === undefined ? wrong : meterCard(computeSet(plan), []).entries.map((one) => one.overCamera)
`,
      'use/tsconfig.json': JSON.stringify({
        compilerOptions: {
          strict: true,
          noEmit: true,
          target: 'ES2022',
          module: 'NodeNext',
          types: [],
          skipLibCheck: false,
          exactOptionalPropertyTypes: true,
        },
        include: ['use.ts'],
      }),
    })
    const compiler = join(root, 'node_modules/typescript/bin/tsc')
    const compiled = spawnSync(process.execPath, [compiler, '-p', join(home, 'use')], { encoding: 'utf8' })
    expect(compiled.stdout).toBe('')
    expect(compiled.status).toBe(0)
  })
})
