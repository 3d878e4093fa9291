/** Flash and shutter in time: slits, bursts, decays, blur, and flash beside light that burns on. */
import { keptShare, overHalf, overTenth, type Pulse, uncut } from '../../../src/light/pulse.js'
import { leafLoss, slitShare } from '../../../src/light/shutter-loss.js'
import { sumLight } from '../../../src/light/sum-light.js'
import { motionBlur } from '../../../src/picture/motion.js'
import { curtainTravel, darkBand } from '../../../src/picture/shutter.js'
import { computeSet } from '../../../src/set/compute-set.js'
import type { Metres, Seconds } from '../../../src/units/quantity.js'
import { makeLight, makePlan } from '../../helpers/make-plan.js'
import { planOf } from '../../rules/check-text.js'
import type { Section } from '../check-values.js'

const decay = uncut(1 as Seconds)
/** Burns evenly, and is over at once. */
const even = (time: number): Pulse => ({
  half: 1e6 as Seconds,
  cut: time as Seconds,
  tail: 1e-12 as Seconds,
})
const level = (time: number): number => 0.5 ** time

const slit = (shutter: number, curtain: number) => {
  const { camera } = makePlan({ camera: { shutterMarked: shutter, sync: 1, curtain } })
  return { open: darkBand(camera)!.open, travel: curtainTravel(camera).least }
}

/** A head whose flash nothing cuts, under a leaf shutter. */
const underLeaf = (openTime: number, t05: number): number => {
  const unit = {
    ...makeLight('key').unit,
    regulated: 'voltage',
    durations: [{ power: 1, t01: undefined, t05 }],
  }
  const light = makeLight('key', { power: 1, unit: unit as never })
  const plan = makePlan({ lights: [light], camera: { shutterKind: 'leaf', shutterMarked: openTime } })
  return leafLoss(light, plan).stops
}

/** Lux-seconds of light that burns on, at this shutter. */
const ambientOf = (shutter: number): number =>
  computeSet(
    planOf(`plan: 1
title: Ambient light
ambient: { reads: f/4, shutter: 1/60, iso: 100 }
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/4, shutter: ${shutter.toFixed(6)} s, iso: 100 }
subject: { kind: person }
lights: {}
`),
  ).reading({ at: 'subject', of: ['ambient'] })!.luxSeconds

export const section9: Section = {
  section: '9',
  evaluators: {
    'sync.slit.': ({ shutter_s, curtain_travel_s }) => ({
      lit_fraction: slit(shutter_s, curtain_travel_s).open.most,
    }),
    'sync.slit.mm': ({ shutter_s, curtain_travel_s, frame_height_mm }) => {
      const { open, travel } = slit(shutter_s, curtain_travel_s)
      return {
        slit_mm: frame_height_mm * open.most,
        curtain_speed_m_s: frame_height_mm / 1000 / travel,
      }
    },
    'sync.hss.': ({ shutter_s, curtain_travel_s }) => {
      const fraction = slitShare(
        even(shutter_s + curtain_travel_s),
        shutter_s as Seconds,
        curtain_travel_s as Seconds,
      )
      return { fraction_used: fraction, loss_stops: -Math.log2(fraction) }
    },
    'sync.ambient.': ({ shutter_s, reference_s }) => ({
      stops: Math.log2(ambientOf(shutter_s) / ambientOf(reference_s)),
    }),
    'dur.def': () => ({ t05_level: level(overHalf(decay)), t01_level: level(overTenth(decay)) }),
    'dur.ratio': () => ({ ratio: overTenth(decay) / overHalf(decay) }),
    'dur.emitted.': (inputs) => ({
      fraction_emitted: keptShare(decay, -Math.log2(inputs.level) as Seconds),
    }),
    'dur.clip.': ({ open_time_s, t05_s }) => {
      const loss = underLeaf(open_time_s, t05_s)
      return { fraction: 2 ** -loss, gn_ratio: 2 ** (-loss / 2), loss_stops: loss }
    },
    'dur.blur.': ({ speed_m_s, duration_s, magnification }) => ({
      blur_at_subject_mm: 1000 * motionBlur(speed_m_s, duration_s, 1),
      blur_at_sensor_mm: 1000 * (motionBlur(speed_m_s, duration_s, magnification) as Metres),
    }),
    'sync.mix': ({ flash_exposure_lx_s, ambient_lx, shutter_s }) => {
      const ambient = ambient_lx * shutter_s
      const both = sumLight(
        new Map([
          ['flash', flash_exposure_lx_s],
          ['ambient', ambient],
        ] as never),
      )
      return {
        ambient_lx_s: ambient,
        ambient_below_flash_stops: Math.log2(flash_exposure_lx_s / ambient),
        total_gain_stops: Math.log2(both / flash_exposure_lx_s),
      }
    },
  },
  waiting: {
    'sync.speeds': 'what cameras had and have: a plan states its own sync speed',
    'sync.hss.entry': 'a range of common practice; the program takes 2 stops, or what the kit says (u 0.7)',
    'dur.three': 'a rule of thumb; the program takes the ratio itself (dur.ratio)',
  },
}
