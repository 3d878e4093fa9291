/** How long the flash of a unit lasts at a power. All times are literal, as marked. */
import type { FlashUnit } from '../language/plan.js'
import type { PowerShare, Seconds, Stops } from '../units/quantity.js'
import { energyOf } from './charge.js'
import { cutAt, halvesToTenth, overHalf, overTenth, type Pulse, uncut } from './pulse.js'

export interface FlashTime {
  readonly t01: Seconds
  readonly t05: Seconds
  readonly pulse: Pulse
  /** `stated`: by the durations of the unit, extended by how it is regulated. */
  readonly known: 'stated' | 'guessed'
  /** Of either duration, in doublings. */
  readonly u: Stops
}

/** Charged less, a head burns longer: by about two fifths at a 32nd of its energy. From memory. */
const longerByStop = 0.1

/** Doublings. */
const uncertain = {
  stated: 0.15,
  /** Where t0.1 is known by t0.5, or the other way. */
  converted: 0.25,
  guessed: 1,
  /** For each stop of power beyond what is stated, by a regulation that is stated, and by one that is taken. */
  perStop: 0.1,
  perStopGuessed: 0.4,
} as const

/** Zoom heads are battery flashes, which cut; of other heads most charge less. Common practice, no source. */
export const regulationOf = (unit: FlashUnit): 'igbt' | 'voltage' =>
  unit.regulated ?? (unit.zoom === undefined ? 'voltage' : 'igbt')

/** How long the flash of a unit lasts at a share of its full power. */
export const flashTime = (unit: FlashUnit, power: PowerShare): FlashTime => {
  const cuts = regulationOf(unit) === 'igbt'
  const stated = statedRows(unit, cuts)
  const share = Math.min(power, 1) as PowerShare
  const { half, u } = stated.length === 0 ? guessed(unit, share, cuts) : between(unit, stated, share, cuts)
  const pulse = pulseOf(half as Seconds, share, cuts)
  return {
    t01: overTenth(pulse),
    t05: overHalf(pulse),
    pulse,
    known: stated.length === 0 ? 'guessed' : 'stated',
    u: u as Stops,
  }
}

const pulseOf = (half: Seconds, share: PowerShare, cuts: boolean): Pulse =>
  cuts ? cutAt(half, share) : uncut(half)

/** The half-life of the discharge at a power. */
interface Row {
  readonly power: number
  readonly half: number
  readonly u: number
}

/** From the least power to the most. A cut flash hides its discharge, which is found by the shape of one that is so cut. */
const statedRows = ({ durations }: FlashUnit, cuts: boolean): readonly Row[] =>
  durations
    .flatMap(({ power, t01, t05 }): Row[] => {
      const shape = pulseOf(1 as Seconds, power, cuts)
      return t01 !== undefined
        ? [{ power, half: t01 / overTenth(shape), u: uncertain.stated }]
        : t05 === undefined
          ? []
          : [{ power, half: t05 / overHalf(shape), u: uncertain.converted }]
    })
    .sort((a, b) => a.power - b.power)

/** In the logarithms of power and of the discharge's time between what is stated, by the regulation beyond it. */
const between = (unit: FlashUnit, rows: readonly Row[], share: number, cuts: boolean): Omit<Row, 'power'> => {
  const over = rows.find(({ power }) => power >= share)
  const under = rows.findLast(({ power }) => power <= share)
  if (over !== undefined && under !== undefined) {
    const part = over === under ? 0 : Math.log(share / under.power) / Math.log(over.power / under.power)
    return { half: under.half * (over.half / under.half) ** part, u: Math.max(under.u, over.u) }
  }
  const nearest = (over ?? under)!
  const away = Math.abs(Math.log2(share / nearest.power))
  const perStop = unit.regulated === undefined ? uncertain.perStopGuessed : uncertain.perStop
  return { half: nearest.half * slowed(nearest.power, share, cuts), u: nearest.u + perStop * away }
}

/** The discharge at one power against that at another: one that is cut is the same until then. */
const slowed = (from: number, to: number, cuts: boolean): number => (cuts ? 1 : (from / to) ** longerByStop)

/**
 * t0.1 at full power of a unit that does not say: a battery flash, and a mains head of 200 Ws; other heads as the square root
 * of their energy, which takes a larger capacitor. From memory, good to a factor of two.
 */
const full = { batteryFlash: 1 / 300, head: 1 / 600, headEnergy: 200, headOfUnknownEnergy: 400 } as const

const guessed = (unit: FlashUnit, share: number, cuts: boolean): Omit<Row, 'power'> => {
  const energy = energyOf(unit) ?? full.headOfUnknownEnergy
  const t01 = unit.zoom === undefined ? full.head * Math.sqrt(energy / full.headEnergy) : full.batteryFlash
  const perStop = unit.regulated === undefined && unit.zoom === undefined ? uncertain.perStopGuessed : 0
  return {
    half: (t01 / halvesToTenth) * slowed(1, share, cuts),
    u: uncertain.guessed + perStop * Math.log2(1 / share),
  }
}
