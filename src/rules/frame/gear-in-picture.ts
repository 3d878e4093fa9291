/** What is the same of a light, a panel and a stand in the picture: how it is found, worded, and got out by the camera. */
import {
  type Covered,
  coveredBy,
  type FrameSide,
  type Reaching,
  reachingIn,
  seenOf,
} from '../../picture/in-picture.js'
import { project } from '../../scene/camera-view.js'
import { lazyOf } from '../../scene/lazy.js'
import type { Solid } from '../../scene/scene.js'
import type { Vec3 } from '../../scene/vector.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { knobRange } from '../../set/knob-range.js'
import type { Knob } from '../../set/knobs.js'
import { turn } from '../gear.js'
import { whom } from '../place-words.js'
import type { Evidence, Limit, Mend, RuleContext } from '../rule.js'
import type { Words } from '../words.js'
import { worstCut } from './frame-cuts.js'

export interface InPicture extends Evidence {
  readonly name: string
  readonly reaching: Reaching
  readonly covered: Covered
}

export const inPictureLimits = {
  inside: {
    value: 2,
    unit: 'cm',
    says: 'inside the frame, at the thing, by the shortest way out; nobody frames closer than this',
  },
  covered: { value: 0.1, unit: 'share', says: 'of the subject covered, or any of a face: error over this' },
} as const satisfies Record<string, Limit>

export interface Found {
  readonly reaching: Reaching
  readonly covered: Covered
}

/** What the camera sees of a thing of one or more pieces; undefined where it sees nothing. */
export const seenOfPieces = (set: ComputedSet, pieces: readonly Solid[]): Found | undefined => {
  const { scene } = set
  const reaching = reachingIn(
    scene.camera,
    pieces.flatMap((piece) => seenOf(scene, piece)),
  )
  return reaching && { reaching, covered: coveredBy(scene, pieces) }
}

/** The solids of each light and each panel, by kind and name. */
export const piecesOf = lazyOf((scene: ComputedSet['scene']): ReadonlyMap<string, readonly Solid[]> => {
  const pieces = new Map<string, readonly Solid[]>()
  for (const solid of scene.solids)
    if (solid.of === 'light' || solid.of === 'panel')
      pieces.set(solid.pointer, [...(pieces.get(solid.pointer) ?? []), solid])
  return pieces
})

export const inPictureEvidence = (
  name: string,
  pointer: string,
  { reaching, covered }: Found,
  limits: RuleContext['limits'],
): InPicture => ({
  pointer,
  also: [
    { pointer: '/camera/lens', says: 'with this lens' },
    { pointer: '/camera/at/distance', says: 'from here' },
  ],
  beyond: 'certain',
  level: covered.face || covered.share > limits.covered! ? 'error' : 'warning',
  measured: {
    inside: { value: reaching.by * 100, unit: 'cm', limit: limits.inside!, side: 'at-most' },
    ...(covered.share > 0
      ? {
          covered: {
            value: covered.share,
            unit: 'share' as const,
            limit: limits.covered!,
            side: 'at-most' as const,
          },
        }
      : {}),
  },
  name,
  reaching,
  covered,
})

const edges: Readonly<Record<FrameSide, string>> = {
  left: 'in from the camera-left edge',
  right: 'in from the camera-right edge',
  top: 'down from the top edge',
  bottom: 'up from the bottom edge',
  middle: 'in from either side',
}

export const reachText = ({ side, by }: Reaching, words: Words): string => `${words.small(by)} ${edges[side]}`

export const inPictureText = (
  { name, reaching, covered }: InPicture,
  words: Words,
  { plan, limits }: RuleContext,
): string => {
  const share = `${Math.round(covered.share * 100)} % of ${plan.subject.kind === 'person' ? 'the subject' : whom(plan)}`
  if (covered.face)
    return `${plan.subject.kind === 'group' ? 'a face' : 'the face'} is hidden: ${name} stands before it and covers ${share}`
  if (covered.share > limits.covered!) return `${share} is hidden: ${name} stands before it`
  return `${name} is in the picture, ${reachText(reaching, words)}`
}

/** How large the frame is there. */
export const frameText = ({ set, plan }: RuleContext, at: Vec3, words: Words): string => {
  const { camera } = set.scene
  const depth = Math.max(0, project(camera, at).depth)
  const [width, height] = [2 * depth * camera.tanHalfWidth, 2 * depth * camera.tanHalfHeight]
  return `${Math.round(plan.camera.lens * 1000)} mm, ${plan.camera.frame} frame: ${words.length(width)} wide and ${words.length(height)} high there`
}

/** A longer lens from the same place, where the wanted framing still fits. */
export const longerLens = (
  { set, plan }: RuleContext,
  clear: (after: ComputedSet) => boolean,
): readonly Mend[] => {
  const knob: Knob = { knob: 'lens' }
  if (plan.wanted.framing === undefined) return []
  for (const lens of knobRange(plan, knob)?.marks ?? []) {
    if (lens <= plan.camera.lens) continue
    const turned = turn(plan, knob, lens)
    const after = turned && set.with(turned.change)
    if (turned === undefined || after === undefined || worstCut(after) > 1e-6) return []
    if (clear(after))
      return [{ title: turned.title, gives: 'it is out of the picture', costs: 'a tighter frame', after }]
  }
  return []
}
