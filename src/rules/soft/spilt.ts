/** A light that is aimed at the ceiling, a wall or a panel, and yet falls on the face straight. */
import type { Aim, Light } from '../../language/plan.js'
import { computeSet } from '../../set/compute-set.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { whom } from '../place-words.js'
import type { Mend } from '../rule.js'
import type { Words } from '../words.js'

export const isBounced = ({ aim }: Pick<Light, 'aim'>): boolean =>
  aim.at === 'ceiling' || aim.at === 'panel' || aim.at === 'wall'

export const bouncedOff = (aim: Aim): string =>
  aim.at === 'ceiling'
    ? 'the ceiling'
    : aim.at === 'panel'
      ? aim.panel
      : aim.at === 'wall'
        ? `the ${aim.wall.replace('-', ' ')}`
        : 'a surface'

/** Share of its light at the face that comes straight; undefined where nothing tells. */
export const straightShare = (set: ComputedSet, light: Light): number | undefined => {
  const reading = set.reading({ at: 'subject', of: [light.name], faces: 'camera' })
  return reading === undefined || !(reading.luxSeconds > 0)
    ? undefined
    : reading.byPath.direct / reading.luxSeconds
}

/** Stops: what surfaces throw back, and how far beside its beam a unit still shines. Common practice, no source. */
export const spillU = 0.5

/** Less than this makes no shadow that is seen. */
const hardlyAny = 0.1

/** Turned steeper, to the ceiling over the camera; where that does not do it, a card keeps its straight light off the face. */
export const turnedAway = (set: ComputedSet, light: Light, words: Words): readonly Mend[] => {
  const { plan } = set
  const card: Mend = {
    title: `a black card on ${light.name}, between its front and ${whom(plan)}`,
    gives: `only what comes off ${bouncedOff(light.aim)} is left`,
    costs: 'a little less light',
  }
  if (light.aim.at !== 'ceiling' || light.aim.above === 'camera') return [card]
  const aim: Aim = { at: 'ceiling', above: 'camera', feather: undefined }
  const after = computeSet({ ...plan, lights: new Map(plan.lights).set(light.name, { ...light, aim }) })
  const share = straightShare(after, light)
  const [was, is] = [set, after].map((one) =>
    one.reading({ at: 'subject', of: [light.name], faces: 'camera' }),
  )
  if (share === undefined || share > hardlyAny || was === undefined || is === undefined) return [card]
  const less = Math.log2(was.luxSeconds / is.luxSeconds)
  return [
    {
      title: `lights.${light.name}.aim → ceiling above camera`,
      gives: `${Math.round(100 * (1 - share))} % of its light then comes off ceiling and walls`,
      ...(less > hardlyAny ? { costs: `${words.howMany(less)} less light` } : {}),
    },
    card,
  ]
}
