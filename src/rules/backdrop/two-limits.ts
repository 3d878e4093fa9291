/**
 * The two limits for a white backdrop: from where on it is white everywhere in frame, and up to where wrap and haze are
 * bearable. Both as the level of its middle over the key, with the backdrop's own lights turned together; a backdrop
 * without lights of its own counts as if it alone were brighter.
 */
import { deepBlack, meanForLift } from '../../picture/glare.js'
import { stopsToSurelyWhite } from '../../picture/tone.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { knobRange } from '../../set/knob-range.js'
import { turn } from '../gear.js'
import { onBackdrop } from '../on-surface.js'
import { changeOf, stopsToChange } from '../own-lights.js'
import type { Mend, RuleContext } from '../rule.js'
import { byStops, solveSet } from '../solving.js'
import type { Words } from '../words.js'
import { hazeLimits, wrapLimits } from '../wrap/limits.js'
import { mostWrapped } from '../wrap/most-wrapped.js'
import { backdropLights, overKey } from './on-the-backdrop.js'
import { stopsFor } from './solve-level.js'

export interface TwoLimits {
  /** Stops over the key at the middle: white for certain everywhere in frame from here on; +∞ where these lights cannot. */
  readonly white: number
  /** The same: wrap and haze under their limits for a note up to here; −∞ where other light alone is too much. */
  readonly bearable: number
  /** The same for a warning: past this the picture is not as wanted. */
  readonly atMost: number
  /** Which of the two sets `bearable`. */
  readonly by: 'wrap' | 'haze'
  /** Today, stops: wrap against the key, lift of a deep black. */
  readonly wrap: number | undefined
  readonly lift: number
  /** Stops that the lights change by to be just white everywhere. */
  readonly turn: number
}

/** Undefined where the backdrop or the key is not known, or nothing comes back from the backdrop. */
export const twoLimits = (context: Pick<RuleContext, 'set' | 'u'>): TwoLimits | undefined => {
  const { set } = context
  const { backdropView: view, haze, plan } = set
  const middle = view && overKey(context as RuleContext, view.middle)
  const side = mostWrapped(set)
  if (view === undefined || middle === undefined || haze === undefined || plan.backdrop === undefined)
    return undefined
  const names = backdropLights(set).map((light) => light.name)
  const alone = names.length === 0
  const there = set.unshadowed(onBackdrop(view.middle.at), 'all')
  const level = (stops: number): number =>
    middle.stops + (alone || there === undefined ? stops : changeOf(there.byLight, names, stops))
  const needs = stopsToSurelyWhite(plan.backdrop.surface.reflectance, plan.camera.headroom)
  const turned = alone
    ? needs - view.darkest.overCamera.stops
    : (stopsFor(set, view.samples, names, needs, 'at least') ?? Number.POSITIVE_INFINITY)
  const upTo = (byLight: ReadonlyMap<string, number>, stops: number): number =>
    alone ? stops : (stopsToChange(byLight, names, stops) ?? (stops < 0 ? -1 : 1) * Number.POSITIVE_INFINITY)
  const wrap = side?.reKey.stops
  const until = (level: 'note' | 'warning') => ({
    wrap:
      side === undefined
        ? Number.POSITIVE_INFINITY
        : upTo(side.byLight, wrapLimits[level] - side.reKey.stops),
    haze: upTo(haze.byLight, Math.log2(meanForLift(deepBlack, hazeLimits[level]) / haze.mean)),
  })
  const [note, warning] = [until('note'), until('warning')]
  const bound = (stops: number): number => (Number.isFinite(stops) ? level(stops) : stops)
  return {
    white: bound(turned),
    bearable: bound(Math.min(note.wrap, note.haze)),
    atMost: bound(Math.min(warning.wrap, warning.haze)),
    by: note.wrap <= note.haze ? 'wrap' : 'haze',
    wrap,
    lift: haze.lift.stops,
    turn: turned,
  }
}

/** Figures nearer than this read alike. */
const alike = 0.05

/** Whether white everywhere is within what is bearable, costs a little more than that, or more than a picture takes. */
export const crossing = ({ white, bearable, atMost }: TwoLimits): 'none' | 'slight' | 'full' =>
  white <= bearable + alike ? 'none' : white <= atMost + alike ? 'slight' : 'full'

/** Where both ends lie, in words. */
export const limitsText = (limits: TwoLimits, words: Words): string => {
  const { white, bearable, by } = limits
  const from = Number.isFinite(white)
    ? `white everywhere in frame takes the middle ${words.against(white, 'the key')}`
    : 'these lights cannot make it white everywhere in frame'
  const cost = by === 'wrap' ? 'wrap round the outline' : 'haze'
  const upTo = Number.isFinite(bearable)
    ? `${cost} is bearable up to ${words.stops(bearable)}`
    : bearable > 0
      ? 'wrap and haze stay bearable'
      : `${cost} is past bearable whatever these lights give`
  const verdict = {
    none: 'in between is right',
    slight: `the two cross by ${words.howMany(white - bearable)}, so that white costs a little of the outline`,
    full: 'the two cross, so that no power is right for both',
  }[crossing(limits)]
  return `${from}, and ${upTo}: ${verdict}`
}

/** Well inside both limits: wrap by half a stop, haze (less sure, and slower to change) by a tenth. */
export const farFrom = ({ wrap, lift }: TwoLimits): boolean =>
  (wrap === undefined || wrap < wrapLimits.note - 0.5) && lift < hazeLimits.note - 0.1

// ---------------------------------------------------------------- where they cross

/** Metres more that a photographer might find. */
const most = 4

/**
 * What opens a gap between the two: separation (solved), less of the backdrop in view of the subject, more even light.
 * The backdrop lights go along with the backdrop, turned to what is just white.
 */
export function* uncrossed(limits: TwoLimits, words: Words, context: RuleContext): Iterable<Mend> {
  if (crossing(limits) === 'none') return
  yield* separation(words, context)
  yield* narrower(limits, words, context)
  yield {
    title: 'light the backdrop more evenly: two lights, further off, aimed across',
    gives: 'corners as bright as the middle need less of it',
  }
}

const gapOf = (context: RuleContext, set: ComputedSet): number | undefined => {
  const limits = twoLimits({ ...context, set })
  return limits === undefined ||
    !Number.isFinite(limits.white) ||
    limits.bearable === Number.NEGATIVE_INFINITY
    ? undefined
    : Math.min(10, limits.bearable) - limits.white
}

function* separation(words: Words, context: RuleContext): Iterable<Mend> {
  const { set, plan } = context
  const from = plan.backdrop!.behind
  const at = (one: ComputedSet, behind: number) => one.with({ knob: { knob: 'behind' }, to: behind })
  const to = solveSet(set, from, from + most, at, (one) => gapOf(context, one), 0.1, { tolerance: 0.03 })
  const turned = to === undefined ? undefined : turn(plan, { knob: 'behind' }, to)
  if (turned === undefined) {
    const range = knobRange(plan, { knob: 'behind' })
    if (range !== undefined && range.to < from + 0.5)
      yield { title: 'a longer room, or a tighter frame: there is no more separation to be had in this one' }
    return
  }
  if (turned.change.to - from < 0.05) return
  const moved = at(set, turned.change.to)
  const limits = twoLimits({ ...context, set: moved })
  if (limits === undefined) return
  const names = backdropLights(set).map((light) => light.name)
  yield {
    title: `subject further off: ${turned.title}, the backdrop lights left where they are before it`,
    gives: limitsText(limits, words),
    costs: `${words.length(turned.change.to - from)} more room${turned.short > 0 ? ', which this one has not' : ''}`,
    after: moved.with(...byStops(names, Number.isFinite(limits.turn) ? limits.turn : 0)),
    partial: true,
  }
}

function* narrower({ white, by }: TwoLimits, words: Words, context: RuleContext): Iterable<Mend> {
  const { set, plan } = context
  const view = set.backdropView
  if (by !== 'wrap' || view === undefined || plan.backdrop === undefined) return
  const width = 2 * Math.max(Math.abs(view.left), Math.abs(view.right))
  if (width > plan.backdrop.width - 0.3) return
  const after = twoLimits({ ...context, set: set.with({ knob: { knob: 'backdrop-width' }, to: width }) })
  if (after === undefined || !Number.isFinite(after.bearable)) return
  yield {
    title: 'less of the backdrop in view of the subject: black v-flats on both sides, just outside the frame',
    gives: `wrap is then bearable up to ${words.stops(after.bearable)} over the key${after.bearable >= white ? '' : ', still short of white everywhere'}`,
  }
}
