import type { Advice } from '../rules/rule.js'
import type { Finding } from './finding.js'

/** A finding that has no id yet, with the pointer into the plan that its id is made from. */
export interface Draft {
  readonly pointer: string
  readonly finding: Omit<Finding, 'id' | 'advice'>
  /** Solved when first asked for, and remembered: finding costs little, mending much. */
  readonly advice: () => readonly Advice[]
}
