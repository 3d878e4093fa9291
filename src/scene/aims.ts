/** Where a light or the camera points. */
import type { Aim, Feather, WallName } from '../language/plan.js'
import { sides } from './facing.js'
import type { ScenePanel, ScenePoint, SceneRoom } from './scene.js'
import { add, dot, scale, subtract, unit, type Vec3 } from './vector.js'

/** What can be aimed at. */
export interface Targets {
  /** None of these moves with the camera but `camera` itself. */
  readonly points: ReadonlyMap<string, ScenePoint>
  /** The face, an object's middle. */
  readonly subject: Vec3
  readonly panels: ReadonlyMap<string, ScenePanel>
  readonly room: SceneRoom | undefined
}

export interface Aimed {
  readonly aim: Vec3
  /** Unit; turned off the aim by a feather. */
  readonly axis: Vec3
}

const wallDirections: Readonly<Record<WallName, Vec3>> = {
  'left-wall': sides.left,
  'right-wall': sides.right,
  'front-wall': sides.camera,
  'back-wall': sides.backdrop,
  ceiling: sides.up,
  floor: sides.down,
}

/** Square onto a wall. Where there is no room (or the thing stands outside it), a metre in the wall's direction. */
const onWall = (wall: WallName, from: Vec3, room: SceneRoom | undefined): Vec3 => {
  const direction = wallDirections[wall]
  const away = (() => {
    if (wall === 'floor') return from[2]
    if (room === undefined) return 1
    if (wall === 'left-wall') return from[0] - room.left
    if (wall === 'right-wall') return room.right - from[0]
    if (wall === 'front-wall') return from[1] - room.front
    if (wall === 'back-wall') return room.back - from[1]
    return room.height - from[2]
  })()
  return add(from, scale(direction, away > 1e-6 ? away : 1))
}

/** Without a room: a metre over the light. */
const onCeiling = (above: Vec3, from: Vec3, room: SceneRoom | undefined): Vec3 => [
  above[0],
  above[1],
  room === undefined ? from[2] + 1 : room.height,
]

const middleOf = (panel: ScenePanel): Vec3 =>
  scale(
    panel.faces.reduce<Vec3>((sum, one) => add(sum, one.centre), [0, 0, 0]),
    1 / panel.faces.length,
  )

const target = (aim: Aim, from: Vec3, targets: Targets): Vec3 => {
  switch (aim.at) {
    // Parallel to the floor, toward the subject's side of the set.
    case 'level':
      return [targets.subject[0], targets.subject[1], from[2]]
    case 'point':
      return targets.points.get(aim.point)?.at ?? targets.subject
    case 'panel': {
      const panel = targets.panels.get(aim.panel)
      return panel === undefined ? targets.subject : middleOf(panel)
    }
    case 'ceiling':
      return onCeiling(targets.points.get(aim.above)?.at ?? targets.subject, from, targets.room)
    case 'wall':
      return onWall(aim.wall, from, targets.room)
  }
}

/** Turns an axis by an angle toward a side; one that lies along that side already stays. */
export const feathered = (axis: Vec3, feather: Feather | undefined): Vec3 => {
  if (feather === undefined) return axis
  const side = sides[feather.towards]
  const square = subtract(side, scale(axis, dot(side, axis)))
  if (dot(square, square) < 1e-12) return axis
  return unit(add(scale(axis, Math.cos(feather.by)), scale(unit(square), Math.sin(feather.by))))
}

/** The aim of something at `from`; at its own target it looks along the set. */
export const aimed = (aim: Aim, from: Vec3, targets: Targets): Aimed => {
  const at = target(aim, from, targets)
  const axis = unit(subtract(at, from), sides.backdrop)
  return { aim: at, axis: aim.at === 'level' ? axis : feathered(axis, aim.feather) }
}
