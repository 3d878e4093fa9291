import {
  airyDisc,
  angleOfView,
  circleOfConfusion,
  closeUpLoss,
  cropFactor,
  depthOfField,
  diagonal,
  fieldAt,
  hyperfocal,
  magnification,
} from '../../../src/picture/lens.js'
import { type FNumber, inDegrees, type Metres } from '../../../src/units/quantity.js'
import type { Section } from '../check-values.js'

const mm = (value: number): Metres => (value / 1000) as Metres
const sensor = (inputs: { sensor_w_mm: number; sensor_h_mm: number }) => ({
  width: mm(inputs.sensor_w_mm),
  height: mm(inputs.sensor_h_mm),
})

const depth = (inputs: { focal_mm: number; f_number: number; coc_mm: number; focus_m: number }) => {
  const { near, far } = depthOfField(
    mm(inputs.focal_mm),
    inputs.f_number as FNumber,
    inputs.focus_m as Metres,
    mm(inputs.coc_mm),
  )
  return { near_m: near, far_m: Number.isFinite(far) ? far : null }
}

export const section8: Section = {
  section: '8',
  evaluators: {
    'lens.dof': depth,
    'lens.hyper.': ({ focal_mm, f_number, coc_mm }) => ({
      hyperfocal_m: hyperfocal(mm(focal_mm), f_number, mm(coc_mm)),
    }),
    // The source leaves the focal length out of its hyperfocal distance.
    'lens.hyper.ext': ({ focal_mm, f_number, coc_mm }) => ({
      hyperfocal_m: hyperfocal(mm(focal_mm), f_number, mm(coc_mm)) - mm(focal_mm),
    }),
    'lens.fov.': ({ focal_mm, sensor_w_mm }) => ({
      horizontal_deg: inDegrees(angleOfView(mm(focal_mm), mm(sensor_w_mm))),
    }),
    'lens.coc.': (inputs) => ({ coc_mm: 1000 * circleOfConfusion(sensor(inputs), inputs.divisor) }),
    'lens.crop.': (inputs) => ({
      crop_factor: cropFactor(sensor(inputs)),
      diagonal_mm: 1000 * diagonal(sensor(inputs)),
    }),
    'lens.mag.': ({ focal_mm, subject_distance_m }) => {
      const m = magnification(mm(focal_mm), subject_distance_m)
      return { magnification: m, extension_loss_stops: closeUpLoss(m) }
    },
    'lens.airy.': ({ f_number, wavelength_um }) => ({
      airy_diameter_um: 1e6 * airyDisc(f_number, 0, wavelength_um * 1e-6),
    }),
    'lens.field.': ({ focal_mm, distance_m, ...inputs }) => {
      const { width, height } = sensor(inputs)
      return {
        field_w_m: fieldAt(mm(focal_mm), width, distance_m),
        field_h_m: fieldAt(mm(focal_mm), height, distance_m),
      }
    },
  },
  waiting: {
    'lens.coc': 'the convention of 0.03 mm: the program takes the sensor diagonal/1500 (lens.coc.1500)',
  },
}
