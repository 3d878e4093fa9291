import type { Light, Subject } from '../../language/plan.js'
import { difference } from '../../light/figure.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { rolePoint } from '../../set/role-point.js'
import { type Turned, turnLight } from '../gear.js'
import { type Hair, rimStart } from '../hair.js'
import { keyMissing, lightMissing, unknownLight } from '../known.js'
import { settingPointer } from '../place-pointer.js'
import { type Advice, type Evidence, type NotNeeded, type RuleContext, rule } from '../rule.js'
import { inside } from '../solving.js'
import type { Words } from '../words.js'

const hairLight = (hair: string, meters: string): string => `plan: 1
title: Hair light from a boom
camera: { lens: 85 mm, at: { distance: 2.2 m, height: 1.6 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person, faces-at: 1.6 m${hair} }
backdrop: { surface: grey paper, behind: 2 m }
lights:
  key: { unit: head 400 Ws, modifier: softbox 60 x 90 cm, meters: f/8, at: { angle: 0 deg, distance: 1.4 m, height: 1.9 m } }
  hair: { unit: head 200 Ws, modifier: strip 30 x 120 cm, lying: true, grid: 40 deg, meters: ${meters}, at: { angle: 180 deg, distance: 1.2 m, height: 2.5 m } }
`

interface RimHot extends Evidence {
  readonly light: Light
  /** Stops over the key reading. */
  readonly over: number
  readonly limit: number
  readonly u: number
}

export const rimHot = rule<RimHot>({
  id: 'rim-hot',
  family: 'rim',
  level: 'note',
  finds: 'a rim, kicker or hair light so strong that hair and outline burn out',
  limits: {
    dark: {
      value: 1,
      unit: 'stop',
      says: 'over the key at most, on dark hair, or where the plan does not say',
    },
    brown: { value: 0, unit: 'stop', says: 'over the key at most, on brown hair' },
    fair: { value: -1, unit: 'stop', says: 'over the key at most, on fair hair' },
  },
  why: 'Light that grazes hair from behind shines off it: dark hair takes as much as the key gives and more, fair hair burns out at less than half of it. Every strand out of place shows too.',
  formula:
    'log2(H at the point of the light, dome toward it / H of the key reading): rims and kickers at the back of the subject, hair lights at the hair',
  sources: [
    {
      kind: 'common practice',
      says: 'starting levels: dark hair level with the key, brown one stop under, fair two',
    },
    {
      kind: 'common practice',
      says: 'sources differ: level with the key to one stop over it, or one to three stops under by the hair',
    },
    { kind: 'standard', says: 'incident metering N² = H·S/C, C = 250: ISO 2720' },
  ],
  basis: 'incident metering, ISO 2720; the limits are common practice',
  fires: [
    { title: 'fair hair, a light as strong as the key', plan: hairLight(', hair: fair', 'f/8') },
    { title: 'brown hair, a third over', plan: hairLight(', hair: brown', 'f/9') },
    { title: 'too much for any hair', plan: hairLight('', 'f/13') },
  ],
  passes: [
    { title: 'fair hair, two stops under', plan: hairLight(', hair: fair', 'f/4') },
    { title: 'brown hair, just under the key', plan: hairLight(', hair: brown', 'f/7.1') },
    { title: 'dark hair, two thirds over', plan: hairLight(', hair: dark', 'f/10') },
  ],

  needs: (context) => {
    const rims = rimsOf(context.set)
    if (rims.length === 0) return 'silent'
    if (context.plan.subject.kind === 'object') return 'silent'
    const missing = rims.map((light) => missingOf(context.set, light))
    return missing.every((one) => one !== undefined) ? missing[0] : keyMissing(context)
  },

  detect: (context) => {
    const { set, plan, limits } = context
    const { key } = set
    if (key === undefined) return []
    return rimsOf(set).flatMap((light): RimHot[] => {
      const there = set.reading({ at: rolePoint(light), of: [light.name] })
      if (there === undefined || missingOf(set, light) !== undefined) return []
      const figure = difference(there.figure, key.figure)
      const u = context.u(figure)
      const limit = limits[hairOf(plan.subject)]!
      return [
        {
          pointer: settingPointer(light),
          also: [{ pointer: '/subject/hair', says: 'on this hair' }],
          beyond: { stops: figure.stops - limit, u },
          measured: { 'over-key': { value: figure.stops, unit: 'stop', u, limit, side: 'at-most' } },
          cause: `the level of ${light.name}`,
          scale: { value: figure.stops, u, needs: limit, against: 'over the key' },
          light,
          over: figure.stops,
          limit,
          u,
        },
      ]
    })
  },

  tell: ({ light, over, limit }, words, { plan }) => ({
    message: `${burns(light, plan.subject)} burns out: ${light.name} is ${words.against(over, 'the key')} there, ${most(limit, plan.subject, words)}`,
    why: [
      'metered where it arrives, dome toward it',
      plan.subject.hair === undefined
        ? 'the plan does not say what hair: brown and fair take less'
        : `${plan.subject.hair} hair is best begun at ${startText(plan.subject.hair, words)}`,
    ].join('; '),
  }),

  mend: (evidence, words, context) => down(evidence, words, context),
})

/** Lights from behind that are on. */
const rimsOf = ({ plan }: ComputedSet): readonly Light[] =>
  [...plan.lights.values()].filter(
    (light) => light.on && (light.role === 'rim' || light.role === 'kicker' || light.role === 'hair'),
  )

const missingOf = (set: ComputedSet, light: Light): NotNeeded | undefined => {
  if (set.unknown.includes(light)) return unknownLight(light, set)
  return lightMissing(set, light)
}

const hairOf = ({ hair }: Subject): Hair => hair ?? 'dark'

const startText = (hair: Hair, words: Words): string => words.against(rimStart[hair], 'the key')

const burns = ({ role }: Light, { hair }: Subject): string =>
  role === 'hair' ? `${hair === undefined ? 'the' : hair} hair` : 'the outline of hair and cheek'

const most = (limit: number, { hair }: Subject, words: Words): string =>
  `${words.against(limit, 'it')} is the most for ${hair === undefined ? 'any' : hair} hair`

const down = (
  { light, over, limit, u }: RimHot,
  words: Words,
  { set, plan }: RuleContext,
): readonly Advice[] => {
  const hair = hairOf(plan.subject)
  const least = turnLight(plan, light.name, limit - over - inside(u))
  if (least === undefined)
    return [
      light.unit.kind === 'sun'
        ? { title: 'a scrim between the sun and the hair, or open shade', gives: 'less light on the outline' }
        : { title: `${light.name} further off, or through a thicker front` },
    ]
  const start = turnLight(plan, light.name, rimStart[hair] - over, 'nearest')
  const told = (turned: Turned, more: string): readonly Advice[] => {
    const after = set.with(turned.change)
    const there = after.reading({ at: rolePoint(light), of: [light.name] })
    if (there === undefined || after.key === undefined) return []
    const level = there.figure.stops - after.key.figure.stops
    return [
      {
        title: turned.title,
        gives: `${light.name} ${words.against(level, 'the key')}${turned.short > 0 ? '' : more}`,
        ...(turned.short > 0
          ? {
              costs: `the end of the range, ${words.howMany(turned.short)} short: further off, or a thicker front`,
            }
          : {}),
      },
    ]
  }
  return [
    ...told(least, ''),
    ...(start === undefined || start.title === least.title
      ? []
      : told(start, `, where ${hair} hair is best begun`)),
  ]
}
