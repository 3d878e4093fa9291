import type { Rule } from '../rule.js'
import { slaveFalseStart } from './slave-false-start.js'
import { triggersTied } from './triggers-tied.js'

export const triggerRules: readonly Rule[] = [triggersTied, slaveFalseStart]
