/**
 * What readings of single lights tell of their gear. A light that a meter did read is what the meter said; what it is off
 * its rating is put down to unit, modifier and the light itself, by how unsure each is, and so moves other lights of the
 * same unit or modifier.
 */
import { add, type Causes, independent, ownPart, type UncertainStrength } from './causes.js'
import { uncertainties } from './how-sure.js'
import { factored, solved } from './positive.js'

/** A light as its readings found it, against what was known of it before. */
export interface OffRating {
  readonly light: string
  readonly prior: UncertainStrength
  /** Stops that it gives over what the prior says. */
  readonly off: number
  /** What the error of that is made of. */
  readonly error: Causes
}

export interface Gear {
  /** Stops by which what a light of this gear gives is moved, and its uncertainty then. */
  moved(light: UncertainStrength): { readonly by: number; readonly how: UncertainStrength }
}

/** Of each entry: what was found of it, in standard deviations, and what its error is made of. */
type Learnt = ReadonlyMap<string, { readonly mean: number; readonly error: Causes }>

/**
 * Bayes' rule, linear and normal: entries ŵ = G·off, G as if common readings were exact, so that to read the same again
 * teaches nothing new. The error w − ŵ is kept as what it owes to each cause, so that a light that is moved varies together with
 * the lights that were read.
 */
export const learn = (lights: readonly OffRating[]): Gear => {
  const rated = lights.filter(({ prior }) => prior.shared !== undefined)
  const learnt: Learnt = rated.length === 0 ? new Map() : entriesOf(rated)
  return {
    moved: (light) => {
      const { shared } = light
      if (shared === undefined || !shared.some(({ entry }) => learnt.has(entry))) return { by: 0, how: light }
      let by = 0
      const row = new Map<string, number>()
      for (const { entry, u } of shared) {
        const found = learnt.get(entry)
        if (found === undefined) add(row, entry, u)
        else {
          by += u * found.mean
          for (const [cause, part] of found.error) add(row, cause, u * part)
        }
      }
      const parts = [...row].map(([entry, u]) => ({ entry, u }))
      return { by, how: { u: Math.hypot(ownPart(light), ...row.values()), shared: parts } }
    },
  }
}

/** Variance by which a light's readings are less sure than a common one: those count for less. */
const excess = (error: Causes): number =>
  Math.max(0, independent.product(error, error) - uncertainties.reading ** 2)

/** Variance that keeps lights with nothing of their own from being the same light twice. */
const least = 1e-9

const entriesOf = (lights: readonly OffRating[]): Learnt => {
  const size = lights.length
  const rows = lights.map(rowOf)
  const spread = new Float64Array(size * size)
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) spread[i * size + j] = independent.product(rows[i]!, rows[j]!)
    spread[i * size + i]! += least + excess(lights[i]!.error)
  }
  const l = factored(spread, size)
  const entries = new Set(lights.flatMap(({ prior }) => prior.shared!.map(({ entry }) => entry)))
  return new Map(
    [...entries].map((entry) => {
      const gains = solved(
        l,
        size,
        Float64Array.from(rows, (row) => row.get(entry) ?? 0),
      )
      let mean = 0
      const error = new Map([[entry, 1]])
      lights.forEach((light, i) => {
        mean += gains[i]! * light.off
        for (const [cause, by] of rows[i]!) add(error, cause, -gains[i]! * by)
        for (const [cause, by] of light.error) add(error, cause, -gains[i]! * by)
      })
      return [entry, { mean, error }] as const
    }),
  )
}

/** Its own part goes by another name than the light's: the light was read, and keeps nothing of its rating. */
const rowOf = ({ light, prior }: OffRating): Causes => {
  const row = new Map([[`off rating ${light}`, ownPart(prior)]])
  for (const { entry, u } of prior.shared!) add(row, entry, u)
  return row
}
