/** A place on a plane. */
export type PlanePoint = readonly [number, number]

/** Twice the area of the triangle, positive where it turns left. */
export const turn = (o: PlanePoint, a: PlanePoint, b: PlanePoint): number =>
  (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0])

/** Convex hull, counter-clockwise (Andrew's monotone chain). */
export const hull = (points: readonly PlanePoint[]): readonly PlanePoint[] => {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1])
  const chain = (list: readonly PlanePoint[]): PlanePoint[] => {
    const kept: PlanePoint[] = []
    for (const point of list) {
      while (kept.length > 1 && turn(kept[kept.length - 2]!, kept[kept.length - 1]!, point) <= 0) kept.pop()
      kept.push(point)
    }
    kept.pop()
    return kept
  }
  return [...chain(sorted), ...chain(sorted.reverse())]
}

/** What of a convex polygon lies where `inside`, linear in the place, is not negative (Sutherland and Hodgman's clipping). */
export const clip = (
  polygon: readonly PlanePoint[],
  inside: (at: PlanePoint) => number,
): readonly PlanePoint[] =>
  polygon.flatMap((p, i): readonly PlanePoint[] => {
    const q = polygon[(i + 1) % polygon.length]!
    const [a, b] = [inside(p), inside(q)]
    const crossing = (): PlanePoint => [
      p[0] + ((q[0] - p[0]) * a) / (a - b),
      p[1] + ((q[1] - p[1]) * a) / (a - b),
    ]
    if (a >= 0) return b >= 0 ? [p] : [p, crossing()]
    return b >= 0 ? [crossing()] : []
  })
