import type { Rule } from '../rule.js'

/** Functions of a rule whose mistakes are found while the plan is read, or while it is checked: there is nothing to detect in a set. */
export const foundElsewhere: Pick<Rule, 'needs' | 'detect' | 'tell' | 'mend'> = {
  needs: () => 'silent',
  detect: () => [],
  tell: () => ({ message: '', why: '' }),
  mend: () => [],
}
