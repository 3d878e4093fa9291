/** Motion blur: the check values dur.blur hold it; here its limit against pictures drawn point by point. */
import { describe, expect, it } from 'vitest'
import { magnification } from '../../src/picture/lens.js'
import { motionBlur, overCircle } from '../../src/picture/motion.js'
import type { Metres, Seconds } from '../../src/units/quantity.js'

const fullFrame = { width: 0.036 as Metres, height: 0.024 as Metres }

describe('motion blur', () => {
  it('is as long as the way of a point that the lens draws at the start and at the end', () => {
    // Central projection of a thin lens focused at 3 m: image distance 1/(1/f − 1/u).
    const [lens, away, speed, duration] = [0.085, 3, 4, 1 / 300]
    const image = 1 / (1 / lens - 1 / away)
    const drawn = Math.abs((speed * duration * image) / away)
    const blur = motionBlur(speed, duration as Seconds, magnification(lens as Metres, away as Metres))
    expect(blur).toBeCloseTo(drawn, 12)
  })

  it('of 5 m/s over 1/500 s is 10 mm at the subject, 2.5 mm over 1/2000 s', () => {
    // As a practitioner reckons it.
    expect(motionBlur(5, (1 / 500) as Seconds, 1)).toBeCloseTo(0.01, 12)
    expect(motionBlur(5, (1 / 2000) as Seconds, 1)).toBeCloseTo(0.0025, 12)
  })

  it('is a doubling over the circle of confusion where it is twice as long', () => {
    const circle = Math.hypot(0.036, 0.024) / 1500
    expect(overCircle((2 * circle) as Metres, fullFrame)).toBeCloseTo(1, 12)
  })
})
