/** Rules on colour: what counts and what does not, and that mends hold. */
import { describe, expect, it } from 'vitest'
import { findingsOf } from './check-text.js'

const plan = (lights: string, more = '') => `plan: 1
title: Colours
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
${lights}
${more}
`
const box = (unit: string, side: string, more: string) =>
  `{ unit: ${unit}, modifier: softbox 60 x 90 cm, at: { angle: 50 deg ${side}, distance: 1.4 m, height: 1.8 m }, ${more} }`
const pair = (key: string, fill: string, unit = 'head 400 Ws') =>
  plan(`  key: ${box(unit, 'left', key)}\n  fill: ${box(unit, 'right', fill)}`)
const mixed = (text: string) => findingsOf('colour-mixed', text)

describe('colour-mixed', () => {
  it('says what is warmer than what, and which way round', () => {
    const [warm] = mixed(pair('meters: f/5.6, colour: 5600 K', 'meters: f/4, colour: 4300 K'))
    expect(warm!.message).toMatch(/^one side of the face comes out warmer than the other: \d\d mired/)
    const [cold] = mixed(pair('meters: f/5.6, colour: 4300 K', 'meters: f/4, colour: 5600 K'))
    expect(cold!.message).toContain('cooler')
    const [green] = mixed(pair('meters: f/5.6, colour: 5600 K', 'meters: f/4, colour: 5600 K, duv: 0.02'))
    expect(green!.message).toContain(' greener than')
    const [magenta] = mixed(pair('meters: f/5.6, colour: 5600 K, duv: 0.02', 'meters: f/4, colour: 5600 K'))
    expect(magenta!.message).toContain('more magenta')
  })

  it('is the same whichever side the lights stand on', () => {
    const text = pair('meters: f/5.6, colour: 5600 K', 'meters: f/4, colour: 4700 K')
    const turned = text
      .replaceAll(' left', ' LEFT')
      .replaceAll(' right', ' left')
      .replaceAll(' LEFT', ' right')
    const [one, other] = [mixed(text)[0]!, mixed(turned)[0]!]
    expect(one.measured.apart!.value).toBeCloseTo(other.measured.apart!.value, 6)
  })

  it('counts no light that is too weak to show', () => {
    expect(mixed(pair('meters: f/5.6, colour: 5600 K', 'meters: f/1, colour: 3200 K'))).toEqual([])
  })

  it('is silent on guesses alone, whatever they are', () => {
    const window =
      '  window: { role: fill, unit: window, size: 1 x 1.2 m, at: { right: 1.6 m, front: 30 cm, height: 1.5 m }, faces: left, reads: f/4, shutter: 1/125, iso: 100 }'
    expect(mixed(plan(`  key: ${box('flashgun', 'left', 'meters: f/5.6')}\n${window}`))).toEqual([])
    expect(mixed(pair('power: 1/2', 'power: 1/16'))).toEqual([])
  })

  it('says perhaps, and a note, where one light is known and the other is guessed', () => {
    const [found] = mixed(
      plan(
        `  key: ${box('flashgun', 'left', 'meters: f/5.6, colour: 5000 K')}\n  fill: ${box('head 400 Ws', 'right', 'meters: f/4')}`,
      ),
    )
    expect(found).toMatchObject({ level: 'note', certainty: 'possible' })
  })

  it('follows the power of voltage-regulated heads', () => {
    const head =
      '{ energy: 400 Ws, regulated: voltage, colour: 5500 K, power: { from: 1/64, step: 1/10 stop } }'
    const [found] = mixed(
      pair('power: full', 'power: 1/64', head)
        .replace('distance: 1.4 m', 'distance: 2.4 m')
        .replace(/(fill: .*)distance: 1.4 m/, '$1distance: 70 cm'),
    )
    expect(found?.level ?? 'none').toBe('note')
    expect(mixed(pair('power: 1/8', 'power: 1/8', head))).toEqual([])
  })

  it('takes no part in lights for outline and effect, nor in colours that are meant', () => {
    for (const odd of [
      'rim: { unit: head 400 Ws, colour: 3200 K, meters: f/5.6, at: { angle: 140 deg right, distance: 1.5 m, height: 2 m } }',
      'effect: { unit: head 400 Ws, colour: 3200 K, meters: f/5.6, at: { angle: 60 deg right, distance: 1.5 m, height: 2 m } }',
      'fill: { unit: head 400 Ws, gel: { colour: red, loss: 3 stops }, meters: f/4, at: { angle: 60 deg right, distance: 1.5 m, height: 2 m } }',
    ])
      expect(
        mixed(plan(`  key: ${box('head 400 Ws', 'left', 'meters: f/5.6, colour: 5500 K')}\n  ${odd}`)),
        odd,
      ).toEqual([])
  })

  it('judges the ambient at the darkest side that is wanted', () => {
    const inRoom = (ratio: string) =>
      mixed(
        plan(
          `  key: ${box('head 400 Ws', 'left', 'meters: f/5.6, colour: 5500 K')}`,
          `backdrop: { surface: grey paper, behind: 1.5 m }\nambient: { reads: f/2, shutter: 1/60, iso: 100, colour: 2900 K }\nwanted: { ratio: { lit-to-shadow: ${ratio} } }`,
        ),
      )[0]
    const [flat, deep] = [inRoom('1.5:1'), inRoom('8:1')]
    expect(deep!.measured.apart!.value).toBeGreaterThan(2 * (flat?.measured.apart?.value ?? 0))
    expect(deep!.message).toMatch(/^the shadow side comes out warmer/)
  })

  it('leaves ambient alone that is wanted as it is', () => {
    const text = plan(
      `  key: ${box('head 400 Ws', 'left', 'meters: f/5.6, colour: 5500 K')}`,
      'ambient: { reads: f/4, shutter: 1/60, iso: 100, colour: 2900 K }\nwanted: { ambient: any }',
    )
    expect(mixed(text)).toEqual([])
    expect(mixed(text.replace('ambient: any', 'ambient: none')).length).toBe(1)
  })
})

describe('white-balance-off', () => {
  const at = (balance: string, key: string) =>
    findingsOf(
      'white-balance-off',
      plan(`  key: ${box('head 400 Ws', 'left', `meters: f/5.6, ${key}`)}`).replace(
        'iso: 100 }',
        `iso: 100, white-balance: ${balance} }`,
      ),
    )

  it('is quiet with the balance that it names', () => {
    for (const key of [
      'colour: 3200 K',
      'colour: 5500 K, gel: { shift: +64 mired, loss: 1/3 stop }',
      'colour: 7500 K',
    ]) {
      const [found] = at('5000 K', key)
      const named = /camera\.white-balance → (\d+ K)/.exec(found!.advice[0]!.title)![1]!
      expect(at(named, key), named).toEqual([])
    }
  })
})

describe('backdrop-colour-washed', () => {
  const kept = (more: string, surface = 'white paper') =>
    findingsOf(
      'backdrop-colour-washed',
      plan(
        `  key: ${box('head 400 Ws', 'left', 'meters: f/5.6')}\n  wall: { role: backdrop, unit: head 400 Ws, gel: { colour: blue, loss: 3 stops }, at: { left: 60 cm, before-backdrop: 1.6 m, height: 1.4 m }, ${more} }`,
        `backdrop: { surface: ${surface}, behind: 3 m }\nwanted: { framing: head and shoulders }`,
      ),
    )[0]?.measured['chroma-kept']?.value

  it('keeps less the brighter the gelled light, and on grey keeps it', () => {
    const [over, level] = [kept('meters: f/8'), kept('meters: f/4')]
    expect(over!).toBeLessThan(0.1)
    expect(level ?? 1).toBeGreaterThan(over! + 0.2)
    expect(kept('meters: f/2.8')).toBeUndefined()
    expect(kept('meters: f/5.6', 'grey paper')).toBeUndefined()
  })
})
