/**
 * Meters' arithmetic, in the continuous form of ISO 2720:1974: incident N²/t = E·S/C, reflected N²/t = L·S/K. A flash
 * has an exposure H (lx·s) where continuous light has E·t. The constants as quoted in colour-science/colour-hdri,
 * `exposure/common.py`; the standard's own text was not read.
 */
import type { FNumber, Iso, Lux, LuxSeconds, Seconds, Stops } from '../units/quantity.js'

/** C of a flat receptor, lx·s. ISO 2720:1974 allows 240 to 400; 250 is in common use. */
export const incidentConstant = 250

/** K of a reflected-light meter, cd·s/m². ISO 2720:1974 allows 10.6 to 13.4; 12.5 is in common use. */
export const reflectedConstant = 12.5

/** Exposure for which an incident meter with constant `c` (lx·s) shows this f-number: H = C·N²/S. */
export const luxSecondsFor = (fNumber: FNumber, iso: Iso, c: number = incidentConstant): LuxSeconds =>
  ((c * fNumber * fNumber) / iso) as LuxSeconds

/** What an incident meter shows: N = √(H·S/C). */
export const fNumberFor = (exposure: LuxSeconds, iso: Iso, c: number = incidentConstant): FNumber =>
  Math.sqrt((exposure * iso) / c) as FNumber

/** Illuminance of continuous light for which the meter shows this f-number at this time. */
export const luxFor = (fNumber: FNumber, time: Seconds, iso: Iso, c: number = incidentConstant): Lux =>
  (luxSecondsFor(fNumber, iso, c) / time) as Lux

/** Luminance times time, cd·s/m², for which a reflected meter with constant `k` (cd·s/m²) shows this f-number. */
export const luminanceSecondsFor = (fNumber: FNumber, iso: Iso, k: number = reflectedConstant): number =>
  (k * fNumber * fNumber) / iso

/** What a reflected meter shows of luminance times time, cd·s/m². */
export const fNumberForLuminance = (
  luminanceSeconds: number,
  iso: Iso,
  k: number = reflectedConstant,
): FNumber => Math.sqrt((luminanceSeconds * iso) / k) as FNumber

/** Luminance times time, cd·s/m², of a matte surface under an exposure: ρH/π. */
export const luminanceSecondsOf = (exposure: LuxSeconds, reflectance: number): number =>
  (reflectance * exposure) / Math.PI

/** Exposure of a matte surface on which a reflected meter shows this f-number. */
export const luxSecondsOfReflected = (fNumber: FNumber, iso: Iso, reflectance: number): LuxSeconds =>
  ((Math.PI * luminanceSecondsFor(fNumber, iso)) / reflectance) as LuxSeconds

/** Reflectance of a matte surface on which both kinds of meter agree: π·K/C, 0.157 with the constants in use. */
export const agreementReflectance = (k: number = reflectedConstant, c: number = incidentConstant): number =>
  (Math.PI * k) / c

/** A camera's settings as exposure sees them. `losses`: neutral density and close-up, stops on everything. */
export interface ExposureSetting {
  readonly aperture: FNumber
  readonly iso: Iso
  readonly losses?: Stops | number
}

/**
 * Stops over the setting that renders an 18 % card as linear 0.18: x = log₂(H·S/(C·N²)), less the camera's losses.
 * The exposure is that on a flat receptor, over the time that the shutter is open.
 */
export const stopsOverSetting = (exposure: LuxSeconds, setting: ExposureSetting): Stops =>
  (Math.log2(exposure / luxSecondsFor(setting.aperture, setting.iso)) - (setting.losses ?? 0)) as Stops
