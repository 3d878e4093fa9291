/** The exposure that several lights give together on one receptor. */
import { uncertainties } from '../light/how-sure.js'
import { sumFigure, sumLight } from '../light/sum-light.js'
import { lazy } from '../scene/lazy.js'
import type { LuxSeconds } from '../units/quantity.js'
import type { Bounce } from './bounced.js'
import type { ByPath, Exposed, LightPath } from './computed-set.js'
import type { StrengthOf } from './prior-strengths.js'
import type { Probe } from './transport.js'

const allWays: readonly LightPath[] = ['direct', 'room', 'panels', 'backdrop']

/** `unshaded`: all ways, were nothing in the way of what comes straight. */
export type Ways = readonly LightPath[] | 'unshaded'

/** Lights add in lux-seconds. Undefined where none is known or nothing arrives. */
export const exposed = (
  probe: Probe,
  lights: readonly string[],
  strengthOf: StrengthOf,
  ways: Ways = allWays,
): Exposed | undefined => {
  const { straight, thrown } = parts(ways)
  const byLight = new Map<string, LuxSeconds>()
  let unsure = 0
  for (const name of lights) {
    const strength = strengthOf(name)
    if (strength === undefined) continue
    let response = straight === undefined ? 0 : probe[straight](name)
    if (thrown.length > 0) {
      const bounce = probe.bounce(name)
      const back = thrown.reduce((sum, way) => sum + bounce[way], 0)
      response += back
      unsure += strength.candelaSeconds * bounceU(bounce, back)
    }
    byLight.set(name, (strength.candelaSeconds * response) as LuxSeconds)
  }
  const luxSeconds = sumLight(byLight)
  if (!(luxSeconds > 0)) return undefined
  const byPath = lazy(() => pathsOf(probe, byLight.keys(), strengthOf, ways))
  return {
    luxSeconds,
    figure: sumFigure(byLight, unsure / luxSeconds),
    byLight,
    get byPath() {
      return byPath()
    },
  }
}

type Thrown = Exclude<LightPath, 'direct'>

const parts = (ways: Ways): { straight: 'direct' | 'clear' | undefined; thrown: readonly Thrown[] } => ({
  straight: ways === 'unshaded' ? 'clear' : ways.includes('direct') ? 'direct' : undefined,
  thrown: (ways === 'unshaded' ? allWays : ways).filter((way): way is Thrown => way !== 'direct'),
})

/** What surfaces throw back is known less well than what comes straight: exposure by which `back` of it may be off. */
const bounceU = ({ guessed }: Bounce, back: number): number => {
  const assumed = Math.min(guessed, back)
  return uncertainties.bounce * (back - assumed) + uncertainties.bounceGuessed * assumed
}

const pathsOf = (probe: Probe, lights: Iterable<string>, strengthOf: StrengthOf, ways: Ways): ByPath => {
  const { straight, thrown } = parts(ways)
  const sums = { direct: 0, room: 0, panels: 0, backdrop: 0 }
  for (const name of lights) {
    const strength = strengthOf(name)?.candelaSeconds ?? 0
    if (straight !== undefined) sums.direct += strength * probe[straight](name)
    for (const way of thrown) sums[way] += strength * probe.bounce(name)[way]
  }
  return sums as ByPath
}
