/** Fronts that are not even: patterns and grids, by the quadrature and by adding up small pieces. */
import { describe, expect, it } from 'vitest'
import { beamExponent, beamSolidAngle } from '../../src/light/beam.js'
import { headAt } from '../../src/light/emission.js'
import { framePattern, headOfSolidAngle, headSolidAngle, ratedZoom } from '../../src/light/flash-head.js'
import { gridTransmission } from '../../src/light/grid.js'
import { guideNumberAt, guideNumberOf, intensityOfGuideNumber } from '../../src/light/guide-number.js'
import { onAxisResponse, response } from '../../src/light/response.js'
import type { Pattern } from '../../src/light/source.js'
import { unit } from '../../src/scene/vector.js'
import { degrees, metres } from '../../src/units/quantity.js'
import { addedUp, cosinePower, frontAt, plain, sequence, someReceptor } from './fronts.js'

const crate = (cutOff: number) => ({ kind: 'egg-crate', tanCutOff: Math.tan(degrees(cutOff)) }) as const
const comb = (halfPeak: number) => ({ kind: 'honeycomb', halfPeak: degrees(halfPeak) }) as const
const head = (zoom: number): Pattern => ({
  cosine: undefined,
  head: framePattern(metres(zoom / 1000)),
  grid: undefined,
})

describe('the integral over a front', () => {
  const fronts = {
    'small box, cos²': frontAt('rectangle', 0.4, 0.3, { pattern: cosinePower(2) }),
    'silver umbrella, cos²': frontAt('disc', 1.5, 1.5, { pattern: cosinePower(2) }),
    'octa, cos²': frontAt('octagon', 0.9, 0.9, { pattern: cosinePower(2) }),
    'reflector 60°': frontAt('disc', 0.18, 0.18, { pattern: cosinePower(beamExponent(degrees(60))) }),
    'narrow beam, cos²⁰': frontAt('disc', 0.5, 0.5, { pattern: cosinePower(20) }),
    'beauty dish, cos³': frontAt('ring', 0.55, 0.55, { pattern: cosinePower(3) }),
    'bare tube': frontAt('disc', 0.08, 0.08, { pattern: cosinePower(0) }),
    'head at 35 mm': frontAt('rectangle', 0.07, 0.04, { pattern: head(35) }),
    'head at 105 mm': frontAt('rectangle', 0.07, 0.04, { pattern: head(105) }),
    'gridded strip': frontAt('rectangle', 0.3, 1.2, { pattern: cosinePower(1, crate(40)) }),
    'gridded box 30°': frontAt('rectangle', 0.6, 0.9, { pattern: cosinePower(1, crate(30)) }),
    'gridded octa': frontAt('octagon', 0.9, 0.9, { pattern: cosinePower(1, crate(40)) }),
    'gridded umbrella': frontAt('disc', 1.2, 1.2, { pattern: cosinePower(2, crate(40)) }),
    'honeycomb 40°': frontAt('disc', 0.18, 0.18, { pattern: cosinePower(4.8, comb(40)) }),
    'honeycomb 20°': frontAt('disc', 0.18, 0.18, { pattern: cosinePower(4.8, comb(20)) }),
  }
  for (const [name, front] of Object.entries(fronts))
    it(`${name}: within 0.5 % from half the size up`, () => {
      const random = sequence(13)
      // A grid makes sharp edges, which pieces must be finer to find.
      const fine = front.pattern.grid === undefined ? 100 : 240
      for (let i = 0; i < 12; i++) {
        const [from, to] = i < 6 ? [0.5, 1.5] : [1.5, 12]
        const off = front.pattern.grid === undefined ? 1 : 0.5
        const receptor = someReceptor(random, front, from, to, i % 2 === 0 ? 'flat' : 'dome', off)
        const sum = addedUp(front, receptor, fine)
        const [x, y, z] = receptor.at
        const straight = 1 / (x * x + y * y + z * z)
        // Twelve stops under what the light gives straight ahead no longer matters.
        expect(Math.abs(response(front, receptor) - sum)).toBeLessThan(0.005 * sum + straight / 4096)
      }
    })

  it('gives even fronts what the exact formulas give', () => {
    // An exponent a hair over 1 sends an even front through the quadrature.
    const random = sequence(17)
    for (const [outline, w, h] of [
      ['rectangle', 0.6, 0.9],
      ['disc', 1, 1],
      ['octagon', 0.9, 0.9],
      ['ring', 0.55, 0.55],
    ] as const) {
      const even = frontAt(outline, w, h)
      const numeric = frontAt(outline, w, h, { pattern: cosinePower(1.0000001) })
      for (let i = 0; i < 20; i++) {
        const receptor = someReceptor(random, even, 0.5, 4, i % 2 === 0 ? 'flat' : 'dome')
        const exact = response(even, receptor)
        expect(Math.abs(response(numeric, receptor) - exact)).toBeLessThan(0.003 * exact + 1e-6)
      }
    }
  })

  it('is bounded in work and finite for a receptor that all but touches the front', () => {
    for (const front of Object.values(fronts))
      for (const z of [1e-3, 1e-7]) {
        const got = response(front, { at: [0.01, 0.02, z], normal: unit([0.3, 0, -1]), kind: 'flat' })
        expect(Number.isFinite(got)).toBe(true)
        expect(got).toBeGreaterThanOrEqual(0)
      }
  })

  it('follows the inverse square far away', () => {
    for (const front of Object.values(fronts))
      expect(onAxisResponse(front, metres(300)) * 300 ** 2).toBeCloseTo(1, 2)
  })
})

describe('grids', () => {
  it('an egg crate of 40° on a strip 30 × 120 cm costs more the nearer it is', () => {
    // Computed once by a separate program.
    const open = frontAt('rectangle', 0.3, 1.2)
    const gridded = frontAt('rectangle', 0.3, 1.2, { pattern: cosinePower(1, crate(40)) })
    for (const [distance, loss] of [
      [0.8, 0.86],
      [1.3, 0.53],
      [4, 0.17],
    ] as const) {
      const stops = Math.log2(
        onAxisResponse(open, metres(distance), 'flat') / onAxisResponse(gridded, metres(distance), 'flat'),
      )
      expect(stops).toBeCloseTo(loss, 2)
    }
  })

  it('take nothing straight ahead, half at half the half-peak angle, all beyond the cut-off', () => {
    expect(gridTransmission(crate(40), 0, 0)).toBe(1)
    expect(gridTransmission(crate(40), Math.tan(degrees(40)), 0)).toBe(0)
    expect(gridTransmission(crate(45), 0.5, 0.5)).toBeCloseTo(0.25, 12)
    expect(gridTransmission(comb(20), 0, 0)).toBe(1)
    expect(gridTransmission(comb(20), Math.tan(degrees(10)), 0)).toBeCloseTo(0.5, 9)
    expect(gridTransmission(comb(20), 0, 1)).toBe(0)
  })

  it('never give more than without, and never less off the axis than further off', () => {
    for (const grid of [crate(30), comb(20), comb(40)]) {
      let last = 1
      for (let angle = 0; angle < 80; angle++) {
        const passed = gridTransmission(grid, Math.tan(degrees(angle)), 0)
        expect(passed).toBeLessThanOrEqual(last)
        last = passed
      }
    }
  })
})

describe('a flash head', () => {
  const relative = (zoom: number, mmAcross: number, mmUp: number): number => {
    const front = frontAt('rectangle', 1e-5, 1e-5, { pattern: head(zoom) })
    const [x, y] = [mmAcross / zoom, mmUp / zoom]
    const span = Math.hypot(x, y, 1)
    return Math.log2(response(front, { at: [x, y, 1], normal: unit([-x, -y, -1]), kind: 'flat' }) * span ** 2)
  }

  it('falls half a stop at each edge of the frame of its zoom, one at the corner, and on beyond', () => {
    // Common practice, no source.
    for (const zoom of [24, 35, 50, 105]) {
      expect(relative(zoom, 0, 0)).toBeCloseTo(0, 6)
      expect(relative(zoom, 18, 0)).toBeCloseTo(-0.5, 6)
      expect(relative(zoom, 0, 12)).toBeCloseTo(-0.5, 6)
      expect(relative(zoom, 18, 12)).toBeCloseTo(-1, 6)
      expect(relative(zoom, 36, 24)).toBeCloseTo(-4, 6)
    }
  })

  it('has the flux of its pattern: over the sphere by angles', () => {
    for (const zoom of [24, 35, 105]) {
      const { tanAcross, tanUp } = framePattern(metres(zoom / 1000))
      let sum = 0
      const steps = 600
      for (let i = 0; i < steps; i++)
        for (let j = 0; j < steps; j++) {
          const off = ((i + 0.5) * Math.PI) / 2 / steps
          const round = ((j + 0.5) * 2 * Math.PI) / steps
          const tx = Math.tan(off) * Math.cos(round)
          const ty = Math.tan(off) * Math.sin(round)
          sum += 2 ** (-0.5 * ((tx / tanAcross) ** 2 + (ty / tanUp) ** 2)) * Math.sin(off)
        }
      expect(headSolidAngle({ tanAcross, tanUp })).toBeCloseTo((sum * Math.PI ** 2) / steps ** 2, 4)
    }
  })

  it('carries its flux to every zoom; a long one loses half a stop at the most', () => {
    const table = [{ metres: 36, zoom: ratedZoom }]
    const flux = (zoom: number): number => {
      const at = metres(zoom / 1000)
      return intensityOfGuideNumber(guideNumberAt(table, at).metres) * headSolidAngle(headAt(table, at))
    }
    for (const zoom of [14, 20, 24, 28, 34.9]) expect(Math.log2(flux(zoom) / flux(35))).toBeCloseTo(0, 5)
    for (const zoom of [35.1, 50, 70, 85, 105, 200]) {
      expect(Math.log2(flux(zoom) / flux(35))).toBeLessThan(1e-6)
      expect(Math.log2(flux(zoom) / flux(35))).toBeGreaterThan(-0.500001)
    }
  })

  it('throws no less wide for a shorter zoom', () => {
    const table = [{ metres: 36, zoom: ratedZoom }]
    let last = Number.POSITIVE_INFINITY
    for (let zoom = 14; zoom <= 105; zoom++) {
      const { tanAcross } = headAt(table, metres(zoom / 1000))
      expect(tanAcross).toBeLessThanOrEqual(last + 1e-9)
      last = tanAcross
    }
  })

  it('finds the pattern for a flux', () => {
    for (const wanted of [0.2, 1, 3])
      expect(headSolidAngle(headOfSolidAngle(ratedZoom, wanted))).toBeCloseTo(wanted, 6)
  })

  it('keeps guide numbers as tabled, goes between them in steps of equal ratio, and says when it converts', () => {
    const table = [
      { metres: 30, zoom: metres(0.024) },
      { metres: 60, zoom: metres(0.096) },
    ]
    expect(guideNumberAt(table, metres(0.024))).toEqual({ metres: 30, converted: false })
    expect(guideNumberAt(table, metres(0.048)).metres).toBeCloseTo(30 * Math.SQRT2, 9)
    expect(guideNumberAt(table, metres(0.048)).converted).toBe(false)
    expect(guideNumberAt(table, metres(0.02)).converted).toBe(true)
    const one = [{ metres: 36, zoom: ratedZoom }]
    // From memory: ^0.65 below 35 mm, ^0.45 from there to 105, flat above.
    expect(guideNumberAt(one, metres(0.0175)).metres).toBeCloseTo(36 * 0.6373, 2)
    expect(guideNumberAt(one, metres(0.07)).metres).toBeCloseTo(36 * 1.366, 2)
    expect(guideNumberAt(one, metres(0.2)).metres).toBe(guideNumberAt(one, metres(0.105)).metres)
    expect(guideNumberOf(intensityOfGuideNumber(36))).toBeCloseTo(36, 12)
  })
})

describe('beams', () => {
  it('give half at half their angle and carry the flux of their integral', () => {
    for (const angle of [20, 60, 120]) {
      const n = beamExponent(degrees(angle))
      expect(Math.cos(degrees(angle / 2)) ** n).toBeCloseTo(0.5, 12)
      let sum = 0
      for (let i = 0; i < 20000; i++) {
        const off = ((i + 0.5) * Math.PI) / 2 / 20000
        sum += (Math.cos(off) ** n * Math.sin(off) * Math.PI) / 2 / 20000
      }
      expect(beamSolidAngle(n)).toBeCloseTo(2 * Math.PI * sum, 6)
    }
  })

  it('of 120° is an even front', () => {
    const beam = frontAt('rectangle', 0.3, 0.3, { pattern: cosinePower(beamExponent(degrees(120))) })
    const even = frontAt('rectangle', 0.3, 0.3, { pattern: plain })
    expect(onAxisResponse(beam, metres(0.4)) / onAxisResponse(even, metres(0.4))).toBeCloseTo(1, 3)
  })
})
