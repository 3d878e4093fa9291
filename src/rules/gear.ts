/** What gear can be set to, in the words of a mend: `lights.paper.power → 1/8 + 0.3`. */
import type { Plan } from '../language/plan.js'
import { recycleAt } from '../light/charge.js'
import { knobRange, settingsRound } from '../set/knob-range.js'
import { knobPointer, knobToday, writeKnob } from '../set/knob-value.js'
import type { Change, Knob } from '../set/knobs.js'
import { pointerKeys } from '../text/place.js'
import { markedSpeeds, nearestFNumber } from '../units/marks.js'
import type { FNumber } from '../units/quantity.js'

export interface Turned {
  readonly change: Change
  /** `lights.paper.power → 1/4 + 0.3`. */
  readonly title: string
  /** What is missing to what was asked, in the knob's unit; 0 where the gear and the room reach it. */
  readonly short: number
}

/**
 * A knob at the setting that is at least as far from today's as `value`, or the nearest to it; at the end of its range
 * where that is sooner. Undefined for a knob that the plan does not have.
 */
export const turn = (
  plan: Plan,
  knob: Knob,
  value: number,
  to: 'at least' | 'nearest' = 'at least',
): Turned | undefined => {
  const today = knobToday(plan, knob)
  const range = today === undefined ? undefined : knobRange(plan, knob)
  if (today === undefined || range === undefined) return undefined
  const up = value >= today
  const { less, more } = settingsRound(plan, range, value)
  const farther = up ? more : less
  const nearer = up ? less : more
  const wanted =
    to === 'nearest' && farther !== undefined && nearer !== undefined
      ? Math.abs(nearer - value) < Math.abs(farther - value)
        ? nearer
        : farther
      : farther
  const last = settingsRound(plan, range, up ? range.to : range.from)
  const setting = wanted ?? (up ? last.less : last.more) ?? (up ? range.to : range.from)
  return {
    change: { knob, to: setting },
    title: `${dotted(knobPointer(plan, knob))} → ${writeKnob(plan, knob, setting)}`,
    short: wanted === undefined ? Math.abs(value - setting) : 0,
  }
}

/** A light's strength changed by stops. */
export const turnLight = (
  plan: Plan,
  light: string,
  stops: number,
  to: 'at least' | 'nearest' = 'at least',
): Turned | undefined => turn(plan, { knob: 'strength', light }, stops, to)

const dotted = (at: string): string => pointerKeys(at).join('.')

/** Seconds more that a flash takes to recycle when turned by stops, where the kit says what it takes at full. */
export const recycleGrows = (plan: Plan, light: string, stops: number): number => {
  const { unit, power } = plan.lights.get(light)!
  return unit.kind === 'flash' && unit.recycle !== undefined && power !== undefined
    ? recycleAt(unit, power).value * (2 ** stops - 1)
    : 0
}

/** Figures that lie on a mark stay there, whatever the last digit of a division. */
const onMark = 1e-6

/** The third-stop mark at or over (a smaller opening), at or under, or nearest to an f-number. */
export const markedAperture = (n: number, towards: 'over' | 'under' | 'nearest' = 'nearest'): FNumber => {
  const nearest = nearestFNumber(n as FNumber)
  const third = 2 ** (1 / 6)
  if (towards === 'over' && nearest.over > onMark) return (nearest.exact * third) as FNumber
  if (towards === 'under' && nearest.over < -onMark) return (nearest.exact / third) as FNumber
  return nearest.exact
}

/** Marked speeds are rounded: ISO 125 stands for 126. */
const roundedMark = 0.03

/** The marked speed at or over an ISO; undefined beyond the marks. */
export const markedSpeedOver = (iso: number): number | undefined =>
  markedSpeeds.find((mark) => mark >= iso * (1 - roundedMark))

/** Most cameras start at ISO 100; what lies under it is no gain. Common practice, no source. */
const lowestSpeed = 100

/** The marked speed at or under an ISO; undefined under the lowest that cameras have. */
export const markedSpeedUnder = (iso: number): number | undefined =>
  markedSpeeds.findLast((mark) => mark <= iso * (1 + roundedMark) && mark >= lowestSpeed)

/** To a tenth; bursts to a hundredth. */
export const secondsText = (seconds: number): string => {
  if (seconds < 0.03) return `${Number(seconds.toPrecision(2))} s`
  const grain = seconds < 0.3 ? 100 : 10
  return `${Math.round(seconds * grain) / grain} s`
}
