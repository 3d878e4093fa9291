import type { Light } from '../language/plan.js'
import { pointer } from '../text/place.js'

/** Pointer to a light, or to something of it. */
export const lightPointer = (light: string, ...keys: readonly string[]): string =>
  pointer('lights', light, ...keys)

/** Where a light's distance is written. */
export const placePointer = (light: Light): string =>
  light.at.by === 'tape' ? lightPointer(light.name, 'at', 'distance') : lightPointer(light.name, 'at')

/** Where a light's setting is written: what it is set to, or what it is to meter. */
export const settingPointer = (light: Light): string =>
  lightPointer(light.name, light.power !== undefined ? 'power' : light.meters !== undefined ? 'meters' : 'at')
