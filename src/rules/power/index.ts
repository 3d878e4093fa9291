import type { Rule } from '../rule.js'
import { powerBeyondRange } from './power-beyond-range.js'
import { powerOffStep } from './power-off-step.js'
import { unitTooWeak } from './unit-too-weak.js'

export const powerRules: readonly Rule[] = [powerBeyondRange, powerOffStep, unitTooWeak]
