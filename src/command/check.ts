/** `thirdstop check`: plans in, findings out. */
import { findPlans } from '../files/find-plans.js'
import type { Houses } from '../files/houses.js'
import { decode, largestFile, type Text, whyUnreadable } from '../files/read-file.js'
import type { Level } from '../rules/rule.js'
import { type Checked, type CheckRun, defectsOf, type PlanSource, reaches, runFrom } from '../tasks/check.js'
import { type ExitCode, exitCodes } from './exit-codes.js'
import { defectReport } from './failure.js'
import { choice, lookOptions, rootAsked, rootOption } from './options.js'
import { chosenLook, type LookOptions } from './paint.js'
import { type CheckCall, type PlanChecker, planChecker } from './plan-checker.js'
import type { Terminal } from './terminal.js'
import { complaint, Misuse } from './usage.js'
import type { AddCommand } from './work.js'

interface CheckWords extends LookOptions {
  readonly format: 'text' | 'lines' | 'json'
  readonly failOn?: Level
  readonly all?: boolean
  readonly root?: string
  readonly on?: string
  readonly explainPlan?: boolean
  readonly threads?: number
}

/** With fewer plans, other threads have hardly started when this one is done. */
const many = 40

export const checkCommand: AddCommand = (program, terminal, choose) => {
  const command = program
    .command('check')
    .summary('check plans')
    .description(
      'Checks plans: reads each, computes the light, and prints what will go wrong and what mends it.\nFolders are searched for *.plan.yaml; without a path, this folder is. A path of - reads one plan from standard input.',
    )
    .argument('[paths...]', 'plan files and folders')
    .addOption(
      choice('--format <form>', 'for people, for editors, or for programs', 'text', 'lines', 'json').default(
        'text',
      ),
    )
    .addOption(
      choice(
        '--fail-on <level>',
        'exit code 1 from this level on (else: warning)',
        'error',
        'warning',
        'note',
      ),
    )
    .option('--all', 'also what was accepted, what was not checked, and how the light was computed')
    .option('--explain-plan', 'print what was understood of each plan: every value, default and place')
    .option('--on <date>', 'the day, YYYY-MM-DD, on which accepted findings are judged (`until`)', day)
    .option(
      '--threads <number>',
      'how many threads check many plans (else: as many as the machine runs, up to 8)',
      threads,
    )
  lookOptions(rootOption(command))
  command.addHelpText(
    'after',
    `
Exit codes: 0 nothing at that level or above; 1 something; 2 the call is wrong,
a file cannot be read, or there is no plan; 3 thirdstop itself failed.`,
  )
  command.action((paths: string[], words: CheckWords) => choose(() => checkPaths(paths, words, terminal)))
}

const day = (text: string): string => {
  const [, year, month, date] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text) ?? []
  const days = month === undefined ? 0 : daysIn(Number(year), Number(month))
  if (date === undefined || Number(date) < 1 || Number(date) > days) {
    throw new Misuse(`--on needs a day as YYYY-MM-DD, not ${text}`)
  }
  return text
}

const daysIn = (year: number, month: number): number => {
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0
  return [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1] ?? 0
}

const threads = (text: string): number => {
  const number = /^\d{1,2}$/.test(text) ? Number(text) : 0
  if (number < 1 || number > 64) throw new Misuse(`--threads needs a number from 1 to 64, not ${text}`)
  return number
}

const checkPaths = async (
  paths: readonly string[],
  words: CheckWords,
  terminal: Terminal,
): Promise<ExitCode> => {
  if (words.explainPlan && words.format !== 'text') {
    throw new Misuse('--explain-plan prints text; leave --format out')
  }
  const ground = {
    workingFolder: terminal.workingFolder,
    ...rootAsked(words.root, terminal.workingFolder),
  }
  const found = findPlans(paths.length === 0 ? ['.'] : paths.filter((path) => path !== '-'), ground)
  const files = [...(paths.includes('-') ? ['-'] : []), ...found.files]
  let standardInput: Text | undefined
  const call = { ground, ...(words.on === undefined ? {} : { on: words.on }) }
  const checker = planChecker(call, () => {
    standardInput ??= inputOf(terminal)
    return standardInput
  })
  const { checked, houses } = await checkAll(files, checker, call, words, terminal)
  const done = runFrom(checked)
  const run = { ...done, problems: [...houses.problems, ...found.problems, ...done.problems] }
  if (words.explainPlan) await printUnderstood(files, checker.source, words, terminal)
  await print(run, words, terminal)
  for (const { file, says } of run.problems) terminal.err(complaint(`${file} ${says}`))
  const defects = defectsOf(run)
  for (const { file, error } of defects) terminal.err(defectReport(error, ['check', file]))
  if (defects.length > 0) return exitCodes.failed
  if (run.problems.length > 0) return exitCodes.misused
  const failing = run.plans.some((plan) =>
    reaches(plan, words.failOn ?? houses.of(plan.file).settings.failOn ?? 'warning'),
  )
  return failing ? exitCodes.found : exitCodes.clean
}

const checkAll = async (
  files: readonly string[],
  checker: PlanChecker,
  call: CheckCall,
  words: CheckWords,
  { launcher }: Terminal,
): Promise<{ readonly checked: readonly Checked[]; readonly houses: Houses }> => {
  const { threads } = words
  const alone = launcher === undefined || threads === 1 || (threads === undefined && files.length < many)
  if (alone) return { checked: files.map(checker.check), houses: checker.houses }
  const { checkParallel } = await import('./check-parallel.js')
  return checkParallel(files, checker, { ...call, launcher, threads, advice: adviceRead[words.format] })
}

const adviceRead = { text: 'findings', lines: 'none', json: 'accepted too' } as const

const inputOf = (terminal: Terminal): Text => {
  try {
    return decode(terminal.input(largestFile + 1))
  } catch (error) {
    return { ok: false, says: whyUnreadable(error) }
  }
}

const printUnderstood = async (
  files: readonly string[],
  source: PlanSource,
  words: CheckWords,
  terminal: Terminal,
): Promise<void> => {
  const [{ explainText }, { explainedPlan }] = await Promise.all([
    import('../tasks/explain-plan.js'),
    import('../reports/explained-plan.js'),
  ])
  for (const file of files) {
    const opened = source.open(file)
    const sections = opened.ok ? explainText(file, opened.text, source) : undefined
    if (sections !== undefined)
      terminal.out(`${explainedPlan(file, sections, await chosenLook(words, terminal))}\n`)
  }
}

/** Only the report that is asked for is loaded. */
const print = async (run: CheckRun, words: CheckWords, terminal: Terminal): Promise<void> => {
  if (words.format === 'json') {
    const { checkJson } = await import('../reports/check-json.js')
    terminal.out(checkJson(run))
  } else if (words.format === 'lines') {
    const { lines } = await import('../reports/lines.js')
    terminal.out(lines(run.plans))
  } else {
    const { text } = await import('../reports/text.js')
    terminal.out(text(run, await chosenLook(words, terminal), words.all))
  }
}
