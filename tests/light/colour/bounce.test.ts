/** Light that takes on the walls' colour: the integrating sphere's series channel by channel. */
import { describe, expect, it } from 'vitest'
import type { Surface } from '../../../src/language/plan.js'
import { firstLight } from '../../../src/light/bounce/first-light.js'
import { type Mesh, meshOf } from '../../../src/light/bounce/mesh.js'
import { radiosity } from '../../../src/light/bounce/radiosity.js'
import { transferOf } from '../../../src/light/bounce/transfer.js'
import { luminanceOfRgb } from '../../../src/light/colour/rgb.js'
import { isColoured, surfaceShares } from '../../../src/light/colour/surface-colour.js'
import { alike, box, matte } from '../bounce/rooms.js'
import { frontAt } from '../fronts.js'

const flux = (mesh: Mesh, by: Float64Array): number =>
  by.reduce((sum, one, side) => sum + one * mesh.patches[side >> 1]!.area, 0)

const walls = (reflectance: number, colour: Surface['colour']) =>
  box(4, 5, 2.7, alike(reflectance)).map((one) => ({ ...one, front: { ...matte(reflectance), colour } }))

describe('a closed room of one colour', () => {
  const lamp = frontAt('disc', 0.3, 0.3, { centre: [1, 2, 1.6], normal: [0.3, 1, -0.2] })

  it.each([
    [0.4, [0.8, 0.6, 0.3]],
    [0.65, [0.85, 0.82, 0.74]],
    [0.13, [0.8, 0.15, 0.17]],
  ] as const)('of reflectance %d gives ρ/(1 − ρ) of the first flux again in each channel', (rho, colour) => {
    const surfaces = walls(rho, colour)
    const mesh = meshOf(surfaces, [[1, 2, 1.6]])
    const transfer = transferOf(mesh, [])
    const first = firstLight(mesh, lamp, [])
    const shares = surfaceShares(surfaces[0]!.front)
    expect(luminanceOfRgb(shares)).toBeCloseTo(rho, 9)
    shares.forEach((share, channel) => {
      const out = radiosity(mesh, transfer, first, (surface) => surfaceShares(surface)[channel]!)
      const again = flux(mesh, out) / flux(mesh, first) / (share / (1 - share))
      expect(Math.abs(Math.log2(again))).toBeLessThan(0.01)
    })
  })

  it('that is grey gives in each channel what it gives in all', () => {
    const surfaces = walls(0.5, [0.5, 0.5, 0.5])
    const mesh = meshOf(surfaces, [[1, 2, 1.6]])
    const transfer = transferOf(mesh, [])
    const first = firstLight(mesh, lamp, [])
    const plain = radiosity(mesh, transfer, first)
    const channel = radiosity(mesh, transfer, first, (surface) => surfaceShares(surface)[2])
    expect(flux(mesh, channel)).toBeCloseTo(flux(mesh, plain), 6)
    expect(isColoured(surfaces[0]!.front)).toBe(false)
  })
})
