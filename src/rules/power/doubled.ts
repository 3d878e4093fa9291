/** Whether a second unit can stand for half of a light's power. More than two nobody sets up as one light. */
import type { Light } from '../../language/plan.js'

/** Metres: of larger fronts no two stand where one did. Common practice, no source. */
const largest = 1

/** Two heads go into one umbrella; two fronts go side by side while they are small. Common practice, no source. */
export const canBeDoubled = ({ modifier }: Light): boolean =>
  modifier === undefined ||
  modifier.kind.includes('umbrella') ||
  Math.max(modifier.size.width, modifier.size.height) <= largest
