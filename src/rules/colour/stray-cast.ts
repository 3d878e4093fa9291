/** Light of the place and of modelling lamps among the flash: its cast where it shows most. */

import { scaledXyz } from '../../light/colour/chromaticity.js'
import type { Mix } from '../../light/colour/mix.js'
import { type Apart, colourApart, mixOf, uOfColours } from '../../light/colour/mix.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { shadowSide } from '../../set/shadow-side.js'
import { ambientName, modellingName } from '../../set/transport.js'
import { keyAsk, keyMix } from './balance.js'

export interface StrayCast {
  /** Its name in the set. */
  readonly light: string
  readonly where: 'lit side' | 'dark side' | 'behind'
  /** The key reading’s own colour, kelvin. */
  readonly key: number
  /** Somebody stated it. */
  readonly told: boolean
  /** Stops under the key, at the key reading. */
  readonly under: number
  /** Stops by which the darkest side lies under the lit one. */
  readonly down: number
  readonly apart: Apart & { readonly u: number }
  /** How much of it shows, 0 to 1. */
  readonly shows: number
}

/** The room behind shows its colour down to so many stops under the key, and less and less over the last of them. */
const behindShows = 3

const strays = ({ plan, lit, giving }: ComputedSet): readonly string[] =>
  lit.length === 0
    ? []
    : [
        ...(plan.ambient === undefined ? [] : [ambientName]),
        ...lit.map(({ name }) => modellingName(name)),
      ].filter((name) => giving.includes(name))

/** Those that differ from the key so that it could show. Cheap: nothing is computed of the light. */
export const unlikeStrays = (set: ComputedSet, limit: number): readonly string[] => {
  const names = strays(set)
  if (names.length === 0) return []
  const keys = set.keyLights.flatMap(({ name }) => set.lightColour(name) ?? [])
  if (keys.length === 0 || keys.some(({ deep }) => deep)) return []
  return names.filter((name) => {
    const own = set.lightColour(name)
    return (
      own !== undefined &&
      keys.some((key) => colourApart(own, key).mired + uOfColours(own.causes, key.causes) > limit)
    )
  })
}

/** @param darkest stops under the lit side that no side is taken to be darker than, where no ratio is wanted */
export const strayCasts = (set: ComputedSet, limit: number, darkest: number): readonly StrayCast[] => {
  const names = unlikeStrays(set, limit)
  const key = names.length === 0 ? undefined : keyMix(set)
  if (key === undefined || key.unknown > 0.05) return []
  const down = downOfSide(set, darkest)
  const told = set.keyLights.every(({ name }) => set.lightColour(name)?.told === true)
  return names.flatMap((light): StrayCast[] => {
    const stray = set.colour(keyAsk, [light])
    if (stray === undefined) return []
    const under = Math.log2(key.xyz[1] / stray.xyz[1])
    const at = (where: StrayCast['where'], mix: Mix | undefined, shows = 1): StrayCast[] =>
      mix === undefined
        ? []
        : [{ light, where, key: key.kelvin, told, under, down, shows, apart: set.colourApart(mix, key) }]
    const all = [
      ...at('lit side', together(key, stray, 0)),
      ...(down > 0 ? at('dark side', together(key, stray, down)) : []),
      // Whoever lets the room into the exposure wants it behind the subject as it is.
      ...(light === ambientName &&
      set.plan.wanted.ambient !== 'any' &&
      set.plan.backdrop === undefined &&
      under < behindShows
        ? at('behind', stray, Math.min(1, behindShows - under))
        : []),
    ]
    return [all.reduce((most, one) => (shownMired(one) > shownMired(most) ? one : most))]
  })
}

/** As much of the cast as shows, mired. */
export const shownMired = ({ apart, shows }: StrayCast): number => shows * apart.mired

/** What the key leaves on a side so many stops down, with the stray light, which is on all sides alike. */
const together = (key: Mix, stray: Mix, down: number): Mix | undefined =>
  mixOf([...key.parts.map((part) => ({ ...part, xyz: scaledXyz(part.xyz, 2 ** -down) })), ...stray.parts], 0)

/** As the ratio that is wanted says; else as the set has it without the stray light, within bounds. */
const downOfSide = (set: ComputedSet, darkest: number): number => {
  const { ratio } = set.plan.wanted
  if (ratio !== undefined) return Math.log2(ratio.kind === 'lit-to-shadow' ? ratio.ratio : ratio.ratio + 1)
  const sides = shadowSide(set)
  if (sides === undefined) return 0
  const without = ({ byLight }: { readonly byLight: ReadonlyMap<string, number> }): number =>
    [...byLight].reduce((sum, [name, by]) => (set.plan.lights.has(name) ? sum + by : sum), 0)
  const [lit, dark] = [without(sides.lit), without(sides.shadow)]
  return dark > 0 ? Math.min(darkest, Math.max(0, Math.log2(lit / dark))) : darkest
}
