/**
 * How long a flash lasts at a power, and what a shutter that closes meanwhile keeps of it. Its light is taken to start at
 * its peak and to fall as an exponential; a unit that regulates by cutting (IGBT) ends it when the wanted share is out.
 * ISO 2827 counts a flash from half (t0.5) and from a tenth (t0.1) of its peak.
 *
 * All times are literal, as marked.
 */
import type { Camera, FlashUnit, Light, Plan } from '../language/plan.js'
import type { PowerShare, Seconds, Stops } from '../units/quantity.js'

/** Half-lives in which an exponential falls to a tenth, log₂ 10: t0.1/t0.5 of a flash that nothing cuts. */
export const halvesToTenth = Math.log2(10)

/** 2^(−t/half) from its peak on, until it is cut. */
export interface Pulse {
  readonly half: Seconds
  /** Infinite where nothing cuts it. */
  readonly cut: Seconds
}

/** Share of a pulse's light that is out by `time`: 0 to 1. */
export const keptShare = ({ half, cut }: Pulse, time: Seconds): number =>
  time >= cut ? 1 : out(Math.max(0, time) / half) / out(cut / half)

/** Of an uncut exponential's light, by so many half-lives. */
const out = (halves: number): number => -Math.expm1(-halves * Math.LN2)

/** A pulse over half, and over a tenth, of its peak. */
export const overHalf = ({ half, cut }: Pulse): Seconds => Math.min(half, cut) as Seconds
export const overTenth = ({ half, cut }: Pulse): Seconds => Math.min(half * halvesToTenth, cut) as Seconds

/** The pulse of which a share is let out: 1 − 2^(−cut/half) = share. */
export const cutAt = (half: Seconds, share: PowerShare): Pulse => ({
  half,
  cut: (half * halvesUntil(share)) as Seconds,
})

const halvesUntil = (share: number): number => (share >= 1 ? Number.POSITIVE_INFINITY : -Math.log2(1 - share))

// ---------------------------------------------------------------- of a unit

export interface FlashTime {
  readonly t01: Seconds
  readonly t05: Seconds
  readonly pulse: Pulse
  /** `stated`: by the durations of the unit, extended by how it is regulated. */
  readonly known: 'stated' | 'guessed'
  /** Of either duration, in doublings. */
  readonly u: Stops
}

/**
 * A lamp takes its time to light and to die out, which the model leaves out: between a half and a tenth of its peak a flash
 * that is cut measures longer by this, 1.5 to 2 times. Common practice, no source.
 */
const cutRatio = Math.sqrt(1.5 * 2)

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
  const found = stated.length === 0 ? guessed(unit, share, cuts) : between(unit, stated, share, cuts)
  const t01 = found.t01 as Seconds
  return {
    t01,
    t05: (t01 / tenthOverHalf(share, cuts)) as Seconds,
    pulse: pulseOf(t01, share, cuts),
    known: stated.length === 0 ? 'guessed' : 'stated',
    u: found.u as Stops,
  }
}

/** t0.5 of a cut pulse, and its t0.1, in half-lives of the uncut one. Cut late it is still near an exponential. */
const halfOfCut = (share: number): number => Math.min(1, halvesUntil(share))
const tenthOfCut = (share: number): number =>
  Math.min(halvesToTenth, Math.max(cutRatio * halfOfCut(share), halvesUntil(share)))

const tenthOverHalf = (share: number, cuts: boolean): number =>
  cuts ? tenthOfCut(share) / halfOfCut(share) : halvesToTenth

const pulseOf = (t01: number, share: number, cuts: boolean): Pulse => {
  const half = (t01 / (cuts ? tenthOfCut(share) : halvesToTenth)) as Seconds
  return cuts ? cutAt(half, share as PowerShare) : { half, cut: Number.POSITIVE_INFINITY as Seconds }
}

interface Row {
  readonly power: number
  readonly t01: number
  readonly u: number
}

/** From the least power to the most. */
const statedRows = ({ durations }: FlashUnit, cuts: boolean): readonly Row[] =>
  durations
    .flatMap(({ power, t01, t05 }): Row[] =>
      t01 !== undefined
        ? [{ power, t01, u: uncertain.stated }]
        : t05 === undefined
          ? []
          : [{ power, t01: t05 * tenthOverHalf(power, cuts), u: uncertain.converted }],
    )
    .sort((a, b) => a.power - b.power)

/** In the logarithms of power and time between what is stated, by the regulation beyond it. */
const between = (unit: FlashUnit, rows: readonly Row[], share: number, cuts: boolean): Omit<Row, 'power'> => {
  const over = rows.find(({ power }) => power >= share)
  const under = rows.findLast(({ power }) => power <= share)
  if (over !== undefined && under !== undefined) {
    const part = over === under ? 0 : Math.log(share / under.power) / Math.log(over.power / under.power)
    return { t01: under.t01 * (over.t01 / under.t01) ** part, u: Math.max(under.u, over.u) }
  }
  const nearest = (over ?? under)!
  const away = Math.abs(Math.log2(share / nearest.power))
  const perStop = unit.regulated === undefined ? uncertain.perStopGuessed : uncertain.perStop
  return { t01: nearest.t01 * scaled(nearest.power, share, cuts), u: nearest.u + perStop * away }
}

/** t0.1 at one power against that at another. */
const scaled = (from: number, to: number, cuts: boolean): number =>
  cuts ? tenthOfCut(to) / tenthOfCut(from) : (from / to) ** longerByStop

/**
 * t0.1 at full power of a unit that does not say: a battery flash, and a mains head of 200 Ws; other heads as the square root
 * of their energy, which takes a larger capacitor. From memory, good to a factor of two.
 */
const full = { batteryFlash: 1 / 300, head: 1 / 600, headEnergy: 200, headOfUnknownEnergy: 400 } as const

const guessed = (unit: FlashUnit, share: number, cuts: boolean): Omit<Row, 'power'> => {
  const energy =
    unit.energy ?? (unit.strength.kind === 'energy' ? unit.strength.energy : full.headOfUnknownEnergy)
  const t01 = unit.zoom === undefined ? full.head * Math.sqrt(energy / full.headEnergy) : full.batteryFlash
  const perStop = unit.regulated === undefined && unit.zoom === undefined ? uncertain.perStopGuessed : 0
  return { t01: t01 * scaled(1, share, cuts), u: uncertain.guessed + perStop * Math.log2(1 / share) }
}

// ---------------------------------------------------------------- under a shutter

/**
 * What a slit gets of a flash that burns evenly for as long as the slit runs over the frame, and no longer: t of t + T. The best
 * that any light through a whole run can do.
 */
export const longBurstShare = (time: Seconds, travel: Seconds): number => time / (time + travel)

/** A leaf shutter, and a sensor that is read all at once, open and close over the whole frame alike. */
export const opensAtOnce = ({ shutterKind, readout }: Camera): boolean =>
  shutterKind === 'leaf' || (shutterKind === 'electronic' && readout === 0)

/**
 * What a shutter that opens over the whole frame at the peak keeps of a light's flash, as stops lost; 0 where nothing is cut.
 * A flash meter that is set to the same shutter time loses the same: what it reads already lacks this.
 */
export const leafLoss = (light: Light, { camera }: Plan): { readonly stops: number; readonly u: number } => {
  const { unit, mode } = light
  if (!opensAtOnce(camera) || unit.kind !== 'flash' || mode === 'high-speed') return none
  const { pulse, u } = flashTime(unit, light.power ?? unit.power.to)
  const lostAt = (times: number): number => -Math.log2(keptShare(longer(pulse, times), camera.shutterMarked))
  const stops = lostAt(1)
  return stops === 0 ? none : { stops, u: (lostAt(2 ** u) - lostAt(2 ** -u)) / 2 }
}

const none = { stops: 0, u: 0 } as const

const longer = ({ half, cut }: Pulse, times: number): Pulse => ({
  half: (half * times) as Seconds,
  cut: (cut * times) as Seconds,
})
