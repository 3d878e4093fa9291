import type { Light } from '../../language/plan.js'
import type { StrengthFrom } from '../../light/strength.js'
import type { FNumber } from '../../units/quantity.js'
import { markedAperture, turnLight } from '../gear.js'
import { unknownLight } from '../known.js'
import { lightPointer } from '../place-pointer.js'
import { pointText } from '../place-words.js'
import { type Advice, type Evidence, type Mend, type RuleContext, rule } from '../rule.js'
import type { Words } from '../words.js'
import { meteredAt, wayBlocked } from './full-power.js'

/** Metered once: a quarter gives f/5.6 at 1.2 m. */
const umbrella = (power: string, meters: string): string => `plan: 1
title: An umbrella that the kit has metered
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
kit: { measured: [ { unit: flashgun, modifier: white umbrella 1 m, power: 1/4, distance: 1.2 m, reads: f/5.6, iso: 100 } ] }
lights:
  key: { unit: flashgun, modifier: white umbrella 1 m, power: ${power}, meters: ${meters}, at: { angle: 30 deg left, distance: 1.2 m, height: 2 m } }
wanted: { framing: head and shoulders }
`

interface PowerDiffers extends Evidence {
  readonly light: Light
  /** Stops that the light gives over what it is to meter; negative is under. */
  readonly off: number
  readonly gives: FNumber
  readonly from: StrengthFrom
}

export const powerDiffers = rule<PowerDiffers>({
  id: 'power-differs',
  family: 'power',
  level: 'warning',
  finds: 'a power that does not give what the light is to meter',
  limits: {
    off: { value: 1 / 3, unit: 'stop', says: 'between what the light gives and what it is to meter' },
  },
  why: 'The plan says twice how strong a light is: what it is set to, and what it is to meter. Whoever rigs from it follows one of the two, and the picture is that of the other.',
  formula: '2·log2(N that the light gives at its power, alone, at its point / N that it is to meter)',
  sources: [
    { kind: 'standard', says: 'incident metering N² = H·S/C, C = 250: ISO 2720' },
    { kind: 'derived', says: 'power is linear in energy; a stop is half of it' },
    { kind: 'common practice', says: 'a third of a stop is the tolerance that the trade works to' },
  ],
  basis: 'incident metering, ISO 2720; readings, measurements or ratings of the light',
  fires: [
    { title: 'a stop too little', plan: umbrella('1/4', 'f/8') },
    { title: 'two thirds too much', plan: umbrella('1/4 + 0.7', 'f/5.6') },
    { title: 'just over a third', plan: umbrella('1/4', 'f/5.6 + 0.4') },
  ],
  passes: [
    { title: 'set as metered', plan: umbrella('1/4', 'f/5.6') },
    { title: 'just under a third', plan: umbrella('1/4', 'f/5.6 + 0.3') },
    { title: 'a stop up in both', plan: umbrella('1/2', 'f/8') },
  ],

  needs: ({ plan, set }) => {
    const both = saidTwice(plan)
    if (both.length === 0) return 'silent'
    const unknown = both.find((light) => set.unknown.includes(light))
    if (unknown !== undefined) return unknownLight(unknown, set)
    return both.length === 1 ? wayBlocked(set, both[0]!) : undefined
  },

  detect: ({ set, plan, limits, u }) =>
    saidTwice(plan).flatMap((light) => {
      const strength = set.strength(light.name)
      const gives = set.reading({ at: meteredAt(light), of: [light.name] })
      if (strength === undefined || gives === undefined || wayBlocked(set, light) !== undefined) return []
      const off = 2 * Math.log2(gives.fNumber / light.meters!.reads)
      const uOff = u(gives.figure)
      return [
        {
          pointer: lightPointer(light.name, 'power'),
          also: [{ pointer: lightPointer(light.name, 'meters'), says: 'what it is to meter' }],
          beyond: { stops: Math.abs(off) - limits.off!, u: uOff },
          measured: {
            'over-meters': {
              value: off,
              unit: 'stop' as const,
              u: uOff,
              limit: limits.off!,
              side: 'at-most' as const,
            },
            gives: { value: gives.fNumber, unit: 'f-number' as const },
          },
          cause: `the power of ${light.name}`,
          scale: { value: off, u: uOff, needs: 0, against: `against what ${light.name} is to meter` },
          light,
          off,
          gives: gives.fNumber,
          from: strength.from,
        },
      ]
    }),

  tell: ({ light, off, gives, from }, words, { plan }) => ({
    message: `${pointText(plan, meteredAt(light))} comes out ${words.howMany(off)} too ${off > 0 ? 'light' : 'dark'} where ${light.name} is set by its power: it gives ${words.f(gives)} at ${words.power(light.power!)}, and is to meter ${words.f(light.meters!.reads)}`,
    why: `the power is what is set, meters is what is wanted; ${basisOf[from]}`,
  }),

  mend: (found, words, context) => [...powerFor(found, words, context), metersFor(found, words, context)],
})

const saidTwice = (plan: RuleContext['plan']): readonly Light[] =>
  [...plan.lights.values()].filter(
    (light) => light.on && light.power !== undefined && light.meters !== undefined,
  )

const basisOf: Readonly<Record<StrengthFrom, string>> = {
  reading: 'by what a meter did read of it',
  measured: 'by a measurement of the kit',
  meters: 'by what it is to meter',
  'guide number': 'by its guide number: one reading settles it',
  'metered output': 'by its stated output: one reading settles it',
  energy: 'by its watt-seconds: one reading settles it',
  stated: 'by what is stated of it',
}

const powerFor = (
  { light, off }: PowerDiffers,
  words: Words,
  { set, plan }: RuleContext,
): readonly Mend[] => {
  const turned = turnLight(plan, light.name, -off, 'nearest')
  return turned === undefined
    ? []
    : [
        {
          title: turned.title,
          gives:
            turned.short > 0.05
              ? `as far as the unit goes, still ${words.howMany(turned.short)} off`
              : `${words.f(light.meters!.reads)} at ${pointText(plan, meteredAt(light))}`,
          after: set.with(turned.change),
          ...(turned.short > 0.05 ? { partial: true } : {}),
        },
      ]
}

const metersFor = ({ light, gives }: PowerDiffers, words: Words, { plan }: RuleContext): Advice => {
  const reads = lightPointer(light.name, 'meters', 'reads')
  return {
    title: `lights.${light.name}.meters${plan.places.stated(reads) ? '.reads' : ''} → ${words.f(markedAperture(gives))}`,
    gives: 'the plan wants what the light gives',
    costs: 'the light moves against the others and against the aperture',
  }
}
