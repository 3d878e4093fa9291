/** A light or the camera elsewhere: as little as will do, set by tape. */

import { subtract } from '../scene/vector.js'
import type { ComputedSet } from '../set/computed-set.js'
import { knobToday } from '../set/knob-value.js'
import type { Knob } from '../set/knobs.js'
import { turn } from './gear.js'
import type { Words } from './words.js'

export interface Moved {
  readonly title: string
  readonly after: ComputedSet
}

/** One try after the other goes by this much: two steps of a tape, or of a bearing. */
const steps = { metres: 0.1, radians: (5 * Math.PI) / 180 }
/** No further than this: beyond it the light does another job. */
const most = { metres: 1.2, radians: (50 * Math.PI) / 180 }

type Way = 1 | -1

/** Knobs that count to one side. */
const toOneSide: readonly Knob['knob'][] = ['light-right', 'light-angle', 'panel-right']

const firstClear = (
  set: ComputedSet,
  knob: Knob,
  ways: readonly Way[],
  clear: (after: ComputedSet) => boolean,
  twin?: Knob,
): Moved | undefined => {
  const today = knobToday(set.plan, knob)
  const todayTwin = twin && knobToday(set.plan, twin)
  if (today === undefined || (twin !== undefined && todayTwin === undefined)) return undefined
  const mirrored = toOneSide.includes(knob.knob) ? -1 : 1
  const unit = knob.knob === 'light-angle' || knob.knob === 'light-up' ? 'radians' : 'metres'
  for (let by = steps[unit]; by <= most[unit] + 1e-9; by += steps[unit])
    for (const way of ways) {
      const turned = turn(set.plan, knob, today + way * by)
      // Where it stands now may be outside what the room lets it: further on it may be inside.
      if (turned === undefined || turned.short > 0) continue
      const other = twin && turn(set.plan, twin, todayTwin! + mirrored * way * by)
      if (twin !== undefined && (other === undefined || other.short > 0)) continue
      const both = other === undefined ? [turned] : [turned, other]
      const after = set.with(...both.map(({ change }) => change))
      if (clear(after)) return { title: both.map(({ title }) => title).join(', '), after }
    }
  return undefined
}

/**
 * The first setting, away from today's (`way` 1 up, −1 down), after which it is clear; undefined where none is.
 *
 * @param twin what stands on the other side and is moved as in a mirror
 */
export const movedUntil = (
  set: ComputedSet,
  knob: Knob,
  way: Way,
  clear: (after: ComputedSet) => boolean,
  twin?: Knob,
): Moved | undefined => firstClear(set, knob, [way], clear, twin)

/** On the floor, less than this is not told, metres. */
const noticed = 0.1

/** A light placed by its tape comes in on the floor as it goes up: by how much, where that is to be told. */
export const comesIn = (
  { plan, scene }: ComputedSet,
  light: string,
  up: number,
  words: Words,
): readonly string[] => {
  const front = scene.lights.get(light)?.front
  if (front === undefined || plan.lights.get(light)?.at.by !== 'tape') return []
  const [x, y, z] = subtract(front.centre, scene.subject.tapeFrom)
  const by = Math.hypot(x, y) - Math.sqrt(Math.max(0, x * x + y * y + z * z - (z + up) ** 2))
  return by < noticed ? [] : [`by the same tape it stands ${words.small(by)} nearer on the floor`]
}

/** Either way, the one that needs less of it. */
export const movedEitherWay = (
  set: ComputedSet,
  knob: Knob,
  clear: (after: ComputedSet) => boolean,
  twin?: Knob,
): Moved | undefined => firstClear(set, knob, [1, -1], clear, twin)
