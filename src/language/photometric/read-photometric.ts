/**
 * Reads a photometric file: ANSI/IES LM-63-02 and -19, and their forerunners of 1986, 1991 and 1995. Text in, table out.
 * The format as described in the notes of Radiance's ies2rad (R. Fritz), in public accounts of LM-63-02's definitions and
 * angles, and in open readers; the standards' own text was not read.
 *
 * Numbers may stand on any lines. Counts are held against what follows before anything is made for them.
 */
import { as, type Watts } from '../../units/quantity.js'
import { readAngles, writtenOut } from './angles.js'
import { openingOf } from './opening.js'
import type { LuminousOpening, PhotometricTable, Tilt } from './table.js'
import { PhotometricFault, quoted, type Word, Words } from './words.js'

export type PhotometricReading =
  | { readonly ok: true; readonly table: PhotometricTable }
  | {
      readonly ok: false
      /** Offsets into the text, end exclusive. */
      readonly start: number
      readonly end: number
      readonly says: string
      readonly why: string
    }

export const readPhotometric = (text: string): PhotometricReading => {
  try {
    return { ok: true, table: tableOf(text) }
  } catch (fault) {
    if (!(fault instanceof PhotometricFault)) throw fault
    return { ok: false, ...fault.at, says: fault.message, why: fault.why }
  }
}

type Type = PhotometricTable['type']

/** The plane of horizontal angle 0, which a luminaire's length lies in, is level in type C and upright in the others. */
const lengthwise = (type: Type): 'across' | 'up' => (type === 'C' ? 'across' : 'up')

const asItStands = (type: Type, opening: LuminousOpening | undefined): LuminousOpening | undefined =>
  opening === undefined || lengthwise(type) === 'across'
    ? opening
    : { ...opening, width: opening.height, height: opening.width }

type Numbered = Word & { readonly value: number }

const metresPerFoot = 0.3048
/** No light of a studio, and no number that could run over, in metres, candela and watts. */
const largest = { opening: 3, candela: 1e12, watts: 1e6, lamps: 1e6, factor: 1e6 } as const

const tableOf = (text: string): PhotometricTable => {
  const { words, tilts, year } = afterTilt(text)
  const old = year < 1995
  const tilt = tilts ? readTilt(words) : undefined

  whole(words, 'the number of lamps', 1, largest.lamps)
  const lumens = words.number('the lumens of each lamp')
  if (lumens.value < 0 && lumens.value !== -1)
    throw outOfRange(lumens, 'the lumens of each lamp', 'over 0, or -1 where the candela hold as they stand')
  const multiplier = positive(words, 'the candela multiplier')
  const verticals = whole(words, 'the number of vertical angles', 2, Number.MAX_SAFE_INTEGER)
  const horizontals = whole(words, 'the number of horizontal angles', 1, Number.MAX_SAFE_INTEGER)
  const type = (['C', 'B', 'A'] as const)[whole(words, 'the photometric type', 1, 3).value - 1]!
  const unit = whole(words, 'the unit of lengths', 1, 2).value === 1 ? metresPerFoot : 1
  const lengths = {
    width: extent(words, 'the width of the luminous opening', unit),
    length: extent(words, 'the length of the luminous opening', unit),
    height: extent(words, 'the height of the luminous opening', unit),
  }
  const ballast = positive(words, 'the ballast factor')
  // Of 1986 and 1991: what lamp and ballast make together. Later it is kept free, or tells how the file came about.
  const further = old
    ? positive(words, 'the ballast-lamp photometric factor')
    : words.number('the file generation type').value
  const watts = words.number('the input watts')
  if (watts.value > largest.watts) throw outOfRange(watts, 'the input watts', `at most ${largest.watts}`)

  mustFit(words, verticals, horizontals)
  const [nadir, zenith] = type === 'C' ? [0, 180] : [-90, 90]
  const vertical = readAngles(words, verticals.value, 'vertical', nadir, zenith)
  const [from, to] = ({ C: [0, 360], B: [-90, 90], A: [-180, 180] } as const)[type]
  const horizontal = readAngles(words, horizontals.value, 'horizontal', from, to)
  const candela = readCandela(
    words,
    vertical.values.length,
    horizontal.values.length,
    multiplier * ballast * (old ? further : 1),
  )
  if (candela.every((value) => value === 0))
    throw new PhotometricFault(
      horizontals,
      'the photometric file gives no light in any direction',
      'one candela value at least is over 0',
    )
  return {
    ...writtenOut(type, vertical, horizontal, candela),
    opening: asItStands(type, openingOf(lengths, year)),
    watts: watts.value > 0 ? as<Watts>(watts.value) : undefined,
    tilt: tilt?.(type),
  }
}

// ---------------------------------------------------------------- lines before the numbers

/** Of what is no photometric file at all, so much is pointed at. */
const longestFirstLine = 80

const tiltLine = /^[ \t\uFEFF]*TILT[ \t]*=(.*)$/im

const afterTilt = (
  text: string,
): { readonly words: Words; readonly tilts: boolean; readonly year: number } => {
  const found = tiltLine.exec(text)
  if (found === null) {
    const first = text.slice(0, longestFirstLine)
    const end = first.search(/[\r\n]/)
    throw new PhotometricFault(
      { start: 0, end: end < 0 ? first.length : end },
      'this is no photometric file (LM-63): it has no line TILT=',
      'name a file of the kind that ends in .ies: a heading, keywords, TILT=NONE, then numbers',
    )
  }
  const start = found.index
  const end = start + found[0].length
  const named = found[1]!.trim()
  const says = named.toUpperCase()
  if (says !== 'NONE' && says !== 'INCLUDE')
    throw new PhotometricFault(
      { start, end },
      says === ''
        ? 'TILT= says nothing'
        : `TILT= names another file, ${quoted(named)}, and only this one is read`,
      'write TILT=NONE, or TILT=INCLUDE with the numbers in the lines after it, as the standard asks since 2019',
    )
  const heading = /^[\s\uFEFF]*(?:IES(?:NA)?)[:\s]*(?:LM-63-)?(\d+)/i.exec(text.slice(0, start))
  // Files of 1986 have no heading, and those of 1991 write the year short.
  const stated = heading === null ? 86 : Number(heading[1])
  const year = stated < 86 ? 2000 + stated : stated < 100 ? 1900 + stated : stated
  return { words: new Words(text, end), tilts: says === 'INCLUDE', year }
}

/** 1 to 3 by LM-63: upright, along the horizontal angle 0, along 90. */
const lamps: Readonly<Record<'across' | 'up', readonly Tilt['lamp'][]>> = {
  across: ['upright', 'along width', 'along height'],
  up: ['upright', 'along height', 'along width'],
}

/** The rest is told by the photometric type, which follows. */
const readTilt = (words: Words): ((type: Type) => Tilt) => {
  const lies = whole(words, 'how the lamp lies (1 to 3)', 1, 3).value
  const count = whole(words, 'the number of tilt angles', 1, Number.MAX_SAFE_INTEGER)
  const left = words.left()
  if (2 * count.value > left)
    throw new PhotometricFault(
      count,
      `TILT=INCLUDE states ${count.text} angles with a factor each, and ${left} numbers follow`,
      'the count is that of the angles',
    )
  const { values: angles } = readAngles(words, count.value, 'tilt', 0, 180)
  const factors = new Float64Array(angles.length)
  for (let i = 0; i < factors.length; i++) {
    const factor = words.number(`the factor of tilt angle ${i + 1}`)
    if (factor.value < 0 || factor.value > largest.factor)
      throw outOfRange(factor, 'the factor of a tilt angle', '0 or more')
    factors[i] = factor.value
  }
  return (type) => ({ lamp: lamps[lengthwise(type)][lies - 1]!, angles, factors })
}

// ---------------------------------------------------------------- numbers

const outOfRange = (word: Word, what: string, range: string): PhotometricFault =>
  new PhotometricFault(word, `${what} cannot be ${word.text}`, `it is ${range}`)

const whole = (words: Words, what: string, least: number, most: number): Numbered => {
  const word = words.number(what)
  if (!Number.isInteger(word.value) || word.value < least || word.value > most)
    throw outOfRange(
      word,
      what,
      most > largest.lamps ? `a whole number, ${least} or more` : `a whole number from ${least} to ${most}`,
    )
  return word
}

const positive = (words: Words, what: string): number => {
  const word = words.number(what)
  if (word.value <= 0 || word.value > largest.factor) throw outOfRange(word, what, 'over 0')
  return word.value
}

/** In metres. */
const extent = (words: Words, what: string, unit: number): number => {
  const word = words.number(what)
  if (Math.abs(word.value * unit) > largest.opening)
    throw outOfRange(word, what, `at most ${largest.opening} m`)
  return word.value * unit
}

/** Before anything is made for them: the file must hold as many numbers as its counts ask for. */
const mustFit = (words: Words, verticals: Numbered, horizontals: Numbered): void => {
  const [v, h] = [verticals.value, horizontals.value]
  const asked = v + h + v * h
  const left = words.left()
  if (asked !== left)
    throw new PhotometricFault(
      { start: verticals.start, end: horizontals.end },
      `${verticals.text} vertical and ${horizontals.text} horizontal angles with their candela take ${asked > Number.MAX_SAFE_INTEGER ? 'more numbers than a file holds' : `${asked} numbers`}, and ${left} follow`,
      'either a count is wrong, or numbers are missing or too many',
    )
}

const readCandela = (words: Words, rows: number, planes: number, factor: number): Float64Array => {
  const candela = new Float64Array(rows * planes)
  for (let i = 0; i < candela.length; i++) {
    const word = words.number('a candela value')
    const value = word.value * factor
    if (word.value < 0 || value > largest.candela) throw outOfRange(word, 'a candela value', '0 or more')
    candela[i] = value
  }
  return candela
}
