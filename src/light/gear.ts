/**
 * What readings of single lights tell of their gear. A light that a meter did read is what the meter said; what it is off
 * its rating is put down to unit, modifier and the light itself, by how unsure each is, and so moves other lights of the
 * same unit or modifier.
 */
import { add, type Causes, ownPart, type SharedPart, type UncertainStrength } from './causes.js'
import { factored, solved } from './positive.js'

/** One reading of one light against what was known of it before. */
export interface OffRating {
  readonly light: string
  readonly prior: UncertainStrength
  /** Stops that were read over what the prior gives. */
  readonly off: number
  /** The reading's uncertainty: its own part under a name, and what it has in common with other readings. */
  readonly noise: SharedPart
  readonly shared: readonly SharedPart[]
}

export interface Gear {
  /** Stops by which what a light of this gear gives is moved, and its uncertainty then. */
  moved(light: UncertainStrength): { readonly by: number; readonly how: UncertainStrength }
}

/** Stops of each entry found, and what its error is made of. */
type Learnt = ReadonlyMap<string, { readonly mean: number; readonly error: Causes }>

/**
 * Bayes' rule, linear and normal: entries ŵ = G·r with r = Hw + noise. The error w − ŵ is kept as what it owes to each
 * cause, so that it varies together with the light that was read by what they have in common.
 */
export const learn = (readings: readonly OffRating[]): Gear => {
  const rows = readings.filter(({ prior }) => prior.shared !== undefined).map(rowOf)
  const learnt: Learnt = rows.length === 0 ? new Map() : entriesOf(rows)
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

interface RatingRow {
  readonly off: number
  /** All causes but the noise. */
  readonly causes: Causes
  readonly noise: SharedPart
  readonly entries: readonly string[]
}

const rowOf = ({ light, prior, off, noise, shared }: OffRating): RatingRow => {
  const causes = new Map<string, number>()
  // Not the light's own cause: a light that was read is open, and has that for itself.
  add(causes, `off rating ${light}`, ownPart(prior))
  for (const { entry, u } of [...prior.shared!, ...shared]) add(causes, entry, u)
  return { off, causes, noise, entries: prior.shared!.map(({ entry }) => entry) }
}

const entriesOf = (rows: readonly RatingRow[]): Learnt => {
  const index = new Map<string, number>()
  for (const { causes } of rows)
    for (const cause of causes.keys()) if (!index.has(cause)) index.set(cause, index.size)
  const size = index.size
  const normal = new Float64Array(size * size)
  for (let i = 0; i < size; i++) normal[i * size + i] = 1
  for (const { causes, noise } of rows)
    for (const [a, by] of causes)
      for (const [b, and] of causes)
        normal[index.get(a)! * size + index.get(b)!]! += (by * and) / noise.u ** 2
  const l = factored(normal, size)
  const gains = rows.map(({ causes, noise }) => {
    const row = new Float64Array(size)
    for (const [cause, by] of causes) row[index.get(cause)!] = by / noise.u ** 2
    return solved(l, size, row)
  })
  const entries = new Set(rows.flatMap((row) => row.entries))
  return new Map(
    [...entries].map((entry) => {
      let mean = 0
      const error = new Map([[entry, 1]])
      rows.forEach(({ off, causes, noise }, i) => {
        const gain = gains[i]![index.get(entry)!]!
        mean += gain * off
        for (const [cause, by] of causes) add(error, cause, -gain * by)
        add(error, noise.entry, -gain * noise.u)
      })
      return [entry, { mean, error }] as const
    }),
  )
}
