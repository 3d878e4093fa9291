/** The dark band against curtains moved line by line; margins as the dial counts them. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  closedBefore,
  darkBand,
  fasterThanSync,
  readoutBand,
  triggerMargin,
  underSync,
} from '../../src/picture/shutter.js'
import type { Seconds } from '../../src/units/quantity.js'
import { makePlan } from '../helpers/make-plan.js'

const camera = (shutterMarked: number, more: object = {}) =>
  makePlan({ camera: { shutterMarked, shutter: shutterMarked, sync: 1 / 200, ...more } }).camera

/** Line y (0 to 1) opens at y·T and closes t later; the flash fires as the last line opens, and `delay` after. */
const openLines = (exposure: number, travel: number, delay: number): number => {
  const lines = 20_000
  let open = 0
  for (let line = 0; line < lines; line++) {
    const opens = ((line + 0.5) / lines) * travel
    const flash = travel + delay
    if (opens <= flash && flash <= opens + exposure) open++
  }
  return open / lines
}

describe('dark band', () => {
  it('is what curtains of constant speed leave covered', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1 / 8000, max: 1 / 201, noNaN: true }),
        fc.double({ min: 0.002, max: 0.005, noNaN: true }),
        fc.double({ min: 0, max: 0.001, noNaN: true }),
        (exposure, curtain, delay) => {
          const band = darkBand(camera(exposure, { curtain }), delay as Seconds)!
          expect(band.open.least).toBeCloseTo(openLines(exposure, curtain, delay), 3)
          expect(band.open.most).toBeCloseTo(openLines(exposure, curtain, 0), 3)
          expect(band.dark.most + band.open.least).toBeCloseTo(1, 12)
        },
      ),
      { numRuns: 40, seed: 1 },
    )
  })

  it('at 1/400 on a body that syncs at 1/200 covers up to half, and a third with the quicker curtain', () => {
    // By hand: 2.5 ms of a travel between 0.7 × 5 = 3.5 ms and 5 ms.
    const band = darkBand(camera(1 / 400))!
    expect(band.dark.most).toBeCloseTo(0.5, 12)
    expect(band.dark.least).toBeCloseTo(1 - 2.5 / 3.5, 12)
  })

  it('is none at sync, slower, or without a focal-plane shutter', () => {
    expect(darkBand(camera(1 / 200))).toBeUndefined()
    expect(darkBand(camera(1 / 125))).toBeUndefined()
    expect(darkBand(camera(1 / 1000, { shutterKind: 'leaf' }))).toBeUndefined()
    // 0.005 and 1/200 are one mark.
    expect(fasterThanSync(camera(0.005 * (1 - 1e-12)))).toBe(false)
  })
})

/** Line y opens at y·R for t. Lines that a flash reaches which starts at some moment and lasts; and lasts no time. */
const readLines = (exposure: number, readout: number, flash: number, fires: number): number => {
  const lines = 5_000
  let some = 0
  for (let line = 0; line < lines; line++) {
    const opens = ((line + 0.5) / lines) * readout
    if (opens <= fires + flash && opens + exposure >= fires) some++
  }
  return some / lines
}

describe('what closes before a share of the flash is out', () => {
  it('is what curtains leave that are run line by line', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1 / 8000, max: 1 / 60, noNaN: true }),
        fc.double({ min: 0.002, max: 0.005, noNaN: true }),
        fc.double({ min: 0, max: 0.004, noNaN: true }),
        fc.double({ min: 0, max: 0.002, noNaN: true }),
        (exposure, travel, until, delay) => {
          const lines = 20_000
          let closed = 0
          for (let line = 0; line < lines; line++) {
            const closes = ((line + 0.5) / lines) * travel + exposure
            if (closes < travel + delay + until) closed++
          }
          const run = { least: travel as Seconds, most: travel as Seconds }
          const share = closedBefore(camera(exposure), run, delay as Seconds, until as Seconds)
          expect(share).toBeCloseTo(closed / lines, 3)
        },
      ),
      { numRuns: 40, seed: 3 },
    )
  })
})

describe('a sensor read line by line', () => {
  const electronic = (exposure: number, readout?: number) =>
    camera(exposure, { shutterKind: 'electronic', readout })

  it('leaves dark the lines that are not open at the flash', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1 / 2000, max: 1 / 31, noNaN: true }),
        fc.double({ min: 1 / 120, max: 1 / 15, noNaN: true }),
        fc.double({ min: 1 / 10_000, max: 1 / 250, noNaN: true }),
        (exposure, readout, flash) => {
          const delay = flash / 3
          const band = readoutBand(electronic(exposure, readout), flash as Seconds, delay as Seconds)
          // At best by a flash at any moment of the readout; at least by its start, as the last line opens and a delay after.
          const best = Math.max(
            ...Array.from({ length: 60 }, (_, i) => readLines(exposure, readout, flash, (i / 59) * readout)),
          )
          expect(Math.abs((band?.open.most ?? 1) - best)).toBeLessThan(0.02)
          expect(band?.open.least ?? 1).toBeCloseTo(readLines(exposure, readout, 0, readout + delay), 2)
        },
      ),
      { numRuns: 40, seed: 2 },
    )
  })

  it('is reached by 0.9 of 1/60 where 5 ms meet a flash of 10 ms', () => {
    const band = readoutBand(electronic(1 / 200, 1 / 60), 0.01 as Seconds)!
    expect(band.open.most).toBeCloseTo(0.9, 9)
    expect(band.open.least).toBeCloseTo(0.3, 9)
  })

  it('none where it is read all at once, or open longer than it is read', () => {
    expect(readoutBand(electronic(1 / 2000, 0), 0.001 as Seconds)).toBeUndefined()
    expect(readoutBand(electronic(1 / 25, 1 / 30), 0.001 as Seconds)).toBeUndefined()
    expect(readoutBand(electronic(1 / 30, 1 / 30), 0.001 as Seconds)).toBeDefined()
    expect(readoutBand(camera(1 / 2000), 0.001 as Seconds)).toBeUndefined()
  })

  it('a range where the camera does not say how fast it is', () => {
    const band = readoutBand(electronic(1 / 30), 0 as Seconds)!
    expect(band.dark.most).toBeCloseTo(0.5, 12)
    expect(band.dark.least).toBe(0)
  })
})

describe('margin under sync', () => {
  it('counts the thirds of the dial, not the ratio of the marks', () => {
    const thirds = (mark: number) => Math.round(3 * underSync(camera(mark)))
    expect([1 / 200, 1 / 160, 1 / 125, 1 / 100, 1 / 250].map(thirds)).toEqual([0, 1, 2, 3, -1])
    // 1/180 is a half-stop mark between them; 1/60 and 1/30 keep whole stops.
    expect(thirds(1 / 60)).toBe(5)
  })

  it('is enough for a radio at 1/160, for a basic radio at 1/125, for optical groups at 1/100', () => {
    // Common practice, no source.
    const enough = (mark: number, by: keyof typeof triggerMargin) =>
      underSync(camera(mark)) >= triggerMargin[by]
    expect([enough(1 / 200, 'cable'), enough(1 / 160, 'radio'), enough(1 / 200, 'radio')]).toEqual([
      true,
      true,
      false,
    ])
    expect([enough(1 / 125, 'basic radio'), enough(1 / 160, 'basic radio')]).toEqual([true, false])
    expect([enough(1 / 100, 'optical groups'), enough(1 / 125, 'optical groups')]).toEqual([true, false])
  })
})
