/** The lighting ratio where no light is the fill: what panels, walls and the ambient give the shadow side. */
import { describe, expect, it } from 'vitest'
import { ruleNamed } from '../../src/rules/index.js'
import { checkText, contextOf, findingsOf, planOf } from './check-text.js'

const one = (
  more: string,
  key = 'left: 1.5 m, front: 1.5 m',
  wanted = 'lit-to-shadow: "3:1"',
): string => `plan: 1
title: One light
camera: { lens: 85 mm, at: { distance: 3 m, height: 1.5 m }, aperture: f/8, shutter: 1/125, iso: 100, held-by: stand }
subject: { kind: person, faces-at: 1.5 m }
lights:
  key: { unit: head 600 Ws, modifier: softbox 20 x 20 cm, meters: f/8, at: { ${key}, height: 1.5 m } }
wanted: { ratio: { ${wanted} }, framing: face }
${more}
`
/** Of a wanted ratio that no set comes near, so that there is evidence. */
const ratio = (text: string): number =>
  ruleNamed('ratio-off')!.detect(contextOf('ratio-off', planOf(text)))[0]!.measured.ratio!.value

const card = (size: string, right: string, reflectance = 0.9) =>
  `panels: { card: { kind: reflector, surface: { reflectance: ${reflectance} }, size: ${size}, at: { right: ${right}, height: 1.5 m }, faces: left } }`
const room = (paint: string) =>
  `room: { width: 3 m, length: 4 m, height: 2.4 m, behind-backdrop: 1 m, walls: ${paint}, ceiling: ${paint}, floor: ${paint} }`

describe('ratio-off without a fill light', () => {
  // A matte card of 20 cm from a metre off is a small source of E·ρ/π per unit area and cosine, straight ahead of a dome
  // turned to it; the key, a small box of cos² of its own, is aimed at the face and stands 45 degrees off the camera.
  it('agrees with what a small card throws back, by the inverse square and the cosines', () => {
    const toCard = Math.hypot(2.5, 1.5)
    const offAxis = (1.5 * 2.5 + 1.5 * 1.5) / (Math.hypot(1.5, 1.5) * toCard)
    const onCard = (offAxis ** 2 * (2.5 / toCard)) / toCard ** 2
    const fromCard = (onCard * 0.9 * 0.2 ** 2) / Math.PI
    const fromKey = (1 + Math.cos(Math.PI / 4)) / 2 / (1.5 ** 2 + 1.5 ** 2)
    // 1 m from the face to the card, whose size takes some hundredths off.
    expect(Math.log2(ratio(one(card('20 x 20 cm', '1 m'))))).toBeCloseTo(Math.log2(1 + fromKey / fromCard), 1)
  })

  it('twice the reflectance is half the ratio, less the lit side’s own', () => {
    const [half, whole] = [0.4, 0.8].map((reflectance) => ratio(one(card('20 x 20 cm', '1 m', reflectance))))
    expect(half! / whole!).toBeGreaterThan(1.98)
    expect(half! / whole!).toBeLessThan(2.02)
  })

  it('is the same on the other side', () => {
    const [left, right] = [
      one(card('60 x 90 cm', '60 cm')),
      one(
        card('60 x 90 cm', '60 cm').replace('right:', 'left:').replace('faces: left', 'faces: right'),
        'right: 1.5 m, front: 1.5 m',
      ),
    ]
    expect(ratio(left)).toBeCloseTo(ratio(right), 3)
  })

  // Common practice, no source: a white card at arm's length makes about three to one, at two arms' lengths it does little.
  it('a large white card by the shadow side makes about 3:1, further off more', () => {
    const soft = (right: string) =>
      ratio(one(card('1 x 2 m', right)).replace('softbox 20 x 20 cm', 'softbox 60 x 90 cm'))
    expect(soft('40 cm')).toBeGreaterThan(2.3)
    expect(soft('40 cm')).toBeLessThan(4)
    expect(soft('80 cm')).toBeGreaterThan(1.5 * soft('40 cm'))
  })

  it('white walls fill, black ones hardly', () => {
    expect(ratio(one(room('white paint')))).toBeLessThan(4)
    expect(ratio(one(room('black paint')))).toBeGreaterThan(12)
  })

  it('an ambient fills too', () => {
    const ambient = (reads: string) => ratio(one(`ambient: { reads: ${reads}, shutter: 1/125, iso: 100 }`))
    // Dome to the camera on both sides of the ratio: key 45 degrees off it, 1 + cos 45 over two.
    expect(Math.log2(ambient('f/4'))).toBeCloseTo(Math.log2(1 + (4 * (1 + Math.SQRT1_2)) / 2), 1)
  })

  it('the light of a bounced key is not told from its fill', () => {
    const ceiling = one(room('white paint')).replace(
      'height: 1.5 m } }',
      'height: 1.5 m }, aim: ceiling above subject }',
    )
    const { findings, notChecked } = checkText(ceiling)
    expect(findings.filter(({ rule }) => rule === 'ratio-off')).toEqual([])
    expect(notChecked.find(({ rule }) => rule === 'ratio-off')?.because).toMatch(/by way of a surface/)
  })

  it('is not asked of a key from behind, which the camera sees no lit side of', () => {
    const because = (key: string) =>
      checkText(one(card('60 x 90 cm', '60 cm'), key)).notChecked.find(({ rule }) => rule === 'ratio-off')
        ?.because
    expect(because('left: 1.5 m, behind: 10 cm')).toBeUndefined()
    expect(because('left: 1.5 m, behind: 40 cm')).toMatch(/no lit side is seen/)
  })

  it('says how the shadow side is metered, and by which way it is lit', () => {
    const [found] = findingsOf('ratio-off', one(card('1 x 2 m', '1.2 m')))
    const dim = 'ambient: { reads: f/2, shutter: 1/125, iso: 100 }'
    expect(findingsOf('ratio-off', one(dim))[0]!.why).toMatch(/it is lit by the ambient light$/)
    expect(found!.message).toMatch(
      /^the shadows come out too dark: lit side to shadow side stands at [\d.]+:1/,
    )
    expect(found!.why).toMatch(
      /the dome turned camera-right and key kept off it by a hand; it is lit by panels/,
    )
    expect(found!.place.pointer).toBe('/panels/card/at')
  })

  it('gets a card on the shadow side where there is none, and black there where walls fill', () => {
    const dark = findingsOf('ratio-off', one(room('black paint')))[0]!.advice
    expect(
      dark.some(({ title }) => /^a white panel of .* on the shadow side, .* camera-right/.test(title)),
    ).toBe(true)
    const light = (wanted: string) =>
      findingsOf('ratio-off', one(room('white paint'), undefined, `lit-to-shadow: "${wanted}"`))[0]!.advice
    expect(light('5:1')[0]!.title).toMatch(/^a black panel of .* on the shadow side, .* camera-right/)
    // One panel before one side of a white room does not make it a black one.
    expect(light('12:1')[0]!.title).toMatch(/black cloth before/)
  })

  it('takes a white card away, or turns it black, where it fills too much', () => {
    const titles = (wanted: string, more: string) =>
      findingsOf('ratio-off', one(more, undefined, `lit-to-shadow: "${wanted}"`))[0]!.advice.map(
        ({ title }) => title,
      )
    const white = `${room('0.5')}\n${card('1 x 2 m', '40 cm')}`
    expect(titles('12:1', white)).toContain('card turned black')
    expect(
      titles('5:1', white).some((title) => title === 'without card' || /card\.at\.right/.test(title)),
    ).toBe(true)
  })

  it('what it says of a card’s place settles it', () => {
    const text = one(card('1 x 2 m', '1.2 m'))
    const { title } = findingsOf('ratio-off', text)[0]!.advice[0]!
    const to = /^panels\.card\.at\.right → ([\d.]+ m)$/.exec(title)
    expect(to).not.toBeNull()
    expect(findingsOf('ratio-off', text.replace('right: 1.2 m', `right: ${to![1]}`))).toEqual([])
  })
})
