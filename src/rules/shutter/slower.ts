/** Slower shutter times, as the dial has them. */
import type { ComputedSet } from '../../set/computed-set.js'
import { exactShutter, nearestShutter } from '../../units/marks.js'
import type { Seconds } from '../../units/quantity.js'
import { steadyGains } from '../steady-gains.js'
import type { Words } from '../words.js'

const third = 2 ** (1 / 3)
const sameMark = 1e-6

/** The third-stop mark that is as long or longer, taken literally: 1/125 is 8 ms. */
export const markAtLeast = (time: number): Seconds => {
  const nearest = nearestShutter(time as Seconds)
  return nearest >= time * (1 - sameMark) ? nearest : nearestShutter((time * third) as Seconds)
}

/** The marks slower than a time, up to `longest`. */
export const slowerMarks = (time: Seconds, longest: number): readonly Seconds[] => {
  const marks: Seconds[] = []
  for (let mark = markAtLeast(time * third ** 0.5); mark <= longest; mark = markAtLeast(mark * third ** 0.5))
    marks.push(mark)
  return marks
}

export const atShutter = (set: ComputedSet, marked: Seconds): ComputedSet =>
  set.with({ knob: { knob: 'shutter' }, to: exactShutter(marked) })

/** What a slower shutter costs: light that burns on counts more, and hands are not steady. */
export const costsOfSlower = (set: ComputedSet, marked: Seconds, words: Words): string =>
  [
    steadyGains(set, Math.log2(marked / set.plan.camera.shutterMarked), words),
    ...(marked > 1 / 50 ? ['a tripod'] : []),
  ].join('; ')
