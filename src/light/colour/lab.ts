/** CIE 1976 L*a*b* against D65: how deep a recorded colour looks. Source: CIE 15. */
import { d65 } from './adapt.js'
import { type Rgb, xyzOfRgb } from './rgb.js'

export interface Lab {
  readonly l: number
  readonly a: number
  readonly b: number
}

const f = (t: number): number => (t > (6 / 29) ** 3 ? Math.cbrt(t) : t / (3 * (6 / 29) ** 2) + 4 / 29)

export const labOfRgb = (rgb: Rgb): Lab => {
  const [x, y, z] = xyzOfRgb(rgb)
  const [fx, fy, fz] = [f(x / d65[0]), f(y / d65[1]), f(z / d65[2])]
  return { l: 116 * fy - 16, a: 500 * (fx - fy), b: 200 * (fy - fz) }
}

export const chromaOf = ({ a, b }: Lab): number => Math.hypot(a, b)

/** Degrees between two hues, 0 to 180; of greys it says nothing. */
export const hueApart = (one: Lab, other: Lab): number => {
  const turned = Math.atan2(one.b, one.a) - Math.atan2(other.b, other.a)
  return Math.abs((Math.atan2(Math.sin(turned), Math.cos(turned)) * 180) / Math.PI)
}
