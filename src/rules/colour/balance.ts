/** What white the camera is balanced for. */

import type { Xyz } from '../../light/colour/chromaticity.js'
import type { Mix } from '../../light/colour/mix.js'
import { usualDuv, xyzOfWhite } from '../../light/colour/white.js'
import type { ComputedSet, MeterAsk } from '../../set/computed-set.js'
import { ambientName, modellingName } from '../../set/transport.js'

/** Where the key reading is taken. */
export const keyAsk: Omit<MeterAsk, 'of'> = { at: 'subject', dome: 'raised', faces: 'camera' }

/** What lights the face from before it: key, fill with their modelling lamps, the light of the place. */
export const facing = ({ giving, keyLights }: ComputedSet): readonly string[] => {
  const names = new Set([...keyLights.flatMap(({ name }) => [name, modellingName(name)]), ambientName])
  return giving.filter((name) => names.has(name))
}

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
