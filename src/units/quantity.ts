/**
 * Branded numbers: a length in metres and an exposure in lux-seconds are both doubles, and must never be mixed.
 * The brand exists only in the types; at run time a quantity is a plain number.
 */

declare const unit: unique symbol

/** A finite number that carries its unit in its type. */
export type Quantity<U extends string> = number & { readonly [unit]: U }

/** Exposure differences, base 2. */
export type Stops = Quantity<'stop'>
export type Metres = Quantity<'m'>
export type Seconds = Quantity<'s'>
export type Radians = Quantity<'rad'>
export type Steradians = Quantity<'sr'>
/** Luminous exposure H. */
export type LuxSeconds = Quantity<'lx·s'>
export type Lux = Quantity<'lx'>
/** Time integral of luminous intensity: what a flash throws in one direction. */
export type CandelaSeconds = Quantity<'cd·s'>
/** Time integral of luminous flux. */
export type LumenSeconds = Quantity<'lm·s'>
/** The exact f-number: f/5.6 is 2^(5/2). */
export type FNumber = Quantity<'f-number'>
/** ISO arithmetic speed. */
export type Iso = Quantity<'ISO'>
export type Kelvin = Quantity<'K'>
/** 10⁶/kelvin, and shifts of it. */
export type Mired = Quantity<'MK⁻¹'>
export type WattSeconds = Quantity<'Ws'>
export type Watts = Quantity<'W'>
export type Volts = Quantity<'V'>
export type Amperes = Quantity<'A'>
export type Kilograms = Quantity<'kg'>
/** Share of full power, linear in energy: 1/4 is 0.25. */
export type PowerShare = Quantity<'share of full power'>

/** Marks a plain number as a quantity. The caller vouches for the unit. */
export const as = <Q extends Quantity<string>>(value: number): Q => value as Q
export const stops = (value: number): Stops => value as Stops
export const metres = (value: number): Metres => value as Metres
export const seconds = (value: number): Seconds => value as Seconds
export const radians = (value: number): Radians => value as Radians
export const luxSeconds = (value: number): LuxSeconds => value as LuxSeconds
export const candelaSeconds = (value: number): CandelaSeconds => value as CandelaSeconds
export const lumenSeconds = (value: number): LumenSeconds => value as LumenSeconds
export const fNumber = (value: number): FNumber => value as FNumber
export const iso = (value: number): Iso => value as Iso
export const powerShare = (value: number): PowerShare => value as PowerShare

/** Degrees to radians. */
export const degrees = (value: number): Radians => ((value * Math.PI) / 180) as Radians
/** Radians to degrees. */
export const inDegrees = (angle: number): number => (angle * 180) / Math.PI
