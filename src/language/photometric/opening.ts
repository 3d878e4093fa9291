/**
 * The luminous opening by LM-63's signs: a width and a length under zero are diameters, so that −0.3 −0.3 0 is a circle and
 * −0.3 −0.6 0 an ellipse (before 2002 a circle was −0.3 0 0); a cylinder that lies has one of both under zero and is a
 * rectangle when seen along the axis. ANSI/IES LM-63-02 as described in public readers of the format (Ashdown 1998;
 * Radiance's ies2rad); the standard's own text was not read.
 */
import { metres } from '../../units/quantity.js'
import type { LuminousOpening } from './table.js'

/** Smaller is not stated, or is a line's other side. */
const least = 0.001
/** Wide enough for a line of light to have an area. */
const line = 0.01

/**
 * @param width along horizontal angle 90, metres
 * @param length along horizontal angle 0, metres
 */
export const openingOf = (width: number, length: number): LuminousOpening | undefined => {
  const across = Math.abs(length)
  const up = Math.abs(width)
  if (across < least && up < least) return undefined
  if (width < 0 && length <= 0)
    return { outline: 'disc', width: metres(across < least ? up : across), height: metres(up) }
  return {
    outline: 'rectangle',
    width: metres(Math.max(across, line)),
    height: metres(Math.max(up, line)),
  }
}
