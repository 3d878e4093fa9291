/** Strength of continuous lights: `1200 lx at 1 m`, `5000 lm`. */
import { decimal, gap, isBare, reader, refusal, space, whole } from './grammar.js'
import { lengthBody, metresOf, withinLongest } from './length.js'
import { type Parsed, parsed, refused } from './parsed.js'
import { as, type Lux, type Metres } from './quantity.js'

export const luxPattern = whole(`(${decimal})${gap}(?:lx|lux)${space}at${space}(${lengthBody})`)
export const lumensPattern = whole(`(${decimal})${gap}(?:lm|lumens?)`)

export interface ReadLux {
  readonly lux: Lux
  readonly distance: Metres
}

/** On its axis at a distance; up to a million lux. */
export const readLux: (text: string) => Parsed<ReadLux> = reader(
  luxPattern,
  (text, length) => {
    const lux = Number(text)
    if (!(lux > 0 && lux <= 1e6)) return refused('illuminance runs from over 0 lx to 1000000 lx')
    const distance = withinLongest(metresOf(length!))
    if (!distance.ok) return distance
    return distance.value > 0
      ? parsed({ lux: as<Lux>(lux), distance: distance.value })
      : refused('illuminance is taken at a distance over zero')
  },
  (text) => (isBare(text) ? `write ${text.replace(/^[-+\u2212]/u, '')} lx at 1 m` : 'write 1200 lx at 1 m'),
)

/** Luminous flux in lumens; up to a million. */
export const readLumens: (text: string) => Parsed<number> = reader(
  lumensPattern,
  (text) => {
    const value = Number(text)
    return value > 0 && value <= 1e6
      ? parsed(value)
      : refused('luminous flux runs from over 0 lm to 1000000 lm')
  },
  refusal({
    what: 'luminous flux',
    examples: '5000 lm',
    pattern: lumensPattern,
    bare: (text) => `write ${text} lm`,
  }),
)
