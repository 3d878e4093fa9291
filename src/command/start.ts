/** `thirdstop start [DIR]`: a first plan, a kit and the settings. Never overwrites. */
import { join } from 'node:path'
import { createFiles } from '../files/write-file.js'
import { visible } from '../reports/visible.js'
import { exitCodes } from './exit-codes.js'
import { Misuse } from './usage.js'
import type { AddCommand } from './work.js'

export const startCommand: AddCommand = (program, terminal, choose) => {
  program
    .command('start')
    .summary('write a first plan')
    .description(
      'Writes a first plan, a kit and settings, explained by comments. Nothing that is there is overwritten.',
    )
    .argument('[folder]', 'where to write', '.')
    .action((folder: string) =>
      choose(async () => {
        const { startFiles } = await import('../tasks/start.js')
        const files = startFiles().map(({ path, text }) => ({ path: join(folder, path), text }))
        const written = createFiles(files, { workingFolder: terminal.workingFolder })
        if (!written.ok) throw new Misuse(written.says)
        const plan = files[0]!.path
        terminal.out(
          [...files.map(({ path }) => `wrote ${path}`), `next: thirdstop check ${plan}`]
            .map((line) => `${visible(line)}\n`)
            .join(''),
        )
        return exitCodes.clean
      }),
    )
}
