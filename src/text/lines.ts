/** From offsets in a text to lines and columns that people and editors count. */
import type { Place } from './place.js'

/** Offsets at which lines start, in order; the first is past a byte-order mark, which editors do not count as a column. */
export interface LineIndex {
  readonly starts: readonly number[]
  readonly length: number
}

/** Lines end with a line feed, alone or after a carriage return. */
export const lineIndex = (text: string): LineIndex => {
  const starts = [text.startsWith('\uFEFF') ? 1 : 0]
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) starts.push(at + 1)
  return { starts, length: text.length }
}

/** Line and column of an offset, both from 1; an offset outside the text is taken as its nearer end. */
export const lineAndColumn = (
  index: LineIndex,
  offset: number,
): { readonly line: number; readonly column: number } => {
  const at = Math.min(Math.max(offset, index.starts[0]!), Math.max(index.length, index.starts[0]!))
  let low = 0
  let high = index.starts.length - 1
  while (low < high) {
    const middle = (low + high + 1) >> 1
    if (index.starts[middle]! <= at) low = middle
    else high = middle - 1
  }
  return { line: low + 1, column: at - index.starts[low]! + 1 }
}

/** The place of a stretch of text. */
export const placeAt = (
  index: LineIndex,
  file: string,
  pointer: string,
  start: number,
  end: number,
): Place => {
  const first = Math.min(Math.max(start, index.starts[0]!), index.length)
  const last = Math.min(Math.max(end, first), index.length)
  const from = lineAndColumn(index, first)
  const to = lineAndColumn(index, last)
  return {
    file,
    pointer,
    line: from.line,
    column: from.column,
    endLine: to.line,
    endColumn: to.column,
    start: first,
    end: last,
  }
}
