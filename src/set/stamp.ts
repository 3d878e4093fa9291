/** What lights are set to, as a reading is stamped with it: power and distance in the author's words. */
import type { Light, Plan } from '../language/plan.js'
import type { Scene } from '../scene/scene.js'
import { pointer } from '../text/place.js'
import { writeLength } from '../units/length.js'

/** Power and distance as the author writes them; undefined where neither can be said. */
export const settingsToday = (light: Light, plan: Plan, scene: Scene): string | undefined => {
  const written = (key: string, ...more: string[]): string | undefined =>
    plan.places.written(pointer('lights', light.name, key, ...more))
  const power = light.power === undefined ? undefined : written('power')
  const distance = scene.lights.get(light.name)?.distance
  const tape =
    light.at.by === 'tape'
      ? written('at', 'distance')
      : distance === undefined
        ? undefined
        : writeLength(distance, plan.lengths === 'metric' ? 'metric' : 'feet')
  const settings = [...(power ? [`power: ${power}`] : []), ...(tape ? [`distance: ${tape}`] : [])].join(', ')
  return settings === '' ? undefined : `{ ${settings} }`
}

/** `{ key: { power: 1/4, distance: 1.4 m } }`: the value of `taken`; undefined where there is nothing to say. */
export const stampToday = (lights: readonly Light[], plan: Plan, scene: Scene): string | undefined => {
  const taken = lights.flatMap((light) => {
    const settings = settingsToday(light, plan, scene)
    return settings === undefined ? [] : [`${light.name}: ${settings}`]
  })
  return taken.length === 0 ? undefined : `{ ${taken.join(', ')} }`
}
