import type { Light, LightUnit } from '../../../src/language/plan.js'
import { fNumberFor } from '../../../src/light/exposure.js'
import { difference, type Figure } from '../../../src/light/figure.js'
import { guideNumberOf, intensityOfGuideNumber } from '../../../src/light/guide-number.js'
import { polygonSolidAngle } from '../../../src/light/polygon.js'
import { fluxOfEnergy, modellingLumens, priorStrength } from '../../../src/light/strength.js'
import { sumFigure, sumLight } from '../../../src/light/sum-light.js'
import { readGuideNumber } from '../../../src/units/guide-number.js'
import {
  type CandelaSeconds,
  candelaSeconds,
  iso,
  type LuxSeconds,
  luxSeconds,
  type WattSeconds,
} from '../../../src/units/quantity.js'
import { head, makeLight, makePlan, softbox } from '../../helpers/make-plan.js'
import type { Section } from '../check-values.js'

/** Distances in any unit, as long as the guide number is in the same. */
const metered = (guideNumber: number, distance: number, speed = 100): number =>
  fNumberFor(luxSeconds(intensityOfGuideNumber(guideNumber) / distance ** 2), iso(speed))

/** The guide number whose light reads this f-number at this distance: what the meter shows is proportional to it. */
const guideNumberReading = (fNumber: number, distance: number): number => fNumber / metered(1, distance)

const metresInFoot = 0.3048
const hundredFeet = readGuideNumber('100 ft')
/** As guide numbers in feet are read. */
const foot = hundredFeet.ok ? hundredFeet.value.metres / 100 : Number.NaN
const feet = (metres: number): number => metres / metresInFoot

/** The frame of a lens, seen from its centre. */
const frame = (focal_mm: number, sensor_w_mm = 36, sensor_h_mm = 24): number => {
  const [a, b] = [sensor_w_mm / 2, sensor_h_mm / 2]
  return polygonSolidAngle([-a, -b, a, -b, a, b, -a, b], 0, 0, focal_mm)
}

const atPower = (power: number): number =>
  priorStrength(makeLight('key', { power } as Partial<Light>), makePlan())!.candelaSeconds

const atEnergy = (energy: number): CandelaSeconds =>
  priorStrength(
    makeLight('key', { unit: head(energy) as LightUnit, modifier: softbox(0.6, 0.9) }),
    makePlan(),
  )!.candelaSeconds

const reads = (exposure: number): Figure => sumFigure(new Map([['light', exposure as LuxSeconds]]))

export const section3: Section = {
  section: '3',
  evaluators: {
    'gn.32_4': ({ guide_number, distance }) => ({ f_number: metered(guide_number, distance) }),
    'gn.45_5': ({ guide_number, distance }) => ({ f_number: metered(guide_number, distance) }),
    'gn.80ft_20': ({ guide_number, distance }) => ({ f_number: metered(guide_number, distance) }),
    'gn.80ft_10': ({ f_number, distance }) => ({ guide_number: guideNumberReading(f_number, distance) }),
    'gn.160ft_20': ({ f_number, distance }) => ({ guide_number: guideNumberReading(f_number, distance) }),
    'gn.iso2': ({ iso_from, iso_to }) => ({
      factor: guideNumberOf(candelaSeconds(1), iso(iso_to)) / guideNumberOf(candelaSeconds(1), iso(iso_from)),
    }),
    'gn.iso.': ({ gn_iso100, iso: speed }) => ({
      guide_number: guideNumberOf(intensityOfGuideNumber(gn_iso100), iso(speed)),
    }),
    'gn.bcps.step': ({ ratio }) => ({ stops: difference(reads(ratio), reads(1)).stops }),
    'gn.ft': ({ gn_m }) => ({ gn_ft: gn_m / foot }),
    'gn.feet.': ({ gn_m }) => ({ gn_ft: gn_m / foot }),
    'gn.energy.': ({ gn, energy_ratio }) => ({
      gn: gn * (guideNumberOf(atEnergy(100 * energy_ratio)) / guideNumberOf(atEnergy(100))),
    }),
    'gn.bcps.': ({ bcps_cd_s, iso: speed, C_lx_s }) => {
      const metres = guideNumberOf(candelaSeconds(bcps_cd_s), iso(speed), C_lx_s)
      return { gn_m: metres, gn_ft: feet(metres) }
    },
    'gn.bcpsconst.': ({ C_lx_s }) => ({
      constant_per_ft2: feet(guideNumberOf(candelaSeconds(1), iso(1), C_lx_s)) ** 2,
    }),
    // A handbook's constant for feet is a choice of C: k = 1/(C·0.3048²).
    'gn.bcps.k': ({ bcps_cd_s, iso: speed, constant }) => ({
      gn_ft: feet(guideNumberOf(candelaSeconds(bcps_cd_s), iso(speed), 1 / (constant * metresInFoot ** 2))),
    }),
    'gn.power.': ({ stops_down }) => {
      const fraction = atPower(2 ** -stops_down) / atPower(1)
      return {
        power_fraction: fraction,
        gn_factor:
          guideNumberOf(candelaSeconds(atPower(2 ** -stops_down))) /
          guideNumberOf(candelaSeconds(atPower(1))),
      }
    },
    'gn.combine.': ({ f_numbers }) => {
      const each = (f_numbers as number[]).map((n, i) => [`${i}`, intensityOfGuideNumber(n)] as const)
      const parts = new Map(each) as never as ReadonlyMap<string, LuxSeconds>
      return {
        f_number: fNumberFor(sumLight(parts), iso(100)),
        gain_over_first_stops: difference(sumFigure(parts), reads(each[0]![1])).stops,
      }
    },
    'gn.zoom.sr.': ({ focal_mm, sensor_w_mm, sensor_h_mm }) => ({
      solid_angle_sr: frame(focal_mm, sensor_w_mm, sensor_h_mm),
    }),
    'gn.zoom.': ({ focal_from_mm, focal_to_mm }) => ({
      ideal_gn_ratio: Math.sqrt(frame(focal_from_mm) / frame(focal_to_mm)),
    }),
    'gn.eff.bulb': () => ({ efficacy: modellingLumens(100) / 100 }),
    'gn.chain.': ({ energy_Ws, efficacy_lm_per_W, solid_angle_sr, distance_m, iso: speed, C_lx_s }) => {
      const flux = fluxOfEnergy(energy_Ws as WattSeconds, efficacy_lm_per_W)
      const intensity = candelaSeconds(flux / solid_angle_sr)
      const exposure = luxSeconds(intensity / distance_m ** 2)
      return {
        lumen_seconds: flux,
        candela_seconds: intensity,
        exposure_lx_s: exposure,
        f_number: fNumberFor(exposure, iso(speed), C_lx_s),
        guide_number_m: guideNumberOf(intensity, iso(speed), C_lx_s),
      }
    },
  },
  waiting: {
    'gn.eff.range':
      'bounds of a source, not figures of ours: tests/light/exposure.test.ts holds ours to them',
    'gn.eff.tube':
      'no function: the program starts from what systems deliver, not from the bare tube; from memory',
    'gn.Kcd': 'no function: photometry only, no radiant power',
    'gn.cap': 'no function: a unit states its watt-seconds, not its capacitor',
  },
}
