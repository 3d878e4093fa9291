/**
 * Chromaticities of the CIE 1931 standard observer (2°), in xy and in the uniform diagram of 1960, in which correlated
 * colour temperature and the distance from the locus are defined. Source: CIE 15.
 */

/** CIE 1931. */
export interface Xy {
  readonly x: number
  readonly y: number
}

/** CIE 1960 (v is two thirds of the v′ of 1976). */
export interface Uv {
  readonly u: number
  readonly v: number
}

/** Tristimulus values; Y carries the light's quantity (lx·s, or 1). */
export type Xyz = readonly [number, number, number]

export const uvOfXy = ({ x, y }: Xy): Uv => {
  const d = -2 * x + 12 * y + 3
  return { u: (4 * x) / d, v: (6 * y) / d }
}

export const xyOfUv = ({ u, v }: Uv): Xy => {
  const d = 2 * u - 8 * v + 4
  return { x: (3 * u) / d, y: (2 * v) / d }
}

export const xyOfXyz = ([x, y, z]: Xyz): Xy => ({ x: x / (x + y + z), y: y / (x + y + z) })

export const xyzOfXy = ({ x, y }: Xy, luminance = 1): Xyz => [
  (luminance * x) / y,
  luminance,
  (luminance * (1 - x - y)) / y,
]

export const uvOfXyz = ([x, y, z]: Xyz): Uv => {
  const d = x + 15 * y + 3 * z
  return { u: (4 * x) / d, v: (6 * y) / d }
}

/** Distance in the 1960 diagram. */
export const apartUv = (a: Uv, b: Uv): number => Math.hypot(a.u - b.u, a.v - b.v)

/** Light adds in tristimulus values. */
export const addXyz = (lights: Iterable<Xyz>): Xyz => {
  let [x, y, z] = [0, 0, 0]
  for (const one of lights) {
    x += one[0]
    y += one[1]
    z += one[2]
  }
  return [x, y, z]
}

export const scaledXyz = ([x, y, z]: Xyz, by: number): Xyz => [by * x, by * y, by * z]
