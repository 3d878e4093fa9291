/** What can stand in the way of light, with what most questions need worked out once: a ball around each, its sides. */
import { capsuleAxes, isInside } from '../../scene/capsule.js'
import { lazyOf } from '../../scene/lazy.js'
import { ballRound } from '../../scene/reach.js'
import type { Capsule, Solid } from '../../scene/scene.js'
import { cross, distance, dot, scale, subtract, unit, type Vec3 } from '../../scene/vector.js'
import type { Metres } from '../../units/quantity.js'

export interface Blocker {
  readonly solid: Solid
  readonly centre: Vec3
  /** Metres: no part of it is further from the centre. */
  readonly radius: number
  /** Of a capsule. */
  readonly round: Round | undefined
  /** Of a hull, four numbers a side: its unit normal, outward, and how far out it lies. Front, back, then the strips. */
  readonly sides: Float64Array | undefined
}

/** A capsule and the map to the space where it is round: its segment then goes from 0 up to `high`, with a coat of 1. */
export interface Round {
  readonly from: Vec3
  /** From end to end of its segment. */
  readonly span: Vec3
  /** Metres: how far the coat reaches at most. */
  readonly coat: number
  readonly high: number
  /** The three directions over their semi-axes: rows of the map. */
  readonly rows: Float64Array
}

const roundOf = (capsule: Capsule): Round => {
  const { across, along, axis } = capsuleAxes(capsule)
  const span = subtract(capsule.to, capsule.from)
  return {
    from: capsule.from,
    span,
    coat: Math.max(capsule.across, capsule.along, capsule.cap),
    high: dot(span, axis) / capsule.cap,
    rows: Float64Array.of(
      ...scale(across, 1 / capsule.across),
      ...scale(along, 1 / capsule.along),
      ...scale(axis, 1 / capsule.cap),
    ),
  }
}

/** The sides of a hull of two like rings of corners, as modifiers are built. */
const sidesOf = (corners: readonly Vec3[], centre: Vec3): Float64Array => {
  const count = corners.length / 2
  const sides = new Float64Array(4 * (count + 2))
  const put = (at: number, a: Vec3, b: Vec3, c: Vec3): void => {
    const normal = unit(cross(subtract(b, a), subtract(c, a)), [0, 0, 0])
    const out = dot(subtract(a, centre), normal)
    const outward = out < 0 ? scale(normal, -1) : normal
    sides.set(outward, 4 * at)
    sides[4 * at + 3] = dot(a, outward)
  }
  const third = Math.floor(count / 3)
  put(0, corners[0]!, corners[third]!, corners[2 * third]!)
  put(1, corners[count]!, corners[count + third]!, corners[count + 2 * third]!)
  for (let i = 0; i < count; i++) put(i + 2, corners[i]!, corners[(i + 1) % count]!, corners[count + i]!)
  return sides
}

/** One for each solid: several lists of a scene's solids share them, and what else is known by blocker. */
const blockerOf = lazyOf((solid: Solid): Blocker => {
  const { body } = solid
  const ball = ballRound(body)
  return {
    solid,
    ...ball,
    round: body.shape === 'capsule' ? roundOf(body.capsule) : undefined,
    sides: body.shape === 'hull' ? sidesOf(body.corners, ball.centre) : undefined,
  }
})

export const blockersOf = (solids: readonly Solid[]): readonly Blocker[] => solids.map(blockerOf)

/** Nearer than this, metres, a place lies on a body and is not hidden by it as by another. */
const touching = 2e-3

/** True for a place in or on a capsule, within a hull, or in the plane of a plate: such a body is not in that place's way. */
export const liesOn = ({ solid: { body }, centre, radius, sides }: Blocker, place: Vec3): boolean => {
  switch (body.shape) {
    case 'capsule': {
      if (distance(centre, place) > radius + touching) return false
      const { capsule } = body
      const grown = {
        ...capsule,
        across: (capsule.across + touching) as Metres,
        along: (capsule.along + touching) as Metres,
        cap: (capsule.cap + touching) as Metres,
      }
      return isInside(grown, place)
    }
    case 'plate':
      return Math.abs(dot(subtract(place, body.face.centre), body.face.normal)) < 1e-4
    case 'hull': {
      for (let i = 0; i < sides!.length; i += 4)
        if (place[0] * sides![i]! + place[1] * sides![i + 1]! + place[2] * sides![i + 2]! > sides![i + 3]!)
          return false
      return true
    }
  }
}
