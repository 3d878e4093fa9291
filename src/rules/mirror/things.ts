/** What may show in a mirror: lights' fronts, and panels that throw light back or let it through. */
import type { Light, Panel } from '../../language/plan.js'
import { shownFace } from '../../scene/front-places.js'
import type { Face, Scene } from '../../scene/scene.js'
import type { Vec3 } from '../../scene/vector.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { knobToday } from '../../set/knob-value.js'
import type { Knob } from '../../set/knobs.js'
import { pointer } from '../../text/place.js'
import { lightBrightness, panelBrightness } from './brightness.js'

export type Thing =
  | { readonly of: 'light'; readonly name: string; readonly light: Light }
  | { readonly of: 'panel'; readonly name: string; readonly panel: Panel }

/** Lights that are on and stand where they can, and all panels. */
export const thingsOf = ({ plan, scene }: ComputedSet): readonly Thing[] => {
  const misplaced = new Set(scene.faults.map(({ figures }) => figures.light))
  return [
    ...[...plan.lights.values()]
      .filter(({ on, name }) => on && !misplaced.has(name))
      .map((light) => ({ of: 'light', name: light.name, light }) as const),
    ...[...plan.panels.values()].map((panel) => ({ of: 'panel', name: panel.name, panel }) as const),
  ]
}

export const facesOf = (scene: Scene, { of, name }: Thing): readonly Face[] => {
  if (of === 'panel') return scene.panels.get(name)?.faces ?? []
  const light = scene.lights.get(name)
  return light === undefined ? [] : [shownFace(light)]
}

/** lx·s per sr as seen from a place; undefined for a light of which nothing tells how strong it is. */
export const brightnessOf = (set: ComputedSet, thing: Thing, face: Face, from: Vec3): number | undefined =>
  thing.of === 'light'
    ? lightBrightness(set, thing.light, from)
    : panelBrightness(set, thing.panel, face, from)

export const thingPointer = ({ of, name }: Thing): string => pointer(`${of}s`, name, 'at')

/** What raises and lowers it: of a light that is placed by an angle up, that. */
export const upKnob = ({ plan }: ComputedSet, { of, name }: Thing): Knob => {
  if (of === 'panel') return { knob: 'panel-height', panel: name }
  const height: Knob = { knob: 'light-height', light: name }
  return knobToday(plan, height) === undefined ? { knob: 'light-up', light: name } : height
}

/** What brings it further round, or aside; undefined for what is placed otherwise. */
export const asideKnob = ({ plan }: ComputedSet, { of, name }: Thing): Knob | undefined => {
  const knobs: readonly Knob[] =
    of === 'panel'
      ? [{ knob: 'panel-right', panel: name }]
      : [
          { knob: 'light-angle', light: name },
          { knob: 'light-right', light: name },
        ]
  return knobs.find((knob) => knobToday(plan, knob) !== undefined)
}
