import { linearOfCode } from '../../picture/tone.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { backdropMissing } from '../known.js'
import { onBackdrop } from '../on-surface.js'
import { placePointer } from '../place-pointer.js'
import { whom } from '../place-words.js'
import { type Evidence, inTurn, type Mend, rule } from '../rule.js'
import { inside } from '../solving.js'
import { reached } from '../tiers.js'
import { backdropLights, causeOnBackdrop, strongestAt, surfaceText, toneU } from './on-the-backdrop.js'
import { toLevel } from './to-level.js'

const black = (behind: string, surface: string, modifier: string): string => `plan: 1
title: Low key
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: ${surface}, behind: ${behind} }
lights:
  key: { unit: head 400 Ws, modifier: ${modifier}, meters: f/8, at: { angle: 40 deg left, distance: 1.2 m, height: 2 m } }
wanted: { backdrop: black, framing: head and shoulders }
`

interface NotBlack extends Evidence {
  readonly where: string
  readonly srgb: number
  readonly limit: number
  readonly by: number
  readonly u: number
  readonly from: string
}

export const backdropNotBlack = rule<NotBlack>({
  id: 'backdrop-not-black',
  family: 'backdrop',
  level: 'warning',
  finds: 'a backdrop wanted black that records as dark grey, with its folds and creases',
  limits: {
    note: { value: 20, unit: 'sRGB', says: 'at the brightest point in frame: note over this' },
    warning: { value: 30, unit: 'sRGB', says: 'at the brightest point in frame: warning over this' },
  },
  why: 'Black cloth and paper still send back one to five hundredths of the light. What spills on them lifts them to a grey that shows creases, and no power setting helps, because the face follows.',
  formula: 'x = log2(H·S / (C·N²)) at the brightest point in frame; it records ρ·2^x, through the sRGB curve',
  sources: [
    { kind: 'standard', says: 'sRGB: IEC 61966-2-1; incident metering: ISO 2720' },
    { kind: 'derived', says: 'a black of 0.03 lit as the face records sRGB 48, two stops under it 21' },
    { kind: 'memory', says: 'reflectance of black paper and cloths' },
  ],
  basis: 'incident metering, ISO 2720; sRGB, IEC 61966-2-1',
  fires: [
    { title: 'black paper close behind', plan: black('60 cm', 'black paper', 'softbox 60 x 90 cm') },
    { title: 'a little too close', plan: black('1.2 m', 'black paper', 'softbox 60 x 90 cm') },
  ],
  passes: [
    { title: 'velvet well behind', plan: black('2.5 m', 'black velvet', 'softbox 60 x 90 cm') },
    { title: 'just far enough', plan: black('2.6 m', 'black paper', 'softbox 60 x 90 cm') },
  ],

  needs: (context) =>
    context.plan.wanted.backdrop?.tone === 'black' ? backdropMissing(context, 'at least') : 'silent',

  detect: (context) => {
    const { set, limits } = context
    const view = set.backdropView
    if (view === undefined) return []
    const { brightest } = view
    const u = toneU(context, brightest.overCamera)
    const over = (code: number): number => Math.log2(brightest.linear / linearOfCode(code))
    const tier = reached(over, u, [
      { level: 'note', limit: limits.note! },
      { level: 'warning', limit: limits.warning! },
    ])
    const light = strongestAt(set, brightest)
    return [
      {
        pointer: light === undefined ? '/backdrop' : placePointer(light),
        also: [{ pointer: '/wanted/backdrop', says: 'black is wanted here' }],
        beyond: tier.beyond,
        level: tier.level,
        measured: {
          brightest: { value: brightest.srgb, unit: 'sRGB', limit: tier.limit, side: 'at-most' },
          'brightest-over-limit': { value: tier.beyond.stops, unit: 'stop', u, limit: 0, side: 'at-most' },
        },
        cause: causeOnBackdrop(set, brightest),
        where: brightest.where,
        srgb: brightest.srgb,
        limit: tier.limit,
        by: tier.beyond.stops,
        u,
        from: light?.name ?? 'the light',
      },
    ]
  },

  tell: ({ where, srgb, limit, by, from }, words, { plan, set }) => ({
    message: `the backdrop records ${words.tone(srgb)} at its ${where}, ${words.howMany(by)} over black (sRGB ${limit}), lit by ${from}`,
    why: [
      surfaceText(plan.backdrop!.surface),
      ...thrownThere(set),
      ...(plan.room === undefined ? ['light off walls and ceiling would come on top'] : []),
    ].join('; '),
  }),

  mend: ({ by, u }, words, context) => {
    const { set, plan } = context
    const view = set.backdropView!
    const light = strongestAt(set, view.brightest)
    const change = -(by + inside(u))
    const reflectance = plan.backdrop!.surface.reflectance * 2 ** change
    const fitted: readonly Mend[] =
      light === undefined || backdropLights(set).includes(light) || light.grid !== undefined
        ? []
        : [
            {
              title: `an egg-crate grid on ${light.name}, or a flag between ${light.name} and the backdrop`,
              gives: `takes its spill off the backdrop and leaves ${whom(plan)} alone`,
              costs: 'a grid takes up to a stop of the light as well',
            },
          ]
    return inTurn(
      () => toLevel(context, words, (changed) => changed.backdropView?.brightest, change),
      () => fitted,
      () => [
        {
          title: `a darker backdrop: reflectance ${reflectance.toFixed(3)} or less`,
          gives: 'black where it is',
        },
      ],
    )
  },
})

/** Less than this share of the light is not worth telling. */
const worthTelling = 0.1

/** What of the light there comes by way of surfaces. */
const thrownThere = (set: ComputedSet): readonly string[] => {
  const lit = set.unshadowed(onBackdrop(set.backdropView!.brightest.at), 'all')
  if (lit === undefined) return []
  return (['room', 'panels'] as const).flatMap((way) => {
    const share = lit.byPath[way] / lit.luxSeconds
    return share < worthTelling ? [] : [`${Math.round(100 * share)} % of its light comes off the ${way}`]
  })
}
