/** What `thirdstop explain` shows of a rule, and `thirdstop rules` of all: made from the rules' own data. */
import type { Limit, Rule, RuleExample, RuleSource } from '../rules/rule.js'
import type { FamilyOfRules } from '../tasks/rules-list.js'
import type { Block } from './page.js'

export const rulesPage = (families: readonly FamilyOfRules[]): readonly Block[] => [
  ...families.flatMap(({ family, rules }): Block[] => [
    { heading: family, level: 2 },
    {
      head: ['rule', 'level', 'finds'],
      table: rules.map(({ id, level, finds }) => [id, level, finds]),
    },
  ]),
  { paragraph: 'Each in full: thirdstop explain RULE. The level is the highest that a rule gives.' },
]

export const rulePage = (rule: Rule): readonly Block[] => {
  const limits = Object.entries(rule.limits)
  return [
    { heading: rule.id, level: 1 },
    { paragraph: `${rule.finds} (${rule.family}; up to ${rule.level})` },
    ...section('Why', [{ paragraph: rule.why }]),
    ...section('How it is computed', [{ paragraph: rule.formula }]),
    ...(limits.length === 0
      ? []
      : section('Limits', [
          {
            head: ['name', 'value', 'says'],
            table: limits.map(([name, limit]) => [name, limitValue(limit), limit.says]),
          },
        ])),
    ...section('Sources', [{ items: rule.sources.map(sourceSentence) }]),
    ...examples('Plans that it finds something in', rule.fires),
    ...examples('Plans that it passes', rule.passes),
    ...section('To live with it', [
      { paragraph: 'Write the finding and the reason into the plan:' },
      { code: `accept:\n  - { rule: ${rule.id}, because: … }`, language: 'yaml' },
    ]),
  ]
}

const section = (heading: string, blocks: readonly Block[]): Block[] => [{ heading, level: 2 }, ...blocks]

const examples = (heading: string, plans: readonly RuleExample[]): Block[] =>
  plans.length === 0
    ? []
    : section(
        heading,
        plans.flatMap(({ title, plan }): Block[] => [
          { paragraph: title },
          { code: plan.replace(/\n+$/, ''), language: 'yaml' },
        ]),
      )

const limitValue = ({ value, unit }: Limit): string =>
  unit === 'count' ? String(value) : unit === 'share' ? `${value * 100} %` : `${value} ${unit}`

const sourceSentence = ({ says, kind }: RuleSource): string =>
  `${says} (${kind === 'common practice' ? 'common practice, no source' : kind === 'memory' ? 'from memory' : kind})`
