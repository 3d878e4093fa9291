/** What a shutter that closes while a flash still burns keeps of it. All times are literal, as marked. */
import type { Camera, Light, Plan } from '../language/plan.js'
import type { Seconds } from '../units/quantity.js'
import { flashTime } from './flash-time.js'
import { uncertainties } from './how-sure.js'
import { keptShare, longer, type Pulse, stopsLost } from './pulse.js'
import { latestOf, likelyLeast } from './trigger-delay.js'

export interface Loss {
  readonly stops: number
  readonly u: number
}

// ---------------------------------------------------------------- a slit

/** What a strip of the frame gets that is open for a time, from a moment on that is counted from the flash's peak. */
export const stripShare = (pulse: Pulse, opens: Seconds, time: Seconds): number =>
  keptShare(pulse, (opens + time) as Seconds) - keptShare(pulse, opens)

/**
 * What the strips of the frame get on average where the flash has its peak as the slit starts on its run. Of one that burns
 * evenly for as long as the slit runs, and no longer, each gets t of t + T.
 */
export const slitShare = (pulse: Pulse, time: Seconds, travel: Seconds): number =>
  onAverage((y) => stripShare(pulse, (y * travel) as Seconds, time))

/** Travel of a curtain against the sync time, where the camera's own is not stated: 0.7 to 1.0. Common practice, no source. */
const usualTravel = 0.85

/** A flash that is fired early, so that the slit runs over the frame while it burns; over the frame on average. */
export const earlyLoss = (light: Light, { camera }: Plan): Loss | undefined => {
  const { trigger, unit } = light
  const { shutterKind, shutterMarked, sync, curtain } = camera
  if (trigger?.early !== true || unit.kind !== 'flash' || shutterKind !== 'focal-plane') return undefined
  if (shutterMarked >= sync * 0.999) return undefined
  const travel = curtain ?? ((sync * usualTravel) as Seconds)
  const { pulse, u } = flashTime(unit, light.power ?? unit.power.to)
  const lost = (times: number): number => stopsLost(slitShare(longer(pulse, times), shutterMarked, travel))
  return {
    stops: lost(1),
    // The longer it lasts the less of it comes through; much shorter than the slit's run the frame is dark but for a strip.
    u: Math.hypot(uncertainties.highSpeedEntry, (lost(2 ** u) - lost(2 ** -u)) / 2),
  }
}

// ---------------------------------------------------------------- open at once

/** A leaf shutter, and a sensor that is read all at once, open and close over the whole frame alike. */
export const opensAtOnce = ({ shutterKind, readout }: Camera): boolean =>
  shutterKind === 'leaf' || (shutterKind === 'electronic' && readout === 0)

/** `stops`: by the light that comes in on the average of all delays. */
export interface LeafLoss extends Loss {
  /** Fired at once, and as late as the trigger may. */
  readonly least: number
  readonly most: number
  /** How much less it may well be: what `u` is on its lower side, which is the narrower. */
  readonly uLess: number
}

/**
 * What of a light's flash a shutter cuts off that opens over the whole frame as its contact closes; 0 where nothing is. It
 * closes at t, the flash has its peak as late as its trigger fires it: what it gives by t less the delay comes in.
 *
 * A flash meter that is set to the same shutter time and fires the light by the same trigger loses the same: what it reads
 * already lacks this. A meter that waits for the flash itself does not see the delay, which is told where the loss is.
 */
export const leafLoss = (light: Light, { camera }: Plan): LeafLoss => {
  const { unit, mode } = light
  if (!opensAtOnce(camera) || unit.kind !== 'flash' || mode === 'high-speed') return none
  const { pulse, u } = flashTime(unit, light.power ?? unit.power.to)
  const latest = latestOf(light)
  const kept = (delay: number, times = 1): number =>
    keptShare(longer(pulse, times), (camera.shutterMarked - delay) as Seconds)
  const most = stopsLost(kept(latest))
  if (stopsLost(kept(latest, 2 ** u)) < unseen) return none
  const byTimes = (times: number): number => stopsLost(onAverage((part) => kept(part * latest, times)))
  const stops = byTimes(1)
  const byDuration = (byTimes(2 ** u) - byTimes(2 ** -u)) / 2
  const early = stopsLost(kept(likelyLeast * latest))
  const byDelay = Math.sqrt(onAverage((part) => (stopsLost(kept(part * latest)) - stops) ** 2))
  return {
    stops,
    u: Math.hypot(byDuration, byDelay),
    least: stopsLost(kept(0)),
    most,
    uLess: Math.hypot(byDuration, Math.max(0, stops - early)),
  }
}

/** Stops: nothing is cut if the flash lasts, and its trigger takes, as long as it may. */
const unseen = 1e-4

const none: LeafLoss = { stops: 0, u: 0, least: 0, most: 0, uLess: 0 }

/** Over 0 to 1. */
const onAverage = (value: (at: number) => number): number => {
  const parts = 64
  let sum = 0
  for (let i = 0; i < parts; i++) sum += value((i + 0.5) / parts)
  return sum / parts
}
