/**
 * How deep two convex solids stand in each other: the least way by which one must be moved to come free. That is the
 * least, over all directions, of how far the one reaches along it plus how far the other reaches against it; where that
 * is not positive, the direction separates them (the separating-axis theorem). Looked for from the directions that are
 * likely (the line between the two, the faces of both, an even net), then walked downhill.
 */
import { ballRound, reachOf } from './reach.js'
import type { SolidBody } from './scene.js'
import { add, cross, distance, length, scale, subtract, unit, type Vec3 } from './vector.js'

const netSize = 24
/** Evenly over the sphere, by the golden angle, and mirrored, so that a mirrored set gives the same. */
const net: readonly Vec3[] = Array.from({ length: netSize }, (_, i): Vec3 => {
  const z = 1 - (2 * i + 1) / netSize
  const turn = i * Math.PI * (3 - Math.sqrt(5))
  const flat = Math.sqrt(1 - z * z)
  return [flat * Math.cos(turn), flat * Math.sin(turn), z]
}).flatMap((n): readonly Vec3[] => [n, [-n[0], n[1], n[2]]])

/** Both unit vectors square to two others; none where those lie in one line. */
const squareTo = (a: Vec3, b: Vec3): readonly Vec3[] => {
  const c = cross(a, b)
  if (length(c) < 1e-9) return []
  const one = unit(c)
  return [one, scale(one, -1)]
}

/** Normals of a flat solid's faces; of a plate also what is square to its edges in its plane. */
const faceNormals = (body: SolidBody): readonly Vec3[] => {
  if (body.shape === 'capsule') return []
  const { corners } = body
  const edge = (i: number, count: number): Vec3 => subtract(corners[(i + 1) % count]!, corners[i]!)
  if (body.shape === 'plate') {
    const { normal } = body.face
    return [
      normal,
      scale(normal, -1),
      ...corners.flatMap((_, i) => squareTo(edge(i, corners.length), normal)),
    ]
  }
  // Two like rings, front and back, and the strips between.
  const count = corners.length / 2
  return [
    ...squareTo(edge(0, count), edge(1, count)),
    ...Array.from({ length: count }, (_, i) =>
      squareTo(edge(i, count), subtract(corners[count + i]!, corners[i]!)),
    ).flat(),
  ]
}

/** Radians: the first step downhill, where a walk is left for the best of them, and where that ends. */
const firstStep = 0.2
const roughStep = 1e-3
const lastStep = 1e-7
/** An eighth of a turn apart: the ways that are looked along at each step. */
const compass = Array.from(
  { length: 8 },
  (_, i) => [Math.cos((i * Math.PI) / 4), Math.sin((i * Math.PI) / 4)] as const,
)
/** Steps of one walk: it is there much sooner. */
const longestWalk = 100
/** Hills that are walked down. */
const starts = 4

/**
 * Metres; 0 for two that do not touch. Any direction tells an upper bound, so it is never less than the truth but for
 * rounding, and more by little.
 */
export const overlap = (a: SolidBody, b: SolidBody): number => {
  const [ballA, ballB] = [ballRound(a), ballRound(b)]
  if (distance(ballA.centre, ballB.centre) >= ballA.radius + ballB.radius) return 0
  /** How far b must go along this direction to come free. */
  const way = (n: Vec3): number => reachOf(a, n) + reachOf(b, scale(n, -1))
  const between = unit(subtract(ballB.centre, ballA.centre), [0, 0, 1])

  const tried: Way[] = []
  for (const n of [between, ...faceNormals(a), ...faceNormals(b), ...net]) {
    const least = way(n)
    if (least <= 0) return 0
    tried.push({ n, least })
  }
  tried.sort((one, other) => one.least - other.least)
  const rough = tried.slice(0, starts).map((start) => downhill(start, way, firstStep, roughStep))
  const best = rough.reduce((least, one) => (one.least < least.least ? one : least))
  return Math.max(0, downhill(best, way, 2 * roughStep, lastStep).least)
}

interface Way {
  readonly n: Vec3
  readonly least: number
}

const downhill = (from: Way, way: (n: Vec3) => number, first: number, last: number): Way => {
  let { n, least } = from
  let step = first
  for (let walked = 0; walked < longestWalk && step > last && least > 0; walked++) {
    const p = unit(cross(n, Math.abs(n[2]) < 0.9 ? [0, 0, 1] : [0, 1, 0]))
    const q = cross(n, p)
    const [here, aside] = [scale(n, Math.cos(step)), Math.sin(step)]
    let best: Way | undefined
    for (const [u, v] of compass) {
      const tried = unit(add(here, add(scale(p, u * aside), scale(q, v * aside))))
      const now = way(tried)
      if (now < (best?.least ?? least)) best = { n: tried, least: now }
    }
    if (best === undefined) step /= 2
    else {
      n = best.n
      least = best.least
    }
  }
  return { n, least }
}
