import { apertureValue, timeValue } from '../../../src/units/apex.js'
import {
  exactFNumber,
  exactShutter,
  markedFNumbers,
  markedSpeeds,
  markedTimes,
  nearestFNumber,
  type Series,
} from '../../../src/units/marks.js'
import { fNumber, seconds } from '../../../src/units/quantity.js'
import type { Evaluate, Section } from '../check-values.js'

const exposureValue = (n: number, time: number): number =>
  apertureValue(fNumber(n)) + timeValue(seconds(time))

/** The marks of a series within the range of those expected. */
const within = (marks: readonly number[], expected: unknown): number[] => {
  const list = expected as readonly number[]
  return marks.filter((mark) => mark >= Math.min(...list) && mark <= Math.max(...list))
}

/** The exact value that the program gives for the mark at a place of the series over f/1. */
const exactAt = (series: Series, steps: number): { readonly f_number: number } => {
  const marks = markedFNumbers(series)
  return { f_number: exactFNumber(marks[marks.indexOf(1) + steps]!) }
}

/** f/1.2 and f/13 are taken for third-stop marks where a mark is read, so half stops are asked for as such. */
const halfAt: Evaluate = (inputs) => {
  const marks = markedFNumbers('half')
  return {
    f_number: nearestFNumber(fNumber(marks[marks.indexOf(1) + inputs.half_stops_from_f1]!), 'half').exact,
  }
}

export const section1: Section = {
  section: '1',
  evaluators: {
    'exp.ev.': (inputs) => ({ ev: exposureValue(inputs.f_number, inputs.time_s) }),
    'exp.tv.': (inputs) => ({ tv: timeValue(seconds(inputs.time_s)) }),
    'exp.ev100.': (inputs) => ({
      ev100: exposureValue(inputs.f_number, inputs.time_s) - Math.log2(inputs.iso / 100),
    }),
    'exp.av.': (inputs) => ({ av: apertureValue(fNumber(inputs.f_number)) }),
    'exp.av.nominal.': (inputs) => ({ av: apertureValue(exactFNumber(inputs.f_number)) }),
    'exp.fseries.': (inputs, value) => ({
      f_numbers: within(
        markedFNumbers(String(inputs.series).split(',')[0] as Series),
        value.expected.f_numbers,
      ),
    }),
    'exp.fexact.third.': (inputs) => exactAt('third', inputs.third_stops_from_f1),
    'exp.fexact.half.': halfAt,
    'exp.ferr.': (inputs) => ({
      error_stops:
        apertureValue(fNumber(inputs.nominal_f_number)) -
        apertureValue(exactFNumber(inputs.nominal_f_number)),
    }),
    'exp.tseries.': (inputs, value) => {
      const marks = markedTimes(inputs.series)
      const { denominators, seconds: longer } = value.expected
      return {
        denominators: within(marks.denominators, denominators),
        ...(longer === undefined ? {} : { seconds: within(marks.seconds, longer).reverse() }),
      }
    },
    'exp.terr.': (inputs) => ({
      error_stops:
        timeValue(exactShutter(seconds(inputs.nominal_time_s))) - timeValue(seconds(inputs.nominal_time_s)),
    }),
    'exp.iso.series': (_inputs, value) => ({ iso: within(markedSpeeds, value.expected.iso) }),
  },
  waiting: {
    'exp.sv.': 'speeds are reckoned in lux-seconds, not as APEX speed values',
    'exp.bv.': 'no luminance of a scene is reckoned as an APEX value',
    'exp.iso.third.': 'speeds are taken as marked, not snapped to exact thirds',
    'exp.iso.deg.': 'speeds are arithmetic; no logarithmic speed is read or written',
    'exp.iso.fromdeg.': 'speeds are arithmetic; no logarithmic speed is read or written',
  },
}
