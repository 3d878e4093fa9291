import type { Light } from '../../language/plan.js'
import { apart } from '../apart.js'
import { turn } from '../gear.js'
import { backdropMissing, firstMissing } from '../known.js'
import { onBackdrop } from '../on-surface.js'
import { placePointer } from '../place-pointer.js'
import { type Evidence, inTurn, type Mend, type RuleContext, rule } from '../rule.js'
import { byStops, inside, solveSet } from '../solving.js'
import { reached } from '../tiers.js'
import type { Words } from '../words.js'
import { backdropLights, causeOnBackdrop, strongestAt } from './on-the-backdrop.js'
import { atPlaceOf } from './solve-level.js'

const greyAt = (beside: string, before: string, wanted = 'backdrop: grey'): string => `plan: 1
title: Grey paper with one head on it
camera: { lens: 85 mm, at: { distance: 3 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: grey paper, behind: 2 m }
lights:
  key: { unit: head 400 Ws, modifier: softbox 60 x 90 cm, meters: f/8, at: { angle: 35 deg right, distance: 1.3 m, height: 2 m } }
  paper: { role: backdrop, unit: head 200 Ws, modifier: softbox 60 x 90 cm, meters: f/8, at: { left: ${beside}, before-backdrop: ${before}, height: 1.6 m } }
wanted: { ${wanted}, framing: head and shoulders }
`

interface Uneven extends Evidence {
  readonly spread: number
  readonly limit: number
  readonly u: number
  readonly brightest: string
  readonly darkest: string
  readonly from: string
}

export const backdropUneven = rule<Uneven>({
  id: 'backdrop-uneven',
  family: 'backdrop',
  level: 'warning',
  finds: 'a backdrop that runs from bright to dark across the frame',
  limits: {
    note: { value: 2 / 3, unit: 'stop', says: 'between brightest and darkest in frame: note over this' },
    warning: { value: 1, unit: 'stop', says: 'between brightest and darkest in frame: warning over this' },
  },
  why: 'A light near one side of a backdrop lights the near end much more than the far one. A gradient that was not meant pulls the eye and cannot be matched from frame to frame. White backdrops are judged by their darkest point instead.',
  formula: 'log2(brightest H / darkest H) over the part of the backdrop in frame, flat and facing out',
  sources: [
    { kind: 'derived', says: 'inverse square and cosine, from the source as large as it is' },
    { kind: 'common practice', says: 'even enough: half a stop to two thirds over a plain backdrop' },
  ],
  basis: 'incident metering, ISO 2720; the limits are common practice',
  fires: [
    { title: 'one head close to the paper at the side', plan: greyAt('1.2 m', '60 cm') },
    { title: 'somewhat further off', plan: greyAt('1.2 m', '1.4 m') },
    {
      title: 'even enough for most, not for this plan',
      plan: greyAt('20 cm', '2.5 m', 'backdrop: grey, backdrop-even: 1/4 stop'),
    },
  ],
  passes: [
    { title: 'from well before the paper', plan: greyAt('10 cm', '3 m') },
    { title: 'just even enough', plan: greyAt('20 cm', '2.5 m') },
  ],

  needs: (context) => {
    const { backdrop, backdropEven } = context.plan.wanted
    if (context.plan.backdrop === undefined && backdrop === undefined) return 'silent'
    if (backdropEven === undefined) {
      if (backdrop?.tone === 'white' || backdrop?.tone === 'black' || backdrop?.tone === 'any')
        return 'silent'
      if (backdrop === undefined)
        return {
          because: 'the plan does not say what backdrop is wanted',
          enable: { pointer: '/wanted/backdrop', text: 'backdrop: grey' },
        }
    }
    return firstMissing(() => backdropMissing(context, 'whole'))
  },

  detect: (context) => {
    const { set, plan, limits, u } = context
    const view = set.backdropView
    if (view === undefined) return []
    const spread = view.spread.stops
    const uSpread = u({ ...view.spread, rendering: 0 })
    const even = plan.wanted.backdropEven
    const tier = reached(
      (limit) => spread - limit,
      uSpread,
      even === undefined
        ? [
            { level: 'note', limit: limits.note! },
            { level: 'warning', limit: limits.warning! },
          ]
        : [{ level: 'warning', limit: even }],
    )
    const light = strongestAt(set, view.brightest)
    return [
      {
        pointer: light === undefined ? '/backdrop' : placePointer(light),
        also: even === undefined ? [] : [{ pointer: '/wanted/backdrop-even', says: 'this is wanted' }],
        beyond: tier.beyond,
        level: tier.level,
        measured: { spread: { value: spread, unit: 'stop', u: uSpread, limit: tier.limit, side: 'at-most' } },
        cause: causeOnBackdrop(set, view.brightest),
        spread,
        limit: tier.limit,
        u: uSpread,
        brightest: view.brightest.where,
        darkest: view.darkest.where,
        from: light?.name ?? 'the light',
      },
    ]
  },

  tell: ({ spread, limit, brightest, darkest, from }, words, { set }) => {
    const view = set.backdropView!
    const figures = apart(spread, limit, words)
    const tones = [view.brightest, view.darkest].map(({ srgb }) => words.tone(srgb)) as [string, string]
    const word = (tone: string): string => tone.replace(/ \(.*$/, '')
    // Two tones of one name are told apart by their figures alone.
    if (word(tones[0]) === word(tones[1]))
      for (const i of [0, 1] as const) tones[i] = tones[i].replace(/^.*\((.*)\)$/, '$1')
    return {
      message: `the backdrop runs from ${tones[0]} at its ${brightest} to ${tones[1]} at its ${darkest}, ${figures[0]} apart, most of it from ${from}`,
      why: `${figures[1]} is the limit over what the camera sees of it`,
    }
  },

  mend: (evidence, words, context) => {
    const { set, plan } = context
    const view = set.backdropView!
    const own = backdropLights(set)
    const light = strongestAt(set, view.brightest)
    if (light === undefined) return []
    return own.includes(light)
      ? inTurn(
          () => wider(evidence, light, words, context),
          () => further(evidence, light, words, context),
          () => mirrored(evidence, light, words, context),
        )
      : [
          {
            title: `a light of its own for the backdrop, on ${words.list([plan.backdrop!.surface.name])} from both sides`,
            gives: `the spill of ${light.name} then counts for less`,
          },
        ]
  },
})

const spreadOf = (set: RuleContext['set']): number | undefined => set.backdropView?.spread.stops

/** Zoom as wide as it goes, if that helps. */
const wider = (
  { spread, limit }: Uneven,
  light: Light,
  words: Words,
  { set, plan }: RuleContext,
): readonly Mend[] => {
  const turned =
    light.modifier === undefined ? turn(plan, { knob: 'zoom', light: light.name }, 0.001) : undefined
  const changed = turned && set.with(turned.change)
  const after = changed && spreadOf(changed)
  return changed === undefined || after === undefined || after > spread - Math.max(0.1, (spread - limit) / 3)
    ? []
    : [
        {
          title: turned!.title,
          gives: `${words.howMany(after)} from brightest to darkest${after > limit ? ', still over the limit' : ''}`,
          after: changed,
          ...(after > limit ? { partial: true } : {}),
        },
      ]
}

/** Metres that a backdrop light keeps clear of the subject; past it, it would light the sitter. */
const clear = 0.3

const further = (
  { limit, u }: Uneven,
  light: Light,
  words: Words,
  { set, plan }: RuleContext,
): readonly Mend[] => {
  const { backdrop } = set.scene
  const front = set.scene.lights.get(light.name)?.front
  if (backdrop === undefined || front === undefined) return []
  const from = backdrop.y - front.centre[1]
  const knob = { knob: 'before-backdrop', light: light.name } as const
  const view = set.backdropView!
  const bright = atPlaceOf(view.brightest, set)
  const dark = atPlaceOf(view.darkest, set)
  const solved = solveSet(
    set,
    from,
    Math.max(from, Math.min(4, plan.backdrop!.behind - clear)),
    (one, before) => one.with({ knob, to: before }),
    spreadOf,
    limit - inside(u),
    {
      guide: (other) => {
        const [most, least] = [bright(other), dark(other)]
        return most === undefined || least === undefined ? undefined : most - least
      },
    },
  )
  if (solved === undefined || solved < from) return []
  const turned = turn(plan, knob, solved)
  const changed = turned && set.with(turned.change)
  const after = changed && spreadOf(changed)
  if (turned === undefined || changed === undefined || after === undefined) return []
  const loses = changed.backdropView!.middle.overCamera.stops - view.middle.overCamera.stops
  return [
    {
      title: turned.title,
      gives: `${words.howMany(after)} from brightest to darkest`,
      ...(loses < -0.1 ? { costs: `${words.howMany(loses)} more power for the same level` } : {}),
      // Its level is to be made up for; alone, it would only be told as too dark.
      after: held(changed, light, -loses),
    },
  ]
}

const held = (set: RuleContext['set'], { name }: Light, stops: number): RuleContext['set'] =>
  set.strength(name)?.from === 'meters' ? set : set.with(...byStops([name], stops))

/** A light of the same kind at the same place on the other side: its light is this one's, seen in the mirror. */
const mirrored = ({ limit }: Uneven, light: Light, words: Words, { set }: RuleContext): readonly Mend[] => {
  const view = set.backdropView!
  const light2 = (at: readonly [number, number, number]): number | undefined =>
    set.unshadowed(onBackdrop([-at[0], at[1], at[2]]), [light.name])?.luxSeconds
  const sums = view.samples.flatMap(({ at }) => {
    const other = light2(at)
    const now = set.unshadowed(onBackdrop(at), 'all')?.luxSeconds
    return other === undefined || now === undefined ? [] : [now + other]
  })
  if (sums.length < view.samples.length) return []
  const after = Math.log2(Math.max(...sums) / Math.min(...sums))
  return after > view.spread.stops - 0.1
    ? []
    : [
        {
          title: `a second light like ${light.name}, mirrored on the other side`,
          gives: `${words.howMany(after)} from brightest to darkest${after > limit ? '; move both further from the backdrop as well' : ''}`,
          costs: 'a second light, and both down to keep the level',
        },
      ]
}
