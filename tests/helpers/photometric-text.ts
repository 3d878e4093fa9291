/**
 * Photometric files for tests, of lights of our own invention, by the grammar of ANSI/IES LM-63-02 (as described in public
 * readers of the format): what stands in the lines before TILT=, the ten numbers, the three, the angles, the candela.
 */

export interface PhotometricText {
  readonly heading?: string
  readonly keywords?: readonly string[]
  readonly tilt?: string
  readonly lamps?: number
  readonly lumens?: number
  readonly multiplier?: number
  readonly type?: 1 | 2 | 3
  /** 1: feet, 2: metres. */
  readonly unit?: 1 | 2
  /** Along horizontal angle 90, along 0, and height. */
  readonly opening?: readonly [width: number, length: number, height: number]
  readonly ballast?: number
  readonly further?: number
  readonly watts?: number
  readonly vertical: readonly number[]
  readonly horizontal: readonly number[]
  /** Candela of a direction, both angles in degrees. */
  readonly candela: (vertical: number, horizontal: number) => number
}

export const photometricText = (given: PhotometricText): string => {
  const { vertical, horizontal, candela } = given
  const opening = given.opening ?? [0.3, 0.3, 0]
  return [
    given.heading ?? 'IESNA:LM-63-2002',
    ...(given.keywords ?? ['[TEST] none', '[MANUFAC] own workshop']),
    `TILT=${given.tilt ?? 'NONE'}`,
    `${given.lamps ?? 1} ${given.lumens ?? -1} ${given.multiplier ?? 1} ${vertical.length} ${horizontal.length} ${given.type ?? 1} ${given.unit ?? 2} ${opening.join(' ')}`,
    `${given.ballast ?? 1} ${given.further ?? 1} ${given.watts ?? 60}`,
    vertical.join(' '),
    horizontal.join(' '),
    ...horizontal.map((h) => vertical.map((v) => candela(v, h)).join(' ')),
    '',
  ].join('\n')
}

/** `from`, then on by `step` to `to`. */
export const steps = (from: number, to: number, step: number): readonly number[] =>
  Array.from({ length: Math.round((to - from) / step) + 1 }, (_, i) => from + i * step)
