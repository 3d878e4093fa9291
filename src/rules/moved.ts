/** A light or the camera elsewhere: as little as will do, set by tape. */

import type { ComputedSet } from '../set/computed-set.js'
import { knobToday } from '../set/knob-value.js'
import type { Knob } from '../set/knobs.js'
import { turn } from './gear.js'

export interface Moved {
  readonly title: string
  readonly after: ComputedSet
}

/** One try after the other goes by this much: two steps of a tape, or of a bearing. */
const steps = { metres: 0.1, radians: (5 * Math.PI) / 180 }
/** No further than this: beyond it the light does another job. */
const most = { metres: 1.2, radians: (50 * Math.PI) / 180 }

type Way = 1 | -1

const firstClear = (
  set: ComputedSet,
  knob: Knob,
  ways: readonly Way[],
  clear: (after: ComputedSet) => boolean,
): Moved | undefined => {
  const today = knobToday(set.plan, knob)
  if (today === undefined) return undefined
  const unit = knob.knob === 'light-angle' ? 'radians' : 'metres'
  for (let by = steps[unit]; by <= most[unit] + 1e-9; by += steps[unit])
    for (const way of ways) {
      const turned = turn(set.plan, knob, today + way * by)
      // Where it stands now may be outside what the room lets it: further on it may be inside.
      if (turned === undefined || turned.short > 0) continue
      const after = set.with(turned.change)
      if (clear(after)) return { title: turned.title, after }
    }
  return undefined
}

/** The first setting, away from today's (`way` 1 up, −1 down), after which it is clear; undefined where none is. */
export const movedUntil = (
  set: ComputedSet,
  knob: Knob,
  way: Way,
  clear: (after: ComputedSet) => boolean,
): Moved | undefined => firstClear(set, knob, [way], clear)

/** Either way, the one that needs less of it. */
export const movedEitherWay = (
  set: ComputedSet,
  knob: Knob,
  clear: (after: ComputedSet) => boolean,
): Moved | undefined => firstClear(set, knob, [1, -1], clear)
