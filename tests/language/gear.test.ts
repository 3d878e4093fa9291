import { parse, wcagLuminance } from 'culori'
import { describe, expect, it } from 'vitest'
import { colourTable, readColour } from '../../src/language/catalogue/colours.js'
import { modifierExamples, modifierKinds } from '../../src/language/catalogue/modifiers.js'
import { surfaceTable } from '../../src/language/catalogue/surfaces.js'
import { unitNames } from '../../src/language/catalogue/units.js'
import type { LightUnit, Modifier } from '../../src/language/plan.js'
import { cosineOfBeam, readModifier } from '../../src/language/resolve/modifier.js'
import { luminanceOf } from '../../src/language/resolve/surface.js'
import { leastWith, onlyMistake, planOf } from './reading.js'

const lightWith = (text: string) =>
  planOf(
    leastWith({ key: `  key: { unit: flashgun, at: { angle: 10 deg left, distance: 2 m }, ${text} }` }),
  ).lights.get('key')!
const modifierOf = (text: string): Modifier => lightWith(`modifier: ${text}`).modifier!
const unitOf = (text: string): LightUnit =>
  planOf(
    leastWith({ key: `  key: { unit: ${text}, at: { angle: 10 deg left, distance: 2 m } }` }),
  ).lights.get('key')!.unit

describe('gels by name', () => {
  it('say what a map with their figures says', () => {
    // The maker's own figure, and the loss that practitioners report: check values of colour, col.cto.full and col.loss.cto.
    const { names, ...gel } = lightWith('gel: full CTO').gel!
    expect(names).toEqual(['full CTO'])
    expect(gel).toEqual(lightWith('gel: { shift: +159 mired, loss: 2/3 stop }').gel)
    expect(lightWith('gel: 1/2 plus-green').gel).toMatchObject({ shift: undefined, duv: 0.01 })
    expect(lightWith('gel: full minus-green').gel!.duv).toBeLessThan(0)
  })

  it('add up', () => {
    const [both, one, other] = ['[full CTO, 1/4 CTO]', 'full CTO', '1/4 CTO'].map(
      (text) => lightWith(`gel: ${text}`).gel!,
    )
    expect(both!.shift).toBe(one!.shift! + other!.shift!)
    expect(both!.loss).toBeCloseTo(one!.loss + other!.loss, 12)
  })

  it('that nobody knows are refused with the nearest', () => {
    const mistakeOf = (gel: string) =>
      onlyMistake(leastWith({ key: `  key: { unit: flashgun, at: camera, gel: ${gel} }` }))
    expect(mistakeOf('full CTP').message).toMatch(/^gel full CTP is not known; did you mean full CT[BO]\?$/)
    expect(mistakeOf('1/2 plus green').message).toContain('did you mean 1/2 plus-green?')
    expect(mistakeOf('[full CTO, 1/2 CT0]').place.pointer).toBe('/lights/key/gel/1')
    expect(mistakeOf('{ shift: +159 mired }').message).toContain('loss')
  })
})

describe('built-in modifiers', () => {
  it('read by their own examples', () => {
    for (const example of modifierExamples) expect(readModifier(example), example).toMatchObject({ ok: true })
    expect(modifierExamples).toHaveLength(modifierKinds.length)
  })

  it('have their size in their name', () => {
    expect(modifierOf('softbox 60 x 90 cm')).toMatchObject({
      outline: 'rectangle',
      size: { width: 0.6, height: 0.9 },
    })
    expect(modifierOf('octa 5 ft')).toMatchObject({
      outline: 'octagon',
      size: { width: expect.closeTo(1.524, 12) },
    })
    expect(modifierOf('strip 30 x 120 cm').size).toEqual({ width: 0.3, height: 1.2 })
    expect(modifierOf('beauty dish').size.width).toBe(0.55)
    expect(modifierOf('octabox 90 cm').kind).toBe('octa')
    expect(modifierOf('octa softbox 90 cm').kind).toBe('octa')
  })

  it('lose what practitioners report, more the larger they are', () => {
    // Common practice, no source: small box 1.5, softbox to 90 cm 2.0, larger 2.5, shoot-through 1.8, white 2.2, silver 1.5, dish 1.0.
    expect(modifierOf('softbox 40 x 40 cm').loss).toBe(1.5)
    expect(modifierOf('softbox 60 x 90 cm').loss).toBe(2)
    expect(modifierOf('softbox 90 x 120 cm').loss).toBe(2.5)
    expect(modifierOf('octa 1.5 m').loss).toBe(2.5)
    expect(modifierOf('shoot-through umbrella 1 m').loss).toBe(1.8)
    expect(modifierOf('white umbrella 1 m').loss).toBe(2.2)
    expect(modifierOf('silver umbrella 1.5 m').loss).toBe(1.5)
    expect(modifierOf('beauty dish 55 cm').loss).toBe(1)
  })

  it('shine as their kind does', () => {
    expect(modifierOf('softbox 60 x 90 cm').emission).toEqual({ cosine: 1, both: false })
    expect(modifierOf('softbox 40 x 40 cm').emission.cosine).toBe(2)
    expect(modifierOf('shoot-through umbrella 1 m').emission).toEqual({ cosine: 1, both: true })
    // Half the peak at half of 60 degrees, by the cosine law itself.
    expect(Math.cos(Math.PI / 6) ** modifierOf('standard reflector').emission.cosine).toBeCloseTo(0.5, 12)
    expect(Math.cos(Math.PI / 9) ** cosineOfBeam((40 * Math.PI) / 180)).toBeCloseTo(0.5, 12)
  })

  it('hold no more light than reaches them', () => {
    for (const example of modifierExamples) {
      const { transmits } = modifierOf(example)
      expect(transmits, example).toBeGreaterThan(0)
      expect(transmits, example).toBeLessThanOrEqual(1)
    }
  })

  it('bring a honeycomb’s angle along', () => {
    expect(modifierOf('honeycomb 20 deg').grid).toEqual({
      kind: 'honeycomb',
      halfPeak: expect.closeTo(Math.PI / 9, 12),
    })
  })

  it.each([
    ['softbox', 'say its size: softbox 60 x 90 cm'],
    ['honeycomb', 'say its angle: honeycomb 20 deg'],
    ['softbox 60 cm', 'write 60 cm x 60 cm'],
    ['octa 90', 'octa 90 cm'],
    ['octa 0 m', 'over zero'],
    ['honeycomb 0 deg', 'under 90 deg'],
  ])('without their size are told how it is written: %s', (name, says) => {
    const mistake = onlyMistake(
      leastWith({ key: `  key: { unit: flashgun, at: camera, modifier: ${name} }` }),
    )
    expect(mistake.why).toContain(says)
    expect(mistake.place.pointer).toBe('/lights/key/modifier')
  })
})

describe('modifiers by their facts', () => {
  it('take what is stated in the place of the guess', () => {
    expect(
      modifierOf(
        '{ kind: octa, size: 150 cm, loss: 2.2 stops, transmits: 40 %, depth: 60 cm, weight: 1.5 kg, grid: 40 deg, count: 1 }',
      ),
    ).toMatchObject({
      name: 'octa',
      loss: 2.2,
      lossU: 0.2,
      transmits: 0.4,
      depth: 0.6,
      weight: 1.5,
      count: 1,
      guessed: false,
      grid: { kind: 'egg-crate' },
    })
  })

  it('keep the guess and its uncertainty for what is not', () => {
    expect(modifierOf('{ kind: softbox, size: 60 x 90 cm }')).toMatchObject({
      loss: 2,
      lossU: 0.6,
      emission: { cosine: 1 },
    })
    expect(modifierOf('{ kind: softbox, size: 60 x 90 cm, hot-middle: true }').emission.cosine).toBe(2)
  })

  it('need a size and a honeycomb its angle', () => {
    const refused = (text: string) =>
      onlyMistake(leastWith({ key: `  key: { unit: flashgun, at: camera, modifier: ${text} }` })).message
    expect(refused('{ kind: softbox }')).toContain('size')
    expect(refused('{ kind: honeycomb }')).toContain('angle')
    expect(refused('{ kind: softbox, size: 60 x 90 cm, grid: 0 deg }')).toContain('0 deg')
    expect(refused('{ kind: standard reflector, beam: 180 deg }')).toContain('180 deg')
  })
})

describe('grids', () => {
  it('are of the kind that goes on the front', () => {
    expect(lightWith('modifier: softbox 60 x 90 cm, grid: 40 deg').grid!.kind).toBe('egg-crate')
    expect(lightWith('modifier: standard reflector, grid: 20 deg').grid!.kind).toBe('honeycomb')
    expect(lightWith('grid: 20 deg').grid!.kind).toBe('honeycomb')
    expect(lightWith('modifier: beauty dish, grid: { kind: egg-crate, angle: 30 deg }').grid!.kind).toBe(
      'egg-crate',
    )
  })
})

describe('units', () => {
  it('built in are known by name', () => {
    for (const name of unitNames.filter((one) => one !== 'sun' && one !== 'window'))
      expect(unitOf(name).name).toBe(name)
    expect(unitOf('head 400 Ws')).toMatchObject({
      kind: 'flash',
      strength: { kind: 'energy', energy: 400, reflector: expect.closeTo(Math.PI / 3, 12) },
      energy: 400,
      zoom: undefined,
      guessed: true,
    })
  })

  it('have their strength by guide number, by energy, by what they meter', () => {
    expect(unitOf('{ guide-number: 118 ft at 35 mm, rated-as: measured }')).toMatchObject({
      strength: {
        table: [{ metres: expect.closeTo(118 * 0.3048, 12), zoom: 0.035 }],
        ratedAs: 'measured',
        ratedWith: 'zoom',
      },
    })
    expect(unitOf('{ guide-number: { 105 mm: 58 m, 24 mm: 28 m } }')).toMatchObject({
      strength: {
        table: [
          { metres: 28, zoom: 0.024 },
          { metres: 58, zoom: 0.105 },
        ],
      },
    })
    expect(unitOf('{ guide-number: 20 m, rated-with: bare }')).toMatchObject({
      strength: { ratedWith: 'bare' },
    })
    expect(unitOf('{ guide-number: 54 m, rated-with: standard reflector }')).toMatchObject({
      strength: { table: [{ zoom: undefined }], ratedWith: 'standard reflector' },
    })
    expect(unitOf('{ guide-number: 30 m, rated-with: 50 mm }')).toMatchObject({
      strength: { table: [{ zoom: 0.05 }] },
    })
    expect(unitOf('{ energy: 300 Ws, reflector: 50 deg }')).toMatchObject({
      strength: { kind: 'energy', energy: 300 },
    })
    expect(unitOf('{ energy: 300 Ws, meters: f/8 at 2 m }')).toMatchObject({
      strength: { kind: 'meters', reads: 8, distance: 2, reflector: expect.closeTo(Math.PI / 3, 12) },
      energy: 300,
    })
    expect(unitOf('{ lux: 1200 lx at 1 m }')).toMatchObject({
      kind: 'continuous',
      strength: { lux: 1200, distance: 1 },
    })
  })

  it('that zoom must say at which zoom their guide number holds', () => {
    const mistake = onlyMistake(
      leastWith({ key: '  key: { unit: { guide-number: 36 m, zoom: 24..105 mm }, at: camera }' }),
    )
    expect(mistake.place.pointer).toBe('/lights/key/unit/guide-number')
    expect(mistake.why).toContain('36 m at 35 mm')
  })

  it('are known to have a guessed colour until somebody states one', () => {
    expect(lightWith('power: 1/4').unit.colourGuessed).toBe(true)
    expect(lightWith('colour: 4800 K').unit.colourGuessed).toBeUndefined()
  })

  it('take the distance from the locus that is stated at the light', () => {
    expect(lightWith('duv: -0.004').unit).toMatchObject({ colour: 5500, duv: -0.004 })
    expect(lightWith('gel: { duv: 0.01, loss: 1/3 stop }').gel).toMatchObject({ duv: 0.01, shift: undefined })
  })

  it('take the light’s own colour before theirs', () => {
    expect(lightWith('colour: 4800 K').unit.colour).toBe(4800)
    expect(lightWith('power: 1/4').unit.colour).toBe(5500)
  })

  it('that zoom stand at 35 mm or as near as they go', () => {
    const zoomOf = (zoom: string) =>
      planOf(
        leastWith({ key: `  key: { unit: { guide-number: 36 m at 50 mm, zoom: ${zoom} }, at: camera }` }),
      ).lights.get('key')!.zoom
    expect(zoomOf('24..105 mm')).toBe(0.035)
    expect(zoomOf('50..105 mm')).toBe(0.05)
  })
})

describe('surfaces', () => {
  it('have a reflectance and an uncertainty', () => {
    for (const [name, row] of Object.entries(surfaceTable)) {
      expect(row.reflectance, name).toBeGreaterThan(0)
      expect(row.reflectance, name).toBeLessThan(1)
      expect(row.u, name).toBeGreaterThan(0)
      expect(row.says, name).not.toBe('')
    }
  })

  it('that have a colour have one of about their reflectance', () => {
    // Relative luminance by culori, a colour library, within a fifth.
    for (const [name, { colour, reflectance }] of Object.entries(surfaceTable))
      if (colour !== undefined) {
        const luminance = wcagLuminance(parse(colour)!)
        expect(Math.abs(Math.log(luminance / reflectance)), `${name}: ${luminance}`).toBeLessThan(
          Math.log(1.2),
        )
      }
  })

  it('stated by colour alone reflect its luminance', () => {
    for (const colour of ['#2040a0', '#fff', '#808080', '#010203'])
      expect(luminanceOf(readColour(colour)!)).toBeCloseTo(wcagLuminance(parse(colour)!), 4)
  })

  it('read colours as a colour library does', () => {
    for (const colour of [...Object.values(colourTable), '#abc', '#AbCdEf']) {
      const { r, g, b } = parse(colour) as { r: number; g: number; b: number }
      expect(readColour(colour)).toEqual([r, g, b])
    }
    for (const wrong of ['', '#', '#12', '#12345', '#gggggg', 'constructor', '__proto__', 'blu'])
      expect(readColour(wrong)).toBeUndefined()
  })

  it('of panels are those of their kind, unless stated', () => {
    const panel = (text: string) =>
      planOf(
        leastWith({ panels: `panels: { p: { size: 1 x 2 m, at: { left: 1 m }, faces: subject, ${text} } }` }),
      ).panels.get('p')!
    expect(panel('kind: flag').surface.name).toBe('black')
    expect(panel('kind: reflector').surface.name).toBe('white board')
    expect(panel('kind: reflector, surface: silver').surface.name).toBe('silver')
    expect(panel('kind: v-flat')).toMatchObject({ surface: { name: 'black' }, outside: { name: 'white' } })
    expect(panel('kind: v-flat, inside: white, outside: black')).toMatchObject({ surface: { name: 'white' } })
    for (const share of [0, 45, 80, 99]) {
      const scrim = panel(`kind: scrim, transmits: ${share} %`)
      expect(scrim.transmits + scrim.surface.reflectance).toBeLessThan(1)
    }
  })
})
