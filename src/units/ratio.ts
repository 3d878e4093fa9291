/** Lighting ratios: `2:1`. */
import { decimal, gap, isBare, reader, whole } from './grammar.js'
import { type Parsed, parsed, refused } from './parsed.js'

export const pattern = whole(`(${decimal})${gap}:${gap}(${decimal})`)

/** The first over the second: `3:1` is 3. Both over zero, from 1:1000 to 1000:1. */
export const readRatio: (text: string) => Parsed<number> = reader(
  pattern,
  (a, b) => {
    const ratio = Number(a) / Number(b)
    return ratio >= 0.001 && ratio <= 1000 ? parsed(ratio) : refused('ratios run from 1:1000 to 1000:1')
  },
  (text) => (isBare(text) && Number(text) > 0 ? `write '${text}:1'` : "a ratio is written '2:1'"),
)

/** `2:1`, `2.5:1`, without the quotes that it wants in YAML. */
export const writeRatio = (ratio: number): string =>
  ratio >= 1 ? `${Number(ratio.toPrecision(3))}:1` : `1:${Number((1 / ratio).toPrecision(3))}`

/** Beyond this a figure tells nothing: the shadow side is black. */
const most = 64

/** As a computed ratio is told, to a tenth: `2.8:1`, `12:1`, `over 64:1`. */
export const roundRatio = (ratio: number): string =>
  ratio > most ? `over ${most}:1` : `${ratio < 10 ? Math.round(ratio * 10) / 10 : Math.round(ratio)}:1`
