/** Numbers as reports write them. No locale: the same plan gives the same bytes everywhere. */

/** `+0.4`, `-1.1`, `0`: signed unless it rounds to zero. */
export const signed = (value: number, digits: number): string => {
  const text = Math.abs(value).toFixed(digits)
  return Number(text) === 0 ? text : `${value < 0 ? '-' : '+'}${text}`
}

const words = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
]

/** `no warnings`, `one warning`, `13 warnings`. */
export const count = (number: number, one: string, many = `${one}s`): string =>
  `${words[number] ?? number} ${number === 1 ? one : many}`

/** `a`, `a and b`, `a, b and c`. */
export const listed = (items: readonly string[]): string =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`

/**
 * JSON with at most six significant digits, and null where a figure is infinite or undefined. Whole numbers stay whole:
 * a line or an offset is no measurement.
 */
export const json = (value: unknown): string =>
  `${JSON.stringify(value, (_, one: unknown) => (typeof one === 'number' ? figure(one) : one), 2)}\n`

const figure = (value: number): number | null =>
  !Number.isFinite(value) ? null : Number.isSafeInteger(value) ? value + 0 : Number(value.toPrecision(6))
