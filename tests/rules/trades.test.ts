/** Advice that a photographer would give, in the order in which one would. Common practice, no source, unless said. */
import { describe, expect, it } from 'vitest'
import { computeSet } from '../../src/set/compute-set.js'
import { applied } from './apply-advice.js'
import { checkText, findingsOf, planOf } from './check-text.js'

const adviceFor = (rule: string, text: string) => findingsOf(rule, text)[0]!.advice
const metres = (text: string): number => Number.parseFloat(text) / (/\bcm/.test(text) ? 100 : 1)

const paper = (power: string, behind = '2 m', before = '1.5 m') => `plan: 1
title: One flash on white paper
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: white paper, behind: ${behind} }
lights:
  key: { unit: head 400 Ws, modifier: octa 90 cm, meters: f/5.6, at: { angle: 30 deg left, distance: 1.4 m, height: 2 m } }
  paper: { role: backdrop, unit: flashgun, power: ${power}, at: { left: 1.5 m, before-backdrop: ${before}, height: 1.6 m } }
readings:
  - { at: backdrop, of: [paper], reads: f/5.6, taken: { paper: { power: 1/4 } } }
wanted: { backdrop: white, framing: head and shoulders }
`

describe('white from one light at the side', () => {
  it('where full power makes the middle too hot, a second light comes first and the trade is named', () => {
    const [first, second] = adviceFor('backdrop-below-white', paper('1/8'))
    expect(first!.title).toMatch(/^a second light for the backdrop/)
    expect(second!.title).toMatch(/^lights\.paper\.power → /)
    expect(second!.costs).toMatch(/then .*stops? over the key, 1 stop is the limit/)
  })

  it('never says that nothing is missing and the light too weak at once', () => {
    for (const power of ['1/2', '1/4', '1/8', '1/16', '1/32', '1/64'])
      for (const { advice } of findingsOf('backdrop-below-white', paper(power)))
        for (const { gives = '' } of advice) expect(gives).not.toMatch(/\b0 stops short/)
  })
})

describe('a backdrop light that is too strong', () => {
  it('is not sent past the subject', () => {
    // Two stops under its least: four times the distance before the paper would stand beside the sitter.
    const text = paper('1/512', '1.2 m', '90 cm')
    const advice = adviceFor('power-beyond-range', text)
    expect(advice.length).toBeGreaterThan(0)
    for (const { title } of advice) {
      const to = /before-backdrop → ([\d.]+ c?m)/.exec(title)
      if (to !== null) expect(metres(to[1]!)).toBeLessThanOrEqual(0.9)
    }
  })
})

const tight = (framing: string) => `plan: 1
title: A roll that is too narrow
camera: { lens: 50 mm, at: { distance: 3 m, height: 1 m }, frame: horizontal, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: white paper, width: 1.35 m, height: 3.5 m, behind: 60 cm }
lights:
  key: { unit: head 400 Ws, modifier: octa 120 cm, meters: f/8, at: { angle: 30 deg left, distance: 2 m, height: 2.2 m } }
wanted: { framing: ${framing}, backdrop: any }
`

describe('a frame past the roll', () => {
  it('gets the wider roll first: 3.6 m × 36/50 needs 2.59 m by similar triangles, and 2.72 m is made', () => {
    const [first] = adviceFor('frame-past-backdrop', tight('full length'))
    expect(first!.title).toBe('backdrop.width → 2.72 m')
  })

  it('is never cured by cutting off what the framing is to hold', () => {
    const titles = adviceFor('frame-past-backdrop', tight('full length')).map(({ title }) => title)
    expect(titles.filter((title) => /camera\.(lens|at\.distance)/.test(title))).toEqual([])
    const free = adviceFor('frame-past-backdrop', tight('face').replace('height: 1 m', 'height: 1.6 m')).map(
      ({ title }) => title,
    )
    expect(free.some((title) => /camera\.(lens|at\.distance)/.test(title))).toBe(true)
  })
})

describe('a frame that cuts the seated sitter’s chin', () => {
  it('is pointed at the face before anything else is moved', () => {
    const text = `plan: 1
title: Beauty
camera: { lens: 100 mm, frame: vertical, at: { distance: 1.6 m, height: 1.55 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person, pose: seated }
lights:
  key: { unit: head 400 Ws, modifier: octa 90 cm, meters: f/8, at: { angle: 0 deg, distance: 1 m, height: 1.9 m } }
wanted: { framing: face }
`
    const [first] = adviceFor('subject-cropped', text)
    expect(first!.title).toBe('camera.aim → subject')
    const after = text.replace('height: 1.55 m }', 'height: 1.55 m }, aim: subject')
    expect(checkText(after).findings.map((one) => one.rule)).not.toContain('subject-cropped')
  })
})

const off = (aperture: string, unit: string, more = '') => `plan: 1
title: Set beside the key
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: ${aperture}, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: white paper, behind: 1.5 m }
lights:
  key: { unit: ${unit}, at: { angle: 30 deg left, distance: 1.4 m, height: 2 m } }
${more}wanted: { framing: head and shoulders, backdrop: any }
`

describe('a key that the camera is not set to', () => {
  const read = (reads: string) =>
    `readings:\n  - { at: subject, of: [key], reads: ${reads}, faces: camera, taken: { key: { power: 1/4, distance: 1.4 m } } }\n`

  it('takes the backdrop along where it lights that as well', () => {
    const text = off('f/8', 'head 400 Ws, modifier: octa 90 cm, power: 1/4', read('f/5.6'))
    const power = adviceFor('aperture-off-key', text).find(({ title }) => /power/.test(title))
    expect(power!.gives).toMatch(/the backdrop 1\.1 stops lighter with it/)
    expect(power!.costs ?? '').not.toMatch(/against/)
  })

  it('says what close focus takes of it: 2·log2(1 + m), m = f/(s − f), 0.1 stop with 85 mm at 2.5 m', () => {
    const [finding] = findingsOf(
      'aperture-off-key',
      off('f/8', 'head 400 Ws, modifier: octa 90 cm, power: 1/4', read('f/5.6')),
    )
    expect(finding!.why).toMatch(/0\.1 stop of it is lost to close focus/)
  })

  it('of light that burns on goes by the shutter, and never past f/1.2', () => {
    const advice = adviceFor('aperture-off-key', off('f/2.8', 'led panel, power: 1/4'))
    expect(advice.some(({ title }) => /^camera\.shutter → /.test(title))).toBe(true)
    for (const { title } of advice) {
      const to = /camera\.aperture → f\/([\d.]+)/.exec(title)
      if (to !== null) expect(Number(to[1])).toBeGreaterThanOrEqual(1.2)
    }
  })
})

describe('two rows under two umbrellas', () => {
  const rows = (height: string) => `plan: 1
title: Family
camera: { lens: 35 mm, at: { distance: 5 m, height: 1.4 m }, aim: subject, aperture: f/5.6, shutter: 1/125, iso: 200 }
subject:
  kind: group
  rows:
    - { people: 3, spacing: 60 cm, faces-at: 1.1 m }
    - { people: 3, spacing: 60 cm, behind: 90 cm, faces-at: 1.6 m }
lights:
  key: { unit: head 600 Ws, modifier: white umbrella 1.5 m, meters: f/5.6, at: { angle: 20 deg left, distance: 3 m, height: ${height} } }
wanted: { framing: all, sharp: rows }
`
  it('are raised first, and the height that is named does what it says', () => {
    const [before] = findingsOf('group-uneven', rows('1.9 m'))
    const [first] = before!.advice
    const left =
      findingsOf('group-uneven', applied(rows('1.9 m'), first!.title)!)[0]?.measured.spread?.value ?? 0
    expect(left).toBeLessThan(before!.measured.spread!.value - 0.05)
  })

  // On its stand a light goes up and stays over its feet: nearer the camera's axis it would be another light.
  it.each(['1.9 m', '2.2 m'])('and stay where they stand: the tape grows by Pythagoras (%s)', (height) => {
    const text = rows(height)
    const [first] = findingsOf('group-uneven', text)[0]!.advice
    expect(first!.gives).toMatch(/^straight up where it stands: /)
    const [was, is] = [text, applied(text, first!.title)!].map(
      (one) => computeSet(planOf(one)).scene.lights.get('key')!.front!.centre,
    )
    expect(is![2]).toBeGreaterThan(was![2] + 0.15)
    for (const axis of [0, 1] as const) expect(Math.abs(is![axis] - was![axis])).toBeLessThan(0.06)
  })
})

describe('a flash too close to the paper for any zoom', () => {
  it('is sent through an umbrella, or gets a second one', () => {
    const text = `plan: 1
title: From behind the sitter
camera: { lens: 85 mm, at: { distance: 2 m }, aperture: f/5.6, shutter: 1/125, iso: 200 }
subject: { kind: person }
backdrop: { surface: white paper, width: 1.35 m, behind: 1.4 m }
lights:
  key: { unit: flashgun, modifier: white umbrella 1 m, power: 1/4, at: { angle: 30 deg left, distance: 1.2 m, height: 2 m } }
  paper: { role: backdrop, unit: flashgun, zoom: 105 mm, power: 1/16, at: { left: 0 cm, before-backdrop: 40 cm, height: 60 cm } }
wanted: { backdrop: white, framing: head and shoulders }
`
    expect(adviceFor('beam-short', text).at(-1)!.title).toBe(
      'paper through an umbrella, or a second light from the other side',
    )
  })
})

describe('a light that is raised by its tape', () => {
  // 1.6 m of tape, 60 cm over the faces: 1.48 m on the floor; 1.1 m over them: 1.16 m.
  it('is said to come in on the floor', () => {
    const text = `plan: 1
title: Close over a group
camera: { lens: 50 mm, at: { distance: 4.4 m, height: 1.6 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: group, rows: [ { people: 3, spacing: 60 cm, faces-at: 1.6 m } ] }
lights:
  key: { unit: head 400 Ws, modifier: octa 90 cm, meters: f/8, at: { angle: 30 deg right, distance: 1.6 m, height: 2.2 m } }
wanted: { framing: head and shoulders, backdrop: any }
`
    const raised = findingsOf('light-in-frame', text)[0]!.advice.find(({ title }) =>
      /height → 2.7 m/.test(title),
    )
    expect(raised?.costs).toMatch(/by the same tape it stands 32 cm nearer on the floor/)
  })
})

describe('a unit that cannot give what it is to meter', () => {
  const rim = (more: string, meters = 'f/8') => `plan: 1
title: A rim past a flag
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
  key: { unit: head 400 Ws, modifier: octa 90 cm, meters: f/8, at: { angle: 30 deg left, distance: 1.4 m, height: 2 m } }
  rim: { unit: flashgun, meters: ${meters}, at: { right: 1 m, behind: 1.5 m, height: 1.8 m } }
${more}
`
  const flag =
    'panels: { flag: { kind: flag, size: 1 x 1 m, at: { right: 50 cm, behind: 75 cm, height: 1.7 m }, faces: camera }, board: { kind: reflector, size: 1 x 1 m, at: { left: 1 m, behind: 1 m, height: 1.6 m }, faces: right } }'

  it('behind a flag is not replaced by a hundred of them: the flag goes', () => {
    expect(findingsOf('unit-too-weak', rim(''))).toEqual([])
    const [found] = findingsOf('unit-too-weak', rim(flag))
    expect(found!.why).toMatch(/flag stands between and hides it/)
    expect(found!.advice.map(({ title }) => title)).toEqual(['flag out of the way of rim'])
  })

  it('is told by how much, where more than four would be needed', () => {
    const titles = (meters: string) =>
      findingsOf('unit-too-weak', rim('', meters))[0]!.advice.map(({ title }) => title)
    expect(titles('f/128').at(-1)).toMatch(/^another unit, that gives \d.* stops more$/)
    for (const meters of ['f/45', 'f/64', 'f/90', 'f/128'])
      for (const title of titles(meters)) expect(title).not.toMatch(/^([5-9]|\d\d+) alike/)
  })
})
