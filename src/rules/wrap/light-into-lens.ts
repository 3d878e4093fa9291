import type { Light } from '../../language/plan.js'
import { difference } from '../../light/figure.js'
import { inDegrees } from '../../units/quantity.js'
import { keyMissing } from '../known.js'
import { lightPointer, placePointer } from '../place-pointer.js'
import { type Advice, type Evidence, type RuleContext, rule } from '../rule.js'
import { type SeenFromLens, seenFromLens } from './into-lens.js'

const rim = (
  more: string,
  at = 'angle: 140 deg left, distance: 1.4 m, height: 1.9 m',
  panels = '',
): string => `plan: 1
title: A light from behind
camera: { lens: 85 mm, at: { distance: 2.6 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
  key: { unit: head 400 Ws, modifier: softbox 60 x 90 cm, meters: f/8, at: { angle: 35 deg right, distance: 1.3 m, height: 2 m } }
  rim-left: { unit: head 400 Ws, ${more}, meters: f/8, at: { ${at} } }
${panels}`

interface IntoLens extends Evidence {
  readonly light: Light
  readonly seen: SeenFromLens
  /** Stops against the key reading. */
  readonly reKey: number
  readonly limit: number
}

export const lightIntoLens = rule<IntoLens>({
  id: 'light-into-lens',
  family: 'wrap',
  level: 'warning',
  finds:
    'a light whose front looks into the lens from the frame or from within 30 degrees of it, with nothing between',
  limits: {
    most: {
      value: -4,
      unit: 'stop',
      says: 'on the lens against the key, of a light whose front looks at it',
    },
  },
  why: 'A light that shines on the front of the lens makes ghosts and a veil, also where it stands well outside the frame. A hood keeps out little of what comes from so near the frame; a flag beside the light keeps out all of it.',
  formula:
    'log2(H / H of the key reading), H of the one light, straight, on a plane at the lens that faces it, less what stands between; for lights within 30 degrees of the frame whose axis passes the lens within 60 degrees',
  sources: [
    { kind: 'common practice', says: 'if the front of a light can be seen from the lens, flag it' },
    { kind: 'memory', says: 'what lies more than 30 degrees off the frame is kept out by hood and barrel' },
  ],
  basis: 'light straight on the lens; the limit is common practice',
  fires: [
    { title: 'an open strip behind the subject', plan: rim('modifier: strip 30 x 120 cm') },
    {
      title: 'a bare reflector just beside the frame',
      plan: rim('modifier: standard reflector', 'angle: 165 deg left, distance: 1.6 m, height: 1.9 m'),
    },
  ],
  passes: [
    {
      title: 'a flag between the light and the lens',
      plan: rim(
        'modifier: strip 30 x 120 cm',
        'angle: 140 deg left, distance: 1.4 m, height: 1.9 m',
        'panels:\n  flag-left: { kind: flag, size: 60 x 200 cm, at: { left: 80 cm, behind: 60 cm, height: 1.7 m }, faces: camera }\n',
      ),
    },
    {
      title: 'from the side, its front turned away from the lens',
      plan: rim('modifier: strip 30 x 120 cm', 'angle: 100 deg left, distance: 1.4 m, height: 1.9 m'),
    },
    {
      title: 'a narrow honeycomb that looks past the lens',
      plan: rim(
        'modifier: standard reflector, grid: 20 deg',
        'angle: 130 deg left, distance: 1.6 m, height: 1.9 m',
      ),
    },
  ],

  needs: (context) => {
    const { lit, scene } = context.set
    return lit.some(({ name }) => seenFromLens(scene, name) !== undefined) ? keyMissing(context) : 'silent'
  },

  detect: ({ set, limits, u: uOf }) => {
    const { key, scene } = set
    if (key === undefined) return []
    return set.lit.flatMap((light): IntoLens[] => {
      const seen = seenFromLens(scene, light.name)
      const got =
        seen &&
        set.exposure({ at: scene.camera.eye, normal: seen.toward, kind: 'flat' }, [light.name], ['direct'])
      if (seen === undefined || got === undefined) return []
      const figure = difference(got.figure, key.figure)
      const [reKey, u, limit] = [figure.stops, uOf(figure), limits.most!]
      return [
        {
          pointer: light.unit.kind === 'sun' ? lightPointer(light.name, 'at') : placePointer(light),
          beyond: { stops: reKey - limit, u },
          measured: {
            're-key': { value: reKey, unit: 'stop', u, limit, side: 'at-most' },
            'off-frame': { value: inDegrees(seen.beyond), unit: 'deg' },
          },
          cause: `where ${light.name} stands`,
          light,
          seen,
          reKey,
          limit,
        },
      ]
    })
  },

  tell: ({ light, seen, reKey }, words) => ({
    message: `flare: ${light.name} shines into the lens ${seen.beyond === 0 ? 'from inside the frame' : `from ${words.degrees(Math.max(seen.beyond, Math.PI / 180))} outside the frame`}, ${words.against(reKey, 'the key')} there`,
    why: 'its front can be seen from the lens, and nothing stands between',
  }),

  mend: ({ light, seen }, _words, context) => [
    ...flagged(light, seen, context),
    ...gridded(light, context),
    ...(light.unit.kind === 'sun'
      ? []
      : [
          {
            title: `${light.name} further round to the side, or so high that its front no longer looks at the lens`,
          },
        ]),
  ],

  inShort: ({ light }) => `${light.name} shines into the lens`,
})

const flagged = (light: Light, { beyond }: SeenFromLens, { plan }: RuleContext): readonly Advice[] =>
  beyond === 0
    ? plan.subject.finish === 'clear'
      ? [
          {
            title: `black cards round what the picture shows of ${light.name}`,
            gives: 'the ground stays light, and no more of it than is seen looks into the lens',
          },
        ]
      : []
    : [
        {
          title:
            light.unit.kind === 'sun'
              ? 'a flag, or a hand, that shades the lens, just outside the frame'
              : `a flag beside ${light.name}, between it and the lens, just outside the frame`,
          gives: 'the subject keeps its light, the lens gets none',
        },
      ]

const gridded = (light: Light, { plan }: RuleContext): readonly Advice[] =>
  light.grid !== undefined ||
  light.modifier?.grid !== undefined ||
  light.unit.kind === 'sun' ||
  light.unit.kind === 'window'
    ? []
    : [
        {
          title: `a grid on ${light.name}, turned so that the lens lies outside its beam`,
          costs: `some of its light on ${plan.subject.kind === 'object' ? 'the object' : 'the subject'}`,
        },
      ]
