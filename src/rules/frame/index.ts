import type { Rule } from '../rule.js'
import { lightInFrame } from './light-in-frame.js'
import { panelInFrame } from './panel-in-frame.js'
import { standInFrame } from './stand-in-frame.js'
import { subjectCropped } from './subject-cropped.js'

export const frameRules: readonly Rule[] = [subjectCropped, lightInFrame, panelInFrame, standInFrame]
