/** Where the executable enters. The exit code is set and never forced, so that all output is written. */
import { main } from './main.js'
import { processTerminal } from './terminal.js'

export { main }

export const run = async (words: readonly string[]): Promise<void> => {
  process.exitCode = await main(words, processTerminal())
}
