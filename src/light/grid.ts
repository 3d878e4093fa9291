/** What grids let through, as a share of what leaves without them: 1 straight ahead, nothing beyond their cut-off. */
import type { GridPattern } from './source.js'

/**
 * Half-transmission of a honeycomb in terms of its cut-off, tangent over tangent: two circles of the cell's mouth,
 * shifted against each other, share half their area at this share of their diameter.
 */
const halfShift = 0.4039727532995172

/** Share of its area that a circle has in common with itself shifted by `shift` of its diameter. */
const sharedCircle = (shift: number): number =>
  shift >= 1 ? 0 : (2 / Math.PI) * (Math.acos(shift) - shift * Math.sqrt(1 - shift * shift))

/** Tangent of the angle beyond which the grid passes nothing. */
export const tanCutOff = (grid: GridPattern): number =>
  grid.kind === 'egg-crate' ? grid.tanCutOff : Math.tan(grid.halfPeak / 2) / halfShift

/**
 * Transmission in the direction whose angles to either side of the axis have tangents `tx` and `ty`.
 * Egg crate: max(0, 1 − tan θ/tan cut-off) for each axis, the walls of thin square cells seen end on. Honeycomb: the
 * same for round cells, half at half its half-peak angle.
 */
export const gridTransmission = (grid: GridPattern, tx: number, ty: number): number => {
  if (grid.kind === 'egg-crate')
    return Math.max(0, 1 - Math.abs(tx) / grid.tanCutOff) * Math.max(0, 1 - Math.abs(ty) / grid.tanCutOff)
  return sharedCircle(Math.sqrt(tx * tx + ty * ty) / tanCutOff(grid))
}
