import { flashesInARow, type Known, recycleAt, runsOnCells } from '../../light/charge.js'
import type { ComputedSet } from '../../set/computed-set.js'
import type { Seconds } from '../../units/quantity.js'
import { secondsText } from '../gear.js'
import { settingPointer } from '../place-pointer.js'
import { type Evidence, inTurn, type Mend, rule } from '../rule.js'
import { inside } from '../solving.js'
import { fasterAndDown, moreUnits, openAndDown } from './less-power.js'
import { anyFlash, powerText, type UsedPower, usedPowers, usedPowersMissing } from './used-power.js'

const pace = (
  power: string,
  every: string,
  unit = '{ guide-number: 36 m at 35 mm, recycle: 2.5 s }',
  frames = '',
): string => `plan: 1
title: Portraits at a pace
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
  key: { unit: ${unit}, modifier: white umbrella 1 m, power: ${power}, at: { angle: 30 deg left, distance: 1.2 m, height: 2 m } }
wanted: { framing: head and shoulders, shooting: { every: ${every}${frames} } }
`

interface Slow extends Evidence {
  readonly used: UsedPower
  readonly takes: Known<Seconds>
  readonly every: Seconds
  /** Flashes from a full charge that come out whole at this pace. */
  readonly inARow: number
  /** What it must go down by, stops. */
  readonly stops: number
}

export const recycleSlow = rule<Slow>({
  id: 'recycle-slow',
  family: 'power',
  level: 'warning',
  finds: 'a flash that is not ready again when the next frame is wanted',
  limits: {
    'of-the-pace': {
      value: 1,
      unit: 'share',
      says: 'of the time from one frame to the next that recycling may take',
    },
  },
  why: 'A flash that is fired before it is ready gives less light or none, and the frame is lost. What it takes to be ready goes with the energy: half the power is ready in half the time, and at a thirty-second it is ready at once.',
  formula: 'recycling time at full power × share of full power, against the time from frame to frame',
  sources: [
    { kind: 'derived', says: 'recharging restores what the flash took: time and energy go together' },
    {
      kind: 'memory',
      says: 'a flash that is cut short gives all its light while 60 % of its charge is left',
    },
    {
      kind: 'common practice',
      says: 'a flashgun at full power takes 2 to 3 s on fresh cells, half of that at half power; tired cells take up to twice as long',
    },
    { kind: 'memory', says: 'flashguns take 50 W from their cells, mains heads 350 W while they charge' },
  ],
  basis: 'recycling as stated or guessed, in proportion to energy',
  fires: [
    { title: 'full power, a frame every second', plan: pace('full', '1 s') },
    { title: 'half power, not quite', plan: pace('1/2', '1 s') },
    { title: 'a big head of which no recycling is stated', plan: pace('full', '1 s', 'head 600 Ws') },
  ],
  passes: [
    { title: 'full power, a frame every four seconds', plan: pace('full', '4 s') },
    { title: 'a quarter keeps up', plan: pace('1/4', '1 s') },
    { title: 'a burst at a thirty-second', plan: pace('1/32', '0.1 s') },
    {
      title: 'ten frames of a leap out of what the flash holds',
      plan: pace('1/16', '0.1 s', undefined, ', frames: 10'),
    },
    { title: 'a head on the mains', plan: pace('1/4', '1 s', 'head 400 Ws') },
  ],

  needs: ({ set, plan }) => {
    if (!anyFlash(set)) return 'silent'
    return plan.wanted.shooting === undefined
      ? {
          because: 'the plan does not say at what pace it is shot, nor how many frames',
          enable: { pointer: '/wanted/shooting', text: 'shooting: { every: 2 s, frames: 300 }' },
        }
      : usedPowersMissing(set)
  },

  detect: ({ set, plan, limits }) => {
    const { shooting } = plan.wanted
    const limit = limits['of-the-pace']!
    if (shooting === undefined) return []
    const { every, frames = Number.POSITIVE_INFINITY } = shooting
    return usedPowers(set).flatMap((used): Slow[] => {
      const inARow = flashesInARow(used.unit, used.share, every)
      if (frames <= inARow) return []
      const takes = recycleAt(used.unit, used.share)
      const beyond = Math.log2(takes.value / (every * limit))
      const u = Math.hypot(takes.u, used.u)
      return [
        {
          pointer: settingPointer(used.light),
          also: [{ pointer: '/wanted/shooting/every', says: 'the pace that is wanted' }],
          beyond: { stops: beyond, u },
          measured: {
            recycle: { value: takes.value, unit: 's', limit: every * limit, side: 'at-most' },
            power: { value: used.share, unit: 'share' },
          },
          cause: 'the pace of shooting',
          used,
          takes,
          every,
          inARow,
          stops: beyond + inside(u),
        },
      ]
    })
  },

  tell: (evidence, words) => {
    const { used, takes, every } = evidence
    const { unit } = used
    return {
      message: `${whatIsLost(evidence)}: at ${powerText(used, words)} it takes ${secondsText(takes.value)} to recycle, a frame is wanted every ${secondsText(every)}`,
      why: [
        takes.guessed
          ? `${runsOnCells(unit) ? 'what flashguns take on fresh cells' : 'what such heads take'}, the plan states no recycling time`
          : `${secondsText(unit.recycle!)} at full power, as stated`,
        ...(runsOnCells(unit) ? ['tired cells take up to twice as long'] : []),
      ].join('; '),
    }
  },

  mend: (evidence, words, context) =>
    inTurn(
      () => fasterAndDown(context.set, evidence.stops, (after) => ready(evidence, after), words),
      () => openAndDown(context.set, evidence.stops, (after) => ready(evidence, after), words),
      () => moreUnits(evidence.used, evidence.stops, 'the same light, ready in time', words),
      () => slowerPace(evidence),
      () => pack(evidence),
    ),

  inShort: ({ used: { light }, takes }) => `${light.name} takes ${secondsText(takes.value)} to recycle`,
})

const whatIsLost = ({ used: { light }, takes, every, inARow }: Slow): string => {
  const oneIn = Math.ceil(takes.value / every - 1e-9)
  if (oneIn < 2) return `frames go dark as soon as ${light.name} tires`
  return Number.isFinite(inARow) && inARow > 1
    ? `only the first ${inARow} frames get all of ${light.name}'s light, then one in ${oneIn}`
    : `only one frame in ${oneIn} gets all of ${light.name}'s light`
}

/** How soon it is ready once it is turned down. */
const ready = ({ used: { light } }: Slow, after: ComputedSet): string => {
  const used = usedPowers(after).find((one) => one.light.name === light.name)
  return used === undefined
    ? `${light.name} recycles sooner`
    : `${light.name} is ready after ${secondsText(recycleAt(used.unit, used.share).value)}`
}

const slowerPace = ({ takes, used }: Slow): readonly Mend[] => {
  const seconds = Math.ceil(takes.value * 2 ** inside(takes.u) * 2) / 2
  return [
    {
      title: `wanted.shooting.every → ${secondsText(seconds)}`,
      gives: `${used.light.name} is ready for every frame`,
      costs: 'a slower pace',
    },
  ]
}

const pack = ({ used: { light, unit } }: Slow): readonly Mend[] =>
  runsOnCells(unit)
    ? [
        {
          title: `an external battery pack on ${light.name}, where the unit takes one`,
          gives: 'recycling in about half the time',
          costs: 'it gets hot sooner: keep to what its maker allows in a row',
        },
      ]
    : []
