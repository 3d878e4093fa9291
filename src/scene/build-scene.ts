/**
 * A plan in metres: pure geometry, no light. Each thing of the plan is built by the file of its name; here is the order
 * in which they need each other. Never throws, and every number it gives is finite, for any plan whose own are: what
 * cannot be (a tape too short for its height, a light inside the subject) is a fault, and the scene goes on without it.
 *
 * Source of the frame of reference and of placing: the plan language, "Placing".
 */
import type { Plan } from '../language/plan.js'
import { aimed, type Targets } from './aims.js'
import { backdropMiddle, sceneBackdrop } from './backdrop.js'
import { cameraEye, sceneCamera } from './camera.js'
import { lazy } from './lazy.js'
import { sceneOperator } from './operator.js'
import { scenePanel } from './panels.js'
import { placeLight } from './place-lights.js'
import { ground } from './placing.js'
import { pointFaults, scenePoints } from './points.js'
import { sceneRoom } from './room.js'
import type { Scene, SceneBackdrop, SceneCamera, SceneFault, ScenePoint, SceneSubject } from './scene.js'
import { sceneSolids } from './solids.js'
import { sceneStands } from './stands.js'
import { isInSubject, sceneSubject } from './subject.js'
import { sceneSurfaces } from './surfaces.js'
import type { Vec3 } from './vector.js'

/** What the camera focuses on: a point, or a length along its axis. A row is its middle, at its faces' height. */
const focusTarget = (
  plan: Plan,
  subject: SceneSubject,
  points: ReadonlyMap<string, ScenePoint>,
): Vec3 | number => {
  const { focus } = plan.camera
  const front = points.get('subject')?.at ?? subject.tapeFrom
  if (focus.on === 'distance') return focus.distance
  if (focus.on === 'point') return points.get(focus.point)?.at ?? front
  if (focus.on === 'row') {
    const row = subject.figures.filter((figure) => figure.row === focus.row)
    return row.length === 0 ? front : [0, row[0]!.face[1], row[0]!.face[2]]
  }
  return front
}

/**
 * The points that lights, panels and the camera itself are aimed at. Moving the camera aside or turning it must move
 * no light, so what depends on the camera's view is taken as the same camera sees it from the centre line, level; and
 * `backdrop` is the backdrop's middle at the height of the face, however far off the camera stands. Only `camera`, when
 * a light is aimed at it, is where the camera is.
 */
const aimPoints = (
  plan: Plan,
  subject: SceneSubject,
  backdrop: SceneBackdrop | undefined,
  eye: Vec3,
  room: Scene['room'],
): ReadonlyMap<string, ScenePoint> => {
  const face = subject.tapeFrom
  const straight = sceneCamera(plan.camera, [0, eye[1], eye[2]], undefined, face)
  const points = scenePoints(plan, subject, backdrop, ground(plan, face, straight))
  points.set('camera', { name: 'camera', at: eye, normal: undefined, on: 'air' })
  // A backdrop light without a backdrop lights the wall behind.
  const at =
    backdrop !== undefined
      ? backdropMiddle(backdrop, face[2])
      : room !== undefined
        ? ([0, room.back, face[2]] as const)
        : undefined
  if (at !== undefined) points.set('backdrop', { name: 'backdrop', at, normal: [0, -1, 0], on: 'backdrop' })
  return points
}

const buildCamera = (plan: Plan, subject: SceneSubject, eye: Vec3, targets: Targets): SceneCamera => {
  const { camera } = plan
  const target = camera.aim.at === 'level' ? undefined : aimed(camera.aim, eye, targets)
  return sceneCamera(
    camera,
    eye,
    target && [eye[0] + target.axis[0], eye[1] + target.axis[1], eye[2] + target.axis[2]],
    focusTarget(plan, subject, targets.points),
  )
}

const cameraFaults = (subject: SceneSubject, eye: Vec3): SceneFault[] =>
  isInSubject(subject, eye)
    ? [{ kind: 'inside-subject', pointer: '/camera/at/distance', figures: { light: 'camera' } }]
    : []

export const buildScene = (plan: Plan): Scene => {
  const subject = sceneSubject(plan)
  const backdrop = sceneBackdrop(plan)
  const room = sceneRoom(plan)
  const eye = cameraEye(plan.camera)

  const fixed = aimPoints(plan, subject, backdrop, eye, room)
  const withoutPanels: Targets = { points: fixed, subject: subject.tapeFrom, panels: new Map(), room }
  // What stands `at: camera` needs the camera; a camera aimed at a panel needs the panel: so the camera is built for
  // the panels first, then once more with them.
  const beforePanels = buildCamera(plan, subject, eye, withoutPanels)
  const panels = [...plan.panels.values()].map((panel) =>
    scenePanel(panel, ground(plan, subject.tapeFrom, beforePanels), (name) => fixed.get(name)?.at),
  )
  const targets: Targets = {
    ...withoutPanels,
    panels: new Map(panels.map((one) => [one.panel.name, one.panel])),
  }
  const camera = plan.camera.aim.at === 'panel' ? buildCamera(plan, subject, eye, targets) : beforePanels

  const on = ground(plan, subject.tapeFrom, camera)
  const lights = [...plan.lights.values()].map((light) => placeLight(light, plan, on, targets, subject))
  const operator = sceneOperator(plan, camera)
  const parts = {
    subject,
    backdrop,
    lights: new Map(lights.map((one) => [one.light.name, one.light])),
    panels: targets.panels,
    room,
    operator,
  }
  const solids = lazy(() => sceneSolids(plan, parts))
  const stands = lazy(() => sceneStands(plan, parts))
  const surfaces = lazy(() => sceneSurfaces(plan, parts))
  return {
    points: scenePoints(plan, subject, backdrop, on),
    camera,
    ...parts,
    get solids() {
      return solids()
    },
    get stands() {
      return stands()
    },
    get surfaces() {
      return surfaces()
    },
    faults: [
      ...cameraFaults(subject, eye),
      ...lights.flatMap((one) => one.faults),
      ...panels.flatMap((one) => one.faults),
      ...pointFaults(plan, on),
    ],
  }
}
