/**
 * Veiling glare: light that scatters in lens and body and lies over the whole picture as an even veil. It lifts every
 * pixel by a share of the mean luminance of the field: the veiling glare index, as ISO 9358 measures it (the light in
 * the image of a small black patch in an extended uniform white field, over that of the field). Linear values are
 * recorded ones, 1 at the end of the scale, and are not clipped: what is twice over white throws in twice as much.
 */
import type { Radians, Stops } from '../units/quantity.js'

/** Of an ordinary lens. From memory: 1 to 3 % are usual, half of that in the best. */
export const glareIndex = 0.015

/** "Within a factor of two": one standard deviation of the index, stops. */
export const glareIndexU = 0.5

/** A deep shadow, linear: what the rules judge the veil by. */
export const deepBlack = 0.02

/**
 * How much of the field that the index is measured with lies outside the frame. Hood, barrel and baffles keep most of
 * that out, so that it counts less than the frame itself (from memory, no source): a quarter, and nothing from beyond
 * 30° off the frame.
 */
export const surroundShare = 1 / 4
export const surroundReach = (Math.PI / 6) as Radians

/** Weight of a direction outside the frame, by its angle from the frame's edge: 1 there, falling evenly to 0. */
export const surroundWeight = (beyond: number): number => Math.max(0, 1 - beyond / surroundReach)

/** What the index is taken of: the mean over the frame and the weighted mean over what surrounds it. */
export const fieldMean = (frame: number, surround: number): number =>
  (1 - surroundShare) * frame + surroundShare * surround

/** Recorded with the veil on it. */
export const veiled = (linear: number, mean: number, index: number = glareIndex): number =>
  linear + index * mean

/** Stops by which the veil lifts a tone. */
export const veilLift = (linear: number, mean: number, index: number = glareIndex): Stops =>
  Math.log2(veiled(linear, mean, index) / linear) as Stops

/** The mean at which a tone is lifted by so many stops. */
export const meanForLift = (linear: number, lift: number, index: number = glareIndex): number =>
  (linear * (2 ** lift - 1)) / index

/** Brightest over darkest that is left under the veil. */
export const contrastLeft = (
  brightest: number,
  darkest: number,
  mean: number,
  index: number = glareIndex,
): number => veiled(brightest, mean, index) / veiled(darkest, mean, index)
