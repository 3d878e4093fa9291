import type { Rule } from '../rule.js'
import { subjectCropped } from './subject-cropped.js'

export const frameRules: readonly Rule[] = [subjectCropped]
