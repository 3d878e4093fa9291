import type { Vec3 } from '../../scene/vector.js'

/** Square of the least distance between two segments, each from a place along a vector; square metres. */
export const apartSquared = (p: Vec3, d: Vec3, q: Vec3, e: Vec3): number => {
  const [rx, ry, rz] = [p[0] - q[0], p[1] - q[1], p[2] - q[2]]
  const a = d[0] * d[0] + d[1] * d[1] + d[2] * d[2]
  const b = d[0] * e[0] + d[1] * e[1] + d[2] * e[2]
  const c = e[0] * e[0] + e[1] * e[1] + e[2] * e[2]
  const f = d[0] * rx + d[1] * ry + d[2] * rz
  const g = e[0] * rx + e[1] * ry + e[2] * rz
  const det = a * c - b * b
  let s = det > 1e-12 * a * c ? clamp((b * g - c * f) / det) : 0
  const t = c > 0 ? clamp((b * s + g) / c) : 0
  s = a > 0 ? clamp((b * t - f) / a) : 0
  const x = rx + s * d[0] - t * e[0]
  const y = ry + s * d[1] - t * e[1]
  const z = rz + s * d[2] - t * e[2]
  return x * x + y * y + z * z
}

const clamp = (share: number): number => Math.min(1, Math.max(0, share))
