/**
 * Speed, as ratios measured in one run, so that they can be held against each other on any machine:
 * a cold `check` of one file against a bare start of node, and many plans against the bare work of parsing and
 * validating the same texts with the yaml package and a validator that ajv compiles from the public schema; in one
 * thread, and by the program over files on all cores. Then the stages of a typical and of the most crowded plan.
 */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { availableParallelism, tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { Ajv } from 'ajv'
import { build } from 'esbuild'
import { parseDocument } from 'yaml'
import { bundleLibrary, bundleProgram } from '../../src/build/bundles.js'
import { writeCodeCache } from '../../src/build/code-cache.js'
import { planText } from './plan-texts.js'
import type { stagesOf } from './stages.js'
import { worstPlan } from './worst-plan.js'

const root = resolve(import.meta.dirname, '../..')
const milliseconds = (work: () => void): number => {
  const start = process.hrtime.bigint()
  work()
  return Number(process.hrtime.bigint() - start) / 1e6
}
const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!
const line = (what: string, ratio: number, goal: number, detail: string): void =>
  console.log(`${what.padEnd(56)} ${ratio.toFixed(2)} (goal ${goal})   ${detail}`)

const node = (...words: string[]) => {
  const run = spawnSync(process.execPath, words, {
    cwd: root,
    encoding: 'utf8',
    stdio: ['ignore', 'ignore', 'pipe'],
  })
  if (run.status === null || run.status > 1) throw new Error(`node ${words.join(' ')} failed: ${run.stderr}`)
}

const coldStart = (plan: string): void => {
  const bare: number[] = []
  const check: number[] = []
  for (let round = 0; round < 21; round += 1) {
    bare.push(milliseconds(() => node('-e', '0')))
    check.push(milliseconds(() => node('bin/thirdstop.cjs', 'check', plan)))
  }
  line(
    `cold check of ${plan.split('/').at(-1)}`,
    median(check) / median(bare),
    1.7,
    `${median(check).toFixed(0)} ms against ${median(bare).toFixed(0)} ms of node -e 0`,
  )
}

/** Enough to be even, few enough to wait for. */
const many = 200

const manyPlans = async (): Promise<void> => {
  const { checkPlan } = (await import(join(root, 'dist/library.js'))) as typeof import('../../src/index.js')
  const texts = Array.from({ length: many }, (_, number) => planText(number))
  const schema = JSON.parse(readFileSync(join(root, 'schemas/plan.schema.json'), 'utf8'))
  const validate = new Ajv({ strict: false, allErrors: true }).compile(schema)
  const parse = (): void => {
    for (const text of texts) if (!validate(parseDocument(text).toJS())) throw new Error(text)
  }
  const find = (): void => {
    for (const text of texts) checkPlan(text)
  }
  // Mends are solved when they are read, as every report for people does.
  const findAndMend = (): number => {
    let mends = 0
    for (const text of texts) for (const { advice } of checkPlan(text).findings) mends += advice.length
    return mends
  }
  parse()
  find()
  const mends = findAndMend()
  const parsing: number[] = []
  const finding: number[] = []
  const mending: number[] = []
  for (let round = 0; round < 3; round += 1) {
    parsing.push(milliseconds(parse))
    finding.push(milliseconds(find))
    mending.push(milliseconds(findAndMend))
  }
  const against = (what: string, taken: readonly number[], says: string): void =>
    line(
      `${many} plans against yaml and ajv alone, ${what}`,
      median(taken) / median(parsing),
      12,
      `${(median(taken) / many).toFixed(2)} ms a plan against ${(median(parsing) / many).toFixed(2)} ms${says}`,
    )
  against('found', finding, '')
  against('found and mended', mending, `, ${(mends / many).toFixed(1)} mends a plan`)
  onAllCores(median(parsing) / many)
}

/** As many files as a call may be given. */
const files = 1000

/** The program itself over the same plans as files: threads, start and printing counted. */
const onAllCores = (parsing: number): void => {
  const folder = mkdtempSync(join(tmpdir(), 'plans-'))
  try {
    for (let number = 0; number < files; number++)
      writeFileSync(join(folder, `${number}.plan.yaml`), planText(number))
    for (const format of ['lines', 'text']) {
      const taken = milliseconds(() => node('bin/thirdstop.cjs', 'check', '--format', format, folder))
      line(
        `${files} files on ${availableParallelism()} cores, ${format}`,
        taken / files / parsing,
        6,
        `${(taken / files).toFixed(2)} ms a plan, start counted`,
      )
    }
  } finally {
    rmSync(folder, { recursive: true })
  }
}

/** Bundled as what is shipped is: a module translated on the way runs at half the speed. */
const bundledStages = async (): Promise<typeof stagesOf> => {
  const folder = mkdtempSync(join(tmpdir(), 'bench-'))
  try {
    const outfile = join(folder, 'stages.cjs')
    await build({
      entryPoints: [join(import.meta.dirname, 'stages.ts')],
      bundle: true,
      platform: 'node',
      outfile,
    })
    return (createRequire(import.meta.url)(outfile) as { stagesOf: typeof stagesOf }).stagesOf
  } finally {
    rmSync(folder, { recursive: true })
  }
}

/** The stages of one plan: medians of the later half of some rounds, in milliseconds of this machine in this run. */
const stages = (of: typeof stagesOf, name: string, text: string, rounds: number): void => {
  const taken = Array.from({ length: rounds }, () => of(text)).slice(rounds >> 1)
  const middle = (stage: string): number => median(taken.map((one) => one.get(stage)!))
  console.log(`${name}, by stage (ms, warm, in this run):`)
  for (const stage of taken[0]!.keys()) console.log(`  ${stage.padEnd(20)} ${middle(stage).toFixed(1)}`)
}

// What is shipped is measured: sources that are translated on the way carry helpers that cost time.
await Promise.all([
  bundleProgram(join(root, 'dist')).then(() => writeCodeCache()),
  bundleLibrary(join(root, 'dist')),
])
console.log(`node ${process.version}, medians`)
coldStart('tests/bench/headshot.plan.yaml')
coldStart('examples/recipes/white-headshot.plan.yaml')
await manyPlans()
const shipped = await bundledStages()
stages(shipped, 'typical plan', readFileSync(join(root, 'tests/bench/typical.plan.yaml'), 'utf8'), 40)
stages(shipped, 'worst plan', worstPlan(), 4)
