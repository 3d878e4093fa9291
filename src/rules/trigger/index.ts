import type { Rule } from '../rule.js'
import { triggersTied } from './triggers-tied.js'

export const triggerRules: readonly Rule[] = [triggersTied]
