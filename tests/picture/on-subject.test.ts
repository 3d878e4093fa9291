/**
 * What a glossy object shows, against a picture drawn by rays: each line of sight is met with the cylinder, ball or flat
 * front by its own equation, thrown back, and met with the light's front. Written out anew.
 */
import { describe, expect, it } from 'vitest'
import { edgesShow, type Highlight, highlightsOn } from '../../src/picture/on-subject.js'
import { buildScene } from '../../src/scene/build-scene.js'
import { firstHit } from '../../src/scene/first-hit.js'
import type { Face, Scene } from '../../src/scene/scene.js'
import { type SubjectMirror, subjectMirror } from '../../src/scene/subject-mirror.js'
import { add, dot, scale, subtract, unit, type Vec3 } from '../../src/scene/vector.js'
import { planOf } from '../rules/check-text.js'

interface Set {
  readonly scene: Scene
  readonly mirror: SubjectMirror
  /** Metres of either side of its top. */
  readonly table: number
  /** The first from camera-left. */
  readonly highlight: Highlight | undefined
  readonly highlights: readonly Highlight[]
}

const set = (subject: string, light: string, more = '', table = 40): Set => {
  const plan = planOf(`plan: 1
title: Something glossy
camera: { lens: 100 mm, at: { distance: 1.5 m, height: 1.05 m, aside: 10 cm right }, aim: subject, aperture: f/11, shutter: 1/125, iso: 100, held-by: stand }
subject: { kind: object, finish: glossy, ${subject}, stands-on: { height: 80 cm, size: ${table} x ${table} cm } }
lights:
  key: { unit: head 400 Ws, ${light} }
${more}`)
  const scene = buildScene(plan)
  const [figure] = scene.subject.figures
  const mirror = subjectMirror(figure!, plan.subject)
  const { front } = scene.lights.get('key')!
  const shown = { name: 'key', face: front!, sides: 'front' } as const
  const highlights = highlightsOn(scene, figure!, mirror, shown)
  return { scene, mirror, table: table / 100, highlight: highlights[0], highlights }
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

/** Its top is 80 cm high. */
const onTable = (size: number, [x, y, z]: Vec3, on: Vec3): boolean => {
  const t = (0.8 - z) / on[2]
  return t > 0 && Math.abs(x + t * on[0]) <= size / 2 && Math.abs(y + t * on[1]) <= size / 2
}

interface Patch {
  readonly from: readonly [number, number]
  readonly to: readonly [number, number]
  /** Of the object's own places of the picture. */
  readonly covers: number
}

/** Of places of the picture that show the light, those that touch are one. From camera-left on; specks are left out. */
const byRays = (
  { scene, table }: Set,
  meet: (eye: Vec3, ray: Vec3) => Meet,
  [wide, high]: readonly [number, number] = [0.4, 0.4],
  [across, up]: readonly [number, number] = [700, 700],
): readonly Patch[] => {
  const { camera } = scene
  const front = scene.lights.get('key')!.front!
  // Drawn about the object alone, so many metres of it.
  const [body] = [scene.subject.figures[0]!.body]
  const d = subtract(scale(add(body.from, body.to), 0.5), camera.eye)
  const depth = dot(d, camera.forward)
  const sight = (i: number, j: number): Vec3 => {
    const x = (dot(d, camera.right) + ((i + 0.5) / across - 0.5) * wide) / depth
    const y = (dot(d, camera.up) + ((j + 0.5) / up - 0.5) * high) / depth
    return unit(add(camera.forward, add(scale(camera.right, x), scale(camera.up, y))))
  }
  const own = [across, -1, up, -1]
  let count = 0
  const lit = new Uint8Array(across * up)
  const grow = (box: number[], x: number, y: number) => {
    box[0] = Math.min(box[0]!, x)
    box[1] = Math.max(box[1]!, x)
    box[2] = Math.min(box[2]!, y)
    box[3] = Math.max(box[3]!, y)
  }
  for (let i = 0; i < across; i++)
    for (let j = 0; j < up; j++) {
      const ray = sight(i, j)
      const hit = meet(camera.eye, ray)
      if (hit === undefined) continue
      grow(own, i, j)
      count++
      const on = subtract(ray, scale(hit.normal, 2 * dot(ray, hit.normal)))
      if (onFront(front, hit.at, on) && !onTable(table, hit.at, on)) lit[i * up + j] = 1
    }
  const share = (value: number, k: 0 | 2) => (2 * (value - own[k]!)) / (own[k + 1]! - own[k]!) - 1
  const patches: Patch[] = []
  for (let start = 0; start < across * up; start++) {
    if (lit[start] !== 1) continue
    const box = [across, -1, up, -1]
    let size = 0
    const open = [start]
    lit[start] = 0
    for (let at = open.pop(); at !== undefined; at = open.pop()) {
      const [i, j] = [Math.floor(at / up), at % up]
      grow(box, i, j)
      size++
      for (let a = i - 1; a <= i + 1; a++)
        for (let b = j - 1; b <= j + 1; b++)
          if (a >= 0 && b >= 0 && a < across && b < up && lit[a * up + b] === 1) {
            lit[a * up + b] = 0
            open.push(a * up + b)
          }
    }
    if (size > 4)
      patches.push({
        from: [share(box[0]!, 0), share(box[2]!, 2)],
        to: [share(box[1]!, 0), share(box[3]!, 2)],
        covers: size / count,
      })
  }
  return patches.sort((a, b) => a.from[0] + a.to[0] - b.from[0] - b.to[0])
}

const agree = (found: readonly Highlight[], wanted: readonly Patch[], within = 0.03): void => {
  expect(found.length).toBe(wanted.length)
  found.forEach(({ from, to, covers }, i) => {
    const drawn = wanted[i]!
    for (const axis of [0, 1] as const) {
      expect(Math.abs(from[axis] - drawn.from[axis])).toBeLessThan(within)
      expect(Math.abs(to[axis] - drawn.to[axis])).toBeLessThan(within)
    }
    expect(Math.abs(covers - drawn.covers)).toBeLessThan(0.003 + 0.06 * drawn.covers)
  })
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
    agree(found.highlights, byRays(found, meet))
  })

  it('on a flat flask, wider than deep', () => {
    const found = set('height: 30 cm, width: 16 cm, depth: 6 cm', strip)
    const meet = (eye: Vec3, ray: Vec3): Meet => {
      const hit = quadric([0, 0, 0.95], [0.08, 0.03, 1e6], eye, ray)
      return hit === undefined || Math.abs(hit.at[2] - 0.95) > 0.15 ? undefined : hit
    }
    agree(found.highlights, byRays(found, meet))
  })

  it.each([
    ['a strip', strip],
    ['an octa', octa],
    ['a dish from behind', dish],
  ])('on a ball: %s', (_, light) => {
    const found = set('height: 20 cm', light)
    agree(
      found.highlights,
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
    agree(found.highlights, byRays(found, meet), 0.05)
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

/** Over a round thing, flat or tall. */
const round =
  (halves: Vec3, middle: Vec3, ends?: number) =>
  (eye: Vec3, ray: Vec3): Meet => {
    const hit = quadric(middle, halves, eye, ray)
    return hit === undefined || (ends !== undefined && Math.abs(hit.at[2] - middle[2]) > ends)
      ? undefined
      : hit
  }
const cylinder = round([0.04, 0.04, 1e6], [0, 0, 0.95], 0.15)
const ball = round([0.1, 0.1, 0.1], [0, 0, 0.9])
const narrow = 'height: 30 cm, width: 8 cm'
const box = (where: string, size = '60 x 90 cm'): string =>
  `modifier: softbox ${size}, meters: f/11, at: { ${where} }`

describe('a front behind a round thing', () => {
  it.each([
    ['straight behind', 'right: 2 cm, behind: 60 cm, height: 95 cm'],
    ['more to one side', 'right: 12 cm, behind: 60 cm, height: 95 cm'],
    ['to one side alone', 'right: 40 cm, behind: 60 cm, height: 95 cm'],
    ['over it', 'behind: 60 cm, height: 1.6 m'],
  ])('on a cylinder: %s', (_, where) => {
    const found = set(narrow, box(where))
    agree(found.highlights, byRays(found, cylinder, [0.1, 0.36], [2400, 300]))
  })

  it('shows at both edges of a cylinder, and at none where the thing hides it all', () => {
    expect(set(narrow, box('right: 2 cm, behind: 60 cm, height: 95 cm')).highlights.length).toBe(2)
    expect(set(narrow, box('left: 4 cm, behind: 60 cm, height: 95 cm', '4 x 4 cm')).highlights).toEqual([])
  })

  it.each([
    ['straight behind', 'left: 4 cm, behind: 60 cm, height: 84 cm'],
    ['to one side', 'right: 24 cm, behind: 60 cm, height: 85 cm'],
    ['over it', 'behind: 60 cm, height: 1.5 m'],
    ['far to one side', 'right: 60 cm, behind: 30 cm, height: 95 cm'],
  ])('on a ball: %s', (_, where) => {
    const found = set('height: 20 cm', box(where), '', 6)
    agree(found.highlights, byRays(found, ball, [0.22, 0.22], [1200, 1200]))
  })

  it('as a crescent that thins out to the image of a corner, where the way by the ball is shortest', () => {
    const found = set('height: 20 cm', box('right: 30 cm, behind: 50 cm, height: 1.15 m'), '', 6)
    const { eye, forward, up } = found.scene.camera
    const { centre, across, width, height, ...front } = found.scene.lights.get('key')!.front!
    const [inner] = [1, -1]
      .map((side) => add(centre, add(scale(across, (side * width) / 2), scale(front.up, -height / 2))))
      .sort((a, b) => a[0] - b[0])
    const onBall = (turned: number, high: number): Vec3 => [
      0.1 * Math.cos(high) * Math.sin(turned),
      -0.1 * Math.cos(high) * Math.cos(turned),
      0.9 + 0.1 * Math.sin(high),
    ]
    const way = (at: Vec3): number => Math.hypot(...subtract(at, eye)) + Math.hypot(...subtract(at, inner!))
    let best: [number, number] = [1, 0]
    for (let step = 0.2; step > 1e-7; step /= 2)
      for (let better = true; better; ) {
        better = false
        for (const [i, j] of [
          [step, 0],
          [-step, 0],
          [0, step],
          [0, -step],
        ] as const) {
          const next: [number, number] = [best[0] + i, best[1] + j]
          if (way(onBall(...next)) >= way(onBall(...best)) - 1e-15) continue
          best = next
          better = true
        }
      }
    const y = (at: Vec3): number => dot(subtract(at, eye), up) / dot(subtract(at, eye), forward)
    // The ball's own top and foot in the picture: where its middle lies, half its angle up and down.
    const far = Math.hypot(...subtract([0, 0, 0.9], eye))
    const middle = Math.atan(y([0, 0, 0.9]))
    const edge = (side: 1 | -1): number => Math.tan(middle + side * Math.asin(0.1 / far))
    const wanted = (2 * (y(onBall(...best)) - edge(-1))) / (edge(1) - edge(-1)) - 1
    expect(found.highlights.length).toBe(1)
    expect(found.highlight!.from[1]).toBeCloseTo(wanted, 2)
  })

  it('runs all round a ball', () => {
    const [rim, ...more] = set(
      'height: 20 cm',
      box('left: 4 cm, behind: 60 cm, height: 84 cm'),
      '',
      6,
    ).highlights
    expect(more).toEqual([])
    expect(rim!.round).toBeGreaterThan(0.9)
    expect(
      set('height: 20 cm', box('right: 60 cm, behind: 30 cm, height: 95 cm')).highlight!.round,
    ).toBeUndefined()
  })
})

describe('what a round thing shows runs smoothly with the place of a light', () => {
  const sweep = (subject: string, from: number, to: number): readonly (readonly Highlight[])[] =>
    Array.from(
      { length: to - from + 1 },
      (_, i) => set(subject, box(`right: ${from + i} mm, behind: 60 cm, height: 95 cm`)).highlights,
    )
  const total = (all: readonly Highlight[], of: (one: Highlight) => number): number =>
    all.reduce((sum, one) => sum + of(one), 0)

  it.each([
    // Where the box leaves one side of the cylinder, and where it comes out round the ball.
    ['a cylinder', narrow, 230, 300],
    ['a ball', 'height: 20 cm', 200, 330],
  ])('over %s, millimetre by millimetre', (_, subject, from, to) => {
    const all = sweep(subject, from, to)
    for (const [i, one] of all.entries()) {
      const next = all[i + 1] ?? one
      expect(Math.abs(total(one, ({ covers }) => covers) - total(next, ({ covers }) => covers))).toBeLessThan(
        0.002,
      )
      const widest = (of: readonly Highlight[]) => Math.max(0, ...of.map(({ from, to }) => to[0] - from[0]))
      expect(Math.abs(widest(one) - widest(next))).toBeLessThan(0.06)
    }
    expect(all[0]!.length).toBeGreaterThan(0)
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
      expect(firstHit(scene, at, on, new Set(['object']))?.name).toBe(hit?.mirrors?.name)
    }
    expect(right?.mirrors?.name).toBe('card')
    expect(left?.mirrors?.name).not.toBe('card')
  })
})
