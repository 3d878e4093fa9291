/** Mends that bring a point of the backdrop to another level: its own lights, the separation, the key's distance. */

import type { BackdropSample } from '../../set/backdrop-view.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { turn, turnLight } from '../gear.js'
import { whom } from '../place-words.js'
import { inTurn, type Mend, type RuleContext } from '../rule.js'
import { movedAndHeld, solveSet } from '../solving.js'
import type { Words } from '../words.js'
import { backdropLights, shareAt } from './on-the-backdrop.js'
import { atPlaceOf, stopsFor } from './solve-level.js'

/**
 * @param pick the point that is judged, in a set
 * @param change stops that it must change by; positive is brighter
 * @param to whether a setting past the change is better than one short of it
 */
export const toLevel = (
  context: RuleContext,
  words: Words,
  pick: (set: ComputedSet) => BackdropSample | undefined,
  change: number,
  to: 'at least' | 'nearest' = 'at least',
): Iterable<Mend> => {
  const now = pick(context.set)
  if (now === undefined) return []
  const target = now.overCamera.stops + change
  const gives = (set: ComputedSet): string | undefined => {
    const after = pick(set)
    return after && `the backdrop records ${words.tone(after.srgb)} at its ${after.where}`
  }
  const level: Level = { atPlace: atPlaceOf(now, context.set), whole: (set) => pick(set)?.overCamera.stops }
  return inTurn(
    () => ownLights(context, target, gives, now, to),
    () => separation(context, level, target, gives, words),
    () => (change < 0 ? keyNearer(context, level, target, gives, words) : []),
  )
}

interface Level {
  /** At one place of the frame. */
  readonly atPlace: (set: ComputedSet) => number | undefined
  /** Wherever the whole view has it. */
  readonly whole: (set: ComputedSet) => number | undefined
}
type Gives = (set: ComputedSet) => string | undefined

const ownLights = (
  { set, plan }: RuleContext,
  target: number,
  gives: Gives,
  now: BackdropSample,
  to: 'at least' | 'nearest',
): readonly Mend[] => {
  const names = backdropLights(set).map((light) => light.name)
  const up = target > now.overCamera.stops
  if (names.length === 0 || (!up && shareAt(set, now, names) < 0.1)) return []
  const by = stopsFor(set, [now], names, target, up ? 'at least' : 'at most')
  const turned = by === undefined ? [] : names.flatMap((light) => turnLight(plan, light, by, to) ?? [])
  if (turned.length === 0) return []
  const changed = set.with(...turned.map((one) => one.change))
  const after = gives(changed)
  const short = Math.max(...turned.map((one) => one.short))
  return [
    {
      title: turned.map((one) => one.title).join(', '),
      ...(after === undefined ? {} : { gives: after }),
      after: changed,
      ...(short > 0
        ? { costs: 'that is the end of the range: move it, or add or take away a light', partial: true }
        : {}),
    },
  ]
}

/** Nearer than this to a backdrop that is to be brighter, the shadow is the next fault. */
const nearest = 0.8

const separation = (
  { set, plan }: RuleContext,
  level: Level,
  target: number,
  gives: Gives,
  words: Words,
): readonly Mend[] => {
  const from = plan.backdrop!.behind
  const up = target > (level.whole(set) ?? 0)
  const solved = solveSet(
    set,
    from,
    up ? Math.min(from, nearest) : from + 4,
    (one, behind) => one.with({ knob: { knob: 'behind' }, to: behind }),
    level.whole,
    target,
    { guide: level.atPlace },
  )
  const turned = solved === undefined ? undefined : turn(plan, { knob: 'behind' }, solved)
  if (turned === undefined || turned.short > 0) return []
  const changed = set.with(turned.change)
  const after = gives(changed)
  const by = turned.change.to - from
  return [
    {
      title: turned.title,
      ...(after === undefined ? {} : { gives: after }),
      costs:
        by > 0
          ? `${words.length(by)} more room, and a wider backdrop in frame`
          : 'the shadow lies closer on the backdrop',
      after: changed,
    },
  ]
}

/** With the camera following the face, a nearer key darkens what is behind: its light falls off faster. */
const keyNearer = (
  { set, plan }: RuleContext,
  level: Level,
  target: number,
  gives: Gives,
  words: Words,
): readonly Mend[] => {
  const light = set.keyLights.find((one) => one.unit.kind === 'flash')
  const from = light && set.scene.lights.get(light.name)?.distance
  if (light === undefined || from === undefined || light.at.by === 'camera') return []
  const at = (distance: number) => movedAndHeld(set, light.name, distance)
  const solved = solveSet(
    set,
    from,
    Math.max(0.5, from / 3),
    (one, distance) => movedAndHeld(one, light.name, distance)?.set,
    level.whole,
    target,
    { guide: level.atPlace },
  )
  const turned =
    solved === undefined ? undefined : turn(plan, { knob: 'light-distance', light: light.name }, solved)
  const moved = turned && at(turned.change.to)
  const after = moved && gives(moved.set)
  return turned === undefined || moved === undefined || after === undefined || turned.short > 0
    ? []
    : [
        {
          title: `${turned.title}, ${words.howMany(moved.stops)} less power to hold ${whom(plan)}`,
          gives: after,
          costs: `the light falls off faster across ${plan.subject.kind === 'object' ? 'the object' : 'the sitter'}`,
          after: moved.set,
        },
      ]
}
