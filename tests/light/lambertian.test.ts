/** Fronts of even luminance: exact formulas against adding up, limits and laws. */
import { describe, expect, it } from 'vitest'
import { discIrradiance, discSolidAngle } from '../../src/light/disc.js'
import { outlineOf } from '../../src/light/outline.js'
import { contourIrradiance, polygonSolidAngle } from '../../src/light/polygon.js'
import type { Receptor } from '../../src/light/receptor.js'
import { onAxisResponse, response } from '../../src/light/response.js'
import { unit, type Vec3 } from '../../src/scene/vector.js'
import { degrees, metres } from '../../src/units/quantity.js'
import { addedUp, frontAt, polygonArea, sequence, someReceptor } from './fronts.js'

const fronts = {
  'softbox 60 x 90 cm': frontAt('rectangle', 0.6, 0.9),
  'strip 30 x 120 cm': frontAt('rectangle', 0.3, 1.2, { centre: [1, -1, 2], normal: [-1, 1, -0.5] }),
  'umbrella 1 m': frontAt('disc', 1, 1, { centre: [0, -2, 2], normal: [0.2, 1, -0.3] }),
  'octa 90 cm': frontAt('octagon', 0.9, 0.9, { normal: [1, 0, 0] }),
  'dish 55 cm': frontAt('ring', 0.55, 0.55),
  'oval 1 x 0.6 m': frontAt('disc', 1, 0.6),
}

describe('an even front', () => {
  for (const [name, front] of Object.entries(fronts))
    for (const kind of ['flat', 'dome'] as const)
      it(`${name} on a ${kind} receptor is what its pieces add up to, also cut by the horizon`, () => {
        const random = sequence(7)
        for (let i = 0; i < 12; i++) {
          const receptor = someReceptor(random, front, 0.4, 3, kind)
          const sum = addedUp(front, receptor, 200)
          // The pieces' own error is some parts in ten thousand near the horizon.
          expect(Math.abs(response(front, receptor) - sum)).toBeLessThan(
            0.001 * sum + 1e-5 * onAxisResponse(front, metres(2)),
          )
        }
      })

  it('a dome lying on a surface does not see under it', () => {
    const front = fronts['softbox 60 x 90 cm']
    const normal = unit([1, 0, -0.1])
    const lying: Receptor = { at: [0.1, 0, 0.5], normal, kind: 'dome', onSurface: true }
    const raised: Receptor = { at: [0.1, 0, 0.5], normal, kind: 'dome' }
    // The weight jumps at the surface, so pieces that it cuts are coarse.
    expect(response(front, lying) / addedUp(front, lying, 1500)).toBeCloseTo(1, 3)
    expect(response(front, lying)).toBeLessThan(response(front, raised))
  })

  it('follows the inverse square far away, whatever its shape', () => {
    for (const front of Object.values(fronts))
      for (const kind of ['flat', 'dome'] as const)
        expect(onAxisResponse(front, metres(200), kind) * 200 ** 2).toBeCloseTo(1, 4)
  })

  it('has its closed forms on the axis: disc R²/(R² + d²), rectangle by the two arctangents', () => {
    // Standard configuration factors, as the check values geo.disc and geo.rect have them, checked by double integration.
    const disc = frontAt('disc', 1.2, 1.2)
    for (const d of [0.05, 0.3, 0.6, 1, 4]) {
      const factor = 0.6 ** 2 / (0.6 ** 2 + d ** 2)
      expect((onAxisResponse(disc, metres(d), 'flat') * disc.area) / Math.PI / factor).toBeCloseTo(1, 9)
    }
    const box = fronts['softbox 60 x 90 cm']
    for (const d of [0.05, 0.5, 1, 3]) {
      const [a, b] = [0.3 / d, 0.45 / d]
      const factor =
        (2 / Math.PI) *
        ((a / Math.hypot(1, a)) * Math.atan(b / Math.hypot(1, a)) +
          (b / Math.hypot(1, b)) * Math.atan(a / Math.hypot(1, b)))
      expect((onAxisResponse(box, metres(d), 'flat') * box.area) / Math.PI / factor).toBeCloseTo(1, 9)
    }
  })

  it('falls off slower than the inverse square close by, by what its size says', () => {
    const gain = Math.log2(onAxisResponse(fronts['umbrella 1 m'], metres(0.5), 'flat') * 0.5 ** 2)
    expect(gain).toBeCloseTo(-1, 9) // a disc at half its diameter: half, by 1 + 1/(4k²) at k = ½
  })

  it('gives nothing behind it, in its plane, or to a receptor that looks away', () => {
    const front = fronts['softbox 60 x 90 cm']
    for (const kind of ['flat', 'dome'] as const) {
      expect(response(front, { at: [0, 0, -1], normal: [0, 0, 1], kind })).toBe(0)
      for (const at of [
        [0, 0, 0],
        [0.3, 0.45, 0],
        [0.3, 0, 0],
        [5, 0, 0],
      ] as const)
        expect(response(front, { at, normal: [0, 0, -1], kind })).toBe(0)
    }
    expect(response(front, { at: [0, 0, 1], normal: [0, 0, 1], kind: 'flat' })).toBe(0)
  })

  it('stays finite a hair before its face, its edge and its corner, and covers the half-space there', () => {
    for (const front of [fronts['softbox 60 x 90 cm'], fronts['dish 55 cm'], fronts['umbrella 1 m']])
      for (const d of [1e-3, 1e-6, 1e-8])
        for (const [u, v] of [
          [0.2, 0.1],
          [0.3, 0],
          [0.3, 0.45],
          [0, 0],
          [0.275, 0],
          [0.5, 0],
        ] as const)
          for (const kind of ['flat', 'dome'] as const) {
            const { centre, across, up, normal } = front.face
            const at = [0, 1, 2].map((i) => centre[i]! + u * across[i]! + v * up[i]! + d * normal[i]!)
            const back = normal.map((one) => -one)
            const got =
              response(front, { at: at as never as Vec3, normal: back as never as Vec3, kind }) * front.area
            expect(got).toBeGreaterThanOrEqual(-1e-12)
            expect(got).toBeLessThan((kind === 'flat' ? Math.PI : 1.5 * Math.PI) * 1.0001)
            // Inside the rim a flat receptor that touches the front sees nothing else.
            if (u === 0.2 && kind === 'flat') expect(got).toBeCloseTo(Math.PI, 1)
          }
  })

  it('gives the same backwards where it gives light both ways, and only there', () => {
    const umbrella = frontAt('disc', 1, 1, { both: true })
    const ahead: Receptor = { at: [0.3, 0.2, 0.8], normal: unit([0.1, 0, -1]), kind: 'dome' }
    const behind: Receptor = { at: [0.3, 0.2, -0.8], normal: unit([0.1, 0, 1]), kind: 'dome' }
    expect(response(umbrella, behind)).toBeCloseTo(response(umbrella, ahead), 12)
    expect(response({ ...umbrella, both: false }, behind)).toBe(0)
  })

  it('is mirrored by a mirrored receptor', () => {
    for (const front of [fronts['softbox 60 x 90 cm'], fronts['dish 55 cm'], frontAt('octagon', 0.9, 0.9)]) {
      const right = response(front, { at: [0.7, 0.2, 0.6], normal: unit([-0.9, 0.1, -0.3]), kind: 'flat' })
      const left = response(front, { at: [-0.7, 0.2, 0.6], normal: unit([0.9, 0.1, -0.3]), kind: 'flat' })
      expect(left).toBeCloseTo(right, 12)
    }
  })
})

describe('a closed room of even luminance', () => {
  // Six Lambertian squares around the receptor: every direction sees radiance 1, so a flat receptor gets π and a dome,
  // ½∫(1 + cos θ) over the sphere, 2π: twice as much.
  const walls = (
    [
      [1, 0, 0],
      [-1, 0, 0],
      [0, 1, 0],
      [0, -1, 0],
      [0, 0, 1],
      [0, 0, -1],
    ] as const
  ).map((normal) =>
    frontAt('rectangle', 2, 2, { normal, centre: normal.map((one) => -one) as never as Vec3 }),
  )
  it('reads twice as much on a dome as on a flat receptor, wherever it is and however it is turned', () => {
    const random = sequence(3)
    for (let i = 0; i < 20; i++) {
      const at: Vec3 = [1.9 * random() - 0.95, 1.9 * random() - 0.95, 1.9 * random() - 0.95]
      const normal = unit([random() - 0.5, random() - 0.5, random() - 0.5])
      const sum = (receptor: Receptor): number =>
        walls.reduce((whole, wall) => whole + response(wall, receptor) * wall.area, 0)
      expect(sum({ at, normal, kind: 'flat' })).toBeCloseTo(Math.PI, 9)
      expect(sum({ at, normal, kind: 'dome' })).toBeCloseTo(2 * Math.PI, 9)
      expect(sum({ at, normal, kind: 'dome', onSurface: true })).toBeCloseTo(1.5 * Math.PI, 9)
    }
  })
})

describe('light adds and scales', () => {
  it('two halves of a front give what the whole gives', () => {
    const whole = frontAt('rectangle', 0.6, 0.9)
    const halves = [-0.15, 0.15].map((x) => frontAt('rectangle', 0.3, 0.9, { centre: [x, 0, 0] }))
    const random = sequence(11)
    for (let i = 0; i < 10; i++) {
      const receptor = someReceptor(random, whole, 0.3, 2, i % 2 === 0 ? 'flat' : 'dome')
      const sum = halves.reduce((all, half) => all + response(half, receptor) * half.area, 0)
      expect(response(whole, receptor) * whole.area).toBeCloseTo(sum, 10)
    }
  })

  it('a set k times as large gets k² times less for the same intensity', () => {
    for (const [outline, w, h] of [
      ['rectangle', 0.6, 0.9],
      ['disc', 1, 1],
      ['octagon', 0.9, 0.9],
    ] as const)
      for (const cosine of [1, 2, 5])
        for (const k of [0.1, 3]) {
          const pattern = { cosine, head: undefined, grid: undefined }
          const normal = unit([0.3, 0.2, -1])
          const small = response(frontAt(outline, w, h, { pattern }), {
            at: [0.4, 0.1, 1],
            normal,
            kind: 'dome',
          })
          const large = response(frontAt(outline, k * w, k * h, { pattern }), {
            at: [k * 0.4, k * 0.1, k],
            normal,
            kind: 'dome',
          })
          expect(large * k * k).toBeCloseTo(small, 10)
        }
  })
})

describe('receptors', () => {
  const far = frontAt('disc', 0.01, 0.01)
  /** A receptor 3 m off on the front's axis, turned away from it by an angle. */
  const turned = (angle: number, kind: Receptor['kind']): number => {
    const [s, c] = [Math.sin(degrees(angle)), Math.cos(degrees(angle))]
    return response(far, { at: [0, 0, 3], normal: [s, 0, -c], kind })
  }

  it('a raised dome reads more than a flat one at a surface lit from one side', () => {
    // Computed once by a separate program, +0.27, +0.58, +0.97; also by hand from cos θ and (1 + cos θ)/2.
    for (const [angle, stops] of [
      [45, 0.27],
      [60, 0.58],
      [70, 0.97],
    ] as const)
      expect(Math.log2(turned(angle, 'dome') / turned(angle, 'flat'))).toBeCloseTo(stops, 2)
  })

  it('a dome turned from the light to the camera reads less', () => {
    // Computed once by a separate program: −0.42 stop at 60°, −1.0 at 90°.
    expect(Math.log2(turned(60, 'dome') / turned(0, 'dome'))).toBeCloseTo(-0.415, 3)
    expect(Math.log2(turned(90, 'dome') / turned(0, 'dome'))).toBeCloseTo(-1, 3)
  })

  it('key 35° aside and a fill one stop under on the axis: 2.8 to 1 by dome to the camera', () => {
    // Computed once by a separate program: (key + fill) : fill.
    const key = turned(35, 'dome')
    const fill = turned(0, 'dome') / 2
    expect((key + fill) / fill).toBeCloseTo(2.8, 1)
  })

  it('the sun: cosine on flat, (1 + cosine)/2 on a dome, nothing under the surface that it lies on', () => {
    const sun = { kind: 'parallel', light: 'sun', toward: [0, 0, 1] } as const
    const at: Vec3 = [0, 0, 0]
    const slanted = unit([Math.sqrt(3), 0, 1]) // 60° from the sun
    const away = unit([Math.sqrt(3), 0, -1])
    expect(response(sun, { at, normal: slanted, kind: 'flat' })).toBeCloseTo(0.5, 12)
    expect(response(sun, { at, normal: slanted, kind: 'dome' })).toBeCloseTo(0.75, 12)
    expect(response(sun, { at, normal: away, kind: 'flat' })).toBe(0)
    expect(response(sun, { at, normal: away, kind: 'dome' })).toBeCloseTo(0.25, 12)
    expect(response(sun, { at, normal: away, kind: 'dome', onSurface: true })).toBe(0)
  })

  it('the ambient: a sky of even luminance, as a huge disc overhead gives it', () => {
    const sky = { kind: 'uniform', light: 'ambient' } as const
    // A disc of 1000 m radius 1 m above stands for the upper half but for a thousandth of it near the horizon.
    const disc = frontAt('disc', 2000, 2000, { centre: [0, 0, 1], normal: [0, 0, -1] })
    const random = sequence(5)
    for (let i = 0; i < 20; i++) {
      const normal = unit([random() - 0.5, random() - 0.5, random() - 0.5])
      for (const [kind, onSurface] of [
        ['flat', false],
        ['dome', false],
        ['dome', true],
      ] as const) {
        const receptor: Receptor = { at: [0, 0, 0], normal, kind, onSurface }
        expect(response(sky, receptor)).toBeCloseTo((response(disc, receptor) * disc.area) / Math.PI, 2)
      }
    }
    expect(response(sky, { at: [0, 0, 0], normal: [0, 0, 1], kind: 'flat' })).toBe(1)
  })
})

describe('polygon and disc', () => {
  it('outlines have the area of the shapes that they stand for', () => {
    const of = (outline: 'rectangle' | 'disc' | 'octagon' | 'ring') =>
      outlineOf({ outline, width: metres(1.2), height: metres(1.2) })
    expect(polygonArea(of('disc').corners)).toBeCloseTo(Math.PI * 0.36, 12)
    expect(polygonArea(of('ring').corners) * (1 - 0.3 ** 2)).toBeCloseTo(of('ring').area, 12)
    for (const outline of ['rectangle', 'octagon', 'disc'] as const)
      expect(polygonArea(of(outline).corners)).toBeCloseTo(of(outline).area, 12)
  })

  it('solid angles: on the axis of a disc 2π(1 − cos), of a square the arctangent; whole sphere around a cube', () => {
    for (const d of [0.01, 0.3, 2, 50])
      expect(discSolidAngle(0.5, d, 0) / (2 * Math.PI * (1 - d / Math.hypot(d, 0.5)))).toBeCloseTo(1, 7)
    const square = [-1, -1, 1, -1, 1, 1, -1, 1]
    expect(polygonSolidAngle(square, 0, 0, 1)).toBeCloseTo((4 * Math.PI) / 6, 12)
    // ab/(c·√(a² + b² + c²)) seen from above a corner: as the check value geo.omega has it.
    expect(polygonSolidAngle([0, 0, 1, 0, 1, 2, 0, 2], 0, 0, 0.5)).toBeCloseTo(
      Math.atan(2 / (0.5 * Math.sqrt(5.25))),
      12,
    )
  })

  it('a disc is the limit of polygons with many sides', () => {
    const many = Array.from({ length: 4000 }, (_, i) => {
      const angle = ((i >> 1) * 2 * Math.PI) / 2000
      return 0.6 * (i % 2 === 0 ? Math.cos(angle) : Math.sin(angle))
    })
    for (const [z, o] of [
      [0.05, 0.3],
      [0.05, 0.59],
      [0.3, 0.9],
      [1, 0],
      [2, 3],
      [0.001, 0.2],
    ] as const) {
      const { along, inward } = discIrradiance(0.6, z, o)
      expect(along).toBeCloseTo(contourIrradiance(many, o, 0, z, 0, 0, -1), 4)
      expect(inward).toBeCloseTo(contourIrradiance(many, o, 0, z, -1, 0, 0), 4)
      expect(discSolidAngle(0.6, z, o)).toBeCloseTo(polygonSolidAngle(many, o, 0, z), 4)
    }
  })
})
