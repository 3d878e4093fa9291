/** What a rule is given, with the house's limits in place of its own. */
import type { Level, Rule, RuleContext } from '../rules/rule.js'
import { lazyOf } from '../scene/lazy.js'
import type { ComputedSet } from '../set/computed-set.js'

export interface House {
  /** In place of the rule's own limits, by name and in the limit's unit. */
  readonly limits: Readonly<Record<string, number>> | undefined
  /** In place of every level that the rule would give. */
  readonly level: Level | undefined
}

export const contextOf = (rule: Rule, set: ComputedSet, house: House): RuleContext => ({
  set,
  plan: set.plan,
  limits: house.limits === undefined ? ownLimits(rule) : limitsOf(rule, house.limits),
  u: (figure) => set.u(figure),
})

const ownLimits = lazyOf((rule: Rule) => limitsOf(rule, undefined))

const limitsOf = (rule: Rule, house: House['limits']): Readonly<Record<string, number>> => {
  const limits: Record<string, number> = {}
  for (const [name, { value }] of Object.entries(rule.limits)) {
    const own = house !== undefined && Object.hasOwn(house, name) ? house[name] : undefined
    limits[name] = own ?? value
  }
  return limits
}
