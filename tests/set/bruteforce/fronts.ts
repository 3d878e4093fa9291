/** Fronts of lights cut into small cells of known share, in the front's own plane: [across, up, share of the area]. */

export type Cell = readonly [across: number, up: number, share: number]
export type Shape = readonly Cell[]

const even = (places: readonly (readonly [number, number])[]): Shape =>
  places.map(([u, v]) => [u, v, 1 / places.length])

const middles = (count: number, from: number, to: number): readonly number[] =>
  Array.from({ length: count }, (_, i) => from + ((to - from) * (i + 0.5)) / count)

const grid = (width: number, height: number, fineness: number): readonly (readonly [number, number])[] => {
  const step = Math.sqrt((width * height) / fineness)
  const across = middles(Math.ceil(width / step), -width / 2, width / 2)
  const up = middles(Math.ceil(height / step), -height / 2, height / 2)
  return up.flatMap((v) => across.map((u) => [u, v] as const))
}

export const rectangle = (width: number, height: number, cells = 2400): Shape =>
  even(grid(width, height, cells))

/** Circles of equal area between an inner and an outer radius. */
const rings = (inside: number, outside: number, circles: number, around: number): Shape =>
  even(
    middles(circles, inside ** 2, outside ** 2).flatMap((square, i) =>
      middles(around, 0, 2 * Math.PI).map((turn) => {
        const shifted = turn + (i % 2) * (Math.PI / around)
        return [Math.sqrt(square) * Math.cos(shifted), Math.sqrt(square) * Math.sin(shifted)] as const
      }),
    ),
  )

export const disc = (diameter: number): Shape => rings(0, diameter / 2, 40, 60)

/** A disc with a round plate before its middle. */
export const ring = (diameter: number, plate: number): Shape => rings(plate / 2, diameter / 2, 40, 60)

/** Regular, its corners on a circle of this diameter, one of its sides level. */
export const octagon = (corners: number): Shape => {
  const toSide = (corners / 2) * Math.cos(Math.PI / 8)
  return even(
    grid(2 * toSide, 2 * toSide, 6000).filter(([u, v]) => (Math.abs(u) + Math.abs(v)) / Math.SQRT2 <= toSide),
  )
}
