import { type Look, look, type Paint, unpainted } from '../reports/look.js'
import { wantsColour } from './colour.js'
import type { Terminal } from './terminal.js'

export interface LookOptions {
  readonly color?: boolean
  readonly ascii?: boolean
}

/** How a report looks in this call. */
export const chosenLook = async (options: LookOptions, terminal: Terminal): Promise<Look> =>
  look({
    paint: await paint(
      wantsColour({
        flag: options.color,
        environment: terminal.environment,
        terminal: terminal.isTerminal,
      }),
    ),
    ascii: options.ascii === true,
    columns: columnsOf(terminal),
    terminal: terminal.isTerminal,
  })

/** COLUMNS is the user's wish and goes before what the terminal has (POSIX.1-2017, 8.3). */
const columnsOf = ({ environment, columns }: Terminal): number | undefined =>
  /^[1-9]\d{0,4}$/.test(environment.COLUMNS ?? '') ? Number(environment.COLUMNS) : columns || undefined

/** The package looks at the process as it loads, so it is loaded only where there is something to paint. */
const paint = async (colour: boolean): Promise<Paint> => {
  if (!colour) return unpainted
  const { default: picocolors } = await import('picocolors')
  const colours = picocolors.createColors(true)
  return {
    error: (text) => colours.bold(colours.red(text)),
    warning: (text) => colours.bold(colours.yellow(text)),
    note: (text) => colours.bold(colours.cyan(text)),
    strong: colours.bold,
    faint: colours.dim,
  }
}
