/** What a light gives at full power, and what it would have to give to meter as wanted. */
import type { Light, PowerRange } from '../../language/plan.js'
import { luxSecondsFor } from '../../light/exposure.js'
import { priorStrength } from '../../light/strength.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { rolePoint } from '../../set/role-point.js'
import { notDirect } from '../known.js'
import type { NotNeeded } from '../rule.js'

export const rangeOf = ({ unit }: Light): PowerRange | undefined =>
  unit.kind === 'flash' || unit.kind === 'continuous' ? unit.power : undefined

/** Lights that are on, can be turned, and are to meter something. */
export const toMeter = (set: ComputedSet): readonly Light[] =>
  [...set.plan.lights.values()].filter(
    (light) => light.on && light.meters !== undefined && rangeOf(light) !== undefined,
  )

/** Where the light is to meter, in words and as a point's name. */
export const meteredAt = (light: Light): string => light.meters?.at ?? rolePoint(light)

/** On-axis strength at full power, with its u: scaled from what is known of it, else by its rating. */
export const atFull = (
  set: ComputedSet,
  light: Light,
): { readonly candelaSeconds: number; readonly u: number } | undefined => {
  const range = rangeOf(light)
  if (range === undefined) return undefined
  const now = set.strength(light.name)
  const setAt =
    now === undefined || now.from === 'meters'
      ? undefined
      : now.from === 'reading' && light.power === undefined
        ? readAt(set, light)
        : light.power
  if (now !== undefined && setAt !== undefined)
    return { candelaSeconds: (now.candelaSeconds * range.to) / setAt, u: now.u }
  return priorStrength({ ...light, power: range.to }, set.plan)
}

/** The power at which the light was read alone. */
const readAt = ({ plan }: ComputedSet, light: Light): number | undefined =>
  plan.readings
    .find(
      ({ of, taken }) =>
        typeof of === 'object' && of.length === 1 && of[0] === light.name && taken?.get(light.name)?.power,
    )
    ?.taken?.get(light.name)?.power

/** Strength at which the light meters as wanted, where it stands in this set. */
export const neededStrength = (set: ComputedSet, light: Light): number | undefined => {
  const now = set.strength(light.name)
  const metered = set.reading({ at: meteredAt(light), of: [light.name] })
  return light.meters === undefined || now === undefined || metered === undefined
    ? undefined
    : (now.candelaSeconds * luxSecondsFor(light.meters.reads, set.plan.camera.iso)) / metered.luxSeconds
}

export interface Needed {
  readonly light: Light
  readonly range: PowerRange
  /** Stops over full power that it takes; negative is below. */
  readonly overFull: number
  readonly u: number
}

/** For every light that is to meter something and whose way there is straight: the power that takes. */
export const neededPowers = (set: ComputedSet): readonly Needed[] =>
  toMeter(set).flatMap((light) => {
    const range = rangeOf(light)!
    const full = atFull(set, light)
    const needed = neededStrength(set, light)
    if (full === undefined || needed === undefined || wayBlocked(set, light) !== undefined) return []
    return [{ light, range, overFull: Math.log2(needed / full.candelaSeconds), u: full.u }]
  })

export const wayBlocked = (set: ComputedSet, light: Light): NotNeeded | undefined => {
  const at = set.scene.points.get(meteredAt(light))?.at
  return at && notDirect(set, light, at)
}
