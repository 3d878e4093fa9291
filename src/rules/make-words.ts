import type { Plan } from '../language/plan.js'
import { toneWord } from '../picture/tone.js'
import { type LengthStyle, lengthStyle, writeLength } from '../units/length.js'
import { writeFNumber } from '../units/marks.js'
import { writePower } from '../units/power.js'
import type { FNumber, Metres, PowerShare, Seconds, Stops } from '../units/quantity.js'
import { inDegrees } from '../units/quantity.js'
import { writeShutter } from '../units/shutter.js'
import { writeStops } from '../units/stops.js'
import type { Words } from './words.js'

/** From so many metres on nobody counts in centimetres. */
const far = 10

/** Words in the units that the plan's author writes. */
export const makeWords = (plan: Plan): Words => {
  const style = styleOf(plan)
  const grain = style === 'metric' ? 0.01 : 0.0254
  const toGrain = (metres: number): Metres => (Math.round(metres / grain) * grain) as Metres
  return {
    length: (metres) => writeLength(toGrain(metres), style),
    small: (metres) =>
      Math.abs(metres) >= far
        ? writeLength(toGrain(metres), style)
        : style === 'metric'
          ? `${tenths(metres * 100)} cm`
          : `${tenths(metres / 0.0254)} in`,
    fine: (metres) => {
      const tenth = Math.round(metres * (style === 'metric' ? 1000 : 10 / 0.0254)) / 10
      return `${tenth} ${style === 'metric' ? 'cm' : 'in'}`
    },
    f: (fNumber) => writeFNumber(fNumber as FNumber),
    stops: (value) => stopsText(value, 'always'),
    howMany: (value) => stopsText(Math.abs(value), 'negative'),
    shutter: (seconds) => writeShutter(seconds as Seconds),
    power: (share, step = 1 / 3) => writePower(share as PowerShare, step as Stops),
    tone: (srgb) => `${toneWord(srgb)} (sRGB ${Math.round(srgb)})`,
    degrees: (radians) => `${Math.round(inDegrees(radians))} deg`,
    against: (value, what) =>
      Math.abs(value) < 0.05
        ? `level with ${what}`
        : `${stopsText(Math.abs(value), 'negative')} ${value > 0 ? 'over' : 'under'} ${what}`,
    list: (names) =>
      names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`,
  }
}

/** Feet and inches as the camera's distance is written; metres and centimetres otherwise. */
const styleOf = (plan: Plan): LengthStyle => {
  if (plan.lengths === 'metric') return 'metric'
  const written = plan.places.written('/camera/at/distance')
  return written !== undefined && lengthStyle(written) === 'primes' ? 'primes' : 'feet'
}

/** Whole from three up, one decimal below. */
const tenths = (value: number): string =>
  Math.abs(value) >= 2.95 ? String(Math.round(value)) : String(Math.round(value * 10) / 10)

/** Quarters are what headroom is stated in. */
const quarters = new Map([
  [0.25, '1/4'],
  [0.75, '3/4'],
])

const stopsText = (value: number, sign: 'always' | 'negative'): string => {
  // What rounds to nothing is not a little less or more than nothing.
  const kept = Math.abs(value) < 0.05 ? 0 : value
  const quarter = quarters.get(Math.abs(kept))
  if (quarter === undefined) return writeStops(kept as Stops, sign)
  return `${kept < 0 ? '-' : sign === 'always' ? '+' : ''}${quarter} stop`
}
