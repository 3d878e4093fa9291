/** The line that a place points at, and a stroke over what is meant, in display columns. */
import type { Place } from '../text/place.js'
import { type Look, labelledWidth } from './look.js'
import { width } from './width.js'

export interface SourceLine {
  readonly line: string
  readonly mark: string
}

interface Cell {
  readonly shown: string
  readonly columns: number
  readonly marked: boolean
}

const tabStop = 4

export const sourceLine = (text: string, place: Place, look: Look): SourceLine | undefined => {
  if (place.start > text.length) return undefined
  // No more of a line than can come into sight: a hostile one is as long as its file.
  const reach = 8 * labelledWidth(look)
  const from = lineStart(text, place.start, Math.max(0, place.start - reach))
  const to = lineEnd(text, place.start, Math.min(text.length, place.start + reach))
  const cells = toPage(cellsOf(text, from, to, place, look), look)
  const before = cells.findIndex((cell) => cell.marked)
  const columns = (some: readonly Cell[]) => some.reduce((sum, cell) => sum + cell.columns, 0)
  const blank = before < 0 ? columns(cells) : columns(cells.slice(0, before))
  const marked = columns(cells.filter((cell) => cell.marked))
  return {
    line: cells
      .map((cell) => cell.shown)
      .join('')
      .trimEnd(),
    mark: ' '.repeat(blank) + look.show('‾').repeat(Math.max(1, marked)),
  }
}

const lineStart = (text: string, offset: number, least: number): number => {
  let start = offset
  while (start > least && !/[\r\n\uFEFF]/.test(text[start - 1]!)) start -= 1
  return start
}

const lineEnd = (text: string, offset: number, most: number): number => {
  let end = offset
  while (end < most && !/[\r\n]/.test(text[end]!)) end += 1
  return end
}

const cellsOf = (text: string, from: number, to: number, place: Place, look: Look): Cell[] => {
  const cells: Cell[] = []
  const meant = text.slice(place.start, Math.min(place.end, to))
  // Blanks behind a value are not meant, but blanks alone are.
  const end = place.start + (meant.trimEnd() || meant).length
  let column = 0
  let offset = from
  for (const one of text.slice(from, to)) {
    const shown = one === '\t' ? ' '.repeat(tabStop - (column % tabStop)) : look.show(one)
    // A joined or combining character takes no column of its own: measure it behind its forerunner.
    const columns = width((cells.at(-1)?.shown ?? '') + shown) - width(cells.at(-1)?.shown ?? '')
    cells.push({ shown, columns, marked: offset >= place.start && offset < end })
    column += columns
    offset += one.length
  }
  return cells
}

/** A line wider than the page is cut on either side, so that what is marked stays in sight. */
const toPage = (cells: readonly Cell[], look: Look): readonly Cell[] => {
  const total = cells.reduce((sum, cell) => sum + cell.columns, 0)
  const page = labelledWidth(look)
  if (total <= page) return cells
  const marked = Math.max(
    0,
    cells.findIndex((cell) => cell.marked),
  )
  let first = marked
  for (let room = page / 3; first > 0 && room > 0; first -= 1) room -= cells[first - 1]!.columns
  let last = first
  for (let room = page - 6; last < cells.length && room > 0; last += 1) room -= cells[last]!.columns
  const dots = look.show('…')
  const cut: Cell = { shown: dots, columns: width(dots), marked: false }
  return [...(first > 0 ? [cut] : []), ...cells.slice(first, last), ...(last < cells.length ? [cut] : [])]
}
