/**
 * Irradiance from a uniform Lambertian disc of radius r, exact: the receptor stands `height` before its plane and
 * `aside` from its axis. Vector irradiance in closed form (the parallel and perpendicular configuration factors of a
 * differential element and a disc, written so that nothing cancels far away); solid angle by the contour integral
 * around the rim, whose integrand is smooth and periodic.
 */

/** Components of the vector irradiance for radiance 1: against the disc's axis, and toward it across the axis. lx per cd/m². */
export interface DiscIrradiance {
  readonly along: number
  readonly inward: number
}

export const discIrradiance = (radius: number, height: number, aside: number): DiscIrradiance => {
  const r2 = radius * radius
  const h2 = height * height
  const o2 = aside * aside
  const outside = o2 + h2 - r2
  const root = Math.sqrt(outside * outside + 4 * r2 * h2)
  return {
    along:
      Math.PI * (outside >= 0 ? (2 * r2 * h2) / (root * (root + outside)) : (root - outside) / (2 * root)),
    inward: (Math.PI * 2 * height * r2 * aside) / (root * (root + o2 + h2 + r2)),
  }
}

/** Solid angle, sr, to about 1e-10 of it. */
export const discSolidAngle = (radius: number, height: number, aside: number): number => {
  // Midpoints err by e^(−2·steps·τ), where i·τ is the root of the span over the complex angle.
  const root = Math.acosh((aside * aside + radius * radius + height * height) / (2 * aside * radius))
  const steps = Math.min(256, Math.max(3, Math.ceil(12 / root)))
  const angle = Math.PI / steps
  let sum = 0
  for (let i = 0; i < steps; i++) {
    const cosine = Math.cos((i + 0.5) * angle)
    const span = Math.sqrt(aside * aside + radius * radius - 2 * aside * radius * cosine + height * height)
    sum += (radius * (radius - aside * cosine)) / (span * (span + height))
  }
  return 2 * angle * sum
}
