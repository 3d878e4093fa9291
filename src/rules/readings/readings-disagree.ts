import type { Light, MeterReading } from '../../language/plan.js'
import { computeSet } from '../../set/compute-set.js'
import type { ComputedSet, HeldReading } from '../../set/computed-set.js'
import type { FNumber } from '../../units/quantity.js'
import { lightPointer } from '../place-pointer.js'
import { type Advice, type Evidence, type RuleContext, rule } from '../rule.js'
import type { Words } from '../words.js'
import {
  type Conflict,
  comparable,
  conflicts,
  leftText,
  type Otherwise,
  otherwise,
  otherwiseText,
} from './conflicts.js'
import { readingPointer, readingText, readLights } from './of-reading.js'

/** A head on the camera's axis, metered at two places. */
const twice = (nearer: string, farther: string): string => `plan: 1
title: One head at two places
camera: { lens: 50 mm, at: { distance: 3 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
  key: { unit: head 400 Ws, modifier: standard reflector, power: 1/2, at: { angle: 0 deg, distance: 4 m, height: 1.7 m } }
points: { nearer: { front: 1 m, height: 1.62 m } }
readings:
  - { at: subject, of: [key], reads: ${farther}, taken: { key: { power: 1/2, distance: 4 m } } }
  - { at: nearer, of: [key], reads: ${nearer}, taken: { key: { power: 1/2, distance: 4 m } } }
wanted: { framing: waist, shadow: any }
`

/** An umbrella that the kit has metered: a quarter gives f/5.6 at 1.2 m. */
const againstKit = (reads: string, power = '1/4'): string => `plan: 1
title: A reading beside the kit's measurement
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
kit: { measured: [ { unit: flashgun, modifier: white umbrella 1 m, power: 1/4, distance: 1.2 m, reads: f/5.6, iso: 100 } ] }
lights:
  key: { unit: flashgun, modifier: white umbrella 1 m, power: ${power}, at: { angle: 30 deg left, distance: 1.2 m, height: 2 m } }
readings:
  - { at: subject, of: [key], reads: ${reads}, taken: { key: { power: ${power}, distance: 1.2 m } } }
wanted: { framing: head and shoulders }
`

interface Disagrees extends Evidence {
  readonly held: Pick<HeldReading, 'difference' | 'u' | 'read' | 'predicted'>
  readonly reading: MeterReading
  readonly index: number
  /** The readings that say otherwise; none where the rating does. */
  readonly others: readonly number[]
}

export const readingsDisagree = rule<Disagrees>({
  id: 'readings-disagree',
  family: 'readings',
  level: 'warning',
  finds: 'readings that contradict each other, or the power and the rating of their light',
  limits: {
    difference: {
      value: 1 / 3,
      unit: 'stop',
      says: 'of a reading to all that is known without it; and over twice the uncertainty of that difference',
    },
  },
  why: 'Every figure of the set stands on the readings. Where two cannot both be right, one was taken with another ISO, another power, the dome turned elsewhere, or something in the way, and all that is computed from it is wrong by as much.',
  formula:
    '2·log2(N that was read / N that ratings, calibrations and all other readings predict at the settings of the time)',
  sources: [
    { kind: 'standard', says: 'incident metering N² = H·S/C, C = 250: ISO 2720' },
    {
      kind: 'derived',
      says: 'the most probable strengths by all that is known but this reading, with the uncertainty of the difference',
    },
    {
      kind: 'common practice',
      says: 'readings that break the law of distance come from ISO, power, dome or aim before they come from the law',
    },
  ],
  basis: 'incident metering, ISO 2720; all readings held against each other',
  fires: [
    { title: 'two thirds more than the distance gives', plan: twice('f/11 + 0.5', 'f/8') },
    { title: 'three stops under the measurement of the kit', plan: againstKit('f/2') },
    { title: 'just over what two meters may differ', plan: againstKit('f/7.1') },
  ],
  passes: [
    { title: 'as the distance says', plan: twice('f/10 + 0.2', 'f/8') },
    { title: 'a third off the measurement of the kit', plan: againstKit('f/6.3') },
    { title: 'a reading alone beside a rating', plan: againstKit('f/8', '1/2').replace(/kit:.*\n/, '') },
  ],

  needs: ({ plan }) => (plan.readings.length === 0 ? 'silent' : undefined),

  detect: (context) => {
    const found = conflicts(context.set, context.limits.difference!)
    return [...eachOther(context, found), ...rating(context, found)]
  },

  tell: ({ held, reading, index, others }, words, { plan }) => ({
    message: `${readingText(reading, words)} shows ${words.howMany(held.difference)} ${held.difference > 0 ? 'more' : 'less'} than ${saying(plan, reading, others, words)}: ${asWritten(plan, index) ?? words.f(held.read)} against ${words.f(held.predicted)}`,
    why: `${others.length === 1 ? 'which of the two is wrong, nothing tells' : 'whatever is wrong there is wrong in every figure that stands on it'}; such a difference is uncertain by ± ${(2 * held.u).toFixed(1)}`,
  }),

  mend: (found, words, context) => ask(found, words, context),
})

// ---------------------------------------------------------------- detecting

const figures = ({ difference, u, read, predicted }: HeldReading | Disagrees['held'], limit: number) => ({
  difference: {
    value: difference,
    unit: 'stop' as const,
    u,
    limit: Math.max(limit, 2 * u),
    side: 'at-most' as const,
  },
  read: { value: read, unit: 'f-number' as const },
  predicted: { value: predicted, unit: 'f-number' as const },
})

/** More places than these nobody looks up. */
const mostShown = 3

/** A reading of one light alone has only ratings and calibrations against it. */
const eachOther = ({ plan, limits }: RuleContext, found: readonly Conflict[]): readonly Disagrees[] =>
  found.map(({ doubted, others }) => ({
    pointer: readingPointer(doubted.index),
    also:
      others.length > mostShown
        ? []
        : others.map(({ index }) => ({ pointer: readingPointer(index), says: 'held against this' })),
    beyond: 'certain',
    ...(others.length === 0 && mayBeChance(plan, doubted) ? { level: 'note' as const } : {}),
    measured: figures(doubted, limits.difference!),
    cause: 'readings that cannot all be right',
    held: doubted,
    reading: plan.readings[doubted.index]!,
    index: doubted.index,
    others: others.map(({ index }) => index),
  }))

/**
 * Against what gear is rated at, one honest reading in twenty lies two standard deviations off; of many readings some
 * always do. A warning wants three, and never comes of a built-in guess.
 */
const mayBeChance = (
  plan: RuleContext['plan'],
  held: Pick<HeldReading, 'lights' | 'difference' | 'u'>,
): boolean => onlyGuessed(plan, held) || Math.abs(held.difference) <= 3 * held.u

/** What a built-in guess says against a meter is worth a note. */
const onlyGuessed = (plan: RuleContext['plan'], { lights }: Pick<HeldReading, 'lights'>): boolean =>
  lights.every((name) => {
    const light = plan.lights.get(name)
    if (light === undefined) return true
    return (light.unit.guessed || light.modifier?.guessed === true) && !measured(plan, name)
  })

const measured = (plan: RuleContext['plan'], light: string): boolean =>
  priorSet(plan).strength(light)?.from === 'measured'

/** Several readings of a light that agree among themselves, against its rating: none of them alone shows it. */
const rating = ({ set, plan, limits }: RuleContext, found: readonly Conflict[]): readonly Disagrees[] => {
  const odd = new Set(found.flatMap(({ doubted, others }) => [doubted, ...others]))
  return [...plan.lights.values()].flatMap((light): readonly Disagrees[] => {
    const own = comparable(set).filter(({ lights }) => lights.length === 1 && lights[0] === light.name)
    const first = own[0]
    if (own.length < 2 || first === undefined || own.some((one) => odd.has(one))) return []
    const held = againstRating(set, priorSet(plan), light, first)
    if (held === undefined || Math.abs(held.difference) <= Math.max(limits.difference!, 2 * held.u)) return []
    return [
      {
        pointer: light.power === undefined ? lightPointer(light.name) : lightPointer(light.name, 'power'),
        also: own.map(({ index }) => ({ pointer: readingPointer(index), says: 'read here' })),
        beyond: 'certain',
        ...(mayBeChance(plan, { ...held, lights: first.lights }) ? { level: 'note' as const } : {}),
        measured: figures(held, limits.difference!),
        cause: 'readings that cannot all be right',
        held,
        reading: plan.readings[first.index]!,
        index: first.index,
        others: [],
      },
    ]
  })
}

/** The plan as it stood before anybody metered; made once a plan. */
const priorSet = (plan: RuleContext['plan']): ComputedSet => {
  const known = unreadSets.get(plan)
  if (known !== undefined) return known
  const made = computeSet({ ...plan, readings: [] })
  unreadSets.set(plan, made)
  return made
}

const unreadSets = new WeakMap<RuleContext['plan'], ComputedSet>()

const againstRating = (
  set: ComputedSet,
  unread: ComputedSet,
  light: Light,
  { read }: HeldReading,
): Disagrees['held'] | undefined => {
  const [is, was] = [set.strength(light.name), unread.strength(light.name)]
  if (is === undefined || was === undefined || was.from === 'meters') return undefined
  const difference = Math.log2(is.candelaSeconds / was.candelaSeconds)
  return {
    difference: difference as HeldReading['difference'],
    u: Math.hypot(is.u, was.u),
    read,
    predicted: (read * 2 ** (-difference / 2)) as FNumber,
  }
}

// ---------------------------------------------------------------- telling and asking

/** Quotes of the file are none of the figure's. */
const asWritten = ({ places }: RuleContext['plan'], index: number): string | undefined => {
  const written = places.written(readingPointer(index, 'reads'))
  return written !== undefined && /^f/i.test(written) ? written : undefined
}

const saying = (
  plan: RuleContext['plan'],
  reading: MeterReading,
  others: readonly number[],
  words: Words,
): string => {
  if (others.length > 0)
    return others.length === 1
      ? `${readingText(plan.readings[others[0]!]!, words)} tells`
      : 'the other readings of it tell'
  const names = readLights(plan, reading).map(({ name }) => name)
  return names.length > 0 && names.every((name) => measured(plan, name))
    ? `the kit's measurement of ${words.list(names)} tells`
    : `the power and the rating of ${names.length === 0 ? 'the light' : words.list(names)} tell`
}

/** ISO, power, dome and aim come before any doubt of the law or of the rating. */
const ask = (found: Disagrees, words: Words, { set, plan }: RuleContext): readonly Advice[] => {
  const { reading, others } = found
  const held = set.readings.find((one) => one.index === found.index)
  const ways = held === undefined ? [] : otherwise(set, held)
  // What would leave as much of the difference explains nothing.
  const leaving = (some: readonly Otherwise[]): readonly string[] =>
    some
      .filter(({ left }) => Math.abs(left) < Math.abs(found.held.difference) - worthTelling)
      .map((one) => `${otherwiseText(one, reading, words)} ${leftText(one.left, words)} would be left`)
  const lights = readLights(plan, reading)
  const settings = lights.flatMap((light) => powerThen(reading, light, found.held.difference, words))
  const setOtherwise = [
    ...leaving(ways.filter(({ what }) => what === 'iso')),
    ...(lights.length === 1 ? settings.map(({ fits }) => fits) : []),
  ]
  const heldOtherwise = leaving(ways.filter(({ what }) => what !== 'iso'))
  return [
    {
      title: `ask first about the ISO of the meter (${reading.iso} is written)${settings.length === 0 ? '' : ` and the power (${words.list(settings.map(({ was }) => was))})`}`,
      ...(setOtherwise.length === 0 ? {} : { gives: setOtherwise.join('; ') }),
    },
    {
      title: `ask how it was held (${domeText(reading, words)}), and about the aim of ${lights.length === 0 ? 'the light' : words.list(lights.map(({ name }) => name))} with nobody in the way`,
      ...(heldOtherwise.length === 0 ? {} : { gives: heldOtherwise.join('; ') }),
    },
    {
      title:
        others.length > 0
          ? 'take it again, right after one of the others; if it stays, look for what the plan does not know'
          : 'where all of that holds, believe the meter: the rating gives way to it',
    },
  ]
}

const worthTelling = 0.1

const powerThen = (
  { taken }: MeterReading,
  light: Light,
  difference: number,
  words: Words,
): readonly { readonly was: string; readonly fits: string }[] => {
  const then = taken?.get(light.name)?.power ?? light.power
  return then === undefined
    ? []
    : [
        {
          was: `${light.name} at ${words.power(then, 0.1)}`,
          fits: `${words.power(then * 2 ** difference, 0.1)} would give what was read`,
        },
      ]
}

const domeText = (reading: MeterReading, words: Words): string =>
  reading.kind === 'reflected'
    ? 'off the surface'
    : `dome ${reading.dome}, ${
        typeof reading.faces === 'object'
          ? `toward ${reading.faces.point}`
          : reading.faces === 'out'
            ? 'out of the surface'
            : reading.faces === 'light'
              ? `toward ${typeof reading.of === 'string' ? 'the light' : words.list(reading.of)}`
              : `toward the ${reading.faces}`
      }`
