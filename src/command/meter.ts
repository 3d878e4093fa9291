/** `thirdstop meter PLAN`: what a meter will read, and writing down what it did read. */
import { resolve } from 'node:path'
import type { Command } from 'commander'
import type { CheckedPlan } from '../checker/finding.js'
import { filePort } from '../files/file-port.js'
import { nameOf } from '../files/name.js'
import { readFile } from '../files/read-file.js'
import { replaceFile } from '../files/write-file.js'
import { wrap } from '../reports/width.js'
import type { Vec3 } from '../scene/vector.js'
import { runOf } from '../tasks/check.js'
import type { AskedPlace } from '../tasks/meter.js'
import type { Faces } from '../tasks/take-reading.js'
import { type ExitCode, exitCodes } from './exit-codes.js'
import { choice, lookOptions, rootAsked, rootOption } from './options.js'
import { chosenLook, type LookOptions } from './paint.js'
import type { Terminal } from './terminal.js'
import { Misuse } from './usage.js'
import type { AddCommand } from './work.js'

interface MeterWords extends LookOptions {
  readonly format: 'text' | 'json' | 'markdown'
  readonly root?: string
  readonly read?: readonly string[]
  readonly faces?: Faces
}

export const meterCommand: AddCommand = (program, terminal, choose) => {
  const asked: AskedPlace[] = []
  const command = program
    .command('meter')
    .summary('say what a meter will read')
    .description(
      'The meter card: what to meter in which order, what a meter will read at each point of each light and of all, in stops over the camera and over the key, with its uncertainty; and what it did read.',
    )
    .argument('<plan>', 'a plan file')
    .addOption(
      choice(
        '--format <form>',
        'for people, for programs, or as Markdown',
        'text',
        'json',
        'markdown',
      ).default('text'),
    )
    .option(
      '--read <reading>',
      'write what you metered into the plan, with the settings of today: key@subject=f/5.6, all@backdrop=f/8 (repeatable)',
      (reading: string, before: readonly string[] = []) => [...before, reading],
    )
  command.addOption(
    choice(
      '--faces <way>',
      'which way the dome faced in --read (else: the light, of several the camera; off a surface)',
      'camera',
      'light',
      'out',
    ),
  )
  askOptions(command, asked)
  lookOptions(rootOption(command)).action((plan: string, words: MeterWords) =>
    choose(() => {
      if (words.read !== undefined) return write(plan, words.read, words, terminal)
      if (words.faces !== undefined) throw new Misuse('--faces belongs to a reading: write --read before it')
      return card(plan, asked, words, terminal)
    }),
  )
}

/** `--facing` and `--dome` belong to the `--at` before them. */
const askOptions = (command: Command, asked: AskedPlace[]): void => {
  const last = (option: string): AskedPlace => {
    const place = asked.pop()
    if (place === undefined) throw new Misuse(`${option} belongs to a place: write --at x,y,z before it`)
    return place
  }
  command
    .option(
      '--at <x,y,z>',
      'also at this place: metres right of the subject point, toward the backdrop, up (repeatable)',
      (text: string) => void asked.push({ at: vector(text, '--at'), facing: undefined, dome: 'raised' }),
    )
    .option(
      '--facing <x,y,z>',
      'the direction that the meter faces there (else: the camera)',
      (text: string) => {
        const facing = vector(text, '--facing')
        if (facing.every((one) => one === 0)) throw new Misuse('--facing needs a direction, not 0,0,0')
        asked.push({ ...last('--facing'), facing })
      },
    )
    .option('--dome <kind>', 'raised or flat (else: raised)', (text: string) => {
      if (text !== 'raised' && text !== 'flat') throw new Misuse(`--dome is raised or flat, not ${text}`)
      asked.push({ ...last('--dome'), dome: text })
    })
}

const vector = (text: string, option: string): Vec3 => {
  const numbers = text.split(',').map((part) => (part.trim() === '' ? Number.NaN : Number(part)))
  const [x, y, z] = numbers
  if (numbers.length !== 3 || !numbers.every((one) => Math.abs(one) <= 1000)) {
    throw new Misuse(`${option} needs three numbers such as 0.5,-1,1.6, not ${text}`)
  }
  return [x!, y!, z!]
}

const groundOf = (words: MeterWords, terminal: Terminal) => ({
  workingFolder: terminal.workingFolder,
  ...rootAsked(words.root, terminal.workingFolder),
})

const textOf = (file: string, terminal: Terminal): string => {
  const opened = readFile(resolve(terminal.workingFolder, file))
  if (!opened.ok) throw new Misuse(`${file} ${opened.says}`)
  return opened.text
}

const card = async (
  file: string,
  asked: readonly AskedPlace[],
  words: MeterWords,
  terminal: Terminal,
): Promise<ExitCode> => {
  const text = textOf(file, terminal)
  const { meterPlan } = await import('../tasks/meter-plan.js')
  const name = nameOf(file, terminal.workingFolder)
  const metered = meterPlan(name, text, filePort(groundOf(words, terminal)), asked)
  if (!metered.ok) return notUnderstood(metered.checked, words, terminal)
  if (words.format === 'json') {
    const { meterJson } = await import('../reports/meter-json.js')
    terminal.out(meterJson(metered.card))
  } else if (words.format === 'markdown') {
    const [{ markdownPage }, { meterPage }] = await Promise.all([
      import('../reports/page.js'),
      import('../reports/meter-page.js'),
    ])
    terminal.out(markdownPage(meterPage(metered.card)))
  } else {
    const { meterTable } = await import('../reports/meter-table.js')
    terminal.out(meterTable(metered.card, await chosenLook(words, terminal)))
  }
  return exitCodes.clean
}

const write = async (
  file: string,
  readings: readonly string[],
  words: MeterWords,
  terminal: Terminal,
): Promise<ExitCode> => {
  const before = textOf(file, terminal)
  const ground = groundOf(words, terminal)
  const { takeReadings } = await import('../tasks/take-readings.js')
  const taken = takeReadings(
    nameOf(file, terminal.workingFolder),
    before,
    filePort(ground),
    readings,
    words.faces,
  )
  if ('checked' in taken) return notUnderstood(taken.checked, words, terminal)
  if (!taken.ok) throw new Misuse(taken.says)
  const written = replaceFile(file, before, taken.text, ground)
  if (!written.ok) throw new Misuse(`${file} ${written.says}`)
  const { show, columns } = await chosenLook(words, terminal)
  for (const { reading, inPlaceOf, says } of taken.readings) {
    const instead = inPlaceOf === undefined ? '' : ` in place of ${inPlaceOf}`
    terminal.out(
      [
        `wrote ${reading}${instead}`,
        ...says.flatMap((one) => wrap(one, columns - 2).map((line) => `  ${line}`)),
        '',
      ]
        .map(show)
        .join('\n'),
    )
  }
  return exitCodes.clean
}

/** The mistakes of a plan that cannot be understood, as `check` shows them. */
const notUnderstood = async (plan: CheckedPlan, words: MeterWords, terminal: Terminal): Promise<ExitCode> => {
  const { text } = await import('../reports/text.js')
  terminal.err(text(runOf([plan]), await chosenLook(words, terminal)))
  return exitCodes.found
}
