import {
  decode,
  encode,
  lightness,
  linearOfCode,
  luminanceOfLightness,
  recordedLinear,
  srgbCode,
  stopsToRecord,
  stopsToSurelyWhite,
  surelyWhite,
} from '../../../src/picture/tone.js'
import type { Section } from '../check-values.js'

export const section5: Section = {
  section: '5',
  evaluators: {
    'tone.enc.': ({ linear }) => ({ encoded: encode(linear) }),
    'tone.dec.': ({ encoded }) => ({ linear: decode(encoded) }),
    'tone.dec8.': ({ code8 }) => ({ linear: linearOfCode(code8) }),
    'tone.code.': ({ reflectance, stops }) => {
      const linear = recordedLinear(reflectance, stops)
      return { linear, code8: srgbCode(linear), clipped: stops >= stopsToSurelyWhite(reflectance, 0) }
    },
    'tone.clip.': ({ reflectance }) => ({ stops: stopsToRecord(reflectance, 1) }),
    'tone.L.': ({ Y_percent, Yn_percent }) => ({ L_star: lightness(Y_percent / Yn_percent) }),
    'tone.Lx.': ({ Y_percent, Yn_percent }) => ({ L_star: lightness(Y_percent / Yn_percent) }),
    'tone.Linv.': ({ L_star }) => ({ Y_percent: 100 * luminanceOfLightness(L_star) }),
    'tone.mid.': ({ L_star }) => ({ code8: srgbCode(luminanceOfLightness(L_star)) }),
    'tone.satf.': ({ reflectance, headroom_stops }) => ({
      fraction_of_saturation: recordedLinear(reflectance, 0) / surelyWhite(headroom_stops),
      stops_to_saturation: stopsToSurelyWhite(reflectance, headroom_stops),
    }),
  },
  waiting: {
    'tone.Y.rgb': 'relative luminance of a colour: comes with the colour of lights and gels',
    'tone.sat':
      'focal-plane saturation exposure: the program computes incident exposure only; its half stop of headroom is in tone.satf',
    'tone.ei.': 'focal-plane exposure of a sensor: the program computes incident exposure only',
    'tone.anchor.': 'focal-plane exposure of a sensor: the program computes incident exposure only',
  },
}
