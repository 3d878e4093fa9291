/**
 * Where the backdrop in frame is metered: a grid over what the camera sees of it, the places where lights point at it,
 * and finer round the brightest and the darkest place found.
 */
import { backdropInFrame } from '../scene/backdrop.js'
import type { Scene } from '../scene/scene.js'
import type { Vec3 } from '../scene/vector.js'

/** The convex part of the backdrop in frame, kept 3 % inside. Places on it are given from −1 to 1 across and up. */
export interface BackdropGrid {
  readonly left: number
  readonly right: number
  readonly bottom: number
  readonly top: number
  readonly places: readonly GridPlace[]
  readonly middle: GridPlace
  /**
   * The eight places round one, half as far each round; those outside the rectangle are left out. The same places
   * whenever asked.
   */
  finer(round: GridPlace, level: number): readonly GridPlace[]
}

export interface GridPlace {
  readonly across: number
  readonly up: number
  readonly at: Vec3
}

const keptInside = 0.03
const steps = [-1, -0.5, 0, 0.5, 1]

/** Undefined where the frame holds nothing of the upright backdrop. */
export const backdropGrid = (scene: Scene): BackdropGrid | undefined => {
  const { backdrop, camera } = scene
  const seen = backdrop && backdropInFrame(camera, backdrop, scene.subject.table)
  if (backdrop === undefined || seen === undefined) return undefined
  const inset = { x: keptInside * (seen.right - seen.left), z: keptInside * (seen.top - seen.bottom) }
  const box = {
    left: seen.left + inset.x,
    right: seen.right - inset.x,
    bottom: seen.bottom + inset.z,
    top: seen.top - inset.z,
  }
  const middle = centroid(seen.polygon)
  const at = (across: number, up: number): GridPlace => {
    const place = drawnInside(seen.polygon, middle, [
      (box.left + box.right) / 2 + (across * (box.right - box.left)) / 2,
      (box.bottom + box.top) / 2 + (up * (box.top - box.bottom)) / 2,
    ])
    return { across, up, at: [place[0], backdrop.y, place[1]] }
  }
  const aims = [...scene.lights.values()].flatMap(({ front, axis }): GridPlace[] => {
    if (front === undefined || axis[1] <= 1e-6) return []
    const reach = (backdrop.y - front.centre[1]) / axis[1]
    const across = share(front.centre[0] + axis[0] * reach, box.left, box.right)
    const up = share(front.centre[2] + axis[2] * reach, box.bottom, box.top)
    return reach > 0 && Math.abs(across) < 1 && Math.abs(up) < 1 ? [at(across, up)] : []
  })
  const near = new Map<GridPlace, (readonly GridPlace[])[]>()
  const finer = (round: GridPlace, level: number): readonly GridPlace[] => {
    const levels = near.get(round) ?? []
    near.set(round, levels)
    levels[level] ??= neighbours(round, 0.5 / 2 ** level).map(([across, up]) => at(across, up))
    return levels[level]
  }
  const centre = at(0, 0)
  const grid = steps.flatMap((up) =>
    steps.flatMap((across) => (across === 0 && up === 0 ? [] : [at(across, up)])),
  )
  return { ...box, middle: centre, places: [centre, ...grid, ...aims], finer }
}

const neighbours = ({ across, up }: GridPlace, step: number): (readonly [number, number])[] =>
  [-1, 0, 1].flatMap((dy) =>
    [-1, 0, 1].flatMap((dx): (readonly [number, number])[] => {
      const [x, y] = [across + dx * step, up + dy * step]
      return (dx === 0 && dy === 0) || Math.abs(x) > 1 || Math.abs(y) > 1 ? [] : [[x, y]]
    }),
  )

/** From −1 at `from` to 1 at `to`. */
const share = (value: number, from: number, to: number): number => (2 * value - from - to) / (to - from)

/** `middle`, `left`, `upper right`, `bottom` …, as the camera sees it. */
export const whereOnGrid = ({ across, up }: GridPlace): string => {
  const side = Math.abs(across) <= 1 / 3 ? '' : across < 0 ? 'left' : 'right'
  const level = Math.abs(up) <= 1 / 3 ? '' : up < 0 ? 'lower' : 'upper'
  if (side === '') return level === '' ? 'middle' : level === 'lower' ? 'bottom' : 'top'
  return level === '' ? side : `${level} ${side}`
}

type Corner = readonly [number, number]

const centroid = (polygon: readonly Corner[]): Corner => [
  polygon.reduce((sum, p) => sum + p[0], 0) / polygon.length,
  polygon.reduce((sum, p) => sum + p[1], 0) / polygon.length,
]

/** A place outside the convex polygon goes straight toward its middle, until the same share inside as the rectangle's. */
const drawnInside = (polygon: readonly Corner[], middle: Corner, place: Corner): Corner => {
  const along: Corner = [place[0] - middle[0], place[1] - middle[1]]
  const kept = polygon.reduce((least, p, i) => {
    const q = polygon[(i + 1) % polygon.length]!
    const normal: Corner = [q[1] - p[1], p[0] - q[0]]
    const reach = (p[0] - middle[0]) * normal[0] + (p[1] - middle[1]) * normal[1]
    const goes = along[0] * normal[0] + along[1] * normal[1]
    // Both signs together: the corners may run either way round.
    const ratio = goes === 0 ? Number.POSITIVE_INFINITY : reach / goes
    return ratio > 0 ? Math.min(least, ratio * (1 - 2 * keptInside)) : least
  }, 1)
  return [middle[0] + along[0] * kept, middle[1] + along[1] * kept]
}
