import { backdropMargins } from '../../picture/backdrop-in-frame.js'
import { computeSet } from '../../set/compute-set.js'
import type { ComputedSet } from '../../set/computed-set.js'
import type { Knob } from '../../set/knobs.js'
import { roundForTape } from '../../units/length.js'
import type { Metres } from '../../units/quantity.js'
import { worstCut } from '../frame/frame-cuts.js'
import { turn } from '../gear.js'
import { type Evidence, inTurn, type Mend, type RuleContext, rule } from '../rule.js'
import { solveFor } from '../solving.js'
import type { Words } from '../words.js'

const roll = (lens: string, width: string, frame: string, aside = '0 cm right'): string => `plan: 1
title: Full length on paper
camera: { lens: ${lens}, frame: ${frame}, at: { distance: 5 m, height: 1.1 m, aside: ${aside} }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: white paper, width: ${width}, height: 3.5 m, behind: 1 m, sweep: { front: 2.5 m } }
lights:
  key: { unit: head 400 Ws, modifier: octa 120 cm, meters: f/8, at: { angle: 30 deg left, distance: 2.5 m, height: 2.2 m } }
wanted: { framing: full length, backdrop: any }
`

type Side = 'left' | 'right' | 'top' | 'bottom'

interface Past extends Evidence {
  /** Metres past each edge, most first. */
  readonly sides: readonly { readonly side: Side; readonly past: number }[]
}

export const framePastBackdrop = rule<Past>({
  id: 'frame-past-backdrop',
  family: 'backdrop',
  level: 'warning',
  finds: 'a frame that sees past an edge of the backdrop: which edge, by how much',
  limits: {
    past: { value: 0, unit: 'cm', says: 'past an edge of the backdrop, in its plane' },
  },
  why: 'At the distance of the backdrop the frame is wider than at the subject. What lies beyond the roll is then in the picture, and the light stands there too.',
  formula: 'half the frame at the backdrop = distance from the camera × tan(half the angle of view)',
  sources: [
    { kind: 'derived', says: 'thin lens: frame at a distance = sensor side × (distance − f) / f' },
    { kind: 'derived', says: '50 mm on 23.6 × 15.7 mm, upright: 1.88 m wide at 6 m' },
  ],
  basis: 'thin lens, the frame carried to the backdrop',
  fires: [
    { title: 'half width roll and a short lens', plan: roll('50 mm', '1.35 m', 'vertical') },
    { title: 'lying frame, just too wide', plan: roll('80 mm', '2.6 m', 'horizontal') },
    { title: 'the camera stands to one side', plan: roll('85 mm', '2.72 m', 'horizontal', '30 cm right') },
  ],
  passes: [
    { title: 'full width roll, upright frame', plan: roll('70 mm', '2.72 m', 'vertical') },
    { title: 'just wide enough', plan: roll('80 mm', '2.72 m', 'horizontal') },
  ],

  needs: ({ plan }) =>
    plan.backdrop === undefined
      ? {
          because: 'the plan states no backdrop',
          enable: { pointer: '/backdrop', text: 'backdrop: { surface: white paper, behind: 2 m }' },
        }
      : plan.backdrop.sky !== undefined
        ? 'silent'
        : undefined,

  detect: ({ set, limits }) => {
    const sides = pastEdges(set, limits.past! / 100)
    if (sides.length === 0) return []
    return [
      {
        pointer: sides.some(({ side }) => side === 'left' || side === 'right')
          ? '/backdrop/width'
          : sides[0]!.side === 'top'
            ? '/backdrop/height'
            : '/backdrop/sweep/front',
        also: [{ pointer: '/camera/lens', says: 'seen with this lens' }],
        beyond: 'certain',
        measured: Object.fromEntries(
          sides.map(({ side, past }) => [
            `past-${side}`,
            { value: past * 100, unit: 'cm' as const, limit: limits.past!, side: 'at-most' as const },
          ]),
        ),
        sides,
      },
    ]
  },

  tell: ({ sides }, words, { set, plan }) => ({
    message: `the picture shows what lies beyond the backdrop: ${words.list(sides.map(({ side, past }) => `${words.small(past)} past ${edgeName[side]}`))}`,
    why: `${words.length(plan.backdrop!.width)} wide, ${words.length(set.scene.backdrop!.y - set.scene.camera.eye[1])} from the camera, seen with ${Math.round(plan.camera.lens * 1000)} mm`,
  }),

  mend: (_, words, context) =>
    inTurn(
      () => widerRoll(words, context),
      () => nearerBackdrop(words, context),
      () => longerLens(context),
      () => nearerCamera(words, context),
    ),

  inShort: ({ sides }, words) =>
    `the frame sees ${words.list(sides.map(({ side, past }) => `${words.small(past)} past ${edgeName[side]}`))}`,
})

const edgeName: Readonly<Record<Side, string>> = {
  left: 'its camera-left edge',
  right: 'its camera-right edge',
  top: 'its top edge',
  bottom: "the sweep's front edge",
}

/** Without a sweep the floor begins where the backdrop ends, and is no edge. */
const margins = (set: ComputedSet): readonly { readonly side: Side; readonly past: number }[] => {
  const past = backdropMargins(set.scene)
  if (past === undefined) return []
  const sides = [
    'left',
    'right',
    'top',
    ...(set.scene.backdrop?.sweepFront === undefined ? [] : ['bottom']),
  ] as Side[]
  return sides.map((side) => ({ side, past: past[side] }))
}

const pastEdges = (set: ComputedSet, limit: number) =>
  margins(set)
    .filter(({ past }) => past - limit > 1e-6)
    .sort((a, b) => b.past - a.past)

/** Two centimetres to spare. */
const spare = -0.02

const worst = (set: ComputedSet): number => Math.max(...margins(set).map(({ past }) => past))

/** The first value, away from today's, at which nothing is past an edge any more. */
const solved = (set: ComputedSet, knob: Knob, from: number, to: number): number | undefined =>
  solveFor(from, to, (value) => worst(set.with({ knob, to: value })), spare)

/** A tighter frame is no mend where it cuts off more of what the framing is to hold. */
const crops = (before: ComputedSet, after: ComputedSet): boolean =>
  before.plan.wanted.framing !== undefined && worstCut(after) > Math.max(worstCut(before), 0) + 1e-6

const longerLens = ({ set, plan }: RuleContext): readonly Mend[] => {
  const to = solved(set, { knob: 'lens' }, plan.camera.lens, plan.camera.lens * 6)
  const turned = to === undefined ? undefined : turn(plan, { knob: 'lens' }, to)
  const after = turned && set.with(turned.change)
  if (to === undefined || turned === undefined || after === undefined || turned.short > 0) return []
  if (crops(set, after)) return []
  return [
    {
      title: `${turned.title}, or from ${Math.ceil(to * 1000)} mm up`,
      gives: 'the frame lies inside the backdrop',
      costs: 'a tighter frame on the subject',
      after,
    },
  ]
}

const nearerCamera = (words: Words, { set, plan }: RuleContext): readonly Mend[] => {
  const { distance } = plan.camera.at
  const to = solved(set, { knob: 'camera-distance' }, distance, Math.min(distance, 0.8))
  const turned = to === undefined ? undefined : turn(plan, { knob: 'camera-distance' }, to)
  const after = turned && set.with(turned.change)
  if (turned === undefined || after === undefined || turned.short > 0 || turned.change.to >= distance)
    return []
  if (crops(set, after)) return []
  return [
    {
      title: turned.title,
      gives: 'the frame lies inside the backdrop',
      costs: `${words.length(distance - turned.change.to)} nearer: a tighter frame and a stronger perspective`,
      after,
    },
  ]
}

/** Paper that is wide enough, and high enough: the frame at its plane does not change with it. */
const widerRoll = (words: Words, { set, plan }: RuleContext): readonly Mend[] => {
  const { width, height } = plan.backdrop!
  const past = Object.fromEntries(margins(set).map((one) => [one.side, one.past])) as Partial<
    Record<Side, number>
  >
  const aside = Math.max(past.left ?? 0, past.right ?? 0)
  const above = past.top ?? 0
  if ((past.bottom ?? 0) > 0 || (aside <= 0 && above <= 0)) return []
  const wide = aside > 0 ? width + 2 * (aside - spare) : width
  const style = plan.lengths === 'feet' ? 'feet' : 'metric'
  const high = above > 0 ? roundForTape((height + above - spare) as Metres, style, 'more') : height
  if (wide > (plan.room?.width ?? most) || high > (plan.room?.height ?? most)) return []
  const turned = aside > 0 ? turn(plan, { knob: 'backdrop-width' }, wide) : undefined
  const roll = turned === undefined || turned.short > 0 ? undefined : turned
  const rounded = roundForTape(wide as Metres, style, 'more')
  const to = (roll?.change.to ?? (aside > 0 ? rounded : width)) as Metres
  return [
    {
      title: [
        ...(aside > 0 ? [roll?.title ?? `backdrop.width → ${words.length(to)}`] : []),
        ...(above > 0 ? [`backdrop.height → ${words.length(high)}`] : []),
      ].join(', '),
      gives: `the frame lies inside the backdrop${roll === undefined ? '' : `: ${words.length(wide)} is needed, and this is a common width of roll`}`,
      ...(aside > 0 && roll === undefined ? { costs: 'that is wider than rolls come' } : {}),
      after: computeSet({ ...plan, backdrop: { ...plan.backdrop!, width: to, height: high } }),
    },
  ]
}

/** Metres: beyond this it is a wall that is wanted. */
const most = 12

const nearerBackdrop = (words: Words, { set, plan }: RuleContext): readonly Mend[] => {
  const { behind } = plan.backdrop!
  const to = solved(set, { knob: 'behind' }, behind, Math.min(behind, 0.5))
  const turned = to === undefined ? undefined : turn(plan, { knob: 'behind' }, to)
  return turned === undefined || turned.short > 0 || turned.change.to >= behind
    ? []
    : [
        {
          title: turned.title,
          gives: 'the frame lies inside the backdrop',
          costs: `the subject ${words.length(behind - turned.change.to)} nearer its backdrop: shadow and wrap grow`,
          after: set.with(turned.change),
        },
      ]
}
