import type { Light } from '../../language/plan.js'
import { highSpeedLoss } from '../../light/strength.js'
import type { ComputedSet } from '../../set/computed-set.js'
import type { FNumber } from '../../units/quantity.js'
import { markedAperture, markedSpeedOver } from '../gear.js'
import { firstMissing, unknownLight } from '../known.js'
import { towardLight } from '../light-direction.js'
import { lightPointer } from '../place-pointer.js'
import { pointText } from '../place-words.js'
import { type Evidence, inTurn, type Mend, type RuleContext, rule } from '../rule.js'
import { inside } from '../solving.js'
import { steadyGains } from '../steady-gains.js'
import { reached } from '../tiers.js'
import type { Words } from '../words.js'
import { canBeDoubled } from './doubled.js'
import { atFull, meteredAt, neededPowers, neededStrength, toMeter, wayBlocked } from './full-power.js'
import { solveDistance } from './hold-by-distance.js'

const umbrella = (meters: string, distance = '2 m'): string => `plan: 1
title: One flashgun through an umbrella
camera: { lens: 50 mm, at: { distance: 2.5 m }, aperture: ${meters}, shutter: 1/125, iso: 100 }
subject: { kind: person }
kit: { measured: [ { unit: flashgun, modifier: white umbrella 1 m, power: full, distance: 2 m, reads: f/5.6, iso: 100 } ] }
lights:
  key: { unit: flashgun, modifier: white umbrella 1 m, meters: ${meters}, at: { angle: 30 deg left, distance: ${distance}, height: 2 m } }
wanted: { framing: waist }
`

interface TooWeak extends Evidence {
  readonly light: Light
  readonly short: number
  readonly u: number
  /** Nothing but built-in guesses says what it gives. */
  readonly guessed: boolean
  /** What it gives at full, as an f-number at the point where it is metered. */
  readonly gives: FNumber
}

export const unitTooWeak = rule<TooWeak>({
  id: 'unit-too-weak',
  family: 'power',
  level: 'error',
  finds: 'a light that cannot give what it is to meter even at full power',
  limits: {
    warning: { value: 0, unit: 'stop', says: 'short of what it is to meter: warning over this' },
    error: { value: 1, unit: 'stop', says: 'short of what it is to meter: error over this' },
  },
  why: 'An umbrella takes two stops, a large box three, and printed guide numbers are bright ones: a small flash that looks strong on paper ends at f/4.',
  formula: 'log2(strength that gives the wanted reading where it stands / strength at full power)',
  sources: [
    { kind: 'standard', says: 'incident metering N² = H·S/C, C = 250: ISO 2720' },
    { kind: 'common practice', says: 'printed guide numbers run optimistic by about two thirds of a stop' },
    { kind: 'common practice', says: 'losses of modifiers, as reported; a reading of your own settles it' },
  ],
  basis: 'incident metering, ISO 2720; ratings and losses as stated or guessed',
  fires: [
    { title: 'two stops too much to ask', plan: umbrella('f/11') },
    { title: 'just too much', plan: umbrella('f/6.3') },
  ],
  passes: [
    { title: 'an easy reading', plan: umbrella('f/2.8') },
    { title: 'just within reach', plan: umbrella('f/5.0') },
  ],

  needs: ({ set }) => {
    const lights = toMeter(set)
    if (lights.length === 0) {
      const unknown = set.unknown.find((light) => light.unit.kind === 'flash')
      return unknown === undefined ? 'silent' : unknownLight(unknown, set)
    }
    return lights.length === 1 ? firstMissing(() => wayBlocked(set, lights[0]!)) : undefined
  },

  detect: ({ set, limits }) =>
    allAtOnce(set).map(({ light, overFull, u, rated }) => {
      const tier = reached((limit) => overFull - limit, u, [
        { level: 'warning', limit: limits.warning! },
        { level: 'error', limit: limits.error! },
      ])
      return {
        pointer: lightPointer(light.name, 'meters'),
        beyond: tier.beyond,
        level: tier.level,
        measured: {
          short: { value: overFull, unit: 'stop' as const, u, limit: tier.limit, side: 'at-most' as const },
        },
        cause: `the power of ${light.name}`,
        scale: { value: -overFull, u, needs: 0, against: `against what ${light.name} is to meter` },
        light,
        short: overFull,
        u,
        guessed: rated && (light.unit.guessed || light.modifier?.guessed === true),
        gives: (light.meters!.reads * 2 ** (-overFull / 2)) as FNumber,
      }
    }),

  tell: ({ light, short, gives, guessed }, words, { set, plan }) => ({
    message: `${pointText(plan, meteredAt(light))} stays ${words.howMany(short)} too dark: ${light.name} is to meter ${words.f(light.meters!.reads)} there and gives ${words.f(gives)} at full power`,
    why: [
      unitText(light) + (light.modifier === undefined ? '' : ` in ${light.modifier.name}`),
      ...(set.scene.lights.get(light.name)?.distance === undefined
        ? []
        : [`${words.length(set.scene.lights.get(light.name)!.distance!)} from the subject`]),
      ...[hiddenBy(set, light)].flatMap((by) =>
        by === undefined ? [] : [`${by} stands between and hides it`],
      ),
      ...(guessed ? ['guessed figures: one reading makes them sure'] : []),
    ].join('; '),
  }),

  mend: (found, words, context) => {
    const by = hiddenBy(context.set, found.light)
    return by !== undefined
      ? [{ title: `${by} out of the way of ${found.light.name}` }]
      : inTurn(
          () => closer(found, words, context),
          () => opened(found, words),
          () => faster(found, words, context),
          () => [secondUnit(found, words)],
        )
  },
})

/** What high-speed mode takes from a flash is told by its own rule. */
const allAtOnce = (set: ComputedSet) =>
  neededPowers(set).filter(({ light }) => highSpeedLoss(light, set.plan) === undefined)

/** Where a panel hides more of it than this, the unit is not what is wrong. A scrim is there to be shone through. */
const hidden = 0.9

const hiddenBy = (set: ComputedSet, light: Light): string | undefined => {
  const at = set.scene.points.get(meteredAt(light))?.at
  const toward = at && towardLight(set.scene, light.name, at)
  if (at === undefined || toward === undefined) return undefined
  const shares = set.hides({ at, normal: toward, kind: 'dome' }, light.name)
  return [...shares].find(([name, share]) => {
    const kind = set.plan.panels.get(name)?.kind
    return share > hidden && kind !== undefined && kind !== 'scrim'
  })?.[0]
}

/** A unit that is described in its place goes by the light's own name. */
const unitText = ({ name, unit }: Light): string => (unit.name === name ? 'its unit' : unit.name)

const closer = ({ light, u, short }: TooWeak, words: Words, { set, plan }: RuleContext): readonly Mend[] => {
  const full = atFull(set, light)
  if (full === undefined) return []
  const aim = (margin: number) =>
    solveDistance(
      set,
      light,
      (today) => Math.max(0.4, today * 2 ** (-short / 2 - 1)),
      (moved) => {
        const needed = neededStrength(moved, light)
        return needed === undefined ? undefined : Math.log2(needed / full.candelaSeconds) + margin
      },
    )
  const turned = aim(inside(u)) ?? aim(0.1)
  return turned === undefined
    ? []
    : [
        {
          title: turned.title,
          gives: `${words.f(light.meters!.reads)} at full power`,
          costs: [
            ...(light.role === 'key' || light.role === 'fill'
              ? [
                  `the light falls off faster across ${plan.subject.kind === 'object' ? 'the object' : 'the sitter'}`,
                ]
              : []),
            'keep it out of the frame',
          ].join('; '),
          after: set.with(turned.change),
        },
      ]
}

/** No lens opens further. Common practice, no source. */
const widest = 1.2

const opened = ({ light, gives }: TooWeak, words: Words): readonly Mend[] => {
  const marked = markedAperture(gives, 'under')
  return marked < widest - 0.01
    ? []
    : [
        {
          title: `lights.${light.name}.meters → ${words.f(marked)}, and the aperture with it`,
          gives: 'full power is enough',
          costs: 'less depth of field; the other lights down by as much',
        },
      ]
}

const faster = ({ short, u }: TooWeak, words: Words, { set, plan }: RuleContext): readonly Mend[] => {
  const iso = markedSpeedOver(plan.camera.iso * 2 ** (short + inside(u)))
  return iso === undefined
    ? []
    : [
        {
          title: `camera.iso → ${iso}`,
          gives: 'the same f-numbers with less light',
          costs: ['more noise', steadyGains(set, Math.log2(iso / plan.camera.iso), words)].join('; '),
          after: set.with({ knob: { knob: 'iso' }, to: iso }),
        },
      ]
}

/** Two alike add a stop. */
const secondUnit = ({ light, short }: TooWeak, words: Words): Mend => {
  if (short + 0.1 > 1 || !canBeDoubled(light))
    return { title: `another unit, that gives ${words.howMany(short)} more` }
  return {
    title: `a second ${unitText(light).replace('its ', '')} beside it`,
    gives: words.stops(1),
    costs: 'another stand, trigger and battery',
  }
}
