/** What a light gives at full power, and what it would have to give to meter as wanted. */
import type { Light, MeterReading, Plan, PowerRange } from '../../language/plan.js'
import { luxSecondsFor } from '../../light/exposure.js'
import { lazyOf } from '../../scene/lazy.js'
import type { ComputedSet, LightStrength } from '../../set/computed-set.js'
import { rolePoint } from '../../set/role-point.js'
import { lightMissing } from '../known.js'
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

/** On-axis strength at full power, with its u: by readings, the kit's calibrations or the rating, whichever is best. */
export const atFull = (set: ComputedSet, light: Light): LightStrength | undefined =>
  allAtFull(set).strength(light.name)

/** A reading of a light at a power that nobody wrote down tells nothing of what it gives at full. */
const tellsPower = ({ lights }: Plan, { of, taken }: MeterReading): boolean =>
  typeof of === 'string'
    ? of === 'ambient'
    : of.every((name) => (taken?.get(name)?.power ?? lights.get(name)?.power) !== undefined)

/** The same set with every light at full power and nothing said of what it is to meter. */
const allAtFull = lazyOf((set: ComputedSet): ComputedSet => {
  const { plan } = set
  const lights = new Map(
    [...plan.lights].map(([name, light]) => [
      name,
      { ...light, power: rangeOf(light)?.to ?? light.power, meters: undefined },
    ]),
  )
  const readings = plan.readings.filter((reading) => tellsPower(plan, reading))
  return set.restated({ ...plan, lights, readings })
})

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
  /** Known by its rating alone. */
  readonly rated: boolean
}

/** For every light that is to meter something and whose way there is straight: the power that takes. */
export const neededPowers = lazyOf((set: ComputedSet): readonly Needed[] =>
  toMeter(set).flatMap((light) => {
    const range = rangeOf(light)!
    const full = atFull(set, light)
    const needed = neededStrength(set, light)
    if (full === undefined || needed === undefined || wayBlocked(set, light) !== undefined) return []
    return [
      {
        light,
        range,
        overFull: Math.log2(needed / full.candelaSeconds),
        u: full.u,
        rated: full.from !== 'reading' && full.from !== 'measured',
      },
    ]
  }),
)

export const wayBlocked = (set: ComputedSet, light: Light): NotNeeded | undefined => lightMissing(set, light)
