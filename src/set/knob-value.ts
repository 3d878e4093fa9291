/** A knob's value in a plan, the pointer that holds it, and how its values are written. */
import type { Light, Placement, Plan } from '../language/plan.js'
import { pointer } from '../text/place.js'
import { type LengthStyle, lengthStyle, roundForTape, writeLength } from '../units/length.js'
import { nearestShutter, writeFNumber } from '../units/marks.js'
import { type PowerNotation, writePower } from '../units/power.js'
import type { FNumber, Metres, PowerShare, Radians, Seconds, Stops } from '../units/quantity.js'
import { inDegrees } from '../units/quantity.js'
import { writeShutter } from '../units/shutter.js'
import { writeStops } from '../units/stops.js'
import { applyChanges } from './apply-change.js'
import type { Knob } from './knobs.js'
import { planScene } from './plan-scene.js'

/** Today's value in the knob's unit (0 for a strength); undefined for a knob that this plan does not have. */
export const knobToday = (plan: Plan, knob: Knob): number | undefined => {
  const light = 'light' in knob ? plan.lights.get(knob.light) : undefined
  if ('light' in knob && light === undefined) return undefined
  const panel = 'panel' in knob ? plan.panels.get(knob.panel) : undefined
  if ('panel' in knob && panel === undefined) return undefined
  const { camera, backdrop } = plan
  switch (knob.knob) {
    case 'strength':
      return light!.power === undefined && light!.meters === undefined ? undefined : 0
    case 'zoom':
      return light!.zoom
    case 'light-distance':
      return light!.at.by === 'camera' ? undefined : planScene(plan).lights.get(light!.name)?.distance
    case 'before-backdrop': {
      const front = planScene(plan).lights.get(light!.name)?.front
      return light!.at.by === 'camera' || front === undefined || backdrop === undefined
        ? undefined
        : backdrop.behind - front.centre[1]
    }
    case 'light-height':
      return heightIsStated(light!) ? planScene(plan).lights.get(light!.name)?.front?.centre[2] : undefined
    case 'light-up':
      return light!.at.by === 'tape' && light!.at.height === undefined && light!.unit.kind !== 'sun'
        ? light!.at.up
        : undefined
    case 'light-angle':
      return light!.at.by === 'tape' && light!.unit.kind !== 'sun' ? light!.at.angleLeft : undefined
    case 'light-right':
      return light!.at.by === 'offsets' ? light!.at.right : undefined
    case 'panel-right':
      return panel!.at.by === 'offsets' ? panel!.at.right : undefined
    case 'panel-height':
      return panel!.kind !== 'v-flat' && heightIsStated(panel!)
        ? planScene(plan).panels.get(panel!.name)?.faces[0]?.centre[2]
        : undefined
    case 'camera-distance':
      return camera.at.distance
    case 'camera-aside':
      return camera.at.right
    case 'behind':
      return backdrop?.behind
    case 'backdrop-width':
      return backdrop?.width
    default:
      return camera[knob.knob]
  }
}

/** An angle up in place of a height is not turned by height. */
const heightIsStated = ({ at }: Pick<Light, 'at'>): boolean =>
  at.by !== 'camera' && (at.height !== undefined || at.by === 'offsets' || at.up === undefined)

/** Where the value that the knob turns is written, or would be. */
export const knobPointer = (plan: Plan, knob: Knob): string => {
  switch (knob.knob) {
    case 'strength':
      return strengthPointer(plan, knob.light)
    case 'zoom':
      return pointer('lights', knob.light, 'zoom')
    case 'light-distance':
      return placePointer(plan, knob.light, 'tape', 'distance')
    case 'before-backdrop':
      return placePointer(plan, knob.light, 'offsets', 'before-backdrop')
    case 'light-height':
      return pointer('lights', knob.light, 'at', 'height')
    case 'light-up':
      return pointer('lights', knob.light, 'at', 'up')
    case 'light-angle':
      return pointer('lights', knob.light, 'at', 'angle')
    case 'light-right':
      return pointer('lights', knob.light, 'at', sideOf(plan.lights.get(knob.light)))
    case 'panel-right':
      return pointer('panels', knob.panel, 'at', sideOf(plan.panels.get(knob.panel)))
    case 'panel-height':
      return pointer('panels', knob.panel, 'at', 'height')
    case 'camera-distance':
      return pointer('camera', 'at', 'distance')
    case 'camera-aside':
      return pointer('camera', 'at', 'aside')
    case 'behind':
      return pointer('backdrop', behindLastRow(plan) ? 'behind-last-row' : 'behind')
    case 'backdrop-width':
      return pointer('backdrop', 'width')
    default:
      return pointer('camera', knob.knob)
  }
}

const sideOf = (thing: Pick<Light, 'at'> | undefined): 'left' | 'right' =>
  thing?.at.by === 'offsets' && thing.at.right < 0 ? 'left' : 'right'

const strengthPointer = (plan: Plan, name: string): string => {
  const light = plan.lights.get(name)
  if (light?.power !== undefined || light?.meters === undefined) return pointer('lights', name, 'power')
  const inside = pointer('lights', name, 'meters', 'reads')
  return plan.places.stated(inside) ? inside : pointer('lights', name, 'meters')
}

/** A place that is stated in the other way is written anew as a whole. */
const placePointer = (plan: Plan, name: string, by: Placement['by'], key: string): string => {
  const at = plan.lights.get(name)?.at
  const own = at?.by === by && (at.by !== 'offsets' || at.beforeBackdrop !== undefined)
  return own ? pointer('lights', name, 'at', key) : pointer('lights', name, 'at')
}

const behindLastRow = (plan: Plan): boolean => plan.places.stated('/backdrop/behind-last-row')

/** The text that stands at the knob's pointer once it is turned to this value: in the author's notation and units. */
export const writeKnob = (plan: Plan, knob: Knob, value: number): string => {
  const light = 'light' in knob ? plan.lights.get(knob.light) : undefined
  switch (knob.knob) {
    case 'strength':
      if (light?.power === undefined)
        return writeFNumber(((light?.meters?.reads ?? 1) * 2 ** (value / 2)) as FNumber)
      return writePower((light.power * 2 ** value) as PowerShare, stepOf(light), notationOf(plan, light))
    case 'zoom':
    case 'lens':
      return `${Number((value * 1000).toFixed(1))} mm`
    case 'aperture':
      return writeFNumber(value as FNumber)
    case 'shutter':
      return writeShutter(nearestShutter(value as Seconds))
    case 'iso':
      return String(Math.round(value))
    case 'filter':
      return writeStops(value as Stops)
    case 'light-distance':
    case 'before-backdrop': {
      const at = knobPointer(plan, knob)
      return at.endsWith('/at')
        ? writeOffsets(
            plan,
            knob.light,
            applyChanges(plan, [{ knob, to: value }]).lights.get(knob.light)!.at,
            at,
          )
        : written(plan, at, value)
    }
    case 'light-height':
    case 'panel-height': {
      const at = knob.knob === 'light-height' ? light?.at : plan.panels.get(knob.panel)?.at
      const over = at?.by !== 'camera' && at?.height?.over === 'table'
      const from = over ? (plan.subject.standsOn?.height ?? 0) : 0
      return `${written(plan, knobPointer(plan, knob), value - from)}${over ? ' over table' : ''}`
    }
    case 'light-up':
      return `${Math.round(inDegrees(value as Radians))} deg`
    case 'light-angle':
      return `${Math.round(Math.abs(inDegrees(value as Radians)))} deg ${value < 0 ? 'right' : 'left'}`
    case 'light-right':
    case 'panel-right':
      return written(plan, knobPointer(plan, knob), Math.abs(value))
    case 'camera-aside':
      return `${written(plan, knobPointer(plan, knob), Math.abs(value))} ${value < 0 ? 'left' : 'right'}`
    case 'behind': {
      const rows = behindLastRow(plan) ? plan.subject.rows.slice(1) : []
      return written(plan, knobPointer(plan, knob), value - rows.reduce((sum, row) => sum + row.behind, 0))
    }
    default:
      return written(plan, knobPointer(plan, knob), value)
  }
}

const stepOf = ({ unit }: Light): Stops =>
  unit.kind === 'flash' || unit.kind === 'continuous' ? unit.power.step : (0 as Stops)

const notationOf = (plan: Plan, { name, unit }: Light): PowerNotation => {
  if (unit.kind !== 'flash' && unit.kind !== 'continuous') return { as: 'fraction' }
  const text = plan.places.written(pointer('lights', name, 'power')) ?? ''
  const energy = unit.kind === 'flash' ? unit.energy : undefined
  if (unit.power.dial !== undefined && text.startsWith('dial'))
    return { as: 'dial', top: unit.power.dial.top }
  if (text.includes('%')) return { as: 'percent' }
  return energy !== undefined && /(?:ws|j)\s*$/iu.test(text)
    ? { as: 'energy', full: energy }
    : { as: 'fraction' }
}

/** In the style of the value that stands there, else as the plan measures. */
const written = (plan: Plan, at: string, value: number): string =>
  writeLength(value as Metres, styleAt(plan, at))

const styleAt = (plan: Plan, at: string): LengthStyle =>
  lengthStyle(plan.places.written(at) ?? '') ?? (plan.lengths === 'feet' ? 'feet' : 'metric')

const writeOffsets = (plan: Plan, name: string, at: Placement, from: string): string => {
  if (at.by !== 'offsets') return ''
  // What is solved is set by tape; what stays where it is stays as exact as it is.
  const stands = plan.lights.get(name)?.at
  const was = stands?.by === 'offsets' ? [stands.right, stands.behind, stands.beforeBackdrop] : []
  const taped = (value: number) =>
    was.some((one) => one !== undefined && Math.abs(one - value) < 1e-9)
      ? value
      : roundForTape(value as Metres, plan.lengths === 'feet' ? 'feet' : 'metric')
  const part = (key: string, value: number) =>
    `${key}: ${written(plan, `${from}/${key}`, Math.abs(taped(value)))}`
  return `{ ${[
    part(at.right < 0 ? 'left' : 'right', at.right),
    at.beforeBackdrop !== undefined
      ? part('before-backdrop', at.beforeBackdrop)
      : part(at.behind < 0 ? 'front' : 'behind', at.behind),
    ...(at.height === undefined
      ? []
      : [
          `height: ${written(plan, `${from}/height`, at.height.metres)}${at.height.over === 'table' ? ' over table' : ''}`,
        ]),
  ].join(', ')} }`
}
