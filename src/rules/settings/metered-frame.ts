/** What an averaging meter makes of the frame: it takes the mean for middle grey. */
import type { Light } from '../../language/plan.js'
import { difference, type Figure } from '../../light/figure.js'
import { computeSet } from '../../set/compute-set.js'
import type { ComputedSet } from '../../set/computed-set.js'
import type { Stops } from '../../units/quantity.js'

/** What meters are set to: an 18 % card. */
const middleGrey = 0.18

/**
 * How differently cameras weigh the middle, the focus and faces: by a third of a stop, and by a third of what the frame
 * is off, one standard deviation in stops. Common practice, no source.
 */
const patternsDiffer = (over: number): number => Math.hypot(0.3, over / 3)

/** Of what an averaging meter is off, what one is that goes by the face or the focus. Common practice, no source. */
export const leastMisled = 1 / 3

/**
 * Stops of the frame's mean over middle grey when the key is exposed as wanted, and its uncertainty: by so much a camera
 * that takes the mean for grey exposes too little. Undefined where nothing tells how much light there is.
 */
export const frameOverGrey = (
  set: ComputedSet,
): { readonly stops: number; readonly u: number } | undefined => {
  const { haze, key, plan } = set
  if (set.unknown.length > 0 || haze === undefined || key === undefined || !(haze.frame > 0)) return undefined
  const stops = Math.log2(haze.frame / middleGrey) as Stops
  const mean: Figure = {
    stops,
    gradient: new Map([...haze.byLight].map(([light, part]) => [light, part / haze.mean])),
    variance: patternsDiffer(stops - key.overCamera.stops + plan.wanted.exposure) ** 2,
    rendering: 1,
  }
  const figure = difference(mean, key.overCamera)
  return { stops: figure.stops + plan.wanted.exposure, u: set.u(figure) }
}

/**
 * The set as a pre-flash shows it to the camera: flashes that are set by hand stay dark, and those that the camera
 * meters give what it is set to, unless the plan says what they give.
 */
export const asMetered = (set: ComputedSet, metered: readonly Light[]): ComputedSet => {
  const { plan } = set
  const lights = new Map(plan.lights)
  for (const light of plan.lights.values()) {
    if (!metered.includes(light)) {
      if (light.unit.kind === 'flash') lights.set(light.name, { ...light, on: false })
    } else if (set.unknown.includes(light))
      lights.set(light.name, { ...light, meters: { reads: plan.camera.aperture, at: undefined } })
  }
  return computeSet({ ...plan, lights })
}
