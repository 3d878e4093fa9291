import { computeSet } from '../../set/compute-set.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { knobToday } from '../../set/knob-value.js'
import type { Knob } from '../../set/knobs.js'
import { turn } from '../gear.js'
import { cameraMisplaced } from '../known.js'
import { comesIn } from '../moved.js'
import { lightPointer } from '../place-pointer.js'
import { whom } from '../place-words.js'
import { type Evidence, inTurn, type Mend, type RuleContext, rule } from '../rule.js'
import { inside } from '../solving.js'
import { reached } from '../tiers.js'
import { whose } from '../whose.js'
import type { Words } from '../words.js'
import { type FaceShade, faceShades, mostLost } from './face-shade.js'
import { firstWhere } from './out-of-sight.js'
import { lessText } from './seen.js'

const behindCamera = (modifier: string, height: string, more = '', distance = '4 m'): string => `plan: 1
title: Source behind the camera
camera: { lens: 85 mm, at: { distance: 2.6 m }, aperture: f/8, shutter: 1/125, iso: 100${more} }
subject: { kind: person }
backdrop: { surface: { reflectance: 0.5 }, width: 4 m, height: 3 m, behind: 0.5 m }
lights:
  large: { unit: head 600 Ws, modifier: ${modifier}, meters: f/8, at: { angle: 0 deg left, distance: ${distance}, height: ${height} } }
wanted: { framing: head and shoulders, backdrop: any, shadow: any }
`

interface OperatorBlocks extends Evidence {
  readonly shade: FaceShade
  readonly limit: number
  readonly u: number
}

export const operatorBlocksSource = rule<OperatorBlocks>({
  id: 'operator-blocks-source',
  family: 'shadow',
  level: 'warning',
  finds: 'the person behind the camera who stands in the light',
  limits: {
    note: { value: 1 / 3, unit: 'stop', says: 'less light on a face: note over this' },
    warning: { value: 2 / 3, unit: 'stop', says: 'less light on a face: warning over this' },
  },
  why: 'Whoever holds the camera before a source behind it takes a part of its light off the subject, out of the middle, where it counts most; and a meter held out beside them does not know.',
  formula:
    'log2(H without the person / H with them) at each face, key and fill, dome toward the camera; what comes by way of room and panels still arrives',
  sources: [
    {
      kind: 'derived',
      says: 'standing 0.35 m wide before a source of 1 m, a person hides a third of it and more',
    },
    { kind: 'common practice', says: 'a source behind the camera should be far wider than the photographer' },
  ],
  basis: 'covered parts of each front, exact; the limits are common practice',
  fires: [
    {
      title: 'a bare head right behind, at the height of the camera',
      plan: behindCamera('standard reflector', '1.65 m', '', '3.6 m'),
    },
    { title: 'larger, and still hidden in part', plan: behindCamera('softbox 90 x 90 cm', '1.6 m') },
  ],
  passes: [
    { title: 'two metres wide', plan: behindCamera('softbox 2 x 2 m', '1.6 m') },
    {
      title: 'on a stand, released from aside',
      plan: behindCamera('softbox 90 x 90 cm', '1.6 m', ', held-by: stand'),
    },
    { title: 'over the photographer’s head', plan: behindCamera('softbox 90 x 90 cm', '2.9 m') },
  ],

  needs: ({ set }) =>
    set.scene.operator === undefined ||
    cameraMisplaced(set) ||
    !set.keyLights.some(({ name }) => set.strength(name) !== undefined)
      ? 'silent'
      : undefined,

  detect: ({ set, plan, limits, u: uOf }) => {
    const shade = blocked(set)
    if (shade === undefined) return []
    const value = shade.lost.stops
    const u = uOf(shade.lost)
    const { level, limit, beyond } = reached((most) => value - most, u, [
      { level: 'note', limit: limits.note! },
      { level: 'warning', limit: limits.warning! },
    ])
    return [
      {
        pointer: lightPointer(shade.light, 'at'),
        also: [{ pointer: '/camera/at', says: 'the camera is held here' }],
        beyond,
        level,
        measured: { lost: { value, unit: 'stop', u, limit, side: 'at-most' } },
        cause: `the person behind the camera stands before ${shade.light}`,
        scale: { value, u, needs: limit, against: `less light on ${whom(plan)}` },
        shade,
        limit,
        u,
      },
    ]
  },

  tell: ({ shade, limit }, words, { set, plan }) => {
    const distance = set.scene.lights.get(shade.light)?.distance
    return {
      message: `${plan.subject.kind === 'object' ? '' : 'the face of '}${whose(shade.figure, plan)} gets ${lessText(shade.lost.stops, words)}, ${words.howMany(limit)} is the limit: the person behind the camera stands in ${shade.light}`,
      why:
        distance === undefined
          ? 'the camera is held by hand'
          : `${shade.light} stands ${words.length(distance)} from the subject, the camera ${words.length(plan.camera.at.distance)}`,
    }
  },

  mend: (evidence, words, context) =>
    inTurn(
      () => fromAside(context),
      () => higher(evidence, words, context),
      () => [
        {
          title: `a larger front in place of ${evidence.shade.light}'s, or two of them on either side of the camera`,
          gives: 'more of it is seen past the person',
        },
      ],
    ),

  inShort: ({ shade }, words) =>
    `the person behind the camera stands in ${shade.light}: ${lessText(shade.lost.stops, words)}`,
})

const blocked = (set: ComputedSet): FaceShade | undefined =>
  mostLost(faceShades(set, (solid) => solid === 'operator'))

const fromAside = ({ plan }: RuleContext): readonly Mend[] => [
  {
    title: 'camera.held-by → stand',
    gives: 'all of the light, with the camera released from aside',
    costs: 'a stand and a remote release',
    after: computeSet({ ...plan, camera: { ...plan.camera, heldBy: 'stand' } }),
  },
]

/** Metres up, at most. */
const rise = 1.5

const higher = (
  { shade, limit, u }: OperatorBlocks,
  words: Words,
  { set, plan }: RuleContext,
): readonly Mend[] => {
  const knob: Knob = { knob: 'light-height', light: shade.light }
  const today = knobToday(plan, knob)
  if (today === undefined) return []
  const at = (to: number) => set.with({ knob, to })
  const free = (after: ComputedSet) => (blocked(after)?.lost.stops ?? 0) <= limit - inside(u)
  const to = firstWhere(today, today + rise, (height) => free(at(height)))
  const made = to === undefined ? undefined : turn(plan, knob, to)
  if (made === undefined || made.short > 0) return []
  const after = at(made.change.to)
  return free(after)
    ? [
        {
          title: made.title,
          gives: `${words.howMany(blocked(after)?.lost.stops ?? 0)} is taken`,
          costs: [
            `light from ${words.length(made.change.to - today)} higher`,
            ...comesIn(set, shade.light, made.change.to - today, words),
          ].join('; '),
          after,
        },
      ]
    : []
}
