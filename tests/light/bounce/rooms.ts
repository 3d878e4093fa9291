/** Surfaces for tests: boxes and free rectangles, and numbers from a fixed seed. */
import type { Surface } from '../../../src/language/plan.js'
import type { Face, SceneSurface } from '../../../src/scene/scene.js'
import { cross, type Vec3 } from '../../../src/scene/vector.js'

export const matte = (reflectance: number): Surface =>
  ({ name: 'test', reflectance, u: 0, colour: undefined }) as Surface

export const rectangle = (
  name: string,
  centre: Vec3,
  normal: Vec3,
  across: Vec3,
  width: number,
  height: number,
  front = 0.5,
  more: Partial<SceneSurface> = {},
): SceneSurface => ({
  name,
  path: 'room',
  face: {
    outline: 'rectangle',
    centre,
    normal,
    across,
    up: cross(normal, across),
    width: width as Face['width'],
    height: height as Face['height'],
  },
  front: matte(front),
  back: undefined,
  transmits: 0,
  stated: true,
  ...more,
})

/** Six sides looking in: x from 0 to w, y from 0 to l, z from 0 to h. Reflectances: left, right, front, back, floor, ceiling. */
export const box = (w: number, l: number, h: number, rho: readonly number[]): readonly SceneSurface[] => [
  rectangle('left-wall', [0, l / 2, h / 2], [1, 0, 0], [0, 1, 0], l, h, rho[0]),
  rectangle('right-wall', [w, l / 2, h / 2], [-1, 0, 0], [0, -1, 0], l, h, rho[1]),
  rectangle('front-wall', [w / 2, 0, h / 2], [0, 1, 0], [-1, 0, 0], w, h, rho[2]),
  rectangle('back-wall', [w / 2, l, h / 2], [0, -1, 0], [1, 0, 0], w, h, rho[3]),
  rectangle('floor', [w / 2, l / 2, 0], [0, 0, 1], [1, 0, 0], w, l, rho[4]),
  rectangle('ceiling', [w / 2, l / 2, h], [0, 0, -1], [-1, 0, 0], w, l, rho[5]),
]

export const alike = (rho: number): readonly number[] => [rho, rho, rho, rho, rho, rho]

/** Numbers from 0 to 1, always the same (a linear congruential generator of 32 bits). */
export const sequence = (seed: number): (() => number) => {
  let state = seed >>> 0
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return state / 4294967296
  }
}
