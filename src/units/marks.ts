/**
 * Marked f-numbers and shutter times, and the exact values that they stand for. f/5.6 is 2^(5/2) and 1/125 s is 2^-7 s:
 * ISO 517 (apertures) and ISO 516 (shutters) round the marks and keep the exact values in whole steps of 2.
 *
 * The full series of both, the third-stop f-numbers from f/1 to f/22 and the half-stop ones from f/1 to f/16 agree with
 * the public sources that the tests name; all other numbers in these tables are from memory.
 */
import { apertureValue, timeValue } from './apex.js'
import { type FNumber, fNumber, type Iso, iso, type Seconds, type Stops, seconds, stops } from './quantity.js'

/** Marks by their place in a series. Aperture value Av is 2·log₂ N. */
const fullFNumbers = [0.5, 0.7, 1, 1.4, 2, 2.8, 4, 5.6, 8, 11, 16, 22, 32, 45, 64, 90, 128]
const halfFNumbers = [
  0.5, 0.6, 0.7, 0.85, 1, 1.2, 1.4, 1.7, 2, 2.4, 2.8, 3.3, 4, 4.8, 5.6, 6.7, 8, 9.5, 11, 13, 16, 19, 22, 27,
  32, 38, 45, 54, 64, 76, 90, 107, 128,
]
const thirdFNumbers = [
  0.5, 0.56, 0.63, 0.7, 0.8, 0.9, 1, 1.1, 1.2, 1.4, 1.6, 1.8, 2, 2.2, 2.5, 2.8, 3.2, 3.5, 4, 4.5, 5, 5.6, 6.3,
  7.1, 8, 9, 10, 11, 13, 14, 16, 18, 20, 22, 25, 29, 32, 36, 40, 45, 51, 57, 64, 72, 80, 90, 102, 114, 128,
]

/** Denominators of marked times, from 1 s down. */
const fullDenominators = [1, 2, 4, 8, 15, 30, 60, 125, 250, 500, 1000, 2000, 4000, 8000, 16000]
const halfDenominators = [
  1, 1.5, 2, 3, 4, 6, 8, 10, 15, 20, 30, 45, 60, 90, 125, 180, 250, 350, 500, 750, 1000, 1500, 2000, 3000,
  4000, 6000, 8000, 12000, 16000,
]
const thirdDenominators = [
  1, 1.3, 1.6, 2, 2.5, 3, 4, 5, 6, 8, 10, 13, 15, 20, 25, 30, 40, 50, 60, 80, 100, 125, 160, 200, 250, 320,
  400, 500, 640, 800, 1000, 1250, 1600, 2000, 2500, 3200, 4000, 5000, 6400, 8000, 10000, 12800, 16000,
]
/** Marked times of one second and longer. */
const fullSeconds = [1, 2, 4, 8, 15, 30, 60]
const halfSeconds = [1, 1.5, 2, 3, 4, 6, 8, 12, 15, 24, 30, 45, 60]
const thirdSeconds = [1, 1.3, 1.6, 2, 2.5, 3.2, 4, 5, 6, 8, 10, 13, 15, 20, 25, 30, 40, 50, 60]

/** Cameras show the thirds under a second either way: 1/3 or 0.3 s. */
const decimalThirds: readonly (readonly [number, number])[] = [
  [0.8, -1 / 3],
  [0.6, -2 / 3],
  [0.4, -4 / 3],
  [0.3, -5 / 3],
  [0.7, -1 / 2],
]

export type Series = 'full' | 'half' | 'third'

/** The marked f-numbers of a series, f/0.5 to f/128. */
export const markedFNumbers = (series: Series): readonly number[] =>
  ({ full: fullFNumbers, half: halfFNumbers, third: thirdFNumbers })[series]

/** The marked times under one second as denominators, 1 to 16000, and those of one second and up in seconds. */
export const markedTimes = (
  series: Series,
): { readonly denominators: readonly number[]; readonly seconds: readonly number[] } =>
  ({
    full: { denominators: fullDenominators, seconds: fullSeconds },
    half: { denominators: halfDenominators, seconds: halfSeconds },
    third: { denominators: thirdDenominators, seconds: thirdSeconds },
  })[series]

/** A mark is recognised whatever the last digit of the division that made it. */
const same = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-6 * b

/** Place in a series that starts at f/0.5 (Av −2); the third series wins where a mark is in both. */
const markedValue = (marked: number): number | undefined => {
  const third = thirdFNumbers.findIndex((mark) => same(marked, mark))
  if (third >= 0) return third / 3 - 2
  const half = halfFNumbers.findIndex((mark) => same(marked, mark))
  return half >= 0 ? half / 2 - 2 : undefined
}

/**
 * The exact f-number that a marked one stands for: 2^(Av/2) at whole thirds or halves of Av. f/1.2 and f/13 are in both
 * series and are taken as thirds. A number that is no mark is taken literally.
 */
export const exactFNumber = (marked: number): FNumber => {
  const av = markedValue(marked)
  return fNumber(av === undefined ? marked : 2 ** (av / 2))
}

/**
 * The exact time that a marked one stands for, a power of 2 at whole thirds or halves. Where a mark is in both series
 * (1/3, 1/6, 1/10, 1/20, 6 s) it is taken as a third. A time that is no mark is taken literally.
 */
export const exactShutter = (marked: Seconds): Seconds => {
  const decimal = decimalThirds.find(([mark]) => same(marked, mark))
  if (decimal !== undefined) return seconds(2 ** decimal[1])
  for (const [denominators, longer, step] of [
    [thirdDenominators, thirdSeconds, 3],
    [halfDenominators, halfSeconds, 2],
  ] as const) {
    const under = denominators.findIndex((mark) => same(marked, 1 / mark))
    if (under >= 0) return seconds(2 ** (-under / step))
    const over = longer.findIndex((mark) => same(marked, mark))
    if (over >= 0) return seconds(2 ** (over / step))
  }
  return marked
}

/** The nearest mark of a series, and how far the exact value lies above it (a smaller opening) in stops. */
export const nearestFNumber = (
  n: FNumber,
  series: Series = 'third',
): { readonly marked: number; readonly exact: FNumber; readonly over: Stops } => {
  const marks = markedFNumbers(series)
  const step = { full: 1, half: 2, third: 3 }[series]
  const av = apertureValue(n)
  const place = Math.min(Math.max(Math.round((av + 2) * step), 0), marks.length - 1)
  const exactAv = place / step - 2
  return { marked: marks[place]!, exact: fNumber(2 ** (exactAv / 2)), over: stops(av - exactAv) }
}

/** The marked number of the third series that stands for an exact f-number to within 0.05 stop; else undefined. */
export const markedFNumber = (n: FNumber): number | undefined => {
  const nearest = nearestFNumber(n)
  return Math.abs(nearest.over) <= 0.05 ? nearest.marked : undefined
}

/** The nearest marked time of a series. */
export const nearestShutter = (time: Seconds, series: Series = 'third'): Seconds => {
  const { denominators, seconds: longer } = markedTimes(series)
  const step = { full: 1, half: 2, third: 3 }[series]
  const place = Math.round(-timeValue(time) * step)
  return seconds(
    place >= 0
      ? longer[Math.min(place, longer.length - 1)]!
      : 1 / denominators[Math.min(-place, denominators.length - 1)]!,
  )
}

/** The trade writes f/5.0 beside f/4 and f/8. */
const writeMark = (marked: number): string => (marked === 5 ? '5.0' : String(marked))

/**
 * As meters show it: the mark at or under it in third stops, and tenths of a stop beyond (`f/5.6`, `f/5.0 + 0.2`). Off by
 * at most 0.05 stop. Outside f/0.5 to f/128 the plain number to two digits.
 */
export const writeFNumber = (n: FNumber): string => {
  const marked = markedFNumber(n)
  if (marked !== undefined) return `f/${writeMark(marked)}`
  const av = apertureValue(n) + 2
  const thirds = Math.floor(av * 3)
  const mark = thirdFNumbers[thirds]
  if (mark === undefined || thirds === thirdFNumbers.length - 1) return `f/${Number(n.toPrecision(2))}`
  const tenths = Math.round((av - thirds / 3) * 10)
  return `f/${writeMark(mark)} + 0.${tenths}`
}

/** Marked ISO speeds in third stops; from memory. */
export const markedSpeeds: readonly number[] = [
  25, 32, 40, 50, 64, 80, 100, 125, 160, 200, 250, 320, 400, 500, 640, 800, 1000, 1250, 1600, 2000, 2500,
  3200, 4000, 5000, 6400, 8000, 10000, 12800, 16000, 20000, 25600,
]

/** The marked speed nearest in stops. Speeds are reckoned as marked: their marks are not snapped. */
export const nearestSpeed = (speed: Iso): Iso => {
  const place = Math.round(Math.log2(speed / 100) * 3) + markedSpeeds.indexOf(100)
  return iso(markedSpeeds[Math.min(Math.max(place, 0), markedSpeeds.length - 1)]!)
}
