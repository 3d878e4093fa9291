import type { Light, PowerRange } from '../../language/plan.js'
import { turnLight } from '../gear.js'
import { unknownLight } from '../known.js'
import { settingPointer } from '../place-pointer.js'
import { pointText } from '../place-words.js'
import { type Evidence, inTurn, type Mend, type RuleContext, rule } from '../rule.js'
import { inside } from '../solving.js'
import type { Words } from '../words.js'
import { atFull, meteredAt, neededPowers, neededStrength, rangeOf } from './full-power.js'
import { solveDistance } from './hold-by-distance.js'

const lowLight = (power: string, distance = '80 cm', iso = '200', aperture = 'f/2.8'): string => `plan: 1
title: Food wide open
camera: { lens: 50 mm, at: { distance: 1 m, height: 1.2 m }, aperture: ${aperture}, shutter: 1/160, iso: ${iso} }
subject: { kind: object, height: 20 cm, width: 30 cm, depth: 30 cm, stands-on: { height: 75 cm, surface: white paper, size: 1 x 1 m } }
lights:
  key: { unit: { guide-number: 30 m at 35 mm, power: { from: 1/32, to: full, step: 1/3 stop } }, modifier: softbox 60 x 60 cm, ${power}, at: { angle: 60 deg left, distance: ${distance}, height: 1.4 m } }
wanted: { exposure: 0 stops }
`

interface BeyondRange extends Evidence {
  readonly light: Light
  readonly range: PowerRange
  /** The share that is set or that it would take. */
  readonly share: number
  /** Stops outside the range; positive always. */
  readonly off: number
  readonly low: boolean
  readonly u: number
}

export const powerBeyondRange = rule<BeyondRange>({
  id: 'power-beyond-range',
  family: 'power',
  level: 'error',
  finds: 'a power that the unit cannot be set to, or a reading too low for its least',
  limits: {
    off: { value: 0, unit: 'stop', says: 'outside the range of the unit' },
  },
  why: 'Many heads go down three to five stops only. Wide open, close up or at a high ISO even the least is too much, and the shutter does not help: it does not change the flash.',
  formula:
    'share of full power = strength wanted / strength at full; against the least and the most of the unit',
  sources: [
    { kind: 'derived', says: 'power is linear in energy; a stop is half of it' },
    { kind: 'standard', says: 'incident metering N² = H·S/C, C = 250: ISO 2720' },
  ],
  basis: "the unit's own range; incident metering, ISO 2720",
  fires: [
    { title: 'a power below the least of the unit', plan: lowLight('power: 1/128', '1.4 m', '100', 'f/1.2') },
    { title: 'a third below it', plan: lowLight('power: 1/64 + 0.7') },
    {
      title: 'a reading that the least power passes by far',
      plan: lowLight('meters: f/1.4', '60 cm', '400', 'f/1.4'),
    },
  ],
  passes: [
    { title: 'the least power', plan: lowLight('power: 1/32') },
    {
      title: 'a reading in the middle of the range',
      plan: lowLight('meters: f/5.6', '80 cm', '200', 'f/5.6'),
    },
  ],

  needs: ({ plan, set }) => {
    const lights = [...plan.lights.values()].filter((light) => light.on && rangeOf(light) !== undefined)
    if (lights.length === 0) return 'silent'
    const unknown = lights.find((light) => light.power === undefined && light.meters === undefined)
    return unknown !== undefined && set.unknown.includes(unknown) && lights.length === 1
      ? unknownLight(unknown, set)
      : undefined
  },

  detect: ({ plan, set }) =>
    [
      ...[...plan.lights.values()].flatMap((light) => {
        const range = rangeOf(light)
        if (!light.on || range === undefined || light.power === undefined) return []
        return [evidence(light, range, light.power, undefined)]
      }),
      ...neededPowers(set).flatMap(({ light, range, overFull, u }) =>
        light.power === undefined && overFull < 0
          ? [evidence(light, range, range.to * 2 ** overFull, u)]
          : [],
      ),
    ].filter((found) => found !== undefined),

  tell: ({ light, range, share, off, low, beyond }, words, { plan }) => ({
    message:
      beyond === 'certain'
        ? `${light.name} cannot be set to ${words.power(share, 0)}: its ${low ? 'least' : 'most'} is ${words.power(low ? range.from : range.to, 0)}, and the light comes out ${words.howMany(off)} ${low ? 'stronger' : 'weaker'}`
        : `${light.name} is too strong for ${words.f(light.meters!.reads)} at ${pointText(plan, meteredAt(light))} even at its least power of ${words.power(range.from, 0)}, by ${words.howMany(off)}`,
    why: `${light.unit.name === light.name ? 'its unit' : light.unit.name} goes from ${words.power(range.from, 0)} to ${words.power(range.to, 0)}`,
  }),

  mend: (found, words, context) =>
    inTurn(
      () => nearest(found, words, context),
      () => (found.low ? furtherOff(found, words, context) : []),
      () => (found.low ? density(found, words, context) : []),
    ),

  inShort: ({ light, off, low }, words) =>
    `${light.name} is ${words.howMany(off)} ${low ? 'under its least power' : 'over its full power'}`,
})

const tiny = 1e-4

const evidence = (
  light: Light,
  range: PowerRange,
  share: number,
  u: number | undefined,
): BeyondRange | undefined => {
  const below = Math.log2(range.from / share)
  const above = Math.log2(share / range.to)
  const off = Math.max(below, above)
  if (u === undefined && off <= tiny) return undefined
  return {
    pointer: settingPointer(light),
    beyond: u === undefined ? 'certain' : { stops: below, u },
    measured: {
      'outside-range': {
        value: off,
        unit: 'stop',
        limit: 0,
        side: 'at-most',
        ...(u === undefined ? {} : { u }),
      },
      share: { value: share, unit: 'share' },
    },
    cause: `the power of ${light.name}`,
    light,
    range,
    share,
    off,
    low: below >= above,
    u: u ?? 0,
  }
}

const nearest = (
  { light, off, low, beyond }: BeyondRange,
  words: Words,
  { set, plan }: RuleContext,
): readonly Mend[] => {
  if (beyond !== 'certain') return []
  const turned = turnLight(plan, light.name, low ? off : -off)
  return turned === undefined
    ? []
    : [
        {
          title: turned.title,
          gives: `${words.howMany(off)} ${low ? 'more' : 'less'} light than the plan says`,
          after: set.with(turned.change),
        },
      ]
}

/** At the least power, where the light gives what the plan asks of it. */
const furtherOff = (found: BeyondRange, words: Words, context: RuleContext): readonly Mend[] => {
  const { set, plan } = context
  const { light, range, off, u } = found
  const least = turnLight(plan, light.name, off)
  const full = atFull(set, light)
  const want = set.reading({ at: meteredAt(light), of: [light.name] })?.luxSeconds
  const stops = (moved: ComputedSetLike): number | undefined => {
    if (light.power === undefined) {
      const needed = neededStrength(moved, light)
      return needed === undefined || full === undefined
        ? undefined
        : Math.log2(needed / full.candelaSeconds) - Math.log2(range.from / range.to) - inside(u)
    }
    const gives = moved.reading({ at: meteredAt(light), of: [light.name] })?.luxSeconds
    return gives === undefined || want === undefined ? undefined : Math.log2(want / gives) - off
  }
  const turned = solveDistance(set, light, (today) => today * 2 ** (off / 2 + 1) + 0.2, stops)
  return turned === undefined
    ? []
    : [
        {
          title: `${turned.title}${least === undefined || light.power === undefined ? `, at ${words.power(range.from, 0)}` : `, ${least.title}`}`,
          gives: `${pointText(plan, meteredAt(light))} meters as the plan asks`,
          costs: 'a smaller source, so harder light, and more of it on what is behind',
          after: set.with(
            turned.change,
            ...(least === undefined || light.power === undefined ? [] : [least.change]),
          ),
        },
      ]
}

type ComputedSetLike = RuleContext['set']

/** On the lens it takes from every light alike: all come up by what is left of the whole stops. */
const density = ({ off, u }: BeyondRange, words: Words, { plan }: RuleContext): readonly Mend[] => {
  const stops = Math.max(1, Math.ceil(off + (u > 0 ? inside(u) : 0) - 1e-6))
  const rest = stops - off
  return [
    {
      title: `camera.filter → ${words.howMany(plan.camera.filter + stops)} of neutral density, every light up by ${words.howMany(stops)}`,
      gives:
        rest < 0.05
          ? 'the same aperture, which puts this light exactly at its least'
          : `the same aperture, this light ${words.howMany(rest)} over its least power`,
      costs: 'a dark finder, and the room loses as much',
    },
  ]
}
