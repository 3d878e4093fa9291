/** What a shutter that closes while a flash still burns keeps of it. All times are literal, as marked. */
import type { Camera, Light, Plan } from '../language/plan.js'
import type { Seconds } from '../units/quantity.js'
import { flashTime } from './flash-time.js'
import { keptShare, longer } from './pulse.js'

/**
 * What a slit gets of a flash that burns evenly for as long as the slit runs over the frame, and no longer: t of t + T. The best
 * that any light through a whole run can do.
 */
export const longBurstShare = (time: Seconds, travel: Seconds): number => time / (time + travel)

/** A leaf shutter, and a sensor that is read all at once, open and close over the whole frame alike. */
export const opensAtOnce = ({ shutterKind, readout }: Camera): boolean =>
  shutterKind === 'leaf' || (shutterKind === 'electronic' && readout === 0)

/**
 * What a shutter that opens over the whole frame at the peak keeps of a light's flash, as stops lost; 0 where nothing is cut.
 * A flash meter that is set to the same shutter time loses the same: what it reads already lacks this.
 */
export const leafLoss = (light: Light, { camera }: Plan): { readonly stops: number; readonly u: number } => {
  const { unit, mode } = light
  if (!opensAtOnce(camera) || unit.kind !== 'flash' || mode === 'high-speed') return none
  const { pulse, u } = flashTime(unit, light.power ?? unit.power.to)
  const lostAt = (times: number): number => -Math.log2(keptShare(longer(pulse, times), camera.shutterMarked))
  const most = lostAt(2 ** u)
  return most < unseen ? none : { stops: lostAt(1), u: (most - lostAt(2 ** -u)) / 2 }
}

/** Stops: nothing is cut if the flash lasts as long as it may. */
const unseen = 1e-4

const none = { stops: 0, u: 0 } as const
