/** The backdrop's figures against a dense grid of single readings, and its rectangle against the frame. */
import { describe, expect, it } from 'vitest'
import type { Light } from '../../src/language/plan.js'
import { project } from '../../src/scene/camera-view.js'
import type { Vec3 } from '../../src/scene/vector.js'
import { computeSet } from '../../src/set/compute-set.js'
import {
  degreesOf,
  makeLight,
  makePlan,
  offsets,
  type PlanOverrides,
  softbox,
  surface,
  tape,
} from '../helpers/make-plan.js'

const onPaper = (name: string, more: object): Light =>
  makeLight(name, {
    role: 'backdrop',
    at: offsets({ right: -1.5, beforeBackdrop: 1.2, height: 1.6 }),
    ...more,
  })

const setOf = (lights: readonly Light[], more: PlanOverrides = {}) =>
  computeSet(makePlan({ lights, ...more }))

/** Stops over the camera at n × n places of the view's rectangle that the frame holds, one reading each. */
const dense = (set: ReturnType<typeof setOf>, n = 60): readonly number[] => {
  const view = set.backdropView!
  const y = set.scene.backdrop!.y
  const found: number[] = []
  for (let i = 0; i <= n; i++)
    for (let j = 0; j <= n; j++) {
      const at: Vec3 = [
        view.left + ((view.right - view.left) * i) / n,
        y,
        view.bottom + ((view.top - view.bottom) * j) / n,
      ]
      const seen = project(set.scene.camera, at)
      if (Math.abs(seen.x) > 0.94 || Math.abs(seen.y) > 0.94) continue
      const read = set.reading({
        at,
        of: 'all',
        dome: 'flat',
        faces: { direction: [0, -1, 0] },
        aside: 'people',
      })
      if (read !== undefined) found.push(read.overCamera.stops)
    }
  return found
}

const key = makeLight('key', { modifier: softbox(0.6, 0.9), at: tape(35, 1.3, { height: 2 }) })

const sets: readonly (readonly [string, ReturnType<typeof setOf>])[] = [
  ['one bare flash near the paper', setOf([onPaper('paper', {})])],
  [
    'two, one from either side',
    setOf([
      onPaper('a', {}),
      onPaper('b', { at: offsets({ right: 1.5, beforeBackdrop: 1.2, height: 1.6 }) }),
    ]),
  ],
  ['the key alone, from one side', setOf([key])],
  [
    'a honeycomb’s spot between the places of the grid',
    setOf([
      key,
      onPaper('spot', {
        grid: { kind: 'honeycomb', halfPeak: degreesOf(10) },
        at: offsets({ right: 0.33, beforeBackdrop: 1.6, height: 1.72 }),
        aim: { at: 'wall', wall: 'back-wall', feather: undefined },
      }),
    ]),
  ],
  [
    'full length, the paper’s foot in frame',
    setOf([onPaper('paper', {}), key], {
      camera: { lens: 0.05, at: { distance: 3.5, height: 1.1, right: 0.4 } },
    }),
  ],
  [
    'a camera that looks up and across',
    setOf([onPaper('paper', {}), key], {
      camera: {
        at: { distance: 2.5, height: 0.6, right: 0.8 },
        aim: { at: 'point', point: 'subject', feather: undefined },
      },
    }),
  ],
]

describe('darkest and brightest', () => {
  it.each(sets)('of %s are those of a dense grid, to a twentieth of a stop', (_, set) => {
    const all = dense(set)
    const view = set.backdropView!
    expect(all.length).toBeGreaterThan(1500)
    expect(Math.abs(view.brightest.overCamera.stops - Math.max(...all))).toBeLessThan(0.05)
    expect(Math.abs(view.darkest.overCamera.stops - Math.min(...all))).toBeLessThan(0.05)
    expect(view.spread.stops).toBeCloseTo(view.brightest.overCamera.stops - view.darkest.overCamera.stops, 12)
  })

  it.each(sets)('of %s lie in frame and 3 % inside it', (_, set) => {
    for (const { at } of set.backdropView!.samples) {
      const seen = project(set.scene.camera, at)
      expect(Math.max(Math.abs(seen.x), Math.abs(seen.y))).toBeLessThan(0.97)
      expect(at[2]).toBeGreaterThan(0)
    }
  })
})

describe('the rectangle', () => {
  it('is the part in frame: 94 % of the field’s width and height', () => {
    // 85 mm on 24 × 36 mm upright, focused 2.5 m off: the field 4.5 m away is 24/85 × 4.5 × (2.5 − 0.085)/2.5 wide.
    const { left, right, bottom, top } = sets[0]![1].backdropView!
    const wide = (0.024 / 0.085) * 4.5 * ((2.5 - 0.085) / 2.5)
    expect(right - left).toBeCloseTo(0.94 * wide, 9)
    expect(top - bottom).toBeCloseTo(0.94 * wide * 1.5, 9)
  })

  it('ends with the paper where the frame goes past it', () => {
    const { left, right } = setOf([key], { camera: { lens: 0.024 } }).backdropView!
    expect(right - left).toBeCloseTo(0.94 * 2.72, 9)
  })

  it('says where: as the camera sees it', () => {
    const view = sets[0]![1].backdropView!
    // The flash stands at the left and is aimed at the middle: what is far to the right gets least.
    expect(view.darkest.where).toMatch(/right/)
    expect(view.middle.where).toBe('middle')
    const words = new Set(view.samples.map((sample) => sample.where))
    expect([...words].sort()).toEqual(
      [
        'bottom',
        'left',
        'lower left',
        'lower right',
        'middle',
        'right',
        'top',
        'upper left',
        'upper right',
      ].sort(),
    )
  })

  it('is not there without a backdrop, out of frame, or in the dark', () => {
    expect(setOf([key], { backdrop: 'none' }).backdropView).toBeUndefined()
    expect(setOf([]).backdropView).toBeUndefined()
    const away = {
      at: { distance: 2.5, height: 1.6, right: 0 },
      aim: { at: 'wall', wall: 'front-wall', feather: undefined },
    }
    expect(setOf([key], { room: {}, camera: away as object }).backdropView).toBeUndefined()
  })
})

describe('tone', () => {
  it('is that of the surface: mid grey level with the camera records 118', () => {
    const set = setOf([onPaper('paper', { power: undefined, meters: { reads: 8, at: undefined } })], {
      camera: { aperture: 8, focus: { on: 'distance', distance: 1000 } },
      backdrop: { surface: surface('grey', 0.18) },
    })
    // 18 % is sRGB 118 (IEC 61966-2-1).
    expect(set.backdropView!.middle.srgb).toBe(118)
  })

  it('a sky is as it was metered, whatever the lights do', () => {
    const sky = { reads: 8, shutter: 2 ** -10, iso: 100, kind: 'reflected', colour: undefined } as const
    const view = (power: number, camera: object) =>
      setOf([makeLight('key', { power })], {
        camera: { aperture: 8, shutter: 2 ** -10, focus: { on: 'distance', distance: 100 }, ...camera },
        backdrop: { sky },
      }).backdropView!
    // A reflected meter's grey is π·12.5/250 = 15.7 % (ISO 2720's constants), sRGB 110.
    expect(view(1, {}).middle.srgb).toBe(110)
    expect(view(1 / 64, {}).middle.srgb).toBe(110)
    expect(view(1, { shutter: 2 ** -8 }).middle.linear).toBeCloseTo(4 * view(1, {}).middle.linear, 9)
    expect(view(1, {}).spread.stops).toBe(0)
  })
})
