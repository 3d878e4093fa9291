import type { Rule } from '../rule.js'
import { beamShort } from './beam-short.js'
import { chargeShort } from './charge-short.js'
import { kitShort } from './kit-short.js'
import { lightWithoutEffect } from './light-without-effect.js'
import { powerBeyondRange } from './power-beyond-range.js'
import { powerDiffers } from './power-differs.js'
import { powerOffStep } from './power-off-step.js'
import { recycleSlow } from './recycle-slow.js'
import { unitTooWeak } from './unit-too-weak.js'

export const powerRules: readonly Rule[] = [
  powerBeyondRange,
  powerOffStep,
  unitTooWeak,
  powerDiffers,
  beamShort,
  lightWithoutEffect,
  kitShort,
  recycleSlow,
  chargeShort,
]
