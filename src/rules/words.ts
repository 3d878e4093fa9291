/** Writes figures in the author's units and the trade's notation. One place, so that every rule words alike. */
export interface Words {
  /** `2.4 m`, `7 ft 10 in`. */
  length(metres: number): string
  /** `12 cm`, `5 in`. */
  small(metres: number): string
  /** `7.6 cm`, `0.2 in`: to a tenth, however long. */
  fine(metres: number): string
  /** `f/5.6`, `f/5.0 + 0.2`. */
  f(fNumber: number): string
  /** `+0.4 stop`, `-1.1 stops`; signed. */
  stops(value: number): string
  /** `1.1 stops`; never signed. */
  howMany(value: number): string
  /** `1.1 stops over the key`, `level with the key`, `0.4 stop under the key`. */
  against(value: number, what: string): string
  /** `1/125`. */
  shutter(seconds: number): string
  /** `1/8 + 0.3`; the step of the setting is a third unless said. */
  power(share: number, step?: number): string
  /** `light grey (sRGB 198)`. */
  tone(srgb: number): string
  degrees(radians: number): string
  /** `key`, `key and fill`, `key, fill and rim`. */
  list(names: readonly string[]): string
}
