/** What is met first in a direction: by the camera's ray through a place of the frame, or by any other line of sight. */
import type { Surface } from '../language/plan.js'
import { pointer } from '../text/place.js'
import { lazyOf } from './lazy.js'
import { rayMeets, rayReaches, rayReachesFace } from './ray.js'
import { ballRound } from './reach.js'
import type { Scene, SceneSurface, Solid } from './scene.js'
import { add, dot, scale, type Vec3 } from './vector.js'

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

/** What may be met, as numbers in a row: hundreds of rays go past most of it. */
interface Layout {
  /** Bodies that no surface of the same thing stands for. */
  readonly solids: readonly Solid[]
  /** Of each solid the middle of a ball that holds it, and its radius squared. */
  readonly balls: Float64Array
  readonly surfaces: readonly SceneSurface[]
  /** Of each surface its middle, its normal, its axes and half its size along them, with some slack at the edges. */
  readonly plates: Float64Array
}

const perBall = 4
/** Metres: what goes by so close is looked at exactly. */
const slack = 1e-6
const perPlate = 14

const layoutOf = lazyOf(({ solids: all, surfaces }: Scene): Layout => {
  const solids = all.filter(({ of }) => of === 'figure' || of === 'operator' || of === 'light')
  const balls = new Float64Array(perBall * solids.length)
  solids.forEach(({ body }, i) => {
    const { centre, radius } = ballRound(body)
    balls.set(centre, perBall * i)
    balls[perBall * i + 3] = radius * radius
  })
  const plates = new Float64Array(perPlate * surfaces.length)
  surfaces.forEach(({ face: { centre, normal, across, up, width, height } }, i) => {
    plates.set(centre, perPlate * i)
    plates.set(normal, perPlate * i + 3)
    plates.set(across, perPlate * i + 6)
    plates.set(up, perPlate * i + 9)
    plates[perPlate * i + 12] = width / 2 + slack
    plates[perPlate * i + 13] = height / 2 + slack
  })
  return { solids, balls, surfaces, plates }
})

/** Nearer than this the ray starts on the thing. */
const least = 1e-9

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
  const { solids, balls, surfaces, plates } = layoutOf(scene)
  const [ax, ay, az] = from
  const [dx, dy, dz] = direction
  const square = dx * dx + dy * dy + dz * dz
  let met: Solid | SceneSurface | undefined
  let t = Number.POSITIVE_INFINITY
  for (let i = 0, k = 0; i < solids.length; i++, k += perBall) {
    const x = balls[k]! - ax
    const y = balls[k + 1]! - ay
    const z = balls[k + 2]! - az
    const beyond = x * x + y * y + z * z - balls[k + 3]!
    const along = x * dx + y * dy + z * dz
    if (beyond > 0 && (along <= 0 || along * along < beyond * square)) continue
    const solid = solids[i]!
    if (except?.has(solid.name)) continue
    const reach = rayReaches(solid.body, from, direction)
    if (reach < t) {
      met = solid
      t = reach
    }
  }
  for (let i = 0, k = 0; i < surfaces.length; i++, k += perPlate) {
    const slope = dx * plates[k + 3]! + dy * plates[k + 4]! + dz * plates[k + 5]!
    if (Math.abs(slope) < 1e-12) continue
    const x = ax - plates[k]!
    const y = ay - plates[k + 1]!
    const z = az - plates[k + 2]!
    const reach = -(x * plates[k + 3]! + y * plates[k + 4]! + z * plates[k + 5]!) / slope
    if (reach <= least || reach >= t) continue
    const px = x + reach * dx
    const py = y + reach * dy
    const pz = z + reach * dz
    if (Math.abs(px * plates[k + 6]! + py * plates[k + 7]! + pz * plates[k + 8]!) > plates[k + 12]!) continue
    if (Math.abs(px * plates[k + 9]! + py * plates[k + 10]! + pz * plates[k + 11]!) > plates[k + 13]!)
      continue
    const surface = surfaces[i]!
    // One-sided surfaces (walls, the floor) are not there from behind.
    if ((surface.back === undefined && slope > 0) || except?.has(surface.name)) continue
    const exact = rayReachesFace(surface.face, from, direction)
    if (exact >= t) continue
    met = surface
    t = exact
  }
  if (met === undefined) return undefined
  const at = add(from, scale(direction, t))
  const distance = t * Math.sqrt(square)
  if ('body' in met) {
    const { body, of, name, pointer } = met
    const { normal } = rayMeets(body, from, direction)!
    return { at, normal, distance, on: of as Hit['on'], name, pointer, surface: undefined }
  }
  const { face, front, back, name } = met
  const seenInFront = dot(face.normal, direction) <= 0
  return {
    at,
    normal: seenInFront ? face.normal : scale(face.normal, -1),
    distance,
    on: surfaceKind(met),
    name,
    pointer: surfacePointer(met),
    surface: seenInFront ? front : back,
  }
}
