/** What was understood of the colour of a light. */
import type { Gel, Light } from '../language/plan.js'
import type { Words } from '../rules/words.js'
import type { ComputedSet } from '../set/computed-set.js'
import { pointer } from '../text/place.js'

/** With what gel and power make of it; written at the light or its unit. */
export const colourEntry = (
  light: Light,
  set: ComputedSet,
): readonly [below: string, value: string | undefined, at: string] => {
  const at = pointer('lights', light.name)
  const stated = set.plan.places.stated(`${at}/colour`) ? `${at}/colour` : `${at}/unit/colour`
  const text = light.on ? colourText(set, light.name) : undefined
  return ['/colour', text, light.unit.colourGuessed === true ? `${at}/colour` : stated]
}

export const colourText = (set: ComputedSet, light: string): string => {
  const colour = set.lightColour(light)
  if (colour === undefined) return 'not known'
  const sure = Math.hypot(...colour.causes.values())
  return colour.deep
    ? 'of its gel'
    : `${Math.round(colour.kelvin)} K, duv ${colour.duv.toFixed(4)}, ± ${Math.round(2 * sure)} mired`
}

export const gelText = ({ names, shift, duv, colour, loss }: Gel, words: Words): string =>
  [
    ...(names === undefined ? [] : [names.join(' and ')]),
    ...(shift === undefined ? [] : [`${shift > 0 ? '+' : ''}${shift} mired`]),
    ...(duv === undefined ? [] : [`duv ${duv > 0 ? '+' : ''}${duv}`]),
    ...(colour === undefined ? [] : [colour]),
    `${words.howMany(loss)} of loss`,
  ].join(', ')
