/**
 * Light on alternating mains swings with its power, twice a period: E(t) = E₀·(1 + m·cos 2πft), f twice the mains. A window
 * of the time t gets E₀·t·(1 ± m·|sinc ft|), by when it opens; whole numbers of half mains periods get all alike.
 *
 * Times are literal, as marked: 1/125 s is 8 ms.
 */
import type { Seconds, Stops } from '../units/quantity.js'

export type Mains = 50 | 60

/**
 * Swing of the light about its mean, m, of tubes on plain ballasts and of lamps that are called flickering; between a third
 * and seven tenths. From memory.
 */
export const flickering = { modulation: 0.5, u: 0.5 } as const

/** Swings a second. */
export const swingsPerSecond = (mains: Mains): number => 2 * mains

/** Swing of an exposure about its mean, as a share: m·|sin πft / πft|. */
export const exposureSwing = (modulation: number, mains: Mains, time: Seconds): number => {
  const phase = Math.PI * swingsPerSecond(mains) * time
  return modulation * Math.abs(Math.sin(phase) / phase)
}

/** Between the most and the least that a swing of this share brings. */
export const swingInStops = (share: number): Stops => Math.log2((1 + share) / (1 - share)) as Stops
