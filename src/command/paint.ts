import pc from 'picocolors'
import { type Look, look, type Paint } from '../reports/look.js'
import { wantsColour } from './colour.js'
import type { Terminal } from './terminal.js'

export interface LookOptions {
  readonly color?: boolean
  readonly ascii?: boolean
}

/** How a report looks in this call. */
export const chosenLook = (options: LookOptions, terminal: Terminal): Look =>
  look({
    paint: paint(
      wantsColour({
        flag: options.color,
        environment: terminal.environment,
        terminal: terminal.isTerminal,
      }),
    ),
    ascii: options.ascii === true,
  })

const paint = (colour: boolean): Paint => {
  const colours = pc.createColors(colour)
  return {
    error: (text) => colours.bold(colours.red(text)),
    warning: (text) => colours.bold(colours.yellow(text)),
    note: (text) => colours.bold(colours.cyan(text)),
    strong: colours.bold,
    faint: colours.dim,
  }
}
