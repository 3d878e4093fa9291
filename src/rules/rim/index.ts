import type { Rule } from '../rule.js'
import { rimHot } from './rim-hot.js'

export const rimRules: readonly Rule[] = [rimHot]
