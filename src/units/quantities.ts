/**
 * Every quantity of the plan language by name: the pattern that its JSON Schema carries, the reader that gives the value
 * or says what to write, examples for editors, and a description. Pattern and reader accept the same texts; the reader
 * refuses beyond that only what is out of range, in words that name the range.
 */
import * as angle from './angle.js'
import * as aperture from './aperture.js'
import * as aside from './aside.js'
import * as colour from './colour.js'
import * as electrical from './electrical.js'
import * as focalLength from './focal-length.js'
import * as guideNumber from './guide-number.js'
import * as height from './height.js'
import * as length from './length.js'
import * as metered from './metered.js'
import type { Parsed } from './parsed.js'
import * as photometric from './photometric.js'
import * as power from './power.js'
import * as ratio from './ratio.js'
import * as share from './share.js'
import * as shutter from './shutter.js'
import * as size from './size.js'
import * as speed from './speed.js'
import * as stops from './stops.js'
import * as time from './time.js'

export interface QuantityEntry {
  /** Source of a regular expression for the whole text. */
  readonly pattern: string
  readonly read: (text: string) => Parsed<unknown>
  readonly examples: readonly [string, ...string[]]
  /** What it is and how it is written, for editors. */
  readonly describe: string
}

export const quantities = {
  length: {
    pattern: length.pattern,
    read: length.readLength,
    examples: ['2.4 m', '240 cm', '900 mm', '8 ft', '6 ft 6 in', `6'6"`, '5 1/2 ft', '30 in'],
    describe: 'A length with its unit.',
  },
  height: {
    pattern: height.pattern,
    read: height.readHeight,
    examples: ['2 m', '6 ft 6 in', '20 cm over table'],
    describe: 'A height over the floor, or over the table.',
  },
  aside: {
    pattern: aside.pattern,
    read: aside.readAside,
    examples: ['30 cm right', '1 ft left'],
    describe: "A length to one side, left or right as seen from the camera's end.",
  },
  'focal-length': {
    pattern: focalLength.pattern,
    read: focalLength.readFocalLength,
    examples: ['85 mm'],
    describe: 'A focal length in millimetres.',
  },
  'focal-range': {
    pattern: focalLength.rangePattern,
    read: focalLength.readFocalRange,
    examples: ['24..105 mm'],
    describe: 'A range of focal lengths, the shortest first.',
  },
  aperture: {
    pattern: aperture.pattern,
    read: aperture.readAperture,
    examples: ['f/5.6', 'f/5.6 + 0.3', 'F8'],
    describe: 'An aperture as marked, with tenths of a stop beyond as meters show them.',
  },
  shutter: {
    pattern: shutter.pattern,
    read: shutter.readShutter,
    examples: ['1/125', '1/125 s', '0.5 s', '2 s'],
    describe: 'A shutter time as marked.',
  },
  time: {
    pattern: time.pattern,
    read: time.readTime,
    examples: ['4 ms', '1/800 s', '2 s'],
    describe: 'A time with its unit.',
  },
  power: {
    pattern: power.pattern,
    read: power.readPower,
    examples: ['1/4', '1/4 + 0.3', '1/4 - 1/3', 'full', '50 %', '250 Ws', 'dial 7.3'],
    describe: "A power setting: a share of full power with stops beyond, watt-seconds, or the dial's number.",
  },
  stops: {
    pattern: stops.pattern,
    read: stops.readStops,
    examples: ['+1 stop', '2/3 stop', '-1.5 stops'],
    describe: 'A difference of exposure.',
  },
  'stops-range': {
    pattern: stops.rangePattern,
    read: stops.readStopsRange,
    examples: ['1/2..1 stop', '-1..+1 stop'],
    describe: 'A range of exposure differences, the smaller end first.',
  },
  angle: {
    pattern: angle.pattern,
    read: angle.readAngle,
    examples: ['45 deg', '20°'],
    describe: 'An angle in degrees.',
  },
  'sided-angle': {
    pattern: angle.sidedPattern,
    read: angle.readSidedAngle,
    examples: ['45 deg left', '150 deg right', '0 deg'],
    describe: "An angle to one side, left or right as seen from the camera's end.",
  },
  feather: {
    pattern: angle.featherPattern,
    read: angle.readFeather,
    examples: ['15 deg towards camera', '10 deg towards backdrop'],
    describe: 'How far the aim is turned off its point, and to where.',
  },
  size: {
    pattern: size.pattern,
    read: size.readSize,
    examples: ['60 x 90 cm', '1 x 1.4 m', '1 m x 140 cm', '5 x 7 ft'],
    describe: 'A size, width by height as it stands.',
  },
  kelvin: {
    pattern: colour.kelvinPattern,
    read: colour.readKelvin,
    examples: ['5600 K'],
    describe: 'A colour temperature.',
  },
  mired: {
    pattern: colour.miredPattern,
    read: colour.readMired,
    examples: ['+159 mired', '-50 mired'],
    describe: 'A shift of colour temperature, warmer positive.',
  },
  energy: {
    pattern: electrical.energyPattern,
    read: electrical.readEnergy,
    examples: ['400 Ws'],
    describe: 'Energy of a flash in watt-seconds.',
  },
  volts: {
    pattern: electrical.voltsPattern,
    read: electrical.readVolts,
    examples: ['230 V'],
    describe: 'A voltage.',
  },
  amperes: {
    pattern: electrical.amperesPattern,
    read: electrical.readAmperes,
    examples: ['16 A'],
    describe: 'A current.',
  },
  watts: {
    pattern: electrical.wattsPattern,
    read: electrical.readWatts,
    examples: ['1500 W', '1.5 kW'],
    describe: 'A load in watts.',
  },
  mains: {
    pattern: electrical.mainsPattern,
    read: electrical.readMains,
    examples: ['50 Hz', '60 Hz'],
    describe: 'The frequency of mains.',
  },
  weight: {
    pattern: electrical.weightPattern,
    read: electrical.readWeight,
    examples: ['4 kg', '9 lb'],
    describe: 'A weight.',
  },
  ratio: {
    pattern: ratio.pattern,
    read: ratio.readRatio,
    examples: ['2:1', '3:1'],
    describe: 'A lighting ratio; quote it, since some YAML readers take it for a time of day.',
  },
  'guide-number': {
    pattern: guideNumber.pattern,
    read: guideNumber.readGuideNumber,
    examples: ['36 m at 35 mm', '118 ft at 35 mm'],
    describe: 'A guide number at ISO 100 with the zoom that it is rated at.',
  },
  metered: {
    pattern: metered.pattern,
    read: metered.readMetered,
    examples: ['f/8 at 2 m'],
    describe: 'What a meter reads at a distance, ISO 100.',
  },
  share: {
    pattern: share.pattern,
    read: share.readShare,
    examples: ['45 %'],
    describe: 'A share in percent.',
  },
  speed: {
    pattern: speed.pattern,
    read: speed.readSpeed,
    examples: ['2 m/s', '7 km/h'],
    describe: 'A speed.',
  },
  lux: {
    pattern: photometric.luxPattern,
    read: photometric.readLux,
    examples: ['1200 lx at 1 m'],
    describe: 'Illuminance on the axis at a distance.',
  },
  lumens: {
    pattern: photometric.lumensPattern,
    read: photometric.readLumens,
    examples: ['5000 lm'],
    describe: 'Luminous flux.',
  },
} as const satisfies Record<string, QuantityEntry>

export type QuantityName = keyof typeof quantities
