/** Shadows as the rules tell them. Facts of the trade are common practice, no source. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { subtract, unit, type Vec3 } from '../../src/scene/vector.js'
import { hiddenByHand } from '../set/lines-of-sight.js'
import { contextOf, findingsOf, planOf } from './check-text.js'

/** One box of 2 m right behind the camera, unless said. */
const large = (aside: string, behind = '0.5 m', more = '', height = '1.6 m', wanted = ''): string => `plan: 1
title: One large source behind the camera
camera: { lens: 85 mm, at: { distance: 3 m, aside: ${aside} }, aim: subject, aperture: f/8, shutter: 1/125, iso: 100, held-by: stand }
subject: { kind: person }
backdrop: { surface: { reflectance: 0.5 }, width: 4 m, height: 3 m, behind: ${behind} }
lights:
  large: { unit: head 600 Ws, modifier: softbox 2 x 2 m, meters: f/8, at: { angle: 0 deg left, distance: 4 m, height: ${height} } }
${more}wanted: { framing: head and shoulders, backdrop: any${wanted} }
`

describe('a camera before one large source', () => {
  it('may stand on its axis, and not half a metre aside', () => {
    expect(findingsOf('camera-off-source-axis', large('0 cm right'))).toEqual([])
    const [found] = findingsOf('camera-off-source-axis', large('50 cm right'))
    expect(found!.level).toBe('warning')
    expect(found!.measured.depth!.value - found!.measured['other-side']!.value).toBeGreaterThan(1)
  })

  it('is told how far it may go, which is where the finding begins', () => {
    const [found] = findingsOf('camera-off-source-axis', large('50 cm right'))
    const half = Number(/up to (\d+) cm off/.exec(found!.why)?.[1])
    expect(half).toBeGreaterThan(3)
    expect(half).toBeLessThan(30)
    expect(findingsOf('camera-off-source-axis', large(`${half - 3} cm right`))).toEqual([])
    expect(findingsOf('camera-off-source-axis', large(`${half + 4} cm left`))).not.toEqual([])
  })

  it('has no such place where the light comes from so low that the shadow stands over the head', () => {
    const [found] = findingsOf('camera-off-source-axis', large('60 cm right', '0.8 m', '', '30 cm'))
    expect(found!.why).toMatch(/none at this separation/)
    expect(found!.advice.map(({ title }) => title).filter((title) => /aside/.test(title))).toEqual([])
  })

  it('is also told of the shadow itself where none is wanted', () => {
    const text = large('50 cm right', '0.5 m', '', '1.6 m', ', shadow: hidden')
    const [axis] = findingsOf('camera-off-source-axis', text)
    const [seen] = findingsOf('shadow-in-frame', text)
    expect(seen!.cause).toBe(axis!.cause)
    expect(findingsOf('shadow-in-frame', large('50 cm right'))).toEqual([])
  })

  it('need not mind where any shadow will do', () => {
    expect(
      findingsOf('camera-off-source-axis', large('50 cm right', '0.5 m', '', '1.6 m', ', shadow: any')),
    ).toEqual([])
  })
})

describe('a shadow beside the head', () => {
  // Reported: at 0.3 m beside the head and fairly sharp, at a metre out of the frame.
  const reported = readFileSync(join(import.meta.dirname, '../cases/plans/W23.plan.yaml'), 'utf8')
  const at = (behind: string, wanted = 'hidden') =>
    findingsOf(
      'shadow-in-frame',
      reported.replace('behind: 30 cm', `behind: ${behind}`).replace('shadow: hidden', `shadow: ${wanted}`),
    )

  it('shows close to the wall and not well off it, the shallower the farther', () => {
    const depths = ['30 cm', '60 cm', '80 cm', '100 cm'].map((behind) => at(behind)[0]!.measured.depth!.value)
    for (let i = 1; i < depths.length; i++) expect(depths[i]!).toBeLessThan(depths[i - 1]!)
    expect(at('1.2 m')).toEqual([])
  })

  it('is a warning where none is wanted, a note where a soft one is', () => {
    expect(at('30 cm').map(({ level }) => level)).toEqual(['warning'])
    expect(at('30 cm', 'soft').map(({ level }) => level)).toEqual(['note'])
    expect(at('30 cm', 'any')).toEqual([])
  })

  it('is not seen on paper that records white with it and without', () => {
    const paper = (meters: string) =>
      large(
        '0 cm right',
        '1.5 m',
        `  paper-left: { role: backdrop, unit: head 600 Ws, modifier: standard reflector, meters: ${meters}, at: { left: 1.6 m, before-backdrop: 0.8 m, height: 1.6 m } }\n  paper-right: { like: paper-left, mirrored: true }\n`,
        '1.6 m',
        ', shadow: hidden',
      ).replace('reflectance: 0.5', 'reflectance: 0.9')
    expect(findingsOf('shadow-in-frame', paper('f/16'))).toEqual([])
  })
})

describe('who stands in the light', () => {
  const behind = (size: string, more = '') =>
    large('0 cm right')
      .replace('held-by: stand', 'held-by: person')
      .replace('softbox 2 x 2 m', `softbox ${size}`)
      .replace('lights:\n', `${more}lights:\n`)
  const lost = (text: string): number =>
    findingsOf('operator-blocks-source', text)[0]?.measured.lost?.value ?? 0

  it('takes what lines of sight say that they take', () => {
    const text = behind('90 x 90 cm')
    const { set } = contextOf('operator-blocks-source', planOf(text))
    const { face } = set.scene.subject.figures[0]!
    const toCamera = unit(subtract(set.scene.camera.eye, face))
    const dome = (toward: Vec3) =>
      (1 + toward[0] * toCamera[0] + toward[1] * toCamera[1] + toward[2] * toCamera[2]) / 2
    const share = hiddenByHand(set, set.scene.operator!, face, dome, 40, 'large')
    expect(Math.abs(lost(text) + Math.log2(1 - share))).toBeLessThan(0.03)
  })

  it('takes the less, the larger the front', () => {
    expect(lost(behind('60 x 60 cm'))).toBeGreaterThan(lost(behind('90 x 90 cm')))
    expect(findingsOf('operator-blocks-source', behind('2 x 2 m'))).toEqual([])
  })

  it('is no scrim, which passes the light on', () => {
    const panel = (kind: string) => `plan: 1
title: Panel before the key
camera: { lens: 85 mm, at: { distance: 2.6 m }, aperture: f/8, shutter: 1/125, iso: 100, held-by: stand }
subject: { kind: person }
lights:
  key: { unit: head 400 Ws, modifier: softbox 60 x 60 cm, power: 1/2, at: { angle: 40 deg left, distance: 2 m, height: 1.9 m } }
panels:
  before: { ${kind}, size: 100 x 100 cm, at: { left: 60 cm, front: 70 cm, height: 1.75 m }, faces: subject }
`
    expect(findingsOf('shadow-on-person', panel('kind: flag'))).toHaveLength(1)
    expect(findingsOf('shadow-on-person', panel('kind: scrim, transmits: 45 %'))).toEqual([])
  })
})
