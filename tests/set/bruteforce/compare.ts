/** Holds what the program says of a set to what was worked out by hand; gives back what does not hold, in words. */

import { readPlan } from '../../../src/language/read-plan.js'
import { computeSet } from '../../../src/set/compute-set.js'
import type { ComputedSet, MeterAsk } from '../../../src/set/computed-set.js'
import type { HandPoint, HandSet } from './hand-set.js'
import { dome, domeOnSurface, flat, type Kernel, type Lamp } from './lamps.js'
import { toward, type Vector } from './vectors.js'

/** Stops. */
export const closedForm = 0.01
export const numeric = 0.03
/** Light that is this many stops under the strongest that the lamp gives in the set is held to be little, no more. */
const faint = 8

export const computed = (plan: string): ComputedSet => {
  const reading = readPlan('hand.plan.yaml', plan, { read: () => ({ ok: false, says: 'no files' }) })
  if (reading.plan === undefined || reading.mistakes.length > 0)
    throw new Error(reading.mistakes.map(({ message }) => message).join('; '))
  return computeSet(reading.plan)
}

type Way = readonly [ask: Partial<MeterAsk>, faces: Vector, kernel: Kernel]

/** On surfaces lying flat, and a dome set down on them; elsewhere a dome to the light and to the camera, flat to both. */
export const waysToMeter = (point: HandPoint, lamp: Lamp, name: string, eye: Vector): readonly Way[] => {
  const { at, out, looks } = point
  if (out !== undefined)
    return [
      [{}, out, flat],
      [{ dome: 'raised' }, out, domeOnSurface],
    ]
  const camera = toward(at, eye)
  const ways: Way[] = [
    [{ faces: 'camera' }, camera, dome],
    [{ dome: 'flat', faces: 'camera' }, camera, flat],
  ]
  if (looks !== undefined) ways.push([{ dome: 'flat', faces: 'out' }, looks, flat])
  // A room's light has no direction that a meter could be turned to.
  if (name !== 'ambient') ways.push([{}, lamp.from(at), dome], [{ dome: 'flat' }, lamp.from(at), flat])
  return ways
}

interface Held {
  readonly name: string
  readonly got: number
  readonly want: number
  readonly tolerance: number
}

/** Every lamp at every point in every way. */
const allReadings = (set: ComputedSet, hand: HandSet): readonly Held[] =>
  Object.entries(hand.lamps).flatMap(([light, lamp]) =>
    Object.entries(hand.points).flatMap(([point, place]) =>
      waysToMeter(place, lamp, light, hand.eye).map(([ask, faces, kernel]) => ({
        name: `${light} at ${point} ${JSON.stringify(ask)}`,
        got: set.reading({ at: point, of: [light], ...ask })?.luxSeconds ?? 0,
        want: lamp.gives({ at: place.at, faces, kernel }),
        tolerance: hand.numeric?.includes(light) === true ? numeric : closedForm,
      })),
    ),
  )

export const wrongReadings = (set: ComputedSet, hand: HandSet): readonly string[] => {
  const all = allReadings(set, hand)
  return all.flatMap(({ name, got, want, tolerance }) => {
    const light = name.split(' ', 1)[0]
    const strongest = Math.max(
      ...all.filter((one) => one.name.startsWith(`${light} `)).map((one) => one.want),
    )
    const little = strongest / 2 ** faint
    if (want < little) return got < 2 * little ? [] : [`${name}: ${got} lx·s where there are ${want}`]
    const off = Math.log2(got / want)
    return Math.abs(off) <= tolerance ? [] : [`${name}: ${got} lx·s for ${want}, ${off.toFixed(3)} stop off`]
  })
}

export const countReadings = (hand: HandSet): number =>
  Object.entries(hand.lamps).flatMap(([light, lamp]) =>
    Object.values(hand.points).flatMap((point) => waysToMeter(point, lamp, light, hand.eye)),
  ).length

/** Key and fill together, dome raised, facing the camera: lx·s. */
export const keyByHand = ({ points, lamps, key, eye }: HandSet): number => {
  const { at } = points.subject!
  return key.reduce(
    (sum, light) => sum + lamps[light]!.gives({ at, faces: toward(at, eye), kernel: dome }),
    0,
  )
}

/** All lamps on the backdrop, flat: lx·s. */
export const onBackdropByHand = ({ lamps }: HandSet, at: Vector): number =>
  Object.values(lamps).reduce((sum, lamp) => sum + lamp.gives({ at, faces: [0, -1, 0], kernel: flat }), 0)

/** The plan as seen in a mirror: every left a right. */
export const mirrored = (text: string): string =>
  text.replace(/\b(left|right)\b/g, (side) => (side === 'left' ? 'right' : 'left'))
