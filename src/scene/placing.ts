/** From the tape and the angle, or from offsets, to metres. */
import type { Height, Placement, Plan } from '../language/plan.js'
import type { Metres } from '../units/quantity.js'
import { support } from './figures.js'
import type { SceneCamera, SceneFault } from './scene.js'
import { add, scale, type Vec3 } from './vector.js'

/** What placements are measured from. */
export interface Ground {
  /** Face, or an object's middle. */
  readonly tapeFrom: Vec3
  readonly tableTop: number
  /** What `before-backdrop` counts from; the subject point without a backdrop. A sky counts as it is stated. */
  readonly backdropY: number
  readonly camera: SceneCamera
}

export interface Placed {
  readonly at: Vec3
  /** With a tape that is shorter than the height difference; `at` is then straight over or under the face. */
  readonly short?: { readonly tape: number; readonly needs: number }
}

/** A flash in the camera's shoe sits about this far over the lens axis (common practice, no source). */
const shoe = 0.12
/** For a tape that is not given, which only the sun may leave out. */
const someDistance = 2

export const ground = (plan: Plan, tapeFrom: Vec3, camera: SceneCamera): Ground => ({
  tapeFrom,
  tableTop: support(plan.subject),
  backdropY: plan.backdrop?.behind ?? 0,
  camera,
})

/** Unit vector from the subject to a bearing, seen from above at the subject from its camera end, left positive. */
export const bearing = (angleLeft: number): Vec3 => [-Math.sin(angleLeft), -Math.cos(angleLeft), 0]

const heightOf = (height: Height, on: Ground): number =>
  height.over === 'table' ? on.tableTop + height.metres : height.metres

const byTape = (at: Placement & { readonly by: 'tape' }, on: Ground, defaultHeight: number): Placed => {
  const tape = at.distance ?? someDistance
  const direction = bearing(at.angleLeft)
  const from = on.tapeFrom
  if (at.up !== undefined && at.height === undefined) {
    const along = tape * Math.cos(at.up)
    return { at: add(from, [direction[0] * along, direction[1] * along, tape * Math.sin(at.up)]) }
  }
  const z = at.height === undefined ? defaultHeight : heightOf(at.height, on)
  const rise = Math.abs(z - from[2])
  // A hair of slack, so that a tape straight up is not refused for the last digit of a conversion from feet.
  if (tape < rise - 1e-6) return { at: [from[0], from[1], z], short: { tape, needs: rise } }
  const along = Math.sqrt(Math.max(0, tape * tape - rise * rise))
  return { at: [from[0] + direction[0] * along, from[1] + direction[1] * along, z] }
}

/** A placement in metres, at `defaultHeight` where it states none. */
export const place = (at: Placement, on: Ground, defaultHeight: number): Placed => {
  if (at.by === 'camera') return { at: add(on.camera.eye, scale(on.camera.up, shoe)) }
  if (at.by === 'tape') return byTape(at, on, defaultHeight)
  return {
    at: [
      at.right,
      at.beforeBackdrop === undefined ? at.behind : on.backdropY - at.beforeBackdrop,
      at.height === undefined ? defaultHeight : heightOf(at.height, on),
    ],
  }
}

export const tapeFault = (name: string, at: string, placed: Placed): SceneFault[] =>
  placed.short === undefined
    ? []
    : [
        {
          kind: 'tape-too-short',
          pointer: at,
          figures: {
            tape: placed.short.tape as Metres,
            needs: placed.short.needs as Metres,
            light: name,
          },
        },
      ]
