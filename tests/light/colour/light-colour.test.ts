/** The colour that a light has by its unit, power and gel, against what practitioners and makers report. */
import { describe, expect, it } from 'vitest'
import type { Light } from '../../../src/language/plan.js'
import { ambientColour, lampColour, lightColour } from '../../../src/light/colour/light-colour.js'
import { uOfColours } from '../../../src/light/colour/mix.js'
import { rgbOfXyz } from '../../../src/light/colour/rgb.js'
import { planOf } from '../../language/reading.js'

const plan = (light: string, more = '') =>
  planOf(`plan: 1
title: One light
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
  key: { at: { angle: 40 deg left, distance: 1.4 m, height: 2 m }, ${light} }
${more}`)
const one = (light: string): Light => plan(light).lights.get('key')!
const head = (more: string) => `unit: { name: head, energy: 400 Ws, ${more} }`
const kelvin = (light: string): number => lightColour(one(light))!.kelvin

describe('unstated', () => {
  // Check value col.src: daylight and flash 5500 to 6000 K, overcast sky 6500.
  it.each([
    ['unit: flashgun', 5500, 6000],
    ['unit: head 400 Ws', 5500, 6000],
    ['unit: { energy: 400 Ws }', 5500, 6000],
    ['unit: window, size: 1 x 1 m, reads: f/4, shutter: 1/60, iso: 100', 6500, 6500],
  ])('%s lies within the published range', (light, from, to) => {
    expect(kelvin(light)).toBeGreaterThanOrEqual(from - 1e-6)
    expect(kelvin(light)).toBeLessThanOrEqual(to + 1e-6)
    expect(lightColour(one(light))!.told).toBe(false)
  })

  it('nobody knows the colour of a lamp or of a room', () => {
    expect(lightColour(one('unit: { lumens: 9000 lm, beam: 110 deg }'))).toBeUndefined()
    expect(ambientColour(plan('unit: flashgun'))).toBeUndefined()
  })

  it('a halogen modelling lamp is far warmer than its flash', () => {
    const lamp = lampColour(one('unit: head 400 Ws, modelling: on'))!
    expect(lamp.kelvin).toBeCloseTo(3200, 3)
  })
})

describe('by power', () => {
  // Reports of practitioners: 400 K from full to 1/32 on voltage-regulated heads.
  it('a voltage-regulated head is 400 K warmer at 1/32', () => {
    const at = (power: string) => kelvin(`${head('colour: 5500 K, regulated: voltage')}, power: ${power}`)
    expect(at('full')).toBeCloseTo(5500, 3)
    expect(5500 - at('1/32')).toBeCloseTo(400, 0)
  })

  it('a flash that is cut short is bluer, and by how much is less sure', () => {
    const at = (regulated: string) =>
      lightColour(one(`${head(`colour: 5500 K, regulated: ${regulated}`)}, power: 1/16`))!
    expect(at('igbt').kelvin).toBeGreaterThan(5550)
    const spread = (colour: ReturnType<typeof at>) => Math.abs(colour.causes.get('power head')!)
    expect(spread(at('igbt')) / Math.abs(at('igbt').mired - 1e6 / 5500)).toBeCloseTo(1, 6)
    expect(spread(at('voltage')) / Math.abs(at('voltage').mired - 1e6 / 5500)).toBeCloseTo(0.5, 6)
  })

  it('stays within what flashes do, however far down and however warm it is stated to be', () => {
    const at = (power: string) =>
      lightColour(
        one(
          `${head('colour: 1000 K, regulated: voltage, power: { from: 1/9999, to: full }')}, power: ${power}`,
        ),
      )!
    for (const power of ['1/64', '1/4096', '1/4096 - 0.5', '1/8192']) {
      const { kelvin, causes } = at(power)
      expect(kelvin).toBeCloseTo(1000, 6)
      // Seven stops of 80 K off 5500 K are 21 mired; half of that is not known.
      expect(Math.abs(causes.get('power head')!)).toBeLessThan(11)
    }
    const daylight = (power: string) =>
      kelvin(
        `${head('colour: 5500 K, regulated: voltage, power: { from: 1/9999, to: full }')}, power: ${power}`,
      )
    expect(daylight('1/8192')).toBeCloseTo(daylight('1/128'), 6)
  })

  it('goes along what the kit states, in stops and mireds', () => {
    const stated = head('colour: 5600 K, colours: [{ power: 1/32, colour: 5200 K }], regulated: voltage')
    const at = (power: string) => kelvin(`${stated}, power: ${power}`)
    expect(at('full')).toBeCloseTo(5600, 3)
    expect(at('1/32')).toBeCloseTo(5200, 3)
    expect(1e6 / at('1/4')).toBeCloseTo(1e6 / 5600 + 0.4 * (1e6 / 5200 - 1e6 / 5600), 6)
    // Beyond what is stated nothing is made up.
    expect(kelvin(`${stated}, power: 1/64`)).toBeCloseTo(5200, 3)
    // What is stated at the light goes before what its unit says, and holds at its power.
    expect(kelvin(`${stated}, power: 1/16, colour: 5000 K`)).toBeCloseTo(5000, 3)
    // Without a colour at full the table stands alone.
    const table = head('colours: [{ power: 1/4, colour: 5300 K }, { power: 1/32, colour: 5200 K }]')
    expect(kelvin(`${table}, power: full`)).toBeCloseTo(5300, 3)
    expect(lightColour(one(`${table}, power: full`))!.told).toBe(true)
  })

  it('two heads of one kind at one power are alike, at unlike powers as unsure as the shift is', () => {
    const causes = (name: string, power: string) =>
      lightColour({ ...one(`${head('colour: 5500 K, regulated: voltage')}, power: ${power}`), name })!.causes
    expect(uOfColours(causes('a', '1/8'), causes('b', '1/8'))).toBeLessThan(3)
    expect(uOfColours(causes('a', 'full'), causes('b', '1/32'))).toBeGreaterThan(6)
  })
})

describe('through a gel', () => {
  // Check values col.cto.5600x and col.ctb.full.
  it('mireds add', () => {
    expect(kelvin('unit: flashgun, colour: 5600 K, gel: { shift: +159 mired, loss: 2/3 stop }')).toBeCloseTo(
      2962.336,
      2,
    )
    expect(
      Math.round(kelvin('unit: flashgun, colour: 3200 K, gel: { shift: -137 mired, loss: 2 stops }') / 100),
    ).toBe(57)
  })

  it('a conversion gel leads daylight to the black body, and green stays green', () => {
    const tungsten = lightColour(one('unit: flashgun, gel: { shift: +163 mired, loss: 2/3 stop }'))!
    expect(tungsten.duv).toBeCloseTo(0, 6)
    const green = lightColour(
      one('unit: flashgun, colour: 4000 K, duv: 0.012, gel: { duv: -0.01, loss: 1/3 stop }'),
    )!
    expect(green.duv).toBeCloseTo(0.002, 6)
  })

  it('a deep one is deep if it takes enough light, and no filter makes light', () => {
    const rgb = (loss: string) => {
      const { xyz, deep } = lightColour(one(`unit: flashgun, gel: { colour: red, loss: ${loss} }`))!
      expect(deep).toBe(true)
      expect(xyz[1]).toBeCloseTo(1, 9)
      return rgbOfXyz(xyz)
    }
    const [pale, deep] = [rgb('1/3 stop'), rgb('3 stops')]
    expect(deep[0] / deep[1]).toBeGreaterThan(2 * (pale[0] / pale[1]))
    // Red that takes a third of a stop lets most of all else through.
    const plain = rgbOfXyz(lightColour(one('unit: flashgun'))!.xyz)
    pale.forEach((one, i) => {
      expect((one * 2 ** (-1 / 3)) / plain[i]!).toBeLessThan(1)
    })
  })
  it('black, grey, and what takes no light change nothing, and no step leads there', () => {
    const plain = lightColour(one('unit: flashgun'))!
    const through = (colour: string, loss: string) =>
      lightColour(one(`unit: flashgun, gel: { colour: "${colour}", loss: ${loss} }`))!
    for (const [colour, loss] of [
      ['#000', '0 stops'],
      ['#000', '3 stops'],
      ['#808080', '2 stops'],
      ['#00f', '0 stops'],
      ['#00f', '0.01 stops'],
    ] as const) {
      const { xyz, deep } = through(colour, loss)
      expect(deep, `${colour} ${loss}`).toBe(false)
      xyz.forEach((one, i) => {
        expect(one).toBeCloseTo(plain.xyz[i]!, 6)
      })
    }
    // From no loss to three stops, in steps of a fiftieth: the blue grows, never by a leap.
    let before = plain.xyz[2]
    for (let loss = 0; loss <= 3; loss += 0.02) {
      const [, , z] = through('#00f', `${loss.toFixed(2)} stops`).xyz
      expect(z).toBeGreaterThan(before - 1e-9)
      expect(z).toBeLessThan(before * 1.15)
      before = z
    }
  })

  it('light out of reach of sRGB through its opposite is still light', () => {
    const { xyz } = lightColour(
      one('unit: flashgun, colour: 1000 K, gel: { colour: "#00f", loss: 6 stops }'),
    )!
    expect(xyz.every((one) => Number.isFinite(one) && one >= 0)).toBe(true)
  })
})
