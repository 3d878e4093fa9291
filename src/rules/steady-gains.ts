/** What a slower shutter or a faster speed costs: light that burns on gains on the flashes, and is all there is without them. */
import type { ComputedSet } from '../set/computed-set.js'
import type { Words } from './words.js'

/** What burns on and is not itself turned until it meters something. */
const burnsOn = (set: ComputedSet): readonly string[] => [
  ...(set.plan.ambient === undefined ? [] : ['the room']),
  ...set.lit
    .filter(({ unit, name }) => unit.kind !== 'flash' && set.strength(name)?.from !== 'meters')
    .map(({ name }) => name),
]

/** `the room and the lamp count 1.3 stops more`; without a flash `all of the picture 1.3 stops lighter`. */
export const steadyGains = (set: ComputedSet, stops: number, words: Words): string => {
  const steady = burnsOn(set)
  if (steady.length > 0 && set.lit.every(({ unit }) => unit.kind !== 'flash'))
    return `all of the picture ${words.howMany(stops)} ${stops < 0 ? 'darker' : 'lighter'}`
  const names = steady.length === 0 ? ['the room'] : steady
  return `${words.list(names)} ${names.length > 1 ? 'count' : 'counts'} ${words.howMany(stops)} ${stops < 0 ? 'less' : 'more'}`
}

/** The same among other costs: of what the plan states, nothing where nothing burns on. */
export const whatGains = (set: ComputedSet, stops: number, words: Words): readonly string[] =>
  burnsOn(set).length === 0 ? [] : [steadyGains(set, stops, words)]
