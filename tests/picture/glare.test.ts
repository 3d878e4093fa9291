/** Veiling glare, against what an independent prototype worked out once and against limit cases. */
import { describe, expect, it } from 'vitest'
import {
  contrastLeft,
  deepBlack,
  fieldMean,
  meanForLift,
  surroundReach,
  surroundWeight,
  veiled,
  veilLift,
} from '../../src/picture/glare.js'
import { srgbCode } from '../../src/picture/tone.js'

describe('the veil', () => {
  // A prototype's figures: index 1.5 %, paper of 0.9 a stop over white's setting in 80 % of the frame.
  it('lifts a black of 0.02 from sRGB 39 to 57, by 1.06 stop', () => {
    const mean = 0.8 * 0.9 * 2
    expect(srgbCode(deepBlack)).toBe(39)
    expect(srgbCode(veiled(deepBlack, mean))).toBe(57)
    expect(veilLift(deepBlack, mean)).toBeCloseTo(1.06, 2)
  })

  it('in an extended uniform field is the index of it, as ISO 9358 defines that', () => {
    expect(veiled(0, fieldMean(1, 1), 0.02)).toBeCloseTo(0.02, 12)
  })

  it('leaves a frame without light alone, and grows with the field', () => {
    expect(veilLift(deepBlack, 0)).toBe(0)
    expect(veilLift(deepBlack, 2)).toBeGreaterThan(veilLift(deepBlack, 1))
    expect(contrastLeft(1, 0.01, 1)).toBeLessThan(contrastLeft(1, 0.01, 0.5))
  })

  it('finds the field that lifts by so much', () => {
    for (const lift of [0.3, 1, 1.5, 3])
      expect(veilLift(deepBlack, meanForLift(deepBlack, lift))).toBeCloseTo(lift, 9)
  })
})

describe('what surrounds the frame', () => {
  it('counts less than the frame, the less the farther off, and not at all beyond 30 degrees', () => {
    expect(fieldMean(1, 0)).toBeGreaterThan(fieldMean(0, 1))
    expect(surroundWeight(0)).toBe(1)
    expect(surroundWeight(surroundReach / 2)).toBeCloseTo(0.5, 12)
    expect(surroundWeight(surroundReach * 1.01)).toBe(0)
  })
})
