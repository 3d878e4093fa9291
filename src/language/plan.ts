/**
 * A plan as it is meant: base, kit and room merged in, every quantity read, every default filled, every unit, modifier
 * and surface looked up. Nothing here is YAML; where a value is written is answered by `places`, by the pointer that
 * the value has in the plan (`/lights/key/power`), whichever file it came from.
 *
 * Signed lengths: right and behind (toward the backdrop) are positive.
 */
import type { Place } from '../text/place.js'
import type {
  Amperes,
  CandelaSeconds,
  FNumber,
  Iso,
  Kelvin,
  Kilograms,
  LumenSeconds,
  Metres,
  PowerShare,
  Radians,
  Seconds,
  Stops,
  Volts,
} from '../units/quantity.js'
import type { Gel, Grid, LightUnit, Modifier, Size } from './gear.js'

export type { ModifierKind } from './catalogue/modifiers.js'
export type * from './gear.js'

export interface Plan {
  readonly file: string
  readonly title: string
  readonly notes: string | undefined
  readonly tags: readonly string[]
  /** Undefined: dark and open. */
  readonly room: Room | undefined
  readonly ambient: Ambient | undefined
  readonly camera: Camera
  readonly subject: Subject
  readonly backdrop: Backdrop | undefined
  /** In the order of the file. Lights that are `off` are left in, with `on: false`. */
  readonly lights: ReadonlyMap<string, Light>
  readonly panels: ReadonlyMap<string, Panel>
  readonly points: ReadonlyMap<string, Placement>
  readonly wanted: Wanted
  readonly readings: readonly MeterReading[]
  readonly accept: readonly Accepted[]
  /** Calibrations from the kit: one serves every plan. */
  readonly measured: readonly KitMeasurement[]
  /** What the kit holds, for counts; undefined without a kit. */
  readonly kit: Kit | undefined
  /** The units of length that the author uses. */
  readonly lengths: 'metric' | 'feet'
  readonly places: Places
}

/** Answers where things are written. Pointers are those of the merged plan. */
export interface Places {
  /** The place of the value, or of the nearest ancestor that is written. Never fails: the root is always written. */
  of(pointer: string): Place
  /** True where the author (or the base, kit or room file, or `like`) wrote this value; false for a default. */
  stated(pointer: string): boolean
  /** Where a value that came from a base, kit, room file, alias or merge key is used in the plan file itself. */
  usedAt(pointer: string): Place | undefined
  /** The text of the value as written (a scalar's source), for writing new values in the author's notation. */
  written(pointer: string): string | undefined
}

// ---------------------------------------------------------------- camera

export interface Camera {
  readonly sensor: { readonly width: Metres; readonly height: Metres }
  readonly lens: Metres
  readonly frame: 'vertical' | 'horizontal'
  /** Along the floor from the subject, camera-right positive for `right`. */
  readonly at: { readonly distance: Metres; readonly height: Metres; readonly right: Metres }
  readonly aim: Aim
  readonly focus: Focus
  readonly aperture: FNumber
  /** Snapped to its exact third- or half-stop value, for exposure. */
  readonly shutter: Seconds
  /** As marked, for sync, flicker, readout and motion. */
  readonly shutterMarked: Seconds
  readonly iso: Iso
  readonly filter: Stops
  /** Fastest shutter that is open all at once, as marked. */
  readonly sync: Seconds
  /** Travel of the curtain; undefined: 0.7 to 1.0 of the sync time. */
  readonly curtain: Seconds | undefined
  readonly shutterKind: 'focal-plane' | 'leaf' | 'electronic'
  readonly readout: Seconds | undefined
  readonly exposure: 'manual' | 'auto-iso' | 'automatic'
  readonly headroom: Stops
  readonly whiteBalance: Kelvin | undefined
  readonly heldBy: 'person' | 'stand'
}

export type Focus =
  | { readonly on: 'subject' }
  | { readonly on: 'point'; readonly point: string }
  | { readonly on: 'row'; readonly row: number }
  | { readonly on: 'distance'; readonly distance: Metres }

// ---------------------------------------------------------------- placing

export type Height =
  | { readonly over: 'floor'; readonly metres: Metres }
  | { readonly over: 'table'; readonly metres: Metres }

export type Placement =
  /** `angle: 35 deg left, distance: 1.2 m, height: 2 m`: seen from above at the subject, from the camera's end; left positive. */
  | {
      readonly by: 'tape'
      readonly angleLeft: Radians
      /** By tape from the subject's face to the front; undefined only for the sun. */
      readonly distance: Metres | undefined
      readonly height: Height | undefined
      readonly up: Radians | undefined
    }
  | {
      readonly by: 'offsets'
      readonly right: Metres
      /** From the subject point toward the backdrop; or `beforeBackdrop` from the backdrop toward the camera. */
      readonly behind: Metres
      readonly beforeBackdrop: Metres | undefined
      readonly height: Height | undefined
    }
  | { readonly by: 'camera' }

export type Aim =
  | { readonly at: 'level' }
  | { readonly at: 'point'; readonly point: string; readonly feather: Feather | undefined }
  | { readonly at: 'panel'; readonly panel: string; readonly feather: Feather | undefined }
  | { readonly at: 'ceiling'; readonly above: string; readonly feather: Feather | undefined }
  | { readonly at: 'wall'; readonly wall: WallName; readonly feather: Feather | undefined }

export interface Feather {
  readonly by: Radians
  readonly towards: 'left' | 'right' | 'up' | 'down' | 'camera' | 'backdrop'
}

export type WallName = 'left-wall' | 'right-wall' | 'front-wall' | 'back-wall' | 'ceiling' | 'floor'

export type Facing =
  | { readonly kind: 'side'; readonly side: 'left' | 'right' | 'camera' | 'backdrop' | 'up' | 'down' }
  | { readonly kind: 'point'; readonly point: string }
  /** Seen from above, from the camera's end, left positive. */
  | { readonly kind: 'angle'; readonly angleLeft: Radians }

// ---------------------------------------------------------------- subject, backdrop, room

export interface Subject {
  readonly kind: 'person' | 'group' | 'object'
  /** Of a person standing, or of an object. */
  readonly height: Metres
  readonly pose: 'standing' | 'seated' | 'lying'
  /** Height of the face over the floor (an object's middle), over the table where it stands on one. */
  readonly facesAt: Metres
  /** From facing the camera's end of the centre line; right positive. */
  readonly turnedRight: Radians
  readonly width: Metres
  readonly depth: Metres
  /** Empty but for groups; row 1 nearest the camera. */
  readonly rows: readonly Row[]
  /** Its finish is that of its surface. */
  readonly standsOn:
    | { readonly height: Metres; readonly surface: Surface; readonly width: Metres; readonly depth: Metres }
    | undefined
  readonly reflectance: number
  readonly finish: Finish | 'clear'
  /** What an object that mirrors is like; undefined for people. */
  readonly shape: 'plane' | 'cylinder' | 'ball' | undefined
  /** m/s */
  readonly moves: number | undefined
  readonly area: { readonly width: Metres; readonly depth: Metres } | undefined
  readonly glasses: boolean
  readonly hair: 'dark' | 'brown' | 'fair' | undefined
  readonly age: string | undefined
}

export interface Row {
  readonly people: number
  readonly spacing: Metres
  readonly facesAt: Metres
  /** From the row in front; 0 for row 1. */
  readonly behind: Metres
}

export interface Surface {
  readonly name: string
  /** 0 to 1. */
  readonly reflectance: number
  /** Its standard uncertainty as a share of its value, in stops. */
  readonly u: Stops
  /** sRGB, 0 to 1, for a coloured surface. */
  readonly colour: readonly [number, number, number] | undefined
  /** Matte unless said. */
  readonly finish?: Finish
}

/** Glossy: mirrors what is before it. Satin: smears it. */
export type Finish = 'matte' | 'satin' | 'glossy'

export interface Backdrop {
  readonly surface: Surface
  readonly width: Metres
  readonly height: Metres
  /** Subject point to backdrop. */
  readonly behind: Metres
  readonly sweep: { readonly front: Metres } | undefined
  /** The same as of its surface. */
  readonly finish: Finish
  /** Outdoors: the sky stands for the backdrop. */
  readonly sky: MeteredLight | undefined
}

export interface Room {
  readonly width: Metres
  readonly length: Metres
  readonly height: Metres
  /** Centre line to the camera-left wall. */
  readonly leftWall: Metres
  readonly behindBackdrop: Metres
  readonly walls: {
    readonly left: Surface
    readonly right: Surface
    readonly front: Surface
    readonly back: Surface
  }
  readonly ceiling: Surface
  readonly floor: Surface
  /** Hertz, as stated. */
  readonly mains: 50 | 60 | undefined
  readonly circuits: ReadonlyMap<string, { readonly voltage: Volts; readonly breaker: Amperes }>
}

/** A continuous light as a meter read it. */
export interface MeteredLight {
  readonly reads: FNumber
  readonly shutter: Seconds
  readonly iso: Iso
  readonly kind: 'incident' | 'reflected'
  readonly colour: Kelvin | undefined
  /** See `UnitFacts`. */
  readonly duv?: number
}
/** Incident at the subject, flashes off. */
export interface Ambient extends MeteredLight {
  readonly flicker?: 'none' | 'mains'
}

// ---------------------------------------------------------------- lights

export type Role = 'key' | 'fill' | 'rim' | 'hair' | 'kicker' | 'backdrop' | 'effect'

export interface Light {
  readonly name: string
  readonly role: Role
  readonly on: boolean
  readonly unit: LightUnit
  readonly modifier: Modifier | undefined
  readonly power: PowerShare | undefined
  readonly meters: { readonly reads: FNumber; readonly at: string | undefined } | undefined
  readonly zoom: Metres | undefined
  readonly grid: Grid | undefined
  readonly gel: Gel | undefined
  readonly at: Placement
  readonly aim: Aim
  /** A window's or panel light's outward face, where stated. */
  readonly faces: Facing | undefined
  /** The front stands upright as its size says unless `lying`. */
  readonly lying: boolean
  readonly mode: 'manual' | 'automatic' | 'high-speed'
  readonly modelling: boolean
  readonly trigger:
    | {
        readonly by: 'cable' | 'radio' | 'basic radio' | 'optical' | 'optical groups'
        readonly channel: number | undefined
        readonly group: string | undefined
        /** Fires before the shutter is open all over. */
        readonly early: boolean
      }
    | undefined
  readonly stand:
    | {
        readonly kind: string
        readonly arm: Metres | undefined
        readonly counterweight: Kilograms | undefined
        readonly sandbag: Kilograms | undefined
      }
    | undefined
  readonly circuit: string | undefined
  /** Sun and window: what a meter reads of it alone at the subject. */
  readonly reads: MeteredLight | undefined
  /** Size of a window's glass. */
  readonly size: Size | undefined
}

// ---------------------------------------------------------------- panels, wanted, readings

export interface Panel {
  readonly name: string
  readonly kind: 'flag' | 'reflector' | 'v-flat' | 'scrim'
  readonly size: Size
  readonly at: Placement
  readonly faces: Facing
  readonly surface: Surface
  /** V-flats: the outside. */
  readonly outside: Surface
  readonly opening: Radians | undefined
  /** 0 to 1; scrims. */
  readonly transmits: number
}

export type Framing = 'face' | 'head and shoulders' | 'waist' | 'three-quarter' | 'full length' | 'all'

export interface Wanted {
  readonly framing: Framing | undefined
  readonly backdrop: WantedBackdrop | undefined
  readonly backdropOverKey: { readonly from: Stops; readonly to: Stops } | undefined
  readonly backdropEven: Stops | undefined
  readonly floor: 'white' | 'any' | undefined
  readonly exposure: Stops
  readonly ratio: { readonly kind: 'lit-to-shadow' | 'key-to-fill'; readonly ratio: number } | undefined
  readonly shadow: 'hidden' | 'soft' | 'any'
  readonly sharp:
    | { readonly what: 'face' | 'subject' | 'rows' }
    | { readonly what: 'depth'; readonly depth: Metres }
    | undefined
  readonly motion: 'frozen' | undefined
  readonly ambient: 'none' | 'any' | { readonly underKey: Stops }
  readonly shooting: { readonly every: Seconds; readonly frames: number | undefined } | undefined
}

export type WantedBackdrop =
  | { readonly tone: 'white' }
  /** sRGB codes, both ends included. */
  | { readonly tone: 'range'; readonly name: string; readonly from: number; readonly to: number }
  | { readonly tone: 'black' }
  | { readonly tone: 'colour'; readonly colour: string }
  | { readonly tone: 'any' }

export interface MeterReading {
  readonly at: string
  /** Light names; `all`; or `ambient`. */
  readonly of: 'all' | 'ambient' | readonly string[]
  /** What was read: an f-number, or an sRGB code of a test frame. */
  readonly read: { readonly reads: FNumber } | { readonly records: number }
  readonly taken:
    | ReadonlyMap<string, { readonly power: PowerShare | undefined; readonly distance: Metres | undefined }>
    | undefined
  readonly kind: 'incident' | 'reflected'
  readonly dome: 'raised' | 'flat'
  readonly faces: 'light' | 'camera' | 'backdrop' | 'out' | { readonly point: string }
  readonly iso: Iso
}

export interface Accepted {
  readonly rule: string
  readonly because: string
  /** ISO date. */
  readonly until: string | undefined
}

export interface KitMeasurement {
  readonly unit: string
  readonly modifier: string | undefined
  readonly zoom: Metres | undefined
  readonly power: PowerShare
  readonly distance: Metres
  readonly reads: FNumber
  readonly iso: Iso
}

export interface Kit {
  readonly stands: ReadonlyMap<
    string,
    {
      readonly highest: Metres | undefined
      readonly base: Metres | undefined
      readonly weight: Kilograms | undefined
      readonly load: Kilograms | undefined
      readonly count: number | undefined
    }
  >
}

export type { CandelaSeconds, LumenSeconds }
