import {
  agreementReflectance,
  fNumberFor,
  fNumberForLuminance,
  luminanceSecondsFor,
  luxFor,
  luxSecondsFor,
} from '../../../src/light/exposure.js'
import { difference, type Figure } from '../../../src/light/figure.js'
import { sumFigure } from '../../../src/light/sum-light.js'
import { fNumber, iso, type LuxSeconds, luxSeconds, seconds } from '../../../src/units/quantity.js'
import type { Section } from '../check-values.js'

/** An exposure value at ISO 100 as a meter would show it at f/1: in 2^−EV seconds. */
const openFor = (ev: number) => seconds(2 ** -ev)

const lit = (exposure: number): Figure => sumFigure(new Map([['light', exposure as LuxSeconds]]))

export const section2: Section = {
  section: '2',
  evaluators: {
    'met.E.': ({ f_number, time_s, iso: speed, C_lx_s }) => ({
      illuminance_lx: luxFor(fNumber(f_number), seconds(time_s), iso(speed), C_lx_s),
    }),
    'met.L.': ({ f_number, time_s, iso: speed, K_cd_m2_s }) => ({
      luminance_cd_m2: luminanceSecondsFor(fNumber(f_number), iso(speed), K_cd_m2_s) / time_s,
    }),
    // EV is log₂ of N²/t; over one second the f-number says it alone.
    'met.evE.': ({ illuminance_lx, iso: speed, C_lx_s }) => ({
      ev: 2 * Math.log2(fNumberFor(luxSeconds(illuminance_lx), iso(speed), C_lx_s)),
    }),
    'met.evL.': ({ luminance_cd_m2, iso: speed, K_cd_m2_s }) => ({
      ev: 2 * Math.log2(fNumberForLuminance(luminance_cd_m2, iso(speed), K_cd_m2_s)),
    }),
    'met.table.': ({ ev100, K_cd_m2_s, C_lx_s }) => ({
      luminance_cd_m2: luminanceSecondsFor(fNumber(1), iso(100), K_cd_m2_s) / openFor(ev100),
      illuminance_lx: luxFor(fNumber(1), openFor(ev100), iso(100), C_lx_s),
    }),
    'met.flash.H.': ({ f_number, iso: speed, C_lx_s }) => ({
      exposure_lx_s: luxSecondsFor(fNumber(f_number), iso(speed), C_lx_s),
    }),
    'met.flash.N.': ({ exposure_lx_s, iso: speed, C_lx_s }) => ({
      f_number: fNumberFor(luxSeconds(exposure_lx_s), iso(speed), C_lx_s),
    }),
    'met.R.': ({ K_cd_m2_s, C_lx_s }) => ({ reflectance: agreementReflectance(K_cd_m2_s, C_lx_s) }),
    'met.R.121': ({ K_times_pi_ft_units, C_fc_s }) => ({
      reflectance: agreementReflectance(K_times_pi_ft_units / Math.PI, C_fc_s),
    }),
    'met.Rx.': ({ K_cd_m2_s, C_lx_s }) => ({ reflectance: agreementReflectance(K_cd_m2_s, C_lx_s) }),
    'met.stops.': ({ reflectance_a, reflectance_b }) => ({
      stops: difference(lit(reflectance_a), lit(reflectance_b)).stops,
    }),
  },
  waiting: {
    'met.K.range':
      'bounds of the standard, not figures of ours: tests/light/exposure.test.ts holds K to them',
    'met.C.flat': 'bounds of the standard, not figures of ours: tests/light/exposure.test.ts holds C to them',
    'met.C.dome':
      'no function: a dome is taken as calibrated to read a light straight ahead as a flat receptor does',
    'met.C.hist': 'no function: older standards are not offered',
    'met.zone.': 'no function: plans speak of tones in sRGB and of stops, never of zones',
    'met.fpe.':
      'no function: the camera is anchored at an 18 % card under its incident exposure, not at the sensor',
  },
}
