/** What is written reads back as what it was, to the precision that it is written to. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readAngle, readSidedAngle, writeAngle } from '../../src/units/angle.js'
import { readAperture } from '../../src/units/aperture.js'
import {
  type LengthStyle,
  lengthStyle,
  readLength,
  roundForTape,
  writeLength,
} from '../../src/units/length.js'
import { exactFNumber, markedFNumbers, writeFNumber } from '../../src/units/marks.js'
import type { Parsed } from '../../src/units/parsed.js'
import { type PowerNotation, readPower, snapToStep, writePower } from '../../src/units/power.js'
import { as, degrees, fNumber, metres, powerShare, seconds, stops } from '../../src/units/quantity.js'
import { readRatio, writeRatio } from '../../src/units/ratio.js'
import { readShutter, writeShutter } from '../../src/units/shutter.js'
import { readSize, writeSize } from '../../src/units/size.js'
import { readStops, writeStops } from '../../src/units/stops.js'

const value = <T>(result: Parsed<T>): T => {
  if (!result.ok) throw new Error(result.says)
  return result.value
}

const double = (min: number, max: number) => fc.double({ min, max, noNaN: true })

describe('lengths', () => {
  const styles: readonly (readonly [LengthStyle, number])[] = [
    ['metric', 0.0006],
    ['m', 0.0006],
    ['cm', 0.0006],
    ['mm', 0.0006],
    ['feet', 0.0013],
    ['primes', 0.0013],
    ['in', 0.0013],
  ]
  it.each(styles)('%s reads back within %d m', (style, within) => {
    fc.assert(
      fc.property(double(0, 999), (length) => {
        const text = writeLength(metres(length), style)
        expect(Math.abs(value(readLength(text)) - length), text).toBeLessThanOrEqual(within)
      }),
    )
  })

  it('keeps the style that the author writes in', () => {
    for (const [text, style] of [
      ['2.4 m', 'm'],
      ['240 cm', 'cm'],
      ['900 mm', 'mm'],
      ['6 ft 6 in', 'feet'],
      [`6'6"`, 'primes'],
      ['30 in', 'in'],
    ] as const) {
      expect(lengthStyle(text)).toBe(style)
      expect(writeLength(value(readLength(text)), style)).toBe(text)
    }
    expect(lengthStyle('f/8')).toBeUndefined()
  })

  it('writes what people write', () => {
    expect(writeLength(metres(2.4))).toBe('2.4 m')
    expect(writeLength(metres(0.6))).toBe('60 cm')
    expect(writeLength(metres(0.9999))).toBe('1 m')
    expect(writeLength(metres(1.8288), 'feet')).toBe('6 ft')
    expect(writeLength(metres(1.8287), 'feet')).toBe('6 ft')
    expect(writeLength(metres(0.127), 'feet')).toBe('5 in')
    expect(writeLength(metres(0.127), 'primes')).toBe(`0'5"`)
  })

  it('rounds to 5 cm or 2 in for the tape, either way or to the nearest', () => {
    expect(roundForTape(metres(2.43), 'm')).toBeCloseTo(2.45, 12)
    expect(roundForTape(metres(2.42), 'm')).toBeCloseTo(2.4, 12)
    expect(roundForTape(metres(2.42), 'm', 'more')).toBeCloseTo(2.45, 12)
    expect(roundForTape(metres(2.43), 'm', 'less')).toBeCloseTo(2.4, 12)
    expect(roundForTape(metres(2.45), 'm', 'less')).toBeCloseTo(2.45, 12)
    expect(roundForTape(metres(2.45), 'm', 'more')).toBeCloseTo(2.45, 12)
    expect(writeLength(roundForTape(metres(2), 'feet'), 'feet')).toBe('6 ft 6 in')
  })
})

describe('f-numbers', () => {
  it('are written as meters show them', () => {
    expect(writeFNumber(fNumber(2 ** 2.5))).toBe('f/5.6')
    expect(writeFNumber(fNumber(8))).toBe('f/8')
    // A third of a stop under f/5.6, and two tenths over that: Av 4.6667 + 0.2.
    expect(writeFNumber(fNumber(2 ** (14 / 6)))).toBe('f/5.0')
    expect(writeFNumber(fNumber(2 ** ((14 / 3 + 0.2) / 2)))).toBe('f/5.0 + 0.2')
    expect(writeFNumber(fNumber(0.1))).toBe('f/0.1')
  })

  it('read back within a twentieth of a stop', () => {
    fc.assert(
      fc.property(double(-2, 14), (av) => {
        const text = writeFNumber(fNumber(2 ** (av / 2)))
        expect(Math.abs(2 * Math.log2(value(readAperture(text))) - av), text).toBeLessThanOrEqual(0.0501)
      }),
    )
  })

  it('written marks are the marks', () => {
    for (const mark of markedFNumbers('third'))
      expect(writeFNumber(exactFNumber(mark))).toBe(`f/${mark === 5 ? '5.0' : mark}`)
  })
})

describe('shutter times', () => {
  it('read back as they were marked', () => {
    for (const text of ['1/125', '1/160', '1/8000', '1/4', '0.5 s', '0.3 s', '1 s', '1.3 s', '2 s', '30 s'])
      expect(writeShutter(value(readShutter(text)).marked)).toBe(text)
  })
  it('read back within a hundredth', () => {
    fc.assert(
      fc.property(double(-13, 5), (tv) => {
        const time = 2 ** tv
        expect(value(readShutter(writeShutter(seconds(time)))).marked / time).toBeCloseTo(1, 1.9)
      }),
    )
  })
})

describe('power', () => {
  const steps = [1, 1 / 2, 1 / 3, 1 / 10]

  it.each(steps)('in steps of %d stop reads back, snapped, as the same step', (step) => {
    for (let n = 0; n >= -8 / step - 1e-9; n -= 1) {
      const share = powerShare(2 ** (n * step))
      const text = writePower(share, stops(step))
      const read = value(readPower(text))
      if (read.kind !== 'share') throw new Error(text)
      expect(Math.log2(snapToStep(read.share, stops(step))), text).toBeCloseTo(n * step, 9)
    }
  })

  it('is written as the trade writes it', () => {
    const third = stops(1 / 3)
    expect(writePower(powerShare(1), third)).toBe('full')
    expect(writePower(powerShare(0.25), third)).toBe('1/4')
    expect(writePower(powerShare(2 ** (-3 + 1 / 3)), third)).toBe('1/8 + 0.3')
    expect(writePower(powerShare(2 ** (-3 + 2 / 3)), third)).toBe('1/8 + 0.7')
    expect(writePower(powerShare(2 ** -2.4), stops(0.1))).toBe('1/8 + 0.6')
    expect(writePower(powerShare(2 ** (1 / 3)), third)).toBe('full + 0.3')
  })

  it("keeps the author's notation", () => {
    const half = powerShare(0.5)
    const as100: PowerNotation = { as: 'percent' }
    expect(writePower(half, stops(1), as100)).toBe('50 %')
    expect(writePower(half, stops(0.1), { as: 'energy', full: as(500) })).toBe('250 Ws')
    expect(writePower(half, stops(0.1), { as: 'dial', top: 10 })).toBe('dial 9.0')
    expect(writePower(powerShare(2 ** -0.3), stops(0.1), { as: 'dial', top: 10 })).toBe('dial 9.7')
  })

  it('0.3 and 0.7 mean thirds on a unit that steps in thirds, tenths on one that steps in tenths', () => {
    const read = value(readPower('1/4 + 0.3'))
    if (read.kind !== 'share') throw new Error('no share')
    expect(Math.log2(snapToStep(read.share, stops(1 / 3)))).toBeCloseTo(-2 + 1 / 3, 12)
    expect(Math.log2(snapToStep(read.share, stops(1 / 10)))).toBeCloseTo(-1.7, 12)
    expect(snapToStep(read.share, stops(0))).toBe(read.share)
    // Half a stop is no step of thirds: it stays, for a rule to tell.
    expect(snapToStep(powerShare(2 ** -1.5), stops(1 / 3))).toBe(2 ** -1.5)
  })
})

describe('stops', () => {
  it('read back to a third or a twentieth', () => {
    fc.assert(
      fc.property(double(-12, 12), (size) => {
        for (const sign of ['always', 'negative'] as const)
          expect(Math.abs(value(readStops(writeStops(stops(size), sign))) - size)).toBeLessThanOrEqual(0.0501)
      }),
    )
  })
  it('are written as the trade writes them', () => {
    expect(writeStops(stops(1))).toBe('1 stop')
    expect(writeStops(stops(1), 'always')).toBe('+1 stop')
    expect(writeStops(stops(2 / 3))).toBe('2/3 stop')
    expect(writeStops(stops(4 / 3))).toBe('1 1/3 stops')
    expect(writeStops(stops(-1.5))).toBe('-1.5 stops')
    expect(writeStops(stops(-0.4))).toBe('-0.4 stop')
    expect(writeStops(stops(0), 'always')).toBe('0 stops')
    expect(writeStops(stops(-0.001))).toBe('0 stops')
    expect(writeStops(stops(0.96))).toBe('1 stop')
    expect(writeStops(stops(1.04))).toBe('1 stop')
  })
})

it('sizes, angles and ratios read back', () => {
  fc.assert(
    fc.property(double(0.01, 20), double(0.01, 20), (width, height) => {
      for (const style of ['cm', 'm', 'metric', 'feet', 'primes', 'in'] as const) {
        const read = value(readSize(writeSize({ width: metres(width), height: metres(height) }, style)))
        expect(Math.abs(read.width - width) + Math.abs(read.height - height)).toBeLessThan(0.003)
      }
    }),
  )
  expect(writeSize({ width: metres(0.6), height: metres(0.9) })).toBe('60 x 90 cm')
  fc.assert(
    fc.property(double(0.1, 179), (size) => {
      const angle = degrees(size)
      expect(value(readAngle(writeAngle(angle)))).toBeCloseTo(angle, 2)
      expect(value(readSidedAngle(writeAngle(angle, 'left'))).side).toBe('left')
    }),
  )
  fc.assert(
    fc.property(double(0.002, 900), (ratio) => {
      expect(value(readRatio(writeRatio(ratio))) / ratio).toBeCloseTo(1, 2)
    }),
  )
})
