/** Mends of a backdrop that is short of white: its own lights up; without any, distances for the one light, or a light of its own. */

import { fNumberFor } from '../../light/exposure.js'
import { recordedLinear, srgbCode } from '../../picture/tone.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { knobRange } from '../../set/knob-range.js'
import type { FNumber, LuxSeconds } from '../../units/quantity.js'
import { recycleGrows, secondsText, type Turned, turn, turnLight } from '../gear.js'
import { onBackdrop } from '../on-surface.js'
import { whom } from '../place-words.js'
import { type Evidence, inTurn, type Mend, type RuleContext } from '../rule.js'
import { inside, movedAndHeld, solveSet } from '../solving.js'
import type { Words } from '../words.js'
import { backdropLights, overKey, usualLimit } from './on-the-backdrop.js'
import { atPlaceOf, stopsFor } from './solve-level.js'
import type { TwoLimits } from './two-limits.js'

export interface BelowWhite extends Evidence {
  readonly where: string
  readonly srgb: number
  /** Stops short of white for certain. */
  readonly short: number
  readonly needs: number
  readonly u: number
  readonly backdropReads: FNumber | undefined
  /** Both ends for a white backdrop; worked out where it is short of white, or might be. */
  readonly limits: TwoLimits | undefined
}

export const brighter = (evidence: BelowWhite, words: Words, context: RuleContext): Iterable<Mend> =>
  backdropLights(context.set).length > 0
    ? lightsUp(evidence, words, context)
    : inTurn(
        () => lightBack(evidence, words, context),
        () => subjectNearer(evidence, words, context),
        () => secondLight(evidence, words, context),
      )

const darkest = (set: ComputedSet): number | undefined => set.backdropView?.darkest.overCamera.stops

// ---------------------------------------------------------------- with lights of its own

/** More than this is another light, not a turn of the dial. */
const most = 10

const lightsUp = (evidence: BelowWhite, words: Words, context: RuleContext): readonly Mend[] => {
  const { set, plan } = context
  const target = evidence.needs + inside(evidence.u)
  const names = backdropLights(set).map((light) => light.name)
  const by = stopsFor(set, set.backdropView!.samples, names, target, 'at least')
  if (by === undefined || by > most) return [secondBackdropLight(evidence, words)]
  const turned = names.flatMap((light) => turnLight(plan, light, by) ?? [])
  const after = set.with(...turned.map((one) => one.change))
  const view = after.backdropView
  if (turned.length === 0 || view === undefined) return []
  const middle = overKey({ ...context, set: after }, view.middle)
  const short = Math.max(...turned.map((one) => one.short))
  const left = evidence.needs - view.darkest.overCamera.stops
  const limit = context.plan.wanted.backdropOverKey?.to ?? usualLimit
  const tooHot = middle !== undefined && middle.stops > limit
  const advice: Mend = {
    title: turned.map((one) => one.title).join(', '),
    gives: [
      short > 0
        ? left < 0.05
          ? 'at full power it is just white, with nothing in reserve'
          : `at full power still ${words.howMany(left)} short: the lights give no more`
        : `the darkest corner ${words.howMany(-left)} past sure white`,
      ...(middle === undefined || tooHot ? [] : [`the middle ${words.against(middle.stops, 'the key')}`]),
    ].join(', '),
    // Where it gets too hot, the rule for that says so.
    costs: slower(turned, context).join('; '),
    after,
    ...(short > 0 ? { partial: true } : {}),
  }
  const another = secondBackdropLight(evidence, words)
  return tooHot ? [another, advice] : short > 0 || by > 3 ? [advice, another] : [advice]
}

const slower = (turned: readonly Turned[], { plan }: RuleContext): readonly string[] => {
  const most = Math.max(
    ...turned.map(({ change: { knob, to } }) => ('light' in knob ? recycleGrows(plan, knob.light, to) : 0)),
  )
  return most > 0.05 ? [`recycling takes ${secondsText(most)} longer`] : []
}

const secondBackdropLight = ({ where }: BelowWhite, { list }: Words): Mend => ({
  title: `a second light for the backdrop's ${list([where])}, from the other side`,
})

// ---------------------------------------------------------------- one light for all

/** Paper within two fifths of the face is as near as one light brings it, for the dome at the face sees the paper too: both then meter almost alike. */
const almostAlike = -0.4

const gap = (set: ComputedSet): number | undefined => {
  const back = darkest(set)
  const key = set.key?.overCamera.stops
  return back === undefined || key === undefined ? undefined : back - key
}

/** The one light that can be moved: not a window, not on the camera. */
const movable = ({
  set,
}: RuleContext): { readonly name: string; readonly from: number; readonly far: number } | undefined => {
  const light = set.keyLights.find((one) => one.unit.kind === 'flash' || one.unit.kind === 'continuous')
  const from = light && set.scene.lights.get(light.name)?.distance
  if (light === undefined || from === undefined || light.at.by === 'camera') return undefined
  const far = knobRange(set.plan, { knob: 'light-distance', light: light.name })?.to ?? 0
  return far > from ? { name: light.name, from, far } : undefined
}

/** How far back the light brings face and backdrop within a third, in a set; undefined where no distance does. */
const distanceFor = (
  set: ComputedSet,
  { name, from, far }: NonNullable<ReturnType<typeof movable>>,
): number | undefined =>
  solveSet(set, from, far, (one, distance) => movedAndHeld(one, name, distance)?.set, gap, almostAlike, {
    guide: gapAtPlace(set),
  })

/** The same at the place of the frame that is darkest today. */
const gapAtPlace = (set: ComputedSet): ((other: ComputedSet) => number | undefined) => {
  const view = set.backdropView
  const at = view === undefined ? () => undefined : atPlaceOf(view.darkest, set)
  return (other) => {
    const back = at(other)
    const key = other.key?.overCamera.stops
    return back === undefined || key === undefined ? undefined : back - key
  }
}

/** What can be set by tape, no nearer than was solved. */
const tape = ({ plan }: RuleContext, light: string, solved: number | undefined): number | undefined =>
  solved === undefined ? undefined : turn(plan, { knob: 'light-distance', light }, solved)?.change.to

const lightBack = (evidence: BelowWhite, words: Words, context: RuleContext): readonly Mend[] => {
  const { set } = context
  const light = movable(context)
  const to = light && tape(context, light.name, distanceFor(set, light))
  if (light === undefined || to === undefined) return []
  return back(evidence, words, context, set, light.name, to, '')
}

/** The light moved back in a set, and what that gives and costs. */
const back = (
  evidence: BelowWhite,
  words: Words,
  context: RuleContext,
  set: ComputedSet,
  name: string,
  to: number,
  first: string,
): readonly Mend[] => {
  const moved = movedAndHeld(set, name, to)
  const after = moved && gap(moved.set)
  if (moved === undefined || after === undefined) return []
  const needed = turnLight(context.plan, name, moved.stops)
  return [
    {
      title: `${first}${name} back to ${words.length(to)} from ${whom(context.plan)}, with ${words.howMany(moved.stops)} more power to hold its exposure`,
      gives: comesOut(evidence, after, words, context),
      costs: [
        ...(needed !== undefined && needed.short > 0.05
          ? [`${name} is ${words.howMany(needed.short)} short of that power`]
          : []),
        'a smaller source, so harder light',
      ].join('; '),
      after: moved.set,
      partial: true,
    },
  ]
}

const nearest = 0.3
/** Near enough for a wall to count as close behind, and still room to stand. */
const close = 0.5

const subjectNearer = (evidence: BelowWhite, words: Words, context: RuleContext): readonly Mend[] => {
  const { set, plan } = context
  const from = plan.backdrop!.behind
  if (from <= nearest) return []
  const moved = (one: ComputedSet, behind: number) => one.with({ knob: { knob: 'behind' }, to: behind })
  const at = (behind: number) => moved(set, behind)
  const solved = solveSet(set, from, nearest, moved, gap, almostAlike, { guide: gapAtPlace(set) })
  const turned = solved === undefined ? undefined : turn(plan, { knob: 'behind' }, solved)
  const after = turned === undefined || turned.short > 0 ? undefined : gap(at(turned.change.to))
  if (turned !== undefined && after !== undefined)
    return [
      {
        title: `subject nearer the backdrop: ${turned.title}`,
        gives: comesOut(evidence, after, words, context),
        costs: "the subject's shadow lies closer and sharper on the backdrop",
        after: at(turned.change.to),
        partial: true,
      },
    ]
  // Neither alone: both together.
  const light = movable(context)
  const behind = Math.min(from, close)
  const nearer = at(behind)
  const distance = light && tape(context, light.name, distanceFor(nearer, light))
  return light === undefined || distance === undefined || behind === from
    ? []
    : back(
        evidence,
        words,
        context,
        nearer,
        light.name,
        distance,
        `backdrop.behind → ${words.length(behind)} and `,
      )
}

/** What is recorded at the darkest when the face stays as it is, and what only exposure can add. */
const comesOut = (
  { needs }: BelowWhite,
  gapAfter: number,
  words: Words,
  { set, plan }: RuleContext,
): string => {
  const over = (set.key?.overCamera.stops ?? 0) + gapAfter
  const linear = recordedLinear(plan.backdrop!.surface.reflectance, over)
  const rest = needs - over
  const level = `the backdrop ${words.howMany(gapAfter)} under ${whom(plan)} at its darkest, recorded as ${words.tone(srgbCode(linear))}`
  return rest <= 0
    ? level
    : `${level}; for certain only with ${whom(plan)} placed ${words.howMany(rest)} over as well, or with a light of its own`
}

const secondLight = (evidence: BelowWhite, words: Words, { set, plan }: RuleContext): readonly Mend[] => {
  const view = set.backdropView
  const now = view && set.unshadowed(onBackdrop(view.darkest.at), 'all')
  if (view === undefined || now === undefined) return []
  const wanted = now.luxSeconds * 2 ** (evidence.short + inside(evidence.u))
  const own = fNumberFor((wanted - now.luxSeconds) as LuxSeconds, plan.camera.iso)
  return [
    {
      title: `a light of its own for the backdrop, that meters ${words.f(own)} where the backdrop is darkest (${view.darkest.where}), dome flat and facing out`,
      gives: 'white for certain at its darkest, whatever the key does',
    },
  ]
}
