/** What the trade knows, said by the rules. Common practice, no source, unless said. */
import { describe, expect, it } from 'vitest'
import { computeSet } from '../../src/set/compute-set.js'
import { findingsOf, planOf } from './check-text.js'

const keyAt = (distance: string, behind = '2 m', unit = 'softbox 60 x 60 cm') => `plan: 1
title: Key and backdrop
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: white paper, behind: ${behind} }
lights:
  key: { unit: head 600 Ws, modifier: ${unit}, meters: f/5.6, at: { angle: 0 deg left, distance: ${distance}, height: 1.8 m } }
wanted: { backdrop: { tone: 120 } }
`

/** Stops that the darkest of the backdrop in frame lies under the key reading. */
const under = (text: string): number => {
  const set = computeSet(planOf(text))
  return set.key!.overCamera.stops - set.backdropView!.darkest.overCamera.stops
}

describe('the backdrop and the key', () => {
  it('a key moved nearer, the camera following the face, darkens the backdrop', () => {
    const distances = ['3 m', '2 m', '1.2 m', '0.6 m'].map((distance) => under(keyAt(distance)))
    for (let i = 1; i < distances.length; i++) expect(distances[i]!).toBeGreaterThan(distances[i - 1]! + 0.3)
  })

  it('with the light three metres from a subject near the backdrop, face and backdrop meter almost alike', () => {
    // In its darkest corner; the dome at the face sees some of the paper, too.
    expect(under(keyAt('3 m', '50 cm'))).toBeLessThan(0.7)
    expect(under(keyAt('1 m', '2 m'))).toBeGreaterThan(2)
  })
})

describe('one light on a white backdrop', () => {
  const text = (distance: string) => keyAt(distance).replace('{ tone: 120 }', 'white')

  it.each(['0.8 m', '1.2 m', '2 m', '3 m'])(
    'is never sent nearer than it is (%s): the key closer makes it darker',
    (distance) => {
      const [finding] = findingsOf('backdrop-below-white', text(distance))
      expect(finding).toBeDefined()
      const own = Number.parseFloat(distance)
      const said = finding!.advice.map(({ title }) => title)
      expect(said.length).toBeGreaterThan(0)
      for (const title of said) {
        expect(title).not.toMatch(/closer/)
        // Nearer is only ever the subject to the backdrop; a tape named for the key is longer than today's.
        if (/nearer/.test(title)) expect(title).toMatch(/^subject nearer the backdrop/)
        const tape = /back to ([\d.]+) (c?m) from the face/.exec(title)
        if (tape !== null) expect(Number(tape[1]) / (tape[2] === 'cm' ? 100 : 1)).toBeGreaterThan(own)
      }
    },
  )

  it('gets distances that bring face and backdrop within two fifths, or a light of its own', () => {
    const said = findingsOf('backdrop-below-white', text('1.2 m'))[0]!.advice
    expect(said.some(({ title }) => /back to [\d.]+ m from the face/.test(title))).toBe(true)
    expect(said.some(({ title }) => /a light of its own for the backdrop, that meters f\//.test(title))).toBe(
      true,
    )
  })

  it('the distance that it names does bring them within two fifths', () => {
    const near = text('1.5 m').replace('behind: 2 m', 'behind: 60 cm')
    const [advice] = findingsOf('backdrop-below-white', near)[0]!.advice
    const tape = /back to ([\d.]+) m/.exec(advice!.title)![1]
    expect(under(near.replace('distance: 1.5 m', `distance: ${tape} m`))).toBeCloseTo(0.4, 1)
  })
})

describe('stops in the trade’s marks', () => {
  const at = (meters: string, aperture: string) =>
    findingsOf(
      'aperture-off-key',
      keyAt('1.5 m')
        .replace('meters: f/5.6', `meters: ${meters}`)
        .replace('aperture: f/5.6', `aperture: ${aperture}`)
        .replace('height: 1.8 m', 'height: 1.62 m')
        .replace('lens: 85 mm', 'lens: 24 mm'),
    )
  it('one stop over f/5.6 meters f/8, and f/7.1 is a third under that (ISO 517)', () => {
    expect(at('f/8', 'f/5.6')[0]!.measured['key-over-camera']!.value).toBeCloseTo(1, 1)
    expect(at('f/8', 'f/5.6')[0]!.level).toBe('warning')
    expect(at('f/8', 'f/7.1').filter(({ level }) => level !== 'note')).toEqual([])
    expect(at('f/8', 'f/8')).toEqual([])
  })
})
