/** A page of text as data, and its two forms: for a terminal and as Markdown. */
import type { Look } from './look.js'
import { visible } from './visible.js'
import { width, wrap } from './width.js'

export type Block =
  | { readonly heading: string; readonly level: 1 | 2 | 3 }
  | { readonly paragraph: string }
  | { readonly items: readonly string[] }
  | { readonly code: string; readonly language: string }
  | { readonly table: readonly (readonly string[])[]; readonly head: readonly string[] }

export const textPage = (blocks: readonly Block[], look: Look): string =>
  `${blocks
    .map((block) =>
      textBlock(block, look)
        .map((line) => line.trimEnd())
        .join('\n'),
    )
    .join('\n\n')}\n`

const textBlock = (block: Block, { paint, show, columns }: Look): string[] => {
  if ('heading' in block) return wrap(show(block.heading), columns).map(paint.strong)
  if ('paragraph' in block) return wrap(show(block.paragraph), columns)
  if ('items' in block) {
    return block.items.flatMap((item) =>
      wrap(show(item), columns - 4).map((line, index) => `${index === 0 ? '  - ' : '    '}${line}`),
    )
  }
  if ('code' in block) return block.code.split('\n').map((line) => `    ${show(line)}`)
  return inColumns(
    block.table.map((row) => row.map(show)),
    columns - 2,
  ).map((line) => `  ${line}`)
}

/** Rows with their columns below each other; the last column is broken within itself. */
const inColumns = (rows: readonly (readonly string[])[], page: number): string[] => {
  const last = Math.max(0, ...rows.map((row) => row.length - 1))
  const widths = Array.from({ length: last }, (_, column) =>
    Math.max(...rows.map((row) => width(row[column] ?? ''))),
  )
  const indent = widths.reduce((sum, one) => sum + one + 2, 0)
  return rows.flatMap((row) => {
    const head = widths
      .map((columnWidth, column) => {
        const cell = row[column] ?? ''
        return `${cell}${' '.repeat(columnWidth - width(cell) + 2)}`
      })
      .join('')
    const lines = wrap(row[last] ?? '', Math.max(narrowestCell, page - indent))
    return lines.map((line, index) => `${index === 0 ? head : ' '.repeat(indent)}${line}`)
  })
}

const narrowestCell = 16

export const markdownPage = (blocks: readonly Block[]): string =>
  `${blocks.map(markdownBlock).join('\n\n')}\n`

const markdownBlock = (block: Block): string => {
  if ('heading' in block) return `${'#'.repeat(block.level)} ${markdown(block.heading)}`
  if ('paragraph' in block) return markdown(block.paragraph)
  if ('items' in block) return block.items.map((item) => `- ${markdown(item)}`).join('\n')
  if ('code' in block) return `\`\`\`${block.language}\n${block.code}\n\`\`\``
  const row = (cells: readonly string[]): string =>
    `| ${cells.map((cell) => markdown(cell).replaceAll('|', '\\|')).join(' | ')} |`
  return [row(block.head), row(block.head.map(() => '---')), ...block.table.map(row)].join('\n')
}

/**
 * Escapes what Markdown or HTML in it would take for its own (CommonMark 0.31, backslash escapes); what would hide itself
 * is made visible.
 */
const markdown = (text: string): string =>
  visible(text.replace(/\s*[\r\n]+\s*/g, ' ')).replace(/[\\`*_[\]<>&#]/g, (one) => `\\${one}`)
