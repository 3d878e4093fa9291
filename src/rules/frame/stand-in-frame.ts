import { type Reaching, reachingOf } from '../../picture/in-picture.js'
import { standReaching, standsBefore } from '../../picture/stand-in-picture.js'
import { lazyOf } from '../../scene/lazy.js'
import type { SceneStand } from '../../scene/scene.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { knobToday } from '../../set/knob-value.js'
import type { Knob } from '../../set/knobs.js'
import { misplaced } from '../known.js'
import { movedEitherWay, movedUntil } from '../moved.js'
import { lightPointer } from '../place-pointer.js'
import { type Evidence, inTurn, type RuleContext, rule } from '../rule.js'
import { inPairs, longerLens, mostTried, outOfPicture, reachText, retouched } from './gear-in-picture.js'

const tall = (light: string, camera = 'lens: 50 mm'): string => `plan: 1
title: Full length, stands beside it
camera: { ${camera}, at: { distance: 3.6 m, height: 1.1 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: grey paper, behind: 2 m }
lights:
  ${light}
wanted: { framing: full length, backdrop: any, shadow: any }
`
const key = (at: string, more = '') =>
  `key: { unit: head 400 Ws, modifier: octa 90 cm, meters: f/8, at: { ${at} }${more} }`
const stand = ', stand: { kind: light stand }'

interface StandIn extends Evidence {
  readonly stand: SceneStand
  /** The light on the other side whose stand is told with it. */
  readonly twin: string | undefined
  readonly reaching: Reaching
  /** Its pole stands before someone. */
  readonly before: boolean
}

export const standInFrame = rule<StandIn>({
  id: 'stand-in-frame',
  family: 'frame',
  level: 'error',
  finds:
    'the stand of a light that is itself out of the picture: its pole, or a leg whichever way it is turned',
  limits: {
    inside: { value: 2, unit: 'cm', says: 'inside the frame, by the shortest way out' },
    guess: {
      value: 15,
      unit: 'cm',
      says: 'inside the frame, where the plan does not say what holds the light: a note up to this',
    },
  },
  why: 'In a full-length frame the box is out of the picture and its stand is in it: the pole goes down from the light into the frame, and its legs spread half a metre further.',
  formula:
    'reach into the frame, by the shortest way out, of the pole and of legs turned the best way: half their spread (three legs at 120° reach at least that far to any side); booms count where no side is out of the picture',
  sources: [
    { kind: 'derived', says: 'three legs: at least cos 60° of their length to any side' },
    {
      kind: 'common practice',
      says: 'legs spread half a metre; a light over the subject or over 2.5 m high hangs from a boom of 1.5 m',
    },
  ],
  basis: 'thin lens, lines of sight; where a stand is, is common practice unless the plan says it',
  fires: [
    {
      title: 'the light over the frame, its stand in it',
      plan: tall(key('angle: 20 deg left, distance: 1.4 m, height: 2.6 m', stand)),
    },
    {
      title: 'the stand of a high fill before the subject',
      plan: tall(key('angle: 0 deg, distance: 2.2 m, height: 2.7 m', stand)),
    },
    {
      title: 'a high light near the camera, where the plan does not say what holds it',
      plan: tall(key('angle: 4 deg left, distance: 2.2 m, height: 2.45 m')),
    },
  ],
  passes: [
    {
      title: 'well beside the frame',
      plan: tall(key('angle: 75 deg left, distance: 2.2 m, height: 2.2 m', stand)),
    },
    {
      title: 'from a boom',
      plan: tall(
        'hair: { unit: head 200 Ws, modifier: strip 30 x 120 cm, lying: true, meters: f/8, at: { angle: 180 deg, distance: 1.2 m, height: 2.6 m }, stand: { kind: boom, arm: 1.5 m } }',
      ),
    },
    {
      title: 'over the subject: it hangs from a boom, though the plan does not say so',
      plan: tall(
        'hair: { unit: head 200 Ws, modifier: strip 30 x 120 cm, lying: true, meters: f/8, at: { angle: 180 deg, distance: 1.2 m, height: 2.6 m } }',
      ),
    },
    {
      title: 'hidden behind the subject',
      plan: tall(
        'paper: { role: backdrop, unit: flashgun, meters: f/8, at: { left: 0 cm, before-backdrop: 1.2 m, height: 1 m }, stand: { kind: light stand } }',
      ),
    },
  ],

  needs: ({ plan, set }) => (plan.lights.size === 0 || misplaced(set) ? 'silent' : undefined),

  detect: (context) => standsIn(context),

  tell: ({ stand, twin, reaching, before, level }, words) => ({
    message: `${level === 'note' ? 'perhaps ' : ''}${
      twin !== undefined
        ? `the ${stand.kind === 'boom' ? 'booms' : 'stands'} of ${stand.light} and ${twin} ${before ? 'stand before the subject' : `are in the picture, ${reachText(reaching, words, true)}`}`
        : stand.kind === 'boom'
          ? `the boom of ${stand.light} is in the picture, whichever side it stands on: ${reachText(reaching, words)}`
          : before
            ? `the stand of ${stand.light} stands before the subject`
            : `the stand of ${stand.light} is in the picture, ${reachText(reaching, words)}`
    }`,
    why: stand.stated
      ? stand.kind === 'boom'
        ? `its pole ${words.length(stand.arm)} from the light, legs ${words.length(stand.legs)} from the pole`
        : `a pole right under the light, legs ${words.length(stand.legs)} from it, turned the best way`
      : 'the plan does not say what holds the light: a stand right under it is taken, or a boom for what hangs over the subject',
  }),

  mend: ({ stand, twin }, words, context) => {
    const { set } = context
    if (set.scene.stands.length > mostTried && standsIn(context).length > mostTried) return retouched()
    const { light } = stand
    const clear = (after: ComputedSet) => isOut(after, light) && (twin === undefined || isOut(after, twin))
    const right = { knob: 'light-right', light } as const
    const other = (knob: 'light-angle' | 'light-right' | 'light-distance'): Knob | undefined =>
      twin === undefined ? undefined : { knob, light: twin }
    const aside = (knobToday(set.plan, right) ?? 0) < 0 ? -1 : 1
    return inTurn(
      () =>
        stand.kind === 'boom'
          ? []
          : [
              {
                title:
                  twin === undefined
                    ? `${light} from a boom, its stand ${words.length(usualArm)} to the side`
                    : `${light} and ${twin} from booms, their stands ${words.length(usualArm)} to the side`,
                costs: 'a counterweight, and a sandbag on the legs',
              },
            ],
      () =>
        outOfPicture(
          movedEitherWay(set, { knob: 'light-angle', light }, clear, other('light-angle')),
          'light from further round',
        ),
      () =>
        outOfPicture(
          movedUntil(set, right, aside, clear, other('light-right')),
          'light from further to the side',
        ),
      () =>
        outOfPicture(
          movedUntil(set, { knob: 'light-distance', light }, 1, clear, other('light-distance')),
          'more power, and harder light',
        ),
      () => longerLens(context, clear),
    )
  },

  inShort: ({ stand, twin }) =>
    twin === undefined
      ? `the stand of ${stand.light} is in the picture`
      : `the stands of ${stand.light} and ${twin} are in the picture`,
})

/** Asked again for every mend. */
const standsIn = lazyOf((context: RuleContext): readonly StandIn[] =>
  inPairs(eachIn(context), (a, b) =>
    a.level === b.level && a.before === b.before && a.stand.kind === b.stand.kind
      ? { ...a, twin: b.stand.light }
      : undefined,
  ),
)

const eachIn = ({ set: { scene }, limits }: RuleContext): readonly StandIn[] =>
  scene.stands.flatMap((stand): StandIn[] => {
    const reaching = standReaching(scene, stand)
    if (reaching === undefined || reaching.by * 100 <= limits.inside!) return []
    // A light in the picture is told of as such.
    if (reachingOf(scene, lightPointer(stand.light, 'at')) !== undefined) return []
    const before = standsBefore(scene, stand)
    // Nobody stands a pole between lens and subject: what holds such a light is not known.
    const level = stand.stated
      ? before
        ? 'error'
        : 'warning'
      : before || reaching.by * 100 <= limits.guess!
        ? 'note'
        : 'warning'
    return [
      {
        pointer: lightPointer(stand.light, 'at'),
        also: [
          ...(stand.stated ? [{ pointer: lightPointer(stand.light, 'stand'), says: 'held by this' }] : []),
          { pointer: '/camera/lens', says: 'with this lens' },
        ],
        beyond: 'certain',
        level,
        measured: {
          inside: { value: reaching.by * 100, unit: 'cm', limit: limits.inside!, side: 'at-most' },
        },
        stand,
        twin: undefined,
        reaching,
        before,
      },
    ]
  })

/** Metres, common practice, no source. */
const usualArm = 1.5

const isOut = ({ scene }: ComputedSet, light: string): boolean => {
  const stand = scene.stands.find((one) => one.light === light)
  return stand === undefined || standReaching(scene, stand) === undefined
}
