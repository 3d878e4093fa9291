/** Differences of exposure: `+1 stop`, `2/3 stop`, `-1.5 stops`; ranges of them: `1/2..1 stop`. */
import { gap, minus, number, reader, refusal, toSigned, whole } from './grammar.js'
import { type Parsed, parsed, refused } from './parsed.js'
import { type Stops, stops } from './quantity.js'

const unit = `(?:stops?|EV)`
const sign = `(\\+|${minus})?`

export const pattern = whole(`${sign}${gap}(${number})${gap}${unit}`)
export const rangePattern = whole(
  `${sign}${gap}(${number})${gap}(?:(?:${unit}${gap})?(?:\\.\\.|to|–)${gap}${sign}${gap}(${number})${gap})?${unit}`,
)

const inRange = (value: number): Parsed<Stops> =>
  Math.abs(value) <= 32 ? parsed(stops(value)) : refused('stops go up to 32')

/** Stops, −32 to 32. */
export const readStops = reader<Stops>(
  pattern,
  (signed, value) => inRange(toSigned(signed, value!)),
  refusal({
    what: 'a difference in stops',
    examples: '+1 stop, 2/3 stop or -1.5 stops',
    pattern,
    bare: (text) => `write ${text} ${Math.abs(Number(text)) <= 1 ? 'stop' : 'stops'}`,
  }),
)

export interface StopsRange {
  readonly from: Stops
  readonly to: Stops
}

/** A range, the smaller end first; a single value is a range of no width. */
export const readStopsRange = reader<StopsRange>(
  rangePattern,
  (signA, a, signB, b) => {
    const from = inRange(toSigned(signA, a!))
    if (!from.ok) return from
    if (b === undefined) return parsed({ from: from.value, to: from.value })
    const to = inRange(toSigned(signB, b))
    if (!to.ok) return to
    return from.value <= to.value
      ? parsed({ from: from.value, to: to.value })
      : refused('write the smaller end of a range first: 1/2..1 stop')
  },
  refusal({
    what: 'a range of stops',
    examples: '1/2..1 stop',
    pattern: rangePattern,
    bare: (text) => `write ${text} ${Math.abs(Number(text)) <= 1 ? 'stop' : 'stops'}`,
  }),
)

/**
 * Writes stops to a third where they are one, else to a tenth: `2/3 stop`, `1 1/3 stops`, `-0.4 stop`.
 *
 * @param sign `always` also writes the plus
 */
export const writeStops = (value: Stops, sign: 'always' | 'negative' = 'negative'): string => {
  const size = Math.abs(value)
  const thirds = Math.round(size * 3)
  const exact = Math.abs(size - thirds / 3) < 0.01
  const wholes = Math.floor(thirds / 3)
  const rest = thirds % 3
  const figure = exact
    ? `${wholes > 0 || rest === 0 ? wholes : ''}${wholes > 0 && rest > 0 ? ' ' : ''}${rest > 0 ? `${rest}/3` : ''}`
    : String(Number(size.toFixed(1)))
  const zero = figure === '0'
  const mark = zero ? '' : value < 0 ? '-' : sign === 'always' ? '+' : ''
  const one = !zero && (exact ? thirds <= 3 : Number(figure) <= 1)
  return `${mark}${figure} ${one ? 'stop' : 'stops'}`
}
