/** What is met first in a direction: by the camera's ray through a place of the frame, or by any other line of sight. */
import type { Surface } from '../language/plan.js'
import { pointer } from '../text/place.js'
import { lazyOf } from './lazy.js'
import { rayMeets, rayReaches, rayReachesFace } from './ray.js'
import { type Ball, ballRound } from './reach.js'
import type { Scene, SceneSurface, Solid } from './scene.js'
import { add, dot, length, scale, type Vec3 } from './vector.js'

export interface Hit {
  readonly at: Vec3
  /** Unit, toward the side that is seen. */
  readonly normal: Vec3
  /** Metres. */
  readonly distance: number
  readonly on: 'figure' | 'operator' | 'table' | 'backdrop' | 'sweep' | 'panel' | 'light' | 'room'
  /** Of a figure, light or panel its own; of the room which side. */
  readonly name: string
  /** What of the plan it is. */
  readonly pointer: string
  /** What the side that is seen gives back; undefined for figures and modifiers. */
  readonly surface: Surface | undefined
}

const surfaceKind = ({ name, path }: SceneSurface): Hit['on'] =>
  path === 'panels' ? 'panel' : name === 'backdrop' || name === 'sweep' || name === 'table' ? name : 'room'

const surfacePointer = (surface: SceneSurface): string => {
  switch (surfaceKind(surface)) {
    case 'panel':
      return pointer('panels', surface.name)
    case 'backdrop':
    case 'sweep':
      return surface.name === 'sweep' ? '/backdrop/sweep' : '/backdrop'
    case 'table':
      return '/subject/stands-on'
    default:
      return surface.name === 'floor' || surface.name === 'ceiling'
        ? `/room/${surface.name}`
        : `/room/walls/${surface.name.replace('-wall', '')}`
  }
}

interface Body extends Ball {
  readonly solid: Solid
}

/** Bodies that no surface of the same thing stands for. */
const bodiesOf = lazyOf((scene: Scene): readonly Body[] =>
  scene.solids
    .filter(({ of }) => of === 'figure' || of === 'operator' || of === 'light')
    .map((solid) => ({ solid, ...ballRound(solid.body) })),
)

/** True where the ray passes the ball by: most bodies need no closer look. */
const passesBy = ({ centre, radius }: Ball, from: Vec3, direction: Vec3): boolean => {
  const [x, y, z] = [centre[0] - from[0], centre[1] - from[1], centre[2] - from[2]]
  const along = x * direction[0] + y * direction[1] + z * direction[2]
  const square = x * x + y * y + z * z
  const beyond = square - radius * radius
  return beyond > 0 && (along <= 0 || along * along < beyond * dot(direction, direction))
}

/**
 * @param direction need not be of unit length
 * @param except names of solids and surfaces that are looked through
 */
export const firstHit = (
  scene: Scene,
  from: Vec3,
  direction: Vec3,
  except?: ReadonlySet<string>,
): Hit | undefined => {
  let met: Solid | SceneSurface | undefined
  let t = Number.POSITIVE_INFINITY
  for (const body of bodiesOf(scene)) {
    const { solid } = body
    if (passesBy(body, from, direction) || except?.has(solid.name)) continue
    const reach = rayReaches(solid.body, from, direction)
    if (reach < t) [met, t] = [solid, reach]
  }
  for (const surface of scene.surfaces) {
    // One-sided surfaces (walls, the floor) are not there from behind.
    if (surface.back === undefined && dot(surface.face.normal, direction) >= 0) continue
    const reach = rayReachesFace(surface.face, from, direction)
    if (reach < t && !except?.has(surface.name)) [met, t] = [surface, reach]
  }
  if (met === undefined) return undefined
  const place = { at: add(from, scale(direction, t)), distance: t * length(direction) }
  if ('body' in met) {
    const { body, of, name, pointer } = met
    const { normal } = rayMeets(body, from, direction)!
    return { ...place, normal, on: of as Hit['on'], name, pointer, surface: undefined }
  }
  const { face, front, back, name } = met
  const seenInFront = dot(face.normal, direction) <= 0
  return {
    ...place,
    normal: seenInFront ? face.normal : scale(face.normal, -1),
    on: surfaceKind(met),
    name,
    pointer: surfacePointer(met),
    surface: seenInFront ? front : back,
  }
}
