/** Flashes in high-speed mode, and what they are short of at full power. */
import type { Light, Plan } from '../../language/plan.js'
import type { ComputedSet } from '../../set/computed-set.js'
import type { Change } from '../../set/knobs.js'
import type { FNumber } from '../../units/quantity.js'
import { lightPointer } from '../place-pointer.js'
import { neededPowers } from '../power/full-power.js'
import type { RuleContext } from '../rule.js'

export const highSpeedFlashes = (plan: Plan): readonly Light[] =>
  [...plan.lights.values()].filter(
    (light) => light.on && light.unit.kind === 'flash' && light.mode === 'high-speed',
  )

export interface Shortage {
  readonly light: Light
  /** Stops missing at full power; negative is to spare. */
  readonly short: number
  readonly u: number
  readonly gives: FNumber
  readonly at: string
}

/** Of each light in high-speed mode: by what it is to meter, else, where the key reading counts it, by the camera. */
export const shortages = (set: ComputedSet, context: Pick<RuleContext, 'u'>): readonly Shortage[] => {
  const flashes = highSpeedFlashes(set.plan)
  const metered = neededPowers(set).flatMap(({ light, overFull, u }): Shortage[] =>
    flashes.some(({ name }) => name === light.name)
      ? [
          {
            light,
            short: overFull,
            u,
            gives: (light.meters!.reads * 2 ** (-overFull / 2)) as FNumber,
            at: lightPointer(light.name, 'meters'),
          },
        ]
      : [],
  )
  const keys = set.keyLights.filter(
    (light) => light.meters === undefined && flashes.some(({ name }) => name === light.name),
  )
  const [first] = keys
  if (first === undefined) return metered
  const full = set.with(...keys.flatMap(toFull))
  const reading = full.key
  return reading === undefined
    ? metered
    : [
        ...metered,
        {
          light: first,
          short: set.plan.wanted.exposure - reading.overCamera.stops,
          u: context.u({ ...reading.overCamera, rendering: 0 }),
          gives: reading.fNumber,
          at: '/camera/aperture',
        },
      ]
}

/** A light up to full power, where it is not there already. */
export const toFull = ({ name, unit, power }: Light): readonly Change[] =>
  unit.kind !== 'flash' || power === undefined || power >= unit.power.to
    ? []
    : [{ knob: { knob: 'strength', light: name }, to: Math.log2(unit.power.to / power) }]

export const shortIn = (set: ComputedSet, { name }: Light, context: RuleContext): Shortage | undefined =>
  shortages(set, context).find(({ light }) => light.name === name)
