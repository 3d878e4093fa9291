/** Power settings: `1/4`, `1/4 + 0.3`, `1/4 - 1/3`, `full`, `50 %`, `250 Ws`, `dial 7.3`. */
import {
  decimal,
  fraction,
  gap,
  isBare,
  minus,
  reader,
  refusal,
  space,
  toNumber,
  toSigned,
  whole,
} from './grammar.js'
import { type Parsed, parsed, refused } from './parsed.js'
import { as, type PowerShare, powerShare, type Stops, type WattSeconds } from './quantity.js'

const stopWord = `(?:${gap}stops?)?`

export const pattern = whole(
  `(?:(full|${fraction})(?:${gap}(\\+|${minus})${gap}(${fraction}|${decimal})${stopWord})?|(${decimal})${gap}%|(${decimal})${gap}(?:Ws|ws|WS|J)|dial${space}(${decimal}))`,
)

export type ReadPower =
  /** Linear in energy; may lie over 1, which no unit gives and a rule tells. */
  | { readonly kind: 'share'; readonly share: PowerShare }
  /** The kit says the dial's top and step. */
  | { readonly kind: 'dial'; readonly dial: number }
  | { readonly kind: 'energy'; readonly energy: WattSeconds }

const share = (value: number): Parsed<ReadPower> => {
  if (value === 0) return refused('a light that gives nothing is written off: true')
  return value >= 2 ** -16 && value <= 64
    ? parsed({ kind: 'share', share: powerShare(value) })
    : refused('power runs from 1/65536 to 64 times full')
}

const otherwise = refusal({
  what: 'power',
  examples: '1/4, 1/4 + 0.3, full, 50 %, 250 Ws or dial 7.3',
  pattern,
  bare: (text) => {
    const value = Number(text)
    if (value === 1) return 'write full, or 1/1'
    if (value > 0 && value < 1) {
      const under = Math.round(1 / value)
      const percent = `${Number((value * 100).toPrecision(6))} %`
      return Math.abs(value * under - 1) < 1e-9 ? `write 1/${under}, or ${percent}` : `write ${percent}`
    }
    return `power needs to say of what: write ${/^[1-9][0-9]{0,3}$/u.test(text) ? `1/${text}` : '1/4'}, ${text} %, ${text} Ws or dial ${text}`
  },
})

/** The tenths and thirds are taken as written; `snapToStep` knows the unit. */
export const readPower = reader<ReadPower>(
  pattern,
  (base, sign, beyond, percent, energy, dial) => {
    if (base !== undefined) {
      const steps = beyond === undefined ? 0 : toSigned(sign, beyond)
      if (Math.abs(steps) > 12) return refused('what is added to a power is at most 12 stops')
      return share((base === 'full' ? 1 : toNumber(base)) * 2 ** steps)
    }
    if (percent !== undefined) return share(Number(percent) / 100)
    if (energy !== undefined) {
      const value = Number(energy)
      return value > 0 && value <= 100_000
        ? parsed({ kind: 'energy', energy: as<WattSeconds>(value) })
        : refused('energy of a flash runs from over 0 Ws to 100000 Ws')
    }
    const value = Number(dial)
    return value <= 100 ? parsed({ kind: 'dial', dial: value }) : refused('a dial goes up to 100')
  },
  (text) => otherwise(isBare(text) ? text.replace(/^[-+\u2212]/u, '') : text),
)

/**
 * On a unit that steps in thirds, `+ 0.3` and `+ 0.7` mean thirds: the nearest step, where it lies within 0.05 stop, else
 * the value as it is (a rule tells settings that lie off the steps).
 *
 * @param step of the unit in stops; 0 for one that is set without steps
 */
export const snapToStep = (value: PowerShare, step: Stops): PowerShare => {
  if (step <= 0) return value
  const nearest = Math.round(Math.log2(value) / step) * step
  return Math.abs(nearest - Math.log2(value)) <= 0.05 ? powerShare(2 ** nearest) : value
}

/** How an author writes power. */
export type PowerNotation =
  | { readonly as: 'fraction' }
  | { readonly as: 'percent' }
  | { readonly as: 'energy'; readonly full: WattSeconds }
  /** The top of the dial is full power; a whole number is one stop. */
  | { readonly as: 'dial'; readonly top: number }

const tidy = (value: number, digits: number): string => String(Number(value.toPrecision(digits)))

/**
 * Writes a share of full power on the nearest step: `1/8 + 0.3`, `full`, `50 %`, `250 Ws`, `dial 7.3`.
 *
 * @param step of the unit in stops; 0 writes to a tenth
 */
export const writePower = (
  value: PowerShare,
  step: Stops,
  notation: PowerNotation = { as: 'fraction' },
): string => {
  const stepped = step > 0 ? step : 0.1
  const under = Math.round(Math.log2(value) / stepped) * stepped
  switch (notation.as) {
    case 'percent':
      return `${tidy(2 ** under * 100, 3)} %`
    case 'energy':
      return `${tidy(2 ** under * notation.full, 3)} Ws`
    case 'dial':
      return `dial ${(notation.top + under).toFixed(1)}`
    default: {
      // 1e-6 keeps whole stops whole after the multiplication by a third.
      const base = Math.min(Math.floor(under + 1e-6), 0)
      const tenths = Math.round((under - base) * 10)
      const mark = base === 0 ? 'full' : `1/${2 ** -base}`
      return tenths === 0 ? mark : `${mark} + ${tenths / 10}`
    }
  }
}
