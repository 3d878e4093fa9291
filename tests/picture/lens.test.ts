/** The lens against a thin lens traced by its rays, and against figures computed once elsewhere. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  airyDisc,
  angleOfView,
  apertureForDepth,
  blurCircle,
  circleDivisor,
  circleOfConfusion,
  closeUpLoss,
  depthOfField,
  fieldAt,
  hyperfocal,
  magnification,
} from '../../src/picture/lens.js'
import type { FNumber, Metres } from '../../src/units/quantity.js'

const m = (value: number) => value as Metres
const fullFrame = { width: m(0.036), height: m(0.024) }

/** Rays from a point at `at` through both edges of the pupil, to the sensor's plane: where they land apart. */
const tracedBlur = (lens: number, aperture: number, focus: number, at: number): number => {
  const sensor = 1 / (1 / lens - 1 / focus)
  const image = 1 / (1 / lens - 1 / at)
  const pupil = lens / aperture
  const landing = (edge: number) => edge + ((0 - edge) * sensor) / image
  return Math.abs(landing(pupil / 2) - landing(-pupil / 2))
}

const lenses = fc.record({
  lens: fc.double({ min: 0.014, max: 0.2, noNaN: true }),
  aperture: fc.double({ min: 1.2, max: 32, noNaN: true }),
  focus: fc.double({ min: 0.5, max: 20, noNaN: true }),
})

describe('depth of field', () => {
  it('ends where traced rays spread over the circle of confusion', () => {
    const circle = circleOfConfusion(fullFrame)
    fc.assert(
      fc.property(lenses, ({ lens, aperture, focus }) => {
        const { near, far } = depthOfField(m(lens), aperture as FNumber, m(focus), circle)
        expect(tracedBlur(lens, aperture, focus, near) / circle).toBeCloseTo(1, 8)
        if (far < 1e6) expect(tracedBlur(lens, aperture, focus, far) / circle).toBeCloseTo(1, 6)
        else expect(tracedBlur(lens, aperture, focus, 1e9)).toBeLessThanOrEqual(circle * 1.0001)
      }),
    )
  })

  it('blur follows the traced rays', () => {
    fc.assert(
      fc.property(lenses, fc.double({ min: 0.3, max: 50, noNaN: true }), ({ lens, aperture, focus }, at) => {
        expect(blurCircle(m(lens), aperture as FNumber, m(focus), m(at))).toBeCloseTo(
          tracedBlur(lens, aperture, focus, at),
          10,
        )
      }),
    )
  })

  it('gives 208 mm at 85 mm, 2.2 m, f/5.6 and 138 mm at 105 mm, 1.6 m, f/11', () => {
    // Computed once by a separate prototype that took the marks literally; derived, no source.
    const circle = circleOfConfusion(fullFrame)
    const depth = (lens: number, at: number, mark: number) => {
      const { near, far } = depthOfField(m(lens), mark as FNumber, m(at), circle)
      return 1000 * (far - near)
    }
    expect(Math.abs(depth(0.085, 2.2, 5.6) - 208)).toBeLessThan(1)
    expect(Math.abs(depth(0.105, 1.6, 11) - 138)).toBeLessThan(1)
  })

  it('is halved, roughly, for catalogue work', () => {
    expect(circleOfConfusion(fullFrame) / circleOfConfusion(fullFrame, circleDivisor.catalogue)).toBeCloseTo(
      2,
    )
  })

  it('reaches from half the hyperfocal distance to infinity', () => {
    const circle = circleOfConfusion(fullFrame)
    fc.assert(
      fc.property(lenses, ({ lens, aperture }) => {
        const at = hyperfocal(m(lens), aperture as FNumber, circle)
        const { near, far } = depthOfField(m(lens), aperture as FNumber, m(at * (1 + 1e-9)), circle)
        expect(near / at).toBeCloseTo(0.5, 6)
        expect(far).toBe(Number.POSITIVE_INFINITY)
      }),
    )
  })

  it('the aperture for a depth is the one whose depth just holds it', () => {
    const circle = circleOfConfusion(fullFrame)
    fc.assert(
      fc.property(lenses, ({ lens, aperture, focus }) => {
        const { near, far } = depthOfField(m(lens), aperture as FNumber, m(focus), circle)
        if (far > 1e4) return
        expect(apertureForDepth(m(lens), m(focus), near, far, circle)).toBeCloseTo(aperture, 6)
      }),
    )
  })
})

describe('view and close-up', () => {
  it('the field at a distance is what the angle of view spans there, but for the focusing extension', () => {
    // At 100 m the extension of an 85 mm lens is under a thousandth.
    const across = 2 * 100 * Math.tan(angleOfView(m(0.085), m(0.036)) / 2)
    expect(fieldAt(m(0.085), m(0.036), m(100)) / across).toBeCloseTo(1, 2)
  })

  it('costs a quarter stop at m 0.09, 1.17 at a half, two at life size', () => {
    // Computed once by a separate prototype; two stops at 1:1 is common knowledge, no source.
    expect([0.09, 0.5, 1].map((at) => Number(closeUpLoss(at).toFixed(2)))).toEqual([0.25, 1.17, 2])
  })

  it('has no image inside the focal length', () => {
    expect(magnification(m(0.1), m(0.1))).toBe(Number.POSITIVE_INFINITY)
  })

  it('the Airy disc grows by the bellows factor', () => {
    expect(airyDisc(8 as FNumber, 1)).toBeCloseTo(2 * airyDisc(8 as FNumber), 15)
  })
})
