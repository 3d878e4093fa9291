/** The sRGB curve: IEC 61966-2-1. */

/** sRGB value (0 to 1) of a linear value; what lies outside 0 to 1 is clipped. */
export const encode = (linear: number): number => {
  if (!(linear > 0)) return 0
  if (linear >= 1) return 1
  return linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055
}

/** Linear value of an sRGB value (0 to 1). */
export const decode = (encoded: number): number =>
  encoded <= 0.04045 ? encoded / 12.92 : ((encoded + 0.055) / 1.055) ** 2.4
