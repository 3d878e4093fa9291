import type { Rule } from '../rule.js'
import { cameraOffSourceAxis } from './camera-off-source-axis.js'
import { shadowInFrame } from './shadow-in-frame.js'
import { twoNoseShadows } from './two-nose-shadows.js'

export const shadowRules: readonly Rule[] = [shadowInFrame, cameraOffSourceAxis, twoNoseShadows]
