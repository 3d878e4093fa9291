/** The exposure that several lights give together on one receptor. */
import { sumFigure, sumLight } from '../light/sum-light.js'
import type { LuxSeconds } from '../units/quantity.js'
import type { Exposed, LightPath } from './computed-set.js'
import type { StrengthOf } from './prior-strengths.js'
import type { Probe } from './transport.js'

/**
 * Lights add in lux-seconds. Undefined where none is known or nothing arrives.
 *
 * @param ways past what stands between; without them what comes straight, were nothing in between
 */
export const exposed = (
  probe: Probe,
  lights: readonly string[],
  strengthOf: StrengthOf,
  ways?: readonly LightPath[],
): Exposed | undefined => {
  const byLight = new Map<string, LuxSeconds>()
  for (const name of lights) {
    const strength = strengthOf(name)
    if (strength === undefined) continue
    const response =
      ways === undefined ? probe.response(name) : ways.reduce((sum, way) => sum + probe.by(name, way), 0)
    byLight.set(name, (strength.candelaSeconds * response) as LuxSeconds)
  }
  const luxSeconds = sumLight(byLight)
  if (!(luxSeconds > 0)) return undefined
  return { luxSeconds, figure: sumFigure(byLight), byLight }
}
