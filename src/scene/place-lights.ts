/** Lights in space: the middle of the front, its outline, its axis. */
import type { Light, Plan } from '../language/plan.js'
import { pointer } from '../text/place.js'
import type { Metres } from '../units/quantity.js'
import { type Aimed, aimed, type Targets } from './aims.js'
import { face, facing, sides } from './facing.js'
import { bearing, type Ground, place, tapeFault } from './placing.js'
import type { Face, SceneFault, SceneLight, SceneSubject } from './scene.js'
import { isInSubject } from './subject.js'
import { add, distance, scale, subtract, unit, type Vec3 } from './vector.js'

/** Fronts of bare units (common practice, no source). */
const flashgunHead = { outline: 'rectangle', width: 0.075, height: 0.045 } as const
const standardReflector = { outline: 'disc', width: 0.18, height: 0.18 } as const
/** A window whose size is not given. */
const somePane = { outline: 'rectangle', width: 1, height: 1.2 } as const

type Outline = { readonly outline: Face['outline']; readonly width: number; readonly height: number }

/** The outline of a light's front as it stands, in metres. */
const frontOutline = (light: Light): Outline => {
  const { unit: gear, modifier } = light
  if (modifier !== undefined) return { outline: modifier.outline, ...modifier.size }
  if (gear.kind === 'window')
    return light.size === undefined ? somePane : { outline: 'rectangle', ...light.size }
  if (gear.kind === 'continuous') {
    if (gear.size !== undefined) return { outline: 'rectangle', ...gear.size }
    if (gear.strength.kind === 'photometric file') return gear.strength.table.opening ?? standardReflector
  }
  if (gear.kind === 'flash' && gear.strength.kind === 'guide-number' && gear.strength.ratedWith === 'zoom')
    return flashgunHead
  return standardReflector
}

const frontFace = (light: Light, centre: Vec3, normal: Vec3): Face => {
  const { outline, width, height } = frontOutline(light)
  return light.lying
    ? face(outline, centre, normal, height, width)
    : face(outline, centre, normal, width, height)
}

/** A window that does not say which way it faces looks square into the set from the nearer wall. */
const intoTheSet = (at: Vec3, subject: Vec3): Vec3 => {
  const [x, y] = subtract(subject, at)
  if (Math.abs(x) > Math.abs(y)) return x < 0 ? sides.left : sides.right
  return y < 0 ? sides.camera : sides.backdrop
}

/** The sun: from a bearing and an angle up, no distance. Without `up` it stands at the horizon. */
const sunlight = (light: Light, subject: Vec3): SceneLight => {
  const { at } = light
  const up = at.by === 'tape' ? (at.up ?? 0) : 0
  const from = bearing(at.by === 'tape' ? at.angleLeft : 0)
  const toward: Vec3 = [from[0] * Math.cos(up), from[1] * Math.cos(up), Math.sin(up)]
  return {
    name: light.name,
    role: light.role,
    front: undefined,
    axis: scale(toward, -1),
    aim: subject,
    distance: undefined,
  }
}

const pointing = (light: Light, at: Vec3, plan: Plan, on: Ground, targets: Targets): Aimed => {
  const stated = plan.places.stated(pointer('lights', light.name, 'aim'))
  if (light.faces !== undefined || light.unit.kind === 'window') {
    const axis =
      light.faces === undefined
        ? intoTheSet(at, targets.subject)
        : facing(light.faces, at, (name) => targets.points.get(name)?.at)
    return { axis, aim: add(at, axis) }
  }
  // A flash on the camera points where the camera points, unless it is turned up to the ceiling or to a wall.
  if (light.at.by === 'camera' && !stated) return { axis: on.camera.forward, aim: add(at, on.camera.forward) }
  return aimed(light.aim, at, targets)
}

export const placeLight = (
  light: Light,
  plan: Plan,
  on: Ground,
  targets: Targets,
  subject: SceneSubject,
): { readonly light: SceneLight; readonly faults: readonly SceneFault[] } => {
  const { name, role } = light
  if (light.unit.kind === 'sun') return { light: sunlight(light, targets.subject), faults: [] }

  const placed = place(light.at, on, on.tapeFrom[2])
  const { at } = placed
  const { axis, aim } = pointing(light, at, plan, on, targets)
  return {
    light: {
      name,
      role,
      front: frontFace(light, at, unit(axis)),
      axis: unit(axis),
      aim,
      distance: distance(at, on.tapeFrom) as Metres,
    },
    faults: [
      ...tapeFault(name, pointer('lights', name, 'at', 'distance'), placed),
      ...(isInSubject(subject, at)
        ? [
            {
              kind: 'inside-subject' as const,
              pointer: pointer('lights', name, 'at'),
              figures: { light: name },
            },
          ]
        : []),
    ],
  }
}
