/**
 * The README's generated parts, each between two markers: the table of rules, the table of quantities, files of the
 * examples, and what the program prints. A command's output stands under `<!-- run: thirdstop … -->`.
 */
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { main } from '../command/main.js'
import { rulesList } from '../tasks/rules-list.js'
import { quantities } from '../units/quantities.js'

/** The README with every generated part as it must be now. `root` is the repository's folder. */
export const freshReadme = async (readme: string, root: string): Promise<string> => {
  const marked = /<!-- (rules|quantities|file: \S+|run: [^>]*?) -->\n[\s\S]*?<!-- end -->/g
  let fresh = ''
  let from = 0
  for (const part of readme.matchAll(marked)) {
    fresh += `${readme.slice(from, part.index)}<!-- ${part[1]} -->\n${await content(part[1]!, root)}<!-- end -->`
    from = part.index + part[0].length
  }
  return fresh + readme.slice(from)
}

const content = async (marker: string, root: string): Promise<string> => {
  if (marker === 'rules') return rulesTable()
  if (marker === 'quantities') return quantitiesTable()
  const [kind, ...rest] = marker.split(': ')
  const asked = rest.join(': ')
  if (kind === 'file') return fenced('yaml', withoutModeline(readFileSync(resolve(root, asked), 'utf8')))
  return fenced('console', `$ npx ${asked}\n${await printed(asked, root)}`)
}

/** What the command prints, run from the repository's folder, as on a pipe: no colour. */
export const printed = async (command: string, root: string): Promise<string> => {
  let output = ''
  await main(command.split(' ').slice(1), {
    workingFolder: root,
    environment: {},
    isTerminal: false,
    out: (text) => {
      output += text
    },
    err: (text) => {
      output += text
    },
    input: () => new Uint8Array(),
  })
  return output
}

const fenced = (language: string, text: string): string => `\`\`\`${language}\n${text.trimEnd()}\n\`\`\`\n`

const withoutModeline = (text: string): string => text.replace(/^# yaml-language-server:.*\n/, '')

const rulesTable = (): string => {
  const rows = rulesList().flatMap(({ family, rules }) =>
    rules.map((rule) => `| ${family} | \`${rule.id}\` | ${rule.level} | ${cell(rule.finds)} |`),
  )
  return `| family | rule | up to | finds |\n|---|---|---|---|\n${rows.join('\n')}\n`
}

const quantitiesTable = (): string => {
  const rows = Object.entries(quantities).map(
    ([name, { describe, examples }]) =>
      `| ${name.replaceAll('-', ' ')} | ${cell(describe)} | ${examples.map((one) => `\`${cell(one)}\``).join(', ')} |`,
  )
  return `| quantity | what it is | written |\n|---|---|---|\n${rows.join('\n')}\n`
}

const cell = (text: string): string => text.replaceAll('|', '\\|').replaceAll('\n', ' ')
