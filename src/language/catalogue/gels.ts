/**
 * Conversion gels as they are sold, for naming one that comes near a shift. Shifts are for light through one sheet, mired, warmer
 * positive; losses in stops. Makers differ by some mired.
 */
export interface GelRow {
  readonly name: string
  /** Mired. */
  readonly shift: number
  /** Stops. */
  readonly loss: number
  /** `sourced`: the shift was read in a public source, see the check values of colour; else from memory. */
  readonly from: 'sourced' | 'memory'
}

export const gelTable: readonly GelRow[] = [
  { name: 'full CTO', shift: 159, loss: 2 / 3, from: 'sourced' },
  { name: '1/2 CTO', shift: 109, loss: 1 / 2, from: 'memory' },
  { name: '1/4 CTO', shift: 64, loss: 1 / 3, from: 'memory' },
  { name: '1/8 CTO', shift: 26, loss: 1 / 6, from: 'memory' },
  { name: '1/8 CTB', shift: -10, loss: 1 / 4, from: 'sourced' },
  { name: '1/4 CTB', shift: -35, loss: 1 / 2, from: 'sourced' },
  { name: '1/2 CTB', shift: -80, loss: 1, from: 'sourced' },
  { name: 'full CTB', shift: -137, loss: 2, from: 'sourced' },
]
