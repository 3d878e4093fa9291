/** Figures that would read alike, told apart. */
import type { Words } from './words.js'

/** A figure past its limit and the limit, in stops; with hundredths where tenths hide that they differ. */
export const apart = (value: number, limit: number, words: Words): readonly [string, string] => {
  const written = [words.howMany(value), words.howMany(limit)] as const
  const fine = [value, limit].map((one) => Math.abs(one).toFixed(2))
  return written[0] !== written[1] || fine[0] === fine[1] ? written : [`${fine[0]} stops`, `${fine[1]} stops`]
}
