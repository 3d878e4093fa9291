import type { Rule } from '../rule.js'
import { colourMixed } from './colour-mixed.js'

export const colourRules: readonly Rule[] = [colourMixed]
