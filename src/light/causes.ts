/**
 * What makes a figure uncertain, taken apart into causes that are independent of each other and have variance 1: each
 * light's own part, what gear of one kind shares, the camera's rendering. A figure is then a row of numbers, stops for
 * each cause, and two figures vary together by what they have in common.
 */
import type { Figure } from './figure.js'

/** Stops by cause. */
export type Causes = ReadonlyMap<string, number>

/** A part of an uncertainty that others have too: `entry` names the cause, `u` is what it turns, in stops, with its sign. */
export interface SharedPart {
  readonly entry: string
  readonly u: number
}

/** A strength's uncertainty: `u` in all; the parts of it that are shared with other lights. */
export interface UncertainStrength {
  readonly u: number
  readonly shared?: readonly SharedPart[]
}

/** How sure the strength of a light is; undefined for one that is not known. */
export type UncertainOf = (light: string) => UncertainStrength | undefined

/** What a light shares with no other. */
export const ownCause = (light: string): string => `own ${light}`

/** The camera's rendering of tones: once a plan. */
export const renderingCause = 'rendering'

/** Covariance of two figures, stops². */
export interface Covariance {
  product(a: Causes, b: Causes): number
}

/** Nothing is known beyond the causes themselves. */
export const independent: Covariance = {
  product: (a, b) => {
    let sum = 0
    for (const [cause, by] of a) sum += by * (b.get(cause) ?? 0)
    return sum
  },
}

/** Standard deviation of what is left to a light when its shared parts are taken out. */
export const ownPart = ({ u, shared }: UncertainStrength): number =>
  shared === undefined
    ? u
    : Math.sqrt(
        Math.max(
          0,
          shared.reduce((left, part) => left - part.u ** 2, u ** 2),
        ),
      )

/** All parts of a light's uncertainty by cause. */
export const partsOf = (light: string, strength: UncertainStrength): readonly SharedPart[] => [
  { entry: ownCause(light), u: ownPart(strength) },
  ...(strength.shared ?? []),
]

/** Adds `share` of a light's parts to a row. */
export const addParts = (
  row: Map<string, number>,
  light: string,
  strength: UncertainStrength,
  share: number,
): void => {
  add(row, ownCause(light), share * ownPart(strength))
  if (strength.shared !== undefined) addShared(row, strength.shared, share)
}

export const addShared = (row: Map<string, number>, parts: readonly SharedPart[], share: number): void => {
  for (const { entry, u } of parts) add(row, entry, share * u)
}

/** Adds to what a row has of a cause. */
export const add = (row: Map<string, number>, cause: string, by: number): void => {
  row.set(cause, (row.get(cause) ?? 0) + by)
}

/** A figure's causes but for what is its own (`variance`). `rendering`: u of the camera's rendering, stops. */
export const causesOf = (
  { gradient, rendering: coefficient }: Figure,
  strengthOf: UncertainOf,
  rendering: number,
): Map<string, number> => {
  const row = new Map<string, number>()
  for (const [light, share] of gradient) {
    const strength = strengthOf(light)
    if (strength !== undefined) addParts(row, light, strength, share)
  }
  if (coefficient !== 0) row.set(renderingCause, coefficient * rendering)
  return row
}
