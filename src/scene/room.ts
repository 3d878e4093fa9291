/** The room as a box around the set. */
import type { Plan } from '../language/plan.js'
import type { Metres } from '../units/quantity.js'
import type { SceneRoom } from './scene.js'

/** Without a backdrop the wall behind stands `behind-backdrop` behind the subject point. */
export const sceneRoom = (plan: Plan): SceneRoom | undefined => {
  const { room } = plan
  if (room === undefined) return undefined
  const back = (plan.backdrop?.behind ?? 0) + room.behindBackdrop
  return {
    left: -room.leftWall as Metres,
    right: (room.width - room.leftWall) as Metres,
    front: (back - room.length) as Metres,
    back: back as Metres,
    height: room.height,
  }
}
