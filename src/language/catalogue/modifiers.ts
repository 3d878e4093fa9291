/**
 * Modifiers by kind: what each does to the light of the unit behind it. Adding one is adding a row; the schema's
 * list, the reading of `softbox 60 x 90 cm` and the type of its kind follow from the table.
 *
 * Losses are in stops on the axis in the far field, against the unit as rated: reports of practitioners, good to
 * ±0.6 stop (one standard deviation). `transmits`, `depth` and the beam shapes are from memory.
 */

export interface ModifierRow {
  /** Other words for the same thing. */
  readonly also?: readonly string[]
  /** What its name must be followed by: `softbox 60 x 90 cm`, `octa 90 cm`, `honeycomb 20 deg`. */
  readonly sized: 'size' | 'diameter' | 'angle' | 'none'
  /** Of its front, metres, where the name says none; without it the size must be said. */
  readonly usual?: { readonly width: number; readonly height: number }
  readonly outline: 'rectangle' | 'disc' | 'octagon' | 'ring'
  /** Loss by the larger side of the front: the first step that is not exceeded holds. */
  readonly loss: readonly { readonly upTo: number; readonly stops: number; readonly cosine?: number }[]
  /** Intensity ∝ cosⁿ; 1 is Lambertian, 0 the same all around. Either the exponent or the beam angle (full width at half the peak, degrees). */
  readonly cosine?: number
  readonly beam?: number
  /** Gives off the same backwards. */
  readonly both?: true
  /** Share of the unit's flux that leaves by the front (by both sides together where it gives off both ways). */
  readonly transmits: number
  /** Front to mount, as a share of the shorter side. */
  readonly depth: number
  /** What a bare `grid: 40 deg` on it is. */
  readonly grid: 'egg-crate' | 'honeycomb'
  /** Offered by editors as it stands. */
  readonly example: string
  readonly describe: string
}

const always = (stops: number) => [{ upTo: Number.POSITIVE_INFINITY, stops }]

/** A small box has one thin front that shows the bare head: hot in the middle. A large one has an inner front too. */
const boxLoss = [
  { upTo: 0.45, stops: 1.5, cosine: 2 },
  { upTo: 0.9, stops: 2 },
  { upTo: Number.POSITIVE_INFINITY, stops: 2.5 },
]

export const modifierTable = {
  softbox: {
    sized: 'size',
    outline: 'rectangle',
    loss: boxLoss,
    cosine: 1,
    transmits: 0.5,
    depth: 0.6,
    grid: 'egg-crate',
    example: 'softbox 60 x 90 cm',
    describe: 'a cloth box with a white front',
  },
  octa: {
    also: ['octabox', 'octa softbox'],
    sized: 'diameter',
    outline: 'octagon',
    loss: boxLoss,
    cosine: 1,
    transmits: 0.5,
    depth: 0.4,
    grid: 'egg-crate',
    example: 'octa 90 cm',
    describe: 'an eight-sided softbox',
  },
  strip: {
    also: ['strip softbox', 'strip box', 'stripbox'],
    sized: 'size',
    outline: 'rectangle',
    loss: boxLoss,
    cosine: 1,
    transmits: 0.5,
    depth: 1,
    grid: 'egg-crate',
    example: 'strip 30 x 120 cm',
    describe: 'a long narrow softbox',
  },
  'shoot-through umbrella': {
    also: ['shoot-through'],
    sized: 'diameter',
    outline: 'disc',
    loss: always(1.8),
    cosine: 1,
    both: true,
    transmits: 0.8,
    depth: 0.3,
    grid: 'egg-crate',
    example: 'shoot-through umbrella 1 m',
    describe: 'a white umbrella shot through; half of its light goes back into the room',
  },
  'white umbrella': {
    sized: 'diameter',
    outline: 'disc',
    loss: always(2.2),
    cosine: 1,
    transmits: 0.5,
    depth: 0.3,
    grid: 'egg-crate',
    example: 'white umbrella 1 m',
    describe: 'a white umbrella that the light is bounced out of',
  },
  'silver umbrella': {
    sized: 'diameter',
    outline: 'disc',
    loss: always(1.5),
    cosine: 2,
    transmits: 0.7,
    depth: 0.3,
    grid: 'egg-crate',
    example: 'silver umbrella 1.5 m',
    describe: 'a silver umbrella that the light is bounced out of',
  },
  'deep umbrella': {
    also: ['parabolic umbrella'],
    sized: 'diameter',
    outline: 'disc',
    loss: always(1.3),
    cosine: 3,
    transmits: 0.7,
    depth: 0.5,
    grid: 'egg-crate',
    example: 'deep umbrella 1.3 m',
    describe: 'a deep silver umbrella: a narrower beam than a shallow one',
  },
  'beauty dish': {
    sized: 'diameter',
    usual: { width: 0.55, height: 0.55 },
    outline: 'ring',
    loss: always(1),
    beam: 80,
    transmits: 0.6,
    depth: 0.35,
    grid: 'honeycomb',
    example: 'beauty dish 55 cm',
    describe: 'a shallow white dish with a plate before the tube',
  },
  snoot: {
    sized: 'none',
    usual: { width: 0.07, height: 0.07 },
    outline: 'disc',
    loss: always(1.5),
    beam: 20,
    transmits: 0.06,
    depth: 3,
    grid: 'honeycomb',
    example: 'snoot',
    describe: 'a tube that leaves a narrow round pool of light',
  },
  'standard reflector': {
    also: ['reflector', 'bowl reflector'],
    sized: 'none',
    usual: { width: 0.18, height: 0.18 },
    outline: 'disc',
    loss: always(0),
    beam: 60,
    transmits: 0.8,
    depth: 0.7,
    grid: 'honeycomb',
    example: 'standard reflector',
    describe: 'the metal reflector that a head is rated with, 55 to 65 degrees',
  },
  honeycomb: {
    also: ['honeycomb grid'],
    sized: 'angle',
    usual: { width: 0.18, height: 0.18 },
    outline: 'disc',
    loss: always(0.5),
    beam: 60,
    transmits: 0.6,
    depth: 0.8,
    grid: 'honeycomb',
    example: 'honeycomb 20 deg',
    describe: 'a standard reflector with a honeycomb; the angle is between the half-peak directions',
  },
  bare: {
    also: ['bare bulb', 'bare tube'],
    sized: 'none',
    usual: { width: 0.08, height: 0.08 },
    outline: 'disc',
    // Derived: 400 Ws at 30 lm·s per Ws give GN 20 all around and GN 59 in a 60° reflector.
    loss: always(3.2),
    cosine: 0,
    both: true,
    transmits: 1,
    depth: 1,
    grid: 'honeycomb',
    example: 'bare',
    describe: 'the bare tube, no reflector',
  },
} as const satisfies Record<string, ModifierRow>

export type ModifierKind = keyof typeof modifierTable

/** Standard uncertainty of a loss from this table, stops. */
export const defaultLossU = 0.6

/** A front set back behind a rim, which an egg crate or a lip needs: reports of practitioners. */
export const recessedLoss = 3.3

export const modifierRow = (kind: ModifierKind): ModifierRow => modifierTable[kind]

export const modifierKinds = Object.keys(modifierTable) as readonly ModifierKind[]

export const modifierExamples: readonly string[] = modifierKinds.map((kind) => modifierTable[kind].example)
