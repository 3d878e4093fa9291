import type { Rule } from '../rule.js'
import { automaticExposure } from './automatic-exposure.js'

export const settingsRules: readonly Rule[] = [automaticExposure]
