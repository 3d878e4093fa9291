/**
 * What can stand between patches, as plain columns of numbers for the inner loops, and whether what it hides comes
 * back: a ray that ends on a lit side of a surface is found again there, one that ends on a body or a black side is lost.
 */
import type { Face } from '../../scene/scene.js'
import { dot, length, scale, subtract } from '../../scene/vector.js'
import type { Blocker } from '../visibility/blockers.js'
import type { Mesh } from './mesh.js'

export interface Obstacle {
  readonly blocker: Blocker
  readonly kind: 'plate' | 'capsule' | 'hull' | 'other'
  /** Plate: middle, normal, across and up over half their lengths, and one over either of these. Capsule: its foot, its three directions over its semi-axes, how long its segment is. Hull: of each plane, its outward normal and how far out it lies. */
  readonly numbers: Float64Array
  readonly x: number
  readonly y: number
  readonly z: number
  readonly radius: number
  /** What meets it from before or from behind comes to a side of the mesh. */
  readonly givesFront: boolean
  readonly givesBack: boolean
}

const known = new WeakMap<Mesh, WeakMap<Blocker, Obstacle>>()

export const obstacleOf = (mesh: Mesh, blocker: Blocker): Obstacle => {
  let of = known.get(mesh)
  if (of === undefined) {
    of = new WeakMap()
    known.set(mesh, of)
  }
  let made = of.get(blocker)
  if (made === undefined) {
    made = makeObstacle(mesh, blocker)
    of.set(blocker, made)
  }
  return made
}

const makeObstacle = (mesh: Mesh, blocker: Blocker): Obstacle => {
  const { body } = blocker.solid
  const [x, y, z] = blocker.centre
  const kind = body.shape === 'plate' && body.face.outline !== 'rectangle' ? 'other' : body.shape
  const gives = body.shape === 'plate' ? litSidesOf(mesh, body.face) : { front: false, back: false }
  return {
    blocker,
    kind,
    numbers: numbersOf(blocker),
    x,
    y,
    z,
    radius: blocker.radius,
    givesFront: gives.front,
    givesBack: gives.back,
  }
}

const numbersOf = ({ solid: { body }, round, sides }: Blocker): Float64Array => {
  if (body.shape === 'plate') {
    const { centre, normal, across, up, width, height } = body.face
    return Float64Array.of(
      ...centre,
      ...normal,
      ...scale(across, 2 / width),
      ...scale(up, 2 / height),
      2 / width,
      2 / height,
    )
  }
  if (round !== undefined) return Float64Array.of(...round.from, ...round.rows, round.high)
  return sides ?? new Float64Array(0)
}

/** Metres: a surface this near to a plate's plane is that plate. */
const same = 1e-4

/** Which sides of a plate are sides of the mesh. */
const litSidesOf = ({ surfaces }: Mesh, face: Face): { readonly front: boolean; readonly back: boolean } => {
  let [front, back] = [false, false]
  for (const surface of surfaces) {
    const facing = dot(surface.face.normal, face.normal)
    const d = subtract(surface.face.centre, face.centre)
    if (Math.abs(facing) < 1 - 1e-9 || Math.abs(dot(d, face.normal)) > same) continue
    const reach = (surface.face.width + surface.face.height + face.width + face.height) / 4
    if (length(d) > reach) continue
    const both = surface.back !== undefined || surface.transmits > 0
    if (facing > 0 || both) front = true
    if (facing < 0 || both) back = true
  }
  return { front, back }
}
