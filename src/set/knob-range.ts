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
/** Metres: how low and how high the middle of a light's front goes on usual stands. Common practice, no source. */
const lowest = 0.2
const highest = 4
/** Whole steps of five degrees: nobody sets a bearing finer. */
const bearings = Array.from({ length: 73 }, (_, i) => ((i - 36) * 5 * Math.PI) / 180)

const elevations = (plan: Plan, name: string): readonly number[] => {
  const { at } = plan.lights.get(name)!
  const tape = at.by === 'tape' ? (at.distance ?? 0) : 0
  const scene = planScene(plan)
  const face = scene.subject.tapeFrom[2]
  const over = (scene.lights.get(name)?.front?.height ?? 0) / 2
  const top = Math.min(plan.room === undefined ? Number.POSITIVE_INFINITY : plan.room.height - over, highest)
  return bearings.filter((up) => {
    const height = face + tape * Math.sin(up)
    return Math.abs(up) < 1.3 && height >= lowest && height <= top
  })
}

/**
 * Undefined for a knob that this plan does not have: a light without power or `meters`, a fixed head's zoom, a distance
 * of the sun. Strength is in stops against today.
 */
export const knobRange = (plan: Plan, knob: Knob): KnobRange | undefined => {
  const today = knobToday(plan, knob)
  if (today === undefined) return undefined
  switch (knob.knob) {
    case 'strength':
      return strengths(plan, knob.light)
    case 'zoom': {
      const unit = plan.lights.get(knob.light)!.unit
      return unit.kind === 'flash' && unit.zoom !== undefined
        ? marked(zooms.filter((mm) => mm >= unit.zoom!.from - 1e-9 && mm <= unit.zoom!.to + 1e-9))
        : undefined
    }
    case 'aperture':
      return marked(
        markedFNumbers('third')
          .filter((mark) => mark >= apertures.from && mark <= apertures.to)
          .map(exactFNumber),
      )
    case 'shutter': {
      const { denominators, seconds } = markedTimes('third')
      const all = [...denominators.map((under) => 1 / under), ...seconds].filter(
        (mark) => mark >= times.from * (1 - 1e-9) && mark <= times.to,
      )
      return marked([...new Set(all.map((mark) => exactShutter(mark as Seconds)))].sort((a, b) => a - b))
    }
    case 'iso':
      return marked(markedSpeeds)
    case 'filter':
      return marked(filters)
    case 'lens':
      return marked(lenses)
    case 'light-angle':
      return marked(bearings)
    case 'light-up':
      return marked(elevations(plan, knob.light))
    case 'backdrop-width':
      return marked(rolls.filter((width) => plan.room === undefined || width <= plan.room.width))
    default:
      return byTape(plan, knob)
  }
}

const marked = (marks: readonly number[]): KnobRange | undefined =>
  marks.length === 0 ? undefined : { from: marks[0]!, to: marks[marks.length - 1]!, marks }

/** Steps of the unit from full power down; of what is to be metered, third-stop marks. */
const strengths = (plan: Plan, name: string): KnobRange | undefined => {
  const light = plan.lights.get(name)!
  const unit = light.unit
  if (light.power !== undefined && (unit.kind === 'flash' || unit.kind === 'continuous'))
    return marked(powerSteps(unit.power).map((share) => Math.log2(share / light.power!)))
  if (light.meters === undefined) return undefined
  const reads = light.meters.reads
  return marked(markedFNumbers('third').map((mark) => 2 * Math.log2(exactFNumber(mark) / reads)))
}

/** Shares of full power, smallest first. A unit without steps is set to a tenth. */
export const powerSteps = ({ from, to, step }: PowerRange): readonly number[] => {
  const by = step > 0 ? step : 0.1
  const count = Math.floor(Math.log2(to / from) / by + 1e-6)
  return Array.from({ length: count + 1 }, (_, i) => to * 2 ** (-(count - i) * by))
}

/** Distances, as far as the room lets them go. */
const byTape = (plan: Plan, knob: Knob): KnobRange | undefined => {
  const scene = planScene(plan)
  const { room } = scene
  const range = (from: number, to: number): KnobRange | undefined =>
    to > from ? { from, to, marks: undefined } : undefined
  if (knob.knob === 'camera-distance')
    return range(nearest, room === undefined ? farthest.camera : -room.front - nearest)
  if (knob.knob === 'camera-aside')
    return room === undefined
      ? range(-farthest.aside, farthest.aside)
      : range(room.left + nearest, room.right - nearest)
  if (knob.knob === 'behind') {
    // The room's length is shared: the paper goes back as far as the camera keeps its place before the front wall.
    const spare = room === undefined ? undefined : -room.front - plan.camera.at.distance - nearest
    return range(
      nearest,
      spare === undefined ? farthest.backdrop : plan.backdrop!.behind + Math.max(0, spare),
    )
  }
  if (knob.knob === 'before-backdrop')
    return range(nearest, room === undefined ? farthest.light : plan.backdrop!.behind - room.front - nearest)
  if (knob.knob === 'light-right' || knob.knob === 'panel-right') {
    // To its own side of the centre line: across it the plan would name another side.
    const left = knobToday(plan, knob)! < 0
    const margin = knob.knob === 'panel-right' ? nearestPanel : nearest
    const side = room === undefined ? farthest.light : (left ? -room.left : room.right) - margin
    return left ? range(-side, 0) : range(0, side)
  }
  if (knob.knob === 'panel-height')
    return range(lowest, Math.min((room?.height ?? highest + lowest) - lowest, highest))
  if (knob.knob === 'light-height') {
    const { at } = plan.lights.get(knob.light)!
    // By tape the light rises along a circle about the face; right above it there is no bearing left.
    const rise = at.by === 'tape' && at.distance !== undefined ? 0.95 * at.distance : Number.POSITIVE_INFINITY
    const face = scene.subject.tapeFrom[2]
    // Upright, half of the front is over its middle.
    const over = Math.max(lowest, (scene.lights.get(knob.light)?.front?.height ?? 0) / 2)
    return range(
      Math.max(lowest, face - rise),
      Math.min((room?.height ?? highest + over) - over, highest, face + rise),
    )
  }
  if (knob.knob !== 'light-distance') return undefined
  const front = scene.lights.get(knob.light)!.front!.centre
  const from = scene.subject.tapeFrom
  const [x, y, rise] = [front[0] - from[0], front[1] - from[1], front[2] - from[2]]
  const level = Math.hypot(x, y)
  // How many times its distance along the floor it may have before it meets a wall or the backdrop.
  const stretch = (goes: number, low: number, high: number) =>
    Math.abs(goes) < 1e-9 ? Number.POSITIVE_INFINITY : Math.max(0, goes > 0 ? high / goes : low / goes)
  const times = Math.min(
    room === undefined ? Number.POSITIVE_INFINITY : stretch(x, room.left + nearest, room.right - nearest),
    stretch(
      y,
      room === undefined ? Number.NEGATIVE_INFINITY : room.front + nearest,
      (scene.backdrop?.y ?? room?.back ?? Number.POSITIVE_INFINITY) - nearest,
    ),
  )
  return range(
    Math.max(nearest, Math.abs(rise) * 1.05),
    Math.min(farthest.light, Math.hypot(level * times || 0, rise)),
  )
}

/** The settings at or next to a value on either side, nearest first; equal where the value is a setting itself. */
export const settingsRound = (
  plan: Plan,
  range: KnobRange,
  value: number,
): { readonly less: number | undefined; readonly more: number | undefined } => {
  const slack = 1e-6 * Math.max(1, Math.abs(value))
  if (range.marks !== undefined)
    return {
      less: range.marks.findLast((mark) => mark <= value + slack),
      more: range.marks.find((mark) => mark >= value - slack),
    }
  const style = plan.lengths === 'feet' ? 'feet' : 'metric'
  const inside = (at: number) => (at >= range.from - slack && at <= range.to + slack ? at : undefined)
  return {
    less: inside(roundForTape(value as Metres, style, 'less')),
    more: inside(roundForTape(value as Metres, style, 'more')),
  }
}
