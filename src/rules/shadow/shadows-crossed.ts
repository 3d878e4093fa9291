import type { ShadowSeen } from '../../set/shadow-seen.js'
import { shows } from '../../set/shadow-seen.js'
import { turn } from '../gear.js'
import { lightPointer } from '../place-pointer.js'
import { type Evidence, inTurn, type Mend, type RuleContext, rule } from '../rule.js'
import { inside } from '../solving.js'
import type { Words } from '../words.js'
import { backdropLit, firstWhere, moreSeparation, needsLight } from './out-of-sight.js'
import { beyondOf, byLight, depthText, shadowsMissing, showsBy, sideText } from './seen.js'

const two = (fill: string, behind: string, wanted = '', each = 'standard reflector'): string => `plan: 1
title: Key and fill before a wall
camera: { lens: 50 mm, at: { distance: 2.6 m }, aperture: f/8, shutter: 1/125, iso: 100, held-by: stand }
subject: { kind: person }
backdrop: { surface: { reflectance: 0.5 }, width: 5 m, height: 3 m, behind: ${behind} }
lights:
  key: { unit: head 400 Ws, modifier: ${each}, meters: f/8, at: { angle: 35 deg left, distance: 2 m, height: 1.9 m } }
  fill: { unit: head 400 Ws, modifier: ${each}, ${fill} }
wanted: { framing: waist, backdrop: any${wanted} }
`
const copied = 'meters: f/7.1, at: { angle: 35 deg right, distance: 2 m, height: 1.9 m }'

interface Crossed extends Evidence {
  readonly strong: ShadowSeen
  readonly weak: ShadowSeen
}

export const shadowsCrossed = rule<Crossed>({
  id: 'shadows-crossed',
  family: 'shadow',
  level: 'warning',
  finds: "two lights' shadows of the subject that both show on the backdrop",
  limits: {
    depth: {
      value: shows.stops,
      unit: 'stop',
      says: 'under what the backdrop would record there without the subject, on one side more than on the other, of either shadow',
    },
  },
  why: 'One shadow belongs to one sun. Two that cross behind the subject say that there were two lamps, and no choice of one of them takes both away.',
  formula:
    'as shadow-in-frame, for each light by itself: its own part of the light on the backdrop taken away; two lights of which both shadows show',
  sources: [
    { kind: 'derived', says: 'of two equal lights each shadow is one stop under its surround' },
    { kind: 'common practice', says: 'one light makes the shadows; the others are to have none that shows' },
  ],
  basis: 'covered parts of each front, exact; the limits are common practice',
  fires: [
    { title: 'two bare reflectors from both sides', plan: two(copied, '0.6 m') },
    { title: 'a stop between them', plan: two(copied.replace('f/7.1', 'f/5.6'), '0.6 m') },
  ],
  passes: [
    { title: 'the fill is two stops down', plan: two(copied.replace('f/7.1', 'f/4'), '0.6 m') },
    {
      title: 'the fill is beside the lens',
      plan: two('meters: f/8, at: { angle: 0 deg left, distance: 2.8 m, height: 1.7 m }', '0.6 m'),
    },
    { title: 'far off the wall', plan: two(copied, '3.5 m') },
    { title: 'nobody minds', plan: two(copied, '0.6 m', ', shadow: any') },
  ],

  needs: (context) => (context.set.lit.length < 2 ? 'silent' : shadowsMissing(context)),

  detect: (context) => {
    const [strong, weak] = byLight(context.set.shadows)
    if (strong === undefined || weak === undefined) return []
    const depths = [strong, weak].map((one) => ({
      value: one.depth.stops,
      unit: 'stop' as const,
      u: context.u(one.depth),
    }))
    return [
      {
        pointer: lightPointer(weak.light, 'at'),
        also: [{ pointer: lightPointer(strong.light, 'at'), says: 'the other shadow is thrown from here' }],
        beyond: beyondOf(weak, context),
        measured: { 'first-depth': depths[0]!, 'second-depth': depths[1]! },
        cause: `the shadows that ${strong.light} and ${weak.light} throw`,
        strong,
        weak,
      },
    ]
  },

  tell: ({ strong, weak }, words, context) => ({
    message: `two shadows show on the backdrop: ${sideText(strong, context)}, ${depthText(strong.depth.stops, words)}, from ${strong.light}, and ${sideText(weak, context)}, ${depthText(weak.depth.stops, words)}, from ${weak.light}`,
    why: `each light fills the other's shadow by no more than it gives; the subject stands ${words.length(context.plan.backdrop!.behind)} before the backdrop`,
  }),

  mend: ({ weak }, words, context) =>
    inTurn(
      () => backdropLit(weak, context, words),
      () => weaker(weak, words, context),
      () => moreSeparation(weak, context, words, undefined),
      () => [
        { title: `${weak.light} beside the lens`, gives: 'the subject covers the shadow that it throws' },
      ],
      () => needsLight(weak, context, words),
    ),

  inShort: ({ strong, weak }) => `the shadows of ${strong.light} and ${weak.light} both show on the backdrop`,
})

/** Stops down, at most: under this it is no fill. */
const most = 3

const weaker = (weak: ShadowSeen, words: Words, context: RuleContext): readonly Mend[] => {
  const { set, plan, limits } = context
  const knob = { knob: 'strength' as const, light: weak.light }
  const least = limits.depth! - shows.stops - inside(context.u(weak.depth))
  const gone = (after: typeof set) => showsBy(after, weak.light) <= least
  const by = firstWhere(0, -most, (to) => gone(set.with({ knob, to })), 0.1)
  const made = by === undefined ? undefined : turn(plan, knob, by)
  if (made === undefined || made.short > 0) return []
  const after = set.with(made.change)
  return gone(after)
    ? [
        {
          title: made.title,
          gives: `its shadow no longer shows, ${weak.light} ${words.howMany(made.change.to)} down`,
          costs: 'a darker shadow side',
          after,
        },
      ]
    : []
}
