import type { Light } from '../../language/plan.js'
import { turnLight } from '../gear.js'
import { backdropMissing, firstMissing, keyMissing } from '../known.js'
import { lightPointer, settingPointer } from '../place-pointer.js'
import { whom } from '../place-words.js'
import { type Evidence, inTurn, type Mend, type RuleContext, rule } from '../rule.js'
import type { Words } from '../words.js'
import { causeOnBackdrop, surfaceText } from './on-the-backdrop.js'
import { gelledLights, hasColour, type Washed, washed } from './washed.js'

const wall = (gelled: string, surface = 'white paper', more = '', at = '2 m'): string => `plan: 1
title: A colour thrown on the backdrop
camera: { lens: 85 mm, at: { distance: 2.4 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: ${surface}, behind: ${at} }
lights:
  key: { unit: head 400 Ws, modifier: softbox 60 x 90 cm, meters: f/5.6, at: { angle: 40 deg left, distance: 1.2 m, height: 2 m } }
  wall: { role: backdrop, unit: head 400 Ws, ${gelled}, at: { left: 60 cm, before-backdrop: 1.6 m, height: 1.4 m } }
${more}wanted: { framing: head and shoulders, backdrop: { colour: blue }, shadow: any }
`
const blue = 'gel: { colour: blue, loss: 3 stops }'

interface ColourWashed extends Evidence {
  readonly found: Washed
  readonly gelled: readonly Light[]
}

export const backdropColourWashed = rule<ColourWashed>({
  id: 'backdrop-colour-washed',
  family: 'backdrop',
  level: 'warning',
  finds: 'a coloured backdrop that records pale: too much light of its own, or white light of others on it',
  limits: {
    kept: {
      value: 0.5,
      unit: 'share',
      says: 'of the chroma that the coloured light alone gives, at the least',
    },
  },
  why: 'A deep colour is a dark one. At the level of the key its strongest channel clips on white paper while the others go on, and white light spilled on it fills them further: what a meter calls right records as pastel. Grey paper holds the colour 2.3 stops longer than white.',
  formula:
    'C*ab, along its own hue, of the linear sRGB that is recorded (surface × light, white-balanced by Bradford, each channel clipped at the headroom), over that of the coloured light alone without clipping; at the place in frame where it is least',
  sources: [
    { kind: 'standard', says: 'sRGB: IEC 61966-2-1; L*a*b* and tristimulus values: CIE 15' },
    { kind: 'derived', says: 'white paper of 0.9 holds a colour 2.3 stops less long than grey of 0.18' },
    {
      kind: 'common practice',
      says: 'a gelled light 1 to 2.5 stops under the key on white, more for darker colours',
    },
    { kind: 'memory', says: 'what a colour of a name looks like, and Bradford’s matrix' },
  ],
  basis: 'sRGB, IEC 61966-2-1; CIE 15; the limit is the house’s own',
  fires: [
    { title: 'blue on white paper, as bright as the key', plan: wall(`${blue}, meters: f/8`) },
    {
      title: 'the key spills on what the gelled light gives',
      plan: wall(`${blue}, meters: f/1.4`, 'white paper', '', '90 cm'),
    },
  ],
  passes: [
    { title: 'two stops under the key', plan: wall(`${blue}, meters: f/2.8`, 'white paper', '', '3 m') },
    {
      title: 'on grey paper it may be brighter',
      plan: wall(`${blue}, meters: f/5.6`, 'grey paper', '', '3 m'),
    },
    {
      title: 'a grey is wanted: no colour to lose',
      plan: wall('meters: f/8').replace('{ colour: blue }', 'any'),
    },
  ],

  needs: (context) => {
    const tone = context.plan.wanted.backdrop?.tone
    if (tone === 'white' || tone === 'black' || tone === 'range' || !hasColour(context.set)) return 'silent'
    return firstMissing(
      () => backdropMissing(context, 'whole'),
      () => keyMissing(context),
    )
  },

  detect: (context) => {
    const found = washed(context)
    if (found === undefined) return []
    const { set, limits } = context
    const gelled = gelledLights(set)
    return [
      {
        pointer: gelled[0] === undefined ? '/backdrop/surface' : settingPointer(gelled[0]),
        also: gelled
          .slice(0, 1)
          .map(({ name }) => ({ pointer: lightPointer(name, 'gel'), says: 'this colour' })),
        beyond: { stops: limits.kept! - found.kept, u: found.u },
        measured: {
          'chroma-kept': {
            value: found.kept,
            unit: 'share',
            u: found.u,
            limit: limits.kept!,
            side: 'at-least',
          },
          'over-camera': { value: found.sample.overCamera.stops, unit: 'stop' },
          'other-light': { value: found.spill, unit: 'share' },
        },
        cause: causeOnBackdrop(set, found.sample),
        found,
        gelled,
      },
    ]
  },

  tell: ({ found, gelled }, words, { plan }) => ({
    message: `the ${colourName(plan, gelled)} records pale at the backdrop's ${found.sample.where}: it keeps ${found.kept < 0.015 ? 'none' : percent(found.kept)} of its depth`,
    why: [
      surfaceText(plan.backdrop!.surface),
      `${words.against(found.sample.overCamera.stops, 'the camera')} there`,
      ...(found.clips ? ['its strongest channel clips'] : []),
      ...(gelled.length > 0 && found.spill > worthTelling
        ? [`${percent(found.spill)} of the light there comes from other lights`]
        : []),
    ].join('; '),
  }),

  mend: (evidence, words, context) =>
    inTurn(
      () => turned(evidence, words, context),
      () => flagged(evidence, context),
      () => [
        {
          title: 'a darker surface: grey paper holds the colour, white only carries it',
          costs: 'more power on what lights it',
        },
      ],
    ),

  inShort: ({ found }) => `the backdrop keeps ${percent(Math.max(0, found.kept))} of its colour`,
})

const percent = (share: number): string => `${Math.round(share * 100)} %`

/** A share of other light that is worth a word. */
const worthTelling = 0.08

const colourName = ({ backdrop }: RuleContext['plan'], gelled: readonly Light[]): string => {
  const name = gelled.length === 1 ? gelled[0]!.gel?.colour : undefined
  if (name !== undefined && !name.startsWith('#')) return name
  return gelled.length === 0 && !backdrop!.surface.name.startsWith('reflectance')
    ? backdrop!.surface.name
    : 'colour'
}

/** Share of chroma inside the limit that a mend aims at: about what an exposure’s uncertainty makes of it there. */
const margin = 0.2
/** Stops between two tries, and how far either way. */
const grain = 1 / 6
const farthest = 4

/** The least turn of the coloured lights after which enough is kept where it was least. */
const turned = ({ found, gelled }: ColourWashed, words: Words, context: RuleContext): readonly Mend[] => {
  const { set, plan, limits } = context
  const lights = gelled.length > 0 ? gelled : set.lit.filter(({ role }) => role === 'backdrop')
  if (lights.length === 0) return []
  const wanted = limits.kept! + margin
  const tries = Array.from({ length: farthest / grain }, (_, i) => (i + 1) * grain)
  for (const size of tries)
    for (const by of [-size, size]) {
      if (found.keptAt(by, 0) < wanted) continue
      const all = lights.flatMap(({ name }) => turnLight(plan, name, by) ?? [])
      if (all.length < lights.length || all.some(({ short }) => short > 0.05)) continue
      const after = set.with(...all.map(({ change }) => change))
      const level = words.against(found.sample.overCamera.stops + by, 'the camera')
      return [
        {
          title: all.map(({ title }) => title).join(', '),
          gives: `about ${percent(Math.min(1, found.keptAt(by, 0)))} of its depth, ${level}`,
          ...(by < 0 ? { costs: 'a darker, deeper backdrop' } : { costs: 'a brighter backdrop' }),
          after,
        },
      ]
    }
  return []
}

const flagged = ({ found, gelled }: ColourWashed, { plan, limits }: RuleContext): readonly Mend[] => {
  if (gelled.length === 0 || found.spill < worthTelling) return []
  const without = found.keptAt(0, -20)
  if (without < found.kept + 0.05) return []
  return [
    {
      title: `a flag or a grid that keeps the other lights off the backdrop, or ${whom(plan)} further from it`,
      gives: `up to ${percent(Math.min(1, without))} of its depth`,
      ...(without < limits.kept! ? { partial: true as const } : {}),
    },
  ]
}
