/** Turns a knob on a plan: the plan that the author would have written. The plan given stays as it is. */
import type { Backdrop, Height, Light, Panel, Placement, Plan } from '../language/plan.js'
import type { Scene } from '../scene/scene.js'
import { nearestShutter } from '../units/marks.js'
import type { FNumber, Iso, Metres, PowerShare, Radians, Seconds, Stops } from '../units/quantity.js'
import type { Change } from './knobs.js'
import { planScene } from './plan-scene.js'

/** Changes are made one after the other; the scene is asked for only where a place has to be found from it. */
export const applyChanges = (plan: Plan, changes: readonly Change[], sceneOf = planScene): Plan =>
  changes.reduce((changed, change) => applyChange(changed, change, () => sceneOf(changed)), plan)

const applyChange = (plan: Plan, { knob, to }: Change, scene: () => Scene): Plan => {
  switch (knob.knob) {
    case 'strength':
      return withLight(plan, knob.light, (light) => stronger(light, to))
    case 'zoom':
      return withLight(plan, knob.light, (light) => ({ ...light, zoom: to as Metres }))
    case 'light-distance':
      return withLight(plan, knob.light, (light) => ({
        ...light,
        at: atTape(light, to, scene(), plan.backdrop),
      }))
    case 'before-backdrop':
      return withLight(plan, knob.light, (light) => ({
        ...light,
        at: beforeBackdrop(light, to, scene(), plan.backdrop),
      }))
    case 'light-height':
      return withLight(plan, knob.light, (light) => ({ ...light, at: atHeight(light.at, to, plan) }))
    case 'light-up':
      return withLight(plan, knob.light, (light) =>
        light.at.by === 'tape' ? { ...light, at: { ...light.at, up: to as Radians } } : light,
      )
    case 'light-angle':
      return withLight(plan, knob.light, (light) =>
        light.at.by === 'tape' ? { ...light, at: { ...light.at, angleLeft: to as Radians } } : light,
      )
    case 'light-right':
      return withLight(plan, knob.light, (light) =>
        light.at.by === 'offsets' ? { ...light, at: { ...light.at, right: to as Metres } } : light,
      )
    case 'panel-right':
      return withPanel(plan, knob.panel, (panel) =>
        panel.at.by === 'offsets' ? { ...panel, at: { ...panel.at, right: to as Metres } } : panel,
      )
    case 'panel-height':
      return withPanel(plan, knob.panel, (panel) => ({ ...panel, at: atHeight(panel.at, to, plan) }))
    case 'aperture':
      return { ...plan, camera: { ...plan.camera, aperture: to as FNumber } }
    case 'shutter':
      return {
        ...plan,
        camera: { ...plan.camera, shutter: to as Seconds, shutterMarked: nearestShutter(to as Seconds) },
      }
    case 'iso':
      return { ...plan, camera: { ...plan.camera, iso: to as Iso } }
    case 'filter':
      return { ...plan, camera: { ...plan.camera, filter: to as Stops } }
    case 'lens':
      return { ...plan, camera: { ...plan.camera, lens: to as Metres } }
    case 'camera-distance':
      return { ...plan, camera: { ...plan.camera, at: { ...plan.camera.at, distance: to as Metres } } }
    case 'camera-aside':
      return { ...plan, camera: { ...plan.camera, at: { ...plan.camera.at, right: to as Metres } } }
    case 'behind':
      return plan.backdrop === undefined ? plan : movedBackdrop(plan, to as Metres)
    case 'backdrop-width':
      return plan.backdrop === undefined
        ? plan
        : { ...plan, backdrop: { ...plan.backdrop, width: to as Metres } }
  }
}

const withLight = (plan: Plan, name: string, turn: (light: Light) => Light): Plan => {
  const light = plan.lights.get(name)
  return light === undefined ? plan : { ...plan, lights: new Map(plan.lights).set(name, turn(light)) }
}

const withPanel = (plan: Plan, name: string, turn: (panel: Panel) => Panel): Plan => {
  const panel = plan.panels.get(name)
  return panel === undefined ? plan : { ...plan, panels: new Map(plan.panels).set(name, turn(panel)) }
}

/** The power is what is set; where only what it is to meter is known, that is turned instead. */
const stronger = (light: Light, by: number): Light =>
  light.power !== undefined
    ? { ...light, power: (light.power * 2 ** by) as PowerShare }
    : light.meters !== undefined
      ? { ...light, meters: { ...light.meters, reads: (light.meters.reads * 2 ** (by / 2)) as FNumber } }
      : light

/** Same bearing and height. A place stated by offsets is written by offsets again. */
const atTape = (light: Light, tape: number, scene: Scene, backdrop: Backdrop | undefined): Placement => {
  const { at } = light
  const front = scene.lights.get(light.name)?.front
  if (at.by === 'tape') return at.distance === undefined ? at : { ...at, distance: tape as Metres }
  if (at.by === 'camera' || front === undefined) return at
  const from = scene.subject.tapeFrom
  const [right, behind] = [front.centre[0] - from[0], front.centre[1] - from[1]]
  const level = Math.hypot(right, behind)
  const rise = front.centre[2] - from[2]
  const reach = Math.sqrt(Math.max(0, tape ** 2 - rise ** 2))
  // Right above the face there is no bearing to keep: it moves toward the camera's end.
  const [x, y] = level > 1e-9 ? [right / level, behind / level] : [0, -1]
  const moved = { right: (from[0] + x * reach) as Metres, behind: (from[1] + y * reach) as Metres }
  const before =
    at.beforeBackdrop !== undefined && backdrop !== undefined ? backdrop.behind - moved.behind : undefined
  return { ...at, ...moved, beforeBackdrop: before as Metres | undefined }
}

const beforeBackdrop = (
  light: Light,
  before: number,
  scene: Scene,
  backdrop: Backdrop | undefined,
): Placement => {
  const front = scene.lights.get(light.name)?.front
  if (light.at.by === 'camera' || front === undefined || backdrop === undefined) return light.at
  const behind = (backdrop.behind - before) as Metres
  return light.at.by === 'offsets'
    ? { ...light.at, behind, beforeBackdrop: before as Metres }
    : {
        by: 'offsets',
        right: front.centre[0] as Metres,
        behind,
        beforeBackdrop: before as Metres,
        height: light.at.height ?? floorHeight(front.centre[2]),
      }
}

/** Over whatever it is measured from. An angle up that stands for the height gives way to it. */
const atHeight = (at: Placement, z: number, { subject }: Plan): Placement => {
  if (at.by === 'camera') return at
  const height: Height =
    at.height?.over === 'table'
      ? { over: 'table', metres: (z - (subject.standsOn?.height ?? 0)) as Metres }
      : floorHeight(z)
  return at.by === 'tape' ? { ...at, height, up: undefined } : { ...at, height }
}

const floorHeight = (z: number): Height => ({ over: 'floor', metres: z as Metres })

/** What is placed before the backdrop goes along with it; what is placed otherwise stays. */
const movedBackdrop = (plan: Plan, behind: Metres): Plan => {
  const along = <T extends { readonly at: Placement }>(thing: T): T =>
    thing.at.by === 'offsets' && thing.at.beforeBackdrop !== undefined
      ? { ...thing, at: { ...thing.at, behind: (behind - thing.at.beforeBackdrop) as Metres } }
      : thing
  const all = <T extends { readonly at: Placement }>(
    things: ReadonlyMap<string, T>,
  ): ReadonlyMap<string, T> => new Map([...things].map(([name, thing]) => [name, along(thing)]))
  return {
    ...plan,
    backdrop: { ...plan.backdrop!, behind },
    lights: all(plan.lights),
    panels: all(plan.panels),
  }
}
