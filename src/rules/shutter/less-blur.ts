/** What freezes movement: a shorter flash by another power, with speed, aperture or shutter to make up for it. */
import type { Light } from '../../language/plan.js'
import { regulationOf } from '../../light/flash-time.js'
import { isHighSpeed } from '../../light/strength.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { type Turned, turn, turnLight } from '../gear.js'
import type { Mend, RuleContext } from '../rule.js'
import { inside } from '../solving.js'
import { steadyGains, whatGains } from '../steady-gains.js'
import type { Words } from '../words.js'
import { type Blur, blursOf } from './blur.js'
import { durationText } from './duration-text.js'

/** Units that cut are quicker at less power. */
export const lessPower = (blur: Blur, words: Words, context: RuleContext): readonly Mend[] => {
  return !cuts(blur)
    ? []
    : (['iso', 'aperture'] as const).flatMap((by) =>
        tradeOff(context, (stops) => powersFor(context, by, stops), {
          costs: (stops) =>
            by === 'aperture'
              ? ['less depth of field', ...whatGains(context.set, stops, words)].join('; ')
              : `${steadyGains(context.set, stops, words)}; more noise`,
          gives: (stops) => `sharp with ${words.howMany(stops)} less power`,
        }),
      )
}

/** Units that charge less are a little quicker at more. */
export const morePower = (blur: Blur, words: Words, context: RuleContext): readonly Mend[] =>
  !blur.flashes || cuts(blur)
    ? []
    : (['iso', 'aperture'] as const).flatMap((by) =>
        tradeOff(context, (stops) => powersFor(context, by, -stops), {
          costs: () => 'slower recycling',
          gives: (stops) => `sharp with ${words.howMany(stops)} more power`,
        }),
      )

/** Light that burns on is frozen by the shutter alone. */
export const fasterShutter = (
  { flashes, light }: Blur,
  words: Words,
  context: RuleContext,
): readonly Mend[] => {
  const { camera } = context.plan
  if (flashes || (light !== undefined && isHighSpeed(light, context.plan))) return []
  const slowest = flashing(context).length === 0 ? 0 : camera.sync * 0.999
  return tradeOff(
    context,
    (stops) => {
      if (camera.shutterMarked * 2 ** -stops < slowest) return undefined
      return [
        turn(context.plan, { knob: 'shutter' }, camera.shutter * 2 ** -stops, 'nearest'),
        turn(context.plan, { knob: 'iso' }, camera.iso * 2 ** stops, 'nearest'),
      ]
    },
    { costs: () => 'more noise', gives: (stops) => `sharp in ${words.howMany(stops)} less time` },
  )
}

/** What another unit is stated to last is a fact, however unsure today's: it need only come to the limit. */
export const shorterFlash = (
  { light, flashes, lasts, over }: Blur,
  words: Words,
  { limits }: RuleContext,
): readonly Mend[] => {
  if (!flashes || light === undefined) return []
  const enough = durationText(lasts * 2 ** (limits.over! - over), words, 'at most')
  return [
    {
      title: `units with a shorter flash for ${light.name}: t0.1 of ${enough} or shorter`,
      gives: 'sharp at the same power',
    },
  ]
}

const cuts = ({ flashes, light }: Blur): boolean =>
  flashes && light?.unit.kind === 'flash' && regulationOf(light.unit) === 'igbt'

const flashing = ({ plan }: RuleContext): readonly Light[] =>
  [...plan.lights.values()].filter((light) => light.on && light.unit.kind === 'flash')

/** All flashes down by some stops, the camera as much more open to light. What is to meter something follows the speed by itself. */
const powersFor = (
  context: RuleContext,
  by: 'iso' | 'aperture',
  stops: number,
): readonly (Turned | undefined)[] => {
  const { plan } = context
  const { iso, aperture } = plan.camera
  const open = by === 'iso' ? iso * 2 ** stops : aperture * 2 ** (-stops / 2)
  return [
    turn(plan, { knob: by }, open, 'nearest'),
    ...flashing(context)
      .filter(({ power, meters }) => power !== undefined || (by === 'aperture' && meters !== undefined))
      .map(({ name }) => turnLight(plan, name, -stops, 'nearest')),
  ]
}

interface Says {
  gives(stops: number): string
  costs(stops: number): string
}

/** More than this nobody trades at once, in thirds of a stop. */
const mostThirds = 18

/** The least that makes all sharp: one standard deviation inside the limit, or else just inside. */
const tradeOff = (
  context: RuleContext,
  turned: (stops: number) => readonly (Turned | undefined)[] | undefined,
  says: Says,
): readonly Mend[] => {
  const { set } = context
  const tried: { readonly stops: number; readonly title: string; readonly after: ComputedSet }[] = []
  for (let thirds = 1; thirds <= mostThirds; thirds++) {
    const settings = turned(thirds / 3)
    if (settings === undefined || settings.some((one) => one === undefined || one.short > 0)) break
    tried.push({
      stops: thirds / 3,
      title: settings.map((one) => one!.title).join(', '),
      after: set.with(...settings.map((one) => one!.change)),
    })
  }
  const found =
    tried.find(({ after }) => isSharp(after, context, true)) ??
    tried.find(({ after }) => isSharp(after, context, false))
  return found === undefined
    ? []
    : [
        {
          title: found.title,
          gives: says.gives(found.stops),
          costs: says.costs(found.stops),
          after: found.after,
        },
      ]
}

const isSharp = (set: ComputedSet, { limits }: RuleContext, sure: boolean): boolean =>
  blursOf(set, limits.share!).every(({ over, u }) => over <= limits.over! - (sure ? inside(u) : 0))
