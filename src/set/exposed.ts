/** The exposure that several lights give together on one receptor. */
import { sumFigure, sumLight } from '../light/sum-light.js'
import { lazy } from '../scene/lazy.js'
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
  const byPath = lazy(() => paths(probe, byLight.keys(), strengthOf, ways))
  return {
    luxSeconds,
    figure: sumFigure(byLight),
    byLight,
    get byPath() {
      return byPath()
    },
  }
}

const paths = (
  probe: Probe,
  lights: Iterable<string>,
  strengthOf: StrengthOf,
  ways: readonly LightPath[] | undefined,
): Exposed['byPath'] => {
  const sums: Record<LightPath, number> = { direct: 0, room: 0, panels: 0, backdrop: 0 }
  for (const name of lights) {
    const strength = strengthOf(name)?.candelaSeconds ?? 0
    if (ways === undefined) sums.direct += strength * probe.response(name)
    for (const way of ways ?? []) sums[way] += strength * probe.by(name, way)
  }
  return sums as Exposed['byPath']
}
