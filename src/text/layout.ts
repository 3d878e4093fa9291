/** Lines of a text, as editing needs them. */

/** Start of the line that holds an offset, and start of the next line (or the text's end). */
export const lineBounds = (text: string, at: number): { readonly start: number; readonly next: number } => {
  const newline = text.indexOf('\n', at)
  // A negative start would be taken as 0.
  return {
    start: at === 0 ? 0 : text.lastIndexOf('\n', at - 1) + 1,
    next: newline < 0 ? text.length : newline + 1,
  }
}

/** The line's text before an offset, without a byte-order mark. */
export const prefixOf = (text: string, at: number): string =>
  text.slice(lineBounds(text, at).start, at).replace('\uFEFF', '')

/** The line end that the text uses. */
export const newlineOf = (text: string): '\n' | '\r\n' => {
  const at = text.indexOf('\n')
  return at > 0 && text[at - 1] === '\r' ? '\r\n' : '\n'
}

/** A comment line's indent; undefined for any other line. */
const commentIndent = (line: string): number | undefined => {
  const indent = line.search(/[^ ]/u)
  return line[indent] === '#' ? indent : undefined
}

/**
 * The whole lines of a stretch that has them to itself: comments on the same line go with it, and so do comment lines
 * below that are indented further, and, with `above`, those right above at the same indent. Undefined where other
 * things stand on its lines.
 *
 * @param options.comma whether a comma may follow it
 */
export const ownLines = (
  text: string,
  start: number,
  end: number,
  options: { readonly comma: boolean; readonly above: boolean },
): { readonly start: number; readonly end: number } | undefined => {
  const first = lineBounds(text, start).start
  const indent = text.slice(first, start).replace('\uFEFF', '')
  if (!/^ *$/u.test(indent)) return undefined
  let { next } = lineBounds(text, end)
  const rest = text.slice(end, next).trim()
  const after = options.comma && rest.startsWith(',') ? rest.slice(1).trim() : rest
  if (after !== '' && !after.startsWith('#')) return undefined
  while (next < text.length) {
    const below = lineBounds(text, next)
    const deeper = commentIndent(text.slice(next, below.next))
    if (deeper === undefined || deeper <= indent.length) break
    next = below.next
  }
  // A byte-order mark stays.
  let from = first + (text.startsWith('\uFEFF') && first === 0 ? 1 : 0)
  while (options.above && from > 0) {
    const above = lineBounds(text, from - 1).start
    if (commentIndent(text.slice(above, from)) !== indent.length) break
    from = above
  }
  return { start: from, end: next }
}
