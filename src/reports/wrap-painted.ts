import { wrap } from './width.js'

export interface Painted {
  readonly text: string
  readonly paint: (text: string) => string
}

/**
 * Breaks painted text at spaces; lines after the first are indented. It is measured before it is painted, since colours
 * take no columns.
 */
export const wrapPainted = (parts: readonly Painted[], columns: number, indent: number): string[] => {
  const whole = parts.map(({ text }) => text).join('')
  let from = 0
  return wrap(whole, columns, indent).map((line, index) => {
    from = whole.indexOf(line, from)
    const painted = cut(parts, from, from + line.length)
    from += line.length
    return index === 0 ? painted : ' '.repeat(indent) + painted
  })
}

/** The text from one offset to another, each part in its paint. */
const cut = (parts: readonly Painted[], start: number, end: number): string => {
  let at = 0
  return parts
    .map(({ text, paint }) => {
      const piece = text.slice(Math.max(0, start - at), Math.max(0, end - at))
      at += text.length
      return piece === '' ? '' : paint(piece)
    })
    .join('')
}
