import { decode } from '../../units/srgb.js'
import type { Rgb } from './rgb.js'

/** Linear values of sRGB ones, each 0 to 1. IEC 61966-2-1. */
export const linearRgb = ([r, g, b]: readonly [number, number, number]): Rgb => [
  decode(r),
  decode(g),
  decode(b),
]
