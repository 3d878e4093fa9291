/**
 * A flash in time. Its light is taken to start at its peak and to fall as an exponential. A unit that regulates by cutting
 * (IGBT) switches the current off when the wanted share is out, and the lamp then dies out quickly, but not at once.
 * ISO 2827 counts a flash from half (t0.5) and from a tenth (t0.1) of its peak.
 */
import type { PowerShare, Seconds } from '../units/quantity.js'

/** 2^(−t/half) from its peak on; from the cut on it halves with each `tail`. */
export interface Pulse {
  readonly half: Seconds
  /** Infinite where nothing cuts it. */
  readonly cut: Seconds
  readonly tail: Seconds
}

/** Half-lives in which an exponential falls to a tenth, log₂ 10: t0.1/t0.5 of a flash that nothing cuts. */
export const halvesToTenth = Math.log2(10)

/** t0.1/t0.5 of a flash that is cut early on: 1.5 to 2 times. Common practice, no source. */
const cutRatio = Math.sqrt(1.5 * 2)

/**
 * Half-life of the lamp's dying out against the time until the cut, which gives an early cut that ratio:
 * (1 + r·log₂ 10)/(1 + r).
 */
const dyingOut = (cutRatio - 1) / (halvesToTenth - cutRatio)

export const uncut = (half: Seconds): Pulse => ({
  half,
  cut: Number.POSITIVE_INFINITY as Seconds,
  tail: half,
})

/** The pulse that lets a share of the uncut one's light out, its dying out included. Cut late it nears the uncut one. */
export const cutAt = (half: Seconds, share: PowerShare): Pulse => {
  if (share >= 1) return uncut(half)
  const cut = half * halvesUntilCut(share)
  return { half, cut: cut as Seconds, tail: (cut * dyingOut) as Seconds }
}

/** c of 1 − 2^−c·(1 − r·c) = share: rising and concave in c, so that Newton's steps from 0 never pass it. */
const halvesUntilCut = (share: number): number => {
  let c = 0
  for (let step = 0; step < 10; step++) {
    const level = 2 ** -c
    const rest = 1 - dyingOut * c
    c += (share - 1 + level * rest) / (level * (Math.LN2 * rest + dyingOut))
  }
  return c
}

/** Share of a pulse's light that is out by `time`: 0 to 1. */
export const keptShare = (pulse: Pulse, time: Seconds): number => outBy(pulse, time) / whole(pulse)

/** When so much of a pulse's light is out. */
export const timeUntil = (pulse: Pulse, share: number): Seconds => {
  const { half, cut, tail } = pulse
  const wanted = share * whole(pulse)
  const before = outBy(pulse, cut)
  return (
    wanted <= before
      ? half * halvesOf(wanted / half)
      : cut + tail * halvesOf((wanted - before) / (2 ** (-cut / half) * tail))
  ) as Seconds
}

/** In units of the peak. */
const outBy = ({ half, cut, tail }: Pulse, time: number): number => {
  const before = half * fallen(Math.max(0, Math.min(time, cut)) / half)
  return time <= cut ? before : before + 2 ** (-cut / half) * tail * fallen((time - cut) / tail)
}

const whole = (pulse: Pulse): number => outBy(pulse, Number.POSITIVE_INFINITY)

/** 1 − 2^−n, exact for small n; and the n of that. */
const fallen = (halves: number): number => -Math.expm1(-halves * Math.LN2)
const halvesOf = (fall: number): number => -Math.log2(1 - fall)

/** A pulse over half, and over a tenth, of its peak. */
export const overHalf = (pulse: Pulse): Seconds => overLevel(pulse, 1)
export const overTenth = (pulse: Pulse): Seconds => overLevel(pulse, halvesToTenth)

const overLevel = ({ half, cut, tail }: Pulse, halves: number): Seconds =>
  (halves * half <= cut ? halves * half : cut + tail * (halves - cut / half)) as Seconds

/** The same pulse, so many times as long. */
export const longer = ({ half, cut, tail }: Pulse, times: number): Pulse => ({
  half: (half * times) as Seconds,
  cut: (cut * times) as Seconds,
  tail: (tail * times) as Seconds,
})

/** Of a share that is kept. Nothing left counts as ten stops: no picture shows less. */
export const stopsLost = (share: number): number => Math.min(10, -Math.log2(Math.max(share, 2 ** -11)))
