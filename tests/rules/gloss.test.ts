/** What mirrors, told by rules: figures against closed forms of the trade's geometry and of optics. */
import { describe, expect, it } from 'vitest'
import { lightInGlasses } from '../../src/picture/in-glasses.js'
import { buildScene } from '../../src/scene/build-scene.js'
import { inDegrees } from '../../src/units/quantity.js'
import { checkText, findingsOf, planOf } from './check-text.js'

const measured = (rule: string, text: string, name: string): number =>
  findingsOf(rule, text)[0]!.measured[name]!.value

const rad = (degrees: number): number => (degrees * Math.PI) / 180

/** Fresnel's equations by the angles, in the other usual form: sin² and tan² of difference and sum. */
const fresnel = (degrees: number): number => {
  const a = rad(degrees)
  const b = Math.asin(Math.sin(a) / 1.5)
  return (Math.sin(a - b) ** 2 / Math.sin(a + b) ** 2 + Math.tan(a - b) ** 2 / Math.tan(a + b) ** 2) / 2
}

describe('backdrop-mirrors-light', () => {
  // A small box and the lens, beside a small thing, each half a metre over the table and half a metre from its middle: both at 45 degrees.
  const table = (more: string, reflectance = 0.05): string => `plan: 1
title: Gloss at 45 degrees
camera: { lens: 50 mm, at: { distance: 50 cm, height: 1.3 m, aside: 20 cm right }, aim: middle, aperture: f/11, shutter: 1/125, iso: 100, held-by: stand }
subject: { kind: object, height: 2 cm, width: 2 cm, stands-on: { height: 80 cm, surface: { reflectance: ${reflectance} }, size: 60 x 60 cm, ${more} } }
lights:
  key: { unit: head 200 Ws, modifier: softbox 10 x 10 cm, meters: f/2, at: { right: 20 cm, behind: 50 cm, height: 1.3 m }, aim: middle }
points: { middle: { right: 20 cm, height: 80 cm } }
wanted: { backdrop: any, shadow: any }
`

  it('is lighter by log2(1 + F·π·d²/(ρ·A·cos θ)), whatever the light gives', () => {
    // An even front of luminance L lights the table by L·A·cos θ/d², of which it gives back ρ/π; it mirrors F·L.
    const text = table('finish: glossy', 0.9)
    const d = Math.SQRT1_2
    const wanted = Math.log2(1 + (fresnel(45) * Math.PI * d * d) / (0.9 * 0.01 * Math.SQRT1_2))
    expect(measured('backdrop-mirrors-light', text, 'lighter')).toBeCloseTo(wanted, 1)
    expect(findingsOf('backdrop-mirrors-light', text)[0]!.message).toMatch(/^key is seen in the glossy table/)
  })

  it('glossy warns, satin notes and spreads it, matte is silent', () => {
    const level = (finish: string) =>
      findingsOf('backdrop-mirrors-light', table(`finish: ${finish}`)).map((one) => one.level)
    expect(level('glossy')).toEqual(['warning'])
    expect(level('satin')).toEqual(['note'])
    expect(level('matte')).toEqual([])
    expect(measured('backdrop-mirrors-light', table('finish: satin'), 'lighter')).toBeLessThan(
      measured('backdrop-mirrors-light', table('finish: glossy'), 'lighter') - 1,
    )
  })

  it('says which light is not known where its image is in the picture', () => {
    const unknown = table('finish: glossy').replace(' meters: f/2,', '')
    expect(checkText(unknown).notChecked).toContainEqual(
      expect.objectContaining({
        rule: 'backdrop-mirrors-light',
        because: 'nothing in the plan tells how much light key gives',
      }),
    )
  })
})

describe('glasses-mirror-light', () => {
  const portrait = (at: string): string => `plan: 1
title: Glasses
camera: { lens: 85 mm, at: { distance: 1.8 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person, glasses: true }
lights:
  key: { unit: head 400 Ws, modifier: softbox 90 x 90 cm, meters: f/8, at: ${at} }
`
  const advice = (at: string) => findingsOf('glasses-mirror-light', portrait(at))[0]!.advice

  it('finds the least that will do: a step less leaves it within two degrees of the zone', () => {
    const inside = (at: string): number => {
      const plan = planOf(portrait(at))
      const scene = buildScene(plan)
      const seen = lightInGlasses(scene, scene.subject.figures[0]!, scene.lights.get('key')!)
      return seen === undefined ? Number.NEGATIVE_INFINITY : inDegrees(seen.inside)
    }
    const at = (angle: number, height: number) =>
      `{ angle: ${angle} deg left, distance: 1.5 m, height: ${height.toFixed(2)} m }`
    for (const angle of [25, 30, 40]) {
      const [up, round] = advice(at(angle, 2)).map(({ title }) => title)
      const height = Number(/height → ([\d.]+) m/.exec(up!)![1])
      expect(inside(at(angle, height))).toBeLessThanOrEqual(-2)
      expect(inside(at(angle, height - 0.05))).toBeGreaterThan(-2)
      const turned = Number(/angle → (\d+) deg left/.exec(round!)![1])
      expect(inside(at(turned, 2))).toBeLessThanOrEqual(-2)
      expect(inside(at(turned - 5, 2))).toBeGreaterThan(-2)
    }
  })

  it('brings a box of 0.9 m where practitioners bring it: its lower edge some 15 degrees up, or 50 round', () => {
    // Common practice: a lower edge about 20 degrees up, or past 35 to 40 degrees with half of its width.
    const [up, round] = advice('{ angle: 30 deg left, distance: 1.5 m, up: 20 deg }')
    expect(up!.title).toBe('lights.key.at.up → 35 deg')
    expect(round!.title).toMatch(/angle → 5\d deg left/)
  })

  it('tilts the head away from the side on which the light lies, by as much as rays and no less', () => {
    const small = (at: string): string => portrait(at).replace('softbox 90 x 90 cm', 'softbox 30 x 30 cm')
    const low = '{ angle: 0 deg, distance: 2.1 m, height: 25 cm }'
    const high = '{ angle: 0 deg, distance: 2.1 m, height: 1.75 m }'
    for (const [at, says, way] of [
      [low, 'chin up a little', -1],
      [high, 'chin down a little, or the arms of the glasses lifted off the ears', 1],
    ] as const) {
      const found = findingsOf('glasses-mirror-light', small(at))[0]!
      const tilt = found.advice.find(({ title }) => title.startsWith('chin'))!
      expect(tilt.title).toBe(says)
      const by = Number(/^(\d+) deg of tilt/.exec(tilt.gives!)![1])
      const plan = planOf(small(at))
      const scene = buildScene(plan)
      const [figure] = scene.subject.figures
      // By hand: the lens leans by 8 degrees and bears normals 14 to either side of that; the normal halves the angle.
      const { eye } = scene.camera
      const front = scene.lights.get('key')!.front!
      const elevation = (to: readonly number[]) =>
        (Math.atan2(
          to[2]! - figure!.face[2],
          Math.hypot(to[0]! - figure!.face[0], to[1]! - figure!.face[1]),
        ) *
          180) /
        Math.PI
      const half = (15 / 210) * (180 / Math.PI)
      const edge = elevation(front.centre) - way * half
      const normal = (elevation(eye) + edge) / 2
      const needed = way > 0 ? 14 - 8 - normal : normal - (-14 - 8)
      expect(by).toBeGreaterThan(needed)
      expect(by).toBeLessThan(needed + 2.6)
    }
  })

  it('does not tilt a head from a front that fills what the glasses mirror', () => {
    const wide = portrait('{ angle: 0 deg, distance: 1.1 m, height: 1.2 m }')
    const [found] = findingsOf('glasses-mirror-light', wide)
    expect(found!.advice.filter(({ title }) => title.startsWith('chin'))).toEqual([])
  })

  it('leaves a light in peace that is too weak to show', () => {
    const fill = (meters: string) =>
      findingsOf(
        'glasses-mirror-light',
        portrait('{ angle: 30 deg left, distance: 1.5 m, up: 40 deg }') +
          `  fill: { unit: head 400 Ws, modifier: octa 120 cm, meters: ${meters}, at: { angle: 35 deg right, distance: 1.4 m, height: 1.7 m } }\n`,
      ).length
    expect(fill('f/5.6')).toBe(1)
    expect(fill('f/1.4')).toBe(0)
  })
})

describe('gloss-shows', () => {
  const bottle = (light: string, more = '', subject = 'width: 8 cm, finish: glossy'): string => `plan: 1
title: Bottle
camera: { lens: 100 mm, at: { distance: 1.5 m, height: 1.05 m }, aim: subject, aperture: f/11, shutter: 1/125, iso: 100, held-by: stand }
subject: { kind: object, height: 30 cm, ${subject}, stands-on: { height: 80 cm, size: 20 x 20 cm } }
backdrop: { surface: white paper, behind: 1 m }
lights:
  key: { unit: flashgun, ${light} }
${more}wanted: { backdrop: any, shadow: any }
`
  const bare = 'meters: f/11, at: { left: 80 cm, front: 20 cm, height: 1.1 m }'

  it('names a bare head as a hot spot, and a strip of the length that it says as a long highlight', () => {
    const [found] = findingsOf('gloss-shows', bottle(bare))
    expect(found!.message).toMatch(/^the object shows key as a hot spot \d+ % in from its camera-left edge$/)
    const [, high, at] = /strip or a scrim (\S+ \S?m) high .* its middle at (\S+ \S?m)/.exec(
      found!.advice[0]!.title,
    )!
    const mended = bottle(
      `modifier: strip 10 x ${high}, ${bare.replace('1.1 m', at!)}`.replace('10 x', '10 cm x'),
    )
    expect(findingsOf('gloss-shows', mended)[0]!.message).toMatch(/long highlight, \d % of its width/)
    // The table keeps the foot of the bottle from it.
    expect(measured('gloss-shows', mended, 'key-height')).toBeGreaterThan(0.8)
  })

  it('black cards are dark edges, however bright they are lit', () => {
    const glass = `plan: 1
title: A glass before a bright ground
camera: { lens: 105 mm, frame: vertical, at: { distance: 1.5 m, height: 1 m }, aperture: f/11, shutter: 1/125, iso: 100, held-by: stand }
subject: { kind: object, height: 22 cm, width: 8 cm, finish: clear, stands-on: { height: 88 cm, size: 20 x 20 cm } }
backdrop: { surface: white paper, behind: 80 cm }
lights:
  paper: { role: backdrop, unit: head 400 Ws, meters: f/16, at: { left: 50 cm, before-backdrop: 50 cm, height: 60 cm } }
panels:
  black-left: { kind: flag, size: 20 x 60 cm, at: { left: 16 cm, behind: 5 cm, height: 1.05 m }, faces: right }
  black-right: { kind: flag, size: 20 x 60 cm, at: { right: 16 cm, behind: 5 cm, height: 1.05 m }, faces: left }
wanted: { backdrop: white, shadow: any }
`
    const [alone] = findingsOf('gloss-shows', glass)
    expect(alone!.message).toBe(
      'bright field: dark edges draw the object before the backdrop; it shows no light',
    )
    const lit = glass.replace(
      'lights:\n',
      'lights:\n  key: { unit: head 400 Ws, modifier: softbox 60 x 60 cm, meters: f/2.8, at: { left: 20 cm, front: 60 cm, height: 1.3 m } }\n',
    )
    const [found] = findingsOf('gloss-shows', lit)
    expect(found!.message).toMatch(/black-\w+ as a dark (edge|stripe)/)
    expect(found!.message).not.toMatch(/black-\w+ as a (long|patch|hot)/)
  })

  it('says what the edges mirror: black cards, or the backdrop', () => {
    const cards =
      'panels:\n  card-left: { kind: flag, size: 20 x 60 cm, at: { left: 25 cm, behind: 15 cm, height: 95 cm }, faces: right }\n'
    expect(findingsOf('gloss-shows', bottle(bare))[0]!.why).toMatch(/both of its edges mirror the backdrop$/)
    expect(findingsOf('gloss-shows', bottle(bare, cards))[0]!.why).toMatch(
      /camera-left edge mirrors card-left \(dark\), its camera-right edge the backdrop$/,
    )
    const clear = 'width: 8 cm, finish: clear'
    const advice = (more: string, subject: string) =>
      findingsOf('gloss-shows', bottle(bare, more, subject))[0]!.advice.map(({ title }) => title)
    expect(advice('', clear)).toContainEqual(expect.stringMatching(/^black cards/))
    expect(advice('', 'width: 8 cm, finish: glossy')).not.toContainEqual(
      expect.stringMatching(/^black cards/),
    )
  })

  it('names lights of which nothing tells how strong they are, but no panel by them', () => {
    const card =
      'panels:\n  card: { kind: reflector, surface: white board, size: 30 x 60 cm, at: { right: 40 cm, height: 95 cm }, faces: subject }\n'
    const said = (light: string) => findingsOf('gloss-shows', bottle(light, card))[0]!.message
    expect(said(bare)).toMatch(/key as .* and card as |card as .* and key as /)
    expect(said(bare.replace('meters: f/11, ', ''))).toMatch(/^the object shows key as (?!.*card)/)
  })

  it('leaves a flat thing in peace that shows no light, and moves the light that it shows', () => {
    const flat = 'width: 30 cm, depth: 3 cm, finish: glossy, shape: plane'
    expect(findingsOf('gloss-shows', bottle(bare, '', flat))).toEqual([])
    const over =
      'modifier: softbox 40 x 40 cm, meters: f/11, at: { left: 36 cm, front: 1.2 m, height: 1.05 m }'
    const [found] = findingsOf('gloss-shows', bottle(over, '', flat))
    expect(found!.advice[0]!.title).toMatch(/^lights\.key\.at\.left → /)
  })
})

describe('a reflected reading off a glossy thing', () => {
  const read = (finish: string) =>
    checkText(`plan: 1
title: Read off a vase
camera: { lens: 85 mm, at: { distance: 1.5 m }, aperture: f/8, shutter: 1/125, iso: 100, held-by: stand }
subject: { kind: object, height: 30 cm, reflectance: 0.2, finish: ${finish}, stands-on: { height: 80 cm } }
lights:
  key: { unit: head 200 Ws, modifier: softbox 60 x 90 cm, power: 1/8, at: { angle: 40 deg left, distance: 1 m, height: 1.5 m } }
readings:
  - { at: subject, of: [key], reads: f/5.6, kind: reflected, taken: { key: { power: 1/8 } } }
`)

  it('tells nothing of the lights: it shows what is around', () => {
    expect(JSON.stringify(read('glossy').remarks)).toMatch(/nothing says how much the surface reflects/)
    expect(JSON.stringify(read('matte').remarks)).not.toMatch(/how much the surface reflects/)
  })
})
