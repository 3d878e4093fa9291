/** Sentences that more than one report of findings writes. */
import type { CheckedPlan, NotChecked } from '../checker/finding.js'
import { rules } from '../rules/index.js'
import type { Advice, Level } from '../rules/rule.js'
import type { Counts } from '../tasks/check.js'
import { count, listed } from './notation.js'

/** Advice as one sentence: what to do, what it gives, what it costs. */
export const adviceSentence = ({ title, gives, costs }: Advice): string =>
  `${title}${gives === undefined ? '' : `: ${gives}`}${costs === undefined ? '' : `; but ${costs}`}`

/** `not checked: 14 rules, mostly rigging`, or the families where they are few; undefined where all were checked. */
export const notCheckedSentence = (notChecked: readonly NotChecked[]): string | undefined => {
  if (notChecked.length === 0) return undefined
  const families = new Map<string, number>()
  for (const { rule } of notChecked) {
    const family = rules.find(({ id }) => id === rule)?.family ?? 'plan'
    families.set(family, (families.get(family) ?? 0) + 1)
  }
  const names = [...families.keys()]
  const [most] = [...families].sort((a, b) => b[1] - a[1])
  const of = names.length > 3 ? `, mostly ${most![0]}` : ` of ${listed(names)}`
  return `not checked: ${count(notChecked.length, 'rule')}${of}`
}

/** `one error, two warnings and a note`; what is absent is not named. */
export const findingsSentence = (counts: Readonly<Record<Level, number>>): string =>
  listed(
    (['error', 'warning', 'note'] as const)
      .filter((level) => counts[level] > 0)
      .map((level) => count(counts[level], level)),
  )

/** The last line of a run. */
export const runSentence = (counts: Counts): string => {
  const found = findingsSentence(counts)
  const accepted = counts.accepted === 0 ? '' : `; ${count(counts.accepted, 'finding')} accepted`
  return `${count(counts.plans, 'plan')} checked: ${found === '' ? 'nothing found' : found}${accepted}`
}

export const levelCounts = ({ findings }: CheckedPlan): Record<Level, number> => {
  const counts = { error: 0, warning: 0, note: 0 }
  for (const { level } of findings) counts[level] += 1
  return counts
}
