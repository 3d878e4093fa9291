/** Shutter times: `1/125`, `1/125 s`, `0.5 s`, `2 s`. */
import { decimal, gap, isBare, reader, refusal, toNumber, whole } from './grammar.js'
import { exactShutter } from './marks.js'
import { type Parsed, parsed, refused } from './parsed.js'
import { type Seconds, seconds } from './quantity.js'

const unit = `(?:s|sec|seconds?)`
const over = `[0-9]{1,4}/[1-9][0-9]{0,5}(?:\\.[0-9]{1,3})?`

export const pattern = whole(`(?:(${over})(?:${gap}${unit})?|(${decimal})${gap}(s|sec|seconds?|ms))`)

export interface ReadShutter {
  /** Snapped to its exact third- or half-stop value, for exposure. */
  readonly exact: Seconds
  /** As marked, for sync, flicker and motion. */
  readonly marked: Seconds
}

const otherwise = refusal({
  what: 'a shutter time',
  examples: '1/125, 0.5 s or 2 s',
  pattern,
  bare: (text) =>
    /^[0-9]{2,6}$/u.test(text) ? `write 1/${text}` : `write ${text.replace(/^[-+\u2212]/u, '')} s`,
})

/** From 1/100000 s to an hour. */
export const readShutter: (text: string) => Parsed<ReadShutter> = reader(
  pattern,
  (share, plain, plainUnit) => {
    const value = share !== undefined ? divided(share) : toNumber(plain!) / (plainUnit === 'ms' ? 1000 : 1)
    if (!(value >= 1e-5 && value <= 3600)) return refused('shutter times run from 1/100000 s to an hour')
    return parsed({ exact: exactShutter(seconds(value)), marked: seconds(value) })
  },
  (text) => (isBare(text) && Number(text) === 0 ? 'write 1/125, 0.5 s or 2 s' : otherwise(text)),
)

const divided = (text: string): number => {
  const [top, bottom] = text.split('/') as [string, string]
  return Number(top) / Number(bottom)
}

const tidy = (value: number): string => String(Number(value.toPrecision(4)))

/** `1/125`, `0.5 s`, `2 s`: the mark as cameras show it, or the plain time. */
export const writeShutter = (time: Seconds): string => {
  const denominator = 1 / time
  if (denominator >= 3.5) {
    const rounded = Math.round(denominator)
    return Math.abs(rounded - denominator) < 0.005 * denominator && rounded < 1e6
      ? `1/${rounded}`
      : `1/${Number(denominator.toFixed(1))}`
  }
  return `${tidy(time)} s`
}
