/** What the gear and the room allow a knob to be set to. */
import type { Plan, PowerRange } from '../language/plan.js'
import { roundForTape } from '../units/length.js'
import { exactFNumber, exactShutter, markedFNumbers, markedSpeeds, markedTimes } from '../units/marks.js'
import type { Metres, Seconds } from '../units/quantity.js'
import { knobToday } from './knob-value.js'
import type { Knob } from './knobs.js'
import { planScene } from './plan-scene.js'

export interface KnobRange {
  readonly from: number
  readonly to: number
  /** The settings there are, ascending; undefined where it goes by tape: 5 cm, or 2 in for an author who works in feet. */
  readonly marks: readonly number[] | undefined
}

/** Common lenses and rolls of paper: common practice, no source. */
const lenses = [24, 28, 35, 50, 70, 85, 105, 135, 200].map((mm) => mm / 1000)
const rolls = [1.35, 2.18, 2.72, 3.55, 4.95]
const zooms = [14, 18, 20, 24, 28, 35, 50, 70, 80, 85, 105, 135, 180, 200].map((mm) => mm / 1000)
/** Of lenses for portraits and groups, and of shutters. */
const apertures = { from: 1.4, to: 32 }
const times = { from: 1 / 8000, to: 30 }
const filters = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10]
/** Metres: how near a light, a camera or a backdrop comes, and how far in the open. */
const nearest = 0.3
/** A panel may lean on the wall. */
const nearestPanel = 0.05
const farthest = { light: 8, camera: 15, aside: 3, backdrop: 10 }
