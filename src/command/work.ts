import type { Command } from 'commander'
import type { ExitCode } from './exit-codes.js'
import type { Terminal } from './terminal.js'

/** What a command does once the call is understood. */
export type Work = () => Promise<ExitCode> | ExitCode

/** Adds a command to the program; `choose` takes the work of the one that is called. */
export type AddCommand = (program: Command, terminal: Terminal, choose: (work: Work) => void) => void
