/** What can stand in the way of light, with a sphere around each that most questions need not look behind. */
import { isInside } from '../../scene/capsule.js'
import type { Solid, SolidBody } from '../../scene/scene.js'
import { add, distance, scale, subtract, type Vec3 } from '../../scene/vector.js'
import type { Metres } from '../../units/quantity.js'

export interface Blocker {
  readonly solid: Solid
  readonly centre: Vec3
  /** Metres: no part of it is further from the centre. */
  readonly radius: number
  /** Of a capsule: its segment, and how far its coat reaches from it at most. */
  readonly spine: { readonly from: Vec3; readonly along: Vec3; readonly coat: number } | undefined
}

const spineOf = (body: SolidBody): Blocker['spine'] =>
  body.shape !== 'capsule'
    ? undefined
    : {
        from: body.capsule.from,
        along: subtract(body.capsule.to, body.capsule.from),
        coat: Math.max(body.capsule.across, body.capsule.along, body.capsule.cap),
      }

const sphereOf = (body: SolidBody): { readonly centre: Vec3; readonly radius: number } => {
  if (body.shape === 'capsule') {
    const { from, to, across, along, cap } = body.capsule
    const centre = scale(add(from, to), 0.5)
    return { centre, radius: distance(from, to) / 2 + Math.max(across, along, cap) }
  }
  const { corners } = body
  const centre = scale(
    corners.reduce<Vec3>((sum, corner) => add(sum, corner), [0, 0, 0]),
    1 / corners.length,
  )
  return { centre, radius: Math.max(...corners.map((corner) => distance(corner, centre))) }
}

export const blockersOf = (solids: readonly Solid[]): readonly Blocker[] =>
  solids.map((solid) => ({ solid, ...sphereOf(solid.body), spine: spineOf(solid.body) }))

/** Nearer than this, metres, a place lies on a body and is not hidden by it as by another. */
const touching = 2e-3

/** True for a place in or on a capsule, or in the plane of a plate: such a body is not in that place's way. */
export const liesOn = ({ solid: { body } }: Blocker, place: Vec3): boolean => {
  switch (body.shape) {
    case 'capsule': {
      const { capsule } = body
      const grown = {
        ...capsule,
        across: (capsule.across + touching) as Metres,
        along: (capsule.along + touching) as Metres,
        cap: (capsule.cap + touching) as Metres,
      }
      return isInside(grown, place)
    }
    case 'plate': {
      const { centre, normal } = body.face
      const off =
        (place[0] - centre[0]) * normal[0] +
        (place[1] - centre[1]) * normal[1] +
        (place[2] - centre[2]) * normal[2]
      return Math.abs(off) < 1e-4
    }
    case 'hull':
      return false
  }
}
