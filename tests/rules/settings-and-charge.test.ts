/** Settings, charge, slaves and diffraction, said by the rules. Common practice, no source, unless said. */
import { describe, expect, it } from 'vitest'
import { airyDisc, circleOfConfusion } from '../../src/picture/lens.js'
import type { FNumber, Metres } from '../../src/units/quantity.js'
import { checkText, findingsOf } from './check-text.js'

const plan = (
  { camera = '', aperture = 'f/8', key = 'power: 1/4', wanted = '', unit = 'flashgun', more = '' } = {},
  rest = '',
): string => `plan: 1
title: A set
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: ${aperture}, shutter: 1/125, iso: 100${camera} }
subject: { kind: person }
${rest}lights:
  key: { unit: ${unit}, modifier: white umbrella 1 m, ${key}, at: { angle: 30 deg left, distance: 1.2 m, height: 2 m } }
${more}wanted: { framing: waist${wanted} }
`

describe('diffraction', () => {
  const at = (aperture: string, sensor: string) =>
    findingsOf('diffraction', plan({ aperture, camera: `, sensor: ${sensor}` }))

  it('full frame notes f/22 and smaller, never f/16 or wider', () => {
    for (const aperture of ['f/22', 'f/25', 'f/32']) expect(at(aperture, 'full frame')).toHaveLength(1)
    for (const aperture of ['f/2.8', 'f/11', 'f/16', 'f/18']) expect(at(aperture, 'full frame')).toEqual([])
  })

  it('a crop sensor notes f/16, not f/11; four thirds f/11 and a half, not f/8', () => {
    expect(at('f/16', 'aps-c')).toHaveLength(1)
    expect(at('f/11', 'aps-c')).toEqual([])
    expect(at('f/13', 'four thirds')).toHaveLength(1)
    expect(at('f/8', 'four thirds')).toEqual([])
  })

  it('no sensor notes what leaves the disc within the circle', () => {
    for (const [sensor, width, height] of [
      ['full frame', 36, 24],
      ['44 x 33 mm', 44, 33],
    ] as const) {
      const circle = circleOfConfusion({ width: (width / 1000) as Metres, height: (height / 1000) as Metres })
      for (const n of [8, 11, 16, 20, 22, 25, 29, 32]) {
        const exact = 2 ** (Math.round(6 * Math.log2(n)) / 6)
        // Focused at about 2.5 m an 85 mm lens magnifies by 0.035.
        const fills = airyDisc(exact as FNumber, 0.035) / circle
        if (Math.abs(fills - 1) > 0.02) expect(at(`f/${n}`, sensor).length).toBe(fills > 1 ? 1 : 0)
      }
    }
  })

  it('a house may hold it to catalogue work', () => {
    const strict = { limits: { diffraction: { 'airy-disc': 0.5 } } }
    expect(findingsOf('diffraction', plan({ aperture: 'f/11' }), strict)).toHaveLength(1)
    expect(findingsOf('diffraction', plan({ aperture: 'f/8' }), strict)).toEqual([])
  })

  it('where depth takes the aperture, it offers several frames, not a wider one', () => {
    const rows = `plan: 1
title: A cup, close up
camera: { lens: 100 mm, at: { distance: 60 cm, height: 1 m }, aperture: f/22, shutter: 1/125, iso: 100, held-by: stand }
subject: { kind: object, height: 12 cm, width: 10 cm, depth: 10 cm, stands-on: { height: 94 cm } }
lights:
  key: { unit: head 400 Ws, modifier: softbox 60 x 60 cm, meters: f/22, at: { angle: 60 deg left, distance: 70 cm, height: 1.5 m } }
wanted: { sharp: 10 cm }
`
    const [finding] = findingsOf('diffraction', rows)
    expect(finding!.advice.map(({ title }) => title).join()).toMatch(/^several frames/)
  })
})

describe('recycling at a pace', () => {
  const at = (power: string, shooting: string, unit = 'flashgun') =>
    findingsOf('recycle-slow', plan({ key: `power: ${power}`, wanted: `, shooting: { ${shooting} }`, unit }))

  it('full power every second is lost, a thirty-second keeps up with anything', () => {
    expect(at('full', 'every: 1 s')[0]!.level).toBe('warning')
    expect(at('1/32', 'every: 0.2 s')).toEqual([])
  })

  it('portraits at a quarter every two seconds are fine', () => {
    expect(at('1/4', 'every: 2 s')).toEqual([])
  })

  it('a leap of eight frames comes out of what the flash holds, a dance does not', () => {
    expect(at('1/16', 'every: 0.1 s, frames: 8')).toEqual([])
    expect(at('1/16', 'every: 0.1 s, frames: 200')).toHaveLength(1)
  })

  it('a light that is only to meter something is judged by the power that takes', () => {
    const meters = (reads: string) =>
      findingsOf(
        'recycle-slow',
        plan({ key: `meters: ${reads}`, aperture: reads, wanted: ', shooting: { every: 1 s }' }),
      )
    expect(
      meters('f/8')
        .map(({ message }) => message)
        .join(),
    ).toMatch(/at about /)
    expect(meters('f/2')).toEqual([])
  })

  it('is silent without a pace, and says which line would let it speak', () => {
    expect(findingsOf('recycle-slow', plan({ key: 'power: full' }))).toEqual([])
  })
})

describe('charge', () => {
  const at = (power: string, frames: number, unit = 'flashgun') =>
    findingsOf(
      'charge-short',
      plan({
        key: `power: ${power}`,
        wanted: `, shooting: { every: 5 s, frames: ${frames} }`,
        unit,
      }),
    )

  it('a wedding at full power takes spare cells, a headshot session at an eighth does not', () => {
    const [finding] = at('full', 600)
    expect(finding!.level).toBe('warning')
    expect(finding!.advice[0]!.title).toMatch(/more sets of cells/)
    expect(at('1/8', 600)).toEqual([])
  })

  it('as many spare sets as it names are enough', () => {
    const unit = (spare: number) =>
      `{ guide-number: 36 m at 35 mm, flashes-per-charge: 200, spare-charges: ${spare} }`
    const [finding] = at('full', 700, unit(0))
    const named = Number(/spare-charges: (\d+)/.exec(finding!.advice[0]!.title)![1])
    expect(at('full', 700, unit(named))).toEqual([])
    expect(at('full', 700, unit(2))).toHaveLength(1)
  })

  it('the mains never run short', () => {
    expect(at('full', 100_000, 'head 600 Ws')).toEqual([])
  })
})

describe('who sets the exposure', () => {
  const auto = (camera: string, key: string, rest = '', wanted = '') =>
    findingsOf('automatic-exposure', plan({ camera, key, wanted }, rest))

  it('automatic ISO with a flash set by hand is an error; with metered flash it is how events are shot', () => {
    expect(auto(', exposure: auto-iso', 'power: 1/4')[0]!.level).toBe('error')
    expect(auto(', exposure: auto-iso', 'mode: automatic')).toEqual([])
  })

  it('says how far off the room would take the camera', () => {
    const [finding] = auto(
      ', exposure: auto-iso',
      'power: 1/4',
      'ambient: { reads: f/2.8, shutter: 1/8, iso: 100 }\n',
    )
    // f/8 at 1/125 is EV 13, f/2.8 at 1/8 EV 6: seven stops, and the close-up's tenth.
    expect(finding!.measured['room-over-camera']!.value).toBeCloseTo(-7.1, 0)
  })

  it('before black says manual first, and no compensation that cameras do not have', () => {
    const [found] = findingsOf(
      'automatic-exposure',
      `plan: 1
title: Black before black
camera: { lens: 85 mm, at: { distance: 3 m }, aperture: f/5.6, shutter: 1/125, iso: 200 }
subject: { kind: person, reflectance: 0.05 }
backdrop: { surface: black velvet, width: 4 m, height: 3 m, behind: 1 m }
lights:
  key: { unit: flashgun, modifier: shoot-through umbrella 1 m, mode: automatic, meters: f/5.6, at: { angle: 30 deg left, distance: 1.6 m, height: 2.1 m } }
wanted: { framing: waist, backdrop: black, shadow: any }
`,
    )
    expect(Math.abs(found!.measured['frame-over-grey']!.value)).toBeGreaterThan(3)
    const [first, second] = found!.advice.map(({ title }) => title)
    expect(first).toBe('lights.key.mode → manual')
    // Common practice, no source: one to two stops are dialled in, three is where most cameras end.
    const [, least, most] = /^flash compensation: -(\d)[^t]*to -(\d)[^/]*stops$/.exec(second!)!
    expect(Number(least)).toBe(1)
    expect(Number(most)).toBe(3)
  })

  it('a white wall that fills the frame misleads a flash on the camera by a stop, a grey one does not', () => {
    const wall = (tone: string) =>
      findingsOf(
        'automatic-exposure',
        `plan: 1
title: A flash on the camera
camera: { lens: 50 mm, at: { distance: 2 m }, aperture: f/5.6, shutter: 1/125, iso: 200 }
subject: { kind: person }
backdrop: { surface: ${tone} paint, width: 4 m, behind: 40 cm }
lights:
  key: { unit: flashgun, mode: automatic, at: camera }
wanted: { framing: waist, backdrop: ${tone}, shadow: any }
`,
      )
    const off = wall('white')[0]!.measured['frame-over-grey']!.value
    // By hand: skin of 0.35 as metered, the wall of 0.8 at 2.4 m against 2 m, 0.56, both somewhat less toward the edges
    // of the beam: between log2(0.3 / 0.18) and log2(0.56 / 0.18).
    expect(off).toBeGreaterThan(0.7)
    expect(off).toBeLessThan(1.6)
    expect(wall('grey')).toEqual([])
  })
})

describe('a second unit', () => {
  const advice = (modifier: string, every: string): readonly string[] =>
    findingsOf(
      'recycle-slow',
      `plan: 1
title: A series
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
kit: { units: { gun: { energy: 60 Ws, guide-number: 36 m at 35 mm, recycle: 2 s } } }
lights:
  key: { unit: gun, modifier: ${modifier}, power: full, at: { angle: 30 deg left, distance: 1.4 m, height: 2 m } }
wanted: { shadow: any, shooting: { every: ${every}, frames: 50 } }
`,
    )[0]!.advice.map(({ title }) => title)

  it('stands in for half of the power of a small front or an umbrella, never for a quarter nor of a large front', () => {
    // Common practice, no source.
    expect(advice('softbox 60 x 60 cm', '1.2 s').join()).toMatch(/a second gun beside key, both at 1\/2/)
    expect(advice('white umbrella 1.5 m', '1.2 s').join()).toMatch(/a second gun beside key/)
    for (const titles of [advice('octa 150 cm', '1.2 s'), advice('softbox 60 x 60 cm', '0.5 s')]) {
      expect(titles.length).toBeGreaterThan(0)
      expect(titles.join()).not.toMatch(/side by side|beside/)
    }
  })
})

describe('an automatic flash', () => {
  it('that nothing tells the strength of is asked for what the camera is set to', () => {
    const { notChecked } = checkText(`plan: 1
title: Metered
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/4, shutter: 1/125, iso: 200 }
subject: { kind: person }
lights:
  key: { unit: flashgun, mode: automatic, at: { angle: 30 deg left, distance: 1.4 m, height: 2 m } }
wanted: { shadow: any }
`)
    const { because, enable } = notChecked.find(({ rule }) => rule === 'aperture-off-key')!
    expect(because).toMatch(/^the camera meters key/)
    expect(enable?.text).toBe('meters: f/4')
  })
})

describe('slaves', () => {
  const slave = (key: string, by = 'optical') =>
    findingsOf(
      'slave-false-start',
      plan({
        key,
        more: `  rim: { unit: flashgun, power: 1/16, trigger: { by: ${by} }, at: { angle: 140 deg right, distance: 1.5 m, height: 2 m } }\n`,
      }),
    )

  it('a plain slave fires at the pre-flash of an automatic flash; by radio or by hand nothing does', () => {
    expect(slave('mode: automatic')[0]!.level).toBe('error')
    expect(slave('mode: automatic', 'radio')).toEqual([])
    expect(slave('power: 1/4, trigger: { by: cable }')).toEqual([])
  })

  it('a flash that is off sets nothing off', () => {
    expect(slave('mode: automatic, off: true')).toEqual([])
  })
})
