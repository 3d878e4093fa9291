import type { Rule } from '../rule.js'
import { ambientInExposure } from './ambient-in-exposure.js'
import { apertureOffKey } from './aperture-off-key.js'
import { depthShort } from './depth-short.js'
import { diffraction } from './diffraction.js'
import { falloffSteep } from './falloff-steep.js'
import { groupUneven } from './group-uneven.js'
import { keyHeight } from './key-height.js'
import { nothingLit } from './nothing-lit.js'
import { ratioOff } from './ratio-off.js'
import { subjectOverWhite } from './subject-over-white.js'

export const exposureRules: readonly Rule[] = [
  nothingLit,
  apertureOffKey,
  ratioOff,
  groupUneven,
  falloffSteep,
  subjectOverWhite,
  keyHeight,
  ambientInExposure,
  depthShort,
  diffraction,
]
