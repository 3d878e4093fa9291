import type { Light } from '../../language/plan.js'
import { difference, type Figure } from '../../light/figure.js'
import type { Receptor } from '../../light/receptor.js'
import type { ScenePoint } from '../../scene/scene.js'
import { backdropLights } from '../backdrop/on-the-backdrop.js'
import { keyMissing } from '../known.js'
import { towardLight } from '../light-direction.js'
import { lightPointer, placePointer } from '../place-pointer.js'
import { type Advice, type Evidence, type RuleContext, rule } from '../rule.js'
import { reached } from '../tiers.js'
import type { Words } from '../words.js'

const lights = (paper: string, panels = ''): string => `plan: 1
title: Lights for the paper beside the subject
camera: { lens: 85 mm, at: { distance: 2.4 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: white paper, behind: 2.4 m }
lights:
  key: { unit: head 400 Ws, modifier: softbox 60 x 90 cm, meters: f/8, at: { angle: 35 deg right, distance: 1.3 m, height: 2 m } }
  paper: { role: backdrop, unit: head 400 Ws, modifier: standard reflector, meters: f/8, ${paper} }
${panels}`

interface OnSubject extends Evidence {
  readonly light: Light
  readonly point: string
  readonly reKey: number
  readonly limit: number
}

export const backdropLightOnSubject = rule<OnSubject>({
  id: 'backdrop-light-on-subject',
  family: 'wrap',
  level: 'warning',
  finds: "a light meant for the backdrop that falls on the subject's outline",
  limits: {
    note: { value: -3, unit: 'stop', says: 'against the key, for a note' },
    warning: { value: -2, unit: 'stop', says: 'against the key, for a warning' },
  },
  why: 'What a backdrop light spills on the subject is a hard rim that nobody set: on one ear, one cheek, one shoulder. It looks like wrap, but no change of the backdrop helps; a flag does.',
  formula:
    'log2(H / H of the key reading), H of the one light, straight, at the left and right edge of the subject as the camera sees them, flat and turned to the light, less what lies behind the outline there and what stands between; the largest counts',
  sources: [
    { kind: 'common practice', says: 'backdrop lights are flagged off the subject' },
    { kind: 'standard', says: 'incident metering N² = H·S/C, C = 250: ISO 2720' },
  ],
  basis: 'incident metering, ISO 2720; the limits are common practice',
  fires: [
    {
      title: 'an umbrella level with the subject',
      plan: lights('at: { left: 1.6 m, behind: 10 cm, height: 1.6 m }').replace(
        'modifier: standard reflector',
        'modifier: white umbrella 1 m',
      ),
    },
    {
      title: 'a reflector beside the subject, aimed across',
      plan: lights('at: { left: 1.6 m, behind: 0 cm, height: 1.6 m }, aim: backdrop-right'),
    },
  ],
  passes: [
    {
      title: 'close before the paper, turned away',
      plan: lights('at: { left: 1.4 m, before-backdrop: 1 m, height: 1.6 m }'),
    },
    {
      title: 'a flag between',
      plan: lights(
        'at: { left: 1.6 m, behind: 0 cm, height: 1.6 m }, aim: backdrop-right',
        'panels:\n  flag-left: { kind: flag, size: 60 x 200 cm, at: { left: 90 cm, behind: 0 cm, height: 1.5 m }, faces: left }\n',
      ),
    },
  ],

  needs: (context) => (backdropLights(context.set).length === 0 ? 'silent' : keyMissing(context)),

  detect: (context) =>
    backdropLights(context.set).flatMap((light): OnSubject[] => {
      const most = mostAt(light, context)
      if (most === undefined) return []
      const { point, figure } = most
      const [value, u] = [figure.stops, context.u(figure)]
      const { level, limit, beyond } = reached((bound) => value - bound, u, [
        { level: 'note', limit: context.limits.note! },
        { level: 'warning', limit: context.limits.warning! },
      ])
      return [
        {
          pointer: placePointer(light),
          also: [{ pointer: lightPointer(light.name), says: 'meant for the backdrop' }],
          beyond,
          level,
          measured: { 're-key': { value, unit: 'stop', u, limit, side: 'at-most' } },
          cause: `where ${light.name} stands`,
          scale: { value, u, needs: limit, against: 'against the key' },
          light,
          point,
          reKey: value,
          limit,
        },
      ]
    }),

  tell: ({ light, point, reKey, limit }, words) => ({
    message: `a rim that nobody set, ${placeText[point]}: ${light.name} falls on the subject ${words.against(reKey, 'the key')}, ${words.against(limit, 'it')} is the limit`,
    why: 'straight from the light, which is meant for the backdrop; a surface there that is turned to it',
  }),

  mend: (evidence, words, context) => [
    {
      title: `a flag or a v-flat between ${evidence.light.name} and the subject`,
      gives: 'the backdrop keeps its light',
    },
    ...behindSubject(evidence, words, context),
    { title: `${evidence.light.name} turned further from the subject, or with barn doors or a grid` },
  ],

  inShort: ({ light, reKey }, words) =>
    `${light.name} falls on the subject ${words.against(reKey, 'the key')}`,
})

/** The back itself is not in the picture. */
const points = ['subject-left', 'subject-right'] as const
const placeText: Readonly<Record<string, string>> = {
  'subject-left': 'on the camera-left edge',
  'subject-right': 'on the camera-right edge',
}

const mostAt = (
  light: Light,
  { set }: RuleContext,
): { readonly point: string; readonly figure: Figure } | undefined => {
  const { key, scene } = set
  if (key === undefined) return undefined
  let most: { readonly point: string; readonly figure: Figure } | undefined
  for (const name of points) {
    const point = scene.points.get(name)
    const receptor = point && turnedTo(point, towardLight(scene, light.name, point.at))
    const got = receptor && set.exposure(receptor, [light.name], ['direct'])
    if (got === undefined) continue
    const figure = difference(got.figure, key.figure)
    if (most === undefined || figure.stops > most.figure.stops) most = { point: name, figure }
  }
  return most
}

/** Of all surfaces near the edge the one that gets most: it is turned to the light, and not seen from behind the outline. */
const turnedTo = ({ at, normal }: ScenePoint, toward: ScenePoint['at'] | undefined): Receptor | undefined =>
  toward === undefined
    ? undefined
    : { at, normal: toward, kind: 'flat', ...(normal === undefined ? {} : { against: normal }) }

/** Nearer the backdrop than the subject is, a front turned to the paper cannot see the subject. */
const behindSubject = (
  { light, limit }: OnSubject,
  words: Words,
  context: RuleContext,
): readonly Advice[] => {
  const { set, plan } = context
  const front = set.scene.lights.get(light.name)?.front
  if (front === undefined || set.scene.backdrop === undefined || light.at.by === 'camera') return []
  const today = set.scene.backdrop.y - front.centre[1]
  for (const share of [0.75, 0.6, 0.45]) {
    const before = Math.round((today * share) / 0.05) * 0.05
    if (before < 0.6) return []
    const after = set.with({ knob: { knob: 'before-backdrop', light: light.name }, to: before })
    const most = mostAt(light, { ...context, set: after, plan })
    if (most === undefined || most.figure.stops < limit - 0.3)
      return [
        {
          title: `${light.name} nearer the backdrop: ${words.length(before)} before it`,
          gives: `it falls on the subject ${most === undefined ? 'no more' : words.against(most.figure.stops, 'the key')}`,
          costs: 'a smaller and less even pool of light on the backdrop',
        },
      ]
  }
  return []
}
