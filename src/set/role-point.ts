import type { Light } from '../language/plan.js'

/** Where a light's job is done, and where it is metered unless its `meters` says otherwise. */
export const rolePoint = (light: Light): string => {
  switch (light.role) {
    case 'backdrop':
      return 'backdrop'
    case 'rim':
    case 'kicker':
      return 'subject-back'
    case 'hair':
      return 'hair'
    case 'effect':
      return light.aim.at === 'point' ? light.aim.point : 'subject'
    default:
      return 'subject'
  }
}
