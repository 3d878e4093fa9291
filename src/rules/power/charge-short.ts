import type { Plan } from '../../language/plan.js'
import { flashesPerCharge, isFlashgun, type Known, runsOnCells } from '../../light/charge.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { settingPointer } from '../place-pointer.js'
import { type Evidence, inTurn, type Mend, rule } from '../rule.js'
import { inside } from '../solving.js'
import { fasterAndDown, moreUnits, openAndDown } from './less-power.js'
import { powerText, type UsedPower, usedPowers, usedPowersMissing } from './used-power.js'

const session = (frames: string, power: string, more = ', flashes-per-charge: 220'): string => `plan: 1
title: A day of portraits on cells
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
  key: { unit: { guide-number: 36 m at 35 mm${more} }, modifier: white umbrella 1 m, power: ${power}, at: { angle: 30 deg left, distance: 1.2 m, height: 2 m } }
wanted: { framing: head and shoulders, shooting: { every: 5 s, frames: ${frames} } }
`

interface Short extends Evidence {
  readonly used: UsedPower
  /** Of one charge, at the power used. */
  readonly gives: Known<number>
  readonly frames: number
  /** Charges or sets of cells at hand. */
  readonly charges: number
  /** Stops that it must go down by. */
  readonly stops: number
  readonly u: number
}

export const chargeShort = rule<Short>({
  id: 'charge-short',
  family: 'power',
  level: 'warning',
  finds: 'a flash whose charge does not last for the frames that are wanted',
  limits: {
    'of-the-charge': {
      value: 1,
      unit: 'share',
      says: 'of all charges at hand that the frames may take',
    },
  },
  why: 'A charge holds so much energy: twice the frames at half the power. Towards its end recycling grows long, and the light goes out in the middle of the session.',
  formula: 'frames × share of full power, against flashes at full power a charge × charges at hand',
  sources: [
    { kind: 'derived', says: 'flashes = energy stored × efficiency / energy of a flash' },
    {
      kind: 'memory',
      says: 'four AA cells of 1.2 V and 2 Ah, half of it in the flash: 230 flashes of 75 Ws',
    },
    { kind: 'common practice', says: 'a set of four AA cells gives 150 to 250 flashes at full power' },
  ],
  basis: 'flashes a charge as stated or guessed, in proportion to energy',
  fires: [
    { title: 'five hundred frames at full power', plan: session('500', 'full') },
    { title: 'cells of which nothing is stated', plan: session('1000', '1/2', '') },
    {
      title: 'one spare set is not enough',
      plan: session('600', 'full', ', flashes-per-charge: 220, spare-charges: 1'),
    },
  ],
  passes: [
    { title: 'five hundred frames at an eighth', plan: session('500', '1/8') },
    {
      title: 'two spare sets of cells',
      plan: session('500', 'full', ', flashes-per-charge: 220, spare-charges: 2'),
    },
    {
      title: 'a head on the mains never runs short',
      plan: session('5000', 'full').replace(
        '{ guide-number: 36 m at 35 mm, flashes-per-charge: 220 }',
        'head 400 Ws',
      ),
    },
  ],

  // What the plan does not say of its pace, recycle-slow asks for.
  needs: ({ set, plan }) => {
    const { shooting } = plan.wanted
    if (shooting === undefined || !onCells(plan)) return 'silent'
    return shooting.frames === undefined
      ? {
          because: 'the plan does not say how many frames are wanted',
          enable: { pointer: '/wanted/shooting/frames', text: 'frames: 300' },
        }
      : usedPowersMissing(set)
  },

  detect: ({ set, plan, limits }) => {
    const frames = plan.wanted.shooting?.frames
    const limit = limits['of-the-charge']!
    if (frames === undefined) return []
    return usedPowers(set).flatMap((used): Short[] => {
      const gives = flashesPerCharge(used.unit, used.share)
      if (gives === undefined) return []
      const charges = 1 + (used.unit.spareCharges ?? 0)
      const beyond = Math.log2(frames / (gives.value * charges * limit))
      const u = Math.hypot(gives.u, used.u)
      return [
        {
          pointer: settingPointer(used.light),
          also: [{ pointer: '/wanted/shooting/frames', says: 'the frames that are wanted' }],
          beyond: { stops: beyond, u },
          measured: {
            flashes: { value: gives.value * charges, unit: 'count', limit: frames / limit, side: 'at-least' },
            power: { value: used.share, unit: 'share' },
          },
          cause: 'the length of the session',
          used,
          gives,
          frames,
          charges,
          stops: beyond + inside(u),
          u,
        },
      ]
    })
  },

  tell: ({ used, gives, frames, charges }, words) => {
    const { light, unit } = used
    const all = gives.value * charges
    const kind = charge(used)
    return {
      message: `${light.name} gives no more light after about ${round(all)} of ${frames} frames: ${charges === 1 ? `a ${kind} is` : `${several(charges, kind)} are`} then empty at ${powerText(used, words)}`,
      why: [
        gives.guessed
          ? 'what four AA cells give, the plan states no flashes a charge'
          : `${unit.flashesPerCharge} flashes a charge at full power, as stated`,
        'it recycles slower and slower before it stops',
      ].join('; '),
    }
  },

  mend: (evidence, words, { set }) =>
    inTurn(
      () => spares(evidence),
      () => fasterAndDown(set, evidence.stops, (after) => lasts(evidence, after), words),
      () => openAndDown(set, evidence.stops, (after) => lasts(evidence, after), words),
      () => moreUnits(evidence.used, evidence.stops, `${evidence.frames} frames from one charge each`, words),
    ),

  inShort: ({ used: { light }, gives, charges }) =>
    `${light.name} lasts only some ${round(gives.value * charges)} frames`,
})

const onCells = ({ lights }: Plan): boolean =>
  [...lights.values()].some(({ on, unit }) => on && unit.kind === 'flash' && runsOnCells(unit))

const charge = ({ unit }: UsedPower): string => (isFlashgun(unit) ? 'set of cells' : 'charge')

/** `2 more sets of cells`. */
const several = (count: number, kind: string, more = ''): string =>
  [count, more, count === 1 ? kind : kind.replace(/^(set|charge)/, '$1s')].filter(Boolean).join(' ')

/** Two figures: nobody counts on more of a charge. */
const round = (flashes: number): number => {
  const grain = 10 ** Math.max(0, Math.floor(Math.log10(flashes)) - 1)
  return Math.round(flashes / grain) * grain
}

/** Nobody carries more of them than this for one light. */
const mostSpares = 9

const spares = ({ used, gives, frames, charges, u }: Short): readonly Mend[] => {
  const needed = Math.ceil((frames / gives.value) * 2 ** inside(u) - 1e-9)
  if (needed - 1 > mostSpares) return []
  const more = needed - charges
  if (more <= 0) return []
  const name = used.light.name
  return [
    {
      title: `${several(more, charge(used), 'more')} for ${name} (spare-charges: ${needed - 1})`,
      gives: `${frames} frames, changed every ${round(gives.value / 2 ** inside(u))}`,
      costs: 'a pause at every change',
    },
  ]
}

const lasts = ({ used: { light } }: Short, after: ComputedSet): string => {
  const used = usedPowers(after).find((one) => one.light.name === light.name)
  const gives = used && flashesPerCharge(used.unit, used.share)
  return used === undefined || gives === undefined
    ? `${light.name} lasts longer`
    : `about ${round(gives.value * (1 + (used.unit.spareCharges ?? 0)))} flashes from ${light.name}`
}
