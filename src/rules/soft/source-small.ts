import type { Light } from '../../language/plan.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { turn } from '../gear.js'
import { faceOf, keyLightsOf, strongestOf } from '../key-lights.js'
import { lightPointer, placePointer } from '../place-pointer.js'
import { pointText, whom } from '../place-words.js'
import { type Evidence, inTurn, type Mend, type RuleContext, rule } from '../rule.js'
import { movedAndHeld, solveFor } from '../solving.js'
import type { Words } from '../words.js'
import { bouncedOff, isBounced, spillU, straightShare, turnedAway } from './spilt.js'
import { type Subtended, softKinds, subtended } from './subtended.js'

const portrait = (key: string, shadow = 'any', subject = '{ kind: person }'): string => `plan: 1
title: How soft it is
camera: { lens: 85 mm, at: { distance: 2.6 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: ${subject}
backdrop: { surface: grey paper, behind: 1.5 m }
lights:
  key: { unit: head 400 Ws, ${key} }
wanted: { backdrop: any, shadow: ${shadow} }
`
const at = (distance: string) => `meters: f/8, at: { angle: 30 deg left, distance: ${distance}, height: 2 m }`

const bounced = (aim: string): string => `plan: 1
title: Bounced
room: { width: 8 m, length: 10 m, height: 3 m, walls: white paint, ceiling: white paint, floor: grey carpet }
camera: { lens: 35 mm, frame: horizontal, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 400 }
subject: { kind: person }
backdrop: { surface: white paint, width: 8 m, height: 3 m, behind: 2 m }
lights:
  key: { unit: flashgun, power: 1/8, at: camera, aim: ${aim} }
wanted: { framing: waist, backdrop: any, shadow: any }
`

interface Small extends Evidence {
  readonly light: Light
  readonly seen: Subtended
  readonly limit: number
  readonly wanted: boolean
  /** Of a light that is aimed at a surface: the share that comes straight all the same. */
  readonly straight: number | undefined
}

export const sourceSmall = rule<Small>({
  id: 'source-small',
  family: 'soft',
  level: 'note',
  finds: 'a key that looks too small from the face for the soft shadow that is wanted, or for its soft front',
  limits: {
    wanted: { value: 40, unit: 'deg', says: 'across as seen from the subject where a soft shadow is wanted' },
    front: {
      value: 25,
      unit: 'deg',
      says: 'across for an umbrella, softbox or octa as key on one person, and for what is bounced',
    },
    straight: {
      value: 1 / 2,
      unit: 'share',
      says: 'of the light of a bounced key at the face that may come straight, and make the shadows',
    },
  },
  why: 'Soft is what looks large from the face. An umbrella twice as far away is half as soft, and from across the room it is a bare bulb that takes four times the power.',
  formula:
    'the angle of the cone with the solid angle of the front; the edge of a shadow = size × distance to what it falls on / distance of the light',
  sources: [
    {
      kind: 'derived',
      says: 'edges of shadows by similar triangles; solid angle of a polygon, in closed form',
    },
    {
      kind: 'common practice',
      says: 'what is bounced is meant to be soft; what of it falls on the face straight is as hard as a bare flash',
    },
    {
      kind: 'common practice',
      says: 'soft up to about one and a half times its size away; well over twice its size it is used for reach, not for softness',
    },
  ],
  basis: 'solid angle of the front; the limits are common practice',
  fires: [
    {
      title: 'an umbrella far away',
      plan: portrait(`modifier: white umbrella 1 m, ${at('2.6 m')}`),
    },
    { title: 'a reflector where a soft shadow is wanted', plan: portrait(at('1.4 m'), 'soft') },
    {
      title: 'a box that would do, but for the soft shadow',
      plan: portrait(`modifier: octa 90 cm, ${at('1.4 m')}`, 'soft'),
    },
    {
      title: 'a flash aimed at the ceiling, but so flat that most of it comes straight',
      plan: bounced('ceiling above subject'),
    },
  ],
  passes: [
    { title: 'a flash aimed at the ceiling over the camera', plan: bounced('ceiling above camera') },
    {
      title: 'the usual box at the usual distance',
      plan: portrait(`modifier: softbox 60 x 90 cm, ${at('1.5 m')}`),
    },
    { title: 'a reflector: hard on purpose', plan: portrait(at('1.4 m')) },
    {
      title: 'a large octa near, soft is wanted',
      plan: portrait(`modifier: octa 150 cm, ${at('1.5 m')}`, 'soft'),
    },
    {
      title: 'a bottle is lit as it likes',
      plan: portrait(
        `modifier: softbox 40 x 40 cm, ${at('1.4 m')}`,
        'any',
        '{ kind: object, height: 30 cm, stands-on: { height: 1 m } }',
      ),
    },
  ],

  needs: ({ set, plan, limits }) => {
    const key = keyOf(set)
    // A group is lit from afar for evenness, an object as it likes.
    if (key === undefined || (plan.subject.kind !== 'person' && plan.wanted.shadow !== 'soft'))
      return 'silent'
    return subtended(set, key, faceOf(set)) === undefined && !(spillOf(set, key, limits) > 0)
      ? {
          because: `${key.name} works by way of a surface, and how large it lights that the plan does not say`,
        }
      : undefined
  },

  detect: ({ set, plan, limits }) => {
    const light = keyOf(set)
    const bounced = light !== undefined && isBounced(light)
    const seen = light && subtended(set, light, faceOf(set), bounced)
    if (light === undefined || seen === undefined) return []
    const wanted = plan.wanted.shadow === 'soft'
    const isSoft = light.modifier !== undefined && softKinds.includes(light.modifier.kind)
    if (!wanted && !isSoft && !bounced && seen.through === undefined) return []
    const limit = wanted ? limits.wanted! : limits.front!
    if (seen.degrees >= limit - slack) return []
    const straight = bounced ? straightShare(set, light) : undefined
    return [
      {
        pointer: light.at.by === 'camera' ? lightPointer(light.name, 'at') : placePointer(light),
        also: wanted ? [{ pointer: '/wanted/shadow', says: 'a soft shadow is wanted' }] : [],
        beyond: bounced ? { stops: spillOf(set, light, limits), u: spillU } : 'certain',
        measured: {
          across: { value: seen.degrees, unit: 'deg', limit, side: 'at-least' },
          ...(straight === undefined
            ? {}
            : { straight: { value: straight, unit: 'share', limit: limits.straight!, side: 'at-most' } }),
        },
        straight,
        light,
        seen,
        limit,
        wanted,
      },
    ]
  },

  tell: ({ light, seen, limit, wanted, straight }, words, { plan }) => {
    const place = pointText(plan, 'subject')
    const source = seen.through === undefined ? light.name : `${seen.through} before ${light.name}`
    const angle = (degrees: number) => `${Math.round(degrees * 10) / 10} deg`
    const past =
      straight === undefined
        ? ''
        : `${Math.round(100 * straight)} % of the light of ${light.name} comes straight, past ${bouncedOff(light.aim)}, and `
    return {
      message: `${wanted ? 'shadows get edges where soft ones are wanted' : `shadows on ${place} get edges`}: ${past}${straight === undefined ? source : 'it'} looks ${angle(seen.degrees)} large from there, ${angle(limit)} is the least`,
      why:
        seen.away === undefined
          ? 'the disc of the sun'
          : `${words.small(seen.across!)} across, ${words.length(seen.away)} away: a shadow thrown ${words.small(nose)} far has an edge ${words.small((nose * seen.across!) / seen.away)} wide`,
    }
  },

  mend: (evidence, words, context) =>
    inTurn(
      () => (evidence.straight === undefined ? [] : turnedAway(context.set, evidence.light, words)),
      () => nearer(evidence, words, context),
      () => larger(evidence, words),
      () =>
        evidence.seen.away === undefined
          ? [{ title: 'a scrim over the subject, or open shade', gives: 'a source as large as the scrim' }]
          : [],
    ),
})

/** Degrees. */
const slack = 1e-6
/** Metres: from the tip of the nose to where its shadow falls. Common practice, no source. */
const nose = 0.05
/** Degrees inside the limit that a mend aims at. */
const inside = 1

const keyOf = (set: ComputedSet): Light | undefined => {
  const keys = keyLightsOf(set, 'key')
  return strongestOf(set, keys.length > 0 ? keys : set.keyLights)
}

/** Stops of what comes straight over what may, against what is thrown back. */
const spillOf = (set: ComputedSet, light: Light, limits: RuleContext['limits']): number => {
  const straight = isBounced(light) ? straightShare(set, light) : undefined
  const odds = (share: number): number => Math.log2(share / (1 - share))
  return straight === undefined || straight <= 0
    ? Number.NEGATIVE_INFINITY
    : Math.min(10, odds(straight)) - odds(limits.straight!)
}

const nearer = (
  { light, seen, limit, straight }: Small,
  words: Words,
  { set, plan }: RuleContext,
): readonly Mend[] => {
  if (straight !== undefined) return []
  const knob = { knob: 'light-distance', light: light.name } as const
  const today = set.scene.lights.get(light.name)?.distance
  if (today === undefined || seen.through !== undefined || light.unit.kind === 'window') return []
  const wanted = solveFor(
    today,
    0.3,
    (to) => subtended(set.with({ knob, to }), light, faceOf(set))?.degrees,
    limit + inside,
  )
  const turned = wanted === undefined ? undefined : turn(plan, knob, wanted)
  if (turned === undefined || turned.short > 0) return []
  const held = movedAndHeld(set, light.name, turned.change.to)
  const less = held === undefined ? '' : `${words.howMany(Math.abs(held.stops))} less power, `
  return [
    {
      title: turned.title,
      gives: `${light.name} looks ${Math.round(limit + inside)} deg large`,
      costs: `${less}faster fall-off behind ${whom(plan)}`,
      after: held?.set ?? set.with(turned.change),
    },
  ]
}

/** Nobody carries a larger one, metres. */
const largest = 2.2

const larger = ({ light, seen, limit, straight }: Small, words: Words): readonly Mend[] => {
  if (
    straight !== undefined ||
    seen.away === undefined ||
    seen.through !== undefined ||
    light.unit.kind === 'window'
  )
    return []
  const needs = 2 * seen.away * Math.tan(((limit + inside) * Math.PI) / 360)
  const size = Math.ceil(needs * 20) / 20
  return size > largest
    ? []
    : [
        {
          title: `an umbrella or octa of ${words.length(size)} on ${light.name}`,
          gives: 'as soft from where it stands',
        },
      ]
}
