/** The exposure that several lights give together on one receptor. */
import { sumFigure, sumLight } from '../light/sum-light.js'
import type { LuxSeconds } from '../units/quantity.js'
import type { Exposed } from './computed-set.js'
import type { StrengthOf } from './prior-strengths.js'
import type { Probe } from './transport.js'

/** Lights add in lux-seconds. Undefined where none is known or nothing arrives. */
export const exposed = (
  probe: Probe,
  lights: readonly string[],
  strengthOf: StrengthOf,
): Exposed | undefined => {
  const byLight = new Map<string, LuxSeconds>()
  for (const name of lights) {
    const strength = strengthOf(name)
    if (strength !== undefined)
      byLight.set(name, (strength.candelaSeconds * probe.response(name)) as LuxSeconds)
  }
  const luxSeconds = sumLight(byLight)
  return luxSeconds > 0 ? { luxSeconds, figure: sumFigure(byLight), byLight } : undefined
}
