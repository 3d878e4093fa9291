/** Seeded chance, and evenly spread sequences. */

/** Even on 0 to 1 from a 32-bit state: a counter, then mixed by multiplications. The same numbers from the same seed. */
export class Chance {
  private state: number
  constructor(seed: number) {
    this.state = seed | 0
  }
  next(): number {
    this.state = (this.state + 0x6d2b79f5) | 0
    let x = Math.imul(this.state ^ (this.state >>> 15), this.state | 1)
    x = (x + Math.imul(x ^ (x >>> 7), x | 61)) ^ x
    return ((x ^ (x >>> 14)) >>> 0) / 2 ** 32
  }
}

/**
 * Steps of an additive recurrence that fills the unit cube of so many dimensions evenly: powers of 1/g, where
 * g^(dimensions + 1) = g + 1 (the golden ratio, for one dimension). A random shift of each run keeps it unbiased.
 */
export const evenSteps = (dimensions: number): Float64Array => {
  let g = 1.5
  for (let i = 0; i < 60; i++) g = (1 + g) ** (1 / (dimensions + 1))
  return Float64Array.from({ length: dimensions }, (_, i) => g ** -(i + 1))
}
