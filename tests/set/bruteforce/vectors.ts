/** Vectors, angles and places, worked out by hand trigonometry. Metres; x camera-right, y toward the backdrop, z up. */

export type Vector = readonly [number, number, number]

export const plus = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
export const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
export const times = (a: Vector, k: number): Vector => [a[0] * k, a[1] * k, a[2] * k]
export const inner = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
export const outer = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
]
export const size = (a: Vector): number => Math.hypot(...a)
export const toward = (from: Vector, to: Vector): Vector => {
  const way = minus(to, from)
  return times(way, 1 / size(way))
}

export const degrees = (angle: number): number => (angle * Math.PI) / 180

/** Angle left of the camera's end of the centre line, tape from the face, height over the floor. */
export const byTape = (from: Vector, angleLeft: number, tape: number, height: number): Vector => {
  const a = degrees(angleLeft)
  const along = Math.sqrt(tape ** 2 - (height - from[2]) ** 2)
  return [from[0] - along * Math.sin(a), from[1] - along * Math.cos(a), height]
}

/** The same with an angle up from the face in place of a height. */
export const byTapeUp = (from: Vector, angleLeft: number, tape: number, up: number): Vector => {
  const [a, e] = [degrees(angleLeft), degrees(up)]
  return [
    from[0] - tape * Math.cos(e) * Math.sin(a),
    from[1] - tape * Math.cos(e) * Math.cos(a),
    from[2] + tape * Math.sin(e),
  ]
}

/** An axis turned by an angle toward a side, in the plane of both. */
export const feathered = (axis: Vector, angle: number, side: Vector): Vector => {
  const sideways = minus(side, times(axis, inner(side, axis)))
  const a = degrees(angle)
  return plus(times(axis, Math.cos(a)), times(sideways, Math.sin(a) / size(sideways)))
}
