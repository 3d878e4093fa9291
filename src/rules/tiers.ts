/** Rules with several levels: which of them a figure reaches, given how sure it is. */
import { verdict } from '../light/how-sure.js'
import type { Level } from './rule.js'

export interface Tier {
  readonly level: Level
  readonly limit: number
}

export interface Reached {
  readonly level: Level
  readonly limit: number
  readonly beyond: { readonly stops: number; readonly u: number }
}

const heights: Readonly<Record<Level, number>> = { note: 1, warning: 2, error: 3 }
const certainties: Readonly<Record<string, number>> = { sure: 3, probable: 2, possible: 1 }

/**
 * The tier that says most: a figure surely past the lower limit and perhaps past the upper one is a sure finding of the
 * lower level, not a doubtful one of the upper. Where none is reached, the lowest tier with how far it is off.
 *
 * @param over how far the figure lies over a limit, in stops
 */
export const reached = (over: (limit: number) => number, u: number, tiers: readonly Tier[]): Reached => {
  let best: { readonly rank: number; readonly found: Reached } | undefined
  for (const { level, limit } of tiers) {
    const stops = over(limit)
    const certainty = certainties[verdict(stops, u)] ?? 0
    const height = certainty === 1 ? Math.max(1, heights[level] - 1) : heights[level]
    const rank = certainty === 0 ? 0 : height * 4 + certainty
    if (best === undefined || rank > best.rank) best = { rank, found: { level, limit, beyond: { stops, u } } }
  }
  if (best === undefined) throw new RangeError('a rule with tiers needs at least one')
  return best.found
}
