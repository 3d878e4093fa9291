import type { Light } from '../../language/plan.js'
import type { ComputedSet } from '../../set/computed-set.js'
import type { PowerShare } from '../../units/quantity.js'
import { neededPowers } from '../power/full-power.js'

/** Its power, or the one at which it meters what it is to meter; full power where nothing tells. */
export const powerSet = (
  set: ComputedSet,
  { name, unit, power }: Light,
): { readonly power: PowerShare; readonly u: number; readonly known: boolean } => {
  if (power !== undefined) return { power, u: 0, known: true }
  const needed = neededPowers(set).find(({ light }) => light.name === name)
  if (needed === undefined) return { power: fullOf(unit), u: 0, known: false }
  const { range, overFull, u } = needed
  const share = Math.max(range.from, Math.min(range.to, range.to * 2 ** overFull))
  return { power: share as PowerShare, u, known: true }
}

const fullOf = (unit: Light['unit']): PowerShare =>
  unit.kind === 'flash' ? unit.power.to : (1 as PowerShare)
