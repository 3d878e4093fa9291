import type { Rule } from '../rule.js'
import { shutterBeyondSync } from './shutter-beyond-sync.js'
import { triggerMarginRule } from './trigger-margin.js'

export const shutterRules: readonly Rule[] = [shutterBeyondSync, triggerMarginRule]
