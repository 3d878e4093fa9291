/** The parser's errors in trade words: where to look and what to write. */
import type { TextFault } from './tree.js'

/** An error of the yaml package, as far as it is used. */
export interface SyntaxFault {
  readonly code: string
  readonly message: string
  readonly pos: readonly [number, number]
}

/** Openings that the lexer met no end for. */
export interface Unclosed {
  /** Offset of the last opening quote. */
  readonly quote: number | undefined
  /** Offset of the innermost bracket still open where a flow collection broke off. */
  readonly bracket: number | undefined
}

interface Worded {
  readonly start: number
  readonly end: number
  readonly says: string
}

const lineEnd = (text: string, from: number): number => {
  const at = text.indexOf('\n', from)
  const end = at < 0 ? text.length : at
  return end > from && text[end - 1] === '\r' ? end - 1 : end
}

/** From the first character on the line that is no blank, to the line's end. */
const restOfLine = (text: string, from: number): { readonly start: number; readonly end: number } => {
  let start = from
  while (text[start] === ' ' || text[start] === '\t') start += 1
  return { start, end: Math.max(lineEnd(text, start), start) }
}

/** A stretch short enough to be repeated in a sentence. */
const brief = (text: string): string => {
  const line = text.trim()
  return line.length <= 40 ? line : `${line.slice(0, 38)}…`
}

/** `power:1/4` → a space is missing; `title Hello` → the colon is. */
const keyWithoutColon = (text: string, start: number, end: number): Worded => {
  const line = text.slice(start, Math.min(end, lineEnd(text, start)))
  const joined = /^([^\s:]{1,60}):(\S.*)$/su.exec(line)
  const place = { start, end: start + line.trimEnd().length }
  if (joined !== null)
    return { ...place, says: `a space is missing after the colon: write ${joined[1]}: ${brief(joined[2]!)}` }
  const [name, ...rest] = brief(line).split(/[ \t]+/)
  if (name === '')
    return {
      ...place,
      says: 'a name and its colon stand on one line: join this line with the one before or after it',
    }
  return line.startsWith('-')
    ? { ...place, says: 'a list item cannot stand among keys: indent it under the key that it belongs to' }
    : {
        ...place,
        says:
          rest.length > 0
            ? `a colon is missing after the name: write ${name}: ${rest.join(' ')}`
            : `a colon and a value are missing after the name ${name}`,
      }
}

const tooDeep = (text: string, from: number): Worded => ({
  ...restOfLine(text, from),
  says: 'this line is indented further than the one above, which already has its value: line it up with the keys around it',
})

const nested = (text: string, error: SyntaxFault, all: readonly SyntaxFault[]): Worded => {
  const start = error.pos[0]
  if (error.message.includes('block sequence')) {
    return {
      ...restOfLine(text, start),
      says: 'a list item cannot stand among keys: indent it under the key that it belongs to',
    }
  }
  // A value that runs on into the next line, where a key follows: that line is indented too far.
  const runsOn = all.some((other) => other.code === 'MULTILINE_IMPLICIT_KEY' && other.pos[0] === start)
  if (runsOn) return tooDeep(text, text.indexOf('\n', start) + 1)
  const { end } = restOfLine(text, start)
  const value = text.slice(start, end)
  return {
    start,
    end,
    says: `a value that holds a colon needs quotes: write "${brief(value.replaceAll('"', "'"))}"`,
  }
}

const unexpected = (text: string, error: SyntaxFault): Worded => {
  const [start] = error.pos
  const one = { start, end: Math.min(start + 1, text.length) }
  const sign = text[start] ?? ''
  if (error.message.includes('Unexpected ,')) return { ...one, says: 'there is one comma too many here' }
  if (sign === '}' || sign === ']')
    return { ...one, says: `this ${sign} closes nothing: take it out, or open it before` }
  const line = restOfLine(text, start)
  if (sign === '-' && text[start + 1] !== ' ')
    return { ...line, says: 'a space is missing after the dash of a list item' }
  if (error.message.includes('at node end'))
    return {
      ...line,
      says: 'the value before this is already complete: put quotes around all of it, or take this out',
    }
  return { ...line, says: 'this does not fit here: look at the quotes, brackets and indentation before it' }
}

const missing = (text: string, error: SyntaxFault, unclosed: Unclosed): Worded => {
  const [start, end] = error.pos
  const { message } = error
  if (message.includes('quote') && unclosed.quote !== undefined) {
    const from = unclosed.quote
    return {
      start: from,
      end: lineEnd(text, from),
      says: `this quote is not closed: write ${text[from]} where it ends`,
    }
  }
  if (message.includes('map values')) return keyWithoutColon(text, start, end)
  if (message.includes('directives'))
    return {
      ...restOfLine(text, start),
      says: 'a line of three dashes, ---, goes between %YAML and the plan',
    }
  if (message.startsWith('Sequence item'))
    return {
      ...restOfLine(text, start),
      says: 'this line stands in a list without its dash: line it up with the keys of the item above, or write a dash before it',
    }
  if (message.startsWith('Missing ,'))
    return {
      ...restOfLine(text, start),
      says: 'between braces or brackets a comma separates the entries: one is missing before this',
    }
  if (message.startsWith('Missing space'))
    return { ...restOfLine(text, start), says: 'a space is missing after the colon before this' }
  if (message.startsWith('Comments'))
    return { ...restOfLine(text, start), says: 'a space is missing before the # of this comment' }
  return {
    ...restOfLine(text, start),
    says: 'a sign is missing before this: look for a colon, comma, quote or space',
  }
}

const worded = (
  text: string,
  error: SyntaxFault,
  all: readonly SyntaxFault[],
  unclosed: Unclosed,
): Worded => {
  const [start, end] = error.pos
  if (error.message.startsWith('Flow') && unclosed.bracket !== undefined) {
    const from = unclosed.bracket
    const sign = text[from] === '{' ? '}' : ']'
    return {
      start: from,
      end: from + 1,
      says: `this ${text[from]} is not closed: write ${sign} where it ends`,
    }
  }
  switch (error.code) {
    case 'TAB_AS_INDENT': {
      let last = start
      while (text[last] === '\t' || text[last] === ' ') last += 1
      return { start, end: last, says: 'tabs cannot indent in YAML: use spaces' }
    }
    case 'MULTILINE_IMPLICIT_KEY':
      return keyWithoutColon(text, start, end)
    case 'BLOCK_AS_IMPLICIT_KEY':
      return nested(text, error, all)
    case 'BLOCK_IN_FLOW': {
      const piece = text.slice(start, Math.min(end, lineEnd(text, start))).trimEnd()
      return {
        start,
        end: start + piece.length,
        says: 'between braces or brackets a comma separates the entries: one is missing here',
      }
    }
    case 'BAD_INDENT':
      return {
        ...restOfLine(text, start),
        says: 'this line is not indented like the ones that it belongs to: line it up with them',
      }
    case 'BAD_SCALAR_START':
      return {
        ...restOfLine(text, start),
        says: `a value cannot start with ${text[start]}: put quotes around it`,
      }
    case 'BAD_DQ_ESCAPE':
      return {
        start,
        end: Math.min(start + 2, text.length),
        says: 'between double quotes a backslash has a meaning of its own: use single quotes, or write it twice',
      }
    case 'MISSING_CHAR':
      return missing(text, error, unclosed)
    case 'UNEXPECTED_TOKEN':
      return unexpected(text, error)
    case 'KEY_OVER_1024_CHARS':
      return { start, end: Math.min(start + 1, text.length), says: 'this name is over 1024 characters long' }
    case 'TAG_RESOLVE_FAILED':
      return {
        ...restOfLine(text, start),
        says: 'tags, which start with an exclamation mark, have no meaning here: take it out',
      }
    case 'BAD_DIRECTIVE':
      return {
        ...restOfLine(text, start),
        says: 'this % line is none that YAML knows: take it out, or put quotes around the value',
      }
    default:
      return {
        ...restOfLine(text, start),
        says: 'this cannot be read as YAML: look at the quotes, brackets, colons and indentation here',
      }
  }
}

/**
 * The first of the parser's errors as one fault. A parser that has lost its way reports what follows from the first
 * mistake as further errors; they go away with it.
 */
export const firstFault = (
  file: string,
  text: string,
  errors: readonly SyntaxFault[],
  unclosed: Unclosed,
): TextFault => {
  // Two errors at one place are one mistake told twice; the first tells more.
  const early = errors.slice(0, 100)
  const told = early.filter((error, i) => early.findIndex((other) => other.pos[0] === error.pos[0]) === i)
  const faults = told.map((error) => worded(text, error, errors, unclosed))
  let first = faults[0]!
  for (const fault of faults) if (fault.start < first.start) first = fault
  return { rule: 'plan-unreadable', file, ...first }
}
