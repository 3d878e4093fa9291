/**
 * What authors write, as plain data: a plan with its base merged in, a kit, a room, a studio's settings.
 * Quantities are still text. Generated from the definitions in ../schema by `npm run generate`.
 */

/**
 * A path, relative to this file.
 */
export type Path = string
/**
 * The kit: the path of a kit file, a list of paths (the later wins), or the kit itself.
 */
export type Kit = KitMap | Path[] | Path
/**
 * A light unit: a flash, or (with lux, lumens or a photometric file) a light that burns steadily.
 */
export type Unit = Flash | Continuous
/**
 * A colour temperature.
 */
export type Kelvin = string
/**
 * A load in watts.
 */
export type Watts = string
/**
 * A weight.
 */
export type Weight = string
/**
 * A length with its unit.
 */
export type Length = string
/**
 * A guide number at ISO 100 with the zoom that it is rated at.
 */
export type GuideNumber = string
/**
 * A focal length in millimetres.
 */
export type FocalLength = string
/**
 * Energy of a flash in watt-seconds.
 */
export type Energy = string
/**
 * An angle in degrees.
 */
export type Angle = string
/**
 * What a meter reads at a distance, ISO 100.
 */
export type Metered = string
/**
 * A power setting: a share of full power with stops beyond, watt-seconds, or the dial's number.
 */
export type Power = string
/**
 * A difference of exposure.
 */
export type Stops = string
/**
 * A range of focal lengths, the shortest first.
 */
export type FocalRange = string
/**
 * A time with its unit.
 */
export type Time = string
/**
 * A voltage.
 */
export type Volts = string
/**
 * Illuminance on the axis at a distance.
 */
export type Lux = string
/**
 * Luminous flux.
 */
export type Lumens = string
/**
 * A size, width by height as it stands.
 */
export type Size = string
/**
 * Width by height, or a diameter.
 */
export type Front = Size | Length
/**
 * A share in percent.
 */
export type Share = string
/**
 * A grid: the cut-off angle of an egg crate, the half-peak angle of a honeycomb.
 */
export type Grid =
  | {
      /**
       * An egg crate goes on cloth fronts, a honeycomb in reflectors.
       */
      kind: 'egg-crate' | 'honeycomb'
      /**
       * Cut-off angle of an egg crate, half-peak angle of a honeycomb.
       */
      angle: Angle
    }
  | Angle
/**
 * A shutter time as marked.
 */
export type Shutter = string
/**
 * A surface by name, by its reflectance alone, or by reflectance and colour.
 */
export type Surface =
  | {
      /**
       * What the surface is called in the output. The name of a surface that is built in, or of a backdrop of the kit, brings its figures; what is written besides goes before them.
       */
      name?: string
      /**
       * Share of the light that the surface gives back, 0 (black) to 1.
       */
      reflectance?: number
      colour?: unknown
      /**
       * How it shines. A glossy table, floor or wall mirrors lights.
       */
      finish?: 'matte' | 'satin' | 'glossy'
    }
  | number
  | string
/**
 * The name of a piece of kit: one line, at most 60 characters.
 */
export type KitName = string
/**
 * An aperture as marked, with tenths of a stop beyond as meters show them.
 */
export type Aperture = string
/**
 * ISO speed, a plain number.
 */
export type Iso = number
/**
 * The frequency of mains.
 */
export type Mains = string
/**
 * A current.
 */
export type Amperes = string
/**
 * A height over the floor, or over the table.
 */
export type Height = string
/**
 * A length to one side, left or right as seen from the camera's end.
 */
export type Aside = string
/**
 * Something to aim at: a point, a panel, a wall (`left-wall`, `right-wall`, `front-wall`, `back-wall`, `ceiling`, `floor`), or `ceiling above` a point.
 */
export type Target = string
/**
 * A point: built in or one of `points`.
 */
export type PlaceName = string
/**
 * An angle to one side, left or right as seen from the camera's end.
 */
export type SidedAngle = string
/**
 * A speed.
 */
export type Speed = string
/**
 * The light unit: one of the kit, a built-in one, or a map with its facts.
 */
export type UnitOrName = Unit | string
/**
 * The modifier: one of the kit, a built-in one by kind and size, or a map with its facts.
 */
export type ModifierOrName = Modifier | string
/**
 * A gel by its name, several sheets of them, or by what it does to the light.
 */
export type Gel =
  | {
      /**
       * Shift toward warm (+) or cold (-).
       */
      shift?: Mired
      /**
       * Shift toward green (+) or magenta (-), in the 1960 diagram: plus-green, minus-green.
       */
      duv?: number
      /**
       * A saturated colour.
       */
      colour?: Colour
      /**
       * The light that it takes.
       */
      loss: Stops
    }
  | (
      | 'full CTO'
      | '3/4 CTO'
      | '1/2 CTO'
      | '1/4 CTO'
      | '1/8 CTO'
      | '1/8 CTB'
      | '1/4 CTB'
      | '1/2 CTB'
      | '3/4 CTB'
      | 'full CTB'
      | 'full plus-green'
      | '1/2 plus-green'
      | '1/4 plus-green'
      | '1/8 plus-green'
      | '1/8 minus-green'
      | '1/4 minus-green'
      | '1/2 minus-green'
      | 'full minus-green'
    )[]
  | (
      | 'full CTO'
      | '3/4 CTO'
      | '1/2 CTO'
      | '1/4 CTO'
      | '1/8 CTO'
      | '1/8 CTB'
      | '1/4 CTB'
      | '1/2 CTB'
      | '3/4 CTB'
      | 'full CTB'
      | 'full plus-green'
      | '1/2 plus-green'
      | '1/4 plus-green'
      | '1/8 plus-green'
      | '1/8 minus-green'
      | '1/4 minus-green'
      | '1/2 minus-green'
      | 'full minus-green'
    )
/**
 * A shift of colour temperature, warmer positive.
 */
export type Mired = string
/**
 * A colour by name, or an sRGB code in quotes.
 */
export type Colour =
  | unknown
  | (
      | 'red'
      | 'orange'
      | 'amber'
      | 'yellow'
      | 'green'
      | 'teal'
      | 'cyan'
      | 'blue'
      | 'purple'
      | 'magenta'
      | 'pink'
      | 'brown'
      | 'white'
      | 'grey'
      | 'black'
    )
/**
 * The place of a light's front, or `camera` for a flash on the camera.
 */
export type LightPlace = Placement | 'camera'
/**
 * What the light is aimed at, and how far it is feathered off it.
 */
export type Aim =
  | {
      /**
       * What the light is aimed at before it is feathered.
       */
      at: Target
      /**
       * How far the light's axis is turned off the target, and to which side.
       */
      feather?: Feather
    }
  | Target
/**
 * How far the aim is turned off its point, and to where.
 */
export type Feather = string
/**
 * The name of a light: letters, digits, spaces, hyphens and underscores, at most 40, beginning with a letter.
 */
export type LightName = string
/**
 * The name of a circuit: letters, digits, spaces, hyphens and underscores, at most 40, beginning with a letter.
 */
export type CircuitName = string
/**
 * Which way the front faces: a side of the set, a point, or an angle seen from above.
 */
export type Facing = PlaceName | SidedAngle
/**
 * A range of exposure differences, the smaller end first.
 */
export type StopsRange = string
/**
 * A lighting ratio; quote it, since some YAML readers take it for a time of day.
 */
export type Ratio = string
/**
 * What a meter did read. A reading fixes a light's strength.
 */
export type ReadingsList = Reading[]
/**
 * Findings that you have decided to live with.
 */
export type AcceptList = Accepted[]
/**
 * The name of a panel: letters, digits, spaces, hyphens and underscores, at most 40, beginning with a letter.
 */
export type PanelName = string
/**
 * The name of a point: letters, digits, spaces, hyphens and underscores, at most 40, beginning with a letter.
 */
export type PointName = string

/**
 * A base: a plan that others start from. Everything may be left out.
 */
export interface PlanFile {
  /**
   * Version of the plan language; always 1.
   */
  plan: 1
  /**
   * What the plan is called.
   */
  title: string
  /**
   * Notes for people.
   */
  notes?: string
  /**
   * A base file that this plan starts from; keys written here win.
   */
  base?: Path
  kit?: Kit
  /**
   * The room, or the path of a room file. Without it the set is dark and open.
   */
  room?: Room | Path
  /**
   * The light that is there with the flashes off, indoors or out.
   */
  ambient?: Ambient
  camera: Camera
  subject: Subject
  backdrop?: Backdrop
  /**
   * The lights, by name.
   */
  lights: {
    [k: string]: null | Light
  }
  /**
   * Flags, reflectors, v-flats and scrims, by name.
   */
  panels?: {
    [k: string]: null | Panel
  }
  /**
   * Points of your own, by name, to meter and to aim at.
   */
  points?: {
    [k: string]: Placement
  }
  wanted?: Wanted
  readings?: ReadingsList
  accept?: AcceptList
  /**
   * Words to find the plan by.
   *
   * Items: A word to find the plan by.
   */
  tags?: string[]
}
/**
 * A kit, written out in the plan.
 */
export interface KitMap {
  /**
   * Version of the kit, as in a kit file; always 1.
   */
  kit?: 1
  /**
   * What the kit is called.
   */
  title?: string
  /**
   * Notes for people.
   */
  notes?: string
  /**
   * Light units by name: what a light's `unit` refers to.
   */
  units?: {
    [k: string]: Unit
  }
  /**
   * Modifiers by name: what a light's `modifier` refers to.
   */
  modifiers?: {
    [k: string]: Modifier
  }
  /**
   * Stands by name: what a light's `stand.kind` refers to.
   */
  stands?: {
    [k: string]: KitStand
  }
  /**
   * Cameras by name: what `camera.body` refers to.
   */
  cameras?: {
    /**
     * A camera.
     */
    [k: string]: {
      /**
       * Size of the sensor: full frame, aps-c, four thirds, or its size, width by height as the camera is held level.
       */
      sensor?: ('full frame' | 'aps-c' | 'four thirds') | Size
      /**
       * Sync speed: the fastest shutter speed at which the whole frame is open at once for the flash.
       */
      sync?: Shutter
      /**
       * How long a shutter curtain takes to travel over the frame. Without it 0.7 to 1.0 of the sync time is taken.
       */
      curtain?: Time
      /**
       * Kind of shutter: focal-plane (two curtains), leaf (in the lens), electronic (read line by line).
       */
      'shutter-kind'?: 'focal-plane' | 'leaf' | 'electronic'
      /**
       * Electronic shutter: the time that reading the whole frame takes; 0 ms reads all at once.
       */
      readout?: Time
      /**
       * How far over a white of 100 % reflectance the camera still holds detail before a channel clips.
       */
      headroom?: Stops
    }
  }
  /**
   * Backdrops by name: what `backdrop.surface` refers to.
   */
  backdrops?: {
    [k: string]: KitBackdrop
  }
  /**
   * Light meters by name.
   */
  meters?: {
    [k: string]: KitMeter
  }
  /**
   * What lights of this kit did meter once, straight ahead: one measurement serves every plan.
   */
  measured?: Measurement[]
}
/**
 * A flash: flashgun, head, or head on a pack.
 */
export interface Flash {
  /**
   * A flash.
   */
  kind?: 'flash'
  /**
   * What the unit is called in the output, where it is written out at a light.
   */
  name?: string
  /**
   * Colour temperature of its light.
   */
  colour?: Kelvin
  /**
   * How far its light lies from the black-body locus, in the 1960 diagram: green is over zero, magenta under. Without it: none up to 3600 K, that of daylight from 4500 K on.
   */
  duv?: number
  /**
   * What it draws from the mains while charging, or while it burns.
   */
  draw?: Watts
  /**
   * How many of them the kit holds.
   */
  count?: number
  /**
   * Weight, as it hangs on the stand.
   */
  weight?: Weight
  /**
   * Guide number at ISO 100 with the zoom that it holds for (the zoom matters by over a stop), or a table over the zoom.
   */
  'guide-number'?:
    | {
        [k: string]: Length
      }
    | GuideNumber
  /**
   * What the guide number was rated with: a zoom, the standard reflector, or the bare tube.
   */
  'rated-with'?: ('standard reflector' | 'bare') | FocalLength
  /**
   * Whether the guide number is the maker's (printed figures run optimistic, 2/3 stop is taken off) or was measured.
   */
  'rated-as'?: 'print' | 'measured'
  /**
   * Energy at full power.
   */
  energy?: Energy
  /**
   * Beam angle of its standard reflector, between the half-peak directions.
   */
  reflector?: Angle
  /**
   * What a meter reads straight ahead with the standard reflector, at full power and ISO 100.
   */
  meters?: Metered
  /**
   * The settings of its power.
   */
  power?: PowerRange
  /**
   * The zoom of its head, widest to longest. Without it the head is fixed.
   */
  zoom?: FocalRange
  /**
   * How long the flash lasts at some powers.
   *
   * Items: The duration at one power.
   */
  durations?: {
    /**
     * The power.
     */
    power: Power
    /**
     * Time over a tenth of its peak (this one freezes movement).
     */
    't0.1'?: Time
    /**
     * Time over half of its peak.
     */
    't0.5'?: Time
  }[]
  /**
   * Colour temperatures at some powers, where they differ.
   *
   * Items: The colour at one power.
   */
  colours?: {
    /**
     * The power.
     */
    power: Power
    /**
     * Colour temperature at this power.
     */
    colour: Kelvin
  }[]
  /**
   * How its power is set: igbt cuts the flash short (lower power is shorter), voltage charges it less (lower power is longer and warmer).
   */
  regulated?: 'igbt' | 'voltage'
  /**
   * Recycling time after a flash at full power.
   */
  recycle?: Time
  /**
   * Flashes at full power from one charge or one set of cells.
   */
  'flashes-per-charge'?: number
  /**
   * Charged batteries or sets of cells at hand, besides what is in it.
   */
  'spare-charges'?: number
  /**
   * What high-speed sync loses at once, before the shutter cuts further.
   */
  'high-speed-loss'?: Stops
  /**
   * Its modelling lamp.
   */
  modelling?: Watts
  /**
   * Voltage at its sync contact: that of old flashes kills cameras.
   */
  'trigger-voltage'?: Volts
  /**
   * Gives a pre-flash before the flash itself, unless the light says `mode: manual`. Automatic flashes always do.
   */
  'pre-flash'?: boolean
}
/**
 * The settings of a unit's power.
 */
export interface PowerRange {
  /**
   * The lowest setting.
   */
  from?: Power
  /**
   * The highest setting.
   */
  to?: Power
  /**
   * The step between two settings.
   */
  step?: Stops
  /**
   * For a dial in numbers: the number at its top, which is full power. One whole number is one stop.
   */
  dial?: number
}
/**
 * A continuous light: panel, lamp, tube.
 */
export interface Continuous {
  /**
   * A light that burns steadily.
   */
  kind?: 'continuous'
  /**
   * What the unit is called in the output, where it is written out at a light.
   */
  name?: string
  /**
   * Colour temperature of its light.
   */
  colour?: Kelvin
  /**
   * How far its light lies from the black-body locus, in the 1960 diagram: green is over zero, magenta under. Without it: none up to 3600 K, that of daylight from 4500 K on.
   */
  duv?: number
  /**
   * What it draws from the mains while charging, or while it burns.
   */
  draw?: Watts
  /**
   * How many of them the kit holds.
   */
  count?: number
  /**
   * Weight, as it hangs on the stand.
   */
  weight?: Weight
  /**
   * Illuminance straight ahead at a distance, at full power.
   */
  lux?: Lux
  /**
   * Luminous flux at full power.
   */
  lumens?: Lumens
  /**
   * Beam angle, between the half-peak directions.
   */
  beam?: Angle
  /**
   * Path of its photometric file (LM-63, .ies), relative to this file: its strength and beam, and its size and draw where they are not stated here. Of type C vertical angle 0 is straight ahead, horizontal angle 0 to the right of who faces the light, 90 up; lying: true turns it a quarter, 0 up. The explained plan tells which way the angles go; a mirrored light is not turned inside out: its left stays its left.
   */
  'photometric-file'?: string
  /**
   * Size of what glows.
   */
  size?: Size
  /**
   * The settings of its power.
   */
  power?: PowerRange
  /**
   * Whether it flickers with the mains.
   */
  flicker?: 'none' | 'mains'
}
/**
 * What stands before the flash: box, umbrella, dish, reflector.
 */
export interface Modifier {
  /**
   * What it is called in the output, where it is written out at a light.
   */
  name?: string
  /**
   * Kind of modifier.
   */
  kind:
    | 'softbox'
    | 'octa'
    | 'strip'
    | 'shoot-through umbrella'
    | 'white umbrella'
    | 'silver umbrella'
    | 'deep umbrella'
    | 'beauty dish'
    | 'snoot'
    | 'standard reflector'
    | 'honeycomb'
    | 'bare'
  /**
   * Size of its front: width by height, or the diameter of a round one.
   */
  size?: Front
  /**
   * Outline of its front, where its kind does not say it already.
   */
  outline?: 'rectangle' | 'disc' | 'octagon' | 'ring'
  /**
   * What it takes, straight ahead and far off, against the unit as it is rated.
   */
  loss?: Stops
  /**
   * Share of the unit's light that leaves by its front.
   */
  transmits?: Share
  /**
   * Beam angle, between the half-peak directions.
   */
  beam?: Angle
  /**
   * A single front that is brighter in the middle and throws further straight ahead.
   */
  'hot-middle'?: boolean
  /**
   * The grid that is on it.
   */
  grid?: Grid
  /**
   * How deep it is, front to mount.
   */
  depth?: Length
  /**
   * How many of them the kit holds.
   */
  count?: number
  /**
   * Weight, as it hangs on the stand.
   */
  weight?: Weight
}
/**
 * A stand.
 */
export interface KitStand {
  /**
   * The highest that it goes.
   */
  highest?: Length
  /**
   * Across its legs, spread.
   */
  base?: Length
  /**
   * Weight, as it hangs on the stand.
   */
  weight?: Weight
  /**
   * What it may carry.
   */
  load?: Weight
  /**
   * How many of them the kit holds.
   */
  count?: number
}
/**
 * A backdrop.
 */
export interface KitBackdrop {
  /**
   * What it is made of, or its reflectance and colour.
   */
  surface: Surface
  /**
   * Its width.
   */
  width?: Length
  /**
   * Height of its upper edge as it hangs.
   */
  height?: Length
  /**
   * How it shines. Without it, what its surface is known for, else matte.
   */
  finish?: 'matte' | 'satin' | 'glossy'
  /**
   * How many of them the kit holds.
   */
  count?: number
}
/**
 * A light meter.
 */
export interface KitMeter {
  /**
   * What it reads over (+) or under (-) the truth.
   */
  offset?: Stops
  /**
   * What it reads with the dome lowered over what it reads with it raised, of one light straight ahead.
   */
  'flat-over-dome'?: Stops
}
/**
 * One measurement of a unit with its modifier, metered straight ahead.
 */
export interface Measurement {
  /**
   * The unit.
   */
  unit: KitName
  /**
   * The modifier that was on it.
   */
  modifier?: KitName
  /**
   * The zoom of its head.
   */
  zoom?: FocalLength
  /**
   * What it was set to.
   */
  power: Power
  /**
   * From the middle of its front to the meter.
   */
  distance: Length
  /**
   * What the meter read.
   */
  reads: Aperture
  /**
   * ISO set on the meter.
   */
  iso: Iso
}
/**
 * The room: its size and what its surfaces are like.
 */
export interface Room {
  /**
   * Width of the room, across the set.
   */
  width: Length
  /**
   * Length of the room, along the set.
   */
  length: Length
  /**
   * Height of the ceiling.
   */
  height: Length
  /**
   * From the centre line of the set to the camera-left wall. Without it, the set stands in the middle.
   */
  'left-wall'?: Length
  /**
   * From the backdrop to the wall behind it.
   */
  'behind-backdrop'?: Length
  /**
   * The walls: one surface for all, or one for each side.
   */
  walls?:
    | Surface
    | {
        /**
         * The camera-left wall.
         */
        left?: Surface
        /**
         * The camera-right wall.
         */
        right?: Surface
        /**
         * The wall behind the camera.
         */
        front?: Surface
        /**
         * The wall behind the backdrop.
         */
        back?: Surface
      }
  /**
   * The ceiling.
   */
  ceiling?: Surface
  /**
   * The floor.
   */
  floor?: Surface
  /**
   * Frequency of the mains, on which lamps flicker. Without it, by the voltage of the circuits: 60 Hz under 130 V, 50 Hz over 200 V.
   */
  mains?: Mains
  /**
   * The room's electrical circuits, by name.
   */
  circuits?: {
    /**
     * A circuit.
     */
    [k: string]: {
      /**
       * Mains voltage.
       */
      voltage: Volts
      /**
       * What its breaker is rated for.
       */
      breaker: Amperes
    }
  }
}
/**
 * The light that is there with the flashes off, metered incident at the subject.
 */
export interface Ambient {
  /**
   * What the meter read.
   */
  reads: Aperture
  /**
   * Shutter time set on the meter.
   */
  shutter: Shutter
  /**
   * ISO set on the meter.
   */
  iso: Iso
  /**
   * Colour temperature of the light.
   */
  colour?: Kelvin
  /**
   * Whether the light flickers with the mains, as tubes on plain ballasts and cheap lamps do.
   */
  flicker?: 'none' | 'mains'
  /**
   * How far it lies from the black-body locus, in the 1960 diagram: green is over zero, magenta under. An office lit by fluorescent tubes may be 0.012.
   */
  duv?: number
}
/**
 * The camera: its lens, its place and its settings.
 */
export interface Camera {
  /**
   * A camera of the kit, which says its sensor, sync speed, curtain and headroom.
   */
  body?: KitName
  /**
   * Size of the sensor: full frame, aps-c, four thirds, or its size, width by height as the camera is held level.
   */
  sensor?: ('full frame' | 'aps-c' | 'four thirds') | Size
  /**
   * Sync speed: the fastest shutter speed at which the whole frame is open at once for the flash.
   */
  sync?: Shutter
  /**
   * How long a shutter curtain takes to travel over the frame. Without it 0.7 to 1.0 of the sync time is taken.
   */
  curtain?: Time
  /**
   * Kind of shutter: focal-plane (two curtains), leaf (in the lens), electronic (read line by line).
   */
  'shutter-kind'?: 'focal-plane' | 'leaf' | 'electronic'
  /**
   * Electronic shutter: the time that reading the whole frame takes; 0 ms reads all at once.
   */
  readout?: Time
  /**
   * How far over a white of 100 % reflectance the camera still holds detail before a channel clips.
   */
  headroom?: Stops
  /**
   * Focal length as marked on the lens.
   */
  lens: FocalLength
  /**
   * How the camera is held. Without it: vertical for one person, horizontal for groups and objects.
   */
  frame?: 'vertical' | 'horizontal'
  /**
   * Where the camera stands: distance, and if need be height and aside.
   */
  at: CameraPlace
  /**
   * Where the camera looks: level (parallel to the floor, straight ahead) or a point.
   */
  aim?: Target
  /**
   * What the focus is set on: a point, a row of the group (row 2), or a distance.
   */
  focus?: PlaceName | Length
  /**
   * Aperture, as the camera shows it.
   */
  aperture: Aperture
  /**
   * Shutter speed, as the camera shows it.
   */
  shutter: Shutter
  /**
   * ISO speed.
   */
  iso: Iso
  /**
   * Neutral density filter on the lens: the stops that it takes.
   */
  filter?: Stops
  /**
   * Who sets the exposure: manual (you), auto-iso (the camera changes the ISO), automatic (it changes more).
   */
  exposure?: 'manual' | 'auto-iso' | 'automatic'
  /**
   * White balance of the camera.
   */
  'white-balance'?: Kelvin
  /**
   * Who holds the camera: a person stands in the light behind it, a stand hardly. Without it: a person, unless the shutter is slower than 1/60.
   */
  'held-by'?: 'person' | 'stand'
}
/**
 * Where the camera stands.
 */
export interface CameraPlace {
  /**
   * Along the floor, from the subject to the camera, down the centre line of the set.
   */
  distance: Length
  /**
   * Height of the lens over the floor. Without it, the height of the face.
   */
  height?: Height
  /**
   * How far to the side of the centre line the camera stands, camera-left or camera-right.
   */
  aside?: Aside
}
/**
 * The subject: a person, a group in rows, or an object.
 */
export interface Subject {
  /**
   * What is photographed.
   */
  kind: 'person' | 'group' | 'object'
  /**
   * Height of the person standing, or of the object.
   */
  height?: Length
  /**
   * How the person is. It says how high the face is, unless `faces-at` does.
   */
  pose?: 'standing' | 'seated' | 'lying'
  /**
   * Height of the face over the floor (over the table, where the subject stands on one).
   */
  'faces-at'?: Height
  /**
   * How far the subject is turned from facing the camera's end of the set.
   */
  turned?: SidedAngle
  /**
   * Shoulder to shoulder, or the object's width.
   */
  width?: Length
  /**
   * Front to back.
   */
  depth?: Length
  /**
   * A group's rows. Row 1 is nearest the camera.
   */
  rows?: Row[]
  /**
   * The table or platform that the subject stands on.
   */
  'stands-on'?: Platform
  /**
   * Share of the light that skin, clothes or object give back.
   */
  reflectance?: number
  /**
   * How the surface shines. A glossy or clear subject mirrors its surroundings: its tone is not judged.
   */
  finish?: 'matte' | 'satin' | 'glossy' | 'clear'
  /**
   * What an object that mirrors is like: flat (a book, a screen), round one way (a bottle, a can), round every way. Without it, a cylinder where it is taller than wide, else a ball.
   */
  shape?: 'plane' | 'cylinder' | 'ball'
  /**
   * The fastest movement that must come out sharp.
   */
  moves?: Speed
  /**
   * Where the subject may move to: width across the set by depth along it.
   */
  area?: Size
  /**
   * Wears glasses.
   */
  glasses?: boolean
  /**
   * Hair: how bright a rim or hair light may be depends on it.
   */
  hair?: 'dark' | 'brown' | 'fair'
  /**
   * Age, for cautions.
   */
  age?: 'newborn' | 'baby' | 'child' | 'adult'
}
/**
 * A row of people, side by side.
 */
export interface Row {
  /**
   * How many people stand or sit in the row.
   */
  people: number
  /**
   * From the middle of one person to the middle of the next.
   */
  spacing?: Length
  /**
   * How far behind the row in front; not said for the first row.
   */
  behind?: Length
  /**
   * Height of the face over the floor (over the table, where the subject stands on one).
   */
  'faces-at': Height
}
/**
 * A table or platform; a sweep then lies on it.
 */
export interface Platform {
  /**
   * Height of its top over the floor.
   */
  height: Length
  /**
   * What its top is made of or covered with.
   */
  surface?: Surface
  /**
   * Its top, width across the set by depth along it.
   */
  size?: Size
  /**
   * How its top shines. A glossy one mirrors lights. Without it, what its surface is known for (acrylic glossy, vinyl satin), else matte.
   */
  finish?: 'matte' | 'satin' | 'glossy'
}
/**
 * The backdrop: what it is, how large, how far behind the subject.
 */
export interface Backdrop {
  /**
   * What the backdrop is made of: a name, or its reflectance and colour.
   */
  surface?: Surface
  /**
   * Outdoors: the sky stands for a backdrop.
   */
  sky?: Sky
  /**
   * Width of the backdrop.
   */
  width?: Length
  /**
   * Height of its upper edge over the floor.
   */
  height?: Length
  /**
   * From the subject to the backdrop.
   */
  behind?: Length
  /**
   * From the last row of a group to the backdrop, in place of `behind`.
   */
  'behind-last-row'?: Length
  /**
   * The backdrop curves onto the floor (or table) and comes forward under the subject.
   */
  sweep?: {
    /**
     * How far it comes forward, in front of the subject.
     */
    front: Length
  }
  /**
   * How it shines. A glossy backdrop mirrors lights. Without it, what its surface is known for (acrylic glossy, vinyl satin), else matte.
   */
  finish?: 'matte' | 'satin' | 'glossy'
}
/**
 * The sky as backdrop, as a meter reads it.
 */
export interface Sky {
  /**
   * What the meter read.
   */
  reads: Aperture
  /**
   * How it was metered.
   */
  kind?: 'incident' | 'reflected'
  /**
   * Shutter time set on the meter.
   */
  shutter: Shutter
  /**
   * ISO set on the meter.
   */
  iso: Iso
  /**
   * Colour temperature of the light.
   */
  colour?: Kelvin
}
/**
 * A light: its unit, its modifier, its power, its place.
 */
export interface Light {
  /**
   * What the light is for. Without it: the first word of its name if that is a role, else key for the first light.
   */
  role?: 'key' | 'fill' | 'rim' | 'hair' | 'kicker' | 'backdrop' | 'effect'
  /**
   * The unit: one of the kit, a built-in one, or a map with its facts.
   */
  unit?: UnitOrName
  /**
   * What is on the unit: one of the kit, or by kind and size.
   */
  modifier?: ModifierOrName
  /**
   * The front lies on its side: its size is turned.
   */
  lying?: boolean
  /**
   * What the unit is set to.
   */
  power?: Power
  /**
   * What this light alone is to meter, at the point of its role unless another is named.
   */
  meters?:
    | {
        /**
         * What the meter is to read.
         */
        reads: Aperture
        /**
         * The point to meter at.
         */
        at?: PlaceName
      }
    | Aperture
  /**
   * Zoom of the flash head.
   */
  zoom?: FocalLength
  /**
   * A grid on the front.
   */
  grid?: Grid
  /**
   * A gel on the light.
   */
  gel?: Gel
  /**
   * Where the middle of its front is.
   */
  at?: LightPlace
  /**
   * What it is aimed at. Without it: backdrop lights at the backdrop, rims at the subject's back, hair lights at the hair, others at the subject.
   */
  aim?: Aim
  /**
   * The same as another light of this plan; keys written here differ from it.
   */
  like?: LightName
  /**
   * With `like`: on the other side of the centre line.
   */
  mirrored?: boolean
  /**
   * How the flash is controlled: manual, automatic (metered by the camera), high-speed sync.
   */
  mode?: 'manual' | 'automatic' | 'high-speed'
  /**
   * Whether the modelling lamp is on.
   */
  modelling?: 'on' | 'off' | true | false
  /**
   * The light is rigged but switched off.
   */
  off?: boolean
  /**
   * How the flash is fired.
   */
  trigger?: Trigger
  /**
   * What holds it.
   */
  stand?: Stand
  /**
   * The circuit of the room that it is plugged into.
   */
  circuit?: CircuitName
  /**
   * Window: size of its glass, width by height.
   */
  size?: Size
  /**
   * Window or panel light: which way its front faces.
   */
  faces?: Facing
  /**
   * Sun, window, lamp: what a meter reads of it alone, at the subject.
   */
  reads?: Aperture
  /**
   * Shutter time of that reading.
   */
  shutter?: Shutter
  /**
   * ISO of that reading.
   */
  iso?: Iso
  /**
   * Colour temperature of the light, at the power that it is set to.
   */
  colour?: Kelvin
  /**
   * How far its light lies from the black-body locus, in the 1960 diagram: green is over zero, magenta under.
   */
  duv?: number
}
/**
 * A place: by angle, distance and height from the subject, or by offsets from it (left or right, front or behind, height).
 */
export interface Placement {
  /**
   * Bearing at the subject, seen from above: 0 is straight toward the camera's end of the set, left and right as seen from there.
   */
  angle?: SidedAngle
  /**
   * By tape, from the subject's face (an object's middle) to the middle of the light's front.
   */
  distance?: Length
  /**
   * Height over the floor, or over the table that the object stands on.
   */
  height?: Height
  /**
   * Elevation over the level of the face, in place of a height.
   */
  up?: Angle
  /**
   * So far to camera-left of the subject.
   */
  left?: Length
  /**
   * So far to camera-right of the subject.
   */
  right?: Length
  /**
   * So far in front of the subject, toward the camera.
   */
  front?: Length
  /**
   * So far behind the subject, toward the backdrop.
   */
  behind?: Length
  /**
   * So far in front of the backdrop, toward the camera.
   */
  'before-backdrop'?: Length
}
/**
 * How the flash is fired.
 */
export interface Trigger {
  /**
   * What fires it.
   */
  by: 'cable' | 'radio' | 'basic radio' | 'optical' | 'optical groups'
  /**
   * Channel of the trigger.
   */
  channel?: number
  /**
   * Group of the trigger.
   */
  group?: string | number
  /**
   * Fires the flash before the shutter is open all over, so that a long flash burns through the run of the slit.
   */
  early?: boolean
}
/**
 * What holds the light.
 */
export interface Stand {
  /**
   * A stand of the kit, or its kind.
   */
  kind: KitName
  /**
   * Boom: from the stand's pole to the light.
   */
  arm?: Length
  /**
   * Weight on the other end of a boom.
   */
  counterweight?: Weight
  /**
   * Weight on the legs.
   */
  sandbag?: Weight
}
/**
 * A panel: flag, reflector, v-flat or scrim.
 */
export interface Panel {
  /**
   * flag takes light away, reflector gives it back, v-flat is two leaves with a black and a white side, scrim spreads it.
   */
  kind: 'flag' | 'reflector' | 'v-flat' | 'scrim'
  /**
   * Width by height as it stands; of a v-flat, one leaf.
   */
  size: Size
  /**
   * Its middle. A v-flat stands on the floor.
   */
  at: Placement
  /**
   * Which way it faces: a side, a point, or an angle seen from above.
   */
  faces: Facing
  /**
   * Its face. Without it, a reflector is white board and a flag is black.
   */
  surface?: Surface
  /**
   * V-flat: the angle between its leaves.
   */
  opening?: Angle
  /**
   * V-flat: the side toward the fold's opening.
   */
  inside?: Surface
  /**
   * V-flat: the outer side.
   */
  outside?: Surface
  /**
   * Scrim: the share of the light that comes through.
   */
  transmits?: Share
}
/**
 * The picture that is wanted. What is not said here is not judged.
 */
export interface Wanted {
  /**
   * How much of the subject is in the frame.
   */
  framing?: 'face' | 'head and shoulders' | 'waist' | 'three-quarter' | 'full length' | 'all'
  /**
   * How the backdrop is to come out: white, grey, black, a tone, a colour; any: it does not matter.
   */
  backdrop?:
    | {
        /**
         * The colour.
         */
        colour: Colour
      }
    | {
        /**
         * The tone that it is to record, as an sRGB code.
         */
        tone: number
      }
    | ('white' | 'grey' | 'black' | 'any')
  /**
   * By how much the backdrop is to be over the key.
   */
  'backdrop-over-key'?: StopsRange
  /**
   * How far the brightest and the darkest part of the backdrop may lie apart.
   */
  'backdrop-even'?: Stops
  /**
   * How the floor of a sweep is to come out.
   */
  floor?: 'white' | 'any'
  /**
   * The subject over (+) or under (-) its reading on purpose.
   */
  exposure?: Stops
  /**
   * The lighting ratio, of a named kind.
   */
  ratio?: {
    /**
     * (key + fill) to fill, at the face, dome to the camera; a panel or the walls may be the fill.
     */
    'lit-to-shadow'?: Ratio
    /**
     * Key to fill, each alone, dome to the light.
     */
    'key-to-fill'?: Ratio
  }
  /**
   * The subject's shadow on the backdrop. Without it: hidden when white is wanted, else any.
   */
  shadow?: 'hidden' | 'soft' | 'any'
  /**
   * What must be sharp: the face (12 cm), the subject, rows (all of them), or a depth.
   */
  sharp?: ('face' | 'subject' | 'rows') | Length
  /**
   * Whether movement must be frozen.
   */
  motion?: 'frozen' | 'any'
  /**
   * How much of the light of the place may be in the picture. Without it: none when all lights flash. `any`: as much as there is; the colour that it gives the shadows is still noted.
   */
  ambient?:
    | {
        /**
         * How far under the key.
         */
        'under-key': Stops
      }
    | ('none' | 'any')
  /**
   * The pace of shooting, for recycling and charge.
   */
  shooting?: {
    /**
     * A frame every so often.
     */
    every: Time
    /**
     * How many frames.
     */
    frames?: number
  }
}
/**
 * A reading: of which lights, at which point, what it was, and what the lights were set to then.
 */
export interface Reading {
  /**
   * The point that was metered.
   */
  at: PlaceName
  /**
   * The lights that were on: their names in a list, all, or ambient (no flash).
   */
  of: LightName[] | string
  /**
   * What the meter read.
   */
  reads?: Aperture
  /**
   * No meter: what a test frame recorded there, as an sRGB code.
   */
  records?: number
  /**
   * What the lights were set to when the reading was taken, by light.
   */
  taken?: {
    /**
     * The settings of one light at the time.
     */
    [k: string]: {
      /**
       * Its power then.
       */
      power?: Power
      /**
       * Its distance from the subject then.
       */
      distance?: Length
    }
  }
  /**
   * incident: the light that arrives. reflected: what the surface gives back (+2.4 stops on white paper).
   */
  kind?: 'incident' | 'reflected'
  /**
   * The dome of the meter. Without it: raised at the subject and in free air, flat on a surface.
   */
  dome?: 'raised' | 'flat'
  /**
   * What the dome was turned to: light, camera, backdrop, or a point.
   */
  faces?: PlaceName
  /**
   * ISO set on the meter. Without it, the camera's.
   */
  iso?: Iso
}
/**
 * A finding that you have decided to live with.
 */
export interface Accepted {
  /**
   * The rule, as the finding names it.
   */
  rule: string
  /**
   * Why it is acceptable here.
   */
  because: string
  /**
   * The last day that it holds, year-month-day.
   */
  until?: string
}
/**
 * A kit file: the gear there is.
 */
export interface KitFile {
  /**
   * Version of the kit language; always 1.
   */
  kit: 1
  /**
   * What the kit is called.
   */
  title: string
  /**
   * Notes for people.
   */
  notes?: string
  /**
   * Light units by name: what a light's `unit` refers to.
   */
  units?: {
    [k: string]: Unit
  }
  /**
   * Modifiers by name: what a light's `modifier` refers to.
   */
  modifiers?: {
    [k: string]: Modifier
  }
  /**
   * Stands by name: what a light's `stand.kind` refers to.
   */
  stands?: {
    [k: string]: KitStand
  }
  /**
   * Cameras by name: what `camera.body` refers to.
   */
  cameras?: {
    /**
     * A camera.
     */
    [k: string]: {
      /**
       * Size of the sensor: full frame, aps-c, four thirds, or its size, width by height as the camera is held level.
       */
      sensor?: ('full frame' | 'aps-c' | 'four thirds') | Size
      /**
       * Sync speed: the fastest shutter speed at which the whole frame is open at once for the flash.
       */
      sync?: Shutter
      /**
       * How long a shutter curtain takes to travel over the frame. Without it 0.7 to 1.0 of the sync time is taken.
       */
      curtain?: Time
      /**
       * Kind of shutter: focal-plane (two curtains), leaf (in the lens), electronic (read line by line).
       */
      'shutter-kind'?: 'focal-plane' | 'leaf' | 'electronic'
      /**
       * Electronic shutter: the time that reading the whole frame takes; 0 ms reads all at once.
       */
      readout?: Time
      /**
       * How far over a white of 100 % reflectance the camera still holds detail before a channel clips.
       */
      headroom?: Stops
    }
  }
  /**
   * Backdrops by name: what `backdrop.surface` refers to.
   */
  backdrops?: {
    [k: string]: KitBackdrop
  }
  /**
   * Light meters by name.
   */
  meters?: {
    [k: string]: KitMeter
  }
  /**
   * What lights of this kit did meter once, straight ahead: one measurement serves every plan.
   */
  measured?: Measurement[]
}
/**
 * A room file.
 */
export interface RoomFile {
  /**
   * Version of the room language; always 1.
   */
  room: 1
  /**
   * What the room is called.
   */
  title?: string
  /**
   * Width of the room, across the set.
   */
  width: Length
  /**
   * Length of the room, along the set.
   */
  length: Length
  /**
   * Height of the ceiling.
   */
  height: Length
  /**
   * From the centre line of the set to the camera-left wall. Without it, the set stands in the middle.
   */
  'left-wall'?: Length
  /**
   * From the backdrop to the wall behind it.
   */
  'behind-backdrop'?: Length
  /**
   * The walls: one surface for all, or one for each side.
   */
  walls?:
    | Surface
    | {
        /**
         * The camera-left wall.
         */
        left?: Surface
        /**
         * The camera-right wall.
         */
        right?: Surface
        /**
         * The wall behind the camera.
         */
        front?: Surface
        /**
         * The wall behind the backdrop.
         */
        back?: Surface
      }
  /**
   * The ceiling.
   */
  ceiling?: Surface
  /**
   * The floor.
   */
  floor?: Surface
  /**
   * Frequency of the mains, on which lamps flicker. Without it, by the voltage of the circuits: 60 Hz under 130 V, 50 Hz over 200 V.
   */
  mains?: Mains
  /**
   * The room's electrical circuits, by name.
   */
  circuits?: {
    /**
     * A circuit.
     */
    [k: string]: {
      /**
       * Mains voltage.
       */
      voltage: Volts
      /**
       * What its breaker is rated for.
       */
      breaker: Amperes
    }
  }
}
/**
 * Settings of a studio: `thirdstop.yaml` beside the plans.
 */
export interface SettingsFile {
  /**
   * Version of the settings; always 1.
   */
  thirdstop: 1
  /**
   * Notes for people.
   */
  notes?: string
  /**
   * Which files are plans, as patterns of paths; ** stands for any folders.
   *
   * Items: A pattern of paths; ** stands for any folders.
   */
  plans?: string[]
  /**
   * Which files and folders are left out.
   *
   * Items: A pattern of paths; ** stands for any folders.
   */
  ignore?: string[]
  /**
   * The level that a rule reports at, by rule; off: it does not run.
   */
  levels?: {
    /**
     * The level of the rule.
     */
    [k: string]: 'error' | 'warning' | 'note' | 'off'
  }
  /**
   * House limits, by rule and by the limit's name (`thirdstop explain` shows both).
   */
  limits?: {
    /**
     * Limits of the rule, by name.
     */
    [k: string]: {
      /**
       * A limit with its unit.
       */
      [k: string]: number | string
    }
  }
  /**
   * The level from which `check` ends with exit code 1.
   */
  'fail-on'?: 'error' | 'warning' | 'note'
}
