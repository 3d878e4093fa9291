/** Places and subjects as a photographer says them. */
import type { Plan } from '../language/plan.js'

/** Whom the exposure is for. */
export const whom = ({ subject }: Pick<Plan, 'subject'>): string =>
  subject.kind === 'person' ? 'the face' : subject.kind === 'group' ? 'the group' : 'the object'

/** A point of the set in words: `the face` for a person's subject point; a point of the author's own by its name. */
export const pointText = (plan: Pick<Plan, 'subject'>, name: string): string =>
  name === 'subject' ? whom(plan) : name === 'backdrop' ? 'the backdrop' : name
