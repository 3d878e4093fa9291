/** Things of a set that stand in one place, and how deep. */
import type { Plan } from '../../language/plan.js'
import { lazyOf } from '../../scene/lazy.js'
import { overlap } from '../../scene/overlap.js'
import { ballRound, reachOf } from '../../scene/reach.js'
import type { Scene, Solid, SolidBody } from '../../scene/scene.js'
import { distance } from '../../scene/vector.js'

export const floor = 'floor'

export interface Pair {
  readonly first: Solid
  readonly second: Solid | typeof floor
  /** Metres. */
  readonly depth: number
}

/** What is moved first when two things stand in one place. */
const movable: Readonly<Record<Solid['of'], number>> = {
  light: 0,
  panel: 1,
  operator: 2,
  table: 3,
  figure: 4,
  backdrop: 5,
}

/** Things that belong together, or of which one is not known well enough. */
const together = (a: Solid, b: Solid, plan: Plan): boolean => {
  const are = (one: Solid['of'], other: Solid['of']) =>
    (a.of === one && b.of === other) || (a.of === other && b.of === one)
  if (a.pointer === b.pointer) return true
  // People stand close, on what they stand on; a flash is on the camera; paper hangs down to the table that it lies on.
  if (are('figure', 'figure') || are('figure', 'table')) return true
  if (are('table', 'backdrop'))
    return plan.backdrop?.sweep !== undefined || !plan.places.stated('/subject/stands-on/size')
  const onCamera = (one: Solid) => one.of === 'light' && plan.lights.get(one.name)?.at.by === 'camera'
  return onCamera(a) || onCamera(b)
}

const pairOf = (a: Solid, b: Pair['second']): string => `${a.pointer} ${b === floor ? floor : b.pointer}`

/** More than these nobody reads. */
const most = 12
const balls = lazyOf((scene: Scene) => scene.solids.map((solid) => ({ solid, ball: ballRound(solid.body) })))

export const deepIn = (body: SolidBody, other: SolidBody | typeof floor): number =>
  other === floor ? reachOf(body, [0, 0, -1]) : overlap(body, other)

const known = lazyOf((_: Scene) => new Map<number, readonly Pair[]>())

/** Deeper than the limit, the deepest first; of things in several pieces the deepest pair. */
export const collisionsIn = (plan: Plan, scene: Scene, limit: number): readonly Pair[] => {
  const found = known(scene).get(limit) ?? deepest(plan, scene, limit)
  known(scene).set(limit, found)
  return found
}

/** Those of one thing alone. */
export const collisionsOf = (
  plan: Plan,
  scene: Scene,
  limit: number,
  one: Pick<Solid, 'pointer'>,
): readonly Pair[] => deepest(plan, scene, limit, one)

export const concerns = ({ first, second }: Pair, { pointer }: Solid): boolean =>
  first.pointer === pointer || (second !== floor && second.pointer === pointer)

const deepest = (plan: Plan, scene: Scene, limit: number, of?: Pick<Solid, 'pointer'>): readonly Pair[] => {
  const pairs = new Map<string, Pair>()
  const keep = (pair: Pair): void => {
    const key = pairOf(pair.first, pair.second)
    if (pair.depth > Math.max(limit, pairs.get(key)?.depth ?? 0)) pairs.set(key, pair)
  }
  const asked = ({ pointer }: Solid) => of === undefined || pointer === of.pointer
  const all = balls(scene)
  all.forEach(({ solid, ball }, i) => {
    if (asked(solid) && (solid.of === 'light' || solid.of === 'panel'))
      keep({ first: solid, second: floor, depth: deepIn(solid.body, floor) })
    for (const other of all.slice(i + 1)) {
      if (distance(ball.centre, other.ball.centre) >= ball.radius + other.ball.radius - limit) continue
      if (!(asked(solid) || asked(other.solid)) || together(solid, other.solid, plan)) continue
      const depth = deepIn(solid.body, other.solid.body)
      const turned = movable[other.solid.of] < movable[solid.of]
      keep({ first: turned ? other.solid : solid, second: turned ? solid : other.solid, depth })
    }
  })
  return [...pairs.values()].sort((a, b) => b.depth - a.depth).slice(0, most)
}
