/** Whether a straight line passes through a body, by means that share nothing with the product's; and fronts added up by such lines. */
import { kernelOf } from '../../../src/light/kernel.js'
import type { Receptor } from '../../../src/light/receptor.js'
import { toLocal } from '../../../src/light/response.js'
import type { AreaSource } from '../../../src/light/source.js'
import { capsule } from '../../../src/scene/capsule.js'
import { face } from '../../../src/scene/facing.js'
import type { Face, Solid, SolidBody } from '../../../src/scene/scene.js'
import { cornersOf } from '../../../src/scene/solids.js'
import { add, cross, dot, scale, subtract, unit, type Vec3 } from '../../../src/scene/vector.js'

export const solid = (body: SolidBody, name = 'thing', of: Solid['of'] = 'figure'): Solid => ({
  name,
  of,
  pointer: '',
  body,
})

export const plate = (centre: Vec3, normal: Vec3, width: number, height: number): SolidBody => {
  const one = face('rectangle', centre, unit(normal), width, height)
  return { shape: 'plate', face: one, corners: cornersOf(one) }
}

/** A capsule about a middle, `half` from there to either end of its segment. */
export const rounded = (middle: Vec3, half: Vec3, across: number, along: number, cap: number): SolidBody => ({
  shape: 'capsule',
  capsule: capsule(
    subtract(middle, half),
    add(middle, half),
    across,
    along,
    cap,
    unit(cross(half, Math.abs(half[2]) > 0.9 * Math.hypot(...half) ? [0, 1, 0] : [0, 0, 1]), [1, 0, 0]),
  ),
})

/** A box of light that narrows to `narrowed` of its front over its depth. */
export const tapered = (front: Face, depth: number, narrowed: number): SolidBody => ({
  shape: 'hull',
  corners: [
    ...cornersOf(front),
    ...cornersOf({
      ...front,
      centre: add(front.centre, scale(front.normal, -depth)),
      width: (front.width * narrowed) as Face['width'],
      height: (front.height * narrowed) as Face['height'],
    }),
  ],
})

/** Does the open segment from a to b pass through the body? */
export type Blocks = (a: Vec3, b: Vec3) => boolean

export const blocksOf = (body: SolidBody): Blocks => {
  switch (body.shape) {
    case 'plate':
      return throughPlate(body.face)
    case 'capsule':
      return nearSegment(body.capsule)
    case 'hull':
      return throughTriangles(body.corners)
  }
}

const throughPlate =
  ({ centre, normal, across, up, width, height }: Face): Blocks =>
  (a, b) => {
    const way = subtract(b, a)
    const t = dot(subtract(centre, a), normal) / dot(way, normal)
    if (!(t > 0 && t < 1)) return false
    const at = subtract(add(a, scale(way, t)), centre)
    return Math.abs(dot(at, across)) <= width / 2 && Math.abs(dot(at, up)) <= height / 2
  }

/** Where it is round: the least distance of two segments, by going to and fro between them. */
const nearSegment = ({
  from,
  to,
  across,
  along,
  cap,
  acrossDirection,
}: Extract<SolidBody, { shape: 'capsule' }>['capsule']): Blocks => {
  const axis = unit(subtract(to, from), [0, 0, 1])
  const deep = cross(axis, acrossDirection)
  const round = (p: Vec3): Vec3 => [
    dot(subtract(p, from), acrossDirection) / across,
    dot(subtract(p, from), deep) / along,
    dot(subtract(p, from), axis) / cap,
  ]
  const high = round(to)[2]
  return (a, b) => {
    const [p, q] = [round(a), round(b)]
    const d = subtract(q, p)
    const square = dot(d, d)
    if (Math.hypot(...cross(subtract([0, 0, high / 2], p), d)) > (high / 2 + 1) * Math.sqrt(square))
      return false
    let t = 0.5
    for (let i = 0; i < 400; i++) {
      const z = Math.min(high, Math.max(0, p[2] + t * d[2]))
      const next = Math.min(1, Math.max(0, dot(subtract([0, 0, z], p), d) / square))
      if (Math.abs(next - t) < 1e-7) break
      t = next
    }
    const at = add(p, scale(d, t))
    const z = Math.min(high, Math.max(0, at[2]))
    return at[0] ** 2 + at[1] ** 2 + (at[2] - z) ** 2 < 1
  }
}

/** A line from outside to outside passes a convex hull where it passes some triangle of three of its corners on its edge: all that bound it are tried. */
const throughTriangles = (corners: readonly Vec3[]): Blocks => {
  const count = corners.length / 2
  const triangles: (readonly [Vec3, Vec3, Vec3])[] = []
  for (let i = 0; i < count; i++) {
    const [a, b, c, d] = [
      corners[i]!,
      corners[(i + 1) % count]!,
      corners[count + i]!,
      corners[count + ((i + 1) % count)]!,
    ]
    triangles.push([a, b, c], [b, d, c], [corners[0]!, a, b], [corners[count]!, c, d])
  }
  const middle = scale(
    corners.reduce((sum, one) => add(sum, one), [0, 0, 0] as Vec3),
    1 / corners.length,
  )
  const far = Math.max(...corners.map((one) => Math.hypot(...subtract(one, middle))))
  return (a, b) => {
    if (Math.hypot(...cross(subtract(middle, a), unit(subtract(b, a)))) > far) return false
    // The sign of a tetrahedron's volume: on which side of a triangle's plane, or of an edge, a line runs.
    const volume = (p: Vec3, q: Vec3, r: Vec3, s: Vec3): number =>
      dot(cross(subtract(q, p), subtract(r, p)), subtract(s, p))
    return triangles.some(([p, q, r]) => {
      if (volume(p, q, r, a) > 0 === volume(p, q, r, b) > 0) return false
      const [u, v, w] = [volume(a, b, p, q), volume(a, b, q, r), volume(a, b, r, p)]
      return (u > 0 && v > 0 && w > 0) || (u < 0 && v < 0 && w < 0)
    })
  }
}

const inside = (outline: readonly number[], u: number, v: number): boolean => {
  for (let i = 0, j = outline.length - 2; i < outline.length; j = i, i += 2)
    if (
      (outline[i]! - outline[j]!) * (v - outline[j + 1]!) -
        (outline[i + 1]! - outline[j + 1]!) * (u - outline[j]!) <
      0
    )
      return false
  return true
}

const golden = (Math.sqrt(5) - 1) / 2

/** The share of a front's light that is left at a receptor, by so many lines, spread evenly by steps of the golden section. */
export const openShare = (
  source: AreaSource,
  receptor: Receptor,
  bodies: readonly SolidBody[],
  lines = 8000,
): number => {
  const local = toLocal(source, receptor)
  if (local === undefined) return 0
  const kernel = kernelOf(source.pattern, local)
  const { width, height, centre, across, up } = source.face
  // A disc's corners lie a little further out than its rim.
  const [wide, tall] = [width * 1.01, height * 1.01]
  const { against, at } = receptor
  const blocks = bodies.map(blocksOf)
  let sum = 0
  let all = 0
  for (let i = 0; i < lines; i++) {
    const u = ((i + 0.5) / lines - 0.5) * wide
    const v = (((i * golden) % 1) - 0.5) * tall
    if (!inside(source.outline, u, v)) continue
    if (source.hole > 0 && inside(source.outline, u / source.hole, v / source.hole)) continue
    const place = add(centre, add(scale(across, u), scale(up, v)))
    const given = kernel(u, v)
    all += given
    if (against !== undefined && dot(subtract(place, at), against) <= 0) continue
    if (given > 0 && !blocks.some((one) => one(at, place))) sum += given
  }
  return sum / all
}
