/** Apertures and times on a scale of stops: the additive system of photographic exposure (APEX). */
import { type FNumber, type Seconds, type Stops, stops } from './quantity.js'

/** Av = 2·log₂ N: f/1 is 0, each stop less light is one more. */
export const apertureValue = (n: FNumber): Stops => stops(2 * Math.log2(n))

/** Tv = −log₂ t: 1 s is 0, each stop less light is one more. */
export const timeValue = (time: Seconds): Stops => stops(-Math.log2(time))
