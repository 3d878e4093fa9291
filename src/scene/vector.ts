/** Vectors in metres; plain tuples, so that a scene is data. */
export type Vec3 = readonly [number, number, number]

export const add = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
export const subtract = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
export const scale = (a: Vec3, k: number): Vec3 => [a[0] * k, a[1] * k, a[2] * k]
export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
export const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
]
export const length = (a: Vec3): number => Math.sqrt(dot(a, a))
/** Of a vector that need not be made first. `Math.hypot` minds overflow, at several times the cost. */
export const lengthOf = (x: number, y: number, z: number): number => Math.sqrt(x * x + y * y + z * z)
export const distance = (a: Vec3, b: Vec3): number => length(subtract(a, b))
/** Unit vector; the zero vector gives `fallback`. */
export const unit = (a: Vec3, fallback: Vec3 = [0, -1, 0]): Vec3 => {
  const size = length(a)
  return size > 1e-12 ? scale(a, 1 / size) : fallback
}
