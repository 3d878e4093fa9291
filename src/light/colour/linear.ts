import type { Rgb } from './rgb.js'

/** Linear values of sRGB ones, each 0 to 1. IEC 61966-2-1. */
export const linearRgb = ([r, g, b]: readonly [number, number, number]): Rgb => [
  linear(r),
  linear(g),
  linear(b),
]

const linear = (v: number): number => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4)
