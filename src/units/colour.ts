/** Colour of light: `5600 K`; shifts of it: `+159 mired`. */
import { decimal, gap, minus, reader, refusal, toSigned, whole } from './grammar.js'
import { parsed, refused } from './parsed.js'
import { as, type Kelvin, type Mired } from './quantity.js'

export const kelvinPattern = whole(`(${decimal})${gap}[Kk]`)
export const miredPattern = whole(`(\\+|${minus})?${gap}(${decimal})${gap}(?:mireds?|MK⁻¹)`)

/** From 1000 K to 40000 K. */
export const readKelvin = reader<Kelvin>(
  kelvinPattern,
  (text) => {
    const value = Number(text)
    return value >= 1000 && value <= 40_000
      ? parsed(as<Kelvin>(value))
      : refused('colour temperatures run from 1000 K to 40000 K')
  },
  refusal({
    what: 'a colour temperature',
    examples: '5600 K',
    pattern: kelvinPattern,
    bare: (text) => `write ${text.replace(/^[-+\u2212]/u, '')} K`,
  }),
)

/** A shift, warmer positive; up to 500 either way. */
export const readMired = reader<Mired>(
  miredPattern,
  (sign, text) => {
    const value = toSigned(sign, text!)
    return Math.abs(value) <= 500 ? parsed(as<Mired>(value)) : refused('shifts go up to 500 mired either way')
  },
  refusal({
    what: 'a shift of colour',
    examples: '+159 mired',
    pattern: miredPattern,
    bare: (text) => `write ${text} mired`,
  }),
)
