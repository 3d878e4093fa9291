import type { Light } from '../../language/plan.js'
import { rayMeetsFace } from '../../scene/ray.js'
import { add, dot, scale, subtract, unit, type Vec3 } from '../../scene/vector.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { roundForTape } from '../../units/length.js'
import { inDegrees, type Metres } from '../../units/quantity.js'
import { turn } from '../gear.js'
import { faceOf, keyLightsOf, strongestOf } from '../key-lights.js'
import { lightMissing } from '../known.js'
import { degreesUp, towardLight } from '../light-direction.js'
import { lightPointer } from '../place-pointer.js'
import { type Advice, type Evidence, type NotNeeded, type RuleContext, rule } from '../rule.js'
import { movedAndHeld } from '../solving.js'
import type { Words } from '../words.js'

const keyAt = (at: string, subject = '{ kind: person, faces-at: 1.6 m }'): string => `plan: 1
title: How high the key stands
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: ${subject}
lights:
  key: { unit: head 400 Ws, modifier: beauty dish 55 cm, meters: f/8, at: ${at} }
`

interface KeyHeight extends Evidence {
  readonly light: Light
  /** Degrees over the horizontal, as seen from the face. */
  readonly up: number
}

export const keyHeight = rule<KeyHeight>({
  id: 'key-height',
  family: 'exposure',
  level: 'note',
  finds: 'a key so high that eye sockets go dark, or so low that nothing shapes the face',
  limits: {
    lowest: { value: 10, unit: 'deg', says: 'up from the face to the middle of the key, at least' },
    highest: { value: 50, unit: 'deg', says: 'up from the face to the middle of the key, at most' },
    axis: {
      value: 15,
      unit: 'deg',
      says: 'from the lens, seen from the face: a low key as near to it is meant to be flat',
    },
    flat: { value: 2, unit: 'count', says: 'a wanted ratio of lit side to shadow side up to this is flat' },
  },
  why: 'Brows shade the eyes from light that comes steeply, and with the eyes go the catchlights. Light from the height of the eyes or under them leaves no shadow under nose and chin, or throws it upward. A key on the axis of the lens, a large front behind the camera or a ring about it is flat on purpose: there its height is the height of the lens.',
  formula: 'the angle over the horizontal from the face to the middle of the front of the strongest key',
  sources: [
    { kind: 'published', says: 'portrait tutorials put the key 45 degrees up for the classic patterns' },
    {
      kind: 'derived',
      says: 'a key 1.2 m away and 60 cm over the eyes stands 27 to 30 degrees up; its nose shadow ends over the upper lip',
    },
    { kind: 'common practice', says: 'between 10 and 50 degrees' },
    { kind: 'common practice', says: 'light from the axis of the lens, and a ratio of 2:1, are called flat' },
  ],
  basis: 'plain geometry; the limits are common practice',
  fires: [
    { title: 'almost overhead', plan: keyAt('{ angle: 20 deg left, distance: 1.2 m, height: 2.7 m }') },
    { title: 'a little too steep', plan: keyAt('{ angle: 20 deg left, distance: 1.2 m, height: 2.55 m }') },
    { title: 'level with the eyes', plan: keyAt('{ angle: 40 deg right, distance: 1.5 m, height: 1.6 m }') },
    { title: 'a little too low', plan: keyAt('{ right: 1 m, front: 1 m, height: 1.82 m }') },
  ],
  passes: [
    { title: 'the classic height', plan: keyAt('{ angle: 45 deg left, distance: 1.4 m, height: 2.5 m }') },
    { title: 'just not too steep', plan: keyAt('{ angle: 20 deg left, distance: 1.2 m, height: 2.5 m }') },
    { title: 'just high enough', plan: keyAt('{ right: 1 m, front: 1 m, height: 1.9 m }') },
    {
      title: 'a dish right over the lens: flat on purpose',
      plan: keyAt('{ angle: 0 deg, distance: 2 m, height: 1.8 m }'),
    },
    {
      title: 'a large front behind the camera, which looks from within it',
      plan: keyAt('{ angle: 16 deg left, distance: 2.7 m, height: 1.6 m }').replace(
        'beauty dish 55 cm',
        'octa 180 cm',
      ),
    },
    {
      title: 'a window level with the face, that reaches well over it',
      plan: keyAt('{ left: 1.6 m, front: 40 cm, height: 1.6 m }').replace(
        'unit: head 400 Ws, modifier: beauty dish 55 cm, meters: f/8,',
        'unit: window, size: 120 x 150 cm, faces: right, reads: f/2.8, shutter: 1/60, iso: 100,',
      ),
    },
    {
      title: 'a ratio that is wanted flat',
      plan: `${keyAt('{ angle: 40 deg right, distance: 1.5 m, height: 1.6 m }')}wanted: { ratio: { lit-to-shadow: "1.5:1" } }
`,
    },
    {
      title: 'a bottle has no eyes',
      plan: keyAt(
        '{ angle: 20 deg left, distance: 1 m, height: 2 m }',
        '{ kind: object, height: 30 cm, stands-on: { height: 1 m } }',
      ),
    },
  ],

  needs: ({ set, plan }) => {
    if (plan.subject.kind === 'object' || plan.subject.pose === 'lying') return 'silent'
    const key = strongestOf(set, keyLightsOf(set, 'key'))
    return key === undefined ? 'silent' : blocked(set, key)
  },

  detect: ({ set, limits }) => {
    const light = strongestOf(set, keyLightsOf(set, 'key'))
    const face = faceOf(set)
    const toward = light && towardLight(set.scene, light.name, face)
    const looks = set.scene.subject.figures[0]?.looks
    // Light from behind the face is a rim: it reaches no eyes.
    if (light === undefined || toward === undefined || looks === undefined || dot(toward, looks) <= 0)
      return []
    const up = degreesUp(toward)
    const high = up - limits.highest! > slack
    if (!high && limits.lowest! - up <= slack) return []
    if (!high && isHighWindow(set, light, limits)) return []
    if (!high && (isFlatWanted(set, limits) || isOnAxis(set, light, toward, limits))) return []
    return [
      {
        pointer: heightPointer(light),
        beyond: 'certain',
        measured: {
          up: {
            value: up,
            unit: 'deg',
            limit: high ? limits.highest! : limits.lowest!,
            side: high ? 'at-most' : 'at-least',
          },
        },
        cause: `where ${light.name} stands`,
        light,
        up,
      },
    ]
  },

  tell: ({ light, up }, words, { set, limits }) => ({
    message:
      up > limits.highest!
        ? `eye sockets go dark and catchlights hide under the brows: ${light.name} stands ${Math.round(up)} deg up from the face, ${limits.highest} deg is the limit`
        : `${up < -slack ? 'shadows fall upward on the face' : 'no shadow under nose and chin shapes the face'}: ${light.name} stands ${up < -slack ? `${Math.round(-up)} deg under` : `${Math.round(up)} deg over`} the height of the face, ${limits.lowest} deg up is the least`,
    why: `the middle of its front at ${words.length(frontHeight(set, light))}, the face at ${words.length(faceOf(set)[2])}`,
  }),

  mend: (evidence, words, context) => [
    ...otherHeight(evidence, words, context),
    ...otherDistance(evidence, words, context),
    ...(evidence.up > context.limits.highest!
      ? [{ title: 'a fill or a white panel low in front', gives: 'light in the eye sockets' }]
      : []),
  ],
})

/** Degrees: nothing is placed this well. */
const slack = 1e-6

/** Key to fill is told light against light, and so one less: a key level with its fill lights one side twice. */
const isFlatWanted = ({ plan }: ComputedSet, limits: RuleContext['limits']): boolean => {
  const { ratio } = plan.wanted
  return ratio !== undefined && ratio.ratio + (ratio.kind === 'key-to-fill' ? 1 : 0) <= limits.flat!
}

/** A window is where it is, and goes by its upper part: the sky is there, the ground under it. */
const isHighWindow = (set: ComputedSet, light: Light, limits: RuleContext['limits']): boolean => {
  const front = set.scene.lights.get(light.name)?.front
  if (light.unit.kind !== 'window' || front === undefined) return false
  const top = add(front.centre, scale(front.up, front.height / 2))
  return degreesUp(unit(subtract(top, faceOf(set)))) >= limits.lowest!
}

const isOnAxis = (set: ComputedSet, light: Light, toward: Vec3, limits: RuleContext['limits']): boolean => {
  const face = faceOf(set)
  const lens = unit(subtract(set.scene.camera.eye, face))
  if (inDegrees(Math.acos(Math.min(1, dot(toward, lens)))) <= limits.axis!) return true
  const front = set.scene.lights.get(light.name)?.front
  return front !== undefined && rayMeetsFace(front, face, lens) !== undefined
}

/** A panel before a key moves no light; a key that works by way of a surface comes from there. */
const blocked = (set: ComputedSet, light: Light): NotNeeded | undefined => {
  const { aim } = light
  return aim.at === 'ceiling' || aim.at === 'panel' || aim.at === 'wall'
    ? lightMissing(set, light)
    : undefined
}

const heightPointer = (light: Light): string =>
  light.at.by === 'camera'
    ? lightPointer(light.name, 'at')
    : light.at.by === 'tape' && light.at.height === undefined && light.at.up !== undefined
      ? lightPointer(light.name, 'at', 'up')
      : lightPointer(light.name, 'at', 'height')

const frontHeight = (set: ComputedSet, light: Light): number =>
  set.scene.lights.get(light.name)?.front?.centre[2] ?? faceOf(set)[2]

/** Degrees inside the limit that a mend aims at. */
const inside = 5

const aimedUp = ({ up }: KeyHeight, { limits }: RuleContext): number =>
  up > limits.highest! ? limits.highest! - inside : limits.lowest! + inside

const otherHeight = (evidence: KeyHeight, words: Words, context: RuleContext): readonly Advice[] => {
  const { set, plan } = context
  const { light, up } = evidence
  const { at } = light
  const to = aimedUp(evidence, context)
  const gives = `the light ${to} deg up`
  if (light.unit.kind === 'sun')
    return [{ title: 'another hour, or open shade', gives: 'a sun that stands lower' }]
  if (light.unit.kind === 'window')
    return [{ title: 'the subject lower before the window, or further from it', gives }]
  if (at.by === 'camera')
    return [{ title: 'off the camera: in the hand or on a stand, over and beside the lens', gives }]
  if (heightPointer(light).endsWith('/up'))
    return [{ title: `lights.${light.name}.at.up → ${to} deg`, gives }]
  const front = set.scene.lights.get(light.name)?.front?.centre
  const distance = set.scene.lights.get(light.name)?.distance
  if (front === undefined || distance === undefined) return []
  const face = faceOf(set)
  const radians = (to * Math.PI) / 180
  const rise =
    at.by === 'tape'
      ? distance * Math.sin(radians)
      : Math.hypot(front[0] - face[0], front[1] - face[1]) * Math.tan(radians)
  const over = at.height?.over === 'table' ? (plan.subject.standsOn?.height ?? 0) : 0
  const height = roundForTape(
    (face[2] + rise - over) as Metres,
    plan.lengths === 'feet' ? 'feet' : 'metric',
    up > to ? 'less' : 'more',
  )
  if (height <= 0 || (plan.room !== undefined && height + over > plan.room.height)) return []
  return [
    {
      title: `lights.${light.name}.at.height → ${words.length(height)}${over > 0 ? ' over table' : ''}`,
      gives,
      ...(light.stand?.kind === 'boom' ? { costs: 'keep it out of the frame' } : {}),
    },
  ]
}

/** Further off at the same height the light comes in flatter; nearer, steeper. */
const otherDistance = (evidence: KeyHeight, words: Words, context: RuleContext): readonly Advice[] => {
  const { set, plan } = context
  const { light, up } = evidence
  const to = aimedUp(evidence, context)
  const rise = frontHeight(set, light) - faceOf(set)[2]
  const { at } = light
  if (up < to || rise <= 0 || at.by === 'camera' || (at.by === 'tape' && at.height === undefined)) return []
  if (light.unit.kind === 'sun' || light.unit.kind === 'window') return []
  const distance = rise / Math.sin((to * Math.PI) / 180)
  const turned = turn(plan, { knob: 'light-distance', light: light.name }, distance)
  const moved = turned && movedAndHeld(set, light.name, turned.change.to)
  if (turned === undefined || turned.short > 0) return []
  return [
    {
      title: turned.title,
      gives: `the light ${to} deg up from where it hangs`,
      costs: `${moved === undefined ? 'more power' : `${words.howMany(moved.stops)} more power`} for the same exposure, and harder light`,
    },
  ]
}
