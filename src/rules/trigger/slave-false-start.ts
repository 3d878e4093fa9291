import type { Light, Plan } from '../../language/plan.js'
import { computeSet } from '../../set/compute-set.js'
import { lightPointer } from '../place-pointer.js'
import { type Evidence, type Mend, type RuleContext, rule } from '../rule.js'
import type { Words } from '../words.js'

const pair = (key: string, slave: string, unit = 'flashgun'): string => `plan: 1
title: A flash that another sets off
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
  key: { unit: ${unit}, modifier: white umbrella 1 m, meters: f/5.6${key}, at: { angle: 30 deg left, distance: 1.2 m, height: 2 m } }
  rim: { unit: head 200 Ws, modifier: strip 30 x 120 cm, meters: f/4${slave}, at: { angle: 140 deg right, distance: 1.5 m, height: 2 m } }
wanted: { framing: head and shoulders }
`
const withPreFlash = '{ guide-number: 36 m at 35 mm, name: old gun, pre-flash: true }'

/** What comes before the flash itself. */
type Early = 'automatic' | 'pre-flash' | 'commands'

interface FalseStart extends Evidence {
  readonly slave: Light
  readonly early: readonly { readonly light: Light; readonly by: Early }[]
}

export const slaveFalseStart = rule<FalseStart>({
  id: 'slave-false-start',
  family: 'trigger',
  level: 'error',
  finds: "a plain optical slave that another flash's pre-flash sets off",
  limits: {},
  why: 'A plain slave fires at the first flash that it sees. A metered flash gives one a tenth of a second before the picture, and the commands of optical groups are flashes too: the slave has fired before the shutter opens, and is empty or still charging when it does.',
  formula:
    'a light fired by a plain optical slave, with a flash on the set that is metered, gives a pre-flash, or is commanded by light',
  sources: [
    {
      kind: 'common practice',
      says: 'metered flashes and optical commands flash before the picture; plain slaves answer the first flash',
    },
  ],
  basis: 'triggers and modes as the plan states them',
  fires: [
    {
      title: 'an automatic flash and a plain slave',
      plan: pair(', mode: automatic', ', trigger: { by: optical }'),
    },
    { title: 'a unit that gives a pre-flash', plan: pair('', ', trigger: { by: optical }', withPreFlash) },
    {
      title: 'commands of optical groups beside a plain slave',
      plan: pair(', trigger: { by: optical groups, group: A }', ', trigger: { by: optical }'),
    },
  ],
  passes: [
    { title: 'all by hand', plan: pair('', ', trigger: { by: optical }') },
    { title: 'by radio', plan: pair(', mode: automatic', ', trigger: { by: radio }') },
    {
      title: 'optical groups let pre-flashes of their own pass',
      plan: pair(
        ', mode: automatic, trigger: { by: optical groups, group: A }',
        ', trigger: { by: optical groups, group: B }',
      ),
    },
    {
      title: 'the unit with a pre-flash is set by hand',
      plan: pair(', mode: manual', ', trigger: { by: optical }', withPreFlash),
    },
  ],

  needs: () => undefined,

  detect: ({ plan }) => {
    const slaves = flashesOn(plan).filter(({ trigger }) => trigger?.by === 'optical')
    return slaves.flatMap((slave): FalseStart[] => {
      const early = flashesOn(plan).flatMap((light) => {
        const by = light === slave ? undefined : earlyOf(plan, light)
        return by === undefined ? [] : [{ light, by }]
      })
      return early.length === 0
        ? []
        : [
            {
              pointer: lightPointer(slave.name, 'trigger'),
              also: early.map(({ light, by }) => ({
                pointer: pointerOf(light, by),
                says: saysOf[by],
              })),
              beyond: 'certain',
              measured: {},
              cause: `what comes before the flash of ${early.map(({ light }) => light.name).join(', ')}`,
              slave,
              early,
            },
          ]
    })
  },

  tell: ({ slave, early }, words) => ({
    message: `the light of ${slave.name} is missing from the picture: it is a plain optical slave, and ${words.list(early.map(({ light }) => light.name))} ${early.length > 1 ? 'set' : 'sets'} it off before the shutter is open`,
    why: early.map(({ light, by }) => `${light.name} ${because[by]}`).join('; '),
  }),

  mend: (found, words, context) => [
    ...byHand(found, words, context),
    ...byRadio(found, context),
    {
      title: `${found.slave.name} on a slave that lets pre-flashes pass, where it has such a mode`,
      gives: 'it answers the second flash',
      costs: 'it must be set to as many pre-flashes as there are',
    },
  ],
})

const flashesOn = ({ lights }: Plan): readonly Light[] =>
  [...lights.values()].filter(({ on, unit }) => on && unit.kind === 'flash')

/** A unit that gives pre-flashes gives none where the author has set it to manual in so many words. */
const earlyOf = (plan: Plan, { name, unit, mode, trigger }: Light): Early | undefined => {
  if (mode === 'automatic') return 'automatic'
  if (trigger?.by === 'optical groups') return 'commands'
  const byHand = mode === 'manual' && plan.places.stated(lightPointer(name, 'mode'))
  return unit.kind === 'flash' && unit.preFlash && !byHand ? 'pre-flash' : undefined
}

const pointerOf = ({ name }: Light, by: Early): string =>
  by === 'automatic'
    ? lightPointer(name, 'mode')
    : by === 'commands'
      ? lightPointer(name, 'trigger')
      : lightPointer(name, 'unit')

const saysOf: Readonly<Record<Early, string>> = {
  automatic: 'this is metered by a pre-flash',
  'pre-flash': 'this gives a pre-flash',
  commands: 'this is commanded by light',
}

const because: Readonly<Record<Early, string>> = {
  automatic: 'is automatic: the camera meters it by a pre-flash',
  'pre-flash': 'gives a pre-flash before the flash itself',
  commands: 'is fired by optical groups, whose commands are flashes of light',
}

/** The flashes that go before set to manual; those that are commanded by light fired another way as well. */
const byHand = ({ early }: FalseStart, words: Words, { plan }: RuleContext): readonly Mend[] => {
  if (early.some(({ by, light }) => by === 'commands' || light.trigger?.by === 'optical groups')) return []
  // A plan that says it in so many words is what clears a unit that gives pre-flashes by itself.
  const stated = early.every(({ by }) => by === 'automatic')
  const lights = new Map(plan.lights)
  for (const { light } of early) lights.set(light.name, { ...light, mode: 'manual' })
  return [
    {
      title: early.map(({ light }) => `lights.${light.name}.mode → manual`).join(', '),
      gives: 'no flash before the flash',
      costs: `the power of ${words.list(early.map(({ light }) => light.name))} set by a meter or test frames`,
      ...(stated ? { after: computeSet({ ...plan, lights }) } : {}),
    },
  ]
}

const byRadio = ({ slave }: FalseStart, { plan }: RuleContext): readonly Mend[] => {
  const others = flashesOn(plan).map(({ trigger }) => trigger?.by)
  const by = others.includes('basic radio') && !others.includes('radio') ? 'basic radio' : 'radio'
  const lights = new Map(plan.lights)
  lights.set(slave.name, { ...slave, trigger: { ...slave.trigger!, by } })
  return [
    {
      title: `lights.${slave.name}.trigger.by → ${by}`,
      gives: 'it fires with the shutter, whatever flashes before',
      costs: 'a receiver for it; a cable does as well',
      after: computeSet({ ...plan, lights }),
    },
  ]
}
