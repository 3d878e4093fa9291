import type { Light } from '../../language/plan.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { knobToday } from '../../set/knob-value.js'
import type { Knob } from '../../set/knobs.js'
import { type Turned, turn } from '../gear.js'
import { solveSet } from '../solving.js'

/** A backdrop light goes to and from the backdrop, any other along its tape. */
export const distanceKnob = (light: Light): Knob =>
  light.role === 'backdrop' && light.at.by === 'offsets'
    ? { knob: 'before-backdrop', light: light.name }
    : { knob: 'light-distance', light: light.name }

/**
 * The distance at which a light comes to what is wanted: `stops` in the set with the light moved is 0.
 *
 * @param to how far it may go
 */
export const solveDistance = (
  set: ComputedSet,
  light: Light,
  to: (today: number) => number,
  stops: (set: ComputedSet) => number | undefined,
): Turned | undefined => {
  const knob = distanceKnob(light)
  const today = knobToday(set.plan, knob)
  if (today === undefined) return undefined
  const far = farthest(set, knob, to(today))
  // Where it stands beyond that already, only nearer will do.
  if (far < today && to(today) > today) return undefined
  const solved = solveSet(set, today, far, (one, value) => one.with({ knob, to: value }), stops, 0)
  const turned = solved === undefined ? undefined : turn(set.plan, knob, solved)
  return turned === undefined || turned.short > 0 ? undefined : turned
}

/** Of the subject a light for the backdrop keeps this clear; past it, it would light the sitter. */
const clear = 0.3

const farthest = ({ plan }: ComputedSet, { knob }: Knob, to: number): number =>
  knob === 'before-backdrop' && plan.backdrop !== undefined ? Math.min(to, plan.backdrop.behind - clear) : to
