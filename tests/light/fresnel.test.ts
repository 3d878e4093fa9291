import { describe, expect, it } from 'vitest'
import { mirroredShare } from '../../src/light/fresnel.js'

const at = (degrees: number): number => mirroredShare(Math.cos((degrees * Math.PI) / 180))

describe('what glass mirrors', () => {
  it('straight on ((n − 1)/(n + 1))², 4 % of glass; all of it at grazing', () => {
    expect(at(0)).toBeCloseTo(0.04, 12)
    expect(at(90)).toBeCloseTo(1, 12)
  })

  it('at Brewster’s angle, atan 1.5, half of what the other polarisation mirrors, ((n² − 1)/(n² + 1))²', () => {
    const brewster = (Math.atan(1.5) * 180) / Math.PI
    expect(at(brewster)).toBeCloseTo((1.25 / 3.25) ** 2 / 2, 12)
  })

  it('Schlick’s approximation within two hundredths up to 75 degrees', () => {
    // Schlick, "An inexpensive BRDF model for physically-based rendering" (1994); from memory.
    for (let angle = 0; angle <= 75; angle += 5) {
      const schlick = 0.04 + 0.96 * (1 - Math.cos((angle * Math.PI) / 180)) ** 5
      expect(Math.abs(at(angle) - schlick)).toBeLessThan(0.02)
    }
  })
})
