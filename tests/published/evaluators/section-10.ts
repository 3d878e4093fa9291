import { gelTable } from '../../../src/language/catalogue/gels.js'
import { addXyz, uvOfXy, type Xyz, xyOfUv, xyOfXyz, xyzOfXy } from '../../../src/light/colour/chromaticity.js'
import { daylightXy, kangXy, krystekUv, planckianUv } from '../../../src/light/colour/loci.js'
import { miredOf, shiftBetween, throughFilter } from '../../../src/light/colour/mired.js'
import { whiteOfUv } from '../../../src/light/colour/white.js'
import { difference } from '../../../src/light/figure.js'
import { sumFigure } from '../../../src/light/sum-light.js'
import type { LuxSeconds } from '../../../src/units/quantity.js'
import type { Section } from '../check-values.js'

const gel = (name: string) => gelTable.find((one) => one.name === name)!
/** The source tells hundreds of kelvin. */
const through = (name: string) => () => ({
  to_K: 100 * Math.round(throughFilter(3200, gel(name).shift) / 100),
})
const reads = (exposure: number) => sumFigure(new Map([['light', exposure as LuxSeconds]]))

const mixed = (parts: readonly (readonly [number, number])[]): Xyz =>
  addXyz(parts.map(([kelvin, share]) => xyzOfXy(kangXy(kelvin), share)))

export const section10: Section = {
  section: '10',
  evaluators: {
    'col.mired.': ({ kelvin }) => ({ mired: miredOf(kelvin) }),
    'col.cto.full': () => ({ shift_mired: gel('full CTO').shift }),
    'col.cto.': ({ kelvin, shift_mired }) => ({ kelvin: throughFilter(kelvin, shift_mired) }),
    'col.need.': ({ from_K, to_K }) => ({ shift_mired: shiftBetween(from_K, to_K) }),
    'col.85': ({ kelvin, shift_mired }) => ({ kelvin: throughFilter(kelvin, shift_mired) }),
    'col.85c81c': () => ({
      shift_mired: Math.round(shiftBetween(5500, throughFilter(throughFilter(5500, 81), 35))),
    }),
    'col.ctb.full': through('full CTB'),
    'col.ctb.half': through('1/2 CTB'),
    'col.ctb.quarter': through('1/4 CTB'),
    'col.ctb.eighth': through('1/8 CTB'),
    'col.ctbm.': ({ from_K, to_K }) => ({ shift_mired: shiftBetween(from_K, to_K) }),
    'col.loss.ctb': () => ({ full: gel('full CTB').loss, half: gel('1/2 CTB').loss }),
    'col.loss.cto': () => ({ full: gel('full CTO').loss }),
    'col.stops.': ({ transmission }) => ({ loss_stops: difference(reads(1), reads(transmission)).stops }),
    'col.kang.': ({ kelvin }) => kangXy(kelvin) as never,
    'col.kangx.': ({ kelvin }) => kangXy(kelvin) as never,
    'col.krystek.': ({ kelvin }) => krystekUv(kelvin) as never,
    'col.planck.': ({ kelvin }) => planckianUv(kelvin) as never,
    'col.mccamy.': ({ x, y }) => ({ cct_K: whiteOfUv(uvOfXy({ x, y })).kelvin }),
    'col.cied.': ({ kelvin }) => daylightXy(kelvin) as never,
    'col.uv2xy': ({ u, v }) => xyOfUv({ u, v }) as never,
    'col.mix.': ({ kelvin_a, share_a, kelvin_b, share_b }) => {
      const { x, y } = xyOfXyz(
        mixed([
          [kelvin_a, share_a],
          [kelvin_b, share_b],
        ]),
      )
      return { x, y, cct_K: whiteOfUv(uvOfXy({ x, y })).kelvin }
    },
  },
  rougher: {
    'col.mccamy.': { rel: 0.004, why: 'McCamy is a fit; ours is the nearest place on the locus of Kang' },
    'col.mix.': {
      rel: 0.004,
      why: 'their colour temperature is by McCamy, ours by the nearest place on the locus',
    },
  },
  waiting: {
    'col.mccamy.0.25252': 'a black body of 25000 K, which McCamy’s fit calls 19500: out of its range',
    'col.gel.memory': 'from memory: the catalogue of gels says of each row whether it is',
    'col.gel.trans': 'from memory; light lost to a gel is what the plan states',
    'col.src': 'a list of sources, no computation: tests/light/colour/ holds our defaults to it',
    'col.ill': 'chromaticities by name: tests/light/colour/ asks for their temperatures',
  },
}
