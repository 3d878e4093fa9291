/** Gear as a plan means it: light units, modifiers, grids and gels, every quantity read and every name looked up. */
import type {
  FNumber,
  Kelvin,
  Kilograms,
  Lux,
  Metres,
  Mired,
  PowerShare,
  Radians,
  Seconds,
  Stops,
  Volts,
  WattSeconds,
  Watts,
} from '../units/quantity.js'
import type { ModifierKind } from './catalogue/modifiers.js'
import type { PhotometricTable } from './photometric/table.js'

export interface Size {
  readonly width: Metres
  readonly height: Metres
}

export type Grid =
  /** Egg crate: cut-off angle per axis. */
  | { readonly kind: 'egg-crate'; readonly cutOff: Radians }
  /** Honeycomb: half-peak angle (full width of the beam at half its peak, as sold). */
  | { readonly kind: 'honeycomb'; readonly halfPeak: Radians }

export interface Gel {
  /** Where it is written by what its sheets are called. */
  readonly names?: readonly string[]
  readonly shift: Mired | undefined
  /** What it adds to the distance from the black-body locus: plus-green is positive. */
  readonly duv?: number
  readonly colour: string | undefined
  readonly loss: Stops
}

export type LightUnit = FlashUnit | ContinuousUnit | SunUnit | WindowUnit

interface UnitFacts {
  readonly name: string
  readonly colour: Kelvin | undefined
  /** Distance from the black-body locus in the 1960 diagram, green positive (Duv of ANSI C78.377), where stated. */
  readonly duv?: number
  /** The colour is what such a unit usually has: nobody stated it. */
  readonly colourGuessed?: true
  readonly draw: Watts | undefined
  readonly weight: Kilograms | undefined
  readonly count: number | undefined
  /** True where the figures are a built-in guess. */
  readonly guessed: boolean
}

export interface FlashUnit extends UnitFacts {
  readonly kind: 'flash'
  readonly strength: FlashStrength
  readonly power: PowerRange
  /** Undefined: fixed head. */
  readonly zoom: { readonly from: Metres; readonly to: Metres } | undefined
  readonly energy: WattSeconds | undefined
  readonly regulated: 'igbt' | 'voltage' | undefined
  /** Colour temperatures by power share, as stated; at least one entry. */
  readonly colours?: readonly { readonly power: PowerShare; readonly colour: Kelvin }[]
  /** t0.1 and t0.5 by power share, as stated. */
  readonly durations: readonly {
    readonly power: PowerShare
    readonly t01: Seconds | undefined
    readonly t05: Seconds | undefined
  }[]
  readonly recycle: Seconds | undefined
  readonly flashesPerCharge: number | undefined
  /** Charged batteries or sets of cells at hand, besides the one that is in it. */
  readonly spareCharges: number | undefined
  readonly highSpeedLoss: Stops | undefined
  readonly modelling: Watts | undefined
  readonly triggerVoltage: Volts | undefined
  readonly preFlash: boolean
}

export type FlashStrength =
  | {
      readonly kind: 'guide-number'
      /** Metres at ISO 100; one entry, or a table over the zoom. */
      readonly table: readonly { readonly metres: number; readonly zoom: Metres | undefined }[]
      readonly ratedAs: 'print' | 'measured'
      readonly ratedWith: 'zoom' | 'standard reflector' | 'bare'
    }
  | { readonly kind: 'energy'; readonly energy: WattSeconds; readonly reflector: Radians | undefined }
  | {
      readonly kind: 'meters'
      readonly reads: FNumber
      readonly distance: Metres
      readonly reflector: Radians
    }

export interface PowerRange {
  readonly from: PowerShare
  readonly to: PowerShare
  /** Step of the setting. */
  readonly step: Stops
  /** `dial 7.3`: the top of the dial is full power; a whole number is one stop. */
  readonly dial: { readonly top: number } | undefined
}

export interface ContinuousUnit extends UnitFacts {
  readonly kind: 'continuous'
  readonly strength:
    | {
        readonly kind: 'lux'
        readonly lux: Lux
        readonly distance: Metres
        readonly beam: Radians | undefined
      }
    | { readonly kind: 'lumens'; readonly lumens: number; readonly beam: Radians }
    | {
        readonly kind: 'photometric file'
        readonly file: string
        /** At full power. Where the unit states no size, its opening is the light's front. */
        readonly table: PhotometricTable
      }
  readonly power: PowerRange
  readonly size: Size | undefined
  readonly flicker: 'none' | 'mains' | undefined
}
export interface SunUnit extends UnitFacts {
  readonly kind: 'sun'
}
export interface WindowUnit extends UnitFacts {
  readonly kind: 'window'
}

export interface Modifier {
  readonly name: string
  readonly kind: ModifierKind
  /** The outline of its front. `width` and `height` of a disc, octagon or ring are its diameter. */
  readonly outline: 'rectangle' | 'disc' | 'octagon' | 'ring'
  readonly size: Size
  /** On its axis in the far field, against the unit as rated. */
  readonly loss: Stops
  /** Standard uncertainty of the loss. */
  readonly lossU: Stops
  /** How its front gives off light: `cosine` 1 is Lambertian; larger is narrower; `both` also gives the same backwards. */
  readonly emission: { readonly cosine: number; readonly both: boolean }
  /** Share of the unit's flux that leaves by the front, for the watt-second path. */
  readonly transmits: number
  readonly grid: Grid | undefined
  readonly depth: Metres
  readonly weight: Kilograms | undefined
  readonly count: number | undefined
  readonly guessed: boolean
}
