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

/** @param brief of several examples of a kind, only the first in full */
export const rulePage = (rule: Rule, brief = false): readonly Block[] => {
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
    ...section('To live with it', [
      { paragraph: 'Write the finding and the reason into the plan:' },
      { code: `accept:\n  - { rule: ${rule.id}, because: … }`, language: 'yaml' },
    ]),
    ...examples('Plans that it finds something in', rule.fires, brief),
    ...examples('Plans that it passes', rule.passes, brief),
    ...(brief && [rule.fires, rule.passes].some(({ length }) => length > 1)
      ? [{ paragraph: `All examples in full: thirdstop explain ${rule.id} --all` }]
      : []),
  ]
}

const section = (heading: string, blocks: readonly Block[]): Block[] => [{ heading, level: 2 }, ...blocks]

const examples = (heading: string, plans: readonly RuleExample[], brief: boolean): Block[] => {
  if (plans.length === 0) return []
  const inFull = brief ? plans.slice(0, 1) : plans
  const titles = plans.slice(inFull.length).map(({ title }) => title)
  return section(heading, [
    ...inFull.flatMap(({ title, plan }): Block[] => [
      { paragraph: title },
      { code: plan.replace(/\n+$/, ''), language: 'yaml' },
    ]),
    ...(titles.length === 0 ? [] : [{ items: titles }]),
  ])
}

const limitValue = ({ value, unit }: Limit): string => {
  if (unit === 'share') return `${rounded(value * 100)} %`
  if (unit === 'count') return String(value)
  return `${unit === 'stop' ? inFractions(value) : rounded(value)} ${unit}`
}

const rounded = (value: number): string => String(Number(value.toPrecision(6)))

/** `1/3`, `1 1/2`: halves, thirds, quarters and sixths as the trade says them. */
const inFractions = (value: number): string => {
  if (value < 0) return `-${inFractions(-value)}`
  const whole = Math.floor(value)
  const parts = [2, 3, 4, 6].find(
    (one) => Math.abs((value - whole) * one - Math.round((value - whole) * one)) < 1e-9,
  )
  const over = parts === undefined ? 0 : Math.round((value - whole) * parts)
  if (parts === undefined || over === 0) return rounded(value)
  return `${whole === 0 ? '' : `${whole} `}${over}/${parts}`
}

const sourceSentence = ({ says, kind }: RuleSource): string =>
  `${says} (${kind === 'common practice' ? 'common practice, no source' : kind === 'memory' ? 'from memory' : kind})`
