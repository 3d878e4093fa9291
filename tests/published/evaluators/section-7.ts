/** Shadows by similar triangles, found as the program finds what hides a light: by lines of sight past a plate. */
import type { Receptor } from '../../../src/light/receptor.js'
import { blockersOf } from '../../../src/light/visibility/blockers.js'
import { outlookFrom } from '../../../src/light/visibility/outlook.js'
import { sees } from '../../../src/light/visibility/sees.js'
import { wholeSun } from '../../../src/light/visibility/sun.js'
import { subtended } from '../../../src/rules/soft/subtended.js'
import type { Solid } from '../../../src/scene/scene.js'
import { add, scale, type Vec3 } from '../../../src/scene/vector.js'
import { computeSet } from '../../../src/set/compute-set.js'
import type { ComputedSet } from '../../../src/set/computed-set.js'
import { inDegrees } from '../../../src/units/quantity.js'
import { planOf } from '../../rules/check-text.js'
import type { Section } from '../check-values.js'

/** A plate square to the line from the source, `wide` to the right of `left`, at y = 0. */
const plate = (left: number, wide: number): Solid => {
  const [centre, tall]: [Vec3, number] = [[left + wide / 2, 0, 0], wide]
  const corner = (u: number, v: number): Vec3 => [centre[0] + (u * wide) / 2, 0, (v * tall) / 2]
  return {
    name: 'plate',
    of: 'panel',
    pointer: '/panels/plate',
    body: {
      shape: 'plate',
      face: {
        outline: 'rectangle',
        centre,
        normal: [0, -1, 0],
        across: [1, 0, 0],
        up: [0, 0, 1],
        width: wide as never,
        height: tall as never,
      },
      corners: [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)],
    },
  }
}

/** Where on the screen at y = `screen` the shadow of a point of the source ends, between a hidden place and a seen one. */
const shadowEnd = (of: Solid, source: Vec3, screen: number, hidden: number, seen: number): number => {
  const blockers = blockersOf([of])
  const dark = (x: number): boolean => {
    const receptor: Receptor = { at: [x, screen, 0], normal: [0, -1, 0], kind: 'flat' }
    return !sees(outlookFrom(receptor, blockers), source)
  }
  if (!dark(hidden) || dark(seen)) throw new Error('no edge between these places')
  let [a, b] = [hidden, seen]
  for (let i = 0; i < 90; i++) {
    const middle = (a + b) / 2
    if (dark(middle)) a = middle
    else b = middle
  }
  return (a + b) / 2
}

/** The shadow of a strip from either end of the source: where both are, and where either is. */
const ofStrip = (source: number, object: number, before: number, behind: number) => {
  const solid = plate(-object / 2, object)
  const far = 10 * (source + object) * (1 + behind / before)
  const ends = [-1, 1].map((side) => {
    const from: Vec3 = [(side * source) / 2, -before, 0]
    // Straight behind the middle of the strip as this end sees it.
    const middle = (-side * source * behind) / (2 * before)
    return [
      shadowEnd(solid, from, behind, middle, middle - far),
      shadowEnd(solid, from, behind, middle, middle + far),
    ] as const
  })
  const [lows, highs] = [ends.map(([low]) => low), ends.map(([, high]) => high)]
  return {
    umbra: Math.min(...highs) - Math.max(...lows),
    outer: Math.max(...highs) - Math.min(...lows),
  }
}

const strip = ({
  source_width: source,
  object_width: object,
  source_to_object: before,
  object_to_screen: behind,
}: Readonly<Record<string, number>>) => {
  const { umbra, outer } = ofStrip(source!, object!, before!, behind!)
  const farther = ofStrip(source!, object!, before!, 2 * behind!).umbra
  // Straight rays: the full shadow narrows evenly.
  const narrows = (umbra - farther) / behind!
  return { umbra, outer, length: narrows > 1e-12 ? behind! + umbra / narrows : null }
}

/** A round front, this wide. */
const umbrellaOf = (metres: number): ComputedSet =>
  computeSet(
    planOf(`plan: 1
title: A round front
camera: { lens: 85 mm, at: { distance: 3 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
  key: { unit: head 400 Ws, modifier: white umbrella ${metres} m, at: { angle: 0 deg, distance: 2 m, height: 1.6 m } }
`),
  )

export const section7: Section = {
  section: '7',
  evaluators: {
    'shadow.pen.': ({ source_width_m, source_to_edge_m, edge_to_screen_m }) => {
      const solid = plate(0, 1000)
      const wide = (screen: number): number => {
        const [low, high] = [-1, 1].map((side) =>
          shadowEnd(solid, [(side * source_width_m) / 2, -source_to_edge_m, 0], screen, 10, -10),
        )
        return low! - high!
      }
      // An edge that lies on the screen hides nothing of it: what its penumbra narrows to on the way there.
      const least = 1e-3
      return {
        penumbra_width_m: edge_to_screen_m > 0 ? wide(edge_to_screen_m) : 2 * wide(least) - wide(2 * least),
      }
    },
    'shadow.full.': (inputs) => {
      const { umbra, outer, length } = strip(inputs)
      return { umbra_width: umbra, outer_penumbra_width: outer, umbra_length: length }
    },
    'shadow.earth': (inputs) => {
      const { umbra, outer, length } = strip(inputs)
      return { umbra_length_miles: length, umbra_width_miles: umbra, penumbra_width_miles: outer }
    },
    'shadow.earth.rel': (inputs) => {
      const { umbra, outer } = strip(inputs)
      return {
        umbra_over_object: umbra / inputs.object_width,
        penumbra_over_object: outer / inputs.object_width,
      }
    },
    'shadow.sun': () => {
      let twice = 0
      for (let i = 0; i < wholeSun.length; i += 2) {
        const j = (i + 2) % wholeSun.length
        twice += wholeSun[i]! * wholeSun[j + 1]! - wholeSun[j]! * wholeSun[i + 1]!
      }
      return { angle_deg: inDegrees(2 * Math.atan(Math.sqrt(twice / 2 / Math.PI))) }
    },
    'shadow.angle.': ({ source_width_m, distance_m }) => {
      const set = umbrellaOf(source_width_m)
      const { centre, normal } = set.scene.lights.get('key')!.front!
      const from = add(centre, scale(normal, distance_m))
      return { angle_deg: subtended(set, set.plan.lights.get('key')!, from)!.degrees }
    },
  },
  waiting: {},
  rougher: {
    'shadow.angle.': { rel: 1e-3, why: 'a round front is a polygon of its area' },
  },
}
