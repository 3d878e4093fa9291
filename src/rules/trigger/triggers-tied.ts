import type { Light, Plan } from '../../language/plan.js'
import { lightPointer } from '../place-pointer.js'
import { type Advice, type Evidence, type RuleContext, rule } from '../rule.js'

const three = (key: string, fill: string, left: string, right: string): string => `plan: 1
title: Four heads by radio
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: white paper, behind: 2.5 m }
lights:
  key: { unit: head 400 Ws, modifier: softbox 60 x 90 cm, meters: f/5.6, at: { angle: 35 deg left, distance: 1.4 m, height: 2 m }, trigger: { by: radio, group: ${key} } }
  fill: { unit: head 400 Ws, modifier: octa 90 cm, meters: f/4, at: { angle: 30 deg right, distance: 1.8 m, height: 1.7 m }, trigger: { by: radio, group: ${fill} } }
  paper-left: { role: backdrop, unit: head 200 Ws, modifier: white umbrella 1 m, meters: f/8, at: { left: 1.3 m, before-backdrop: 1.2 m, height: 1.5 m }, trigger: { by: radio, group: ${left} } }
  paper-right: { role: backdrop, unit: head 200 Ws, modifier: white umbrella 1 m, meters: f/8, at: { right: 1.3 m, before-backdrop: 1.2 m, height: 1.5 m }, trigger: { by: radio, group: ${right} } }
wanted: { framing: head and shoulders, backdrop: any }
`

interface Tied extends Evidence {
  readonly group: string
  /** Lights of the group that go together: a pair that does one job at one setting is one. */
  readonly sets: readonly (readonly Light[])[]
}

export const triggersTied = rule<Tied>({
  id: 'triggers-tied',
  family: 'trigger',
  level: 'note',
  finds: 'lights that are metered or set apart, fired as one group',
  limits: {
    apart: {
      value: 1 / 20,
      unit: 'stop',
      says: 'between what two lights of one role are set to, over which they are set apart',
    },
  },
  why: 'A light is metered alone, and so each needs a group of its own: with key and backdrop on one, somebody walks to the stands and pulls plugs for every reading, and no power can be turned from the camera.',
  formula: 'lights with one channel and one group of a trigger, of different roles or different settings',
  sources: [
    {
      kind: 'common practice',
      says: 'one group a job: key, fill, backdrop, rim; a pair that works as one may share',
    },
  ],
  basis: 'groups as the plan states them; one group a job is common practice',
  fires: [
    { title: 'key and fill in one group', plan: three('A', 'A', 'B', 'B') },
    { title: 'everything in one group', plan: three('A', 'A', 'A', 'A') },
    {
      title: 'a pair whose sides differ',
      plan: three('A', 'B', 'C', 'C').replace('meters: f/8, at: { right', 'meters: f/7.1, at: { right'),
    },
  ],
  passes: [
    { title: 'a group for each job', plan: three('A', 'B', 'C', 'C') },
    { title: 'a group for each light', plan: three('1', '2', '3', '4') },
    {
      title: 'the same group on another channel',
      plan: three('A', 'A', 'C', 'C').replace(
        '{ by: radio, group: A } }\n  fill',
        '{ by: radio, channel: 2, group: A } }\n  fill',
      ),
    },
  ],

  needs: ({ plan }) => {
    const flashes = flashesOf(plan)
    if (flashes.length < 2) return 'silent'
    // A cable and a plain optical slave have no groups.
    const grouped = flashes.filter(({ trigger }) => trigger === undefined || hasGroups(trigger.by))
    if (grouped.length < 2) return 'silent'
    const unsaid = grouped.filter(({ trigger }) => trigger?.group === undefined)
    return grouped.length - unsaid.length >= 2
      ? undefined
      : {
          because: 'the plan does not say which group fires which light',
          enable: {
            pointer: lightPointer(unsaid[0]!.name, 'trigger'),
            text: 'trigger: { by: radio, group: A }',
          },
        }
  },

  detect: ({ plan, limits }) =>
    groupsOf(plan).flatMap(({ group, lights }) => {
      const sets = apart(lights, limits.apart!)
      const second = sets[1]?.[0]
      return second === undefined
        ? []
        : [
            {
              pointer: lightPointer(second.name, 'trigger'),
              also: sets
                .flat()
                .filter((light) => light !== second)
                .map((light) => ({
                  pointer: lightPointer(light.name, 'trigger'),
                  says: 'in the same group',
                })),
              beyond: 'certain' as const,
              measured: {
                tied: { value: sets.length, unit: 'count' as const, limit: 1, side: 'at-most' as const },
              },
              cause: 'how the flashes are grouped',
              group,
              sets,
            },
          ]
    }),

  tell: ({ group, sets }, words) => ({
    message: `${words.list(sets.flat().map(({ name }) => name))} can only be metered and turned together: group ${group} fires them all`,
    why: sets.every((one) => one[0]!.role === sets[0]![0]!.role)
      ? 'they are set to different strengths'
      : `they do different jobs: ${words.list([...new Set(sets.map((one) => one[0]!.role))])}`,
  }),

  mend: ({ sets }, _words, context) => regrouped(sets, context),
})

const hasGroups = (by: NonNullable<Light['trigger']>['by']): boolean =>
  by === 'radio' || by === 'basic radio' || by === 'optical groups'

const flashesOf = (plan: Plan): readonly Light[] =>
  [...plan.lights.values()].filter((light) => light.on && light.unit.kind === 'flash')

/** Lights by the channel and the group that fire them. */
const groupsOf = (plan: Plan): readonly { readonly group: string; readonly lights: readonly Light[] }[] => {
  const by = new Map<string, { readonly group: string; readonly lights: Light[] }>()
  for (const light of flashesOf(plan)) {
    const { trigger } = light
    if (trigger?.group === undefined || !hasGroups(trigger.by)) continue
    const key = `${trigger.by === 'optical groups' ? 'optical' : 'radio'} ${trigger.channel ?? ''} ${trigger.group}`
    const one = by.get(key) ?? { group: trigger.group, lights: [] }
    one.lights.push(light)
    by.set(key, one)
  }
  return [...by.values()]
}

/** Lights that need not be told apart: one role, one unit, one setting. */
const apart = (lights: readonly Light[], limit: number): readonly (readonly Light[])[] => {
  const sets: Light[][] = []
  for (const light of lights) {
    const same = sets.find((one) => isPair(one[0]!, light, limit))
    if (same === undefined) sets.push([light])
    else same.push(light)
  }
  return sets
}

const isPair = (a: Light, b: Light, limit: number): boolean =>
  a.role === b.role &&
  a.unit.name === b.unit.name &&
  alike(a.power, b.power, 1, limit) &&
  alike(a.meters?.reads, b.meters?.reads, 2, limit)

/** Both unsaid, or within the limit: a power counts once in stops, an f-number twice. */
const alike = (a: number | undefined, b: number | undefined, times: 1 | 2, limit: number): boolean =>
  a === undefined || b === undefined ? a === b : Math.abs(times * Math.log2(a / b)) <= limit + 1e-6

/** Every job but the first goes to a group that nothing uses. */
const regrouped = (sets: readonly (readonly Light[])[], { plan }: RuleContext): readonly Advice[] => {
  const used = new Set([...plan.lights.values()].map(({ trigger }) => trigger?.group))
  const numbers = sets.flat().every(({ trigger }) => /^[0-9]+$/.test(trigger!.group!))
  const names = numbers ? [...'123456789'] : [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ']
  const free = names.filter((name) => !used.has(name))
  const moved = sets.slice(1)
  if (free.length < moved.length) return []
  return [
    {
      title: moved
        .flatMap((lights, i) => lights.map(({ name }) => `lights.${name}.trigger.group → ${free[i]}`))
        .join(', '),
      gives: 'each job is metered and turned by itself',
    },
  ]
}
