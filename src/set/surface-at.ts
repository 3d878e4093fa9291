import type { Plan, Surface } from '../language/plan.js'
import type { ScenePoint } from '../scene/scene.js'

/** What a point lies on, for its tone: the backdrop and its sweep, the table, the room's floor; undefined in free air or on the subject. */
export const surfaceAt = (plan: Plan, on: ScenePoint['on']): Surface | undefined => {
  const sweep = plan.backdrop?.sweep === undefined ? undefined : plan.backdrop.surface
  switch (on) {
    case 'backdrop':
      return plan.backdrop?.surface
    case 'table':
      return sweep ?? plan.subject.standsOn?.surface
    case 'floor':
      return (plan.subject.standsOn === undefined ? sweep : undefined) ?? plan.room?.floor
    default:
      return undefined
  }
}

/** A glossy or clear subject shows what is around it: how light that is, no reflectance tells. */
export const subjectMirrors = ({ subject }: Plan): boolean =>
  subject.finish === 'glossy' || subject.finish === 'clear'

/** Share of the light that a point's surface gives back; undefined where the plan does not say, or it mirrors instead. */
export const reflectanceAt = (plan: Plan, on: ScenePoint['on']): number | undefined => {
  if (on !== 'person' && on !== 'object') return surfaceAt(plan, on)?.reflectance
  return subjectMirrors(plan) ? undefined : plan.subject.reflectance
}
