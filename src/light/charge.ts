/**
 * What a flash draws while it recharges, how long that takes, and how many flashes a charge gives. Recharging restores
 * what the flash took, so time and draw go with the energy: half the power recycles in half the time.
 *
 * Source: conservation of energy. The efficiencies and what chargers draw are from memory.
 */
import type { FlashUnit } from '../language/plan.js'
import type { PowerShare, Seconds, WattSeconds, Watts } from '../units/quantity.js'

/** Mean draw over the recharge: E/(η·t). Its peak may be several times that. */
export const averageDraw = (energy: WattSeconds, efficiency: number, recharge: Seconds): Watts =>
  (energy / (efficiency * recharge)) as Watts

/** Time that a charger of this mean draw takes: E/(η·P). */
export const rechargeTime = (energy: WattSeconds, efficiency: number, draw: Watts): Seconds =>
  (energy / (efficiency * draw)) as Seconds

/** Energy in a set of cells when full; ampere hours are what a cell gives at the load of a charger. */
export const storedEnergy = (cells: number, voltsEach: number, ampereHours: number): WattSeconds =>
  (cells * voltsEach * ampereHours * 3600) as WattSeconds

/** Flashes of this energy from a full charge. */
export const flashesFrom = (stored: WattSeconds, efficiency: number, energy: WattSeconds): number =>
  (stored * efficiency) / energy

/** What a unit is taken for where its kit says no more. From memory. */
const guess = {
  /** Four AA cells of 1.2 V that give 2 Ah, a flash of 75 Ws, and a small charger that takes 50 W of them. */
  flashgun: { energy: 75 as WattSeconds, efficiency: 0.5, draw: 50 as Watts, cells: storedEnergy(4, 1.2, 2) },
  /** Mains heads and those on lithium batteries. */
  head: { energy: 400 as WattSeconds, efficiency: 0.8, draw: 350 as Watts },
} as const

/** Standard uncertainties, stops: makers time fresh cells to the first blink of the lamp; common practice, no source. */
const u = { stated: 0.2, byDraw: 0.5, guessed: 0.5 } as const

export interface Known<T> {
  readonly value: T
  /** Standard uncertainty, stops. */
  readonly u: number
  /** Not of the unit itself but of its kind. */
  readonly guessed: boolean
}

/** A zoom head or a guide number at a zoom is that of a flashgun, which runs on cells. */
export const isFlashgun = ({ zoom, strength }: FlashUnit): boolean =>
  zoom !== undefined || (strength.kind === 'guide-number' && strength.ratedWith === 'zoom')

/** What a flash holds at full power, where it is told. */
export const energyOf = (unit: FlashUnit): WattSeconds | undefined =>
  unit.energy ?? (unit.strength.kind === 'energy' ? unit.strength.energy : undefined)

/** True where a charge can run out. A head that says nothing of flashes a charge is taken to run off the mains. */
export const runsOnCells = (unit: FlashUnit): boolean =>
  unit.flashesPerCharge !== undefined || isFlashgun(unit)

const fullRecycle = (unit: FlashUnit): Known<Seconds> => {
  if (unit.recycle !== undefined) return { value: unit.recycle, u: u.stated, guessed: false }
  const kind = isFlashgun(unit) ? guess.flashgun : guess.head
  const energy = energyOf(unit)
  // What draws nothing of the mains charges from a battery, of which that says nothing.
  const draw = unit.draw === 0 ? undefined : unit.draw
  return {
    value: rechargeTime(energy ?? kind.energy, kind.efficiency, draw ?? kind.draw),
    u: draw !== undefined && energy !== undefined ? u.byDraw : u.guessed,
    guessed: true,
  }
}

/** Recycling time after a flash of this share of full power. */
export const recycleAt = (unit: FlashUnit, share: PowerShare): Known<Seconds> => {
  const full = fullRecycle(unit)
  return { ...full, value: (full.value * share) as Seconds }
}

/**
 * A flash that is cut short (IGBT, and every flashgun) gives all its light as long as this much of its charge is left; one
 * that is set by voltage must be charged anew. From memory.
 */
const chargeLeft = 0.6

/**
 * Flashes of this share of full power, one every so often, until one comes out too weak; infinite where it keeps up. The
 * first few of a burst come out of what the flash holds.
 */
export const flashesInARow = (unit: FlashUnit, share: PowerShare, every: Seconds): number => {
  const spent = share - every / fullRecycle(unit).value
  if (spent <= 1e-9) return Number.POSITIVE_INFINITY
  const cutShort = (unit.regulated ?? (isFlashgun(unit) ? 'igbt' : 'voltage')) === 'igbt'
  return cutShort ? 1 + Math.floor(Math.max(0, 1 - Math.max(chargeLeft, share)) / spent + 1e-9) : 1
}

/** Flashes of this share of full power from one charge; undefined for a unit on the mains. */
export const flashesPerCharge = (unit: FlashUnit, share: PowerShare): Known<number> | undefined => {
  if (unit.flashesPerCharge !== undefined)
    return { value: unit.flashesPerCharge / share, u: u.stated, guessed: false }
  if (!isFlashgun(unit)) return undefined
  const { cells, efficiency, energy } = guess.flashgun
  return {
    value: flashesFrom(cells, efficiency, energyOf(unit) ?? energy) / share,
    u: u.guessed,
    guessed: true,
  }
}
