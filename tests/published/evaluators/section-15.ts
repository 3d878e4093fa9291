import type { Light } from '../../../src/language/plan.js'
import { difference, type Figure } from '../../../src/light/figure.js'
import { onAxisResponse, response } from '../../../src/light/response.js'
import { priorStrength } from '../../../src/light/strength.js'
import { sumFigure } from '../../../src/light/sum-light.js'
import { recordedLinear, srgbCode, stopsToRecord } from '../../../src/picture/tone.js'
import type { Vec3 } from '../../../src/scene/vector.js'
import { type LuxSeconds, metres } from '../../../src/units/quantity.js'
import { makeLight, makePlan } from '../../helpers/make-plan.js'
import { frontAt } from '../../light/fronts.js'
import type { Section } from '../check-values.js'

const lit = (parts: Readonly<Record<string, number>>): Figure =>
  sumFigure(new Map(Object.entries(parts) as [string, LuxSeconds][]))

/** Both conventions from the exposures that the two lights give. */
const ratios = (key: number, fill: number) => {
  const under = lit({ fill })
  return {
    key_to_fill: 2 ** difference(lit({ key }), under).stops,
    key_plus_fill_to_fill: 2 ** difference(lit({ key, fill }), under).stops,
    lit_vs_shadow_side_stops: difference(lit({ key, fill }), under).stops,
  }
}

/** What an evenly lit backdrop gives to an element before its middle, as a share of what lights it times its reflectance. */
const fromBackdrop = (width: number, height: number, distance: number, normal: Vec3): number => {
  const paper = frontAt('rectangle', width, height)
  return (response(paper, { at: [0, 0, distance], normal, kind: 'flat' }) * paper.area) / Math.PI
}

const gelled = (loss: number): number => {
  const gel = { shift: undefined, colour: 'blue', loss }
  const strength = (light: Light): number => priorStrength(light, makePlan())!.candelaSeconds
  return strength(makeLight('key', { gel })) / strength(makeLight('key'))
}

export const section15: Section = {
  section: '15',
  evaluators: {
    'pr.ratio.asc': ({ key, fill }) => ratios(key, fill),
    'pr.ratio.old': ({ key, fill }) => ratios(key, fill),
    'pr.ratio.': ({ key_over_fill_stops }) => ratios(100 * 2 ** key_over_fill_stops, 100),
    'pr.white.zero': ({ reflectance, stops }) => ({ code8: srgbCode(recordedLinear(reflectance, stops)) }),
    // From 18 % grey to clipping.
    'pr.grey.white': () => ({ stops: stopsToRecord(0.18, 1) }),
    'pr.loss.': ({ loss_stops }) => ({ transmission: gelled(loss_stops) }),
    'pr.wrap.': ({ backdrop_w_m, backdrop_h_m, distance_m, reflectance, stops_over_key }) => {
      const front = fromBackdrop(backdrop_w_m, backdrop_h_m, distance_m, [0, 0, -1])
      const edge = fromBackdrop(backdrop_w_m, backdrop_h_m, distance_m, [1, 0, 0])
      const key = lit({ key: 1 })
      const over = (share: number) =>
        difference(lit({ paper: reflectance * 2 ** stops_over_key * share }), key).stops
      return {
        view_factor_facing: front,
        view_factor_edge_on: edge,
        facing_vs_key_stops: over(front),
        edge_on_vs_key_stops: over(edge),
      }
    },
    'pr.drop.': ({ key_to_subject_m, key_to_backdrop_m, backdrop_reflectance }) => {
      const point = frontAt('disc', 1e-6, 1e-6)
      const at = (distance: number) => lit({ key: onAxisResponse(point, metres(distance), 'flat') })
      const { stops } = difference(at(key_to_backdrop_m), at(key_to_subject_m))
      const linear = recordedLinear(backdrop_reflectance, stops)
      return { stops, linear, code8: srgbCode(linear), stops_from_mid_grey: -stopsToRecord(linear, 0.18) }
    },
  },
  waiting: {
    'pr.ratio.tv': 'a custom of television, not a figure of ours',
    'pr.white.two': 'one photographer’s rule: the program computes both ends of the range instead',
    'pr.white.common':
      'common practice, from memory: starting levels come with the rules on rim and backdrop',
    'pr.hair': 'common practice, from memory: comes with the rule on rim and hair lights',
    'pr.rembrandt': 'a pattern of light by name: plans place lights by angle',
    'pr.loop': 'a pattern of light by name: plans place lights by angle',
    'pr.diffusion': 'a range of a source: scrims come with bounced and transmitted light',
  },
}
