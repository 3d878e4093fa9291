/** Casts and the gels against them, in the trade's words. */
import { gelTable } from '../../language/catalogue/gels.js'
import type { Apart } from '../../light/colour/mix.js'

/** A share of the whole from which on a part of a cast is worth a word. */
const worth = 0.4

/** `warmer`, `cooler`, `greener`, `warmer and greener`: of the first against the second. */
export const castText = ({ warmer, greener, mired }: Apart): string => {
  const plain = warmer > 0 ? 'warmer' : 'cooler'
  const green = greener > 0 ? 'greener' : 'more magenta'
  const temperature = Math.abs(warmer) / mired
  const tint = Math.sqrt(Math.max(0, 1 - temperature ** 2))
  if (tint < worth) return plain
  return temperature < worth ? green : `${plain} and ${green}`
}

export const miredText = (mired: number): string => `${Math.round(mired)} mired`

/** To tens; as colour temperatures are written. */
export const kelvinText = (kelvin: number): string => `${Math.round(kelvin / 10) * 10} K`

export interface GelAdvice {
  /** `a gel of +18 mired (1/8 CTO is +26)`. */
  readonly text: string
  /** Stops. */
  readonly loss: number
}

/** Less than this a gel does not mend, mired; nor does one that leaves more than half. */
const least = 5

/** A gel that shifts by about so much; undefined where none that is sold brings it half way. */
export const gelFor = (shift: number): GelAdvice | undefined => {
  if (Math.abs(shift) < least) return undefined
  const nearest = gelTable.reduce((best, one) =>
    Math.abs(one.shift - shift) < Math.abs(best.shift - shift) ? one : best,
  )
  if (Math.abs(nearest.shift - shift) > Math.abs(shift) / 2) return undefined
  return {
    text: `a gel of ${signed(shift)} mired (${nearest.name} is ${signed(nearest.shift)})`,
    loss: nearest.loss,
  }
}

const signed = (value: number): string => `${value < 0 ? '-' : '+'}${Math.abs(Math.round(value))}`
