/** From what is asked of a meter to the receptor that answers, by the language's defaults. */
import type { Plan } from '../language/plan.js'
import type { Receptor } from '../light/receptor.js'
import type { Scene, ScenePoint } from '../scene/scene.js'
import { add, scale, subtract, unit, type Vec3 } from '../scene/vector.js'
import type { MeterAsk } from './computed-set.js'

export interface MeterPlace {
  readonly point: string
  readonly dome: 'raised' | 'flat'
  /** `camera`, `out`, a light's name, or a direction as `x,y,z`. */
  readonly faces: string
  readonly receptor: Receptor
  /** Who is out of the way: out in the set and on its surfaces nobody meters in a person's shadow. */
  readonly aside: 'operator' | 'people'
  /** Where the meter is in truth, where what stands round the point would not see it as the point is seen. */
  readonly held: Vec3 | undefined
}

/** A meter's dome is held a hand's breadth before a face or a surface, metres; common practice, no source. */
const handsBreadth = 0.08

/**
 * Raised dome at a person, an object and in free air, facing the light for one light and the camera for several or all;
 * on a backdrop, floor or table flat, lying on it and facing out. Undefined for a point, light or direction that the
 * set does not have.
 *
 * What is metered at a face is light at the face, but its own head hides what lies behind it as from where the meter is
 * held. Turned to one light a meter is held where that light reaches it, as one meters a rim: what the point lies on is
 * not in the way.
 */
export const meterPlace = (plan: Plan, scene: Scene, ask: MeterAsk): MeterPlace | undefined => {
  const point = scenePoint(scene, ask.at)
  if (point === undefined) return undefined
  const surface = point.on === 'backdrop' || point.on === 'floor' || point.on === 'table'
  const lone = ask.of !== 'all' && ask.of.length === 1 && plan.lights.has(ask.of[0]!) ? ask.of[0]! : undefined
  const faces = ask.faces ?? (surface ? 'out' : lone === undefined ? 'camera' : { light: lone })
  const facing = direction(scene, point, faces)
  if (facing === undefined) return undefined
  const dome = ask.dome ?? (surface ? 'flat' : 'raised')
  return {
    point: point.name,
    dome,
    faces: facing.says,
    receptor: {
      at: point.at,
      normal: facing.toward,
      kind: dome === 'raised' ? 'dome' : 'flat',
      ...(surface && facing.says === 'out' ? { onSurface: true } : {}),
    },
    aside: ask.aside ?? (point.on === 'person' || point.on === 'object' ? 'operator' : 'people'),
    held: held(point, facing.says === 'out' || (typeof faces === 'object' && 'light' in faces)),
  }
}

const held = ({ at, normal }: ScenePoint, there: boolean): Vec3 | undefined =>
  normal === undefined || there ? undefined : add(at, scale(normal, handsBreadth))

const scenePoint = (scene: Scene, at: string | Vec3): ScenePoint | undefined =>
  typeof at === 'string' ? scene.points.get(at) : { name: at.join(','), at, normal: undefined, on: 'air' }

const direction = (
  scene: Scene,
  point: ScenePoint,
  faces: NonNullable<MeterAsk['faces']>,
): { readonly toward: Vec3; readonly says: string } | undefined => {
  const toCamera = () => ({ toward: unit(subtract(scene.camera.eye, point.at)), says: 'camera' })
  if (faces === 'camera') return toCamera()
  if (faces === 'out') return point.normal === undefined ? toCamera() : { toward: point.normal, says: 'out' }
  if ('direction' in faces) {
    const toward = unit(faces.direction)
    return { toward, says: faces.direction.join(',') }
  }
  const light = scene.lights.get(faces.light)
  if (light === undefined) return undefined
  const toward =
    light.front === undefined ? scale(light.axis, -1) : unit(subtract(light.front.centre, point.at))
  return { toward, says: light.name }
}
