/** Seeded draws: the same numbers for the same seed on every machine. */
export interface Draw {
  /** Even over [0, 1). */
  even(): number
  between(from: number, to: number): number
  of<T>(items: readonly T[]): T
  chance(share: number): boolean
  /** Normal, mean 0, standard deviation 1. */
  normal(): number
}

/** A 32-bit counter through a multiply-and-shift hash; normals by Box and Muller's method (both from memory). */
export const draws = (seed: number): Draw => {
  let state = seed >>> 0
  const even = (): number => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32
  }
  return {
    even,
    between: (from, to) => from + even() * (to - from),
    of: (items) => items[Math.floor(even() * items.length)]!,
    chance: (share) => even() < share,
    normal: () => Math.sqrt(-2 * Math.log(1 - even())) * Math.cos(2 * Math.PI * even()),
  }
}
