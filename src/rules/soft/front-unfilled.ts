import type { Light } from '../../language/plan.js'
import { zoomOf } from '../../light/emission.js'
import { knobRange } from '../../set/knob-range.js'
import { turn } from '../gear.js'
import { lightPointer } from '../place-pointer.js'
import { type Evidence, inTurn, type Mend, type RuleContext, rule } from '../rule.js'
import { type Filled, filled, isZoomedInto } from './filled.js'

const gun = (modifier: string, zoom: string): string => `plan: 1
title: A flashgun in a soft front
camera: { lens: 85 mm, at: { distance: 2.6 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: grey paper, behind: 1.5 m }
lights:
  key: { unit: flashgun, zoom: ${zoom}, modifier: ${modifier}, power: 1/4, at: { angle: 30 deg left, distance: 1.2 m, height: 2 m } }
wanted: { backdrop: any, shadow: any }
`

interface Unfilled extends Evidence {
  readonly light: Light
  readonly fill: Filled
}

export const frontUnfilled = rule<Unfilled>({
  id: 'front-unfilled',
  family: 'soft',
  level: 'note',
  finds: 'a flashgun zoomed so long that it lights only the middle of its umbrella or box',
  limits: {
    filled: { value: 0.3, unit: 'share', says: 'of the front, within two stops of its middle, at least' },
  },
  why: 'A softbox is as large as the part of it that is lit. A narrow beam leaves a hot spot in the middle of the cloth: the shadows and the catchlight are those of the spot.',
  formula:
    'share of the front where head pattern and cos³ leave the light within two stops of the middle; the head at the mount of a box, 0.6 diameters from the top of an umbrella; what bounces inside is not counted',
  sources: [
    { kind: 'common practice', says: 'half a stop down at the edges of the frame of the zoom' },
    { kind: 'common practice', says: 'the widest zoom inside a modifier, 24 mm or the wide panel' },
    { kind: 'memory', says: 'depths of modifiers by their kind, where no kit says them' },
  ],
  basis: 'pattern of a zoom head on a plane; where the head sits is common practice',
  fires: [
    { title: 'an umbrella with the head at 105 mm', plan: gun('shoot-through umbrella 1 m', '105 mm') },
    { title: 'a box with the head at 50 mm', plan: gun('softbox 60 x 90 cm', '50 mm') },
  ],
  passes: [
    { title: 'an umbrella with the head at 24 mm', plan: gun('shoot-through umbrella 1 m', '24 mm') },
    { title: 'a box with the head at 24 mm', plan: gun('softbox 60 x 90 cm', '24 mm') },
    { title: 'a bare head may be as narrow as it likes', plan: gun('standard reflector', '105 mm') },
  ],

  needs: ({ plan }) => ([...plan.lights.values()].some(isZoomedInto) ? undefined : 'silent'),

  detect: ({ plan, limits }) =>
    [...plan.lights.values()].flatMap((light): Unfilled[] => {
      const fill = light.on ? filled(light) : undefined
      if (fill === undefined || fill.share >= limits.filled!) return []
      return [
        {
          pointer: lightPointer(light.name, light.zoom === undefined ? 'modifier' : 'zoom'),
          also: [{ pointer: lightPointer(light.name, 'modifier'), says: 'in this' }],
          beyond: 'certain',
          measured: {
            filled: { value: fill.share, unit: 'share', limit: limits.filled!, side: 'at-least' },
          },
          light,
          fill,
        },
      ]
    }),

  tell: ({ light, fill }, words) => {
    const { width, height } = light.modifier!.size
    const acts = Math.sqrt(fill.share * width * height)
    return {
      message: `a hot spot in the middle of ${light.name}: ${Math.round(100 * fill.share)} % of its front is lit within two stops, and it is as hard as a front of about ${words.small(acts)}`,
      why: `zoom ${zoomText(light)}, ${words.small(fill.throw)} behind the front; what bounces inside evens it out somewhat`,
    }
  },

  mend: (evidence, _words, context) =>
    inTurn(
      () => wider(evidence, context),
      () => [
        {
          title: `the wide panel or a diffuser cap on the head of ${evidence.light.name}`,
          costs: 'a stop of light or so',
        },
      ],
    ),
})

const zoomText = ({ unit, zoom }: Light): string =>
  unit.kind === 'flash' ? `${Math.round(zoomOf(unit, zoom) * 1000)} mm` : ''

/** The longest zoom that fills enough, else the widest there is. */
const wider = ({ light, fill }: Unfilled, { set, plan, limits }: RuleContext): readonly Mend[] => {
  const knob = { knob: 'zoom', light: light.name } as const
  const marks = (knobRange(plan, knob)?.marks ?? []).filter(
    (mark) => light.zoom !== undefined && mark < light.zoom,
  )
  const shareAt = (zoom: number) => filled({ ...light, zoom: zoom as NonNullable<Light['zoom']> })?.share ?? 0
  const enough = marks.findLast((mark) => shareAt(mark) >= limits.filled!)
  const to = enough ?? marks[0]
  const turned = to === undefined ? undefined : turn(plan, knob, to)
  if (to === undefined || turned === undefined || turned.short > 0 || shareAt(to) <= fill.share) return []
  return [
    {
      title: turned.title,
      gives: `${Math.round(100 * shareAt(to))} % of its front lit`,
      after: set.with(turned.change),
      ...(enough === undefined ? { partial: true as const } : {}),
    },
  ]
}
