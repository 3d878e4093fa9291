/** A table for people that keeps to the page where that can be: numbers stand right, words left. */
import type { Look } from './look.js'
import { padLeft, padRight, width } from './width.js'

/**
 * @param rows the first is the head. An empty first cell stands for the one above it
 */
export const table = (rows: readonly (readonly string[])[], look: Look): string[] => {
  const shown = rows.map((cells) => cells.map(look.show))
  const gap = [3, 2].find((one) => tableWidth(shown, one) <= look.columns)
  return gap === undefined ? grouped(shown, look) : lines(shown, gap, look)
}

/** What names the rows stands over them, on lines of its own. */
const grouped = (shown: readonly (readonly string[])[], look: Look): string[] => {
  const inner = shown.map((cells) => cells.slice(1))
  const [head, ...rest] = lines(inner, tableWidth(inner, 2) <= look.columns - 2 ? 2 : 1, look)
  return [
    `  ${head!}`,
    ...rest.flatMap((line, index) => {
      const name = shown[index + 1]![0]!
      return name === '' ? [`  ${line}`] : [name, `  ${line}`]
    }),
  ]
}

const columnWidths = (shown: readonly (readonly string[])[]): number[] =>
  shown[0]!.map((_, column) => Math.max(...shown.map((cells) => width(cells[column] ?? ''))))

const tableWidth = (shown: readonly (readonly string[])[], gap: number): number =>
  columnWidths(shown).reduce((sum, one) => sum + one + gap, -gap)

const lines = (shown: readonly (readonly string[])[], gap: number, { paint }: Look): string[] => {
  const widths = columnWidths(shown)
  const isNumber = widths.map((_, column) =>
    shown.slice(1).every((cells) => /^$|^[-+]?[\d.]+$/.test(cells[column] ?? '')),
  )
  return shown.map((cells, index) => {
    const line = cells
      .map((cell, column) => (isNumber[column] ? padLeft : padRight)(cell, widths[column]!))
      .join(' '.repeat(gap))
      .trimEnd()
    return index === 0 ? paint.faint(line) : line
  })
}
