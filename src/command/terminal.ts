import { fstatSync, writeSync } from 'node:fs'
import { readUpTo } from '../files/read-file.js'
import { whyUnwritable } from '../files/why-unwritable.js'
import { complaint } from './usage.js'

/** What a command needs of the process, so that tests can give their own. */
export interface Terminal {
  /** Absolute. */
  readonly workingFolder: string
  readonly environment: Readonly<Record<string, string | undefined>>
  /** Whether standard output is a terminal. */
  readonly isTerminal: boolean
  /** Columns of that terminal; undefined where there is none or it does not say. */
  readonly columns?: number | undefined
  /** Findings, cards and pages go to standard output; talk about the run itself to standard error. */
  out(text: string): void
  err(text: string): void
  /** Standard input, up to a number of bytes. */
  input(most: number): Uint8Array
  /** The executable's own file, from which another thread can start it; undefined where the program was not started from one. */
  readonly launcher?: string | undefined
}

export interface ProcessTerminal extends Terminal {
  /** Whether something could not be written, to the stream that it was for. */
  readonly failed: () => boolean
}

/**
 * The process as a terminal. It writes to the descriptors themselves: all that is written is out when a write returns,
 * and the streams of the process, which take a tenth of a start to set up, are left alone. What cannot be written is
 * told on the other stream, once.
 */
export const processTerminal = (launcher?: string): ProcessTerminal => {
  const failed = new Set<number>()
  const writeTo = (descriptor: 1 | 2, text: string): void => {
    if (failed.has(descriptor)) return
    try {
      write(descriptor, text)
    } catch (error) {
      failed.add(descriptor)
      const stream = descriptor === 1 ? 'output' : 'error'
      writeTo(descriptor === 1 ? 2 : 1, complaint(`standard ${stream} ${whyUnwritable(error)}`))
    }
  }
  return {
    workingFolder: process.cwd(),
    environment: process.env,
    ...screen(),
    out: (text) => writeTo(1, text),
    err: (text) => writeTo(2, text),
    input: (most) => readUpTo(0, most),
    failed: () => failed.size > 0,
    launcher,
  }
}

/** Only what may be a terminal is asked by way of the stream. */
const screen = (): Pick<Terminal, 'isTerminal' | 'columns'> => {
  try {
    if (fstatSync(1).isCharacterDevice() && process.stdout.isTTY === true) {
      return { isTerminal: true, columns: process.stdout.columns }
    }
  } catch {
    // Standard output is closed.
  }
  return { isTerminal: false }
}

const write = (descriptor: 1 | 2, text: string): void => {
  let bytes = Buffer.from(text, 'utf8')
  while (bytes.length > 0) {
    try {
      bytes = bytes.subarray(writeSync(descriptor, bytes))
    } catch (error) {
      const { code } = error as { code?: unknown }
      // The reader of a pipe has seen enough and closed its end, or there is none: drop the rest without a word.
      if (code === 'EPIPE' || code === 'EOF' || code === 'EBADF') return
      // The pipe is full and does not block: its reader needs a moment.
      if (code !== 'EAGAIN') throw error
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 2)
    }
  }
}
