import type { Rule } from '../rule.js'
import { electronicShutter } from './electronic-shutter.js'
import { flickerBands } from './flicker-bands.js'
import { highSpeedShort } from './high-speed-short.js'
import { leafCutsFlash } from './leaf-cuts-flash.js'
import { motionBlurRule } from './motion-blur.js'
import { shutterBeyondSync } from './shutter-beyond-sync.js'
import { triggerMarginRule } from './trigger-margin.js'

export const shutterRules: readonly Rule[] = [
  shutterBeyondSync,
  triggerMarginRule,
  highSpeedShort,
  leafCutsFlash,
  electronicShutter,
  motionBlurRule,
  flickerBands,
]
