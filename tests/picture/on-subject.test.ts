/**
 * What a glossy object shows, against a picture drawn by rays: each line of sight is met with the cylinder, ball or flat
 * front by its own equation, thrown back, and met with the light's front. Written out anew.
 */
import { describe, expect, it } from 'vitest'
import { edgesShow, type Highlight, highlightOn } from '../../src/picture/on-subject.js'
import { buildScene } from '../../src/scene/build-scene.js'
import { firstHit } from '../../src/scene/first-hit.js'
import type { Face, Scene } from '../../src/scene/scene.js'
import { type SubjectMirror, subjectMirror } from '../../src/scene/subject-mirror.js'
import { add, dot, scale, subtract, unit, type Vec3 } from '../../src/scene/vector.js'
import { planOf } from '../rules/check-text.js'

interface Set {
  readonly scene: Scene
  readonly mirror: SubjectMirror
  readonly highlight: Highlight | undefined
}

const set = (subject: string, light: string, more = ''): Set => {
  const plan = planOf(`plan: 1
title: Something glossy
camera: { lens: 100 mm, at: { distance: 1.5 m, height: 1.05 m, aside: 10 cm right }, aim: subject, aperture: f/11, shutter: 1/125, iso: 100, held-by: stand }
subject: { kind: object, finish: glossy, ${subject}, stands-on: { height: 80 cm, size: 40 x 40 cm } }
lights:
  key: { unit: head 400 Ws, ${light} }
${more}`)
  const scene = buildScene(plan)
  const [figure] = scene.subject.figures
  const mirror = subjectMirror(figure!, plan.subject)
  const { front } = scene.lights.get('key')!
  const shown = { name: 'key', face: front!, sides: 'front' } as const
  return { scene, mirror, highlight: highlightOn(scene, figure!, mirror, shown) }
}

type Meet = { readonly at: Vec3; readonly normal: Vec3 } | undefined

/** (p − c)·W·(p − c) = 1, W diagonal; c z ends a cylinder. */
const quadric = (middle: Vec3, halves: Vec3, eye: Vec3, ray: Vec3): Meet => {
  const by = (p: Vec3, q: Vec3) => p.reduce((sum, one, i) => sum + (one * q[i]!) / halves[i]! ** 2, 0)
  const start = subtract(eye, middle)
  const [a, b, c] = [by(ray, ray), by(start, ray), by(start, start) - 1]
  if (b * b < a * c) return undefined
  const at = add(eye, scale(ray, (-b - Math.sqrt(b * b - a * c)) / a))
  const d = subtract(at, middle)
  return { at, normal: unit([d[0] / halves[0] ** 2, d[1] / halves[1] ** 2, d[2] / halves[2] ** 2]) }
}

const onFront = (
  { centre, normal, across, up, width, height, outline }: Face,
  from: Vec3,
  ray: Vec3,
): boolean => {
  if (dot(ray, normal) >= 0) return false
  const t = dot(subtract(centre, from), normal) / dot(ray, normal)
  if (t <= 0) return false
  const d = subtract(add(from, scale(ray, t)), centre)
  const [u, v] = [(2 * dot(d, across)) / width, (2 * dot(d, up)) / height]
  // An octa is measured from tip to tip.
  const tip = Math.cos(Math.PI / 8)
  if (outline === 'octagon')
    return Math.max(Math.abs(u), Math.abs(v), (Math.abs(u) + Math.abs(v)) * Math.SQRT1_2) <= tip
  return outline === 'rectangle' ? Math.abs(u) <= 1 && Math.abs(v) <= 1 : u * u + v * v <= 1
}

const byRays = ({ scene }: Set, meet: (eye: Vec3, ray: Vec3) => Meet) => {
  const { camera } = scene
  const front = scene.lights.get('key')!.front!
  const n = 700
  const own = [1, -1, 1, -1]
  const lit = [1, -1, 1, -1]
  const grow = (box: number[], x: number, y: number) => {
    box[0] = Math.min(box[0]!, x)
    box[1] = Math.max(box[1]!, x)
    box[2] = Math.min(box[2]!, y)
    box[3] = Math.max(box[3]!, y)
  }
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) {
      const [x, y] = [((i + 0.5) / n) * 2 - 1, ((j + 0.5) / n) * 2 - 1]
      const ray = unit(
        add(
          camera.forward,
          add(scale(camera.right, x * camera.tanHalfWidth), scale(camera.up, y * camera.tanHalfHeight)),
        ),
      )
      const hit = meet(camera.eye, ray)
      if (hit === undefined) continue
      grow(own, x, y)
      const on = subtract(ray, scale(hit.normal, 2 * dot(ray, hit.normal)))
      if (onFront(front, hit.at, on)) grow(lit, x, y)
    }
  const share = (value: number, k: 0 | 2) => (2 * (value - own[k]!)) / (own[k + 1]! - own[k]!) - 1
  return { from: [share(lit[0]!, 0), share(lit[2]!, 2)], to: [share(lit[1]!, 0), share(lit[3]!, 2)] }
}

const agree = (found: Highlight, wanted: ReturnType<typeof byRays>, within = 0.03): void => {
  for (const axis of [0, 1] as const) {
    expect(Math.abs(found.from[axis] - wanted.from[axis]!)).toBeLessThan(within)
    expect(Math.abs(found.to[axis] - wanted.to[axis]!)).toBeLessThan(within)
  }
}

const strip = 'modifier: strip 30 x 90 cm, meters: f/11, at: { left: 70 cm, front: 20 cm, height: 1.35 m }'
const octa = 'modifier: octa 90 cm, meters: f/11, at: { right: 60 cm, front: 80 cm, height: 1.6 m }'
const dish = 'modifier: beauty dish 55 cm, meters: f/11, at: { right: 40 cm, behind: 60 cm, height: 1.4 m }'

describe('a highlight lies where rays find it', () => {
  const bottle = 'height: 30 cm, width: 8 cm'
  it.each([
    ['a strip beside a bottle', strip],
    ['an octa, which its shoulder cuts', octa.replace('1.6 m', '1.25 m').replace('octa 90 cm', 'octa 60 cm')],
    ['a dish from behind', dish.replace('1.4 m', '1.1 m')],
  ])('on a cylinder: %s', (_, light) => {
    const found = set(bottle, light)
    const meet = (eye: Vec3, ray: Vec3): Meet => {
      const hit = quadric([0, 0, 0.95], [0.04, 0.04, 1e6], eye, ray)
      return hit === undefined || Math.abs(hit.at[2] - 0.95) > 0.15 ? undefined : hit
    }
    agree(found.highlight!, byRays(found, meet))
  })

  it('on a flat flask, wider than deep', () => {
    const found = set('height: 30 cm, width: 16 cm, depth: 6 cm', strip)
    const meet = (eye: Vec3, ray: Vec3): Meet => {
      const hit = quadric([0, 0, 0.95], [0.08, 0.03, 1e6], eye, ray)
      return hit === undefined || Math.abs(hit.at[2] - 0.95) > 0.15 ? undefined : hit
    }
    agree(found.highlight!, byRays(found, meet))
  })

  it.each([
    ['a strip', strip],
    ['an octa', octa],
    ['a dish from behind', dish],
  ])('on a ball: %s', (_, light) => {
    const found = set('height: 20 cm', light)
    agree(
      found.highlight!,
      byRays(found, (eye, ray) => quadric([0, 0, 0.9], [0.1, 0.1, 0.1], eye, ray)),
    )
  })

  it('on a flat front', () => {
    const found = set(
      'height: 30 cm, width: 30 cm, depth: 4 cm, shape: plane',
      'modifier: softbox 40 x 40 cm, meters: f/11, at: { left: 15 cm, front: 1.5 m, height: 90 cm }',
    )
    const { face } = found.mirror as Extract<SubjectMirror, { shape: 'plane' }>
    const meet = (eye: Vec3, ray: Vec3): Meet => {
      const at = add(eye, scale(ray, (face.centre[1] - eye[1]) / ray[1]))
      return Math.abs(at[0]) > 0.15 || Math.abs(at[2] - 0.95) > 0.15 ? undefined : { at, normal: [0, -1, 0] }
    }
    agree(found.highlight!, byRays(found, meet), 0.05)
  })

  it('far light, far camera: a cylinder shows it at the sine of half its angle', () => {
    // 90 degrees round: sin 45. Seen from 1.5 m and 4 m it shifts by little.
    const { highlight } = set(
      'height: 30 cm, width: 2 cm',
      'modifier: softbox 20 x 20 cm, meters: f/11, at: { left: 4 m, front: 0 cm, height: 1 m }',
    )
    const middle = (highlight!.from[0] + highlight!.to[0]) / 2
    // The camera stands 10 cm to the right: 93.8 degrees from it.
    expect(middle).toBeCloseTo(-Math.sin((93.8 / 2) * (Math.PI / 180)), 2)
  })

  it('nothing of a light behind a flag, of one whose front looks away, of one hidden behind the thing', () => {
    const flag =
      'panels:\n  flag: { kind: flag, size: 60 x 140 cm, at: { left: 40 cm, front: 10 cm, height: 1.1 m }, faces: right }\n'
    expect(set(bottle, strip).highlight).toBeDefined()
    expect(set(bottle, strip, flag).highlight).toBeUndefined()
    expect(
      set(bottle, `${strip}, aim: away`, 'points: { away: { left: 5 m, height: 1.1 m } }\n').highlight,
    ).toBeUndefined()
    expect(
      set(
        'height: 30 cm, width: 30 cm',
        'modifier: softbox 10 x 10 cm, meters: f/11, at: { left: 5 cm, behind: 60 cm, height: 95 cm }',
      ).highlight,
    ).toBeUndefined()
  })
})

describe('edges', () => {
  it('show what lies there by a ray thrown back nine tenths of the way out', () => {
    const { scene, mirror } = set(
      'height: 30 cm, width: 8 cm',
      strip,
      'panels:\n  card: { kind: reflector, surface: white board, size: 60 x 60 cm, at: { right: 30 cm, behind: 20 cm, height: 95 cm }, faces: left }\n',
    )
    const [left, right] = edgesShow(scene, scene.subject.figures[0]!, mirror)!
    const { eye } = scene.camera
    const ahead = unit([eye[0], eye[1], 0])
    for (const [side, hit] of [
      [-1, left],
      [1, right],
    ] as const) {
      const out: Vec3 = scale([-ahead[1], ahead[0], 0], side)
      const normal = add(scale(ahead, Math.sqrt(1 - 0.81)), scale(out, 0.9))
      const at = add([0, 0, 0.95], scale(normal, 0.04))
      const ray = unit(subtract(at, eye))
      const on = subtract(ray, scale(normal, 2 * dot(ray, normal)))
      expect(firstHit(scene, at, on, new Set(['object']))?.name).toBe(hit?.name)
    }
    expect(right?.name).toBe('card')
    expect(left?.name).not.toBe('card')
  })
})
