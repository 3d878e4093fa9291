import type { Light, MeterReading } from '../../language/plan.js'
import { uncertainties } from '../../light/how-sure.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { type Evidence, rule } from '../rule.js'
import type { Words } from '../words.js'
import { readingPointer, readingText, readLights, whomText } from './of-reading.js'

const read = (power: string, distance: string, taken: string): string => `plan: 1
title: A reading carried to other settings
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
  key: { unit: flashgun, modifier: softbox 60 x 90 cm, power: ${power}, at: { angle: 35 deg left, distance: ${distance}, height: 2 m } }
readings:
  - { at: subject, of: [key], reads: f/5.6, taken: { key: ${taken} } }
wanted: { framing: head and shoulders }
`

interface Carried {
  readonly light: Light
  /** Today's power over that of then, stops. */
  readonly power: number
  readonly powerThen: number | undefined
  /** What today's distance gives over that of then, stops. */
  readonly distance: number
  readonly distanceThen: number | undefined
}

interface Outdated extends Evidence {
  readonly reading: MeterReading
  readonly carried: readonly Carried[]
  /** What the powers add to the ± of the reading, two standard deviations. */
  readonly adds: number
}

export const readingOutdated = rule<Outdated>({
  id: 'reading-outdated',
  family: 'readings',
  level: 'note',
  finds: 'a reading that was taken at other settings than those of today, and is scaled from there',
  limits: {
    power: { value: 0.05, unit: 'stop', says: 'between the power of then and of today' },
    distance: { value: 2, unit: 'cm', says: 'between the distance of then and of today' },
  },
  why: 'A reading goes on holding when a light is turned or moved, for the difference can be computed; but no dial is exact, and every stop that is carried makes it less sure.',
  formula:
    'log2(power today / power then), and the light at the meter from where it stands today against where it stood; u grows by 0.05 for each stop of power',
  sources: [
    {
      kind: 'derived',
      says: 'power is linear in energy; distance by the light itself, not by inverse square alone',
    },
    { kind: 'common practice', says: 'the steps of a dial hold to a twentieth of a stop each' },
  ],
  basis: "the reading's own settings against the plan's",
  fires: [
    {
      title: 'turned up by a stop and a half',
      plan: read('1/2 + 0.5', '1.2 m', '{ power: 1/4, distance: 1.2 m }'),
    },
    { title: 'moved by five centimetres', plan: read('1/4', '1.25 m', '{ power: 1/4, distance: 1.2 m }') },
    { title: 'turned by a tenth', plan: read('1/4 + 0.1', '1.2 m', '{ power: 1/4, distance: 1.2 m }') },
  ],
  passes: [
    { title: 'as it was taken', plan: read('1/4', '1.2 m', '{ power: 1/4, distance: 1.2 m }') },
    { title: 'a centimetre', plan: read('1/4', '1.21 m', '{ power: 1/4, distance: 1.2 m }') },
    { title: 'nothing said of the power', plan: read('1/2', '1.2 m', '{ distance: 1.2 m }') },
  ],

  needs: ({ plan }) =>
    plan.readings.some(({ taken }) => taken !== undefined && taken.size > 0) ? undefined : 'silent',

  detect: ({ plan, set, limits }) =>
    plan.readings.flatMap((reading, index): readonly Outdated[] => {
      const carried = readLights(plan, reading)
        .flatMap((light) => carriedOf(set, reading, light) ?? [])
        .filter(
          ({ light, power, distanceThen }) =>
            Math.abs(power) > limits.power! + tiny ||
            Math.abs(movedBy(set, light, distanceThen)) * 100 > limits.distance! + tiny,
        )
      if (carried.length === 0) return []
      const adds = 2 * uncertainties.perStopScaled * Math.max(...carried.map(({ power }) => Math.abs(power)))
      return [
        {
          pointer: readingPointer(index, 'taken'),
          also: carried.map(({ light, power }) => ({
            pointer: `/lights/${light.name}/${Math.abs(power) > limits.power! ? 'power' : 'at'}`,
            says: "today's setting",
          })),
          beyond: 'certain',
          measured: Object.fromEntries(
            carried.map(({ light, power, distance }) => [
              `${light.name}-scaled`,
              { value: power + distance, unit: 'stop' as const },
            ]),
          ),
          cause: 'how old the readings are',
          reading,
          carried,
          adds,
        },
      ]
    }),

  tell: ({ reading, carried, adds }, words, { set }) => ({
    message: `${readingText(reading, words)} is scaled ${words.list(carried.map((one) => scaledText(one, carried.length > 1, words)))}, for ${words.list(carried.map((one) => thenAndNow(one, set, words)))}`,
    why:
      adds < 0.005
        ? 'the distance is computed; the reading stays as sure as it was'
        : `that adds ${adds.toFixed(2)} stop to its ±`,
  }),

  mend: ({ reading }, words) => [
    {
      title: `meter ${whomText(reading, words)} at ${reading.at} again as the set stands today, and write it in place of this reading`,
      gives: 'the full certainty of a reading',
    },
  ],
})

const tiny = 1e-6

const carriedOf = (set: ComputedSet, reading: MeterReading, light: Light): Carried | undefined => {
  const taken = reading.taken?.get(light.name)
  if (taken === undefined) return undefined
  return {
    light,
    power: taken.power === undefined || light.power === undefined ? 0 : Math.log2(light.power / taken.power),
    powerThen: taken.power,
    distance: byDistance(set, reading, light, taken.distance),
    distanceThen: taken.distance,
  }
}

const movedBy = (set: ComputedSet, light: Light, then: number | undefined): number => {
  const now = set.scene.lights.get(light.name)?.distance
  return then === undefined || now === undefined ? 0 : now - then
}

/** The light at the meter from where it stands today, against where it stood: its strength the same. */
const byDistance = (
  set: ComputedSet,
  reading: MeterReading,
  light: Light,
  then: number | undefined,
): number => {
  if (then === undefined || Math.abs(movedBy(set, light, then)) < tiny) return 0
  const strength = set.strength(light.name)
  const stood = set.with({ knob: { knob: 'light-distance', light: light.name }, to: then })
  const stoodStrength = stood.strength(light.name)
  const ask = { at: reading.at, of: [light.name], dome: reading.dome }
  const [now, was] = [set.reading(ask), stood.reading(ask)]
  if (strength === undefined || stoodStrength === undefined || now === undefined || was === undefined)
    return 0
  // A light known by what it is to meter goes on metering that wherever it stands: only the geometry counts here.
  return Math.log2(now.luxSeconds / strength.candelaSeconds / (was.luxSeconds / stoodStrength.candelaSeconds))
}

const scaledText = ({ light, power, distance }: Carried, several: boolean, words: Words): string =>
  `by ${words.stops(power + distance)}${several ? ` for ${light.name}` : ''}`

const thenAndNow = (
  { light, power, powerThen, distanceThen }: Carried,
  set: ComputedSet,
  words: Words,
): string => {
  const now = set.scene.lights.get(light.name)?.distance

  return [
    ...(Math.abs(power) > tiny && powerThen !== undefined && light.power !== undefined
      ? [`${light.name} was at ${words.power(powerThen, 0.1)} and is at ${words.power(light.power, 0.1)}`]
      : []),
    ...(distanceThen !== undefined && now !== undefined && Math.abs(movedBy(set, light, distanceThen)) > 0.005
      ? [`${light.name} stood ${words.length(distanceThen)} off and stands ${words.length(now)} off`]
      : []),
  ].join(', ')
}
