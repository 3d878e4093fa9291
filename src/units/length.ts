/** Lengths: `2.4 m`, `240 cm`, `900 mm`, `8 ft`, `6 ft 6 in`, `6'6"`, `5 1/2 ft`, `30 in`. */
import { gap, isBare, number, reader, refusal, toNumber, whole } from './grammar.js'
import { type Parsed, parsed, refused } from './parsed.js'
import { type Metres, metres } from './quantity.js'

const metric = `${number}${gap}(?:mm|cm|m|metres?|meters?)`
const foot = `(?:ft|feet|foot|['’′])`
const inch = `(?:inch(?:es)?|in|["”″])`
const feet = `${number}${gap}${foot}(?:${gap}${number}${gap}${inch})?`
const inches = `${number}${gap}${inch}`

/** For use inside other patterns; holds no capturing group. */
export const lengthBody = `(?:${metric}|${feet}|${inches})`
export const pattern = whole(`(${lengthBody})`)

/** The longest length that a plan may hold. */
export const longest = metres(1000)

const foot_m = 0.3048
const inch_m = 0.0254

/** Metres of one unit's worth, by the unit as written. */
const inUnit = (value: number, unit: string): number => {
  if (unit === 'mm') return value / 1000
  if (unit === 'cm') return value / 100
  if (unit.startsWith('m')) return value
  return unit.startsWith('f') || `'’′`.includes(unit) ? value * foot_m : value * inch_m
}

/** Metres of a text that `lengthBody` matches; a number without a unit takes `defaultUnit`. */
export const metresOf = (text: string, defaultUnit = 'm'): number => {
  const parts = text.split(/([a-z]+|['’′"”″])/u).map((part) => part.trim())
  let sum = 0
  for (let i = 0; i + 1 < Math.max(parts.length, 2); i += 2)
    if (parts[i] !== '') sum += inUnit(toNumber(parts[i]!), parts[i + 1] ?? defaultUnit)
  return sum
}

/** The first unit in a length as written: `ft` of `6 ft 6 in`. */
export const unitOf = (text: string): string | undefined => /[a-z]+|['’′"”″]/u.exec(text)?.[0]

export const withinLongest = (value: number): Parsed<Metres> =>
  value <= longest ? parsed(metres(value)) : refused('lengths go up to 1 km')

const refuse = refusal({
  what: 'a length',
  examples: '2.4 m, 85 mm, 8 ft or 6 ft 6 in',
  pattern,
  bare: (text) => `a length needs its unit: write ${text} m or ${text} ft`,
})

/** Metres, from zero to 1 km. */
export const readLength = reader(
  pattern,
  (text) => withinLongest(metresOf(text!)),
  (text) =>
    /^[-\u2212]/u.test(text) && !isBare(text)
      ? 'a length is not negative: write it without the sign, with left or right, front or behind for its side'
      : refuse(text.replace(/^[-+\u2212]/u, '')),
)

/** How an author writes lengths. `metric` is metres from 1 m up and centimetres below. */
export type LengthStyle = 'metric' | 'm' | 'cm' | 'mm' | 'feet' | 'primes' | 'in'

/** The style that a length is written in; undefined where it is none. */
export const lengthStyle = (text: string): LengthStyle | undefined => {
  if (!readLength(text).ok) return undefined
  const unit = unitOf(text)!
  if (unit === 'mm' || unit === 'cm') return unit
  if (unit.startsWith('m')) return 'm'
  if (unit.startsWith('f')) return 'feet'
  return `'’′`.includes(unit) ? 'primes' : 'in'
}

/** At most `digits` decimals, without trailing zeros. */
const short = (value: number, digits: number): string => String(Number(value.toFixed(digits)))

/**
 * Writes metres to the millimetre, or to a tenth of an inch, in a style.
 *
 * @param value metres, not negative
 */
export const writeLength = (value: Metres, style: LengthStyle = 'metric'): string => {
  switch (style) {
    case 'metric':
      return value < 0.9995 ? `${short(value * 100, 1)} cm` : `${short(value, 3)} m`
    case 'm':
      return `${short(value, 3)} m`
    case 'cm':
      return `${short(value * 100, 1)} cm`
    case 'mm':
      return `${short(value * 1000, 0)} mm`
    case 'in':
      return `${short(value / inch_m, 1)} in`
    default: {
      const tenths = Math.round((value / inch_m) * 10)
      const wholeFeet = Math.floor(tenths / 120)
      const rest = short((tenths - wholeFeet * 120) / 10, 1)
      if (style === 'primes') return rest === '0' ? `${wholeFeet}'` : `${wholeFeet}'${rest}"`
      if (wholeFeet === 0) return `${rest} in`
      return rest === '0' ? `${wholeFeet} ft` : `${wholeFeet} ft ${rest} in`
    }
  }
}

/** Rounds a distance to what is set by tape: 5 cm, or 2 in for an author who works in feet. */
export const roundForTape = (
  value: Metres,
  style: LengthStyle,
  towards: 'nearest' | 'less' | 'more' = 'nearest',
): Metres => {
  const inFeet = style === 'feet' || style === 'primes' || style === 'in'
  const steps = inFeet ? value / (2 * inch_m) : value / 0.05
  // A value on a step stays there, whatever the last digit of the division.
  const rounded =
    towards === 'nearest'
      ? Math.round(steps)
      : towards === 'less'
        ? Math.floor(steps + 1e-6)
        : Math.ceil(steps - 1e-6)
  return metres(inFeet ? rounded * 2 * inch_m : rounded / 20)
}
