import { contrastLeft, veiled, veilLift } from '../../../src/picture/glare.js'
import { srgbCode } from '../../../src/picture/tone.js'
import type { Section } from '../check-values.js'

export const section6: Section = {
  section: '6',
  evaluators: {
    'flare.veil.': ({ linear, frame_mean_linear, veiling_glare_fraction }) => {
      const observed = veiled(linear, frame_mean_linear, veiling_glare_fraction)
      return {
        observed_linear: observed,
        lift_stops: veilLift(linear, frame_mean_linear, veiling_glare_fraction),
        code8_before: srgbCode(linear),
        code8_after: srgbCode(observed),
      }
    },
    'flare.contrast.': ({ max_linear, min_linear, frame_mean_linear, veiling_glare_fraction }) => {
      const ratio = contrastLeft(max_linear, min_linear, frame_mean_linear, veiling_glare_fraction)
      return { contrast_ratio: ratio, stops: Math.log2(ratio) }
    },
  },
  waiting: {
    'flare.vgi.iso': 'the name of a standard, not a figure of ours',
    'flare.spot': 'how a laboratory measures the index; the program takes an ordinary lens',
    'flare.typ': 'from memory, no source found: the index taken, 1.5 %, lies within what it calls common',
  },
}
