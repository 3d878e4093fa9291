import type { Light } from '../../language/plan.js'
import { inFrame } from '../../scene/camera-view.js'
import { subtract, unit } from '../../scene/vector.js'
import { lightMissing, misplaced } from '../known.js'
import { whom } from '../place-words.js'
import { type Evidence, type RuleContext, rule } from '../rule.js'

const lit = (key: string, more = ''): string => `plan: 1
title: Who has the light
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: white paper, behind: 2 m }
${more}lights:
  key: { unit: head 400 Ws, power: 1/16, ${key}, at: { angle: 35 deg left, distance: 1.4 m, height: 2 m } }
wanted: { framing: head and shoulders, backdrop: white, shadow: any }
`

interface Dark extends Evidence {
  /** That are on; none of them reaches what the camera sees. */
  readonly on: readonly Light[]
}

export const nothingLit = rule<Dark>({
  id: 'nothing-lit',
  family: 'exposure',
  level: 'error',
  finds: 'a picture in which no light falls on anything',
  limits: {},
  why: 'Where no light is on, or every light shines past all that is in the picture, the frame stays black, whatever is wanted of it. Nothing else that is said of such a plan counts.',
  formula: 'no exposure from any light or the ambient, by any way, on subject, points or backdrop in frame',
  sources: [{ kind: 'derived', says: 'what no light falls on records black' }],
  basis: 'light as it is computed; the ambient as the plan states it',
  fires: [
    { title: 'the only light is off', plan: lit('off: true') },
    {
      title: 'the only light shines away from all',
      plan: lit('grid: 10 deg, faces: left'),
    },
  ],
  passes: [
    { title: 'one light is on', plan: lit('off: false') },
    {
      title: 'by the light of the room',
      plan: lit('off: true', 'ambient: { reads: f/2.8, shutter: 1/60, iso: 100 }\n'),
    },
    {
      title: 'the sky is its own light',
      plan: lit('off: true').replace(
        'surface: white paper, behind: 2 m',
        'sky: { reads: f/8, shutter: 1/125, iso: 100 }',
      ),
    },
  ],

  needs: ({ set, plan }) => {
    if (plan.backdrop?.sky !== undefined || set.key !== undefined || set.unknown.length > 0) return 'silent'
    return misplaced(set) || set.lit.some((light) => lightMissing(set, light) !== undefined)
      ? 'silent'
      : undefined
  },

  detect: (context) => {
    if (anythingLit(context)) return []
    const on = context.set.lit
    return [
      {
        pointer: '/lights',
        also: on.map(({ name }) => ({ pointer: `/lights/${name}`, says: 'on, and reaches nothing there' })),
        beyond: 'certain',
        measured: {},
        on,
      },
    ]
  },

  tell: ({ on }, words, { plan }) => {
    const names = words.list(on.map(({ name }) => name))
    return on.length === 0
      ? {
          message: 'the picture stays black: no light of the plan is on, and it states no ambient',
          why: 'light that nobody wrote down is not there',
        }
      : {
          message: `the picture stays black: nothing of ${names} falls on ${whom(plan)} or on anything else in it`,
          why: `${on.length === 1 ? 'it shines' : 'they shine'} another way, and no ambient is stated`,
        }
  },

  mend: ({ on }, words) =>
    on.length === 0
      ? [
          { title: 'turn a light on: take out its off: true' },
          {
            title: 'ambient: { reads: f/2.8, shutter: 1/60, iso: 100 }',
            gives: 'the light of the room counted',
          },
        ]
      : [
          {
            title: `look at where ${words.list(on.map(({ name }) => name))} shines${on.some(hasFile) ? ', and from where the photometric file counts its angles' : ''}`,
          },
        ],

  inShort: () => 'the picture stays black',
})

/** On a point in frame or on the backdrop, from all sides that the camera sees. */
const anythingLit = ({ set }: RuleContext): boolean => {
  if (set.giving.length === 0) return false
  const { camera, points } = set.scene
  if (set.backdropView !== undefined) return true
  return [...points.values()].some(
    ({ at }) =>
      inFrame(camera, at) &&
      set.exposure({ at, normal: unit(subtract(camera.eye, at)), kind: 'dome' }, 'all') !== undefined,
  )
}

const hasFile = ({ unit }: Light): boolean =>
  unit.kind === 'continuous' && unit.strength.kind === 'photometric file'
