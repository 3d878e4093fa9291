/** `check` on several threads, as shipped: it must print what one thread prints. */
import { spawn, spawnSync } from 'node:child_process'
import { cpSync, writeFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { bundleProgram } from '../../src/build/bundles.js'
import { writeCodeCache } from '../../src/build/code-cache.js'
import { planText } from '../bench/plan-texts.js'
import { put, temporaryFolder } from '../files/folder.js'
import { photometricText, steps } from '../helpers/photometric-text.js'
import { call, darkPlan, goodPlan } from './call.js'

const root = resolve(import.meta.dirname, '../..')
const home = temporaryFolder()
const executable = join(home, 'bin/thirdstop.cjs')
const work = join(home, 'work')

const accepting = `${darkPlan}accept:\n  - { rule: backdrop-below-white, because: it is cut out anyway, until: 2026-01-01 }\n`

const panel = photometricText({
  vertical: steps(0, 90, 15),
  horizontal: [0, 45, 90],
  candela: (v, h) => Math.round((2000 + h) * Math.cos((v * Math.PI) / 180)),
})
/** A light of a photometric file; every second is broken. */
const byFile = (unit: string, number: number): string =>
  goodPlan
    .replace('title: Good', `kit: ../kits/own.kit.yaml\ntitle: By file ${number}`)
    .replace(
      'unit: head 400 Ws, modifier: octa 90 cm, meters: f/5.6',
      `unit: ${unit}, power: ${2 * number} %`,
    )

beforeAll(async () => {
  cpSync(join(root, 'bin'), join(home, 'bin'), { recursive: true })
  await bundleProgram(join(home, 'dist'))
  await writeCodeCache(executable)
  put(work, {
    '.git/HEAD': '',
    'empty.plan.yaml': '',
    'torn.plan.yaml': 'plan: 1\ntitle: [',
    'wrong.plan.yaml': goodPlan.replace('kind: person', 'kind: persona').replace('iso: 100', 'iso: many'),
    'accepting.plan.yaml': accepting,
    'bytes.plan.yaml': goodPlan.replace('Good', 'G\u00f6\u00f6d'),
    'house/thirdstop.yaml': 'thirdstop: 1\nfail-on: note\nlevels: { backdrop-below-white: error }\n',
    'house/dark.plan.yaml': darkPlan,
    'ill-1/thirdstop.yaml': 'thirdstop: 1\nlevels: { backdrop-below: off }\n',
    'ill-1/dark.plan.yaml': darkPlan,
    'ill-2/thirdstop.yaml': 'thirdstop: 2\n',
    'ill-2/dark.plan.yaml': darkPlan,
    'base.yaml': darkPlan.replace('title: Dark', 'title: Base'),
    'on-base.plan.yaml': 'plan: 1\nbase: base.yaml\ntitle: On a base\n',
    'kits/own.kit.yaml':
      'kit: 1\ntitle: Own\nunits:\n  panel: { photometric-file: panel.ies }\n  torn: { photometric-file: torn.ies }\n',
    'kits/panel.ies': panel,
    'kits/torn.ies': panel.replace(' 60 75', ' 60 59'),
    'on-none.plan.yaml': 'plan: 1\nbase: nowhere.yaml\ntitle: On none\n',
  })
  // Not UTF-8.
  writeFileSync(join(work, 'latin.plan.yaml'), Buffer.from('plan: 1\ntitle: caf\xe9\n', 'latin1'))
  for (let number = 100; number < 110; number += 1)
    put(work, { [`many/${number}.plan.yaml`]: planText(number) })
  for (let number = 10; number < 12; number += 1)
    put(work, { [`lamps/${number}.plan.yaml`]: byFile(number % 2 === 0 ? 'torn' : 'panel', number) })
})

const run = (words: readonly string[], input = goodPlan) => {
  const { status, stdout, stderr } = spawnSync(process.execPath, [executable, 'check', ...words], {
    cwd: work,
    encoding: 'utf8',
    maxBuffer: 1e9,
    input,
  })
  return { status, stdout, stderr }
}

describe('check on several threads', () => {
  it.each([
    [['--format', 'text']],
    [['--format', 'text', '--all', '--color', '--on', '2026-06-01']],
    [['--format', 'lines']],
    [['--format', 'json']],
    [['--explain-plan', '--ascii']],
  ])('prints what one thread prints: %s', (look) => {
    // The same plan and a file that is not there among the others; standard input first.
    const words = [...look, '-', '.', 'none.plan.yaml', 'many/100.plan.yaml']
    const alone = run([...words, '--threads', '1'])
    expect(alone.status).toBe(2)
    expect(alone.stderr).toContain('latin.plan.yaml is not UTF-8')
    expect(alone.stderr).toContain('ill-1/thirdstop.yaml:2:')
    expect(alone.stderr.indexOf('ill-2/thirdstop.yaml')).toBeGreaterThan(
      alone.stderr.indexOf('ill-1/thirdstop.yaml'),
    )
    expect(run([...words, '--threads', '3'])).toEqual(alone)
    expect(run(words)).toEqual(alone)
  })

  it('ends with what was found', () => {
    const both = (...words: string[]) =>
      [1, 4].map((threads) => run([...words, '--threads', `${threads}`]).status)
    expect(both('many')).toEqual([1, 1])
    expect(both('house', '--format', 'lines')).toEqual([1, 1])
    expect(both('bytes.plan.yaml', '--fail-on', 'error')).toEqual([0, 0])
  })

  it('takes a number of threads and nothing else', () => {
    for (const number of ['0', '65', '2.5', 'all', '-1', '']) {
      const { status, stderr } = run(['bytes.plan.yaml', `--threads=${number}`])
      expect([status, stderr]).toEqual([2, expect.stringContaining('--threads needs a number')])
    }
  })

  it('takes a thread that dies for a defect of the program, on its plan alone', async () => {
    const launcher = join(home, 'bin/deadly.cjs')
    writeFileSync(
      launcher,
      `const { parentPort } = require('node:worker_threads')
      exports.open = () => {
        parentPort.on('message', (jobs) => {
          if (jobs.some(({ file }) => /[37]\\.plan/.test(file))) process.exit(5)
        })
        return require('./thirdstop.cjs').open()
      }`,
    )
    const { code, out, err } = await call(work, ['check', 'many', '--threads', '3', '--format', 'lines'], {
      launcher,
    })
    expect(code).toBe(3)
    expect(err).toMatch(/defect of thirdstop[\s\S]*check many\/1\d\d\.plan\.yaml[\s\S]*ended with code 5/)
    const { stdout } = run(['many', '--threads', '1', '--format', 'lines'])
    for (const line of out.trimEnd().split('\n')) expect(stdout).toContain(line)
  })

  it('ends with all its threads when it is interrupted', async () => {
    const child = spawn(process.execPath, [executable, 'check', '.', '--threads', '4'], { cwd: work })
    const ended = new Promise((done) => child.on('close', (code, signal) => done(signal ?? code)))
    await new Promise((done) => setTimeout(done, 300))
    child.kill('SIGINT')
    expect(await ended).toBe('SIGINT')
  })
})
