/** What a command needs of the process, so that tests can give their own. */
export interface Terminal {
  /** Absolute. */
  readonly workingFolder: string
  readonly environment: Readonly<Record<string, string | undefined>>
  /** Whether standard output is a terminal. */
  readonly isTerminal: boolean
  /** Findings, cards and pages go to standard output; talk about the run itself to standard error. */
  out(text: string): void
  err(text: string): void
  /** All of standard input. */
  input(): Uint8Array
}

/**
 * The process as a terminal. A reader that closes its end of a pipe has seen enough: what is still to be written is
 * dropped without a word.
 */
export const processTerminal = (input: () => Uint8Array): Terminal => {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: { code?: unknown }) => {
      if (error.code !== 'EPIPE') throw error
    })
  }
  return {
    workingFolder: process.cwd(),
    environment: process.env,
    isTerminal: process.stdout.isTTY === true,
    out: (text) => void process.stdout.write(text),
    err: (text) => void process.stderr.write(text),
    input,
  }
}
