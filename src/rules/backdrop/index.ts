import type { Rule } from '../rule.js'
import { backdropAboveLimit } from './backdrop-above-limit.js'
import { backdropBelowWhite } from './backdrop-below-white.js'
import { backdropColourWashed } from './backdrop-colour-washed.js'
import { backdropNotBlack } from './backdrop-not-black.js'
import { backdropOffTone } from './backdrop-off-tone.js'
import { backdropUneven } from './backdrop-uneven.js'
import { edgeMerges } from './edge-merges.js'
import { floorBelowWhite } from './floor-below-white.js'
import { framePastBackdrop } from './frame-past-backdrop.js'
import { leavesTheLight } from './leaves-the-light.js'

export const backdropRules: readonly Rule[] = [
  backdropBelowWhite,
  backdropAboveLimit,
  backdropUneven,
  backdropOffTone,
  backdropNotBlack,
  backdropColourWashed,
  floorBelowWhite,
  framePastBackdrop,
  edgeMerges,
  leavesTheLight,
]
