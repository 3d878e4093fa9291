/**
 * Colour temperatures on the scale on which filters add and steps look alike: mired, 10⁶ over kelvin. Warmer is more.
 */
import { as, type Kelvin, type Mired } from '../../units/quantity.js'

export const miredOf = (kelvin: number): Mired => as<Mired>(1e6 / kelvin)

export const kelvinOf = (mired: number): Kelvin => as<Kelvin>(1e6 / mired)

/** What the language can say, 1000 to 40000 K; a filter that would lead beyond ends there. */
const warmest = 1000
const coldest = 25

export const withinReach = (mired: number): Mired => as<Mired>(Math.min(warmest, Math.max(coldest, mired)))

/** A colour temperature through a filter of this shift, mired. */
export const throughFilter = (kelvin: number, shift: number): Kelvin =>
  kelvinOf(withinReach(miredOf(kelvin) + shift))

/** The shift that makes one colour temperature of another, mired. */
export const shiftBetween = (from: number, to: number): Mired => as<Mired>(1e6 / to - 1e6 / from)
