/**
 * What glasses mirror, against rays: the camera's lines of sight are thrown back by a lens made of many small flat
 * mirrors, and followed until they meet a front.
 */
import { describe, expect, it } from 'vitest'
import { lightInGlasses } from '../../src/picture/in-glasses.js'
import { buildScene } from '../../src/scene/build-scene.js'
import { rayMeetsFace } from '../../src/scene/ray.js'
import type { Face, Scene } from '../../src/scene/scene.js'
import { add, cross, dot, scale, subtract, unit, type Vec3 } from '../../src/scene/vector.js'
import { inDegrees } from '../../src/units/quantity.js'
import { planOf } from '../rules/check-text.js'

const set = (at: string, more = '', subject = '', modifier = 'softbox 90 x 90 cm'): Scene =>
  buildScene(
    planOf(`plan: 1
title: Glasses
camera: { lens: 85 mm, at: { distance: 1.8 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person, glasses: true, faces-at: 1.6 m${subject} }
lights:
  key: { unit: head 400 Ws, modifier: ${modifier}, meters: f/8, at: ${at} }
${more}`),
  )

const inside = (scene: Scene): number | undefined => {
  const [figure] = scene.subject.figures
  const found = lightInGlasses(scene, figure!, scene.lights.get('key')!)
  return found && inDegrees(found.inside)
}

const rad = (degrees: number): number => (degrees * Math.PI) / 180
const about = (axis: Vec3, angle: number, v: Vec3): Vec3 =>
  add(
    add(scale(v, Math.cos(angle)), scale(cross(axis, v), Math.sin(angle))),
    scale(axis, dot(axis, v) * (1 - Math.cos(angle))),
  )

/** True where some small mirror of the lens shows the front; its edges moved out by `grown` degrees of normal. */
const shows = (scene: Scene, front: Face, grown: number): boolean => {
  const { face, looks } = scene.subject.figures[0]!
  const side = unit(cross(looks, [0, 0, 1]))
  // The top leans over: what looked ahead looks down.
  const ahead = about(side, rad(-8), looks)
  const up = cross(side, ahead)
  const sight = unit(subtract(face, scene.camera.eye))
  const [wide, high] = [16 + grown, 14 + grown]
  if (high < 0) return false
  const steps = 120
  for (let i = -steps; i <= steps; i++)
    for (let j = -steps; j <= steps; j++) {
      const normal = unit(
        add(
          ahead,
          add(scale(side, Math.tan(rad((wide * i) / steps))), scale(up, Math.tan(rad((high * j) / steps)))),
        ),
      )
      const thrown = subtract(sight, scale(normal, 2 * dot(sight, normal)))
      if (dot(front.normal, thrown) < 0 && rayMeetsFace(front, face, thrown) !== undefined) return true
    }
  return false
}

describe('a light in glasses', () => {
  const places = [
    '{ angle: 30 deg left, distance: 1.5 m, up: 20 deg }',
    '{ angle: 0 deg, distance: 1.5 m, height: 2.2 m }',
    '{ angle: 45 deg right, distance: 1.5 m, height: 1.7 m }',
    '{ angle: 52 deg right, distance: 1.5 m, height: 1.7 m }',
    '{ angle: 60 deg left, distance: 1.2 m, height: 2 m }',
    '{ angle: 20 deg left, distance: 1.3 m, up: 45 deg }',
    '{ angle: 10 deg right, distance: 1.4 m, height: 1 m }',
    '{ angle: 0 deg, distance: 1.3 m, height: 70 cm }',
    '{ angle: 25 deg right, distance: 3 m, height: 2.6 m }',
  ]

  it.each(places)('shows where rays find it, and comes in or goes out where they say: %s', (at) => {
    for (const modifier of ['softbox 90 x 90 cm', 'octa 120 cm']) {
      const scene = set(at, '', '', modifier)
      const front = scene.lights.get('key')!.front!
      const found = inside(scene)
      if (found === undefined) {
        expect(shows(scene, front, 0)).toBe(false)
        continue
      }
      // The zone moves by two degrees where the edge of the lens moves by one. Places on the front are 10 cm apart.
      expect(shows(scene, front, 1 - found / 2)).toBe(true)
      expect(shows(scene, front, -1 - found / 2)).toBe(false)
    }
  })

  it('the report’s set: its lower edge over the eyes, far inside', () => {
    // A box of 0.9 m at 1.5 m, 20 degrees up and 30 round: its lower edge 3.3 degrees up.
    expect(inside(set(places[0]!))).toBeGreaterThan(7)
  })

  it('both limits by hand: a small front straight ahead and to the side', () => {
    // Level with eyes and lens, seen at 24 degrees: the normal looks 12 aside, and 8 over the middle of the lens.
    const small = 'softbox 1 x 1 cm'
    const at = '{ angle: 24 deg left, distance: 1.8 m, height: 1.6 m }'
    expect(inside(set(at, '', '', small))).toBeCloseTo(2 * Math.min(16 - 12, 14 - 8), 0)
    // Straight ahead, 20 degrees up from the lens: 10 + 8 of 14.
    const up = '{ angle: 0 deg, distance: 1.8 m, up: 20 deg }'
    expect(inside(set(up, '', '', small))).toBeCloseTo(2 * (14 - 18), 0)
  })

  it('a head turned away takes the zone along; one turned to the light moves it onto it', () => {
    const at = '{ angle: 70 deg right, distance: 1.5 m, height: 1.6 m }'
    // More than ten degrees outside is not asked.
    expect(inside(set(at, '', ', turned: 0 deg'))).toBeUndefined()
    expect(inside(set(at, '', ', turned: 30 deg right'))).toBeGreaterThan(10)
  })

  it('nothing of a light whose front looks away, that a panel hides, or that stands behind the head', () => {
    const at = '{ left: 60 cm, front: 1.2 m, height: 1.7 m }'
    expect(inside(set(at))).toBeGreaterThan(0)
    const flag =
      'panels:\n  flag: { kind: flag, size: 1.4 x 1.4 m, at: { left: 40 cm, front: 75 cm, height: 1.7 m }, faces: subject }\n'
    expect(inside(set(at, flag))).toBeUndefined()
    expect(inside(set(at.replace('}', '}, aim: camera')))).toBeUndefined()
    expect(inside(set('{ angle: 170 deg left, distance: 1.4 m, height: 2 m }'))).toBeUndefined()
  })

  it('the sun, as a direction', () => {
    const sun = (up: number) => {
      const scene = buildScene(
        planOf(`plan: 1
title: Glasses in the sun
camera: { lens: 85 mm, at: { distance: 1.8 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person, glasses: true }
lights:
  sun: { role: key, unit: sun, at: { angle: 10 deg left, up: ${up} deg }, reads: f/16, shutter: 1/125, iso: 100 }
`),
      )
      return lightInGlasses(scene, scene.subject.figures[0]!, scene.lights.get('sun')!)
    }
    expect(inDegrees(sun(5)!.inside)).toBeCloseTo(2 * (14 - 8 - 2.5), 0)
    expect(inDegrees(sun(17)!.inside)).toBeCloseTo(2 * (14 - 8 - 8.5), 0)
    expect(sun(30)).toBeUndefined()
  })
})
