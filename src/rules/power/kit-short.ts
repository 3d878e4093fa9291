import type { Kit, Light, Plan } from '../../language/plan.js'
import { pointer } from '../../text/place.js'
import { lightPointer } from '../place-pointer.js'
import { type Advice, type Evidence, type RuleContext, rule } from '../rule.js'
import type { Words } from '../words.js'

interface Rig {
  readonly heads?: number
  readonly boxes?: number
  readonly height?: string
  readonly stand?: string
  readonly boxWeight?: string
  readonly fill?: string
}

const cupboard = ({
  heads = 2,
  boxes = 2,
  height = '2 m',
  stand = 'light',
  boxWeight = '1 kg',
  fill = 'modifier: box, ',
}: Rig): string => `plan: 1
title: Two heads from the cupboard
kit:
  units: { head-400: { energy: 400 Ws, reflector: 60 deg, weight: 2.6 kg, count: ${heads} } }
  modifiers: { box: { kind: softbox, size: 60 x 90 cm, weight: ${boxWeight}, count: ${boxes} } }
  stands: { light: { highest: 2.4 m, load: 4 kg, count: 2 }, heavy: { highest: 3.2 m, load: 10 kg, count: 1 } }
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
  key: { unit: head-400, modifier: box, power: 1/16, at: { angle: 35 deg left, distance: 1.4 m, height: ${height} }, stand: { kind: ${stand} } }
  fill: { unit: head-400, ${fill}power: 1/32, at: { angle: 35 deg right, distance: 2 m, height: 1.8 m }, stand: { kind: light } }
wanted: { framing: head and shoulders }
`

interface TooFew {
  readonly kind: 'count'
  readonly what: 'unit' | 'modifier' | 'stand'
  readonly name: string
  readonly holds: number
  readonly uses: readonly string[]
}

interface TooLow {
  readonly kind: 'height'
  readonly light: Light
  readonly stand: string
  readonly height: number
  readonly highest: number
}

interface TooHeavy {
  readonly kind: 'load'
  readonly light: Light
  readonly stand: string
  readonly weight: number
  readonly load: number
}

interface KitShort extends Evidence {
  readonly found: TooFew | TooLow | TooHeavy
}

export const kitShort = rule<KitShort>({
  id: 'kit-short',
  family: 'power',
  level: 'error',
  finds: 'more gear than the kit holds, a stand too low for its light, or one that carries too much',
  limits: {
    height: {
      value: 0,
      unit: 'cm',
      says: "of the middle of a light's front over the highest that its stand goes",
    },
    count: { value: 0, unit: 'count', says: 'pieces more than the kit holds' },
  },
  why: 'What is missing shows when the set stands half built: a third head that nobody packed, a light that ends half a metre under its place, a stand that leans.',
  formula:
    'pieces used against the count of the kit; height of the front against the highest of the stand; weight of unit and modifier against the load of the stand',
  sources: [
    {
      kind: 'derived',
      says: 'counts, heights and weights as the kit states them; what it does not state is not counted',
    },
  ],
  basis: "the kit's own counts, heights and loads",
  fires: [
    { title: 'one head too few', plan: cupboard({ heads: 1 }) },
    { title: 'one box too few', plan: cupboard({ boxes: 1 }) },
    { title: 'a light five centimetres over its stand', plan: cupboard({ height: '2.45 m' }) },
    { title: 'a box that is too heavy for the stand', plan: cupboard({ boxWeight: '1.5 kg', fill: '' }) },
  ],
  passes: [
    { title: 'all of the kit', plan: cupboard({}) },
    { title: 'at the end of the stand', plan: cupboard({ height: '2.4 m' }) },
    {
      title: 'on the heavier stand',
      plan: cupboard({ boxWeight: '1.5 kg', fill: '', stand: 'heavy' }),
    },
  ],

  needs: ({ plan }) => {
    if (plan.lights.size === 0) return 'silent'
    return plan.kit === undefined
      ? {
          because: 'the plan names no kit',
          enable: { pointer: '/kit', text: 'kit: kit.yaml' },
        }
      : undefined
  },

  detect: (context) => [...tooFew(context), ...tooLow(context), ...tooHeavy(context.plan)],

  tell: ({ found }, words) => {
    switch (found.kind) {
      case 'count':
        return {
          message: `${found.uses.length - found.holds} ${found.what} too few: ${words.list(found.uses)} ${found.uses.length === 1 ? 'uses' : 'use'} ${found.name}, of which the kit holds ${found.holds}`,
          why: 'lights that are off are rigged all the same',
        }
      case 'height':
        return {
          message: `${found.light.name} ends ${words.small(found.height - found.highest)} too low: its front is to be at ${words.length(found.height)}, and the stand ${found.stand} goes to ${words.length(found.highest)}`,
          why: 'the height of a light is that of the middle of its front',
        }
      case 'load':
        return {
          message: `the stand ${found.stand} carries too much: ${found.light.name} weighs ${kilograms(found.weight)} there, and it may carry ${kilograms(found.load)}`,
          why: "by the kit's figures, a planning aid: the maker's instructions and whoever rigs it have the last word",
        }
    }
  },

  mend: ({ found }, words, context) =>
    found.kind === 'count' ? fewer(found) : [...otherStand(found, words, context), ...byHand(found, words)],
})

const kilograms = (weight: number): string => `${Number(weight.toFixed(1))} kg`

// ---------------------------------------------------------------- counts

const tooFew = (context: RuleContext): readonly KitShort[] => {
  const { plan } = context
  const kit = plan.kit!
  const lights = [...plan.lights.values()]
  return [
    ...overCount(
      context,
      'unit',
      'units',
      lights.map((light) => [light, light.unit.name, light.unit.count]),
    ),
    ...overCount(
      context,
      'modifier',
      'modifiers',
      lights.map((light) => [light, light.modifier?.name, light.modifier?.count]),
    ),
    ...overCount(
      context,
      'stand',
      'stands',
      lights.map((light) => [light, light.stand?.kind, standOf(kit, light)?.count]),
    ),
  ]
}

const overCount = (
  { plan, limits }: RuleContext,
  what: TooFew['what'],
  section: string,
  used: readonly (readonly [Light, string | undefined, number | undefined])[],
): readonly KitShort[] => {
  const by = new Map<string, { holds: number; uses: string[] }>()
  for (const [light, name, holds] of used) {
    if (name === undefined || holds === undefined) continue
    const one = by.get(name) ?? { holds, uses: [] }
    one.uses.push(light.name)
    by.set(name, one)
  }
  return [...by].flatMap(([name, { holds, uses }]): readonly KitShort[] =>
    uses.length - holds <= limits.count!
      ? []
      : [
          {
            // The first that is left without.
            pointer: lightPointer(uses[holds]!, what),
            also: [
              {
                pointer: pointer('kit', section, name, 'count'),
                says: `what the kit holds of ${name}`,
              },
            ].filter((one) => plan.places.stated(one.pointer)),
            beyond: 'certain',
            measured: { used: { value: uses.length, unit: 'count', limit: holds, side: 'at-most' } },
            cause: 'the kit is short',
            found: { kind: 'count', what, name, holds, uses },
          },
        ],
  )
}

const fewer = ({ name, what, uses, holds }: TooFew): readonly Advice[] => {
  const over = uses.length - holds
  const last = uses.slice(holds)
  return [
    { title: `${over} more ${name}, and its count in the kit → ${uses.length}` },
    { title: `another ${what} for ${last.join(' and ')}` },
  ]
}

// ---------------------------------------------------------------- stands

type Stand = Kit['stands'] extends ReadonlyMap<string, infer S> ? S : never

const standOf = (kit: Kit, { stand }: Light): Stand | undefined =>
  stand === undefined ? undefined : kit.stands.get(stand.kind)

/** Lights that stand on a stand of the kit. */
const onStands = (plan: Plan) =>
  [...plan.lights.values()].flatMap((light) => {
    const facts = standOf(plan.kit!, light)
    return facts === undefined ? [] : [{ light, stand: light.stand!.kind, facts }]
  })

const tooLow = ({ plan, set, limits }: RuleContext): readonly KitShort[] =>
  onStands(plan).flatMap(({ light, stand, facts }): readonly KitShort[] => {
    const height = set.scene.lights.get(light.name)?.front?.centre[2]
    const { highest } = facts
    if (height === undefined || highest === undefined) return []
    const over = (height - highest) * 100
    return over <= limits.height! + tiny
      ? []
      : [
          {
            pointer: lightPointer(light.name, 'at', 'height'),
            also: [{ pointer: lightPointer(light.name, 'stand'), says: 'on this' }],
            beyond: 'certain',
            measured: {
              height: { value: height, unit: 'm', limit: highest, side: 'at-most' },
            },
            cause: `the stand of ${light.name}`,
            found: { kind: 'height', light, stand, height, highest },
          },
        ]
  })

/** What is known to hang on it; a unit or a modifier without a weight counts nothing. */
const weightOf = ({ unit, modifier }: Light): number => (unit.weight ?? 0) + (modifier?.weight ?? 0)

const tooHeavy = (plan: Plan): readonly KitShort[] =>
  onStands(plan).flatMap(({ light, stand, facts }): readonly KitShort[] => {
    const weight = weightOf(light)
    const { load } = facts
    return load === undefined || weight <= load + tiny
      ? []
      : [
          {
            pointer: lightPointer(light.name, 'stand'),
            beyond: 'certain',
            measured: {},
            cause: `the stand of ${light.name}`,
            found: { kind: 'load', light, stand, weight, load },
          },
        ]
  })

/** Figures that lie on a limit stay there, whatever the last digit of a sum. */
const tiny = 1e-6

/** The least of the other stands that is free, goes as high and carries as much. */
const otherStand = (
  { light }: TooLow | TooHeavy,
  words: Words,
  { plan, set }: RuleContext,
): readonly Advice[] => {
  const height = set.scene.lights.get(light.name)?.front?.centre[2] ?? 0
  const weight = weightOf(light)
  const used = [...plan.lights.values()].map(({ stand }) => stand?.kind)
  const fits = [...plan.kit!.stands]
    .filter(
      ([name, { highest, load, count }]) =>
        name !== light.stand!.kind &&
        highest !== undefined &&
        highest >= height - tiny &&
        (load === undefined || load >= weight - tiny) &&
        (count === undefined || used.filter((one) => one === name).length < count),
    )
    .sort(([, a], [, b]) => a.highest! - b.highest!)[0]
  return fits === undefined
    ? []
    : [
        {
          title: `lights.${light.name}.stand.kind → ${fits[0]}`,
          gives: `it goes to ${words.length(fits[1].highest!)}${fits[1].load === undefined ? '' : ` and may carry ${kilograms(fits[1].load)}`}`,
        },
      ]
}

const byHand = (found: TooLow | TooHeavy, words: Words): readonly Advice[] =>
  found.kind === 'height'
    ? [
        {
          title: `lights.${found.light.name}.at.height → ${words.length(found.highest)}`,
          costs: 'the light comes from lower, and less far over the subject',
        },
      ]
    : [{ title: `a lighter modifier on ${found.light.name}, or a stand that is made for the weight` }]
