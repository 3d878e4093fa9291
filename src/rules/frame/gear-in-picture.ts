/** What is the same of a light, a panel and a stand in the picture: how it is worded, and got out by the lens. */
import { type Covered, coveredBy, type Gear } from '../../picture/covered.js'
import { type FrameSide, type Reaching, reachingOf } from '../../picture/in-picture.js'
import { project } from '../../scene/camera-view.js'
import type { Vec3 } from '../../scene/vector.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { knobRange } from '../../set/knob-range.js'
import type { Knob } from '../../set/knobs.js'
import { pointer } from '../../text/place.js'
import { turn } from '../gear.js'
import type { Moved } from '../moved.js'
import type { Evidence, Limit, Mend, RuleContext } from '../rule.js'
import type { Words } from '../words.js'
import { worstCut } from './frame-cuts.js'

export interface InPicture extends Evidence {
  readonly name: string
  /** What stands as in a mirror on the other side, and is told with it. */
  readonly twin: string | undefined
  readonly reaching: Reaching
  readonly covered: Covered
}

export const inPictureLimits = {
  inside: {
    value: 2,
    unit: 'cm',
    says: 'inside the frame, at the thing, by the shortest way out; nobody frames closer than this',
  },
  covered: {
    value: 0.1,
    unit: 'share',
    says: 'of a head, or of all that the picture holds of the subject, hidden: error over this',
  },
} as const satisfies Record<string, Limit>

const gearPointer = ({ of, name }: Gear): string => pointer(`${of}s`, name, 'at')

/** Undefined where the camera sees none of it, or no more than the limit lets it. */
export const inPicture = (gear: Gear, { set, limits }: RuleContext): InPicture | undefined => {
  const at = gearPointer(gear)
  const reaching = reachingOf(set.scene, at)
  if (reaching === undefined || reaching.by * 100 <= limits.inside!) return undefined
  const covered = coveredBy(set.scene, gear)
  const share = (value: number) =>
    ({ value, unit: 'share', limit: limits.covered!, side: 'at-most' }) as const
  return {
    pointer: at,
    also: [
      { pointer: '/camera/lens', says: 'with this lens' },
      { pointer: '/camera/at/distance', says: 'from here' },
    ],
    beyond: 'certain',
    level: Math.max(covered.head, covered.subject) > limits.covered! ? 'error' : 'warning',
    measured: {
      inside: { value: reaching.by * 100, unit: 'cm', limit: limits.inside!, side: 'at-most' },
      ...(covered.subject > 0 ? { 'subject-hidden': share(covered.subject) } : {}),
      ...(covered.head > 0 ? { 'head-hidden': share(covered.head) } : {}),
    },
    name: gear.name,
    twin: undefined,
    reaching,
    covered,
  }
}

/** Metres: gear set up by tape as in a mirror differs by no more. */
const asInAMirror = 0.02

/** The same on both sides of the centre line, and reaching in as far. */
export const areMirrored = (a: Reaching, b: Reaching): boolean =>
  Math.abs(a.by - b.by) < asInAMirror &&
  Math.abs(a.at[0]) > asInAMirror &&
  Math.abs(a.at[0] + b.at[0]) < asInAMirror &&
  Math.abs(a.at[1] - b.at[1]) < asInAMirror

/** Two of a pair as one finding, which points at the first and names both. */
export const inPairs = <T extends Evidence & { readonly reaching: Reaching }>(
  found: readonly T[],
  join: (first: T, second: T) => T | undefined,
): readonly T[] => {
  const rest = [...found]
  const joined: T[] = []
  for (let first = rest.shift(); first !== undefined; first = rest.shift()) {
    const own = first
    const index = rest.findIndex(
      (one) => areMirrored(own.reaching, one.reaching) && join(own, one) !== undefined,
    )
    const second = index < 0 ? undefined : rest.splice(index, 1)[0]
    const pair = second && join(own, second)
    joined.push(
      second === undefined || pair === undefined
        ? own
        : { ...pair, also: [{ pointer: second.pointer, says: 'and this' }, ...(own.also ?? [])] },
    )
  }
  return joined
}

export const twins = (a: InPicture, b: InPicture): InPicture | undefined =>
  a.level === b.level &&
  Math.abs(a.covered.head - b.covered.head) < 0.02 &&
  Math.abs(a.covered.subject - b.covered.subject) < 0.02
    ? { ...a, twin: b.name }
    : undefined

export const namesOf = ({ name, twin }: Pick<InPicture, 'name' | 'twin'>): string =>
  twin === undefined ? name : `${name} and ${twin}`

/** The pair reaches in over both sides. */
const bothEdges: Readonly<Record<FrameSide, string>> = {
  left: 'in from either side',
  right: 'in from either side',
  top: 'down from the top edge',
  bottom: 'up from the bottom edge',
  middle: 'in from either side',
}

const edges: Readonly<Record<FrameSide, string>> = {
  left: 'in from the camera-left edge',
  right: 'in from the camera-right edge',
  top: 'down from the top edge',
  bottom: 'up from the bottom edge',
  middle: 'in from either side',
}

export const reachText = ({ side, by }: Reaching, words: Words, both = false): string =>
  `${both ? 'each ' : ''}${words.small(by)} ${(both ? bothEdges : edges)[side]}`

const percent = (share: number): string => `${Math.round(share * 100)} %`

export const inPictureText = (evidence: InPicture, words: Words, { plan, limits }: RuleContext): string => {
  const { twin, reaching, covered } = evidence
  const names = namesOf(evidence)
  const stands = twin === undefined ? `${names} stands before it` : `${names} stand before it, each`
  const group = plan.subject.kind === 'group'
  if (covered.head > limits.covered!)
    return covered.head > 0.9 && twin === undefined
      ? `${group ? 'a face' : 'the face'} is hidden: ${stands}`
      : `${percent(covered.head)} of ${group ? 'a head' : 'the head'} is hidden: ${stands}`
  if (covered.subject > limits.covered!)
    return `${percent(covered.subject)} of ${group ? 'the group' : plan.subject.kind === 'object' ? 'the object' : 'the subject'} is hidden: ${stands}`
  return `${names} ${twin === undefined ? 'is' : 'are'} in the picture, ${reachText(reaching, words, twin !== undefined)}`
}

/** How large the frame is at the depth of what reaches in. */
export const frameText = ({ set, plan }: RuleContext, at: Vec3, words: Words): string => {
  const { camera } = set.scene
  const depth = Math.max(0, project(camera, at).depth)
  const [width, height] = [2 * depth * camera.tanHalfWidth, 2 * depth * camera.tanHalfHeight]
  return `${Math.round(plan.camera.lens * 1000)} mm, ${plan.camera.frame} frame: ${words.length(width)} wide and ${words.length(height)} high, ${words.length(depth)} from the camera`
}

/** True where the camera sees nothing of it. */
export const isOut = (set: ComputedSet, gear: Gear): boolean =>
  reachingOf(set.scene, gearPointer(gear)) === undefined

export const outOfPicture = (moved: Moved | undefined, costs?: string): readonly Mend[] =>
  moved === undefined
    ? []
    : [
        {
          title: moved.title,
          gives: 'it is out of the picture',
          ...(costs === undefined ? {} : { costs }),
          after: moved.after,
        },
      ]

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

/** Of more things in the picture than these none is moved for trial: the camera stands wrong, not they. */
export const mostTried = 4

export const retouched = (): readonly Mend[] => [
  { title: 'as it is, and cropped or retouched', costs: 'an edge to clean in every frame' },
]
