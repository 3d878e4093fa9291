/** The person behind the camera. */
import type { Plan } from '../language/plan.js'
import type { Metres } from '../units/quantity.js'
import { capsule } from './capsule.js'
import type { SceneCamera, SceneFigure } from './scene.js'
import { add, scale, unit, type Vec3 } from './vector.js'

/** Metres, common practice, no source: of someone of middling height, the eye close behind the camera's back. */
const tall = 1.72
const headBehindLens = 0.25
const crownOverEye = 0.11
const halfHead = { across: 0.0775, along: 0.097 }
const halfBody = { across: 0.225, along: 0.14 }
/** Crown to chin, and to the shoulders, where the body's rounded top ends. */
const chin = 0.224
const shoulders = 0.2

/**
 * Stands, stoops or kneels so that the eye is level with the lens, square behind it; undefined for a camera that
 * stands by itself. Over two metres the camera is on a ladder with its owner; near the floor whoever lies there hides
 * nothing that matters.
 */
export const sceneOperator = (plan: Plan, camera: SceneCamera): SceneFigure | undefined => {
  if (plan.camera.heldBy !== 'person') return undefined
  const level = unit([camera.forward[0], camera.forward[1], 0], [0, 1, 0])
  const stands = add(camera.eye, scale(level, -headBehindLens))
  const top = camera.eye[2] + crownOverEye
  const ground = Math.max(0, top - tall)
  const at = (z: number): Vec3 => [stands[0], stands[1], z]
  const across: Vec3 = [level[1], -level[0], 0]
  const headCap = Math.min(halfHead.across, chin / 2)
  const bodyTop = Math.max(top - shoulders, ground + 0.05)
  const cap = Math.min(halfBody.along, 0.49 * (bodyTop - ground))
  return {
    name: 'operator',
    row: undefined,
    face: add(at(camera.eye[2]), scale(level, halfHead.along)),
    looks: level,
    head: capsule(
      at(top - chin + headCap),
      at(Math.max(top - headCap, top - chin + headCap)),
      halfHead.across,
      halfHead.along,
      headCap,
      across,
    ),
    body: capsule(at(ground + cap), at(bodyTop - cap), halfBody.across, halfBody.along, cap, across),
    top: top as Metres,
  }
}
