/** Advice to set a light elsewhere: only where it can stand, and still does its job there. */
import { describe, expect, it } from 'vitest'
import { makeWords } from '../../src/rules/make-words.js'
import { movedAndHeldUntil } from '../../src/rules/mirror/held-there.js'
import { settingUntil } from '../../src/rules/mirror/setting-until.js'
import type { Thing } from '../../src/rules/mirror/things.js'
import type { Scene } from '../../src/scene/scene.js'
import { computeSet } from '../../src/set/compute-set.js'
import { findingsOf, planOf } from './check-text.js'

const table = (light: string, more = ''): string => `plan: 1
title: A glossy backdrop behind a table
camera: { lens: 70 mm, at: { distance: 1.6 m, height: 1.1 m }, aperture: f/11, shutter: 1/125, iso: 100, held-by: stand }
subject: { kind: object, height: 20 cm, width: 20 cm, stands-on: { height: 80 cm, size: 1.2 x 1.2 m } }
backdrop: { surface: black acrylic, behind: 1 m }
lights:
  key: { unit: head 400 Ws, power: 1/4, ${light} }
${more}wanted: { backdrop: any, shadow: any }
`
const setOf = (text: string) => {
  const plan = planOf(text)
  const light = plan.lights.get('key')!
  const thing: Thing = { of: 'light', name: 'key', light }
  return { set: computeSet(plan), thing, words: makeWords(plan) }
}
const at = (scene: Scene) => scene.lights.get('key')!.front!.centre
const lower = (light: string, to: number, more = '') => {
  const { set, thing } = setOf(table(light, more))
  return settingUntil(
    set,
    thing,
    { knob: 'light-height', light: 'key' },
    -1,
    1.2,
    (scene) => at(scene)[2] <= to,
  )
}

describe('a light set elsewhere', () => {
  it('does not reach into the floor, where a smaller one may stand', () => {
    const large = 'modifier: softbox 90 x 90 cm, at: { left: 1 m, front: 1.2 m, height: 1.2 m }'
    expect(lower(large, 0.8)?.change.to).toBeCloseTo(0.8, 6)
    expect(lower(large, 0.3)).toBeUndefined()
    expect(lower(large.replace('softbox 90 x 90 cm', 'standard reflector'), 0.3)?.change.to).toBeCloseTo(
      0.3,
      6,
    )
  })

  it('does not come to stand in a panel', () => {
    const box = 'modifier: softbox 60 x 60 cm, at: { left: 1 m, front: 1.2 m, height: 2 m }'
    const card =
      'panels:\n  card: { kind: reflector, surface: white board, size: 1 x 1 m, at: { left: 1 m, front: 1.2 m, height: 80 cm }, faces: up }\n'
    expect(lower(box, 1)?.change.to).toBeCloseTo(1, 6)
    expect(lower(box, 1, card)).toBeUndefined()
  })

  it('takes no more than two stops more power: a table that comes between takes the light away', () => {
    const { set, thing, words } = setOf(
      table(
        'modifier: standard reflector, at: { left: 1 m, front: 0 m, height: 1 m }, aim: thing',
        'points: { thing: { left: 0 cm, height: 90 cm } }\n',
      ),
    )
    const moves = (to: number) =>
      movedAndHeldUntil(set, thing, (scene) => at(scene)[2] <= to, 'so', words).filter(({ title }) =>
        /height/.test(title),
      )
    expect(moves(0.9).length).toBe(1)
    expect(moves(0.6)).toEqual([])
  })

  it('is not told under the table, where low before a glossy backdrop its image would be gone', () => {
    for (const [right, height] of [
      ['30 cm', '1.15 m'],
      ['0 cm', '1.35 m'],
      ['30 cm', '1.35 m'],
    ]) {
      const found = findingsOf(
        'backdrop-mirrors-light',
        table(
          `modifier: softbox 60 x 60 cm, at: { right: ${right}, front: 1.6 m, height: ${height} }`,
          'room: { width: 4 m, length: 5 m, height: 2.2 m }\n',
        )
          .replace(
            'lens: 70 mm, at: { distance: 1.6 m, height: 1.1 m }',
            'lens: 50 mm, at: { distance: 1.6 m, height: 1.3 m }',
          )
          .replace('behind: 1 m', 'behind: 60 cm'),
      )
      expect(found.length).toBe(1)
      const said = JSON.stringify(found[0]!.advice)
      expect(said).toMatch(/a matte backdrop/)
      expect(said).not.toMatch(/stands (in|before)|[^.\d]([3-9]|\d\d)(\.\d)? stops more/)
    }
  })
})
