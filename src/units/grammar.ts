/**
 * Building blocks of the quantities' grammars, as regular expression sources that a JSON Schema can carry. Every repeat
 * is bounded and no repeat holds another, so a grammar's language is finite and matching never takes long, whatever the text.
 * Bodies hold no capturing groups, so that they can stand inside one another.
 */
import { type Parsed, refused } from './parsed.js'

/** Blanks between the parts of a quantity: plain, no-break, thin and narrow no-break spaces. */
export const gap = '[ \\u00a0\\u2009\\u202f]{0,4}'
/** At least one blank, where two words would run together. */
export const space = '[ \\u00a0\\u2009\\u202f]{1,4}'
/** Hyphen-minus and the minus sign proper. */
export const minus = '[-\\u2212]'

const vulgarFractions: Readonly<Record<string, number>> = {
  '½': 1 / 2,
  '⅓': 1 / 3,
  '⅔': 2 / 3,
  '¼': 1 / 4,
  '¾': 3 / 4,
}
const vulgar = '[½⅓⅔¼¾]'

/** `2.4`, `.5`, `12`. */
export const decimal = '(?:[0-9]{1,7}(?:\\.[0-9]{1,9})?|\\.[0-9]{1,9})'
/** `1/125`, `2/3`. */
export const fraction = '[0-9]{1,4}/[1-9][0-9]{0,5}'
/** `2.4`, `5 1/2`, `2/3`, `½`, `5½`. */
export const number = `(?:[0-9]{1,7}(?: ?${vulgar}|\\.[0-9]{1,9}|(?: [0-9]{1,3})?/[1-9][0-9]{0,5})?|\\.[0-9]{1,9}|${vulgar})`

/** A body as a pattern for the whole text, blanks around it allowed. */
export const whole = (body: string): string => `^${gap}${body}${gap}$`

/** The value of what `number` matches. */
export const toNumber = (text: string): number => {
  const last = vulgarFractions[text.slice(-1)]
  if (last !== undefined) return Number(text.slice(0, -1)) + last
  const [before, bottom] = text.split('/') as [string, string?]
  if (bottom === undefined) return Number(text)
  const [first, second] = before.split(' ') as [string, string?]
  return second === undefined
    ? Number(first) / Number(bottom)
    : Number(first) + Number(second) / Number(bottom)
}

/** The value of what a sign and `number` match. */
export const toSigned = (sign: string | undefined, text: string): number =>
  sign === '-' || sign === '\u2212' ? -toNumber(text) : toNumber(text)

/** Takes what the pattern's groups matched; a group that took no part is undefined. */
type Take<T> = (...groups: readonly (string | undefined)[]) => Parsed<T>

/**
 * A reader for a pattern: `take` gets what its groups matched, `refuse` words what to write instead of a text that does
 * not match. The expression is compiled when first needed, with the flag that JSON Schema validators use.
 */
export const reader = <T>(
  pattern: string,
  take: Take<T>,
  refuse: (text: string) => string,
): ((text: string) => Parsed<T>) => {
  let expression: RegExp | undefined
  return (text) => {
    expression ??= new RegExp(pattern, 'u')
    const found = expression.exec(text)
    return found === null ? refused(refuse(text.trim())) : take(...found.slice(1))
  }
}

const bare = /^[-+\u2212]?[0-9]{1,7}(?:\.[0-9]{1,9})?$/u
const comma = /^[^,]{0,20}[0-9],[0-9]{1,9}(?![0-9,])[^,]{0,20}$/u
const thousands = /^[^,]{0,20}[0-9]{1,3},[0-9]{3}(?![0-9])[^,]{0,20}$/u

/** True of a number without a unit. */
export const isBare = (text: string): boolean => bare.test(text)

/** The text with its decimal comma made a point, where a comma is all that is wrong with it; else undefined. */
export const withPoint = (text: string): string | undefined =>
  comma.test(text) && !thousands.test(text) ? text.replace(',', '.') : undefined

/**
 * The sentence for a text that does not match: with a point where only the comma is wrong, with the unit where only the
 * unit is missing, else how the quantity is written.
 */
export const refusal =
  (says: {
    readonly what: string
    readonly examples: string
    /** Writes a bare number as the quantity, where that has one meaning. */
    readonly bare?: (text: string) => string
    /** Tells whether a text with its comma made a point would be read. */
    readonly pattern: string
  }): ((text: string) => string) =>
  (text) => {
    const pointed = withPoint(text)
    if (pointed !== undefined && new RegExp(says.pattern, 'u').test(pointed))
      return `write ${pointed} with a point`
    if (isBare(text) && says.bare !== undefined) return says.bare(text)
    return `${says.what} is written ${says.examples}`
  }
