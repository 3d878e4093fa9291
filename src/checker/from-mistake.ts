import type { Mistake } from '../language/mistake.js'
import type { Level, Rule } from '../rules/rule.js'
import type { Draft } from './draft.js'

/** A mistake of the reader as a finding of its rule. */
export const fromMistake = (mistake: Mistake, rule: Rule, level: Level): Draft => ({
  pointer: mistake.place.pointer,
  finding: {
    rule: rule.id,
    family: rule.family,
    level,
    ruleLevel: level,
    certainty: 'sure',
    message: mistake.message,
    why: mistake.why,
    place: mistake.place,
    also: mistake.also,
    measured: {},
    mends: [],
    basis: rule.basis,
  },
  advice: () => mistake.advice.map((title) => ({ title })),
})
