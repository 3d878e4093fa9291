/**
 * What a flat mirror shows, against a picture drawn by rays: each pixel's line of sight is met with the mirror's plane,
 * thrown back by equal angles, and met with the front's plane. Written out anew; only what stands between is asked of
 * the program's own rays.
 */
import { describe, expect, it } from 'vitest'
import { type SeenInPlane, type Shown, seenInPlane } from '../../src/picture/in-plane-mirror.js'
import { buildScene } from '../../src/scene/build-scene.js'
import { firstHit } from '../../src/scene/first-hit.js'
import type { Face, Scene, SceneSurface } from '../../src/scene/scene.js'
import { add, dot, scale, subtract, unit, type Vec3 } from '../../src/scene/vector.js'
import { planOf } from '../rules/check-text.js'

const tabletop = (lights: string, more = '', camera = 'height: 1.25 m'): Scene =>
  buildScene(
    planOf(`plan: 1
title: A box on a glossy table
camera: { lens: 50 mm, at: { distance: 1.6 m, ${camera} }, aim: subject, aperture: f/11, shutter: 1/125, iso: 100, held-by: stand }
subject: { kind: object, height: 20 cm, width: 20 cm, stands-on: { height: 80 cm, surface: black acrylic, size: 1.4 x 1.4 m } }
backdrop: { surface: { reflectance: 0.1, finish: glossy }, behind: 80 cm }
lights:
${lights}
${more}`),
  )
const box = (at: string, size = '60 x 40 cm') =>
  `  key: { unit: head 400 Ws, modifier: softbox ${size}, meters: f/11, at: ${at} }`

const surface = (scene: Scene, name: string): SceneSurface => scene.surfaces.find((one) => one.name === name)!
const light = (scene: Scene): Shown => ({
  name: 'key',
  face: scene.lights.get('key')!.front!,
  sides: 'front',
})

const within = (face: Face, at: Vec3): boolean => {
  const d = subtract(at, face.centre)
  const [u, v] = [(2 * dot(d, face.across)) / face.width, (2 * dot(d, face.up)) / face.height]
  return face.outline === 'rectangle' ? Math.abs(u) <= 1 && Math.abs(v) <= 1 : u * u + v * v <= 1
}
const meet = (
  face: Face,
  from: Vec3,
  toward: Vec3,
): { readonly at: Vec3; readonly t: number } | undefined => {
  const t = dot(subtract(face.centre, from), face.normal) / dot(toward, face.normal)
  const at = add(from, scale(toward, t))
  return t > 1e-9 && within(face, at) ? { at, t } : undefined
}

const byRays = (scene: Scene, mirror: SceneSurface, { face, name }: Shown) => {
  const { camera } = scene
  const n = 240
  let [count, left, right, bottom, top] = [0, 1, -1, 1, -1]
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) {
      const [x, y] = [((i + 0.5) / n) * 2 - 1, ((j + 0.5) / n) * 2 - 1]
      const sight = unit(
        add(
          camera.forward,
          add(scale(camera.right, x * camera.tanHalfWidth), scale(camera.up, y * camera.tanHalfHeight)),
        ),
      )
      const hit = meet(mirror.face, camera.eye, sight)
      if (hit === undefined) continue
      const before = firstHit(scene, camera.eye, sight)
      if (before?.name !== mirror.name) continue
      const on = subtract(sight, scale(mirror.face.normal, 2 * dot(sight, mirror.face.normal)))
      const front = meet(face, hit.at, on)
      if (front === undefined || dot(on, face.normal) >= 0) continue
      const between = firstHit(scene, hit.at, on, new Set([mirror.name, name]))
      if (between !== undefined && between.distance < front.t - 1e-6) continue
      count++
      left = Math.min(left, x)
      right = Math.max(right, x)
      bottom = Math.min(bottom, y)
      top = Math.max(top, y)
    }
  return { share: count / n ** 2, from: [left, bottom], to: [right, top] }
}

const compare = (scene: Scene, mirror: string): SeenInPlane => {
  const found = seenInPlane(scene, surface(scene, mirror), light(scene))!
  const wanted = byRays(scene, surface(scene, mirror), light(scene))
  expect(wanted.share).toBeGreaterThan(0.001)
  expect(found.share / wanted.share).toBeGreaterThan(0.85)
  expect(found.share / wanted.share).toBeLessThan(1.15)
  for (const axis of [0, 1] as const) {
    expect(Math.abs(found.from[axis] - wanted.from[axis]!)).toBeLessThan(0.06)
    expect(Math.abs(found.to[axis] - wanted.to[axis]!)).toBeLessThan(0.06)
  }
  return found
}

describe('a light in a flat mirror', () => {
  it('a box over a glossy table, from behind', () => {
    compare(tabletop(box('{ left: 10 cm, behind: 70 cm, height: 1.5 m }')), 'table')
  })

  it('a box that stands half behind the edge of the table', () => {
    compare(tabletop(box('{ left: 45 cm, behind: 60 cm, height: 1.35 m }', '90 x 60 cm')), 'table')
  })

  it('a round front in the glossy backdrop, the object before part of it', () => {
    const scene = tabletop(
      '  key: { unit: head 400 Ws, modifier: beauty dish 55 cm, meters: f/11, at: { left: 60 cm, front: 1.5 m, height: 1.35 m }, aim: backdrop }',
    )
    compare(scene, 'backdrop')
  })

  it('a panel that hides a part of it', () => {
    const at = '{ left: 10 cm, behind: 70 cm, height: 1.5 m }'
    const open = compare(tabletop(box(at)), 'table')
    const flag =
      'panels:\n  flag: { kind: flag, size: 30 x 40 cm, at: { left: 20 cm, behind: 50 cm, height: 1.25 m }, faces: camera }\n'
    const half = compare(tabletop(box(at), flag), 'table')
    expect(half.share).toBeLessThan(0.8 * open.share)
  })

  it('what is seen in it lies on the front, at equal angles', () => {
    const scene = tabletop(box('{ left: 10 cm, behind: 70 cm, height: 1.5 m }'))
    const { at, seen } = compare(scene, 'table')
    const [a, b] = [unit(subtract(scene.camera.eye, at)), unit(subtract(seen, at))]
    expect(a[2]).toBeCloseTo(b[2], 9)
    expect(a[0]).toBeCloseTo(-b[0], 9)
    expect(a[1]).toBeCloseTo(-b[1], 9)
    const { centre, normal } = scene.lights.get('key')!.front!
    expect(dot(subtract(seen, centre), normal)).toBeCloseTo(0, 9)
  })

  it('nothing of a front that looks away, of a light out of the mirror’s view, of one behind the mirror', () => {
    const none = (lights: string, mirror: string, more = '') => {
      const scene = tabletop(lights, more)
      expect(byRays(scene, surface(scene, mirror), light(scene)).share).toBe(0)
      expect(seenInPlane(scene, surface(scene, mirror), light(scene))).toBeUndefined()
    }
    none(
      `  key: { unit: head 400 Ws, modifier: softbox 60 x 40 cm, meters: f/11, at: { left: 10 cm, behind: 70 cm, height: 1.5 m }, aim: away }`,
      'table',
      'points: { away: { behind: 5 m, height: 1.5 m } }\n',
    )
    none(box('{ left: 1.4 m, front: 20 cm, height: 1.5 m }'), 'table')
    none(box('{ left: 10 cm, front: 20 cm, height: 30 cm }'), 'table')
    none(box('{ left: 10 cm, behind: 1.2 m, height: 1.3 m }'), 'backdrop')
  })
})
