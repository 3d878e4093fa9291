/**
 * Solving for levels on the backdrop. Light adds, so a change of power needs no trying; a change of place is tried at one
 * place of the frame and only then looked at as a whole.
 */
import { backdropInFrame } from '../../scene/backdrop.js'
import type { Vec3 } from '../../scene/vector.js'
import type { BackdropSample } from '../../set/backdrop-view.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { onBackdrop } from '../on-surface.js'

/**
 * Stops that the lights must all change by so that every sample comes to at least (or at most) `target` stops over the
 * camera. Undefined where these lights cannot do it: they give a sample nothing, or the others alone give it too much.
 */
export const stopsFor = (
  set: ComputedSet,
  samples: readonly BackdropSample[],
  lights: readonly string[],
  target: number,
  side: 'at least' | 'at most',
): number | undefined => {
  let found: number | undefined
  for (const sample of samples) {
    const got = set.unshadowed(onBackdrop(sample.at), 'all')
    if (got === undefined) return undefined
    const own = lights.reduce((sum, light) => sum + (got.byLight.get(light) ?? 0), 0)
    const wanted = got.luxSeconds * 2 ** (target - sample.overCamera.stops) - (got.luxSeconds - own)
    if (wanted <= 0) {
      if (side === 'at least') continue
      return undefined
    }
    if (own <= 0) {
      if (side === 'at most') continue
      return undefined
    }
    const stops = Math.log2(wanted / own)
    found =
      found === undefined ? stops : side === 'at least' ? Math.max(found, stops) : Math.min(found, stops)
  }
  return found
}

/** Stops over the camera at the place of the frame where this sample lies, in sets whose geometry may differ. */
export const atPlaceOf = (
  sample: BackdropSample,
  set: ComputedSet,
): ((other: ComputedSet) => number | undefined) => {
  const box = boxOf(set)
  if (box === undefined) return () => undefined
  const across = (sample.at[0] - box.left) / (box.right - box.left)
  const up = (sample.at[2] - box.bottom) / (box.top - box.bottom)
  return (other) => {
    const seen = boxOf(other)
    const { backdrop } = other.scene
    if (seen === undefined || backdrop === undefined) return undefined
    const at: Vec3 = [
      seen.left + across * (seen.right - seen.left),
      backdrop.y,
      seen.bottom + up * (seen.top - seen.bottom),
    ]
    return other.reading({ at, of: 'all', dome: 'flat', faces: { direction: [0, -1, 0] } })?.overCamera.stops
  }
}

const boxOf = ({ scene: { camera, backdrop, subject } }: ComputedSet) =>
  backdrop && backdropInFrame(camera, backdrop, subject.table)
