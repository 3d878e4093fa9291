/** All rules, by family, in the order of the index. */
import { rules } from '../rules/index.js'
import type { Family, Rule } from '../rules/rule.js'

export interface FamilyOfRules {
  readonly family: Family
  readonly rules: readonly Rule[]
}

export const rulesList = (): readonly FamilyOfRules[] => {
  const families = new Map<Family, Rule[]>()
  for (const rule of rules) {
    const members = families.get(rule.family)
    if (members === undefined) families.set(rule.family, [rule])
    else members.push(rule)
  }
  return [...families].map(([family, members]) => ({ family, rules: members }))
}
