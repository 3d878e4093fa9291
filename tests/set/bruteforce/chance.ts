/** Seeded chance, for sampling what is not known. */

/** Even on 0 to 1, a 32-bit generator (Weyl sequence, then mixed); the same numbers from the same seed. */
export const evenly = (seed: number): (() => number) => {
  let state = seed >>> 0
  return () => {
    state = (state + 0x9e3779b9) >>> 0
    let x = state
    x = Math.imul(x ^ (x >>> 16), 0x21f0aaad)
    x = Math.imul(x ^ (x >>> 15), 0x735a2d97)
    return ((x ^ (x >>> 15)) >>> 0) / 2 ** 32
  }
}

/** Normal, mean 0, deviation 1 (Box and Muller). */
export const normally = (seed: number): (() => number) => {
  const even = evenly(seed)
  return () => Math.sqrt(-2 * Math.log(1 - even())) * Math.cos(2 * Math.PI * even())
}

export const deviation = (values: readonly number[]): number => {
  const mean = values.reduce((sum, x) => sum + x, 0) / values.length
  return Math.sqrt(values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (values.length - 1))
}
