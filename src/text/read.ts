/**
 * Reads YAML 1.2 (core schema, whatever version a %YAML line claims) into a tree with places. Never throws and never
 * takes long: size, nesting and count of values are bounded before the parser's tree is built, and aliases are followed
 * within the same budget, so that no small file stands for a large one.
 */
import { Composer, type CST, type Document, Lexer, Parser } from 'yaml'
import { buildTree } from './build-tree.js'
import { firstFault, type SyntaxFault, type Unclosed } from './faults.js'
import type { TextFault, TextReading } from './tree.js'
import { deepest, mostValues } from './walk.js'

/** Bytes of UTF-8 in one file. */
export const longestFile = 2 ** 20

/** What YAML 1.2.2 (5.1) does not count as text: control characters, halves of surrogate pairs, a lone carriage return. */
const unprintable = /[\0-\x08\x0B\x0C\x0E-\x1F\x7F-\x84\x86-\x9F\uFFFE\uFFFF\p{Surrogate}]|\r(?!\n)/u

const utf8Length = (text: string): number => {
  let bytes = 0
  for (let i = 0; i < text.length; i += 1) {
    const code = text.charCodeAt(i)
    // Each half of a surrogate pair counts for two of its four bytes.
    bytes += code < 0x80 ? 1 : code < 0x800 || (code >= 0xd800 && code <= 0xdfff) ? 2 : 3
  }
  return bytes
}

const codePoint = (text: string, at: number): string =>
  `U+${text.charCodeAt(at).toString(16).toUpperCase().padStart(4, '0')}`

/** A refusal that can be seen without parsing. */
const refusal = (file: string, text: string): TextFault | undefined => {
  const fault = (start: number, end: number, says: string): TextFault => ({
    rule: 'plan-unreadable',
    file,
    start,
    end,
    says,
  })
  if (text.length > longestFile || (text.length * 3 > longestFile && utf8Length(text) > longestFile))
    return fault(0, 0, 'the file is over 1 MiB, which is more than any plan needs')
  const strange = unprintable.exec(text)
  if (strange === null) return undefined
  const at = strange.index
  if (text[at] === '\r')
    return fault(at, at + 1, 'lines end in a lone carriage return here: save the file with line feeds')
  if (text[at] === '\0' && at < 4) return fault(at, at + 1, 'this is not UTF-8 text: save the file as UTF-8')
  return fault(
    at,
    at + 1,
    `this is no character of a text (${codePoint(text, at)}): plans are YAML text in UTF-8`,
  )
}

interface Parsed {
  readonly documents: readonly Document.Parsed[]
  readonly errors: readonly SyntaxFault[]
  readonly unclosed: Unclosed
  /** Given up before the end. */
  readonly stopped: { readonly at: number; readonly says: string } | undefined
}

/** The lexer marks the start of a plain scalar and the place where a flow collection breaks off with these. */
const scalarMark = '\u001f'
const flowBroken = '\u0018'

/** What a file within the limit of values can hold at most: every value has at most one key. */
const mostOf: Readonly<Record<string, number>> = {
  [scalarMark]: 2 * mostValues,
  '"': 2 * mostValues,
  "'": 2 * mostValues,
  '*': 2 * mostValues,
  '&': 2 * mostValues,
  '!': 2 * mostValues,
  ',': mostValues,
  ':': mostValues,
  '-': mostValues,
  '?': mostValues,
  '[': mostValues,
  '{': mostValues,
  // Directives: more than any file has use for.
  '%': 100,
}
/** Signs that stand alone in a lexeme; a scalar may begin with the same character. */
const alone = ',:-?[{'

/** Errors after which reading on tells nothing more. */
const mostErrors = 20

const parse = (text: string): Parsed => {
  const lexer = new Lexer()
  const parser = new Parser()
  // All plain scalars come out as strings, which is quicker; their meaning is read in the tree.
  const composer = new Composer({
    schema: 'failsafe',
    resolveKnownTags: false,
    uniqueKeys: false,
    prettyErrors: false,
    logLevel: 'silent',
  })
  const documents: Document.Parsed[] = []
  const counts: Record<string, number> = {}
  const brackets: number[] = []
  let quote: number | undefined
  let bracket: number | undefined
  let errors = 0
  const compose = (token: CST.Token): void => {
    if (token.type === 'error') errors += 1
    for (const document of composer.next(token)) documents.push(document as Document.Parsed)
  }
  const result = (stopped?: Parsed['stopped']): Parsed => {
    for (const document of composer.end(false, text.length)) documents.push(document as Document.Parsed)
    return {
      documents,
      errors: [...documents.flatMap((document) => document.errors), ...composer.streamInfo().errors],
      unclosed: { quote, bracket: bracket ?? brackets.at(-1) },
      stopped,
    }
  }
  // The lexer miscounts the first line's indent after a byte-order mark, so it does not get to see one.
  const mark = text.startsWith('\uFEFF') ? 1 : 0
  parser.offset = mark
  for (const lexeme of lexer.lex(text.slice(mark))) {
    const at = parser.offset
    const first = lexeme[0]!
    const most = mostOf[first]
    if (most !== undefined && (lexeme.length === 1 || !alone.includes(first))) {
      const count = (counts[first] ?? 0) + 1
      counts[first] = count
      if (count > most)
        return result({
          at,
          says:
            first === '%' ? 'there are too many % lines' : `there are over ${mostValues} values before this`,
        })
      if (first === '"' || first === "'") quote = at
      else if (first === '[' || first === '{') brackets.push(at)
    } else if (lexeme === ']' || lexeme === '}') brackets.pop()
    else if (first === flowBroken) {
      bracket ??= brackets.at(-1)
      brackets.length = 0
    }
    for (const token of parser.next(lexeme)) compose(token)
    // Document, collections, and the scalar at hand. The tree is held to the exact depth later.
    if (parser.stack.length > deepest + 2)
      return result({ at, says: `maps and lists are nested more than ${deepest} deep here` })
    // The first document comes out when the second is there: one more is refused, however many follow.
    if (documents.length > 0) return result()
    if (errors > mostErrors) break
  }
  for (const token of parser.end()) compose(token)
  return result()
}

/**
 * Reads a text.
 *
 * Faults are in trade words and at the exact place. A mistake that breaks the YAML, or a limit, leaves no root and one
 * fault; names that are used twice, or cannot be used, and tags leave a root without them.
 *
 * @param file path that the places carry
 */
export const readText = (file: string, text: string): TextReading => {
  const refused = refusal(file, text)
  if (refused !== undefined) return { root: undefined, faults: [refused] }
  const { documents, errors, unclosed, stopped } = parse(text)
  const unusable = (start: number, end: number, says: string): TextReading => ({
    root: undefined,
    faults: [{ rule: 'plan-unreadable', file, start, end: Math.min(end, text.length), says }],
  })
  if (stopped !== undefined) return unusable(stopped.at, stopped.at + 1, stopped.says)
  if (errors.length > 0) return { root: undefined, faults: [firstFault(file, text, errors, unclosed)] }
  const [document, second] = documents
  if (document === undefined || document.contents === null) return unusable(0, 0, 'the file is empty')
  if (second !== undefined) {
    const at = second.range[0]
    return unusable(at, at + 3, 'a second YAML document starts here: one file holds one')
  }
  if (text.slice(document.contents.range![0], document.contents.range![1]).trim() === '')
    return unusable(0, 0, 'the file is empty')
  return buildTree(file, text, document.contents)
}
