import type { Camera } from '../../language/plan.js'
import { project } from '../../scene/camera-view.js'
import { computeSet } from '../../set/compute-set.js'
import type { ComputedSet } from '../../set/computed-set.js'
import type { Knob } from '../../set/knobs.js'
import { roundForTape } from '../../units/length.js'
import { inDegrees, type Metres } from '../../units/quantity.js'
import { turn } from '../gear.js'
import { cameraMisplaced } from '../known.js'
import { whom } from '../place-words.js'
import { type Evidence, inTurn, type Mend, type RuleContext, rule } from '../rule.js'
import { solveFor } from '../solving.js'
import type { Words } from '../words.js'
import { frameCuts, type Side, worstCut } from './frame-cuts.js'

const frame = (lens: string, distance: string, framing: string, height = '1.1 m'): string => `plan: 1
title: One person, framed
camera: { lens: ${lens}, at: { distance: ${distance}, height: ${height} }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person, height: 1.8 m }
lights:
  key: { unit: head 400 Ws, modifier: octa 120 cm, meters: f/8, at: { angle: 30 deg left, distance: 2 m, height: 2.2 m } }
wanted: { framing: ${framing} }
`

interface Cropped extends Evidence {
  /** Metres cut off at the subject, most first. */
  readonly sides: readonly { readonly side: Side; readonly cut: number }[]
}

export const subjectCropped = rule<Cropped>({
  id: 'subject-cropped',
  family: 'frame',
  level: 'warning',
  finds: 'a frame too tight for the framing that is wanted',
  limits: {
    cut: { value: 0, unit: 'cm', says: 'of what the wanted framing holds, cut off at the edge of the frame' },
  },
  why: 'Small rooms and long lenses cut feet and elbows. How far back the camera must go follows from the lens alone.',
  formula:
    'frame at the subject = sensor side × (distance − f) / f, against the extent of the wanted framing',
  sources: [
    { kind: 'derived', says: 'thin lens: a frame of 2.1 m with 85 mm on 36 mm needs 5 m' },
    { kind: 'common practice', says: 'how far down each framing reaches, as shares of the height' },
  ],
  basis: 'thin lens; proportions of a person are common practice',
  fires: [
    { title: 'full length with 85 mm from 3 m', plan: frame('85 mm', '3 m', 'full length') },
    { title: 'feet just cut', plan: frame('85 mm', '4.1 m', 'full length') },
    { title: 'the top of the head is cut', plan: frame('85 mm', '4 m', 'waist', '90 cm') },
  ],
  passes: [
    { title: 'head and shoulders with room', plan: frame('85 mm', '2.5 m', 'head and shoulders', '1.6 m') },
    { title: 'full length, just held', plan: frame('85 mm', '5.2 m', 'full length', '95 cm') },
  ],

  needs: ({ plan, set }) =>
    cameraMisplaced(set)
      ? 'silent'
      : plan.wanted.framing === undefined
        ? {
            because: 'the plan does not say what framing is wanted',
            enable: { pointer: '/wanted/framing', text: 'framing: head and shoulders' },
          }
        : undefined,

  detect: ({ set, limits }) => {
    const sides = frameCuts(set)
      .filter(({ cut }) => cut - limits.cut! / 100 > 1e-6)
      .sort((a, b) => b.cut - a.cut)
    if (sides.length === 0) return []
    return [
      {
        pointer: '/camera/at/distance',
        also: [
          { pointer: '/wanted/framing', says: 'this framing is wanted' },
          { pointer: '/camera/lens', says: 'with this lens' },
        ],
        beyond: 'certain',
        measured: Object.fromEntries(
          sides.map(({ side, cut }) => [
            `cut-${side}`,
            { value: cut * 100, unit: 'cm' as const, limit: limits.cut!, side: 'at-most' as const },
          ]),
        ),
        sides,
      },
    ]
  },

  tell: ({ sides }, words, { plan }) => ({
    message: `${cutText(sides, words)} cut off: ${plan.wanted.framing} is wanted`,
    why: `${Math.round(plan.camera.lens * 1000)} mm at ${words.length(plan.camera.at.distance)}, ${plan.camera.frame} frame`,
  }),

  mend: (evidence, words, context) =>
    inTurn(
      () => aimed(words, context),
      () => raised(evidence, words, context),
      () => further(words, context),
      () => shorterLens(context),
      () => turnedFrame(context),
    ),

  inShort: ({ sides }, words) => `${cutText(sides, words)} cut off`,
})

const cutText = (sides: Cropped['sides'], words: Words): string => {
  const parts = sides.map(({ side, cut }) => `${words.small(cut)} ${edgeName[side]}`)
  return `${words.list(parts)} ${parts.length === 1 && /^1 /.test(parts[0]!) ? 'is' : 'are'}`
}

const edgeName: Readonly<Record<Side, string>> = {
  left: 'at the camera-left edge',
  right: 'at the camera-right edge',
  top: 'at the top',
  bottom: 'at the bottom',
}

/** Two centimetres to spare. */
const spare = -0.02

const solved = (set: ComputedSet, knob: Knob, from: number, to: number): number | undefined =>
  solveFor(from, to, (value) => worstCut(set.with({ knob, to: value })), spare)

/** The set with another camera, everything else as it is. */
const withCamera = ({ plan }: RuleContext, changes: Partial<Camera>): ComputedSet =>
  computeSet({ ...plan, camera: { ...plan.camera, ...changes } })

/** Tilted more than this, upright lines lean for everyone to see. Common practice, no source. */
const leans = 10

/** The camera pointed at the face, where that alone holds everything. */
const aimed = (words: Words, context: RuleContext): readonly Mend[] => {
  const { aim } = context.plan.camera
  if (aim.at === 'point' && aim.point === 'subject' && aim.feather === undefined) return []
  const after = withCamera(context, { aim: { at: 'point', point: 'subject', feather: undefined } })
  if (worstCut(after) > 1e-6) return []
  const tilt = Math.abs(Math.asin(after.scene.camera.forward[2]))
  return [
    {
      title: 'camera.aim → subject',
      gives: `the framing fits from the same place: the camera is pointed at ${whom(context.plan)}`,
      ...(inDegrees(tilt) > leans
        ? { costs: `it tilts by ${words.degrees(tilt)}, and upright lines lean` }
        : {}),
      after,
    },
  ]
}

/** Where one end is cut and the other has room, the camera only stands too high or too low. */
const raised = (_: Cropped, words: Words, context: RuleContext): readonly Mend[] => {
  const { set, plan } = context
  if (plan.camera.aim.at !== 'level') return []
  const cut = Object.fromEntries(frameCuts(set).map((one) => [one.side, one.cut])) as Record<Side, number>
  if (cut.left > 0 || cut.right > 0 || cut.top + cut.bottom > 2 * spare) return []
  if (cut.top <= 0 && cut.bottom <= 0) return []
  // As little as will do, with a little air where there is room for it.
  const room = Math.min(air, -Math.min(cut.top, cut.bottom) - Math.max(cut.top, cut.bottom))
  const by = cut.top > cut.bottom ? cut.top + room / 2 : -cut.bottom - room / 2
  const style = plan.lengths === 'feet' ? 'feet' : 'metric'
  const to = roundForTape((plan.camera.at.height + by) as Metres, style, by > 0 ? 'more' : 'less')
  const moved = to - plan.camera.at.height
  return to < lowest
    ? []
    : [
        {
          title: `camera.at.height → ${words.length(to)}`,
          gives: `the framing fits with the camera ${words.small(Math.abs(moved))} ${moved > 0 ? 'higher' : 'lower'}, nothing else changed`,
          after: withCamera(context, { at: { ...plan.camera.at, height: to } }),
        },
      ]
}

/** Metres left between subject and frame. */
const air = 0.1
/** Lower than this no one holds a camera. */
const lowest = 0.2

const further = (words: Words, { set, plan }: RuleContext): readonly Mend[] => {
  const { distance } = plan.camera.at
  const to = solved(set, { knob: 'camera-distance' }, distance, 40)
  if (to === undefined || to <= distance) return []
  const turned = turn(plan, { knob: 'camera-distance' }, to)
  return turned === undefined || turned.short > 0
    ? []
    : [
        {
          title: turned.title,
          gives: 'the framing fits',
          costs: `${words.length(turned.change.to - distance)} more room, and more of the backdrop in frame`,
          after: set.with(turned.change),
        },
      ]
}

const shorterLens = ({ set, plan }: RuleContext): readonly Mend[] => {
  const to = solved(set, { knob: 'lens' }, plan.camera.lens, 0.012)
  const turned = to === undefined ? undefined : turn(plan, { knob: 'lens' }, to)
  return to === undefined || turned === undefined || turned.short > 0
    ? []
    : [
        {
          title: `${turned.title}, or any lens up to ${Math.floor(to * 1000)} mm`,
          gives: 'the framing fits from the same place',
          costs: 'more of the backdrop in frame',
          after: set.with(turned.change),
        },
      ]
}

/** The frame turned by a quarter, where that alone holds everything. */
const turnedFrame = (context: RuleContext): readonly Mend[] => {
  const { set, plan } = context
  const { camera } = set.scene
  const now = frameCuts(set)
  const depth = project(camera, set.scene.subject.tapeFrom).depth
  const gains = (camera.tanHalfHeight - camera.tanHalfWidth) * depth
  const after = now.map(({ side, cut }) => (side === 'left' || side === 'right' ? cut - gains : cut + gains))
  return after.every((cut) => cut <= 0)
    ? [
        {
          title: `camera.frame → ${plan.camera.frame === 'vertical' ? 'horizontal' : 'vertical'}`,
          gives: 'the framing fits from the same place',
          after: withCamera(context, { frame: plan.camera.frame === 'vertical' ? 'horizontal' : 'vertical' }),
        },
      ]
    : []
}
