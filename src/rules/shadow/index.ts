import type { Rule } from '../rule.js'
import { twoNoseShadows } from './two-nose-shadows.js'

export const shadowRules: readonly Rule[] = [twoNoseShadows]
