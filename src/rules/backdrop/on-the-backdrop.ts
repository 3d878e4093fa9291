/** What the backdrop rules share: which lights make the backdrop what it is, and how sure its tone is. */
import type { Light, Surface } from '../../language/plan.js'
import { difference, type Figure } from '../../light/figure.js'
import type { BackdropSample } from '../../set/backdrop-view.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { onBackdrop } from '../on-surface.js'
import type { RuleContext } from '../rule.js'

/** Lights that are there for the backdrop, on, and known. */
export const backdropLights = (set: ComputedSet): readonly Light[] =>
  set.lit.filter((light) => light.role === 'backdrop')

/** u of a recorded tone: the light, the camera's rendering, and the surface's reflectance. */
export const toneU = ({ plan, u }: RuleContext, figure: Figure): number =>
  Math.hypot(u({ ...figure, rendering: 1 }), plan.backdrop?.surface.u ?? 0)

/** A flat reading on a surface against a dome's at the face: readings of both kinds differ by this much more. */
const flatAgainstDome = 0.2

/** The backdrop at a sample over the key reading, in stops. Undefined without a key reading. */
export const overKey = (
  { set, u }: RuleContext,
  sample: BackdropSample,
): { readonly stops: number; readonly u: number } | undefined => {
  if (set.key === undefined) return undefined
  const figure = difference(sample.overCamera, set.key.overCamera)
  return { stops: figure.stops, u: Math.hypot(u({ ...figure, rendering: 0 }), flatAgainstDome) }
}

/** A white backdrop's usual limit over the key, in stops. Common practice, no source. */
export const usualLimit = 1

/** Exposure that one light gives the backdrop at a sample, as a share of all. */
export const shareAt = (set: ComputedSet, sample: BackdropSample, lights: readonly string[]): number => {
  const all = set.unshadowed(onBackdrop(sample.at), 'all')
  if (all === undefined) return 0
  return lights.reduce((sum, light) => sum + (all.byLight.get(light) ?? 0), 0) / all.luxSeconds
}

/** The light that gives the backdrop most at a sample. */
export const strongestAt = (set: ComputedSet, sample: BackdropSample): Light | undefined => {
  const all = set.unshadowed(onBackdrop(sample.at), 'all')
  let best: Light | undefined
  for (const light of set.lit)
    if (best === undefined || (all?.byLight.get(light.name) ?? 0) > (all?.byLight.get(best.name) ?? 0))
      best = light
  return best
}

/** One heading for all that is wrong with the backdrop for the same reason. */
export const causeOnBackdrop = (set: ComputedSet, sample: BackdropSample): string => {
  const names = backdropLights(set).map((light) => light.name)
  if (names.length > 0 && shareAt(set, sample, names) >= 0.5)
    return `how ${names.length > 1 ? `${names.slice(0, -1).join(', ')} and ` : ''}${names[names.length - 1]} ${names.length > 1 ? 'light' : 'lights'} the backdrop`
  const strongest = strongestAt(set, sample)
  return names.length === 0
    ? 'the backdrop has no light of its own'
    : `the backdrop gets most of its light from ${strongest?.name ?? 'the room'}`
}

/** `white paper of 0.90`; black ones to the third digit. */
export const surfaceText = ({ name, reflectance }: Surface): string => {
  const figure = reflectance.toFixed(reflectance < 0.1 ? 3 : 2)
  return name.startsWith('reflectance') ? `a surface of ${figure}` : `${name} of ${figure}`
}
