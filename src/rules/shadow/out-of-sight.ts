import { comesIn } from '../moved.js'
/** Ways in which a shadow on the backdrop goes out of sight, each with the set in which it has. */

import { inFrame } from '../../scene/camera-view.js'
import { computeSet } from '../../set/compute-set.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { knobRange } from '../../set/knob-range.js'
import { knobToday } from '../../set/knob-value.js'
import type { Knob } from '../../set/knobs.js'
import { type ShadowSeen, shows } from '../../set/shadow-seen.js'
import { inDegrees } from '../../units/quantity.js'
import { backdropLights } from '../backdrop/on-the-backdrop.js'
import { turn } from '../gear.js'
import { faceOf } from '../key-lights.js'
import { whom } from '../place-words.js'
import type { Mend, RuleContext } from '../rule.js'
import { inside } from '../solving.js'
import type { Words } from '../words.js'
import { showsBy } from './seen.js'

/** Looks outward this often, then halves the last step at most this often. */
const looks = 6
const halvings = 8

/**
 * The value nearest to `from`, on the way to `to`, at which it holds; undefined where it does nowhere that is looked at.
 *
 * @param within of the value; half a step of what is set by tape unless given
 */
export const firstWhere = (
  from: number,
  to: number,
  holds: (value: number) => boolean,
  within = 0.025,
): number | undefined => {
  let not = from
  for (let i = 1; i <= looks; i++) {
    const at = from + (to - from) * (i / looks) ** 1.5
    if (!holds(at)) {
      not = at
      continue
    }
    let found = at
    for (let j = 0; j < halvings && Math.abs(found - not) > within; j++) {
      const middle = (not + found) / 2
      if (holds(middle)) found = middle
      else not = middle
    }
    return found
  }
  return undefined
}

const gone = 'no shadow shows'

/** So far inside the limit that it is gone for certain. */
const hiddenIn = (context: RuleContext, shadow: ShadowSeen, light: string | undefined) => {
  const least = context.limits.depth! - shows.stops - inside(context.u(shadow.depth))
  return (set: ComputedSet): boolean => showsBy(set, light) <= least
}

const turned = (
  { set, plan }: RuleContext,
  knob: Knob,
  to: number | undefined,
  hidden: (set: ComputedSet) => boolean,
  rest: (by: number, after: ComputedSet) => { readonly costs?: string; readonly gives?: string },
): readonly Mend[] => {
  const today = knobToday(plan, knob)
  const made = to === undefined ? undefined : turn(plan, knob, to)
  if (today === undefined || made === undefined || made.short > 0) return []
  const after = set.with(made.change)
  return hidden(after)
    ? [{ title: made.title, gives: gone, ...rest(made.change.to - today, after), after }]
    : []
}

const solved = (
  context: RuleContext,
  knob: Knob,
  towards: 'more' | 'less',
  hidden: (set: ComputedSet) => boolean,
  most = Number.POSITIVE_INFINITY,
): number | undefined => {
  const today = knobToday(context.plan, knob)
  const range = today === undefined ? undefined : knobRange(context.plan, knob)
  if (today === undefined || range === undefined) return undefined
  const end = towards === 'more' ? Math.min(range.to, today + most) : Math.max(range.from, today - most)
  return (towards === 'more' ? end > today : end < today)
    ? firstWhere(today, end, (to) => hidden(context.set.with({ knob, to })))
    : undefined
}

/** Beyond this the camera sees another picture. */
const widest = 30

/** Where the camera looks along the light's own way, the subject covers its shadow. */
export const ontoTheAxis = (shadow: ShadowSeen, context: RuleContext, words: Words): readonly Mend[] => {
  const { set, plan } = context
  const { eye } = set.scene.camera
  const front = set.scene.lights.get(shadow.light)?.front
  const [x, y] = faceOf(set)
  if (front === undefined || front.centre[1] >= y - 0.1) return []
  const to = axisAside(front.centre, [x, y], eye[1])
  if (Math.abs(inDegrees(Math.atan2(to - x, y - eye[1]))) > widest) return []
  const made = turn(plan, { knob: 'camera-aside' }, to, 'nearest')
  if (made === undefined || made.short > 0) return []
  const moved = set.with(made.change)
  // A camera that looks straight ahead is turned to the subject where it would lose them.
  const turnedTo = inFrame(moved.scene.camera, faceOf(moved))
    ? undefined
    : computeSet({
        ...moved.plan,
        camera: { ...moved.plan.camera, aim: { at: 'point', point: 'subject', feather: undefined } },
      })
  const after = turnedTo ?? moved
  if (!hiddenIn(context, shadow, shadow.light)(after)) return []
  const by = made.change.to - eye[0]
  return [
    {
      title: `${made.title}${turnedTo === undefined ? '' : ', camera.aim → subject'}`,
      gives: `the camera on the axis of ${shadow.light}: the subject covers its own shadow`,
      costs: `seen from ${words.length(Math.abs(by))} further to ${by < 0 ? 'camera-left' : 'camera-right'}`,
      after,
    },
  ]
}

/** How far aside the camera stands where the line from the light past the face meets its distance. */
export const axisAside = (
  light: readonly [number, number, ...unknown[]],
  [x, y]: readonly [number, number],
  eyeY: number,
): number => x + ((light[0] - x) * (eyeY - y)) / (light[1] - y)

/** Metres more between subject and backdrop, at most. */
const room = 3

export const moreSeparation = (
  shadow: ShadowSeen,
  context: RuleContext,
  words: Words,
  light: string | undefined = shadow.light,
): readonly Mend[] => {
  const knob: Knob = { knob: 'behind' }
  const hidden = hiddenIn(context, shadow, light)
  return turned(context, knob, solved(context, knob, 'more', hidden, room), hidden, (by) => ({
    gives: `${gone}: it falls lower and farther aside, and softer`,
    costs: `${words.length(by)} more room`,
  }))
}

export const lightHigher = (shadow: ShadowSeen, context: RuleContext, words: Words): readonly Mend[] => {
  const knob: Knob = { knob: 'light-height', light: shadow.light }
  const hidden = hiddenIn(context, shadow, shadow.light)
  return turned(context, knob, solved(context, knob, 'more', hidden, 1.5), hidden, (by) => ({
    gives: `${gone}: it falls behind the shoulders`,
    costs: [
      `light from ${words.length(by)} higher${context.plan.subject.kind === 'object' ? '' : ': deeper eye sockets'}`,
      ...comesIn(context.set, shadow.light, by, words),
    ].join('; '),
  }))
}

/** Degrees round, at most; and no farther than from the side. */
const round = 40
const side = 90

export const lightWider = (shadow: ShadowSeen, context: RuleContext): readonly Mend[] => {
  const knob: Knob = { knob: 'light-angle', light: shadow.light }
  const today = knobToday(context.plan, knob)
  if (today === undefined || Math.abs(today) < 0.1) return []
  const most = Math.min(round, side - Math.abs(inDegrees(today)))
  if (most <= 0) return []
  const hidden = hiddenIn(context, shadow, shadow.light)
  const towards = today > 0 ? 'more' : 'less'
  const to = solved(context, knob, towards, hidden, (most * Math.PI) / 180)
  return turned(context, knob, to, hidden, (by) => ({
    gives: `${gone}: it falls beside the frame`,
    costs: `light from ${Math.round(Math.abs(inDegrees(by)))} deg further round: ${whom(context.plan)} is modelled harder`,
  }))
}

/** Stops that a backdrop light is turned up, at most. */
const up = 3

/** What lights the backdrop from elsewhere fills the shadow. */
export const backdropLit = (shadow: ShadowSeen, context: RuleContext, words: Words): readonly Mend[] => {
  const { set, plan } = context
  const own = backdropLights(set)
    .map((one) => one.name)
    .filter((name) => name !== shadow.light)
  if (own.length === 0) return []
  const hidden = hiddenIn(context, shadow, shadow.light)
  const by = firstWhere(
    0,
    up,
    (to) => hidden(set.with(...own.map((light) => ({ knob: { knob: 'strength' as const, light }, to })))),
    0.1,
  )
  const made =
    by === undefined ? [] : own.flatMap((light) => turn(plan, { knob: 'strength', light }, by) ?? [])
  if (made.length === 0 || made.some((one) => one.short > 0)) return []
  const after = set.with(...made.map((one) => one.change))
  return hidden(after)
    ? [
        {
          title: made.map((one) => one.title).join(', '),
          gives: `${gone}: ${words.list(own)} ${own.length > 1 ? 'fill' : 'fills'} it`,
          costs: `a backdrop ${words.howMany(backdropStops(after) - backdropStops(set))} brighter`,
          after,
        },
      ]
    : []
}

const backdropStops = (set: ComputedSet): number => set.backdropView?.middle.overCamera.stops ?? 0

/** Without a light of the backdrop's own: how strong one must be. Of the light h is taken; E more: E + 1 = h/(1 − 2^−limit). */
export const needsLight = (
  { surround, shaded }: ShadowSeen,
  { set, limits }: RuleContext,
  words: Words,
): readonly Mend[] => {
  if (backdropLights(set).length > 0 || surround <= 0) return []
  const taken = 1 - shaded / surround
  const more = taken / (1 - 2 ** -limits.depth!) - 1
  return more > 0
    ? [
        {
          title: `a light on the backdrop that gives it ${words.against(Math.log2(more), 'what falls there now')}, or more`,
          gives: 'it fills the shadow until it no longer shows',
          costs: 'a brighter backdrop',
        },
      ]
    : []
}
