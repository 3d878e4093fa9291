/** Speeds: `2 m/s`. */
import { decimal, gap, reader, refusal, whole } from './grammar.js'
import { parsed, refused } from './parsed.js'

export const pattern = whole(`(${decimal})${gap}(m/s|cm/s|km/h|ft/s)`)

const perSecond: Readonly<Record<string, number>> = {
  'm/s': 1,
  'cm/s': 0.01,
  'km/h': 1 / 3.6,
  'ft/s': 0.3048,
}

/** Metres per second, up to 1000. */
export const readSpeed = reader<number>(
  pattern,
  (text, unit) => {
    const value = Number(text) * perSecond[unit!]!
    return value <= 1000 ? parsed(value) : refused('speeds go up to 1000 m/s')
  },
  refusal({
    what: 'a speed',
    examples: '2 m/s',
    pattern,
    bare: (text) => `a speed needs its unit: write ${text.replace(/^[-+\u2212]/u, '')} m/s`,
  }),
)
