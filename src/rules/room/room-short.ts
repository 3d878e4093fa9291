import type { ComputedSet } from '../../set/computed-set.js'
import { knobRange } from '../../set/knob-range.js'
import type { Change } from '../../set/knobs.js'
import { roundForTape } from '../../units/length.js'
import type { Metres } from '../../units/quantity.js'
import { frameCuts, worstCut } from '../frame/frame-cuts.js'
import { turn } from '../gear.js'
import { type Evidence, inTurn, type Mend, type RuleContext, rule } from '../rule.js'
import { solveFor } from '../solving.js'
import type { Words } from '../words.js'
import { roomMissing } from './room-sides.js'

const studio = (
  length: string,
  lens: string,
  distance: string,
  framing: string,
  behind = '1.8 m',
): string => `plan: 1
title: How long must the room be
room: { width: 3.6 m, length: ${length}, height: 2.8 m, behind-backdrop: 0 cm }
camera: { lens: ${lens}, at: { distance: ${distance}, height: 95 cm }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: grey paper, width: 2.72 m, height: 2.6 m, behind: ${behind} }
lights:
  key: { unit: head 400 Ws, modifier: softbox 60 x 90 cm, meters: f/8, at: { angle: 35 deg left, distance: 1.5 m, height: 2 m } }
wanted: { framing: ${framing}, backdrop: any, shadow: any }
`

interface Short extends Evidence {
  readonly kind: 'behind the wall' | 'framing' | 'tight'
  /** Metres from the subject to where the camera is to stand. */
  readonly needs: number
  /** Metres from the subject to the wall behind the camera. */
  readonly room: number
}

export const roomShort = rule<Short>({
  id: 'room-short',
  family: 'room',
  level: 'error',
  finds:
    'a room too short for the lens and the framing: how far back the camera must stand, and what is left',
  limits: {
    person: { value: 0.4, unit: 'm', says: 'behind the lens for whoever holds the camera: error under this' },
    stand: { value: 0.15, unit: 'm', says: 'behind the lens of a camera on a stand: error under this' },
    comfort: { value: 0.6, unit: 'm', says: 'behind the lens to work in: note under this' },
  },
  why: 'What a long lens needs in length surprises in every small studio: full length with 85 mm takes five metres before the subject, two behind it and the photographer besides.',
  formula:
    'distance = height of the frame × focal length / long side of the sensor, and one focal length; room length = separation + that + what the photographer stands in',
  sources: [
    { kind: 'derived', says: 'thin lens: 2.1 m of frame take 5.0 m with 85 mm, 2.9 m with 50 mm, on 36 mm' },
    {
      kind: 'common practice',
      says: 'eight metres for full length with 85 mm; 0.6 to 0.7 m behind the camera',
    },
  ],
  basis: 'thin lens, the walls of the plan; what a person stands in is common practice',
  fires: [
    { title: 'full length with 85 mm in 4.6 m', plan: studio('4.6 m', '85 mm', '2.2 m', 'full length') },
    { title: 'the camera behind the wall', plan: studio('4.6 m', '85 mm', '3.4 m', 'head and shoulders') },
    { title: 'a back against the wall', plan: studio('4.6 m', '85 mm', '2.3 m', 'head and shoulders') },
  ],
  passes: [
    { title: 'full length with 35 mm', plan: studio('4.6 m', '35 mm', '2.1 m', 'full length') },
    { title: 'full length with 85 mm in eight metres', plan: studio('8 m', '85 mm', '5.2 m', 'full length') },
    { title: 'room to step back', plan: studio('4.6 m', '85 mm', '2.1 m', 'head and shoulders') },
  ],

  needs: ({ plan }) => roomMissing(plan),

  detect: ({ set, plan, limits }) => {
    const room = -set.scene.room!.front
    const { distance } = plan.camera.at
    const least = limits[plan.camera.heldBy]!
    const comfort = Math.max(least, limits.comfort!)
    // A room whose wall stands before the subject is no room for it: told of as such.
    if (room <= 0) return []
    const fits = canHold(set)
    const needs = fits || plan.wanted.framing === undefined ? distance : distanceFor(set)
    const kind =
      needs + least > room + 1e-6
        ? fits
          ? 'behind the wall'
          : 'framing'
        : distance + comfort > room + 1e-6 && distance + least <= room + 1e-6
          ? 'tight'
          : undefined
    if (kind === undefined) return []
    const behind = room - needs
    return [
      {
        pointer: '/camera/at/distance',
        also: [
          { pointer: '/room/length', says: 'in a room of this length' },
          { pointer: '/camera/lens', says: 'with this lens' },
          ...(kind === 'framing' ? [{ pointer: '/wanted/framing', says: 'this framing is wanted' }] : []),
        ],
        beyond: 'certain',
        level: kind === 'tight' ? 'note' : 'error',
        measured: {
          behind: { value: behind, unit: 'm', limit: kind === 'tight' ? comfort : least, side: 'at-least' },
        },
        kind,
        needs,
        room,
      },
    ]
  },

  tell: ({ kind, needs, room }, words, { plan, limits }) => {
    const behind = room - needs
    const wall = `the wall behind the camera is ${words.length(room)} from the subject`
    const who = plan.camera.heldBy === 'person' ? 'whoever holds the camera' : 'the camera'
    const spare = `${words.small(behind)} behind the lens`
    const message =
      kind === 'framing'
        ? `${framingText(plan.wanted.framing!)} does not fit in the room: with ${mm(plan.camera.lens)} the camera stands ${words.length(needs)} away, ${behind < 0 ? `and ${wall}` : `with ${spare} for ${who}`}`
        : kind === 'behind the wall'
          ? behind < 0
            ? `the camera would stand ${words.length(-behind)} behind the wall: ${wall}`
            : `${who} does not fit: ${spare}`
          : `only ${spare} to work in: ${wall}`
    return {
      message,
      why:
        kind === 'framing'
          ? `separation, that distance and room for ${who} make the length: the room is ${words.length(limits[plan.camera.heldBy]! - behind)} too short`
          : `it is to stand ${words.length(plan.camera.at.distance)} away`,
    }
  },

  mend: (evidence, words, context) =>
    inTurn(
      () => stepUp(evidence, context),
      () => shorterLens(evidence, words, context),
      () => nearerBackdrop(evidence, words, context),
      () =>
        evidence.kind === 'framing' && context.plan.wanted.framing !== 'head and shoulders'
          ? [{ title: 'a tighter framing: waist, or head and shoulders' }]
          : [],
    ),

  inShort: ({ kind }) =>
    kind === 'framing' ? 'the room is too short for the framing' : 'there is no room behind the camera',
})

const mm = (lens: number): string => `${Math.round(lens * 1000)} mm`

const framingText = (framing: string): string =>
  framing === 'all' ? 'all that is wanted in the frame' : framing === 'face' ? 'the face' : framing

/** Half of what is cut, were the camera at the best height and aside: negative is room to spare. */
const cutAtBest = (set: ComputedSet): number => {
  const cut = new Map(frameCuts(set).map(({ side, cut }) => [side, cut]))
  return Math.max(cut.get('top')! + cut.get('bottom')!, cut.get('left')! + cut.get('right')!) / 2
}

/** At some height from where it stands. Without a framing anything fits. */
const canHold = (set: ComputedSet): boolean => set.plan.wanted.framing === undefined || cutAtBest(set) <= 1e-3

/** Metres; further than this nobody looks for room. */
const farthest = 60

/** Where the camera must stand for the framing to fit with its lens. */
const distanceFor = (set: ComputedSet): number =>
  solveFor(
    set.plan.camera.at.distance,
    farthest,
    (to) => cutAtBest(set.with({ knob: { knob: 'camera-distance' }, to })),
    0,
    1e-3,
  ) ?? farthest

/** Where the camera stands with room to work in, by tape. */
const workable = ({ set, plan, limits }: RuleContext): number =>
  roundForTape(
    (-set.scene.room!.front - Math.max(limits.comfort!, limits[plan.camera.heldBy]!)) as Metres,
    plan.lengths === 'feet' ? 'feet' : 'metric',
    'less',
  )

/** Nearer, where the framing still fits from there. */
const stepUp = ({ kind }: Short, context: RuleContext): readonly Mend[] => {
  const { set, plan } = context
  const to = workable(context)
  if (kind === 'framing' || to <= 0.5) return []
  const turned = turn(plan, { knob: 'camera-distance' }, to)
  const after = turned && set.with(turned.change)
  return turned === undefined || after === undefined || !canHold(after)
    ? []
    : [{ title: turned.title, gives: fits(after), after }]
}

const fits = (after: ComputedSet): string =>
  `room behind the camera${after.plan.wanted.framing === undefined ? '' : worstCut(after) <= 1e-3 ? ', and the framing still fits' : '; at the right height the framing still fits'}`

/** The longest lens that holds the framing from where there is room to work in. */
const shorterLens = ({ kind }: Short, words: Words, context: RuleContext): readonly Mend[] => {
  const { set, plan } = context
  const to = Math.min(workable(context), plan.camera.at.distance)
  if (plan.wanted.framing === undefined || kind === 'tight' || to <= 0.5) return []
  const stays = to === plan.camera.at.distance
  const step: readonly Change[] = stays ? [] : [{ knob: { knob: 'camera-distance' }, to }]
  const there = stays ? undefined : turn(plan, { knob: 'camera-distance' }, to)
  const stepped = set.with(...step)
  const longest = solveFor(
    plan.camera.lens,
    0.012,
    (lens) => cutAtBest(stepped.with({ knob: { knob: 'lens' }, to: lens })),
    -0.01,
    1e-3,
  )
  if (longest === undefined || longest >= plan.camera.lens) return []
  const lens = knobRange(plan, { knob: 'lens' })?.marks?.findLast((mark) => mark <= longest + 1e-9)
  const turned = lens === undefined ? undefined : turn(plan, { knob: 'lens' }, lens)
  if (turned === undefined || turned.short > 0) return []
  return [
    {
      title: [turned.title, ...(there === undefined ? [] : [there.title])].join(', '),
      gives: `the framing fits from ${words.length(to)}, with any lens up to ${Math.floor(longest * 1000)} mm`,
      costs: `${to < 1.5 ? 'what is nearer looks larger, and ' : ''}more of the backdrop and of the room in frame`,
      after: stepped.with(turned.change),
    },
  ]
}

/** The room's length is shared: what the separation gives up the camera gains. */
const nearerBackdrop = ({ needs, room }: Short, words: Words, context: RuleContext): readonly Mend[] => {
  const { set, plan, limits } = context
  if (plan.backdrop === undefined || plan.backdrop.sky !== undefined) return []
  const missing = needs + limits[plan.camera.heldBy]! - room
  const behind = plan.backdrop.behind - Math.max(missing, limits.comfort! - (room - needs))
  if (behind < nearestToPaper) return []
  const turned = turn(plan, { knob: 'behind' }, behind)
  if (turned === undefined || turned.short > 0) return []
  const style = plan.lengths === 'feet' ? 'feet' : 'metric'
  const back = turn(plan, { knob: 'camera-distance' }, roundForTape(needs as Metres, style, 'more'))
  const moves = needs > plan.camera.at.distance + 1e-6 && back !== undefined
  return [
    {
      title: [turned.title, ...(moves ? [back.title] : [])].join(', '),
      gives: `${words.length(plan.backdrop.behind - turned.change.to)} more before the subject`,
      costs: 'the subject nearer the backdrop: its shadow and its light fall there',
      after: set.with(
        turned.change,
        ...(moves ? [{ ...back.change, to: roundForTape(needs as Metres, style, 'more') }] : []),
      ),
    },
  ]
}

/** Metres: nearer to the backdrop than this it is another picture. */
const nearestToPaper = 0.5
