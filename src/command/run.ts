/** Where the executable enters. The exit code is set and never forced, so that all output is written. */
import { exitCodes } from './exit-codes.js'
import { main } from './main.js'
import { processTerminal } from './terminal.js'

export { main }

export const run = async (words: readonly string[], launcher?: string): Promise<void> => {
  const terminal = processTerminal(launcher)
  const code = await main(words, terminal)
  process.exitCode = terminal.failed() && code !== exitCodes.misused ? exitCodes.failed : code
}

/** Where another thread of the same run enters. */
export const work = async (): Promise<void> => (await import('./check-worker.js')).serveChecks()
