/**
 * The luminous opening by LM-63's signs, seen along the light's axis. Lengths under zero are diameters: −0.3 −0.3 0 is a
 * circle and −0.3 −0.6 0 an ellipse, with a height a cylinder or a sphere. Before 2002 a circle was −0.3 0 0, and of an
 * ellipse one length was under zero. Cylinders that lie are rectangles when seen so; in 1995 their height alone was the
 * diameter. ANSI/IES LM-63-02 and -19 and their forerunners as Radiance's ies2rad reads them; the standards' own text was
 * not read.
 */
import { metres } from '../../units/quantity.js'
import type { LuminousOpening } from './table.js'

/** Smaller is not stated, or is a line's other side. */
const least = 0.001
/** Wide enough for a line of light to have an area. */
const line = 0.01

export interface Lengths {
  /** Along horizontal angle 90, metres. */
  readonly width: number
  /** Along horizontal angle 0, metres. */
  readonly length: number
  /** Along the axis, metres. */
  readonly height: number
}

export const openingOf = ({ width, length, height }: Lengths, year: number): LuminousOpening | undefined => {
  const across = Math.abs(length)
  const up = Math.abs(width)
  if (across < least && up < least) return undefined
  const round = (width < 0 && length <= 0) || (width < 0 !== length < 0 && (height >= 0 || year === 1995))
  if (round && up >= least)
    return { outline: 'disc', width: metres(across < least ? up : across), height: metres(up) }
  const side = (own: number, other: number): number =>
    own < least && other > 0 && height < 0 ? Math.abs(height) : own
  return {
    outline: 'rectangle',
    width: metres(Math.max(side(across, width), line)),
    height: metres(Math.max(side(up, length), line)),
  }
}
