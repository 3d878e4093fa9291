/** What a bright backdrop costs, as the rules say it. Facts of the trade are common practice, no source. */
import { describe, expect, it } from 'vitest'
import { crossing, twoLimits } from '../../src/rules/backdrop/two-limits.js'
import { contextOf, findingsOf, planOf } from './check-text.js'

/** Large umbrellas from well aside light the paper evenly; its middle comes to about a stop over the key. */
const white = (behind: number, each = 'f/7.1', more = ''): string => `plan: 1
title: Headshot on white
camera: { lens: 105 mm, at: { distance: 2.6 m }, aperture: f/8, shutter: 1/125, iso: 100, held-by: stand }
subject: { kind: person }
backdrop: { surface: white paper, behind: ${behind} m }
lights:
  key: { unit: head 400 Ws, modifier: softbox 60 x 90 cm, grid: 40 deg, meters: f/8, at: { angle: 35 deg left, distance: 1.3 m, height: 2 m } }
  paper-left: { role: backdrop, unit: head 600 Ws, modifier: standard reflector, meters: ${each}, at: { left: 2.2 m, before-backdrop: 1.3 m, height: 1.6 m } }
  paper-right: { like: paper-left, mirrored: true }
${more}wanted: { framing: head and shoulders, backdrop: white, shadow: any }
`

const limitsOf = (text: string) => twoLimits(contextOf('backdrop-above-limit', planOf(text)))!

const over = (text: string): number => {
  const { set } = contextOf('backdrop-above-limit', planOf(text))
  return set.backdropView!.middle.overCamera.stops - set.key!.overCamera.stops
}

describe('separation', () => {
  it('a stop over the key wraps at a metre and a half, and is no fault at two metres and forty', () => {
    expect(over(white(2.4))).toBeGreaterThan(0.7)
    expect(over(white(2.4))).toBeLessThan(1.2)
    const [near] = findingsOf('edge-wrap', white(1.5))
    expect(near!.measured['re-key']!.value).toBeGreaterThan(-1)
    expect(findingsOf('edge-wrap', white(1.5, 'f/8')).map(({ level }) => level)).toEqual(['warning'])
    expect(findingsOf('edge-wrap', white(2.4))).toEqual([])
  })

  it('lets the backdrop be the brighter, the farther it is', () => {
    const bearable = [1.2, 1.8, 2.4, 3].map((behind) => limitsOf(white(behind)).bearable)
    for (let i = 1; i < bearable.length; i++) expect(bearable[i]!).toBeGreaterThan(bearable[i - 1]!)
  })
})

describe('the two limits for a white backdrop', () => {
  it('do not depend on how bright it is today', () => {
    const [low, high] = [limitsOf(white(2, 'f/4')), limitsOf(white(2, 'f/16'))]
    expect(low.white).toBeCloseTo(high.white, 1)
    // Haze has light of its own in the frame, so that its limit moves a little with the key's share.
    expect(low.bearable).toBeCloseTo(high.bearable, 0)
  })

  it('are where turning the lights to them brings the darkest point to white, and the wrap to its limit', () => {
    const text = white(1.6, 'f/5.6')
    const limits = limitsOf(text)
    const { set } = contextOf('edge-wrap', planOf(text))
    const turned = (by: number) =>
      set.with(
        { knob: { knob: 'strength', light: 'paper-left' }, to: by },
        { knob: { knob: 'strength', light: 'paper-right' }, to: by },
      )
    const atWhite = turned(limits.turn)
    expect(atWhite.backdropView!.darkest.linear).toBeCloseTo(2 ** 0.25, 2)
    const [now] = [over(text)]
    expect(limits.white).toBeGreaterThan(now)
    expect(limits.by).toBe('wrap')
    // Little of the paper's light is the key's: stop for stop.
    const wrap = Math.max(...turned(limits.bearable - now).wrap.map(({ reKey }) => reKey.stops))
    expect(Math.abs(wrap + 1.5)).toBeLessThan(0.1)
  })

  it('cross near the paper, which is then said with distances that uncross them', () => {
    const text = white(1.2, 'f/5.6')
    expect(crossing(limitsOf(text))).not.toBe('none')
    const [finding] = findingsOf('backdrop-below-white', text)
    expect(finding!.why).toMatch(/the two cross/)
    const titles = finding!.advice.map(({ title }) => title).join('\n')
    const behind = /backdrop\.behind → ([\d.]+) m/.exec(titles)
    if (behind !== null) expect(crossing(limitsOf(white(Number(behind[1]), 'f/5.6')))).toBe('none')
    expect(titles).toMatch(/backdrop\.behind|v-flats|evenly|second light/)
  })

  it('leave room between them far off, and say so', () => {
    const [finding] = findingsOf('backdrop-above-limit', white(3.2, 'f/11'))
    expect(finding!.why).toMatch(/in between is right/)
  })

  it('are far off where little comes back, and it is the house limit that speaks', () => {
    const far = white(7, 'f/9').replace('105 mm', '200 mm').replace('distance: 2.6 m', 'distance: 5 m')
    const [finding] = findingsOf('backdrop-above-limit', far)
    expect(finding!.why).toMatch(/house limit/)
  })
})

describe('a light into the lens', () => {
  const rim = (panel: string) =>
    white(
      2.4,
      'f/7.1',
      `  rim: { unit: head 400 Ws, modifier: strip 30 x 120 cm, meters: f/8, at: { angle: 140 deg left, distance: 1.4 m, height: 1.9 m } }\n${panel}`,
    )

  it('is no fault of a key from in front, nor of lights on the paper', () => {
    expect(findingsOf('light-into-lens', white(2.4))).toEqual([])
  })

  it('is one of an open light from behind, until it is flagged', () => {
    const [finding] = findingsOf('light-into-lens', rim(''))
    expect(finding!.level).toBe('warning')
    expect(finding!.message).toMatch(/rim shines into the lens from \d+ deg outside the frame/)
    expect(
      findingsOf(
        'light-into-lens',
        rim(
          'panels:\n  flag: { kind: flag, size: 60 x 200 cm, at: { left: 80 cm, behind: 60 cm, height: 1.7 m }, faces: camera }\n',
        ),
      ),
    ).toEqual([])
  })
})
