/** Flash and curtains in time: what of a flash the last strip of the frame misses. */
import type { Light } from '../../language/plan.js'
import { flashTime } from '../../light/flash-time.js'
import { keptShare, longer, stopsLost, timeUntil } from '../../light/pulse.js'
import { latestOf } from '../../light/trigger-delay.js'
import { closedBefore, fasterThanSync, type TimeRange } from '../../picture/shutter.js'
import type { ComputedSet } from '../../set/computed-set.js'
import type { Seconds } from '../../units/quantity.js'
import { powerSet } from './power-set.js'
import { singleFlashes } from './sync.js'

export interface Tail {
  readonly light: Light
  /** Stops that the strip which closes first misses. */
  readonly lost: number
  readonly u: number
  readonly t01: Seconds
}

/**
 * The second curtain starts at t, the flash at T after its trigger: the strip that closes first gets what is out by t − T. Told
 * only of cameras and flashes whose times are stated: a sync speed has the usual flash counted in.
 */
export const tailsCut = (set: ComputedSet): readonly Tail[] => {
  const { plan } = set
  const { camera } = plan
  if (camera.curtain === undefined || fasterThanSync(camera)) return []
  const slack = camera.shutterMarked - camera.curtain
  return singleFlashes(plan).flatMap((light): Tail[] => {
    if (light.unit.kind !== 'flash' || light.unit.durations.length === 0) return []
    const power = powerSet(set, light)
    const { pulse, u, t01 } = flashTime(light.unit, power.power)
    if (!power.known) return []
    const late = latestOf(light)
    const at = (delay: number, times: number): number =>
      stopsLost(keptShare(pulse, ((slack - delay) / times) as Seconds))
    const lost = at(late / 2, 1)
    const byDelay = (at(late, 1) - at(0, 1)) / 2
    const byTime = (at(late / 2, 2 ** u) - at(late / 2, 2 ** -u)) / 2
    return [{ light, lost, u: Math.hypot(byDelay, byTime), t01 }]
  })
}

export interface Short {
  /** Share of the frame that gets too little of a flash, the dark band included. */
  readonly share: number
  /** At most: by a guessed duration, or another that is not known. */
  readonly upTo: boolean
}

/**
 * What of the frame closes before a flash has given all but so many stops of its light, by the flash that reaches furthest. A
 * guessed flash is taken at its longest.
 *
 * @param run of the curtain, or of the readout, over the frame
 */
export const shortOf = (set: ComputedSet, lights: readonly Light[], run: TimeRange, stops: number): Short =>
  lights
    .flatMap((light): Short[] => {
      if (light.unit.kind !== 'flash') return []
      const { power, known: told } = powerSet(set, light)
      const { pulse, u, known } = flashTime(light.unit, power)
      const guessed = known === 'guessed' || !told
      const until = timeUntil(longer(pulse, guessed ? 2 ** u : 1), 2 ** -stops)
      const latest = latestOf(light)
      return [
        {
          share: closedBefore(set.plan.camera, run, latest, until),
          upTo: guessed || latest > 0 || run.least < run.most,
        },
      ]
    })
    .reduce((most, one) => (one.share > most.share ? one : most))
