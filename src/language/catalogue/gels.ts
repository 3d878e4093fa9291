/**
 * Gels as they are sold: for writing one by its name, and for naming what comes near a shift. Figures are of light through one
 * sheet; several sheets add up. Makers differ by some mired.
 */
export interface GelRow {
  readonly name: string
  /** Mired, warmer positive. */
  readonly shift: number
  /** In the 1960 diagram, green positive. */
  readonly duv: number
  /** Stops. */
  readonly loss: number
  /** `sourced`: the shift was read in a public source, see the check values of colour; else from memory. */
  readonly from: 'sourced' | 'memory'
}

const converts = (name: string, shift: number, loss: number, from: GelRow['from']): GelRow => ({
  name,
  shift,
  duv: 0,
  loss,
  from,
})

/** 3/4 CTO is +124 of some makers, +131 of others. */
export const gelTable: readonly GelRow[] = [
  converts('full CTO', 159, 2 / 3, 'sourced'),
  converts('3/4 CTO', 131, 0.6, 'memory'),
  converts('1/2 CTO', 109, 1 / 2, 'memory'),
  converts('1/4 CTO', 64, 1 / 3, 'memory'),
  converts('1/8 CTO', 26, 1 / 6, 'memory'),
  converts('1/8 CTB', -10, 1 / 4, 'sourced'),
  converts('1/4 CTB', -35, 1 / 2, 'sourced'),
  converts('1/2 CTB', -80, 1, 'sourced'),
  converts('3/4 CTB', -113, 1.5, 'memory'),
  converts('full CTB', -137, 2, 'sourced'),
]

const green = (name: string, duv: number, loss: number): GelRow => ({
  name,
  shift: 0,
  duv,
  loss,
  from: 'memory',
})

/** A full one is a dense 30 of green or magenta, on daylight some 0.02 in the 1960 diagram. */
export const greenTable: readonly GelRow[] = [
  green('full plus-green', 0.02, 0.4),
  green('1/2 plus-green', 0.01, 0.25),
  green('1/4 plus-green', 0.005, 0.15),
  green('1/8 plus-green', 0.0025, 0.1),
  green('1/8 minus-green', -0.0025, 0.2),
  green('1/4 minus-green', -0.005, 0.3),
  green('1/2 minus-green', -0.01, 0.5),
  green('full minus-green', -0.02, 0.8),
]

/** Every gel that has a name. */
export const allGels: readonly GelRow[] = [...gelTable, ...greenTable]

export const gelNames: readonly string[] = allGels.map(({ name }) => name)

/** Undefined for what is no gel's name. */
export const gelRow = (name: string): GelRow | undefined => allGels.find((row) => row.name === name)
