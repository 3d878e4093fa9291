/** The first setting of a knob after which the set as it stands, no light asked, is as wanted. */
import type { Plan } from '../../language/plan.js'
import { reachingOf } from '../../picture/in-picture.js'
import type { Scene } from '../../scene/scene.js'
import { applyChanges } from '../../set/apply-change.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { knobToday } from '../../set/knob-value.js'
import type { Knob } from '../../set/knobs.js'
import { planScene } from '../../set/plan-scene.js'
import { spend } from '../../set/work.js'
import { type Turned, turn } from '../gear.js'
import { collisionsOf, floor } from '../room/collisions.js'
import { type Thing, thingPointer } from './things.js'

/** What a tape and a bearing are set to. */
const steps = { metres: 0.05, radians: (5 * Math.PI) / 180 }
const stride = 4

/** Metres that the one reaches into the other; less is not worth a word. */
const touching = 0.05

/** It comes to stand in nothing in which it does not stand today. */
const staysFree = (set: ComputedSet, thing: Thing): ((plan: Plan, scene: Scene) => boolean) => {
  const own = thingPointer(thing)
  const others = (plan: Plan, scene: Scene): readonly string[] =>
    collisionsOf(plan, scene, touching, { pointer: own }).map(({ first, second }) => {
      if (second === floor) return floor
      return first.pointer === own ? second.pointer : first.pointer
    })
  const today = new Set(others(set.plan, set.scene))
  return (plan, scene) => others(plan, scene).every((one) => today.has(one))
}

const isAngle = ({ knob }: Knob): boolean => knob === 'light-angle' || knob === 'light-up'

/** What stands out of the picture today is not moved into it, nor before the lens. */
const staysOut = (set: ComputedSet, thing: Thing): ((scene: Scene) => boolean) => {
  const at = thingPointer(thing)
  return reachingOf(set.scene, at) === undefined ? (scene) => reachingOf(scene, at) === undefined : () => true
}

/**
 * Away from today's value, up (`way` 1) or down, by no more than `most`, metres or radians as the knob goes. Undefined
 * where no setting of the gear and the room is as wanted.
 *
 * @throws WorkSpent where the set's work allows no more
 */
export const settingUntil = (
  set: ComputedSet,
  thing: Thing,
  knob: Knob,
  way: 1 | -1,
  most: number,
  wanted: (scene: Scene) => boolean,
): Turned | undefined => {
  const { plan, scene, work } = set
  const today = knobToday(plan, knob)
  if (today === undefined) return undefined
  const isOut = staysOut(set, thing)
  const isFree = staysFree(set, thing)
  const fits = (by: number): Turned | undefined => {
    const turned = turn(plan, knob, today + way * by)
    if (turned === undefined || turned.short > 0 || (turned.change.to - today) * way <= 0) return undefined
    spend(work, 'look', plan.lights.size, scene.solids.length)
    const changed = applyChanges(plan, [turned.change])
    const after = planScene(changed)
    return wanted(after) && isOut(after) && isFree(changed, after) ? turned : undefined
  }
  const fine = isAngle(knob) ? steps.radians : steps.metres
  // By strides first, then back to the first step of the last stride that does.
  for (let far = stride; (far - stride) * fine < most; far += stride) {
    const last = Math.min(far, Math.floor(most / fine + 1e-9))
    const found = fits(last * fine)
    if (found === undefined) continue
    for (let step = far - stride + 1; step < last; step++) {
      const sooner = fits(step * fine)
      if (sooner !== undefined) return sooner
    }
    return found
  }
  return undefined
}
