/** From a plan's text to its meter card, or to what keeps it from being understood. */
import { checkReading } from '../checker/check-plan.js'
import type { CheckedPlan } from '../checker/finding.js'
import type { FilePort } from '../language/port.js'
import { readPlan } from '../language/read-plan.js'
import { computeSet } from '../set/compute-set.js'
import { type AskedPlace, type MeterCard, meterCard } from './meter.js'

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
