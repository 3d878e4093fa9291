/** Acrylic 1.49, window glass 1.52, lenses 1.5 to 1.6, varnish about 1.5 (from memory). */
const index = 1.5

/**
 * Share of unpolarised light that a smooth surface of glass, plastic or varnish mirrors.
 * Source: Fresnel's equations.
 *
 * @param cosine of the angle to its normal, 0 to 1
 */
export const mirroredShare = (cosine: number): number => {
  const c = Math.min(1, Math.max(0, cosine))
  const inside = Math.sqrt(1 - (1 - c * c) / (index * index))
  const across = (c - index * inside) / (c + index * inside)
  const along = (index * c - inside) / (index * c + inside)
  return (across * across + along * along) / 2
}
