/** Lights of the set that show together: how far the place where one rules is in colour from where the key rules. */
import type { Light } from '../../language/plan.js'
import type { Apart, Mix } from '../../light/colour/mix.js'
import { colourApart, uOfColours } from '../../light/colour/mix.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { strongestOf } from '../key-lights.js'
import { onBackdrop } from '../on-surface.js'
import { keyAsk } from './balance.js'

export interface OddLights {
  /** Of one colour, at one job. */
  readonly lights: readonly Light[]
  readonly key: Light
  readonly where: 'subject' | 'backdrop'
  readonly apart: Apart & { readonly u: number }
}

/** A light counts by its own colour: not what a gel makes of it on purpose, nor what only outlines or is an effect. */
const counts = (set: ComputedSet, { role, name, gel }: Light): boolean => {
  const colour = set.lightColour(name)
  if (colour === undefined || colour.deep) return false
  return role === 'key' || role === 'fill' || (role === 'backdrop' && gel === undefined)
}

/** The lights that count, the key first; undefined without one. */
const counted = (
  set: ComputedSet,
): { readonly key: Light; readonly others: readonly Light[] } | undefined => {
  const all = set.lit.filter((light) => counts(set, light))
  const keys = all.filter(({ role }) => role === 'key')
  const key = strongestOf(set, keys.length > 0 ? keys : all)
  return key && { key, others: all.filter((light) => light !== key) }
}

/**
 * Those of which somebody has told that they differ from the key: unlike units of which nobody said anything may differ, or not.
 * Cheap: nothing is computed of the light.
 */
export const unlikeKey = (
  set: ComputedSet,
  limit: number,
): { readonly key: Light; readonly others: readonly Light[] } | undefined => {
  if (set.lit.length < 2) return undefined
  const found = counted(set)
  if (found === undefined) return undefined
  const key = set.lightColour(found.key.name)!
  const others = found.others.filter(({ name }) => {
    const own = set.lightColour(name)!
    return (own.told || key.told) && colourApart(own, key).mired + uOfColours(own.causes, key.causes) > limit
  })
  return others.length === 0 ? undefined : { key: found.key, others }
}

/** A place so many stops under the key is too dark for its colour to show. */
const tooDark = 4

export const oddLights = (set: ComputedSet, limit: number): readonly OddLights[] => {
  const found = unlikeKey(set, limit)
  const { key: reading } = set
  if (found === undefined || reading === undefined) return []
  const { key, others } = found
  const all = set.lit.filter((light) => counts(set, light)).map(({ name }) => name)
  const grey = { grey: true } as const
  const shows = (mix: Mix): boolean => mix.xyz[1] > reading.luxSeconds * 2 ** -tooDark
  const each = others.flatMap((light): OddLights[] => {
    const onWall = light.role === 'backdrop'
    const there = onWall
      ? onMiddle(set, all)
      : set.colour({ at: 'subject', dome: 'flat', faces: { light: light.name } }, all, grey)
    const here = onWall
      ? set.colour(keyAsk, all, grey)
      : set.colour({ at: 'subject', dome: 'flat', faces: { light: key.name } }, all, grey)
    if (there === undefined || here === undefined || !shows(there)) return []
    const apart = set.colourApart(there, here)
    return [{ lights: [light], key, where: onWall ? 'backdrop' : 'subject', apart }]
  })
  return together(set, each)
}

/** White that clips has no colour. */
const onMiddle = (set: ComputedSet, lights: readonly string[]): Mix | undefined => {
  const middle = set.backdropView?.middle
  return middle === undefined || middle.linear >= 1
    ? undefined
    : set.colour(onBackdrop(middle.at), lights, { grey: true, unshadowed: true })
}

/** Lights so near in colour, mired, are one finding. */
const alike = 1

const together = (set: ComputedSet, each: readonly OddLights[]): readonly OddLights[] => {
  const found: OddLights[] = []
  for (const one of each) {
    const colour = set.lightColour(one.lights[0]!.name)!
    const at = found.findIndex(
      ({ where, lights }) =>
        where === one.where && colourApart(set.lightColour(lights[0]!.name)!, colour).mired < alike,
    )
    const like = found[at]
    if (like === undefined) found.push(one)
    else
      found[at] = {
        ...(like.apart.mired >= one.apart.mired ? like : one),
        lights: [...like.lights, ...one.lights],
      }
  }
  return found
}
