/**
 * The command line: one parser for all commands. What a command does is loaded when it is called, so that `check`
 * pays for nothing else.
 */
import { Command, CommanderError } from 'commander'
import { version } from '../reports/version.js'
import { visible } from '../reports/visible.js'
import { checkCommand } from './check.js'
import { type ExitCode, exitCodes } from './exit-codes.js'
import { explainCommand } from './explain.js'
import { defectReport } from './failure.js'
import { meterCommand } from './meter.js'
import { rulesCommand } from './rules.js'
import { startCommand } from './start.js'
import type { Terminal } from './terminal.js'
import { complaint, Misuse } from './usage.js'
import type { Work } from './work.js'

export const main = async (words: readonly string[], terminal: Terminal): Promise<ExitCode> => {
  let work: Work | undefined
  const program = new Command('thirdstop')
    .description('Checks photographic lighting plans: computes the light that a set will give, and warns.')
    .version(version, '--version', 'print the version')
    .helpOption('-h, --help', 'show this help')
    .helpCommand(false)
    .exitOverride()
    .configureOutput({
      writeOut: (text) => terminal.out(text),
      writeErr: (text) => terminal.err(text),
      outputError: (text, write) => {
        for (const line of text.trimEnd().split('\n'))
          write(`${visible(line.replace(/^error: /, 'thirdstop: '))}\n`)
      },
      getOutHasColors: () => false,
      getErrHasColors: () => false,
    })
  const set = (chosen: Work): void => {
    work = chosen
  }
  for (const add of [checkCommand, meterCommand, rulesCommand, explainCommand, startCommand]) {
    add(program, terminal, set)
  }
  program.addHelpText(
    'after',
    `
Try
  thirdstop start            writes a first plan to play with
  thirdstop check            checks every *.plan.yaml below this folder
  thirdstop meter PLAN       what a meter will read at each point
  thirdstop COMMAND --help   tells more of one command

Figures are planning aids. For mains, hot lamps and overhead rigging follow the
makers' instructions, local codes and a licensed electrician or rigger.`,
  )
  try {
    program.parse(words as string[], { from: 'user' })
    return work === undefined ? exitCodes.clean : await work()
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? exitCodes.clean : exitCodes.misused
    if (error instanceof Misuse) {
      terminal.err(complaint(error.message))
      return exitCodes.misused
    }
    terminal.err(defectReport(error, words))
    return exitCodes.failed
  }
}
