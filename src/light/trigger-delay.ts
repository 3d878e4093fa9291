/** What a trigger takes from the closing of the camera's contact to the flash. */
import type { Light } from '../language/plan.js'
import type { Seconds } from '../units/quantity.js'

export type TriggerKind = NonNullable<Light['trigger']>['by']

/** At most. From memory. */
const latest: Readonly<Record<TriggerKind, number>> = {
  cable: 0,
  radio: 0.0005,
  'basic radio': 0.0015,
  optical: 0.0001,
  'optical groups': 0.003,
}

/** Nothing is added where the plan does not say what fires the flash. */
export const latestOf = ({ trigger }: Light): Seconds =>
  (trigger === undefined ? 0 : latest[trigger.by]) as Seconds

/** Anything up to the latest is taken to be as likely. One standard deviation under the middle, as a share of the latest. */
export const likelyLeast = 0.5 - 1 / Math.sqrt(12)
