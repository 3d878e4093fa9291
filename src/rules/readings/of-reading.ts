/** What the rules on readings share: which lights a reading is of, and its words. */
import type { Light, MeterReading, Plan } from '../../language/plan.js'
import { pointer } from '../../text/place.js'
import type { Words } from '../words.js'

/** The lights that were read: those named, or all that are on. None for the ambient light. */
export const readLights = (plan: Plan, { of }: MeterReading): readonly Light[] => {
  if (of === 'ambient') return []
  const on = [...plan.lights.values()].filter((light) => light.on)
  return of === 'all' ? on : on.filter(({ name }) => of.includes(name))
}

export const readingPointer = (index: number, ...keys: readonly string[]): string =>
  pointer('readings', index, ...keys)

/** `key`, `key and fill`, `all lights`, `the ambient light`. */
export const whomText = ({ of }: MeterReading, words: Words): string =>
  of === 'all' ? 'all lights' : of === 'ambient' ? 'the ambient light' : words.list(of)

/** `f/5.6`, `sRGB 243`. */
export const readText = ({ read }: MeterReading, words: Words): string =>
  'reads' in read ? words.f(read.reads) : `sRGB ${read.records}`

/** `the reading of key at subject`. */
export const readingText = (reading: MeterReading, words: Words): string =>
  `the ${'reads' in reading.read ? 'reading' : 'test frame'} of ${whomText(reading, words)} at ${reading.at}`
