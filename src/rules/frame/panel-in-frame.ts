import type { Panel } from '../../language/plan.js'
import { lazyOf } from '../../scene/lazy.js'
import type { ComputedSet } from '../../set/computed-set.js'
import type { Knob } from '../../set/knobs.js'
import { misplaced } from '../known.js'
import { movedUntil } from '../moved.js'
import { inTurn, type Mend, type RuleContext, rule } from '../rule.js'
import type { Words } from '../words.js'
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

const portrait = (panel: string): string => `plan: 1
title: A panel near the frame
camera: { lens: 85 mm, at: { distance: 2.2 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: grey paper, behind: 2 m }
lights:
  key: { unit: head 400 Ws, modifier: octa 90 cm, meters: f/8, at: { angle: 40 deg left, distance: 1.3 m, height: 2.1 m } }
panels:
  ${panel}
wanted: { framing: head and shoulders, backdrop: any, shadow: any }
`
const board = (at: string, faces = 'left') =>
  `board: { kind: reflector, surface: white board, size: 60 x 100 cm, at: { ${at} }, faces: ${faces} }`

export const panelInFrame = rule<InPicture>({
  id: 'panel-in-frame',
  family: 'frame',
  level: 'error',
  finds:
    'a reflector, flag, scrim or v-flat that the camera sees: which edge, by how much, and whether it covers the subject',
  limits: inPictureLimits,
  why: 'Flags and reflectors work best from close by, just out of the picture. Just out is a matter of centimetres, and the frame is wider behind the subject than before it.',
  formula:
    'reach into the frame = (1 − |x|) × depth × tan(half the angle of view) of what the camera sees of the panel, by the edge where that is least; seen is what no body stands before',
  sources: [{ kind: 'derived', says: 'similar triangles: a frame of 0.9 m at 3 m is 0.6 m at 2 m' }],
  basis: 'thin lens, lines of sight',
  fires: [
    {
      title: 'a board at the cheek, an edge in the frame',
      plan: portrait(board('right: 25 cm, front: 10 cm, height: 1.5 m')),
    },
    {
      title: 'a board before the face',
      plan: portrait(board('right: 0 cm, front: 60 cm, height: 1.4 m', 'backdrop')),
    },
    {
      title: 'a v-flat behind the subject, too near the middle',
      plan: portrait(
        'v-left: { kind: v-flat, size: 1.2 x 2.4 m, opening: 90 deg, inside: black, outside: white, at: { left: 80 cm, behind: 90 cm }, faces: backdrop }',
      ),
    },
  ],
  passes: [
    {
      title: 'a board just out of the frame',
      plan: portrait(board('right: 50 cm, front: 10 cm, height: 1.5 m')),
    },
    {
      title: 'a flag hidden behind the subject',
      plan: portrait(
        'flag: { kind: flag, size: 20 x 20 cm, at: { left: 0 cm, behind: 80 cm, height: 1.3 m }, faces: camera }',
      ),
    },
    {
      title: 'a board under the frame',
      plan: portrait(board('right: 0 cm, front: 40 cm, height: 80 cm', 'up')),
    },
  ],

  needs: ({ plan, set }) => (plan.panels.size === 0 || misplaced(set) ? 'silent' : undefined),

  detect: (context) => panelsIn(context),

  tell: (evidence, words, context) => ({
    message: inPictureText(evidence, words, context),
    why: frameText(context, evidence.reaching.at, words),
  }),

  mend: (evidence, words, context) =>
    context.plan.panels.size > mostTried && panelsIn(context).length > mostTried
      ? retouched()
      : inTurn(
          () => movedOut(evidence, words, context),
          () => longerLens(context, areOut(evidence)),
          retouched,
        ),

  inShort: (evidence) => `${namesOf(evidence)} ${evidence.twin === undefined ? 'is' : 'are'} in the picture`,
})

/** Asked again for every mend. */
const panelsIn = lazyOf((context: RuleContext): readonly InPicture[] =>
  inPairs(
    [...context.plan.panels.values()].flatMap(({ name }) => inPicture({ of: 'panel', name }, context) ?? []),
    twins,
  ),
)

const areOut =
  ({ name, twin }: InPicture) =>
  (after: ComputedSet): boolean =>
    isOut(after, { of: 'panel', name }) && (twin === undefined || isOut(after, { of: 'panel', name: twin }))

/** Aside to its own side, or up or down, whichever way it came in; as little as will do. */
const movedOut = (evidence: InPicture, words: Words, { plan, set }: RuleContext): readonly Mend[] => {
  const {
    name,
    twin,
    reaching: { side, by },
  } = evidence
  const panel = plan.panels.get(name)!
  const upright = (side === 'top' || side === 'bottom') && panel.kind !== 'v-flat'
  const knobOf = (of: string): Knob => ({ knob: upright ? 'panel-height' : 'panel-right', panel: of })
  const way = upright ? (side === 'top' ? 1 : -1) : standsLeft(panel) ? -1 : 1
  const moved = movedUntil(
    set,
    knobOf(name),
    way,
    areOut(evidence),
    twin === undefined ? undefined : knobOf(twin),
  )
  // A panel that is placed by a bearing is moved by hand.
  return moved === undefined && panel.at.by === 'tape'
    ? [{ title: `${namesOf(evidence)} ${words.small(by)} further out` }]
    : outOfPicture(moved)
}

const standsLeft = ({ at }: Panel): boolean => at.by === 'offsets' && at.right < 0
