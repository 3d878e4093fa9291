/** Apertures: `f/5.6`, `F5.6`, `f 5.6`, and tenths of a stop as meters show them, `f/5.6 + 0.3`. */
import {
  decimal,
  fraction,
  gap,
  isBare,
  minus,
  reader,
  toNumber,
  toSigned,
  whole,
  withPoint,
} from './grammar.js'
import { exactFNumber } from './marks.js'
import { parsed, refused } from './parsed.js'
import { type FNumber, fNumber } from './quantity.js'

/** Holds no capturing group. */
export const apertureBody = `[fFƒ]${gap}/?${gap}${decimal}(?:${gap}(?:\\+|${minus})${gap}(?:${fraction}|${decimal}))?`
export const pattern = whole(
  `[fFƒ]${gap}/?${gap}(${decimal})(?:${gap}(\\+|${minus})${gap}(${fraction}|${decimal}))?`,
)

/** The exact f-number: the mark snapped, then the tenths or thirds of a stop added. */
export const readAperture = reader<FNumber>(
  pattern,
  (mark, sign, beyond) => {
    const marked = Number(mark)
    const steps = beyond === undefined ? 0 : toSigned(sign, beyond)
    if (marked < 0.3 || marked > 1000) return refused('apertures run from f/0.3 to f/1000')
    if (Math.abs(steps) >= 2)
      return refused('what is added to an aperture is less than two stops: write the nearest mark')
    return parsed(fNumber(exactFNumber(marked) * 2 ** (steps / 2)))
  },
  (text) => {
    const pointed = withPoint(text)?.replace(/^[fFƒ]? {0,4}\/? {0,4}/u, 'f/')
    if (pointed !== undefined && new RegExp(pattern, 'u').test(pointed))
      return `write ${pointed} with a point`
    if (isBare(text) && toNumber(text.replace(/^[-+\u2212]/u, '')) > 0)
      return `an aperture is written f/${text.replace(/^[-+\u2212]/u, '')}`
    return 'an aperture is written f/5.6, or f/5.6 + 0.3 with tenths of a stop'
  },
)
