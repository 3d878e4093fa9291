/**
 * Light thrown back and forth in a closed room, by the program's patches and what they exchange. In a sphere of one
 * reflectance the sum of all reflections is a series with a closed form; what all walls of a closed room get in all
 * follows it as well, wherever the lamp stands.
 */

import { firstLight } from '../../../src/light/bounce/first-light.js'
import { type Mesh, meshOf } from '../../../src/light/bounce/mesh.js'
import { radiosity } from '../../../src/light/bounce/radiosity.js'
import { carrierOf, transferOf } from '../../../src/light/bounce/transfer.js'
import { fNumberFor } from '../../../src/light/exposure.js'
import { alike, box } from '../../light/bounce/rooms.js'
import { frontAt } from '../../light/fronts.js'
import type { Section } from '../check-values.js'

/** Left, right, front, back, floor, ceiling; the values are of a room of 4 × 5 × 3 m. */
const roomOf = (reflectances: readonly number[], width = 4, length = 5, height = 3): Mesh =>
  meshOf(box(width, length, height, reflectances), [lamp])
const lamp = [1.1, 1.7, 1.9] as const

const overAll = ({ patches }: Mesh, of: Float64Array): number =>
  patches.reduce((sum, { area }, i) => sum + area * (of[2 * i]! + of[2 * i + 1]!), 0)

/** Flux that comes to the walls after the first time, against what comes first. `keeps`: of what comes again, the rest is lost in openings spread over them. */
const multiplier = (reflectance: number, keeps = 1): number => {
  const mesh = roomOf(alike(reflectance * keeps))
  const first = firstLight(
    mesh,
    frontAt('rectangle', 0.4, 0.3, { centre: lamp, normal: [0.4, 0.7, -0.3] }),
    [],
  )
  // No opening is hit by the beam itself.
  const out = radiosity(
    mesh,
    transferOf(mesh, []),
    first.map((one) => one / keeps),
  )
  const again = new Float64Array(out.length)
  carrierOf(mesh, transferOf(mesh, [])).carry(out, again)
  return overAll(mesh, again) / overAll(mesh, first)
}

export const section11: Section = {
  section: '11',
  evaluators: {
    'room.mult.': ({ mean_reflectance }) => ({ multiplier: multiplier(mean_reflectance) }),
    'room.sphere.': ({ wall_reflectance, port_fraction }) => ({
      multiplier: multiplier(wall_reflectance, 1 - port_fraction),
    }),
    'room.area': ({ length_m, width_m, height_m }) => ({
      area_m2: roomOf(alike(0.5), width_m, length_m, height_m).patches.reduce(
        (sum, { area }) => sum + area,
        0,
      ),
    }),
    'room.mean': ({ areas_m2: [top, bottom, walls], reflectances: [ceiling, floor, wall] }) => {
      const { patches } = roomOf([wall, wall, wall, wall, floor, ceiling])
      const of = (by: (reflectance: number) => number) =>
        patches.reduce((sum, { surface, area }) => sum + area * by(surface.front.reflectance), 0)
      if (Math.abs(of(() => 1) - (top + bottom + walls)) > 1e-9)
        throw new Error('not the room of these areas')
      return { mean: of((reflectance) => reflectance) / of(() => 1) }
    },
    'room.ind.': ({ flux_lm_s, area_m2, mean_reflectance, iso }) => {
      const luxSeconds = (flux_lm_s / area_m2) * multiplier(mean_reflectance)
      return { indirect_lx_s: luxSeconds, f_number: fNumberFor(luxSeconds as never, iso) }
    },
  },
  waiting: {},
  rougher: {
    'room.mult.': { rel: 2e-3, why: 'patches, solved to 0.1 %' },
    'room.sphere.': { rel: 4e-3, why: 'the same, over up to sixteen reflections' },
    'room.ind.': { rel: 2e-3, why: 'patches, solved to 0.1 %' },
  },
}
