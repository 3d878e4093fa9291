/**
 * The library. Plans in as text, findings and figures out as data: no console, no process, no files but through the
 * port that the caller gives.
 */
import { type CheckOptions, checkReading } from './checker/check-plan.js'
import type { CheckedPlan } from './checker/finding.js'
import type { FilePort } from './language/port.js'
import { readPlan } from './language/read-plan.js'

export type { CheckOptions } from './checker/check-plan.js'
export type { Certainty, CheckedPlan, Finding, NotChecked } from './checker/finding.js'
export type { Mistake } from './language/mistake.js'
export type { Plan } from './language/plan.js'
export type { FilePort } from './language/port.js'
export { readPlan } from './language/read-plan.js'
export { rules } from './rules/index.js'
export type { Advice, Family, Level, Measured, Rule } from './rules/rule.js'
export { computeSet } from './set/compute-set.js'
export type { ComputedSet, HeldReading, MeterAsk, MeterFigure, UnusedReading } from './set/computed-set.js'
export { type AskedPlace, type MeterCard, meterCard } from './tasks/meter.js'
export type { Place } from './text/place.js'

export interface CheckPlanOptions extends CheckOptions {
  /** The name that places carry, and that base, kit and room paths are relative to. */
  readonly file?: string
  /** How to read the files that the plan names; without it, naming one is an error finding. */
  readonly port?: FilePort
}

/** Reads, computes and judges one plan. What is wrong with the text is a finding, never an exception. */
export const checkPlan = (text: string, options: CheckPlanOptions = {}): CheckedPlan => {
  const { file = 'plan.yaml', port = noFiles, ...rest } = options
  return checkReading(readPlan(file, text, port), rest)
}

const noFiles: FilePort = {
  read: (path) => ({ ok: false, says: `${path} cannot be read: only the plan itself was given` }),
}
