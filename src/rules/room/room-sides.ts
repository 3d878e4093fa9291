/** What of a thing lies beyond a side of the room. */
import type { Light, Plan } from '../../language/plan.js'
import { reachOf } from '../../scene/reach.js'
import type { Face, SceneRoom, Solid, SolidBody } from '../../scene/scene.js'
import { cornersOf } from '../../scene/solids.js'
import { add, dot, scale, subtract, type Vec3 } from '../../scene/vector.js'
import type { NotNeeded } from '../rule.js'
import type { Words } from '../words.js'

/** Under the open sky nothing is missed. */
export const roomMissing = ({ room, backdrop }: Plan): NotNeeded | 'silent' | undefined => {
  if (room !== undefined) return undefined
  return backdrop?.sky !== undefined
    ? 'silent'
    : {
        because: 'the plan states no room',
        enable: { pointer: '/room', text: 'room: { width: 4 m, length: 6 m, height: 2.6 m }' },
      }
}

export type RoomSide = 'left' | 'right' | 'front' | 'back' | 'floor' | 'ceiling'

export interface Beyond {
  /** `sides`: left and right alike. */
  readonly side: RoomSide | 'sides'
  /** Metres. */
  readonly by: number
}

const outward: Readonly<Record<RoomSide, Vec3>> = {
  left: [-1, 0, 0],
  right: [1, 0, 0],
  front: [0, -1, 0],
  back: [0, 1, 0],
  floor: [0, 0, -1],
  ceiling: [0, 0, 1],
}

/** How far from the origin each side lies, outward; without a room there is only the floor. */
const sidesAt = (room: SceneRoom | undefined): Readonly<Record<RoomSide, number>> =>
  room === undefined
    ? { left: Infinity, right: Infinity, front: Infinity, back: Infinity, floor: 0, ceiling: Infinity }
    : {
        left: -room.left,
        right: room.right,
        front: -room.front,
        back: room.back,
        floor: 0,
        ceiling: room.height,
      }

/** Of these sides the one that the thing goes furthest beyond; `by` is negative for one that has room to spare. */
export const mostBeyond = (
  room: SceneRoom | undefined,
  reach: (outward: Vec3) => number,
  sides: readonly RoomSide[],
): Beyond => {
  const at = sidesAt(room)
  const beyond = (side: RoomSide): number => reach(outward[side]) - at[side]
  const most = sides
    .map((side) => ({ side, by: beyond(side) }))
    .reduce((most, one) => (one.by > most.by ? one : most))
  const across = most.side === 'left' ? 'right' : most.side === 'right' ? 'left' : undefined
  const alike = across !== undefined && sides.includes(across) && Math.abs(beyond(across) - most.by) < 1e-9
  return alike ? { side: 'sides', by: most.by } : most
}

export const reachOfAll =
  (bodies: readonly SolidBody[]) =>
  (direction: Vec3): number =>
    Math.max(...bodies.map((body) => reachOf(body, direction)))

export const reachOfFace =
  (face: Face) =>
  (direction: Vec3): number =>
    Math.max(...cornersOf(face).map((corner) => dot(corner, direction)))

/** Depths of modifiers that no kit states are good to this share. From memory. */
const depthShare = 0.3

/** Metres by which a light's back may lie elsewhere than its solid says; 0 where its depth is known. */
export const depthGuess = ({ modifier }: Light): number =>
  modifier === undefined || !modifier.guessed ? 0 : depthShare * modifier.depth

/** @param front true where the front by itself reaches through, whatever stands behind it */
export const depthText = ({ name, modifier }: Light, words: Words, front: boolean): string =>
  front
    ? 'its front alone reaches there, with its middle where the plan places it'
    : modifier === undefined
      ? `the plan places the front of ${name}, and the unit with its reflector stands behind that`
      : `the plan places the middle of its front; from there to its mount it is ${words.small(modifier.depth)} deep${modifier.guessed ? ', which is a guess' : ''}`

/** A light's body with its back as near to its front as the guess of its depth allows. */
export const surelyThere = ({ of, name, body }: Solid, plan: Plan): SolidBody => {
  const light = of === 'light' ? plan.lights.get(name) : undefined
  const guess = light === undefined ? 0 : depthGuess(light)
  if (guess === 0 || body.shape !== 'hull') return body
  const share = guess / light!.modifier!.depth
  const count = body.corners.length / 2
  const front = body.corners.slice(0, count)
  const back = body.corners
    .slice(count)
    .map((corner, i) => add(corner, scale(subtract(front[i]!, corner), share)))
  return { shape: 'hull', corners: [...front, ...back] }
}

export const sideText: Readonly<Record<Beyond['side'], string>> = {
  sides: 'the wall on either side',
  left: 'the camera-left wall',
  right: 'the camera-right wall',
  front: 'the wall behind the camera',
  back: 'the wall behind the set',
  floor: 'the floor',
  ceiling: 'the ceiling',
}
