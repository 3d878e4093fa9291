import type { Light } from '../../language/plan.js'
import { outlineInFrame } from '../../picture/in-picture.js'
import { lazyOf } from '../../scene/lazy.js'
import { cornersOf } from '../../scene/solids.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { knobToday } from '../../set/knob-value.js'
import type { Knob } from '../../set/knobs.js'
import { misplaced } from '../known.js'
import { comesIn, type Moved, movedEitherWay, movedUntil } from '../moved.js'
import { inTurn, type Mend, type RuleContext, rule } from '../rule.js'
import {
  frameText,
  type InPicture,
  inPairs,
  inPicture,
  inPictureLimits,
  inPictureText,
  isOut,
  longerLens,
  mostTried,
  namesOf,
  outOfPicture,
  retouched,
  twins,
} from './gear-in-picture.js'

const portrait = (light: string, camera = 'lens: 85 mm, at: { distance: 2.2 m }'): string => `plan: 1
title: A light near the frame
camera: { ${camera}, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: grey paper, behind: 2.5 m }
lights:
  ${light}
wanted: { framing: head and shoulders, backdrop: any, shadow: any }
`
const key = (at: string) => `key: { unit: head 400 Ws, modifier: octa 90 cm, meters: f/8, at: { ${at} } }`
const paper = (height: string) =>
  `${key('angle: 35 deg left, distance: 1.4 m, height: 2.1 m')}
  paper: { role: backdrop, unit: flashgun, meters: f/8, at: { left: 0 cm, before-backdrop: 1.5 m, height: ${height} } }`

export const lightInFrame = rule<InPicture>({
  id: 'light-in-frame',
  family: 'frame',
  level: 'error',
  finds:
    'a light that the camera sees: which edge it comes in over, by how much, and whether it covers the subject',
  limits: inPictureLimits,
  why: 'A light near the subject is soft, and so it is set as near as the frame lets it. What the frame lets is plain geometry, and an edge of cloth in every frame is an evening of retouching.',
  formula:
    'reach into the frame = (1 − |x|) × depth × tan(half the angle of view) of what the camera sees of the light, by the edge where that is least; seen is what no body stands before',
  sources: [
    { kind: 'derived', says: 'similar triangles: a frame of 0.9 m at 3 m is 0.6 m at 2 m' },
    {
      kind: 'common practice',
      says: 'a backdrop light that the subject wholly hides is a set-up of the trade',
    },
  ],
  basis: 'thin lens, lines of sight; the depth of a modifier is from memory unless the kit says it',
  fires: [
    {
      title: 'a large box close to the camera’s line, before the face',
      plan: portrait(key('angle: 0 deg, distance: 1.2 m, height: 1.65 m')),
    },
    {
      title: 'an edge of the box comes in over the top',
      plan: portrait(key('angle: 35 deg left, distance: 80 cm, height: 2 m')),
    },
    {
      title: 'a backdrop light beside the subject',
      plan: portrait(paper('1.5 m').replace('left: 0 cm', 'left: 35 cm')),
    },
  ],
  passes: [
    {
      title: 'the box well out of the frame',
      plan: portrait(key('angle: 40 deg left, distance: 1.3 m, height: 2.1 m')),
    },
    { title: 'a backdrop light hidden behind the subject', plan: portrait(paper('1.3 m')) },
    {
      title: 'the longer lens keeps it out',
      plan: portrait(
        key('angle: 35 deg left, distance: 80 cm, height: 2 m'),
        'lens: 105 mm, at: { distance: 2.2 m }',
      ),
    },
  ],

  needs: ({ plan, set }) => (plan.lights.size === 0 || misplaced(set) ? 'silent' : undefined),

  detect: (context) => lightsIn(context),

  tell: (evidence, words, context) => {
    const light = context.plan.lights.get(evidence.name)!
    const guess = isGuess(light, context)
    return {
      message: `${guess ? 'perhaps ' : ''}${inPictureText(evidence, words, context)}`,
      why: [
        frameText(context, evidence.reaching.at, words),
        ...(guess ? ['only its back would show, and how deep it is is from memory'] : []),
      ].join('; '),
    }
  },

  mend: ({ name, twin, reaching }, words, context) => {
    const { set, plan } = context
    if (set.scene.lights.size > mostTried && lightsIn(context).length > mostTried) return retouched()
    const light = plan.lights.get(name)!
    if (isGround(light, context)) return asGround(name)
    const onFace = light.role === 'key' || light.role === 'fill'
    const clear = (after: ComputedSet) =>
      isOut(after, { of: 'light', name }) && (twin === undefined || isOut(after, { of: 'light', name: twin }))
    const knobs = (knob: 'light-height' | 'light-distance'): readonly [Knob, Knob | undefined] => [
      { knob, light: name },
      twin === undefined ? undefined : { knob, light: twin },
    ]
    const [height, heightOfTwin] = knobs('light-height')
    const [distance, distanceOfTwin] = knobs('light-distance')
    const upOrDown = () => {
      const moved = movedUntil(set, height, reaching.side === 'bottom' ? -1 : 1, clear, heightOfTwin)
      const up = moved && heightIn(moved.after, name) - heightIn(set, name)
      const costs = [
        ...(onFace
          ? [`light from another height${context.plan.subject.kind === 'object' ? '' : ': look at the eyes'}`]
          : []),
        ...(up === undefined ? [] : comesIn(set, name, up, words)),
      ]
      return outOfPicture(moved, costs.length === 0 ? undefined : costs.join('; '))
    }
    const around = () =>
      outOfPicture(movedAside(set, light, twin, clear), onFace ? 'light from further round' : undefined)
    const further = () =>
      outOfPicture(
        movedUntil(set, distance, 1, clear, distanceOfTwin),
        onFace ? 'more power, and harder light' : 'more power',
      )
    const lens = () => longerLens(context, clear)
    return reaching.side === 'left' || reaching.side === 'right'
      ? inTurn(around, further, lens, upOrDown, retouched)
      : inTurn(upOrDown, further, around, lens, retouched)
  },

  inShort: (evidence) => `${namesOf(evidence)} ${evidence.twin === undefined ? 'is' : 'are'} in the picture`,
})

const asGround = (name: string): readonly Mend[] => [
  {
    title: `${name} large enough to fill the picture, or black cards round what it shows of it`,
    gives: 'a clean bright field',
  },
]

/** Asked again for every mend. */
const lightsIn = lazyOf((context: RuleContext): readonly InPicture[] => inPairs(eachIn(context), twins))

const eachIn = (context: RuleContext): readonly InPicture[] =>
  [...context.plan.lights.values()].flatMap((light): InPicture[] => {
    const found = light.at.by === 'camera' ? undefined : inPicture({ of: 'light', name: light.name }, context)
    if (found === undefined) return []
    // A lamp in the picture may be meant to be there; a depth that no kit states may be another.
    const doubtful = light.role === 'effect' || isGuess(light, context) || isGround(light, context)
    return [found.level === 'warning' && doubtful ? { ...found, level: 'note' } : found]
  })

/** Bright field: a clear thing is drawn by its edges before a front that the picture is meant to show. */
const isGround = ({ name }: Light, { set: { scene }, plan }: RuleContext): boolean => {
  const front = scene.lights.get(name)?.front
  return (
    plan.subject.finish === 'clear' &&
    front !== undefined &&
    front.normal[1] < 0 &&
    front.centre[1] > scene.subject.tapeFrom[1]
  )
}

/** True where its front is out of the frame, and what shows is the depth behind it, which nothing states. */
const isGuess = ({ name, modifier }: Light, { set: { scene } }: RuleContext): boolean => {
  const front = scene.lights.get(name)?.front
  return (
    front !== undefined &&
    modifier?.guessed !== false &&
    outlineInFrame(scene.camera, cornersOf(front)).length === 0
  )
}

const heightIn = ({ scene }: ComputedSet, light: string): number =>
  scene.lights.get(light)?.front?.centre[2] ?? 0

const movedAside = (
  set: ComputedSet,
  { name, at }: Light,
  twin: string | undefined,
  clear: (after: ComputedSet) => boolean,
): Moved | undefined => {
  const other = (knob: 'light-angle' | 'light-right'): Knob | undefined =>
    twin === undefined ? undefined : { knob, light: twin }
  const angle: Knob = { knob: 'light-angle', light: name }
  if (at.by === 'tape') return movedEitherWay(set, angle, clear, other('light-angle'))
  const right: Knob = { knob: 'light-right', light: name }
  return movedUntil(set, right, (knobToday(set.plan, right) ?? 0) < 0 ? -1 : 1, clear, other('light-right'))
}
