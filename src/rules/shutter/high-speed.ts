/** Flashes in high-speed mode, and what they are short of at full power. */
import type { Light, Plan } from '../../language/plan.js'
import { dot, subtract, unit } from '../../scene/vector.js'
import type { ComputedSet } from '../../set/computed-set.js'
import type { Change } from '../../set/knobs.js'
import { type FNumber, inDegrees } from '../../units/quantity.js'
import { towardLight } from '../light-direction.js'
import { lightPointer } from '../place-pointer.js'
import { neededPowers } from '../power/full-power.js'
import type { RuleContext } from '../rule.js'
import { flashes } from './sync.js'

/** Whatever the shutter: mends look at what is left to find at the sync speed too. */
export const highSpeedFlashes = (plan: Plan): readonly Light[] =>
  flashes(plan).filter((light) => light.mode === 'high-speed')

export interface Shortage {
  readonly light: Light
  /** Stops missing at full power; negative is to spare. */
  readonly short: number
  readonly u: number
  readonly gives: FNumber
  readonly at: string
}

/** Of each light in high-speed mode: by what it is to meter, else, where it lights the face for the camera, by the camera. */
export const shortages = (
  set: ComputedSet,
  { u: uOf, limits }: Pick<RuleContext, 'u' | 'limits'>,
): readonly Shortage[] => {
  const fast = highSpeedFlashes(set.plan)
  const metered = neededPowers(set).flatMap(({ light, overFull, u }): Shortage[] =>
    fast.some(({ name }) => name === light.name)
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
    (light) =>
      light.meters === undefined &&
      fast.some(({ name }) => name === light.name) &&
      degreesOffCamera(set, light) <= limits['key-angle']!,
  )
  if (keys.length === 0) return metered
  const reading = set.with(...keys.flatMap(toFull)).key
  const most = reading && strongest(keys, reading.byLight)
  return reading === undefined || most === undefined || 2 * most.gives < reading.luxSeconds
    ? metered
    : [
        ...metered,
        {
          light: most.light,
          short: set.plan.wanted.exposure - reading.overCamera.stops,
          u: uOf({ ...reading.overCamera, rendering: 0 }),
          gives: reading.fNumber,
          at: '/camera/aperture',
        },
      ]
}

const strongest = (lights: readonly Light[], byLight: ReadonlyMap<string, number>) =>
  lights
    .map((light) => ({ light, gives: byLight.get(light.name) ?? 0 }))
    .reduce((most, one) => (one.gives > most.gives ? one : most))

/** Between a light and the camera, as seen from the face. */
const degreesOffCamera = ({ scene }: ComputedSet, { name }: Light): number => {
  const face = scene.points.get('subject')?.at ?? scene.subject.tapeFrom
  const toward = towardLight(scene, name, face)
  if (toward === undefined) return 0
  const cosine = dot(toward, unit(subtract(scene.camera.eye, face)))
  return inDegrees(Math.acos(Math.min(1, Math.max(-1, cosine))))
}

/** A light up to full power, where it is not there already. */
export const toFull = ({ name, unit, power }: Light): readonly Change[] =>
  unit.kind !== 'flash' || power === undefined || power >= unit.power.to
    ? []
    : [{ knob: { knob: 'strength', light: name }, to: Math.log2(unit.power.to / power) }]

export const shortIn = (set: ComputedSet, { name }: Light, context: RuleContext): Shortage | undefined =>
  shortages(set, context).find(({ light }) => light.name === name)
