import type { Light } from '../../language/plan.js'
import { dot, subtract } from '../../scene/vector.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { type ShadowSeen, shows } from '../../set/shadow-seen.js'
import { turn } from '../gear.js'
import { faceOf } from '../key-lights.js'
import { lightPointer } from '../place-pointer.js'
import { type Evidence, inTurn, type Mend, type RuleContext, rule } from '../rule.js'
import type { Words } from '../words.js'
import { axisAside, firstWhere, moreSeparation } from './out-of-sight.js'
import {
  beyondOf,
  byLight,
  causeOf,
  depthText,
  figures,
  otherText,
  shadowsMissing,
  showsBy,
  sideText,
} from './seen.js'

const before = (aside: string, behind = '0.5 m', more = ''): string => `plan: 1
title: One large source behind the camera
camera: { lens: 85 mm, at: { distance: 3 m, aside: ${aside} }, aim: subject, aperture: f/8, shutter: 1/125, iso: 100, held-by: stand }
subject: { kind: person }
backdrop: { surface: { reflectance: 0.5 }, width: 4 m, height: 3 m, behind: ${behind} }
lights:
  large: { unit: head 600 Ws, modifier: softbox 2 x 2 m, meters: f/8, at: { angle: 0 deg left, distance: 4 m, height: 1.6 m } }
${more}wanted: { framing: head and shoulders, backdrop: any }
`
const wall =
  '  wall: { role: backdrop, unit: head 400 Ws, modifier: white umbrella 1 m, meters: f/11, at: { right: 1.6 m, before-backdrop: 40 cm, height: 1.9 m } }\n'

interface OffAxis extends Evidence {
  readonly shadow: ShadowSeen
  /** Where the light's axis meets the camera's distance, metres right of the centre line. */
  readonly axis: number
  /** Metres camera-right of that. */
  readonly off: number
}

export const cameraOffSourceAxis = rule<OffAxis>({
  id: 'camera-off-source-axis',
  family: 'shadow',
  level: 'warning',
  finds:
    'a camera so far off the axis of the one large source behind it that the subject no longer covers its own shadow',
  limits: {
    depth: {
      value: shows.stops,
      unit: 'stop',
      says: 'deeper on one side of the subject than on the other',
    },
  },
  why: 'One large source right behind the camera lights subject and backdrop alike, and throws every shadow where the subject hides it. A little aside and it looks out on one side.',
  formula:
    'the first distance off the line from the source past the face at which the shadow shows, as shadow-in-frame has it; solved by moving the camera',
  sources: [
    {
      kind: 'derived',
      says: 'aside by a, the shadow looks out by a × separation / camera distance in the plane of the subject',
    },
    {
      kind: 'common practice',
      says: 'with one source behind the camera, keep the lens in front of its middle',
    },
  ],
  basis: 'covered parts of the front, exact; the limits are common practice',
  fires: [
    { title: 'half a metre aside', plan: before('50 cm right') },
    { title: 'a little too far', plan: before('25 cm left') },
    { title: 'close to the wall it takes more', plan: before('1 m right', '0.3 m') },
  ],
  passes: [
    { title: 'on the axis', plan: before('0 cm right') },
    { title: 'just beside it', plan: before('5 cm right') },
    { title: 'the wall has its own light', plan: before('50 cm right', '0.5 m', wall) },
  ],

  needs: (context) => (largeBehindCamera(context.set) === undefined ? 'silent' : shadowsMissing(context)),

  detect: (context) => {
    const { set, plan } = context
    const light = largeBehindCamera(set)
    const [shadow] = light === undefined ? [] : byLight(set.shadows.filter((one) => one.light === light.name))
    if (light === undefined || shadow === undefined) return []
    const axis = axisOf(set, light.name)
    const off = set.scene.camera.eye[0] - axis
    return [
      {
        pointer: plan.places.stated('/camera/at/aside') ? '/camera/at/aside' : '/camera/at',
        also: [
          { pointer: lightPointer(light.name, 'at'), says: 'from its axis' },
          { pointer: '/backdrop/behind', says: 'so far behind the subject' },
        ],
        beyond: beyondOf(shadow, context),
        measured: { ...figures(shadow, context), 'off-axis': { value: 100 * Math.abs(off), unit: 'cm' } },
        cause: causeOf(shadow),
        shadow,
        axis,
        off,
      },
    ]
  },

  tell: (evidence, words, context) => {
    const { shadow, off } = evidence
    const half = halfWidth(evidence, context)
    const side = off < 0 ? 'camera-left' : 'camera-right'
    return {
      message: `the subject no longer covers its own shadow: it shows ${sideText(shadow, context)}, ${depthText(shadow.depth.stops, words)}, ${otherText(shadow.otherSide, words)} on the other side, as the camera stands ${words.small(Math.abs(off))} ${side} of the axis of ${shadow.light}`,
      why:
        half === undefined
          ? `${words.length(context.plan.backdrop!.behind)} before the backdrop it shows even from the axis: none at this separation`
          : `${words.length(context.plan.backdrop!.behind)} before the backdrop it stays hidden up to ${words.small(half)} off the axis on this side`,
    }
  },

  mend: (evidence, words, context) =>
    inTurn(
      () => backOntoAxis(evidence, words, context),
      () => moreSeparation(evidence.shadow, context, words),
    ),

  inShort: ({ off, shadow }, words) =>
    `from ${words.small(Math.abs(off))} off the axis of ${shadow.light} the subject no longer covers its own shadow`,
})

/** Metres: as wide as a person is, and more. */
const large = 0.9
/** Share of the light on the backdrop, anywhere in frame, that is as good as all. */
const asGoodAsAll = 2 ** -shows.stops

/** The one light on the backdrop, if its front is large and stands behind the camera. */
const largeBehindCamera = ({ scene, lit, backdropView }: ComputedSet): Light | undefined => {
  const { eye, forward } = scene.camera
  return lit.find(({ name }) => {
    const front = scene.lights.get(name)?.front
    return (
      front !== undefined &&
      Math.min(front.width, front.height) >= large &&
      dot(subtract(front.centre, eye), forward) < 0 &&
      backdropView?.samples.every(({ overCamera }) => (overCamera.gradient.get(name) ?? 0) >= asGoodAsAll) ===
        true
    )
  })
}

const axisOf = (set: ComputedSet, light: string): number => {
  const [x, y] = faceOf(set)
  return axisAside(set.scene.lights.get(light)!.front!.centre, [x, y], set.scene.camera.eye[1])
}

const cameraAt = (set: ComputedSet, aside: number): ComputedSet =>
  set.with({ knob: { knob: 'camera-aside' }, to: aside })

/** Metres off the axis, on the camera's side, from which the shadow shows; undefined where it does on the axis itself. */
const halfWidth = ({ shadow, axis, off }: OffAxis, { set, limits }: RuleContext): number | undefined => {
  const seen = (by: number) =>
    showsBy(cameraAt(set, axis + Math.sign(off) * by), shadow.light) + shows.stops > limits.depth!
  return seen(0) ? undefined : firstWhere(0, Math.abs(off), seen, 0.01)
}

const backOntoAxis = (evidence: OffAxis, words: Words, context: RuleContext): readonly Mend[] => {
  const { set, plan } = context
  const half = halfWidth(evidence, context)
  if (half === undefined) return []
  const { axis, off } = evidence
  const made = turn(plan, { knob: 'camera-aside' }, axis, 'nearest')
  if (made === undefined || made.short > 0) return []
  const after = set.with(made.change)
  return [
    {
      title: made.title,
      gives: `the subject covers its own shadow again, with ${words.small(half)} to spare on this side`,
      costs: `seen from ${words.length(Math.abs(made.change.to - axis - off))} further to ${off > 0 ? 'camera-left' : 'camera-right'}`,
      after,
    },
  ]
}
