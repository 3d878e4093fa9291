import type { Rule } from '../rule.js'
import { cameraOffSourceAxis } from './camera-off-source-axis.js'
import { operatorBlocksSource } from './operator-blocks-source.js'
import { shadowInFrame } from './shadow-in-frame.js'
import { shadowOnPerson } from './shadow-on-person.js'
import { shadowsCrossed } from './shadows-crossed.js'
import { twoNoseShadows } from './two-nose-shadows.js'

export const shadowRules: readonly Rule[] = [
  shadowInFrame,
  shadowsCrossed,
  cameraOffSourceAxis,
  operatorBlocksSource,
  shadowOnPerson,
  twoNoseShadows,
]
