/** What moves while it is exposed is drawn out on the sensor. */
import type { Metres, Seconds, Stops } from '../units/quantity.js'
import { circleOfConfusion, type Sensor } from './lens.js'

/** Length of the blur on the sensor; speed in m/s, across the line of sight. Geometry. */
export const motionBlur = (speed: number, duration: Seconds, magnification: number): Metres =>
  (speed * duration * magnification) as Metres

/** Doublings of a blur over the circle of confusion; negative where it goes unseen. */
export const overCircle = (blur: Metres, sensor: Sensor): Stops =>
  Math.log2(blur / circleOfConfusion(sensor)) as Stops
