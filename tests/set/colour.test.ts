/** The colour of the light at places of a set. */
import { describe, expect, it } from 'vitest'
import { apartUv, uvOfXyz, type Xyz } from '../../src/light/colour/chromaticity.js'
import { miredOf } from '../../src/light/colour/mired.js'
import { rgbOfXyz } from '../../src/light/colour/rgb.js'
import { surfaceShares } from '../../src/light/colour/surface-colour.js'
import { usualDuv, whiteOfXyz, xyzOfWhite } from '../../src/light/colour/white.js'

import { add, dot, length, scale, subtract, type Vec3 } from '../../src/scene/vector.js'
import { computeSet } from '../../src/set/compute-set.js'
import type { ComputedSet } from '../../src/set/computed-set.js'
import type { Kelvin } from '../../src/units/quantity.js'
import { planOf } from '../language/reading.js'

const set = (lights: string, more = ''): ComputedSet =>
  computeSet(
    planOf(`plan: 1
title: Colours
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
${lights}
${more}
`),
  )
const key = (more: string, side = 'left') =>
  `{ unit: head 400 Ws, modifier: softbox 60 x 90 cm, at: { angle: 40 deg ${side}, distance: 1.4 m, height: 2 m }, ${more} }`
const face = { at: 'subject', dome: 'raised', faces: 'camera' } as const
const room = (walls: string) =>
  `room: { width: 3.6 m, length: 6 m, height: 2.6 m, walls: ${walls}, ceiling: 0.6, floor: 0.3 }`
const backdrop = 'backdrop: { surface: grey paper, behind: 1.5 m }'

const whiteOf = (xyz: Xyz) => {
  const white = whiteOfXyz(xyz)
  return { ...white, mired: miredOf(white.kelvin) }
}

describe('one light', () => {
  it('has its own colour everywhere, among grey surfaces too', () => {
    const all = set(`  key: ${key('meters: f/5.6, colour: 4800 K')}`, `${room('0.5')}\n${backdrop}`)
    for (const at of ['subject', 'backdrop', 'backdrop-left', 'hair']) {
      const mix = all.colour({ at }, 'all')!
      expect(mix.kelvin).toBeCloseTo(4800, 0)
      expect(mix.duv).toBeCloseTo(usualDuv(4800), 4)
      expect(mix.xyz[1] / all.reading({ at, of: 'all' })!.luxSeconds).toBeCloseTo(1, 9)
      expect(mix.unknown).toBe(0)
    }
  })

  it('takes on the walls’ colour, and none where they are taken as grey', () => {
    const all = set(`  key: ${key('meters: f/5.6, colour: 5500 K')}`, `${room('yellow wall')}\n${backdrop}`)
    const [tinted, grey] = [all.colour(face, 'all')!, all.colour(face, 'all', { grey: true })!]
    expect(grey.kelvin).toBeCloseTo(5500, 0)
    expect(tinted.mired).toBeGreaterThan(grey.mired + 3)
    expect(tinted.xyz[1] / grey.xyz[1]).toBeCloseTo(1, 9)
  })

  it('is as much light as a meter reads, whatever the walls make of its colour', () => {
    for (const [colour, walls] of [
      ['2700 K', '{ reflectance: 0.3, colour: "#c82020" }'],
      ['5500 K', '{ reflectance: 0.4, colour: "#40b050" }'],
    ] as const) {
      const all = set(`  key: ${key(`meters: f/5.6, colour: ${colour}`)}`, `${room(walls)}\n${backdrop}`)
      for (const at of ['subject', 'backdrop', 'backdrop-left'])
        expect(all.colour({ at }, 'all')!.xyz[1] / all.reading({ at, of: 'all' })!.luxSeconds).toBeCloseTo(
          1,
          9,
        )
    }
  })
})

describe('a coloured room', () => {
  const lights = `  key: ${key('power: 1/4, colour: 6504 K, duv: 0.0032')}`

  it('gives in each channel what a grey one of that channel’s reflectances gives', () => {
    const all = set(lights, `${room('yellow wall')}\n${backdrop}`)
    const shares = surfaceShares(all.plan.room!.walls.left)
    for (const at of ['subject', 'backdrop', 'backdrop-right', 'hair']) {
      const light = rgbOfXyz(all.lightColour('key')!.xyz)
      rgbOfXyz(all.colour({ at }, 'all')!.xyz).forEach((got, channel) => {
        const grey = set(lights, `${room(String(shares[channel]))}\n${backdrop}`)
        const want = grey.reading({ at, of: 'all' })!.luxSeconds
        expect(Math.abs(Math.log2(got / light[channel]! / want)), `${at} ${channel}`).toBeLessThan(0.01)
      })
    }
  })
})

describe('a coloured card', () => {
  const at = 'right: 60 cm, front: 10 cm, height: 1.6 m'
  const lit = (surface: string) =>
    set(
      `  key: ${key('meters: f/5.6, colour: 6504 K, duv: 0.0032')}`,
      `panels:\n  card: { kind: reflector, surface: ${surface}, size: 60 x 80 cm, at: { ${at} }, faces: subject }`,
    )

  it('throws back what a sum over small pieces of it does, channel by channel', () => {
    const all = lit('{ reflectance: 0.3, colour: "#c06030" }')
    const { plan, scene } = all
    const receptor = { at: [0.02, -0.2, 1.6] as Vec3, normal: [1, 0, 0] as Vec3, kind: 'flat' as const }
    const mix = all.colour(receptor, ['key'])!
    const grey = all.colour(receptor, ['key'], { grey: true })!
    expect(all.exposure(receptor, ['key'])!.byPath.direct).toBe(0)
    const card = scene.panels.get('card')!.faces[0]!
    const steps = 24
    let sum = 0
    for (let i = 0; i < steps; i++)
      for (let j = 0; j < steps; j++) {
        const on = add(
          card.centre,
          add(
            scale(card.across, ((i + 0.5) / steps - 0.5) * card.width),
            scale(card.up, ((j + 0.5) / steps - 0.5) * card.height),
          ),
        )
        const off = subtract(on, receptor.at)
        const far = length(off)
        const cosHere = Math.max(0, dot(off, receptor.normal) / far)
        const cosThere = Math.max(0, -dot(off, card.normal) / far)
        const falls = all.exposure(
          { at: on, normal: card.normal, kind: 'flat', onSurface: true },
          ['key'],
          ['direct'],
        )!.luxSeconds
        sum +=
          (falls * cosHere * cosThere * ((card.width * card.height) / steps ** 2)) / (Math.PI * far * far)
      }
    const shares = surfaceShares(plan.panels.get('card')!.surface)
    const light = rgbOfXyz(xyzOfWhite({ kelvin: 6504 as Kelvin, duv: 0.0032 }))
    rgbOfXyz(mix.xyz).forEach((got, channel) => {
      expect(Math.abs(got / (shares[channel]! * light[channel]! * sum) - 1)).toBeLessThan(0.08)
    })
    // One bounce alone: the channels stand to the grey card's as their reflectances do.
    rgbOfXyz(mix.xyz).forEach((got, channel) => {
      const plain = rgbOfXyz(grey.xyz)[channel]!
      expect(got / plain).toBeCloseTo(shares[channel]! / 0.3, 2)
    })
  })
})

describe('several lights', () => {
  it('mix by their shares: halves of 3200 and 5600 K are 4150 K, not 4400', () => {
    const two = set(
      `  key: ${key('meters: f/4, colour: 3200 K')}\n  fill: ${key('meters: f/4, colour: 5600 K', 'right')}`,
    )
    const mix = two.colour(face, 'all')!
    const [a, b] = mix.parts.map(({ xyz }) => xyz[1])
    expect(a! / b!).toBeCloseTo(1, 2)
    // Reference col.mix: 4153 K by black bodies and McCamy; our daylight is a little greener.
    expect(Math.abs(mix.kelvin - 4153)).toBeLessThan(60)
  })

  // Figures of the design: 2900 K four stops under a 5500 K key.
  it.each([
    [0, 8],
    [2, 28],
  ])(
    'shift a side %d stops under the key by %d mired where ambient of 2900 K lies four stops under it',
    (down, shift) => {
      const flash = xyzOfWhite({ kelvin: 5500 as Kelvin, duv: usualDuv(5500) })
      const all = set(
        `  key: ${key('meters: f/5.6, colour: 5500 K')}`,
        'ambient: { reads: f/5.6, shutter: 1/8, iso: 100, colour: 2900 K }',
      )
      const ambient = all.lightColour('ambient')!
      const light = all.lightColour('key')!
      expect(apartUv(uvOfXyz(flash), uvOfXyz(light.xyz))).toBeLessThan(1e-9)
      const reading = all.colour(face, 'all')!
      expect(reading.parts.map((part) => part.light)).toEqual(['key', 'ambient'])
      const shares = [2 ** -down, 2 ** -4]
      const mixed = [0, 1, 2].map((i) => shares[0]! * light.xyz[i]! + shares[1]! * ambient.xyz[i]!) as never
      const whole = all.colourApart(
        { ...reading, xyz: mixed, ...whiteOf(mixed) },
        { ...reading, xyz: light.xyz, ...whiteOf(light.xyz) },
      )
      expect(Math.abs(whole.warmer - shift)).toBeLessThan(1.5)
    },
  )

  it('say how much of the light nobody knows the colour of', () => {
    const all = set(`  key: ${key('meters: f/4')}`, 'ambient: { reads: f/4, shutter: 1/125, iso: 100 }')
    const mix = all.colour(face, 'all')!
    expect(mix.unknown).toBeGreaterThan(0.4)
    expect(mix.unknown).toBeLessThan(0.6)
    expect(mix.kelvin).toBeCloseTo(5500, 0)
  })
})

describe('how sure a colour is', () => {
  it('what a mixture owes to strengths is what turning them does to it', () => {
    const two = set(
      `  key: ${key('power: 1/4, colour: 5600 K')}\n  fill: ${key('power: 1/8, colour: 4300 K', 'right')}`,
    )
    const mix = two.colour(face, 'all')!
    for (const light of ['key', 'fill']) {
      const at = (to: number) =>
        two.with({ knob: { knob: 'strength', light }, to }).colour(face, 'all')!.mired
      const slope = (at(0.2) - at(-0.2)) / 0.4
      expect(mix.gradient.get(light)! / slope).toBeGreaterThan(0.85)
      expect(mix.gradient.get(light)! / slope).toBeLessThan(1.15)
    }
  })

  const apart = (unit: string, other = unit) => {
    const two = set(
      ['key', 'fill']
        .map(
          (name, i) =>
            `  ${name}: { unit: ${i === 0 ? unit : other}, meters: f/4, at: { angle: 60 deg ${i === 0 ? 'left' : 'right'}, distance: 1.4 m, height: 1.62 m } }`,
        )
        .join('\n'),
    )
    return two.colourApart(two.colour(face, ['key'])!, two.colour(face, ['fill'])!)
  }

  it('two units of one kind are sure to be alike, two of unlike kinds are not', () => {
    expect(apart('flashgun').u).toBeLessThan(3)
    expect(apart('flashgun', 'head 400 Ws').u).toBeGreaterThan(13)
  })

  it('stated colours are surer', () => {
    const stated = (kelvin: number, name: string) =>
      `{ name: ${name}, guide-number: 36 m at 35 mm, colour: ${kelvin} K }`
    const { mired, warmer, u } = apart(stated(5400, 'one'), stated(6000, 'other'))
    expect(warmer).toBeCloseTo(1e6 / 5400 - 1e6 / 6000, 1)
    expect(Math.abs(mired - warmer)).toBeLessThan(1)
    // Four each, and what their power, which the plan leaves open, may do to it.
    expect(u).toBeGreaterThan(Math.hypot(4, 4))
    expect(u).toBeLessThan(8)
  })
})

describe('what surfaces throw to a place, one by one', () => {
  const ask = { ...face, of: 'all' } as const
  const all = set(
    `  key: ${key('meters: f/5.6')}\n  fill: ${key('meters: f/4', 'right')}`,
    `${room('0.5')}\n${backdrop}\nambient: { reads: f/2, shutter: 1/60, iso: 100 }\npanels: { white: { kind: reflector, surface: white board, size: 1 x 2 m, at: { right: 80 cm, front: 20 cm, height: 1.3 m }, faces: subject } }`,
  )

  it('comes to what the meter gets of room, panels and backdrop', () => {
    const { byPath } = all.reading(ask)!
    for (const path of ['room', 'panels', 'backdrop'] as const) {
      const sum = all
        .thrown(ask)
        .filter(({ surface }) => surface.path === path)
        .reduce((total, { exposure }) => total + exposure, 0)
      expect(byPath[path], path).toBeGreaterThan(0)
      expect(sum, path).toBeCloseTo(byPath[path], 9)
    }
  })

  it('ends from what is painted black', () => {
    const black = set(
      `  key: ${key('meters: f/5.6')}`,
      room('{ left: 0.5, right: 0, front: 0.5, back: 0.5 }'),
    )
    const from = (name: string): number =>
      black
        .thrown(ask)
        .filter(({ surface }) => surface.name === name)
        .reduce((total, { exposure }) => total + exposure, 0)
    // The blackest black that is computed gives back a thousandth.
    expect(from('right-wall')).toBeLessThan(0.01 * from('left-wall'))
  })

  it('is nothing where nothing stands', () => {
    expect(set(`  key: ${key('meters: f/5.6')}`).thrown({ ...ask, at: [0, 0, 1.5] })).toEqual([])
  })
})
