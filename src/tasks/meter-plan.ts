/** From a plan's text to its meter card, or to what keeps it from being understood. */
import { checkReading } from '../checker/check-plan.js'
import type { CheckedPlan } from '../checker/finding.js'
import type { FilePort } from '../language/port.js'
import { readPlan } from '../language/read-plan.js'
import { computeSet } from '../set/compute-set.js'
import { type AskedPlace, type MeterCard, meterCard } from './meter.js'
import { type Taken, takeReading } from './take-reading.js'

export type Metered =
  | { readonly ok: true; readonly card: MeterCard }
  | { readonly ok: false; readonly checked: CheckedPlan }

export const meterPlan = (
  file: string,
  text: string,
  port: FilePort,
  asked: readonly AskedPlace[],
): Metered => {
  const reading = readPlan(file, text, port)
  return reading.plan === undefined
    ? { ok: false, checked: checkReading(reading, {}) }
    : { ok: true, card: meterCard(computeSet(reading.plan), asked) }
}

export type TakenAll =
  | { readonly ok: true; readonly text: string; readonly readings: readonly string[] }
  | { readonly ok: false; readonly checked: CheckedPlan }
  | { readonly ok: false; readonly says: string }

/** Writes several readings, or none where one of them cannot be. */
export const takeReadings = (
  file: string,
  before: string,
  port: FilePort,
  said: readonly string[],
): TakenAll => {
  let text = before
  const readings: string[] = []
  for (const one of said) {
    const { plan } = readPlan(file, text, port)
    if (plan === undefined) return { ok: false, checked: checkReading(readPlan(file, text, port), {}) }
    const taken: Taken = takeReading(plan, text, one)
    if (!taken.ok) return taken
    text = taken.text
    readings.push(taken.reading)
  }
  return { ok: true, text, readings }
}
