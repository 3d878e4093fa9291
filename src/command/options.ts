/** Options that several commands take, worded once. */
import { type Command, Option } from 'commander'
import { isFolder } from '../files/root.js'
import { Misuse } from './usage.js'

export const lookOptions = (command: Command): Command =>
  command
    .option('--ascii', 'nothing but ASCII characters')
    .option('--color', 'colours, also when the output is no terminal')
    .option('--no-color', 'no colours (NO_COLOR and FORCE_COLOR are obeyed too)')

export const rootOption = (command: Command): Command =>
  command.option(
    '--root <folder>',
    'base, kit and room files must lie in here (else: in the repository of the plan, or below the nearest thirdstop.yaml above it)',
  )

export const choice = (flags: string, description: string, ...choices: readonly string[]): Option =>
  new Option(flags, description).choices(choices)

/** The root that is asked for; it must be there, or every file that a plan names would be outside it. */
export const rootAsked = (root: string | undefined, workingFolder: string): { readonly root?: string } => {
  if (root === undefined) return {}
  if (root === '' || !isFolder(root, workingFolder))
    throw new Misuse(`--root needs a folder; ${root || 'nothing'} is none`)
  return { root }
}
