/** What of the gear the camera sees: how far it reaches into the picture, and what of the subject it covers. */
import { project, rayThrough } from '../scene/camera-view.js'
import { reach } from '../scene/capsule.js'
import { firstHit } from '../scene/first-hit.js'
import type { Capsule, Scene, SceneCamera, Solid } from '../scene/scene.js'
import { add, distance, dot, scale, subtract, type Vec3 } from '../scene/vector.js'

/** `middle`: as far from the left edge as from the right, and nearer to neither top nor bottom. */
export type FrameSide = 'left' | 'right' | 'top' | 'bottom' | 'middle'

export interface Reaching {
  readonly side: FrameSide
  /** Metres, at the thing, by which it would have to leave the picture over that side. */
  readonly by: number
}

/**
 * How far places that the camera sees reach into the picture, from the edge that is the least way out. By similar
 * triangles: a share of the half frame, at the depth of the place. Undefined for none.
 */
export const reachingIn = (camera: SceneCamera, seen: readonly Vec3[]): Reaching | undefined => {
  if (seen.length === 0) return undefined
  const most = { left: 0, right: 0, top: 0, bottom: 0 }
  for (const place of seen) {
    const { x, y, depth } = project(camera, place)
    const [across, up] = [depth * camera.tanHalfWidth, depth * camera.tanHalfHeight]
    most.left = Math.max(most.left, (x + 1) * across)
    most.right = Math.max(most.right, (1 - x) * across)
    most.bottom = Math.max(most.bottom, (y + 1) * up)
    most.top = Math.max(most.top, (1 - y) * up)
  }
  const sides = ['top', 'bottom', 'left', 'right'] as const
  const side = sides.reduce((least, one) => (most[one] < most[least] - alike ? one : least))
  const middle = (side === 'left' || side === 'right') && Math.abs(most.left - most.right) < alike
  return { side: middle ? 'middle' : side, by: most[side] }
}

/** Metres: two ways out that differ by less are alike. */
const alike = 1e-6

type Place = readonly [number, number]

/** Nearer before the lens than this nothing is looked at. */
const nearest = 0.02

/** A flat solid's corners before the lens; where it reaches behind it, also where its edges come out. */
const cornersAhead = (camera: SceneCamera, corners: readonly Vec3[]): readonly Vec3[] => {
  const depth = (at: Vec3) => dot(subtract(at, camera.eye), camera.forward) - nearest
  const ahead = corners.filter((one) => depth(one) >= 0)
  if (ahead.length === 0 || ahead.length === corners.length) return ahead
  const crossing = ahead.flatMap((one) =>
    corners.flatMap((other) => {
      const [a, b] = [depth(one), depth(other)]
      return b >= 0 ? [] : [add(one, scale(subtract(other, one), a / (a - b)))]
    }),
  )
  return [...ahead, ...crossing]
}

/** Andrew's monotone chain. */
const hullOf = (places: readonly Place[]): readonly Place[] => {
  const sorted = [...places].sort((a, b) => a[0] - b[0] || a[1] - b[1])
  const half = (from: readonly Place[]): Place[] => {
    const chain: Place[] = []
    for (const p of from) {
      while (chain.length > 1) {
        const [a, b] = [chain[chain.length - 2]!, chain[chain.length - 1]!]
        if ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 0) break
        chain.pop()
      }
      chain.push(p)
    }
    return chain.slice(0, -1)
  }
  return [...half(sorted), ...half([...sorted].reverse())]
}

const clipped = (polygon: readonly Place[], inside: (p: Place) => number): readonly Place[] =>
  polygon.flatMap((p, i): readonly Place[] => {
    const q = polygon[(i + 1) % polygon.length]!
    const [a, b] = [inside(p), inside(q)]
    const crossing = (): Place => [p[0] + ((q[0] - p[0]) * a) / (a - b), p[1] + ((q[1] - p[1]) * a) / (a - b)]
    if (a >= 0) return b >= 0 ? [p] : [p, crossing()]
    return b >= 0 ? [crossing()] : []
  })

/** A flat solid's outline in the frame (−1 to 1 both ways); empty where the frame holds nothing of it. */
export const outlineInFrame = (camera: SceneCamera, corners: readonly Vec3[]): readonly Place[] => {
  const ahead = cornersAhead(camera, corners)
  if (ahead.length < 3) return []
  let polygon = hullOf(
    ahead.map((corner): Place => {
      const { x, y } = project(camera, corner)
      return [x, y]
    }),
  )
  polygon = clipped(polygon, ([x]) => x + 1)
  polygon = clipped(polygon, ([x]) => 1 - x)
  polygon = clipped(polygon, ([, y]) => y + 1)
  return clipped(polygon, ([, y]) => 1 - y)
}

const within = (polygon: readonly Place[], [x, y]: Place): boolean =>
  polygon.every((p, i) => {
    const q = polygon[(i + 1) % polygon.length]!
    return (q[0] - p[0]) * (y - p[1]) - (q[1] - p[1]) * (x - p[0]) >= 0
  })

/** Rows and columns of looks at one thing, besides its outline. */
const grid = 9
/** Rays at the outline are drawn in by this share, so that they meet the thing. */
const drawnIn = 1e-3

/** Where to look for a thing of this outline. */
const looksAt = (polygon: readonly Place[]): readonly Place[] => {
  const mean = (axis: 0 | 1) => polygon.reduce((sum, p) => sum + p[axis], 0) / polygon.length
  const middle: Place = [mean(0), mean(1)]
  const toward = ([x, y]: Place): Place => [x + (middle[0] - x) * drawnIn, y + (middle[1] - y) * drawnIn]
  const edge = polygon.flatMap((p, i) => {
    const q = polygon[(i + 1) % polygon.length]!
    return [toward(p), toward([(p[0] + q[0]) / 2, (p[1] + q[1]) / 2])]
  })
  const least = (axis: 0 | 1) => Math.min(...polygon.map((p) => p[axis]))
  const span = (axis: 0 | 1) => Math.max(...polygon.map((p) => p[axis])) - least(axis)
  const inside = Array.from({ length: grid * grid }, (_, i): Place => {
    const [column, row] = [i % grid, Math.floor(i / grid)]
    return [least(0) + ((column + 0.5) / grid) * span(0), least(1) + ((row + 0.5) / grid) * span(1)]
  }).filter((place) => within(polygon, place))
  return [...edge, ...inside]
}

/** Smaller in the frame than this, of an area of 4, there is nothing to see. */
const tooSmall = 1e-9

const areaOf = (polygon: readonly Place[]): number =>
  polygon.reduce((sum, p, i) => {
    const q = polygon[(i + 1) % polygon.length]!
    return sum + (p[0] * q[1] - p[1] * q[0]) / 2
  }, 0)

/** Places in metres, of a light's or a panel's solid, that the camera sees: in the frame, with nothing before them. */
export const seenOf = (scene: Scene, solid: Solid): readonly Vec3[] => {
  if (solid.body.shape === 'capsule') return []
  const { camera } = scene
  const polygon = outlineInFrame(camera, solid.body.corners)
  if (polygon.length < 3 || areaOf(polygon) < tooSmall) return []
  return looksAt(polygon).flatMap(([x, y]) => {
    const hit = firstHit(scene, camera.eye, rayThrough(camera, x, y))
    return hit !== undefined && hit.on === solid.of && hit.name === solid.name ? [hit.at] : []
  })
}

/** True for a place in the frame that nothing stands before. What it lies on does not count. */
export const cameraSees = (scene: Scene, place: Vec3, except?: ReadonlySet<string>): boolean => {
  const { camera } = scene
  const { x, y, depth } = project(camera, place)
  if (depth < nearest || Math.abs(x) > 1 || Math.abs(y) > 1) return false
  const hit = firstHit(scene, camera.eye, subtract(place, camera.eye), except)
  return hit === undefined || hit.distance > distance(place, camera.eye) - onIt
}

/** Metres: a place this near behind what is met lies on it. */
const onIt = 0.02

// ---------------------------------------------------------------- what it covers

export interface Covered {
  /** Something of a head. */
  readonly face: boolean
  /** Share of what the frame holds of the subject. */
  readonly share: number
}

/** Places across a capsule as the camera sees it, in its middle plane. */
const across = (
  capsule: Capsule,
  camera: SceneCamera,
  { columns, rows }: { readonly columns: number; readonly rows: number },
): readonly Vec3[] => {
  const middle = scale(add(capsule.from, capsule.to), 0.5)
  const half = (axis: Vec3) => reach(capsule, axis) - dot(middle, axis)
  const [w, h] = [half(camera.right), half(camera.up)]
  return Array.from({ length: columns * rows }, (_, i) => {
    const u = ((i % columns) + 0.5) * (2 / columns) - 1
    const v = (Math.floor(i / columns) + 0.5) * (2 / rows) - 1
    return add(middle, add(scale(camera.right, u * w), scale(camera.up, v * h)))
  })
}

/** Columns and rows of looks at a head and at a body. */
const looks = { head: { columns: 4, rows: 5 }, body: { columns: 5, rows: 9 } } as const

/** What a light or a panel, in one piece or two, covers of the subject in the frame. */
export const coveredBy = (scene: Scene, pieces: readonly Solid[]): Covered => {
  const { camera } = scene
  const outlines = pieces.flatMap(({ body }) =>
    body.shape === 'capsule' ? [] : [outlineInFrame(camera, body.corners)],
  )
  const one = pieces[0]
  let [hidden, all, face] = [0, 0, false]
  const look = (part: Capsule, isHead: boolean): void => {
    for (const place of across(part, camera, looks[isHead ? 'head' : 'body'])) {
      const { x, y, depth } = project(camera, place)
      if (depth < nearest || Math.abs(x) > 1 || Math.abs(y) > 1) continue
      all++
      if (!outlines.some((outline) => outline.length > 2 && within(outline, [x, y]))) continue
      if (!hides(scene, one!, place)) continue
      hidden++
      face ||= isHead
    }
  }
  for (const { head, body } of scene.subject.figures) {
    if (head !== undefined) look(head, true)
    look(body, false)
  }
  return { face, share: hidden === 0 ? 0 : hidden / all }
}

/** True where the camera, looking at a place of the subject, meets the thing first and someone behind it. */
const hides = (scene: Scene, { of, name }: Solid, place: Vec3): boolean => {
  const { eye } = scene.camera
  const toward = subtract(place, eye)
  const hit = firstHit(scene, eye, toward)
  return (
    hit !== undefined &&
    hit.on === of &&
    hit.name === name &&
    hit.distance < distance(place, eye) &&
    firstHit(scene, eye, toward, new Set([name]))?.on === 'figure'
  )
}
