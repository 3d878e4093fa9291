/** Sets drawn at random, in rooms: what is tuned on the sets of our own must hold on others too. */
import { checkReading } from '../../src/checker/check-plan.js'
import type { Plan } from '../../src/language/plan.js'
import type { FilePort } from '../../src/language/port.js'
import { readPlan } from '../../src/language/read-plan.js'
import { planText } from '../bench/plan-texts.js'

const noFiles: FilePort = { read: () => ({ ok: false, says: 'there are no files' }) }

/** Gear that stands through a wall or through other gear is a fault of the plan, and no light that can be judged. */
const impossible: ReadonlySet<string> = new Set(['outside-room', 'in-collision'])

/** The first so many that can stand; without ambient light, which the tracer does not know. */
export const drawnPlans = (count: number): readonly (readonly [string, Plan])[] => {
  const plans: (readonly [string, Plan])[] = []
  // Every second one is thrown together, and most of those are in a room.
  for (let number = 1; plans.length < count; number += 2) {
    const text = planText(number)
    const reading = readPlan('drawn.plan.yaml', text, noFiles)
    const { plan } = reading
    if (plan?.room === undefined || plan.ambient !== undefined) continue
    if (checkReading(reading, {}).findings.some(({ rule }) => impossible.has(rule))) continue
    plans.push([`drawn-${number}`, plan])
  }
  return plans
}
