/** The exposure that several lights give together on one receptor. */
import type { Figure } from '../light/figure.js'
import { uncertainties } from '../light/how-sure.js'
import { sumFigure, sumLight } from '../light/sum-light.js'
import type { LuxSeconds } from '../units/quantity.js'
import type { Bounce } from './bounced.js'
import type { ByPath, Exposed, LightPath } from './computed-set.js'
import type { StrengthOf } from './prior-strengths.js'
import type { Probe } from './transport.js'

/** lx·s: less than a camera at its highest speed and widest opening records by 15 stops, and less than stray light brings. */
const black = 1e-9

const none: readonly string[] = []

/** `unshaded`: all ways, were nothing in the way of what comes straight. */
export type Ways = readonly LightPath[] | 'unshaded'

/**
 * Lights add in lux-seconds. Undefined where none is known or nothing arrives.
 *
 * @param shaded lights of which nothing straight arrives
 */
export const exposed = (
  probe: Probe,
  lights: readonly string[],
  strengthOf: StrengthOf,
  ways?: Ways,
  shaded: readonly string[] = none,
): Exposed | undefined => {
  const parts = partsOf(ways)
  const { straight, thrown } = parts
  const byLight = new Map<string, LuxSeconds>()
  let unsure = 0
  for (const name of lights) {
    const strength = strengthOf(name)
    if (strength === undefined) continue
    let response = straight === undefined || shaded.includes(name) ? 0 : probe[straight](name)
    if (thrown.length > 0) {
      const bounce = probe.bounce(name)
      let back = 0
      for (const way of thrown) back += bounce[way]
      response += back
      unsure += strength.candelaSeconds * bounceU(bounce, back)
    }
    byLight.set(name, (strength.candelaSeconds * response) as LuxSeconds)
  }
  const luxSeconds = sumLight(byLight)
  return luxSeconds > black
    ? new Sum(byLight, luxSeconds, unsure, probe, strengthOf, parts, shaded)
    : undefined
}

/** A class, because a set makes hundreds, and most are asked for the light alone. */
class Sum implements Exposed {
  private knownFigure: Figure | undefined
  private knownPaths: ByPath | undefined

  constructor(
    readonly byLight: ReadonlyMap<string, LuxSeconds>,
    readonly luxSeconds: LuxSeconds,
    private readonly unsure: number,
    private readonly probe: Probe,
    private readonly strengthOf: StrengthOf,
    private readonly parts: Parts,
    private readonly shaded: readonly string[],
  ) {}

  get figure(): Figure {
    this.knownFigure ??= sumFigure(this.byLight, this.unsure / this.luxSeconds)
    return this.knownFigure
  }
  get byPath(): ByPath {
    this.knownPaths ??= pathsOf(this.probe, this.byLight.keys(), this.strengthOf, this.parts, this.shaded)
    return this.knownPaths
  }
}

type Thrown = Exclude<LightPath, 'direct'>

interface Parts {
  readonly straight: 'direct' | 'clear' | undefined
  readonly thrown: readonly Thrown[]
}

const allThrown: readonly Thrown[] = ['room', 'panels', 'backdrop']
const all: Parts = { straight: 'direct', thrown: allThrown }
const unshaded: Parts = { straight: 'clear', thrown: allThrown }

const partsOf = (ways: Ways | undefined): Parts =>
  ways === undefined
    ? all
    : ways === 'unshaded'
      ? unshaded
      : {
          straight: ways.includes('direct') ? 'direct' : undefined,
          thrown: allThrown.filter((way) => ways.includes(way)),
        }

/** What surfaces throw back is known less well than what comes straight: exposure by which `back` of it may be off. */
const bounceU = ({ guessed }: Bounce, back: number): number => {
  const assumed = Math.min(guessed, back)
  return uncertainties.bounce * (back - assumed) + uncertainties.bounceGuessed * assumed
}

const pathsOf = (
  probe: Probe,
  lights: Iterable<string>,
  strengthOf: StrengthOf,
  { straight, thrown }: Parts,
  shaded: readonly string[],
): ByPath => {
  const sums = { direct: 0, room: 0, panels: 0, backdrop: 0 }
  for (const name of lights) {
    const strength = strengthOf(name)?.candelaSeconds ?? 0
    if (straight !== undefined && !shaded.includes(name)) sums.direct += strength * probe[straight](name)
    for (const way of thrown) sums[way] += strength * probe.bounce(name)[way]
  }
  return sums as ByPath
}
