/** What a reading of the plan says of the light: an exposure on a receptor, and how sure. */
import type { MeterReading, Plan } from '../language/plan.js'
import { luxSecondsFor, luxSecondsOfReflected } from '../light/exposure.js'
import { uncertainties } from '../light/how-sure.js'
import { linearOfCode, stopsToRecord } from '../picture/tone.js'
import type { Scene } from '../scene/scene.js'
import { subtract } from '../scene/vector.js'
import { cameraSetting } from './camera-setting.js'
import type { MeterAsk } from './computed-set.js'
import { reflectanceAt } from './surface-at.js'
import { ambientName } from './transport.js'

export interface ReadExposure {
  readonly ask: MeterAsk
  readonly luxSeconds: number
  /** One standard deviation, stops. */
  readonly u: number
}

/** Codes nearer to the ends than these say only "at least" or "at most". */
const codes = { least: 3, most: 252 }

/** The one light that a reading is of; undefined where it is of several. */
export const loneLight = (plan: Plan, { of }: MeterReading): string | undefined => {
  if (of === 'ambient') return ambientName
  const names =
    of === 'all'
      ? [
          ...[...plan.lights.values()].filter((light) => light.on).map((light) => light.name),
          ...(plan.ambient === undefined ? [] : [ambientName]),
        ]
      : of
  return names.length === 1 ? names[0] : undefined
}

/** Undefined where the reading's point is unknown, or its surface, or a test frame shows nothing but black or white there. */
export const readExposure = (
  plan: Plan,
  scene: Scene,
  reading: MeterReading,
  of: string,
): ReadExposure | undefined => {
  const point = scene.points.get(reading.at)
  if (point === undefined) return undefined
  const bySurface = 'records' in reading.read || reading.kind === 'reflected'
  const reflectance = bySurface ? reflectanceAt(plan, point.on) : undefined
  // What a surface gives back, it has received as a flat receptor lying on it.
  const ask: MeterAsk = bySurface
    ? { at: reading.at, of: [of], dome: 'flat', faces: 'out' }
    : { at: reading.at, of: [of], dome: reading.dome, ...facing(scene, reading, of) }

  if ('records' in reading.read) {
    const { records } = reading.read
    if (reflectance === undefined || records < codes.least || records > codes.most) return undefined
    const setting = cameraSetting(plan, scene)
    const over = stopsToRecord(reflectance, linearOfCode(records)) + (setting.losses ?? 0)
    return {
      ask,
      luxSeconds: luxSecondsFor(setting.aperture, setting.iso) * 2 ** over,
      u: uncertainties.testFrame,
    }
  }
  const { reads } = reading.read
  if (reading.kind === 'incident')
    return { ask, luxSeconds: luxSecondsFor(reads, reading.iso), u: uncertainties.reading }
  return reflectance === undefined
    ? undefined
    : {
        ask,
        luxSeconds: luxSecondsOfReflected(reads, reading.iso, reflectance),
        u: uncertainties.reflectedReading,
      }
}

const facing = (scene: Scene, { faces, at }: MeterReading, of: string): Pick<MeterAsk, 'faces'> => {
  if (faces === 'camera' || faces === 'out') return { faces }
  if (faces === 'backdrop') return { faces: { direction: [0, 1, 0] } }
  if (faces === 'light') return scene.lights.has(of) ? { faces: { light: of } } : { faces: 'camera' }
  const from = scene.points.get(at)
  const to = scene.points.get(faces.point)
  return from === undefined || to === undefined ? {} : { faces: { direction: subtract(to.at, from.at) } }
}
