import type { Rule } from '../rule.js'
import { ambientInExposure } from './ambient-in-exposure.js'
import { apertureOffKey } from './aperture-off-key.js'
import { depthShort } from './depth-short.js'
import { groupUneven } from './group-uneven.js'

export const exposureRules: readonly Rule[] = [apertureOffKey, groupUneven, ambientInExposure, depthShort]
