/** What every part of the reading works with: where things are written, where mistakes go, how quantities are read. */

import { readAngle, readFeather, readSidedAngle, type Towards } from '../../units/angle.js'
import { readAperture } from '../../units/aperture.js'
import { readAside } from '../../units/aside.js'
import { readKelvin, readMired } from '../../units/colour.js'
import { readAmperes, readEnergy, readVolts, readWatts, readWeight } from '../../units/electrical.js'
import { readFocalLength, readFocalRange } from '../../units/focal-length.js'
import { readGuideNumber } from '../../units/guide-number.js'
import { type ReadHeight, readHeight } from '../../units/height.js'
import { readLength } from '../../units/length.js'
import { readMetered } from '../../units/metered.js'
import type { Parsed } from '../../units/parsed.js'
import { readPower } from '../../units/power.js'
import {
  type Amperes,
  as,
  fNumber,
  type Kelvin,
  type Kilograms,
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

export interface Desk {
  readonly places: Places
  readonly mistakes: MistakeList
  readonly kit: KitMap
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

export const lengthAt = reading(readLength, metres(1))
export const heightAt = reading<ReadHeight>(readHeight, { over: 'floor', metres: metres(1) })
export const asideAt = reading(readAside, metres(0))
export const sizeAt = reading(readSize, { width: metres(1), height: metres(1) })
export const focalLengthAt = reading(readFocalLength, metres(0.05))
export const focalRangeAt = reading(readFocalRange, { from: metres(0.05), to: metres(0.05) })
export const apertureAt = reading(readAperture, fNumber(8))
export const shutterAt = reading(readShutter, { exact: seconds(1 / 128), marked: seconds(1 / 125) })
export const timeAt = reading(readTime, seconds(1))
export const stopsAt = reading(readStops, stops(0))
export const stopsRangeAt = reading(readStopsRange, { from: stops(0), to: stops(0) })
export const angleAt = reading(readAngle, radians(1))
export const sidedAngleAt = reading(readSidedAngle, { radians: radians(0) })
export const featherAt = reading<{ readonly by: Radians; readonly towards: Towards }>(readFeather, {
  by: radians(0),
  towards: 'camera',
})
export const powerAt = reading(readPower, { kind: 'share', share: powerShare(1) })
export const kelvinAt = reading(readKelvin, as<Kelvin>(5500))
export const miredAt = reading(readMired, as<Mired>(0))
export const energyAt = reading(readEnergy, as<WattSeconds>(400))
export const voltsAt = reading(readVolts, as<Volts>(230))
export const amperesAt = reading(readAmperes, as<Amperes>(16))
export const wattsAt = reading(readWatts, as<Watts>(100))
export const weightAt = reading(readWeight, as<Kilograms>(1))
export const guideNumberAt = reading(readGuideNumber, { metres: 36, zoom: undefined })
export const meteredAt = reading(readMetered, { reads: fNumber(8), distance: metres(2) })
export const ratioAt = reading(readRatio, 2)
export const shareAt = reading(readShare, 0.5)
export const speedAt = reading(readSpeed, 1)

/** Reads what is there; what is not stays undefined. */
export const maybe = <T>(at: At<T>, desk: Desk, pointer: string, text: string | undefined): T | undefined =>
  text === undefined ? undefined : at(desk, pointer, text)
