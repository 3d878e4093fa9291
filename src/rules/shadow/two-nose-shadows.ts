import type { Light } from '../../language/plan.js'
import { difference } from '../../light/figure.js'
import type { ComputedSet, MeterFigure } from '../../set/computed-set.js'
import { inDegrees } from '../../units/quantity.js'
import { turnLight } from '../gear.js'
import { faceOf, keyLightsOf, strongestOf } from '../key-lights.js'
import { keyMissing } from '../known.js'
import { degreesAside, sideOf, towardLight } from '../light-direction.js'
import { lightPointer } from '../place-pointer.js'
import { type Advice, type Evidence, type RuleContext, rule } from '../rule.js'
import { inside } from '../solving.js'

import type { Words } from '../words.js'

const pair = (fill: string, meters: string): string => `plan: 1
title: Key and fill on two sides
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
  key: { unit: head 400 Ws, modifier: standard reflector, meters: f/8, at: { angle: 35 deg left, distance: 1.8 m, height: 2.2 m } }
  fill: { unit: head 400 Ws, modifier: standard reflector, meters: ${meters}, at: { angle: ${fill}, distance: 2 m, height: 2 m } }
`

interface TwoShadows extends Evidence {
  readonly light: Light
  readonly key: string
  /** Degrees from the line to the camera, camera-right positive. */
  readonly aside: number
  /** Stops under the key. */
  readonly under: number
  readonly u: number
}

export const twoNoseShadows = rule<TwoShadows>({
  id: 'two-nose-shadows',
  family: 'shadow',
  level: 'note',
  finds: 'a fill from the other side that throws a second shadow of the nose',
  limits: {
    within: { value: 1.5, unit: 'stop', says: 'of the key: a fill that is nearer to it than this' },
    aside: { value: 20, unit: 'deg', says: 'from the line to the camera, on the other side from the key' },
  },
  why: 'Nature has one sun. Two shadows crossing under one nose look like an accident; a fill near the lens throws its shadow where the camera does not see it.',
  formula:
    '|log2(H of the key / H of the fill)| at the face, dome toward the camera, for a fill whose bearing from the face is beyond the limit on the other side of the line to the camera',
  sources: [
    { kind: 'derived', says: 'a fill 1.5 stops under the key still darkens its own shadow by 0.44 stop' },
    { kind: 'common practice', says: 'a fill belongs within 20 degrees of the lens' },
  ],
  basis: 'incident metering, ISO 2720; the limits are common practice',
  fires: [
    { title: 'two heads at 45 degrees, one stop apart', plan: pair('45 deg right', 'f/5.6') },
    { title: 'just beyond the limit', plan: pair('22 deg right', 'f/5.6') },
    { title: 'just too strong', plan: pair('45 deg right', 'f/5.0') },
  ],
  passes: [
    { title: 'beside the lens', plan: pair('10 deg right', 'f/5.6') },
    { title: 'just inside the limit', plan: pair('18 deg right', 'f/5.6') },
    { title: 'on the same side as the key', plan: pair('60 deg left', 'f/5.6') },
    { title: 'two stops under', plan: pair('45 deg right', 'f/4') },
  ],

  needs: (context) => {
    if (context.plan.subject.kind === 'object') return 'silent'
    const roles = context.set.keyLights.map((light) => light.role)
    return roles.includes('key') && roles.includes('fill') ? keyMissing(context) : 'silent'
  },

  detect: (context) => {
    const { set, limits } = context
    const key = strongestOf(set, keyLightsOf(set, 'key'))
    const keyAside = key && asideOf(set, key.name)
    const keyAlone = key && atFace(set, key)
    if (key === undefined || keyAside === undefined || keyAlone === undefined) return []
    return set.keyLights.flatMap((light): TwoShadows[] => {
      const aside = light.role === 'fill' ? asideOf(set, light.name) : undefined
      const alone = atFace(set, light)
      if (aside === undefined || alone === undefined) return []
      if (Math.abs(aside) <= limits.aside! || aside * keyAside >= 0) return []
      const figure = difference(keyAlone.figure, alone.figure)
      const u = context.u(figure)
      return [
        {
          pointer: lightPointer(light.name, 'at'),
          also: [{ pointer: lightPointer(key.name), says: 'on the other side from this light' }],
          beyond: { stops: limits.within! - Math.abs(figure.stops), u },
          measured: {
            'under-key': { value: figure.stops, unit: 'stop', u, limit: limits.within!, side: 'at-least' },
            aside: { value: Math.abs(aside), unit: 'deg', limit: limits.aside!, side: 'at-most' },
          },
          light,
          key: key.name,
          aside,
          under: figure.stops,
          u,
        },
      ]
    })
  },

  tell: ({ light, key, aside, under }, words) => ({
    message: `two shadows cross under the nose: ${light.name} stands ${Math.round(Math.abs(aside))} deg ${sideOf(aside)} of the lens, ${words.against(-under, key)}`,
    why: `${key} comes from the other side; from both sides shadows show down to 1.5 stops under, the softer the larger the fill`,
  }),

  mend: (evidence, words, context) => [
    ...nearTheLens(evidence, context),
    ...weaker(evidence, words, context),
    { title: `a white panel in place of ${evidence.light.name}`, gives: 'fill without a shadow of its own' },
  ],
})

const asideOf = ({ scene }: ComputedSet, light: string): number | undefined => {
  const face = faceOf({ scene })
  const toward = towardLight(scene, light, face)
  return toward && degreesAside(scene, face, toward)
}

const atFace = (set: ComputedSet, light: Light): MeterFigure | undefined =>
  set.reading({ at: 'subject', of: [light.name], dome: 'raised', faces: 'camera' })

/** Well inside the limit: a fill is as wide as its front. */
const spare = 5

const nearTheLens = ({ light, aside }: TwoShadows, { set, limits }: RuleContext): readonly Advice[] => {
  if (light.at.by !== 'tape' || light.unit.kind === 'sun') return []
  const stays = Math.sign(aside) * (limits.aside! - spare)
  // Bearings count from the centre line, the limit from the line to the camera.
  const right = -inDegrees(light.at.angleLeft) + stays - aside
  const side = Math.abs(right) < 0.5 ? '' : right < 0 ? ' left' : ' right'
  return [
    {
      title: `lights.${light.name}.at.angle → ${Math.round(Math.abs(right))} deg${side}`,
      gives: `${limits.aside! - spare} deg ${sideOf(aside)} of the lens: its shadow falls behind the nose`,
      ...(set.plan.wanted.ratio?.kind === 'lit-to-shadow' ? { costs: 'the ratio moves a little' } : {}),
    },
  ]
}

const weaker = (
  { light, under, u }: TwoShadows,
  words: Words,
  { plan, set, limits }: RuleContext,
): readonly Advice[] => {
  const turned = turnLight(plan, light.name, under - limits.within! - inside(u))
  const changed = turned && set.with(turned.change)
  if (turned === undefined || changed?.key === undefined || turned.short > 0) return []
  const by = -turned.change.to
  return [
    {
      title: turned.title,
      gives: `${words.howMany(under + by)} under the key`,
      costs: `darker shadows; the key reading goes to ${words.f(changed.key.fNumber)}`,
    },
  ]
}
