/** A light or panel elsewhere as advice: a light turned so that it meters the same. */
import type { ComputedSet } from '../../set/computed-set.js'
import type { Turned } from '../gear.js'
import type { Mend } from '../rule.js'
import { allHeld } from '../solving.js'
import type { Words } from '../words.js'
import type { Thing } from './things.js'

/** Stops: less more or less power is not told. */
const noticed = 0.1

export const heldThere = (
  set: ComputedSet,
  { of, name }: Thing,
  turned: Turned | undefined,
  gives: string,
  costs: readonly string[],
  words: Words,
): readonly Mend[] => {
  if (turned === undefined) return []
  const changed = set.with(turned.change)
  const after = of === 'light' ? allHeld(set, changed, [name]) : changed
  const [was, is] = [set.strength(name), after.strength(name)]
  const more = was === undefined || is === undefined ? 0 : Math.log2(is.candelaSeconds / was.candelaSeconds)
  const power =
    Math.abs(more) < noticed
      ? []
      : [`${words.howMany(more)} ${more > 0 ? 'more' : 'less'} power for the same reading`]
  return [{ title: turned.title, gives, costs: [...costs, ...power].join('; '), after }]
}
