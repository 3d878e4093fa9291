/** How clear and round things are told of: by the trade's sets for glass, and by what moves with a light's place. */
import { describe, expect, it } from 'vitest'
import { checkText, findingsOf } from './check-text.js'

const glass = (
  lights: string,
  more = '',
  subject = 'width: 8 cm, shape: cylinder, finish: clear',
): string => `plan: 1
title: Glass
camera: { lens: 100 mm, at: { distance: 1.6 m, height: 95 cm }, aperture: f/11, shutter: 1/125, iso: 100, held-by: stand }
subject: { kind: object, height: 30 cm, ${subject}, stands-on: { height: 80 cm, size: 20 x 20 cm } }
lights:
  key: { unit: head 400 Ws, ${lights} }
${more}wanted: { backdrop: any, shadow: any }
`
const behind = (size: string): string =>
  `modifier: softbox ${size}, power: 1/4, at: { behind: 60 cm, height: 90 cm }`
const told = (text: string) => findingsOf('gloss-shows', text)[0]!

describe('a clear thing', () => {
  it('before a box that just fills the picture is drawn by dark edges: bright field', () => {
    const found = told(glass(behind('60 x 60 cm')))
    expect(found.message).toMatch(
      /^bright field: dark edges draw the object before key; it shows key as two stripes, one along each edge, 1 % of its width/,
    )
    expect(found.advice).toEqual([])
    // That it shines into the lens is told once, by the rule for it, with what keeps the bright field.
    const all = checkText(glass(behind('60 x 60 cm'))).findings
    expect(all.filter(({ message }) => /into the lens/.test(message)).map(({ rule }) => rule)).toEqual([
      'light-into-lens',
    ])
    expect(all.find(({ rule }) => rule === 'light-into-lens')!.advice[0]!.title).toBe(
      'black cards round what the picture shows of key',
    )
    // The front is the ground that the picture is meant to show.
    const seen = all.find(({ rule }) => rule === 'light-in-frame')
    expect(seen?.level ?? 'note').toBe('note')
    const matte = glass(behind('60 x 60 cm'), '', 'width: 8 cm, shape: cylinder')
    expect(findingsOf('light-in-frame', matte)[0]!.level).toBe('warning')
  })

  it('before a box so large that it goes on round the edges is lost, until black cards stand beside it', () => {
    const wide = behind('400 x 200 cm').replace('behind: 60 cm', 'behind: 40 cm')
    const lost = told(glass(wide))
    expect(lost.message).toMatch(/^its edges are lost before key, as light as they are/)
    expect(lost.advice.map(({ title }) => title)).toContainEqual(
      expect.stringMatching(/^black cards close beside/),
    )
    const cards = ['left', 'right']
      .map(
        (side) =>
          `  card-${side}: { kind: flag, size: 20 x 60 cm, at: { ${side}: 20 cm, behind: 10 cm, height: 95 cm }, faces: ${side === 'left' ? 'right' : 'left'} }\n`,
      )
      .join('')
    expect(told(glass(wide, `panels:\n${cards}`)).message).toMatch(
      /^bright field: dark edges draw the object before key/,
    )
  })

  it('before a black card that a larger box reaches round is drawn by light edges: dark field', () => {
    const card =
      'panels:\n  card: { kind: flag, size: 40 x 40 cm, at: { behind: 30 cm, height: 95 cm }, faces: camera }\n'
    const found = told(glass(behind('200 x 150 cm'), card))
    expect(found.message).toMatch(/^dark field: light edges draw the object before (card|a dark ground)/)
  })

  it('no strip is advised where a backdrop light stands', () => {
    const found = told(
      glass(
        'role: backdrop, modifier: standard reflector, meters: f/16, at: { left: 1 m, behind: 40 cm, height: 1 m }',
        'backdrop: { surface: white paper, behind: 1 m, width: 1.3 m }\n',
      ),
    )
    expect(found.message).toMatch(
      /^bright field: dark edges draw the object before the backdrop; it shows key as/,
    )
    expect(found.advice).toEqual([])
  })

  it('before nothing, with nothing beside it, is lost in the dark', () => {
    const found = told(
      glass('modifier: softbox 40 x 40 cm, meters: f/11, at: { left: 40 cm, front: 90 cm, height: 1.3 m }'),
    )
    expect(found.message).toMatch(
      /^its edges are lost before a dark ground, as dark as they are; it shows key as/,
    )
    expect(found.advice.map(({ gives }) => gives)).toContainEqual(expect.stringMatching(/a dark field$/))
  })
})

describe('a round glossy thing before a light', () => {
  const glossy = (shape: string) => `width: ${shape === 'ball' ? 30 : 8} cm, shape: ${shape}, finish: glossy`

  it('shows it at both edges, a ball along its rim; no longer strip is advised for that', () => {
    const bottle = told(glass(behind('60 x 60 cm'), '', glossy('cylinder')))
    expect(bottle.message).toMatch(/^the object shows key as two stripes, one along each edge/)
    const ball = told(glass(behind('120 x 120 cm'), '', glossy('ball')))
    expect(ball.message).toMatch(
      /^the object shows key as a rim of light (all round it|round \d+ % of it, open at its lower edge), \d+ % of its width thick$/,
    )
    for (const { advice } of [bottle, ball])
      expect(advice.filter(({ title }) => /strip/.test(title))).toEqual([])
  })

  it('says of one patch on a ball on which side of it that lies', () => {
    const at = (where: string) =>
      told(glass(`modifier: softbox 30 x 30 cm, meters: f/11, at: { ${where} }`, '', glossy('ball'))).message
    expect(at('front: 60 cm, height: 1.7 m')).toMatch(/in from its upper edge$/)
    expect(at('left: 60 cm, front: 60 cm, height: 1.6 m')).toMatch(/in from its upper camera-left edge$/)
    expect(at('left: 80 cm, front: 60 cm, height: 95 cm')).toMatch(/in from its camera-left edge$/)
  })

  it.each(['cylinder', 'ball'])('%s: figures run smoothly as the light moves aside', (shape) => {
    const figures = Array.from({ length: 41 }, (_, i) => {
      const text = glass(
        `modifier: softbox 60 x 90 cm, power: 1/4, at: { right: ${15 + i / 2} cm, behind: 60 cm, height: 90 cm }`,
        '',
        glossy(shape),
      )
      const [found] = checkText(text).findings.filter(({ rule }) => rule === 'gloss-shows')
      return (name: string): number => found!.measured[name]?.value ?? 0
    })
    for (const [i, one] of figures.entries()) {
      const next = figures[i + 1] ?? one
      expect(Math.abs(one('key-covers') - next('key-covers'))).toBeLessThan(0.01)
      // Past the middle the far stripe of a cylinder goes, and it is thin by then.
      expect(Math.abs(one('key-width') - next('key-width'))).toBeLessThan(0.12)
    }
  })
})
