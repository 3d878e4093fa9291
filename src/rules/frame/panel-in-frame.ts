import type { Panel, Placement } from '../../language/plan.js'
import { computeSet } from '../../set/compute-set.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { pointer } from '../../text/place.js'
import { roundForTape } from '../../units/length.js'
import type { Metres } from '../../units/quantity.js'
import { inTurn, type Mend, type RuleContext, rule } from '../rule.js'
import type { Words } from '../words.js'
import {
  frameText,
  type InPicture,
  inPictureEvidence,
  inPictureLimits,
  inPictureText,
  longerLens,
  piecesOf,
  seenOfPieces,
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

  needs: ({ plan }) => (plan.panels.size === 0 ? 'silent' : undefined),

  detect: ({ set, plan, limits }) =>
    [...plan.panels.values()].flatMap(({ name }): InPicture[] => {
      const found = seen(set, name)
      return found === undefined || found.reaching.by * 100 <= limits.inside!
        ? []
        : [inPictureEvidence(name, pointer('panels', name, 'at'), found, limits)]
    }),

  tell: (evidence, words, context) => {
    const face = context.set.scene.panels.get(evidence.name)?.faces[0]
    return {
      message: inPictureText(evidence, words, context),
      why: face === undefined ? '' : frameText(context, face.centre, words),
    }
  },

  mend: ({ name, reaching }, words, context) =>
    inTurn(
      () => moved(context.plan.panels.get(name)!, reaching.side, words, context),
      () => longerLens(context, (after) => isOut(after, name)),
      () => [{ title: 'as it is, and cropped or retouched', costs: 'an edge to clean in every frame' }],
    ),

  inShort: ({ name }) => `${name} is in the picture`,
})

const seen = (set: ComputedSet, name: string) =>
  seenOfPieces(set, piecesOf(set.scene).get(pointer('panels', name, 'at')) ?? [])

const isOut = (set: ComputedSet, name: string): boolean => seen(set, name) === undefined

type Offsets = Placement & { readonly by: 'offsets' }

/** Metres: one try after the other, and no further. */
const step = 0.05
const most = 1

/** Aside to its own side, or up or down, whichever way it came in; as little as will do. */
const moved = (
  panel: Panel,
  side: InPicture['reaching']['side'],
  words: Words,
  context: RuleContext,
): readonly Mend[] => {
  const { plan, set } = context
  const { at, name } = panel
  const centre = set.scene.panels.get(name)?.faces[0]?.centre
  if (at.by !== 'offsets' || centre === undefined) return []
  const upright = (side === 'top' || side === 'bottom') && panel.kind !== 'v-flat'
  const out = at.right < 0 ? -1 : 1
  const style = plan.lengths === 'feet' ? 'feet' : 'metric'
  const moves = (by: number): { readonly at: Offsets; readonly title: string } => {
    if (upright) {
      const over = at.height?.over === 'table' ? (plan.subject.standsOn?.height ?? 0) : 0
      const metres = roundForTape(
        (centre[2] + (side === 'top' ? by : -by) - over) as Metres,
        style,
        side === 'top' ? 'more' : 'less',
      )
      return {
        at: { ...at, height: { over: over > 0 ? 'table' : 'floor', metres } },
        title: `panels.${name}.at.height → ${words.length(metres)}${over > 0 ? ' over table' : ''}`,
      }
    }
    const aside = roundForTape((Math.abs(at.right) + by) as Metres, style, 'more')
    return {
      at: { ...at, right: (out * aside) as Metres },
      title: `panels.${name}.at.${out < 0 ? 'left' : 'right'} → ${words.length(aside)}`,
    }
  }
  for (let by = step; by <= most; by += step) {
    const to = moves(by)
    if (to.at.height !== undefined && to.at.height.metres <= 0) return []
    const after = computeSet({ ...plan, panels: new Map(plan.panels).set(name, { ...panel, at: to.at }) })
    if (isOut(after, name)) return [{ title: to.title, gives: 'it is out of the picture', after }]
  }
  return []
}
