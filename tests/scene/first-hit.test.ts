/** What a line of sight meets first is what it meets first of all bodies, looked at one by one. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { buildScene } from '../../src/scene/build-scene.js'
import { firstHit } from '../../src/scene/first-hit.js'
import { rayMeets, rayMeetsFace } from '../../src/scene/ray.js'
import { dot, length, type Vec3 } from '../../src/scene/vector.js'
import { anyPlan } from '../helpers/any-plan.js'

const coordinate = fc.double({ min: -4, max: 4, noNaN: true })
const place = fc.tuple(coordinate, coordinate, fc.double({ min: 0.05, max: 2.5, noNaN: true }))

describe('the first of all', () => {
  it('is never one that lies behind another', () => {
    fc.assert(
      fc.property(
        anyPlan,
        fc.array(fc.tuple(place, place), { minLength: 8, maxLength: 8 }),
        (plan, lines) => {
          const scene = buildScene(plan)
          for (const [from, way] of lines as readonly (readonly [Vec3, Vec3])[]) {
            if (length(way) < 1e-3) continue
            const bodies = scene.solids.flatMap((solid) =>
              solid.of === 'figure' || solid.of === 'operator' || solid.of === 'light'
                ? (rayMeets(solid.body, from, way)?.t ?? [])
                : [],
            )
            const surfaces = scene.surfaces.flatMap((surface) =>
              surface.back === undefined && dot(surface.face.normal, way) >= 0
                ? []
                : (rayMeetsFace(surface.face, from, way)?.t ?? []),
            )
            const nearest = Math.min(...bodies, ...surfaces)
            const hit = firstHit(scene, from, way)
            if (nearest === Infinity) expect(hit).toBeUndefined()
            else expect(hit!.distance / length(way)).toBeCloseTo(nearest, 9)
          }
        },
      ),
      { numRuns: 150 },
    )
  })
})
