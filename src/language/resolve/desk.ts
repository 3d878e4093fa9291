/** What every part of the reading works with: where things are written, where mistakes go, how quantities are read. */

import { readAngle, readFeather, readSidedAngle, type Towards } from '../../units/angle.js'
import { readAperture } from '../../units/aperture.js'
import { readAside } from '../../units/aside.js'
import { readKelvin, readMired } from '../../units/colour.js'
import {
  readAmperes,
  readEnergy,
  readMains,
  readVolts,
  readWatts,
  readWeight,
} from '../../units/electrical.js'
import { readFocalLength, readFocalRange } from '../../units/focal-length.js'
import { readGuideNumber } from '../../units/guide-number.js'
import { type ReadHeight, readHeight } from '../../units/height.js'
import { readLength } from '../../units/length.js'
import { readMetered } from '../../units/metered.js'
import type { Parsed } from '../../units/parsed.js'
import { readLumens, readLux } from '../../units/photometric.js'
import { readPower } from '../../units/power.js'
import {
  type Amperes,
  as,
  fNumber,
  type Kelvin,
  type Kilograms,
  type Lux,
  type Mired,
  metres,
  powerShare,
  type Radians,
  radians,
  seconds,
  stops,
  type Volts,
  type WattSeconds,
  type Watts,
} from '../../units/quantity.js'
import { readRatio } from '../../units/ratio.js'
import { readShare } from '../../units/share.js'
import { readShutter } from '../../units/shutter.js'
import { readSize } from '../../units/size.js'
import { readSpeed } from '../../units/speed.js'
import { readStops, readStopsRange } from '../../units/stops.js'
import { readTime } from '../../units/time.js'
import type { KitMap } from '../generated/types.js'
import type { Mistake } from '../mistake.js'
import type { MistakeList } from '../mistakes.js'
import type { Places } from '../plan.js'
import type { FilePort } from '../port.js'

export interface Desk {
  readonly places: Places
  readonly mistakes: MistakeList
  readonly kit: KitMap
  /** How files that are no YAML are had, and where the texts go that places point into. */
  readonly files: { readonly port: FilePort; readonly texts: Map<string, string> }
}

/** Reports a mistake at a pointer, and where the plan itself uses the value if it is written elsewhere. */
export const refuse = (
  desk: Desk,
  at: string,
  message: string,
  why = '',
  rule: Mistake['rule'] = 'plan-unreadable',
): void => {
  const used = desk.places.usedAt(at)
  desk.mistakes.addPlaced({
    rule,
    place: desk.places.of(at),
    message,
    why,
    also: used === undefined ? [] : [{ ...used, says: 'used here' }],
    advice: [],
  })
}

/** Reads the text at a pointer. A refusal is a mistake; the stand-in only lets the reading go on to find others. */
type At<T> = (desk: Desk, at: string, text: string) => T

const reading =
  <T>(read: (text: string) => Parsed<T>, standIn: T): At<T> =>
  (desk, at, text) => {
    const got = read(text)
    if (got.ok) return got.value
    refuse(desk, at, `${text} cannot be read`, got.says)
    return standIn
  }

/** Refuses what a quantity of this kind may be elsewhere, but not here. */
const narrowed =
  <T extends number>(read: At<T>, fits: (value: T) => boolean, says: string): At<T> =>
  (desk, at, text) => {
    const value = read(desk, at, text)
    if (!fits(value)) refuse(desk, at, `${text} makes no sense here`, says)
    return value
  }

const overZero = (value: number): boolean => value > 0

export const lengthAt = reading(readLength, metres(1))
/** A length that something has, which cannot be zero. */
export const extentAt = narrowed(lengthAt, overZero, 'a length over zero is needed')
export const heightAt = reading<ReadHeight>(readHeight, { over: 'floor', metres: metres(1) })
export const asideAt = reading(readAside, metres(0))
export const sizeAt = reading(readSize, { width: metres(1), height: metres(1) })
export const focalLengthAt = reading(readFocalLength, metres(0.05))
export const focalRangeAt = reading(readFocalRange, { from: metres(0.05), to: metres(0.05) })
export const apertureAt = reading(readAperture, fNumber(8))
export const shutterAt = reading(readShutter, { exact: seconds(1 / 128), marked: seconds(1 / 125) })
const anyTimeAt = reading(readTime, seconds(1))
export const timeAt = narrowed(anyTimeAt, overZero, 'a time over zero is needed')
/** 0 ms: all at once. */
export const readoutAt = anyTimeAt
export const stopsAt = reading(readStops, stops(0))
/** Stops that something takes or holds. */
export const amountAt = narrowed(stopsAt, (value) => value >= 0, 'it cannot be less than none')
export const stopsRangeAt = reading(readStopsRange, { from: stops(0), to: stops(0) })
export const angleAt = reading(readAngle, radians(1))
/** Narrower than any spot of a studio; far narrower ones cost work without end. */
const narrowestBeam = (2 * Math.PI) / 180
/** Between the directions at half the peak of something that shines forward. */
export const beamAt = narrowed(
  angleAt,
  (angle) => angle > narrowestBeam * 0.999 && angle < Math.PI * 0.999,
  'a beam angle is 2 deg or more and under 180 deg; a flat front spreads 120 deg',
)
/** The finest honeycombs that are sold are 5 deg (common practice, no source); far finer ones cost work without end. */
const finestGrid = (3 * Math.PI) / 180
export const isGridAngle = (angle: number): boolean => angle > finestGrid * 0.999 && angle < Math.PI / 2
export const gridAngleRange = 'a grid’s angle is 3 deg or more and under 90 deg'
export const gridAngleAt = narrowed(angleAt, isGridAngle, gridAngleRange)
/** Between the leaves of a v-flat. */
export const openingAt = narrowed(
  angleAt,
  (angle) => angle > 0 && angle < 2 * Math.PI,
  'a v-flat opens by over 0 deg and under 360 deg',
)
/** Over the level. */
export const elevationAt = narrowed(angleAt, (angle) => angle <= Math.PI / 2 + 1e-9, 'straight up is 90 deg')
export const sidedAngleAt = reading(readSidedAngle, { radians: radians(0) })
export const featherAt = reading<{ readonly by: Radians; readonly towards: Towards }>(readFeather, {
  by: radians(0),
  towards: 'camera',
})
export const powerAt = reading(readPower, { kind: 'share', share: powerShare(1) })
export const kelvinAt = reading(readKelvin, as<Kelvin>(5500))
export const miredAt = reading(readMired, as<Mired>(0))
export const energyAt = narrowed(
  reading(readEnergy, as<WattSeconds>(400)),
  overZero,
  'an energy over zero is needed',
)
export const voltsAt = reading(readVolts, as<Volts>(230))
export const mainsAt = narrowed(voltsAt, overZero, 'a voltage over zero is needed')
export const mainsFrequencyAt = reading<50 | 60>(readMains, 50)
export const amperesAt = narrowed(
  reading(readAmperes, as<Amperes>(16)),
  overZero,
  'a current over zero is needed',
)
export const wattsAt = reading(readWatts, as<Watts>(100))
export const weightAt = reading(readWeight, as<Kilograms>(1))
export const guideNumberAt = reading(readGuideNumber, { metres: 36, zoom: undefined })
export const meteredAt = reading(readMetered, { reads: fNumber(8), distance: metres(2) })
export const luxAt = reading(readLux, { lux: as<Lux>(1), distance: metres(1) })
export const lumensAt = reading(readLumens, 1)
export const ratioAt = reading(readRatio, 2)
export const shareAt = reading(readShare, 0.5)
export const speedAt = reading(readSpeed, 1)

/** Reads what is there; what is not stays undefined. */
export const maybe = <T>(at: At<T>, desk: Desk, pointer: string, text: string | undefined): T | undefined =>
  text === undefined ? undefined : at(desk, pointer, text)

const understood = new WeakMap<KitMap, Map<string, unknown>>()

/**
 * What is made of a part of the kit is made once for all plans that stand on the same kit; where it holds a mistake, each
 * plan is told anew.
 */
export const onceOfKit = <T>(desk: Desk, part: string, make: () => T): T => {
  let known = understood.get(desk.kit)
  if (known === undefined) {
    known = new Map()
    understood.set(desk.kit, known)
  }
  if (known.has(part)) return known.get(part) as T
  const before = desk.mistakes.tellings
  const made = make()
  if (desk.mistakes.tellings === before) known.set(part, made)
  return made
}
