/**
 * The lens as a thin lens: distances are from the lens to the subject. Lengths in metres, angles in radians.
 * Source: Gaussian thin-lens equation; depth of field after ISO 517's f-number and the usual geometric blur circle.
 */
import type { FNumber, Metres, Radians, Stops } from '../units/quantity.js'

export interface Sensor {
  readonly width: Metres
  readonly height: Metres
}

/** Divides the sensor's diagonal: the largest blur that still looks sharp in a whole picture, and for catalogue work. */
export const circleDivisor = { picture: 1500, catalogue: 3000 } as const

export const diagonal = (sensor: Sensor): Metres => Math.hypot(sensor.width, sensor.height) as Metres

/** Circle of confusion on the sensor. */
export const circleOfConfusion = (sensor: Sensor, divisor: number = circleDivisor.picture): Metres =>
  (diagonal(sensor) / divisor) as Metres

/** Against 36 × 24 mm, by the diagonal. */
export const cropFactor = (sensor: Sensor): number => Math.hypot(0.036, 0.024) / diagonal(sensor)

/** Angle of view across one side of the sensor, focused at infinity. */
export const angleOfView = (lens: Metres, side: Metres): Radians =>
  (2 * Math.atan(side / (2 * lens))) as Radians

/** Image size over object size when focused at `distance`; infinite at or inside the focal length. */
export const magnification = (lens: Metres, distance: Metres): number =>
  distance > lens ? lens / (distance - lens) : Number.POSITIVE_INFINITY

/** What one side of the sensor covers at the distance that it is focused at. */
export const fieldAt = (lens: Metres, side: Metres, distance: Metres): Metres =>
  (side / magnification(lens, distance)) as Metres

/** Light lost to the extension of a symmetrical lens. */
export const closeUpLoss = (magnified: number): Stops => (2 * Math.log2(1 + magnified)) as Stops

/** Focused here, all from half the distance to infinity is sharp. */
export const hyperfocal = (lens: Metres, aperture: FNumber, circle: Metres): Metres =>
  (lens ** 2 / (aperture * circle) + lens) as Metres

export interface DepthOfField {
  readonly near: Metres
  /** Infinity beyond the hyperfocal distance. */
  readonly far: Metres
}

/** Nearest and farthest distance whose blur on the sensor stays within `circle`, focused at `distance`. */
export const depthOfField = (
  lens: Metres,
  aperture: FNumber,
  distance: Metres,
  circle: Metres,
): DepthOfField => {
  const reach = lens ** 2
  const blur = aperture * circle * (distance - lens)
  return {
    near: ((distance * reach) / (reach + blur)) as Metres,
    far: (reach > blur ? (distance * reach) / (reach - blur) : Number.POSITIVE_INFINITY) as Metres,
  }
}

/** Diameter of the blur on the sensor of a point at `at`, focused at `distance`. */
export const blurCircle = (lens: Metres, aperture: FNumber, distance: Metres, at: Metres): Metres =>
  ((magnification(lens, distance) * (lens / aperture) * Math.abs(at - distance)) / at) as Metres

/**
 * The f-number at which both ends of a depth are just sharp, focused at `distance`; infinite where an end lies at the
 * lens.
 */
export const apertureForDepth = (
  lens: Metres,
  distance: Metres,
  near: Metres,
  far: Metres,
  circle: Metres,
): FNumber =>
  Math.max(
    blurCircle(lens, 1 as FNumber, distance, near) / circle,
    far === Number.POSITIVE_INFINITY
      ? (magnification(lens, distance) * lens) / circle
      : blurCircle(lens, 1 as FNumber, distance, far) / circle,
  ) as FNumber

/** Green, where the eye sees most: metres. */
const wavelength = 550e-9

/** Diameter of the Airy disc on the sensor; close up the cone narrows to N(1 + m). Airy: 2.44 λN to the first dark ring. */
export const airyDisc = (aperture: FNumber, magnified = 0, light: number = wavelength): Metres =>
  (2 * firstDarkRing * light * aperture * (1 + magnified)) as Metres

/** First zero of J₁(πx)/x: the first dark ring's radius in units of λN. */
const firstDarkRing = 1.2196698912665045
