import { stopsToSurelyWhite } from '../../picture/tone.js'
import { apart } from '../apart.js'
import { turnLight } from '../gear.js'
import { backdropMissing, firstMissing, keyMissing } from '../known.js'
import { settingPointer } from '../place-pointer.js'
import { type Evidence, inTurn, type Mend, type RuleContext, rule } from '../rule.js'
import { inside } from '../solving.js'
import type { Words } from '../words.js'
import { backdropLights, causeOnBackdrop, overKey, shareAt, usualLimit } from './on-the-backdrop.js'
import { stopsFor } from './solve-level.js'
import { crossing, farFrom, limitsText, type TwoLimits, twoLimits, uncrossed } from './two-limits.js'

const wallAt = (each: string, wanted: string): string => `plan: 1
title: White wall with two umbrellas on it
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/8, shutter: 1/125, iso: 200 }
subject: { kind: person }
backdrop: { surface: white paper, behind: 1.8 m }
lights:
  key: { unit: head 400 Ws, modifier: softbox 60 x 90 cm, meters: f/8, at: { angle: 30 deg right, distance: 1.3 m, height: 2 m } }
  wall-left: { role: backdrop, unit: head 600 Ws, modifier: white umbrella 1 m, meters: ${each}, at: { left: 1.5 m, before-backdrop: 1.7 m, height: 1.6 m } }
  wall-right: { like: wall-left, mirrored: true }
wanted: { ${wanted}, framing: head and shoulders }
`

interface AboveLimit extends Evidence {
  readonly over: number
  readonly limit: number
  readonly u: number
  /** Stops that the darkest point lies over white for certain; undefined where white is not wanted. */
  readonly spare: number | undefined
  /** Both ends for a white backdrop. */
  readonly limits: TwoLimits | undefined
}

export const backdropAboveLimit = rule<AboveLimit>({
  id: 'backdrop-above-limit',
  family: 'backdrop',
  level: 'warning',
  finds: 'a white backdrop far over the key: light comes back round the subject and hazes the lens',
  limits: {
    over: {
      value: usualLimit,
      unit: 'stop',
      says: 'at most over the key, at the middle of the backdrop in frame',
    },
  },
  why: 'Past white nothing gets whiter: what the backdrop gets more only wraps round cheeks and hair, eats thin outlines and hazes the picture.',
  formula: 'log2(H at the middle of the backdrop, flat and facing out / H of the key reading)',
  sources: [
    {
      kind: 'common practice',
      says: 'one stop over the key and no more; opinions run from level to three stops',
    },
    { kind: 'derived', says: 'wrap and haze as the rules edge-wrap and veiling-glare work them out' },
    { kind: 'memory', says: 'veiling glare index 1.5 %, the measure of ISO 9358' },
  ],
  basis: 'incident metering, ISO 2720; the limit is common practice',
  fires: [
    { title: 'nearly three stops over', plan: wallAt('f/14', 'backdrop: white') },
    { title: 'a little over one stop', plan: wallAt('f/8', 'backdrop: white') },
    {
      title: 'over what the plan itself wants',
      plan: wallAt('f/8', 'backdrop: white, backdrop-over-key: 1/3..2/3 stop'),
    },
  ],
  passes: [
    { title: 'just under one stop', plan: wallAt('f/7.1', 'backdrop: white') },
    { title: 'no white wanted, and no limit', plan: wallAt('f/11', 'backdrop: any') },
  ],

  needs: (context) => {
    const { wanted } = context.plan
    return wanted.backdrop?.tone === 'white' ||
      (wanted.backdrop === undefined && wanted.backdropOverKey !== undefined)
      ? firstMissing(
          () => backdropMissing(context, 'at least'),
          () => keyMissing(context),
        )
      : 'silent'
  },

  detect: (context) => {
    const { set, plan, limits } = context
    const view = set.backdropView
    const middle = view && overKey(context, view.middle)
    if (view === undefined || middle === undefined || plan.backdrop === undefined) return []
    const limit = plan.wanted.backdropOverKey?.to ?? limits.over!
    const own = backdropLights(set)
    const white = stopsToSurelyWhite(plan.backdrop.surface.reflectance, plan.camera.headroom)
    const { overCamera } = view.darkest
    return [
      {
        pointer: own[0] === undefined ? '/backdrop/behind' : settingPointer(own[0]),
        also: own.slice(1).map((light) => ({ pointer: settingPointer(light), says: 'and this light' })),
        beyond: { stops: middle.stops - limit, u: middle.u },
        measured: {
          'middle-over-key': { value: middle.stops, unit: 'stop', u: middle.u, limit, side: 'at-most' },
        },
        cause: causeOnBackdrop(set, view.middle),
        scale: { value: middle.stops, u: middle.u, needs: limit, against: 'over the key' },
        over: middle.stops,
        limit,
        u: middle.u,
        spare: plan.wanted.backdrop?.tone === 'white' ? overCamera.stops - white : undefined,
        limits: twoLimits(context),
      },
    ]
  },

  tell: ({ over, limit, limits, spare }, words) => {
    const [is, most] = apart(over, limit, words)
    const far = limits !== undefined && farFrom(limits)
    return {
      message: far
        ? `the backdrop gets more light than white takes: its middle is ${is} over the key, ${most} is the limit`
        : `light comes back round the subject's outline: the middle of the backdrop is ${is} over the key, ${most} is the limit`,
      why: [
        ...(limits?.wrap === undefined
          ? []
          : [`wrap ${words.stops(limits.wrap)} against the key where the outline turns 45 deg away`]),
        ...(limits === undefined ? [] : [`haze lifts a deep black by ${words.howMany(limits.lift)}`]),
        ...(far ? ['both are far from their own limits, so this is the house limit speaking'] : []),
        ...(spare === undefined || limits === undefined ? [] : [limitsText(limits, words)]),
        ...(spare === undefined
          ? []
          : spare >= over - limit
            ? [`up to ${words.howMany(spare)} less would still be white for certain everywhere in frame`]
            : limits !== undefined && crossing(limits) === 'full'
              ? []
              : [
                  spare < 0
                    ? 'the corners are short of white and the middle is too hot: no power is right for both'
                    : 'any lower and the darkest point in frame is no longer white for certain',
                ]),
      ].join('; '),
    }
  },

  mend: (evidence, words, context) =>
    inTurn(
      () => lightsDown(evidence, words, context),
      () => (evidence.limits === undefined ? [] : uncrossed(evidence.limits, words, context)),
    ),

  inShort: ({ over, limit }, words) => {
    const [is, most] = apart(over, limit, words)
    return `the backdrop is ${is} over the key, ${most} is the limit`
  },
})

/** Over the key: inside the limit, but no lower than the middle of what keeps the darkest point white. */
const targetOf = ({ over, limit, spare, u }: AboveLimit): number | undefined => {
  const lowest = spare === undefined ? Number.NEGATIVE_INFINITY : over - spare
  return lowest > limit ? undefined : Math.max(limit - inside(u), (limit + lowest) / 2)
}

const lightsDown = (evidence: AboveLimit, words: Words, context: RuleContext): readonly Mend[] => {
  const { set } = context
  const names = backdropLights(set).map((light) => light.name)
  if (names.length === 0 || shareAt(set, set.backdropView!.middle, names) < 0.5) return []
  const target = targetOf(evidence)
  const advice = lowered(names, target ?? evidence.over - (evidence.spare ?? 0), evidence, words, context)
  return target === undefined
    ? [
        // Where the two limits cross, that is told among what uncrosses them.
        ...(evidence.limits !== undefined && crossing(evidence.limits) !== 'none'
          ? []
          : [
              {
                title: 'light the backdrop more evenly: two lights, further off, aimed across',
                gives: 'then one power can be white in the corners and not too much in the middle',
              },
            ]),
        ...advice.map((one) => ({
          ...one,
          costs: 'the least that keeps the corners white; still over the limit',
          partial: true as const,
        })),
      ]
    : advice
}

const lowered = (
  names: readonly string[],
  target: number,
  evidence: AboveLimit,
  words: Words,
  context: RuleContext,
): readonly Mend[] => {
  const { set, plan } = context
  const { middle: now } = set.backdropView!
  const by = stopsFor(set, [now], names, now.overCamera.stops + target - evidence.over, 'at most')
  if (by === undefined || by > -0.1) return []
  const turned = names.flatMap((light) => turnLight(plan, light, by, 'nearest') ?? [])
  const after = set.with(...turned.map((one) => one.change))
  const view = after.backdropView
  const middle = view && overKey({ ...context, set: after }, view.middle)
  if (turned.length === 0 || view === undefined || middle === undefined) return []
  const keeps = evidence.spare === undefined ? undefined : evidence.spare - (evidence.over - middle.stops)
  return [
    {
      title: turned.map((one) => one.title).join(', '),
      gives: `the middle ${words.against(middle.stops, 'the key')}${keeps === undefined ? '' : `, the darkest corner ${keeps < 0.05 ? 'just sure white' : `${words.howMany(keeps)} past sure white`}`}`,
      after,
    },
  ]
}
