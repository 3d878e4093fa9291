import { deepBlack, meanForLift, veiled, veilLift } from '../../picture/glare.js'
import { srgbCode } from '../../picture/tone.js'
import type { Haze } from '../../set/wrap-and-haze.js'
import { backdropLights, causeOnBackdrop } from '../backdrop/on-the-backdrop.js'
import { turnLight } from '../gear.js'
import { stopsToChange } from '../own-lights.js'
import { settingPointer } from '../place-pointer.js'
import { type Evidence, inTurn, type Mend, type RuleContext, rule } from '../rule.js'
import { inside } from '../solving.js'
import { reached } from '../tiers.js'
import type { Words } from '../words.js'
import { seenFromLens } from './into-lens.js'
import { hazeLimits } from './limits.js'

const field = (meters: string, lens = '85 mm', wanted = 'backdrop: white'): string => `plan: 1
title: Headshot before a bright paper
camera: { lens: ${lens}, frame: horizontal, at: { distance: 2.5 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: white paper, width: 3.55 m, behind: 3 m }
lights:
  key: { unit: head 400 Ws, modifier: softbox 60 x 90 cm, meters: f/8, at: { angle: 35 deg left, distance: 1.3 m, height: 2 m } }
  paper-left: { role: backdrop, unit: head 600 Ws, modifier: standard reflector, meters: ${meters}, at: { left: 2.2 m, before-backdrop: 1.6 m, height: 1.6 m } }
  paper-right: { like: paper-left, mirrored: true }
wanted: { ${wanted}, shadow: any }
`

interface Veiled extends Evidence {
  readonly haze: Haze
  readonly limit: number
  readonly u: number
}

export const veilingGlare = rule<Veiled>({
  id: 'veiling-glare',
  family: 'wrap',
  level: 'warning',
  finds: 'so bright a field in and round the frame that the lens lays a veil over the shadows',
  limits: {
    note: { value: hazeLimits.note, unit: 'stop', says: 'lift of a black that records 0.02, for a note' },
    warning: {
      value: hazeLimits.warning,
      unit: 'stop',
      says: 'lift of a black that records 0.02, for a warning',
    },
  },
  why: 'Lens and body scatter a little of all the light that comes in over the whole picture. Before a bright field, dark hair turns grey and the picture looks flat, and no lens hood helps against what is in the frame itself.',
  formula:
    'log2((0.02 + V·M) / 0.02), V = 1.5 % within a factor of two, M the mean of what is recorded, not clipped: three quarters the frame, one quarter what lies round it within 30 degrees, less with the angle',
  sources: [
    { kind: 'standard', says: 'veiling glare index, as a share of an extended white field: ISO 9358' },
    {
      kind: 'memory',
      says: 'an index of 1 to 3 % is usual; how much the surround counts is taken, not measured',
    },
  ],
  basis:
    'veiling glare index, the measure of ISO 9358; its 1.5 % and the limits from memory and common practice',
  fires: [
    { title: 'paper two stops over the key fills the frame', plan: field('f/11') },
    { title: 'paper three stops over the key', plan: field('f/16') },
  ],
  passes: [
    { title: 'paper level with the key', plan: field('f/5.6') },
    { title: 'paper a stop under, no white wanted', plan: field('f/4', '85 mm', 'backdrop: any') },
  ],

  // A field that is not bright, with no light that looks at the lens, cannot veil: it need not be looked at.
  needs: ({ set, limits }) => {
    // A light that cannot stand where it is placed is told as that.
    if (set.scene.faults.length > 0) return 'silent'
    const bright = set.backdropView?.brightest.linear ?? 0
    const least = meanForLift(deepBlack, Math.min(limits.note!, limits.warning!)) / 2
    return bright >= least || set.lit.some(({ name }) => seenFromLens(set.scene, name) !== undefined)
      ? undefined
      : 'silent'
  },

  detect: (context) => {
    const { set, limits, u: uOf } = context
    const { haze, backdropView: view } = set
    if (haze === undefined) return []
    const value = haze.lift.stops
    const u = uOf(haze.lift)
    const { level, limit, beyond } = reached((most) => value - most, u, [
      { level: 'note', limit: limits.note! },
      { level: 'warning', limit: limits.warning! },
    ])
    const strongest = [...haze.byLight].sort((a, b) => b[1] - a[1])[0]?.[0]
    const own = backdropLights(set)
    const light = own[0] ?? (strongest === undefined ? undefined : set.plan.lights.get(strongest))
    return [
      {
        pointer: light === undefined ? '/backdrop' : settingPointer(light),
        also: own.slice(1).map((one) => ({ pointer: settingPointer(one), says: 'and this light' })),
        beyond,
        level,
        measured: {
          lift: { value, unit: 'stop', u, limit, side: 'at-most' },
          mean: { value: haze.mean, unit: 'share' },
        },
        ...(view === undefined ? {} : { cause: causeOnBackdrop(set, view.middle) }),
        scale: { value, u, needs: limit, against: 'over a deep black' },
        haze,
        limit,
        u,
      },
    ]
  },

  tell: ({ haze, limit }, words) => ({
    message: `the shadows turn grey: light scattered in the lens lifts a deep black by ${words.howMany(haze.lift.stops)}, ${words.howMany(limit)} is the limit`,
    why: `black of sRGB ${srgbCode(deepBlack)} then records ${srgbCode(veiled(deepBlack, haze.mean))}; frame and surround are on the mean ${words.against(Math.log2(haze.mean), 'white')}, all that is over white counted in full, and the lens is taken as an ordinary one`,
  }),

  mend: (evidence, words, context) =>
    inTurn(
      () => lightsDown(evidence, words, context),
      () => masked(evidence, words),
    ),

  inShort: ({ haze }, words) => `haze lifts a deep black by ${words.howMany(haze.lift.stops)}`,
})

const lightsDown = (evidence: Veiled, words: Words, { set, plan }: RuleContext): readonly Mend[] => {
  const { haze, limit, u } = evidence
  const names = backdropLights(set).map((light) => light.name)
  const wanted = meanForLift(deepBlack, limit - inside(u))
  const by = stopsToChange(haze.byLight, names, Math.log2(wanted / haze.mean))
  if (by === undefined || by > -0.1) return []
  const turned = names.flatMap((light) => turnLight(plan, light, by) ?? [])
  if (turned.length === 0) return []
  const after = set.with(...turned.map((one) => one.change))
  return [
    {
      title: turned.map((one) => one.title).join(', '),
      gives: `a deep black lifted by ${words.howMany(after.haze?.lift.stops ?? 0)}`,
      after,
      ...(turned.some((one) => one.short > 0)
        ? { costs: 'the end of the range', partial: true as const }
        : {}),
    },
  ]
}

const masked = ({ haze }: Veiled, words: Words): readonly Mend[] => {
  const left = haze.mean - haze.backdropOutside
  const gain = haze.lift.stops - veilLift(deepBlack, left)
  return gain < 0.1
    ? []
    : [
        {
          title: 'the backdrop covered with black outside the frame, and a hood on the lens',
          gives: `a deep black lifted by ${words.howMany(veilLift(deepBlack, left))}`,
        },
      ]
}
