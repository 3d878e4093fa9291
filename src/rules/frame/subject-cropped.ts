import { project } from '../../scene/camera-view.js'
import type { Vec3 } from '../../scene/vector.js'
import type { ComputedSet } from '../../set/computed-set.js'
import type { Knob } from '../../set/knobs.js'
import { turn } from '../gear.js'
import { type Advice, type Evidence, type RuleContext, rule } from '../rule.js'
import { solveFor } from '../solving.js'
import type { Words } from '../words.js'

const frame = (lens: string, distance: string, framing: string, height = '1.1 m'): string => `plan: 1
title: One person, framed
camera: { lens: ${lens}, at: { distance: ${distance}, height: ${height} }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person, height: 1.8 m }
lights:
  key: { unit: head 400 Ws, modifier: octa 120 cm, meters: f/8, at: { angle: 30 deg left, distance: 2 m, height: 2.2 m } }
wanted: { framing: ${framing} }
`

type Side = 'left' | 'right' | 'top' | 'bottom'

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

  needs: ({ plan }) =>
    plan.wanted.framing === undefined
      ? {
          because: 'the plan does not say what framing is wanted',
          enable: { pointer: '/wanted/framing', text: 'framing: head and shoulders' },
        }
      : undefined,

  detect: ({ set, limits }) => {
    const sides = cuts(set)
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
    message: `the frame cuts ${words.list(sides.map(({ side, cut }) => `${words.small(cut)} off ${edgeName[side]}`))} of what ${plan.wanted.framing} should hold`,
    why: `${Math.round(plan.camera.lens * 1000)} mm at ${words.length(plan.camera.at.distance)}, ${plan.camera.frame} frame`,
  }),

  mend: (evidence, words, context) => [
    ...raised(evidence, words, context),
    ...further(words, context),
    ...shorterLens(context),
    ...turnedFrame(context),
  ],
})

const edgeName: Readonly<Record<Side, string>> = {
  left: 'the camera-left edge',
  right: 'the camera-right edge',
  top: 'the top',
  bottom: 'the bottom',
}

/** Metres at the subject by which the corners of its box lie outside the frame; negative is room to spare. */
const cuts = (set: ComputedSet): readonly { readonly side: Side; readonly cut: number }[] => {
  const { camera, subject } = set.scene
  const { min, max } = subject.bounds
  // Seen from the middle of the subject, so that a deep box is not judged by its nearest corner.
  const y = (min[1] + max[1]) / 2
  const corners: readonly Vec3[] = [
    [min[0], y, min[2]],
    [max[0], y, min[2]],
    [min[0], y, max[2]],
    [max[0], y, max[2]],
  ]
  const seen = corners.map((corner) => project(camera, corner))
  const most = (of: (at: { x: number; y: number; depth: number }) => number) => Math.max(...seen.map(of))
  const across = (depth: number) => Math.max(depth, 0) * camera.tanHalfWidth
  const upward = (depth: number) => Math.max(depth, 0) * camera.tanHalfHeight
  return [
    { side: 'left', cut: most(({ x, depth }) => (-x - 1) * across(depth)) },
    { side: 'right', cut: most(({ x, depth }) => (x - 1) * across(depth)) },
    { side: 'top', cut: most(({ y: up, depth }) => (up - 1) * upward(depth)) },
    { side: 'bottom', cut: most(({ y: up, depth }) => (-up - 1) * upward(depth)) },
  ]
}

const worst = (set: ComputedSet): number => Math.max(...cuts(set).map(({ cut }) => cut))

/** Two centimetres to spare. */
const spare = -0.02

const solved = (set: ComputedSet, knob: Knob, from: number, to: number): number | undefined =>
  solveFor(from, to, (value) => worst(set.with({ knob, to: value })), spare)

/** Where one end is cut and the other has room, the camera only stands too high or too low. */
const raised = (_: Cropped, words: Words, { set, plan }: RuleContext): readonly Advice[] => {
  if (plan.camera.aim.at !== 'level') return []
  const cut = Object.fromEntries(cuts(set).map((one) => [one.side, one.cut])) as Record<Side, number>
  if (cut.left > 0 || cut.right > 0 || cut.top + cut.bottom > 2 * spare) return []
  if (cut.top <= 0 && cut.bottom <= 0) return []
  // As little as will do, with a little air where there is room for it.
  const room = Math.min(air, -Math.min(cut.top, cut.bottom) - Math.max(cut.top, cut.bottom))
  const by = cut.top > cut.bottom ? cut.top + room / 2 : -cut.bottom - room / 2
  const to = plan.camera.at.height + by
  return to < lowest
    ? []
    : [
        {
          title: `camera.at.height → ${words.length(to)}, ${words.small(Math.abs(by))} ${by > 0 ? 'higher' : 'lower'}`,
          gives: 'the framing fits with the same lens from the same place',
        },
      ]
}

/** Metres left between subject and frame. */
const air = 0.1
/** Lower than this no one holds a camera. */
const lowest = 0.2

const further = (words: Words, { set, plan }: RuleContext): readonly Advice[] => {
  const { distance } = plan.camera.at
  const to = solved(set, { knob: 'camera-distance' }, distance, 40)
  if (to === undefined || to <= distance) return []
  const turned = turn(plan, { knob: 'camera-distance' }, to)
  return turned === undefined || turned.short > 0
    ? [{ title: `the camera would have to stand at ${words.length(to)}`, costs: 'more room than there is' }]
    : [
        {
          title: turned.title,
          gives: 'the framing fits',
          costs: `${words.length(turned.change.to - distance)} more room, and more of the backdrop in frame`,
        },
      ]
}

const shorterLens = ({ set, plan }: RuleContext): readonly Advice[] => {
  const to = solved(set, { knob: 'lens' }, plan.camera.lens, 0.012)
  const turned = to === undefined ? undefined : turn(plan, { knob: 'lens' }, to)
  return to === undefined || turned === undefined || turned.short > 0
    ? []
    : [
        {
          title: `${turned.title}, or any lens up to ${Math.floor(to * 1000)} mm`,
          gives: 'the framing fits from the same place',
          costs: 'more of the backdrop in frame',
        },
      ]
}

/** The frame turned by a quarter, where that alone holds everything. */
const turnedFrame = ({ set, plan }: RuleContext): readonly Advice[] => {
  const { camera } = set.scene
  const now = cuts(set)
  const depth = project(camera, set.scene.subject.tapeFrom).depth
  const gains = (camera.tanHalfHeight - camera.tanHalfWidth) * depth
  const after = now.map(({ side, cut }) => (side === 'left' || side === 'right' ? cut - gains : cut + gains))
  return after.every((cut) => cut <= 0)
    ? [
        {
          title: `camera.frame → ${plan.camera.frame === 'vertical' ? 'horizontal' : 'vertical'}`,
          gives: 'the framing fits from the same place',
        },
      ]
    : []
}
