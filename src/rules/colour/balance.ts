/** What white the camera is balanced for. */

import type { Xyz } from '../../light/colour/chromaticity.js'
import type { Mix } from '../../light/colour/mix.js'
import { usualDuv, xyzOfWhite } from '../../light/colour/white.js'
import type { ComputedSet, MeterAsk } from '../../set/computed-set.js'

/** Where the key reading is taken. */
export const keyAsk: Omit<MeterAsk, 'of'> = { at: 'subject', dome: 'raised', faces: 'camera' }

/** The colour of the key reading. */
export const keyMix = (set: ComputedSet): Mix | undefined =>
  set.colour(
    keyAsk,
    set.keyLights.map(({ name }) => name),
  )

/** As the plan states it; else set to the key. Y is of no account. */
export const balancedFor = (set: ComputedSet): Xyz | undefined => {
  const stated = set.plan.camera.whiteBalance
  return stated === undefined ? keyMix(set)?.xyz : xyzOfWhite({ kelvin: stated, duv: usualDuv(stated) })
}
