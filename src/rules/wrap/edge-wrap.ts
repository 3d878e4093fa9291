import { linearOfCode } from '../../picture/tone.js'
import type { ComputedSet } from '../../set/computed-set.js'
import type { WrapSide } from '../../set/wrap-and-haze.js'
import { backdropLights, causeOnBackdrop, overKey } from '../backdrop/on-the-backdrop.js'
import { turn, turnLight } from '../gear.js'
import { backdropMissing, firstMissing, keyMissing } from '../known.js'
import { stopsToChange } from '../own-lights.js'
import { settingPointer } from '../place-pointer.js'
import { type Evidence, inTurn, type Mend, type RuleContext, rule } from '../rule.js'
import { inside, solveSet } from '../solving.js'
import { reached } from '../tiers.js'
import { whose } from '../whose.js'
import type { Words } from '../words.js'
import { wrapLimits } from './limits.js'
import { mostWrapped } from './most-wrapped.js'

const headshot = (behind: string, each: string, width = '2.72 m'): string => `plan: 1
title: Headshot before a lit white paper
camera: { lens: 85 mm, at: { distance: 2.4 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: white paper, width: ${width}, behind: ${behind} }
lights:
  key: { unit: head 400 Ws, modifier: softbox 60 x 90 cm, meters: f/8, at: { angle: 35 deg left, distance: 1.3 m, height: 2 m } }
  paper-left: { role: backdrop, unit: head 400 Ws, modifier: standard reflector, meters: ${each}, at: { left: 1.6 m, before-backdrop: 1 m, height: 1.6 m } }
  paper-right: { like: paper-left, mirrored: true }
wanted: { framing: head and shoulders, backdrop: white, shadow: any }
`

interface EdgeWrap extends Evidence {
  readonly side: WrapSide
  readonly limit: number
  readonly u: number
}

export const edgeWrap = rule<EdgeWrap>({
  id: 'edge-wrap',
  family: 'wrap',
  level: 'warning',
  finds: "light from the backdrop that comes back round the subject's outline and eats it",
  limits: {
    note: { value: wrapLimits.note, unit: 'stop', says: 'against the key, for a note' },
    warning: { value: wrapLimits.warning, unit: 'stop', says: 'against the key, for a warning' },
  },
  why: 'A lit backdrop is a large light behind the subject. What it throws back lights cheeks, ears and hair just inside the outline; fine hair dissolves, and the edge turns pale and soft.',
  formula:
    'log2(H / H of the key reading), H what arrives last from the backdrop and its sweep on a flat surface at the outline, turned 45 degrees past that edge toward the backdrop; each side, the larger counts',
  sources: [
    { kind: 'derived', says: 'exposure from a matte surface: H = ∫ ρ·H_b·cos θ·cos θ_b / (π r²) dA' },
    {
      kind: 'common practice',
      says: 'a white backdrop a stop over the key wants two metres and more of separation',
    },
  ],
  basis:
    'light between matte surfaces, each part of the backdrop as it is lit; the limits are common practice',
  fires: [
    { title: 'two stops over the key, a step behind', plan: headshot('1.2 m', 'f/11') },
    { title: 'a stop over at a metre and a half', plan: headshot('1.5 m', 'f/8') },
  ],
  passes: [
    { title: 'a step behind, level with the key', plan: headshot('2.8 m', 'f/5.6') },
    { title: 'half a stop over, well separated', plan: headshot('3.2 m', 'f/6.3') },
  ],

  needs: (context) =>
    context.plan.backdrop === undefined || context.plan.backdrop.sky !== undefined
      ? 'silent'
      : firstMissing(
          () => backdropMissing(context, 'at least'),
          () => keyMissing(context),
        ),

  detect: (context) => {
    const { set, limits, u: uOf } = context
    const side = mostWrapped(set)
    if (side === undefined) return []
    const value = side.reKey.stops
    const u = uOf(side.reKey)
    const { level, limit, beyond } = reached((most) => value - most, u, [
      { level: 'note', limit: limits.note! },
      { level: 'warning', limit: limits.warning! },
    ])
    const own = backdropLights(set)
    const view = set.backdropView
    return [
      {
        pointer: own[0] === undefined ? '/backdrop/behind' : settingPointer(own[0]),
        also: [
          ...own.slice(1).map((light) => ({ pointer: settingPointer(light), says: 'and this light' })),
          ...(own.length === 0 ? [] : [{ pointer: '/backdrop/behind', says: 'so far behind the subject' }]),
        ],
        beyond,
        level,
        measured: { 're-key': { value, unit: 'stop', u, limit, side: 'at-most' } },
        ...(view === undefined ? {} : { cause: causeOnBackdrop(set, view.middle) }),
        scale: { value, u, needs: limit, against: 'against the key' },
        side,
        limit,
        u,
      },
    ]
  },

  tell: ({ side, limit }, words, context) => {
    const { set, plan } = context
    const middle = set.backdropView && overKey(context, set.backdropView.middle)
    return {
      message: `the backdrop's light eats into the outline at the ${side.side} edge of ${whose(side.figure, plan)}: ${words.stops(side.reKey.stops)} against the key where it turns away, ${words.stops(limit)} is the limit`,
      why: [
        ...(middle === undefined
          ? []
          : [`the middle of the backdrop ${words.against(middle.stops, 'the key')}`]),
        `${words.length(plan.backdrop!.behind)} behind the subject, ${words.length(plan.backdrop!.width)} wide`,
      ].join('; '),
    }
  },

  mend: (evidence, words, context) =>
    inTurn(
      () => lightsDown(evidence, words, context),
      () => furtherOff(evidence, words, context),
      () => lessInView(evidence, words, context),
    ),

  inShort: ({ side }, words) =>
    `light from the backdrop comes round the outline at ${words.stops(side.reKey.stops)} against the key`,
})

const wrapAfter = (set: ComputedSet): number | undefined => mostWrapped(set)?.reKey.stops

const targetOf = ({ limit, u }: EdgeWrap): number => limit - inside(u)

const lightsDown = (evidence: EdgeWrap, words: Words, { set, plan }: RuleContext): readonly Mend[] => {
  const names = backdropLights(set).map((light) => light.name)
  const { byLight, reKey } = evidence.side
  const by = stopsToChange(byLight, names, targetOf(evidence) - reKey.stops)
  if (by === undefined || by > -0.1) return []
  const turned = names.flatMap((light) => turnLight(plan, light, by) ?? [])
  if (turned.length === 0) return []
  const after = set.with(...turned.map((one) => one.change))
  const [wrap, middle] = [wrapAfter(after), after.backdropView?.middle]
  return wrap === undefined || middle === undefined
    ? []
    : [
        {
          title: turned.map((one) => one.title).join(', '),
          gives: `${words.stops(wrap)} against the key at the outline, the middle of the backdrop ${middle.linear >= linearOfCode(255) ? 'white' : words.tone(middle.srgb)}`,
          after,
          ...(turned.some((one) => one.short > 0)
            ? { costs: 'the end of the range', partial: true as const }
            : {}),
        },
      ]
}

/** Farther than this is another room. */
const most = 5

const furtherOff = (evidence: EdgeWrap, words: Words, { set, plan }: RuleContext): readonly Mend[] => {
  const from = plan.backdrop!.behind
  const at = (one: ComputedSet, behind: number) => one.with({ knob: { knob: 'behind' }, to: behind })
  const to = solveSet(set, from, from + most, at, wrapAfter, targetOf(evidence))
  const turned = turn(plan, { knob: 'behind' }, to ?? from + most)
  if (turned === undefined || turned.change.to - from < 0.1) return []
  const after = at(set, turned.change.to)
  const wrap = wrapAfter(after)
  if (wrap === undefined) return []
  const short = to === undefined || turned.short > 0
  return [
    {
      title: `subject further off: ${turned.title}, the backdrop lights left where they are before it`,
      gives: `${words.stops(wrap)} against the key at the outline`,
      costs: `${words.length(turned.change.to - from)} more room${short ? ': as far as it goes here' : ''}`,
      after,
      ...(short ? { partial: true as const } : {}),
    },
  ]
}

/** Only the paper that the frame sees need be white; the rest may be covered. */
const lessInView = ({ side }: EdgeWrap, words: Words, { set, plan }: RuleContext): readonly Mend[] => {
  const view = set.backdropView
  if (view === undefined) return []
  const width = 2 * Math.max(Math.abs(view.left), Math.abs(view.right))
  if (width > plan.backdrop!.width - 0.3) return []
  const wrap = wrapAfter(set.with({ knob: { knob: 'backdrop-width' }, to: width }))
  return wrap === undefined || wrap > side.reKey.stops - 0.1
    ? []
    : [
        {
          title: 'black v-flats on both sides, just outside the frame, that cover the backdrop beyond it',
          gives: `${words.stops(wrap)} against the key at the outline, with the paper ${words.length(width)} wide`,
        },
      ]
}
